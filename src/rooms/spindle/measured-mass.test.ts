import { expect, test } from "vitest";
import { expectNear, refused, worked } from "./bench.test-help.ts";

/** Curves made up from 0.08 kg m2 and 0.9 N m at the motor, ratio 1.5, 12 N m of torque: the spindle turns two thirds as fast. */
const curves = (() => {
  const t = Array.from({ length: 30 }, (_, k) => 0.4 * k);
  const up = Array.from({ length: 30 }, (_, k) => 0.03 * k);
  const list = (values: number[]): string => `${values.map((v) => v.toPrecision(12)).join(", ")}`;
  return {
    t_c: `${list(t)} s`,
    n_c: `${list(t.map((s) => (200 - (0.9 / 0.08) * s) / 1.5))} rad/s`,
    t_s: `${list(up)} s`,
    n_s: `${list(up.map((s) => (((12 - 0.9) / 0.08) * s) / 1.5))} rad/s`,
    T: "12 N*m",
    i: "1.5",
  };
})();

test("a coast-down and a spin-up together give back inertia and friction", () => {
  expectNear(worked("spindle.measured-inertia", curves), 0.08, 1e-6);
  expectNear(worked("spindle.measured-friction", curves), 0.9 * 1.5, 1e-6);
});

test("a curve with more times than speeds is refused", () => {
  expect(refused("spindle.measured-inertia", { ...curves, t_c: "0, 1, 2 s" }).message).toMatch(/^the two curves cannot tell/);
});
