import { expect, test } from "vitest";
import type { Drawn, Frame, Picture, Sampled } from "../../kernel/room.ts";
import { beltPicture, runInPicture, spinUpPicture } from "./pictures.ts";

const frame: Frame = { width: 586, units: "metric", prefix: "p" };
/** One case of samples made by hand, laid before a picture. */
function draw(p: Picture, ...samples: readonly object[]): Drawn {
  const sampled: Sampled<object> = { count: samples.length, at: (k) => samples[k] ?? {} };
  return p.draws([{ name: "as found", samples: sampled as Sampled<never>, verdict: () => null }], frame);
}

const spin = {
  c: null,
  I: null,
  T: 22.2,
  w_b: 182.7,
  J: 0.0741,
  J_b: 0.07,
  w: 471,
  i: 1.5,
  eta: 0.95,
  T_0: 1.6,
  T_1: 1.6,
  t_u: 2.55,
  t_up: 2.55,
  t_s: 3,
  wanted: 4,
  stop: null,
};
const rows = (d: Drawn): string[] => (d.csv ?? "").trim().split("\n");

test("start and stop are drawn with their times in the label and the wish as a line", () => {
  const d = draw(spinUpPicture, spin);
  expect(d.svg).toMatch(/Highest speed after 2\.[56] s; 3 s to stop\./);
  expect(d.svg).toContain("wanted 4 s");
  const speeds = rows(d)
    .slice(1)
    .map((r) => Number(r.split(",")[1]));
  expect(Math.max(...speeds)).toBeCloseTo((471 / 1.5) * (30 / Math.PI), 3);
});

test("the spread of the samples stands behind the time", () => {
  const d = draw(spinUpPicture, spin, { ...spin, t_up: 2 }, { ...spin, t_up: 3.4 });
  expect(d.svg).toContain("(2 s to 3.4 s)");
});

test("a ramp longer than torque needs is drawn straight", () => {
  const d = draw(spinUpPicture, { ...spin, t_up: 6 });
  const points = rows(d)
    .slice(1)
    .map((r) => r.split(",").map(Number));
  const half = points.find(([t = 0]) => Math.abs(t - 3) < 1e-6);
  expect(half?.[1]).toBeCloseTo((471 / 1.5 / 2) * (30 / Math.PI), 3);
});

test("a speed that is never reached is said, not drawn", () => {
  const d = draw(spinUpPicture, { ...spin, t_u: Infinity, t_up: Infinity });
  expect(d.svg).toContain("never reached");
  expect(d.csv).toBeUndefined();
});

test("without readings the run-in says which step brings them", () => {
  expect(draw(runInPicture, { t: null, T: null }).svg).toContain("No run-in readings yet");
});

test("a settling run-in names its plateau, an accelerating one says stop", () => {
  const t = Array.from({ length: 13 }, (_, k) => 120 * k);
  expect(draw(runInPicture, { t, T: t.map((s) => 273.15 + 45 - 25 * Math.exp(-s / 720)) }).svg).toContain(
    "Heading for 45 °C, time constant 12 min",
  );
  expect(draw(runInPicture, { t, T: t.map((s) => 273.15 + 20 + 2 * Math.exp(s / 500)) }).svg).toContain("stop the spindle");
});

const belt = { d_m: 0.14, d_s: 0.112, c: 0.41, theta: 3.07, T_0: 200, z_b: 3, T: 30 };
test("the belt says its ratio in turns and what each strand pulls", () => {
  const d = draw(beltPicture, belt);
  expect(d.svg).toContain("motor 0.8 turns : spindle 1");
  // 3 * 200 plus and less 30/0.14.
  expect(d.svg).toContain("pulls 814 N");
  expect(d.svg).toContain("slack 386 N");
});

test("a belt whose shafts nobody measured says so", () => {
  expect(draw(beltPicture, { ...belt, c: null }).svg).toContain("distance between the shafts is not written");
});
