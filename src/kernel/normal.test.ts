import fc from "fast-check";
import { expect, test } from "vitest";
import { normalQuantile } from "./normal.ts";

// Worked out apart from this program: the series of Phi in decimal arithmetic of 60 digits, solved by halving; here to the nearest double.
const references: readonly (readonly [p: number, z: number])[] = [
  [0.6, 0.2533471031357998],
  [0.75, 0.6744897501960817],
  [0.9, 1.2815515655446004],
  [0.95, 1.6448536269514726],
  [0.975, 1.9599639845400543],
  [0.99, 2.326347874040841],
  [0.999, 3.0902323061678136],
  [0.05, -1.6448536269514726],
  [0.001, -3.0902323061678136],
  [1e-5, -4.264890793922825],
  [1e-9, -5.9978070150076865],
  [1e-12, -7.034483825301132],
];

// A few of the last digits of z, and of the 1 - p that a p near 1 leaves.
test.each(references)("a reading of probability %d lies %d standard deviations off", (p, z) => {
  expect(Math.abs(normalQuantile(p) - z)).toBeLessThan(4e-15 * Math.max(1, Math.abs(z)) + 4e-16 / (1 - p < p ? 1 - p : 1));
});

test("half of all readings lie below the middle", () => {
  expect(Math.abs(normalQuantile(0.5))).toBeLessThan(1e-15);
});

test("readings scatter alike on both sides, and a likelier limit lies further out", () => {
  const p = fc.double({ min: 1e-9, max: 0.5, noNaN: true });
  fc.assert(
    fc.property(p, p, (a, b) => {
      expect(normalQuantile(1 - a)).toBeCloseTo(-normalQuantile(a), 6);
      if (b - a > 1e-9 * a) expect(normalQuantile(b)).toBeGreaterThan(normalQuantile(a));
    }),
  );
});
