import { expect, test } from "vitest";
import { expectNear, refused, worked } from "./bench.test-help.ts";

test("copper that shows 1.71 ohm at 18 degC and 2.20 ohm hot is at 90.35 degC", () => {
  // (2.20/1.71)(234.5 + 18) - 234.5, IEC 60034-1 with 234.5.
  const T = worked("spindle.motor.winding-temperature", { R_hot: "2.20 ohm", R_cold: "1.71 ohm", T_cold: "18 degC" });
  expectNear(T - 273.15, 90.354, 1e-4);
});
test("test leads left in both readings make the winding look cooler", () => {
  const read = (lead: string) =>
    worked("spindle.motor.winding-temperature", { R_hot: "2.3 ohm", R_cold: "1.81 ohm", T_cold: "18 degC", R_lead: lead });
  expect(read("0.1 ohm")).toBeGreaterThan(read("0 ohm"));
  expect(
    refused("spindle.motor.winding-temperature", { R_hot: "2 ohm", R_cold: "0.05 ohm", T_cold: "18 degC", R_lead: "0.1 ohm" }).code,
  ).toBe("refused");
});

test("20 N*m for a quarter of the time heat like 10 N*m all the time", () => {
  expect(worked("spindle.motor.rms-load", { T: "20 N*m, 0 N*m", t: "3 s, 9 s" })).toBeCloseTo(10, 12);
});
test("a torque without its time is refused", () => {
  expect(refused("spindle.motor.rms-load", { T: "20 N*m, 5 N*m", t: "3 s" }).code).toBe("refused");
});

const turning = { J: "0.05 kg*m2", w_s: "1800 rpm" };
const half = 0.5 * 0.05 * (60 * Math.PI) ** 2;
test.each([
  ["direct-start", 1],
  ["dc-injection", 1],
  ["plug-to-stop", 3],
  ["plug-reversal", 4],
] as const)("%s leaves %d times the stored energy in the rotor", (how, times) => {
  expectNear(worked("spindle.motor.rotor-heat-of-start", { ...turning, how }), times * half, 1e-12);
});
test("the stator gets its share by R_1/R_2, and none of it from dc injection", () => {
  const stator = (how: string) => worked("spindle.motor.winding-heat-of-start", { ...turning, how, R_1: "0.9 ohm", R_2: "0.75 ohm" });
  expectNear(stator("direct-start"), half * 1.2, 1e-12);
  expect(stator("dc-injection")).toBe(0);
});

/** The lathe motor in series on its plate volts. */
const motor = {
  R_1: "0.9 ohm",
  X_1: "1.75 ohm",
  R_2: "0.75 ohm",
  X_2: "2.1 ohm",
  X_m: "52 ohm",
  p: "4",
  V_n: "460 V",
  f_n: "60 Hz",
  n_n: "1746 rpm",
  I_n: "11.272 A",
  V_max: "460 V",
  share: "67 %",
  g_0: "30 %",
};
const hours = (n: string, fan: string) => worked("spindle.motor.continuous-torque", { ...motor, n, fan });
test("at plate speed a winding stands its plate torque for hours, whatever cools it", () => {
  expectNear(hours("1746 rpm", "shaft"), 38.486, 1e-3);
  expectNear(hours("1746 rpm", "separate"), 38.486, 1e-3);
});
test("slowed down, a fan on the shaft leaves less and a fan of its own does not", () => {
  const [half_, tenth] = [hours("873 rpm", "shaft"), hours("175 rpm", "shaft")];
  expect(half_).toBeLessThan(38.5);
  expect(tenth).toBeLessThan(half_);
  expect(hours("873 rpm", "separate")).toBeGreaterThan(0.97 * 38.486);
});
