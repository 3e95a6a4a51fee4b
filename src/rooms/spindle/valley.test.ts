import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { busState } from "./bus.ts";
import { outputVoltageMax } from "./drive.ts";
import { idealValley } from "./valley.ts";

fc.configureGlobal({ seed: 1 });

describe("the bus valley on an ideal line", () => {
  // Reference: solved apart from this code by bisection of the same energy balance.
  test.each([
    ["240 V 60 Hz, 2.6 kW, 1500 uF", 240, 60, 2600, 1500e-6, 301.19, 212.98],
    ["240 V 60 Hz, 2.6 kW, 820 uF", 240, 60, 2600, 820e-6, 270.65, 191.38],
    ["230 V 50 Hz, 4.6 kW, 1500 uF", 230, 50, 4600, 1500e-6, 242.33, 171.35],
  ])("%s", (_, V, f, P, C, valley, out) => {
    const found = idealValley({ V, f, P, C, phases: 1 });
    expect(Math.abs(found / valley - 1)).toBeLessThan(1e-3);
    expect(Math.abs(outputVoltageMax({ V_dc: found, k: 1 }) / out - 1)).toBeLessThan(1e-3);
  });

  test("is met where the capacitor has lost just what the load took since the crest", () => {
    const x = { V: 240, f: 60, P: 2600, C: 1500e-6, phases: 1 };
    const valley = idealValley(x);
    const t = (x.C * (2 * x.V ** 2 - valley ** 2)) / (2 * x.P);
    expect(t).toBeCloseTo(7.0624e-3, 6);
    expect(Math.abs(Math.SQRT2 * x.V * Math.cos(2 * Math.PI * x.f * t))).toBeCloseTo(valley, 6);
  });

  test("stays within 2 % of the simulation on a line with hardly any impedance", () => {
    for (const phases of [1, 3]) {
      const x = { V: 240, f: 60, P: 2400, C: 1000e-6, phases };
      expect(Math.abs(idealValley(x) / busState({ ...x, R: 0.005, L: 5e-6 }).V_valley - 1)).toBeLessThan(0.02);
    }
  });

  test("falls with the load and with less capacitance", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 5000, noNaN: true }),
        fc.double({ min: 1e-3, max: 3e-3, noNaN: true }),
        fc.double({ min: 1.01, max: 2, noNaN: true }),
        (P, C, k) => {
          const valley = idealValley({ V: 240, f: 60, P, C, phases: 1 });
          expect(idealValley({ V: 240, f: 60, P: P * k, C, phases: 1 })).toBeLessThan(valley);
          expect(idealValley({ V: 240, f: 60, P, C: C / k, phases: 1 })).toBeLessThan(valley);
        },
      ),
    );
  });

  test("of three phases never lies below the crossing of two lines, however small the bus", () => {
    expect(idealValley({ V: 400, f: 50, P: 5000, C: 1e-6, phases: 3 })).toBeCloseTo(400 * Math.SQRT2 * Math.cos(Math.PI / 6), 6);
  });

  test("is the crest without a load, and nothing when the bus is empty before the next half-wave", () => {
    for (const phases of [1, 3]) expect(idealValley({ V: 240, f: 60, P: 0, C: 1e-3, phases })).toBeCloseTo(240 * Math.SQRT2, 6);
    expect(idealValley({ V: 240, f: 60, P: 2400, C: 100e-6, phases: 1 })).toBe(0);
  });
});
