import { expect, test } from "vitest";
import { expectNear, shopOf, verdictOf, worked } from "./bench.test-help.ts";
import { between, overloadCurve } from "./spin-up.ts";

// Worked by hand: J = 0.032 + 0.09/(1.5^2 0.95); to base speed J w_b/(T - T_l); above it the closed form of constant power.
const start = {
  J: "0.074105263 kg*m2",
  T: "22.2 N*m",
  w_b: "1745 rpm",
  w: "4500 rpm",
  T_0: "1.6 N*m",
  T_1: "1.6 N*m",
  i: "1.5",
  eta: "0.95",
};

test("0.032 at the motor and 0.09 kg m2 at the spindle over 1.5 turns and 95 % are 0.074105 kg m2 at the motor", () => {
  expectNear(worked("spindle.referred-inertia", { J_m: "0.032 kg*m2", J_s: "0.09 kg*m2", i: "1.5", eta: "0.95" }), 0.074105, 1e-5);
});

test("braking feels less inertia than speeding up, by the belt's loss twice", () => {
  const given = { J_m: "0 kg*m2", J_s: "0.09 kg*m2", i: "1.5", eta: "0.9" };
  expectNear(worked("spindle.referred-inertia-braking", given) / worked("spindle.referred-inertia", given), 0.81, 1e-9);
});

test("across base speed to 3000 rpm of the spindle it takes 2.5507 s by the closed form", () => {
  expectNear(worked("spindle.spin-up-estimate", start), 2.5507, 1e-4);
});

test("the integral agrees with the closed form to a thousandth when friction is constant", () => {
  expectNear(worked("spindle.spin-up-run", start), 2.5507, 1e-3);
});

test("a ramp longer than torque needs decides, a shorter one does not", () => {
  const run = { ...start, t_u: "2.55 s" };
  expect(worked("spindle.spin-up-time", { t_r: "4 s", t_u: run.t_u })).toBe(4);
  expect(worked("spindle.spin-up-time", { t_r: "2 s", t_u: run.t_u })).toBe(2.55);
});

test("friction as large as torque means that the speed is never reached", () => {
  const stuck = { ...start, T_0: "32 N*m", T_1: "32 N*m" };
  expect(worked("spindle.spin-up-run", stuck)).toBe(Infinity);
  expect(worked("spindle.spin-up-estimate", stuck)).toBe(Infinity);
});

test("7994 J stand in the turning masses at 3000 rpm, a kilogram dropped from 815 m", () => {
  const E = worked("spindle.stored-energy", { J_m: "0.032 kg*m2", J_s: "0.09 kg*m2", i: "1.5", n_top: "3000 rpm" });
  expectNear(E, 7994.4, 1e-4);
  expectNear(worked("spindle.drop-height", { E: "7994.4 J" }), 815.2, 1e-4);
});

test("full torque up to base speed, full power above, and straight lines between the knots", () => {
  const { at, torque } = overloadCurve({ c: null, I: null, T: 20, w_b: 180, w: 400 });
  const curve = between(at, torque);
  expect(curve(100)).toBeCloseTo(20, 9);
  expect(curve(180)).toBeCloseTo(20, 9);
  expectNear(curve(360), 10, 1e-3);
  expect(curve(400)).toBeCloseTo(9, 9);
});

const lathe = (wanted: string, ramp: string): string => `machine: lathe
kind: turret-lathe
spindle:
  motor: { kind: induction, plate: { power: 5 hp, voltage: 230 V, current: 13 A, frequency: 60 Hz, speed: 1745 rpm }, leads: 3, connected: star }
  drive: { rated-current: 17 A, input-phases: 1, single-phase: yes, ramp: { ${ramp} } }
  belts: { only: { motor-pulley: 100 mm, spindle-pulley: 100 mm } }
  highest-speed: 1800 rpm
  wanted: { ${wanted} }
`;

test("a ramp of 4 s against 3 s allowed fails, and without a wish there is nothing to judge", () => {
  const s = shopOf(lathe("spin-up: 3 s", "up: 4 s"));
  expect(verdictOf(s, "spindle.spin-up-holds").verdict).toBe("fails");
  expect(s.answer.checks.some((c) => c.address.endsWith("stop-holds"))).toBe(false);
});

test("three times the time needed holds", () => {
  expect(verdictOf(shopOf(lathe("spin-up: 30 s", "up: 4 s")), "spindle.spin-up-holds").verdict).toBe("holds");
});

test("on plain volts per hertz the spindle starts from standstill, and vector control is no slower", () => {
  const run = (mode: string): number => {
    const s = shopOf(lathe("spin-up: 3 s", "up: 0 s").replace("rated-current", `mode: ${mode}, rated-current`), {}, "nominal");
    return Number(s.answer.figures["lathe/spindle.spin-up-run"]?.amount.nominal);
  };
  const plain = run("volts-per-hertz");
  expect(plain).toBeGreaterThan(0.2);
  expect(plain).toBeLessThan(10);
  expect(run("vector")).toBeLessThanOrEqual(plain);
});
