import fc from "fast-check";
import { expect, test } from "vitest";
import { root } from "./root.ts";

test("the cosine meets the diagonal at 0.739085133215161", () => {
  // Dottie number, OEIS A003957.
  expect(root((x) => Math.cos(x) - x, 0, 1)).toBeCloseTo(0.739085133215161, 14);
});

test("Wallis's cubic x^3 - 2x - 5 has its root at 2.0945514815423265", () => {
  // Wallis 1685, the classic test of root finders; digits OEIS A007493.
  expect(root((x) => x ** 3 - 2 * x - 5, 2, 3)).toBeCloseTo(2.0945514815423265, 14);
});

test("a root at the edge of the bracket is found, one outside is not made up", () => {
  expect(root((x) => x, 0, 1)).toBe(0);
  expect(root((x) => x - 1, 0, 1)).toBe(1);
  expect(root((x) => x * x + 1, -1, 1)).toBeNull();
  expect(root((x) => Math.sqrt(x - 2), -1, 1)).toBeNull();
});

test("a flat triple root and a kink end within the tolerance", () => {
  expect(Math.abs((root((x) => (x - 0.3) ** 3, -5, 4, 1e-9) ?? 9) - 0.3)).toBeLessThan(1e-9);
  expect(Math.abs((root((x) => (x < 0.7 ? -1 : 1e9 * (x - 0.7) + 1), 0, 5, 1e-9) ?? 9) - 0.7)).toBeLessThan(1e-9);
});

test("a smooth curve takes no more than a dozen steps where halving takes fifty", () => {
  let asked = 0;
  root(
    (x) => {
      asked++;
      return Math.exp(x) - 20;
    },
    0,
    10,
  );
  expect(asked).toBeLessThanOrEqual(16);
});

test("wherever a rising cubic is bracketed its root is found, from either side", () => {
  const anywhere = fc.double({ min: -50, max: 50, noNaN: true });
  fc.assert(
    fc.property(anywhere, anywhere, fc.double({ min: 1e-3, max: 1e3, noNaN: true }), fc.boolean(), (at, far, slope, turned) => {
      fc.pre(Math.abs(far - at) > 1e-6);
      const f = (x: number) => slope * (x - at) + (x - at) ** 3;
      const [lo, hi] = turned ? [far, 2 * at - far] : [2 * at - far, far];
      expect(Math.abs((root(f, lo, hi) ?? Infinity) - at)).toBeLessThan(1e-9);
    }),
    { seed: 1 },
  );
});
