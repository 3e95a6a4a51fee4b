import fc from "fast-check";
import { expect, test } from "vitest";
import { isTriangle, negativeSequence, unbalance } from "./unbalance.ts";

/** Line voltages of a supply with a known negative sequence: V_k = V_1 a^k + V_2 a^-k e^(j phi), by components. */
function lines(V_1: number, share: number, phi: number): { V_12: number; V_23: number; V_31: number } {
  const line = (k: number): number => {
    const step = (k * 2 * Math.PI) / 3;
    return Math.hypot(V_1 * (Math.cos(step) + share * Math.cos(phi - step)), V_1 * (Math.sin(step) + share * Math.sin(phi - step)));
  };
  return { V_12: line(0), V_23: line(1), V_31: line(2) };
}

test("three magnitudes alone give back the negative sequence that made them", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 100, max: 500, noNaN: true }),
      fc.double({ min: 1e-3, max: 0.95, noNaN: true }),
      fc.double({ min: 0, max: 6.28, noNaN: true }),
      (V_1, share, phi) => {
        expect(negativeSequence(lines(V_1, share, phi))).toBeCloseTo(share, 6);
      },
    ),
  );
});

test("460, 467 and 450 V are 1.96 % unbalanced", () => {
  // The example printed with the definition in NEMA MG 1 (14.35), quoted from memory: mean 459, deviation 9 (1.96 %).
  expect(unbalance({ V_12: 460, V_23: 467, V_31: 450 })).toBeCloseTo(0.0196, 4);
});

test("equal voltages are balanced by either rule, whatever their size", () => {
  expect(unbalance({ V_12: 231.7, V_23: 231.7, V_31: 231.7 })).toBeCloseTo(0, 12);
  expect(negativeSequence({ V_12: 231.7, V_23: 231.7, V_31: 231.7 })).toBeLessThan(1e-7);
});

test("a few percent read nearly the same by either rule, and both scale with the deviation", () => {
  const v = { V_12: 246, V_23: 240, V_31: 234 };
  expect(negativeSequence(v) / unbalance(v)).toBeGreaterThan(1);
  expect(negativeSequence(v) / unbalance(v)).toBeLessThan(2 / Math.sqrt(3) + 0.01);
});

test("single-phasing, two readings half of the third, is all negative sequence", () => {
  expect(negativeSequence({ V_12: 240, V_23: 120, V_31: 120 })).toBeCloseTo(1, 7);
});

test("readings that close to no triangle are no line voltages of one supply", () => {
  expect(isTriangle({ V_12: 240, V_23: 100, V_31: 100 })).toBe(false);
  expect(isTriangle({ V_12: 0, V_23: 240, V_31: 240 })).toBe(false);
  expect(isTriangle({ V_12: 240, V_23: 238, V_31: 247 })).toBe(true);
});
