import { expect, test } from "vitest";
import { autotransformerRating, transformerRating } from "./transformer.ts";

test("6 kVA on a transformer that may carry four fifths for hours need 7.5 kVA", () => {
  expect(transformerRating({ S_load: 6000, u: 0.8 })).toBeCloseTo(7500, 9);
});

test("stepping 208 V up to 240 V by autotransformer moves only 13 % of the power through iron", () => {
  expect(autotransformerRating({ S_load: 5000, V_low: 208, V_high: 240 })).toBeCloseTo(5000 * (32 / 240), 9);
});

test("a 100 VA two-winding transformer of 120 and 12 V carries 1100 VA as an autotransformer to 132 V", () => {
  // Chapman, Electric Machinery Fundamentals, example 2-7 (quoted from memory): advantage of 11.
  expect(autotransformerRating({ S_load: 1100, V_low: 120, V_high: 132 })).toBeCloseTo(100, 9);
});

test("equal voltages need no transformer at all", () => {
  expect(autotransformerRating({ S_load: 5000, V_low: 240, V_high: 240 })).toBe(0);
});
