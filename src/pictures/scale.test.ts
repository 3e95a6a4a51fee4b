import fc from "fast-check";
import { expect, test } from "vitest";
import { clockStep, clockWords, linearScale, logScale, logTicks, multiples, niceStep, tickWords } from "./scale.ts";

test("a linear scale sends its ends to the ends of the axis, and a pixel back to its value", () => {
  const scale = linearScale(0, 3200, 40, 560);
  expect([scale.toPixel(0), scale.toPixel(3200), scale.toPixel(1600)]).toEqual([40, 560, 300]);
  expect(scale.toValue(scale.toPixel(1234))).toBeCloseTo(1234, 9);
});

test("on a logarithmic scale each decade is as wide as the next, and nothing stands at zero", () => {
  const scale = logScale(1, 1000, 0, 300);
  expect([1, 10, 100, 1000].map((value) => Math.round(scale.toPixel(value)))).toEqual([0, 100, 200, 300]);
  expect(scale.toValue(150)).toBeCloseTo(31.6227766, 6);
  expect(scale.toPixel(0)).toBeNaN();
  expect(scale.toPixel(-1)).toBeNaN();
});

test("steps are 1, 2 or 5 times a power of ten and no more than asked", () => {
  expect([niceStep(3200, 8), niceStep(50, 7), niceStep(0.9, 5), niceStep(1, 1), niceStep(10, 10)]).toEqual([500, 10, 0.2, 1, 1]);
  fc.assert(
    fc.property(fc.double({ min: 1e-9, max: 1e9, noNaN: true }), fc.integer({ min: 1, max: 12 }), (span, count) => {
      const step = niceStep(span, count);
      const lead = step / 10 ** Math.floor(Math.log10(step) + 1e-9);
      expect([1, 2, 5].some((nice) => Math.abs(lead - nice) < 1e-6)).toBe(true);
      expect(span / step).toBeLessThanOrEqual(count * (1 + 1e-6));
      expect(span / step).toBeGreaterThan(count / 2.6); // The next finer step would have been too many.
    }),
  );
});

test("ticks are the whole multiples between the ends, ends included", () => {
  expect(multiples(0, 50, 10)).toEqual([0, 10, 20, 30, 40, 50]);
  expect(multiples(0.1, 0.35, 0.1).map((at) => at.toFixed(1))).toEqual(["0.1", "0.2", "0.3"]);
  expect(multiples(-25, 15, 10)).toEqual([-20, -10, 0, 10]);
});

test("a tick is written with the decimals of its step, and minus as a minus sign", () => {
  expect([tickWords(0.30000000000000004, 0.1), tickWords(0, 0.01), tickWords(1500, 500), tickWords(-2.5, 0.5)]).toEqual([
    "0.3",
    "0",
    "1500",
    "−2.5",
  ]);
  expect(tickWords(2e8, 1e8)).toBe("2e8");
});

test("a shift is cut into hours, ten minutes into minutes", () => {
  expect(clockStep(8 * 3600, 10)).toBe(3600);
  expect(clockStep(600, 10)).toBe(60);
  expect([clockWords(7 * 3600, 3600), clockWords(13 * 3600 + 60, 60), clockWords(26 * 3600, 3600), clockWords(61, 1)]).toEqual([
    "07:00",
    "13:01",
    "02:00",
    "00:01:01",
  ]);
});

test("logarithmic ticks fall on 1, 2, 5, or on decades alone where there are many", () => {
  expect(logTicks(1, 100, 8).map((tick) => tick.words)).toEqual(["1", "2", "5", "10", "20", "50", "100"]);
  expect(logTicks(0.01, 1000, 6).map((tick) => tick.words)).toEqual(["0.01", "0.1", "1", "10", "100", "1000"]);
});
