import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitted, textWidth } from "./text-width.ts";

// Length of a line of text at 100 px as a browser (Chromium 156, kerning on) gives it for the same face: an independent layout.
const inBrowser: readonly (readonly [string, number, number])[] = [
  ["Winding voltage for full torque at 60 Hz", 1611.3, 1662.5],
  ["rough hub, 6061", 673.9, 694.0],
  ["30 N·m, 26 to 35", 662.2, 682.2],
  ["Voltage at the machine, spindle starting", 1645.6, 1697.9],
  ["below 6.0 here the closer loses its grip", 1574.2, 1623.2],
];

describe("the width of words is what a browser makes of them, and never less by more than a hair", () => {
  test.each(inBrowser)("%s", (line, regular, bold) => {
    for (const [estimate, real] of [
      [textWidth(line, 100), regular],
      [textWidth(line, 100, true), bold],
    ] as const) {
      expect(estimate / real).toBeGreaterThan(0.998);
      expect(estimate / real).toBeLessThan(1.03);
    }
  });
});

test("figures are tabular: every number of n figures is as wide as every other", () => {
  for (const figure of "0123456789") expect(textWidth(figure.repeat(4), 12)).toBeCloseTo(textWidth("8888", 12), 9);
});

test("an accent takes no room of its own, and a letter the face lacks is given the widest", () => {
  expect(textWidth("É", 10)).toBe(textWidth("E", 10));
  expect(textWidth("漢", 10)).toBeGreaterThan(textWidth("W", 10));
});

test("width adds up letter by letter and grows with the size", () => {
  fc.assert(
    fc.property(fc.string(), fc.string(), fc.integer({ min: 1, max: 40 }), (a, b, size) => {
      // A surrogate pair split over both halves would be one letter in the whole.
      fc.pre(!/[\uD800-\uDFFF]/.test(a + b));
      expect(textWidth(a + b, size)).toBeCloseTo(textWidth(a, size) + textWidth(b, size), 6);
      expect(textWidth(a, 2 * size)).toBeCloseTo(2 * textWidth(a, size), 6);
    }),
  );
});

test("words that fit stay whole, words that do not are cut to fit and say so", () => {
  expect(fitted("Compressor", 200, 12)).toBe("Compressor");
  expect(fitted("Compressor, two stages", 76, 12)).toBe("Compressor…");
  expect(fitted("Compressor", 2, 12)).toBe("");
  fc.assert(
    fc.property(fc.string(), fc.integer({ min: 0, max: 200 }), (line, width) => {
      expect(textWidth(fitted(line, width, 12), 12)).toBeLessThanOrEqual(width + 1e-9);
    }),
  );
});
