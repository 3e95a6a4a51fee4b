import { expect, test } from "vitest";
import { serviceKinds } from "./service.ts";
import { capacity, sourceResistance } from "./source.ts";

test("60 A at 240 V split phase, four fifths for hours, carry 11.52 kVA", () => {
  expect(capacity({ V: 240, I: 60, u: 0.8, phases: serviceKinds["split-phase"].phases })).toBeCloseTo(11520, 9);
});

test("32 A at 400 V three-phase are 22.17 kVA", () => {
  expect(capacity({ V: 400, I: 32, u: 1, phases: serviceKinds["three-phase-star"].phases })).toBeCloseTo(22170, -1);
});

test("242.6 V idle and 238.9 V at 21 A put 0.176 ohm behind the panel", () => {
  expect(sourceResistance({ V_0: 242.6, V_1: 238.9, I_0: 0, I_1: 21, phases: 1 })).toBeCloseTo(3.7 / 21, 12);
});

test("between three lines the same two readings mean 1.73 times less in each line", () => {
  const one = sourceResistance({ V_0: 402, V_1: 396, I_0: 2, I_1: 22, phases: 1 });
  expect(sourceResistance({ V_0: 402, V_1: 396, I_0: 2, I_1: 22, phases: 3 })).toBeCloseTo(one / Math.sqrt(3), 12);
});

test("the high leg of 240 V stands at 208 V from earth, a split-phase line at 120 V", () => {
  expect(240 * serviceKinds["three-phase-high-leg"].toEarth).toBeCloseTo(207.8, 1);
  expect(240 * serviceKinds["split-phase"].toEarth).toBe(120);
});
