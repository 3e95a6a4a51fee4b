// Direct current, servo, and what is said of motors that want a word first.
import { describe, expect, test } from "vitest";
import { expectNear, refused, shopOf, worked } from "./bench.test-help.ts";

describe("a dc motor of 240 V, 20 A, 0.6 ohm, 1750 rpm", () => {
  const plate = { V_an: "240 V", I_an: "20 A", R_a: "0.6 ohm", n_n: "1750 rpm" };
  const k_phi = (240 - 12 - 2) / ((1750 * Math.PI) / 30);
  test("its constant is the emf of the plate over its speed", () => {
    expectNear(worked("spindle.motor.dc-constant", plate), k_phi, 1e-12);
  });
  test("at its plate volts and torque it runs at its plate speed, and those volts are what that speed wants", () => {
    const at = { k_phi: `${k_phi} N*m/A`, R_a: "0.6 ohm", T: `${20 * k_phi} N*m` };
    expectNear(worked("spindle.motor.dc-speed", { ...at, V: "240 V" }), (1750 * Math.PI) / 30, 1e-12);
    expectNear(worked("spindle.motor.dc-voltage", { ...at, n: "1750 rpm" }), 240, 1e-12);
  });
  test("a single-phase bridge at 30 deg makes 179 V of 230 V: about three quarters of the plate speed", () => {
    // 0.9 * 230 * cos 30 deg = 179.3 V (Rashid: mean of a full converter).
    const V = worked("spindle.motor.dc-bridge-voltage", { V: "230 V", alpha: "30 deg" });
    expectNear(V, 179.3, 1e-3);
    const n = worked("spindle.motor.dc-speed", { k_phi: `${k_phi} N*m/A`, R_a: "0.6 ohm", T: `${20 * k_phi} N*m`, V: `${V} V` });
    expectNear(n / ((1750 * Math.PI) / 30), 0.73, 0.01);
  });
  test("ripple takes the torque for hours down by the form factor; above base speed power stays", () => {
    expectNear(worked("spindle.motor.dc-continuous-torque", { T_n: "25 N*m", F: "1.25" }), 20, 1e-12);
    expectNear(worked("spindle.motor.dc-torque-above-base", { T_n: "25 N*m", n_n: "1750 rpm", n: "3500 rpm" }), 12.5, 1e-12);
  });
  test("an armature that eats its own plate volts is refused", () => {
    const at = { k_phi: "0 N*m/A", R_a: "20 ohm", T: "10 N*m", V: "240 V" };
    expect(refused("spindle.motor.dc-speed", at).code).toBe("refused");
  });
});

describe("a servo of 0.8 N*m/A, four pole pairs, 1.2 ohm and 8 mH between lines on a bus of 300 V", () => {
  const lambda = 0.8 / (1.5 * 4 * Math.SQRT2);
  const servo = { V_dc: "300 V", k_dt: "1", R_ll: "1.2 ohm", L_ll: "8 mH", lambda: `${lambda} V*s/rad`, z_p: "4" };
  test("its flux linkage follows from the torque constant in ampere rms", () => {
    expectNear(worked("spindle.motor.servo-flux-linkage", { k_T: "0.8 N*m/A", z_p: "4" }), lambda, 1e-12);
  });
  test("without load its highest speed is where the emf of a phase meets the bus over root three", () => {
    const n = worked("spindle.motor.servo-top-speed", { ...servo, T: "0 N*m" });
    expectNear(n, 300 / Math.sqrt(3) / (4 * lambda), 1e-9);
  });
  test("speed and torque limits are one line: the torque left at the top speed of a torque is that torque", () => {
    const n = worked("spindle.motor.servo-top-speed", { ...servo, T: "6 N*m" });
    const rpm = `${(n * 30) / Math.PI} rpm`;
    expectNear(worked("spindle.motor.servo-torque-at-speed", { ...servo, n: rpm, T_pk: "50 N*m" }), 6, 1e-6);
    expect(worked("spindle.motor.servo-torque-at-speed", { ...servo, n: "100 rpm", T_pk: "20 N*m" })).toBe(20);
  });
});

const motorOf = (motor: string) =>
  shopOf(`machine: lathe\nkind: turret-lathe\nspindle:\n  motor: ${motor}\n`).answer.notices.map((n) => n.says);
test.each([
  ["ampere peak", "0.7071", "0.57735", /ampere peak/],
  ["volts of one phase", "1", "0.33333", /one phase/],
  ["something else", "1", "0.2", /not what its key says/],
] as const)("constants that do not belong together: %s", (_, k_T, k_E, says) => {
  expect(motorOf(`{ kind: servo, torque-constant: ${k_T} N*m/A, voltage-constant: ${k_E} V*s/rad }`).join(" ")).toMatch(says);
});
test("constants of one motor pass without a word", () => {
  // 1 N*m/A rms and 1/sqrt(3) V*s/rad rms between lines carry the same power.
  expect(motorOf("{ kind: servo, torque-constant: 1 N*m/A, voltage-constant: 0.57735 V*s/rad }")).toEqual([]);
});
test.each([
  ["{ kind: wound-rotor }", /slip rings/],
  ["{ kind: two-speed }", /one speed only/],
  ["{ kind: dc }", /loses its field runs away/],
  ["{ kind: induction, leads: 6, speeds: 2 }", /no star and no delta/],
] as const)("%s is told what it wants first", (motor, says) => {
  expect(motorOf(motor).join(" ")).toMatch(says);
});

test("2200 uF at 400 V fall to 60 V through 30 kohm in 125 s", () => {
  // R C ln(V/60) = 66 s * 1.897.
  expectNear(worked("spindle.drive.discharge-time", { R_b: "30 kohm", C: "2200 uF", V: "400 V" }), 125.2, 1e-3);
  expect(worked("spindle.drive.discharge-time", { R_b: "30 kohm", C: "2200 uF", V: "48 V" })).toBe(0);
});
