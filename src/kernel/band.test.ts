import fc from "fast-check";
import { expect, test } from "vitest";
import { band, type Column, explained, hole } from "./band.ts";
import { normalQuantile } from "./normal.ts";
import { SAMPLES, SLOW_SAMPLES, stratified, uniforms } from "./random.ts";

const columnOf = (v: Iterable<number>): Column => ({ v: Float64Array.from(v), holes: null });
const map = (u: Float64Array, f: (p: number) => number): Float64Array => u.map(f);

/** The limit by sorting: rank p (n + 1), linear between neighbours. */
function bySorting(values: readonly number[], p: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  const rank = Math.min(Math.max(p * (sorted.length + 1), 1), sorted.length);
  const [low = NaN, high = NaN] = [sorted[Math.floor(rank) - 1], sorted[Math.min(Math.floor(rank), sorted.length - 1)]];
  return low + (rank - Math.floor(rank)) * (high - low);
}

test("limits by selection are those by sorting, ties and few values included", () => {
  const value = fc.oneof(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.constantFrom(0, 1, 1, 1));
  fc.assert(
    fc.property(fc.array(value, { minLength: 1, maxLength: 200 }), (values) => {
      const { nominal, low, high } = band(columnOf([7, ...values]));
      expect(nominal).toBe(7);
      expect(low).toBeCloseTo(bySorting(values, 0.05), 6);
      expect(high).toBeCloseTo(bySorting(values, 0.95), 6);
    }),
  );
});

test("of a range known to its ends the limits are 5 and 95 % of the way", () => {
  const { low, high } = band({ v: map(stratified("winch/radius"), (p) => 80 + 40 * p), holes: null });
  // A stratum is 1/936 wide: the rank is off by one at most.
  expect(Math.abs(low - 82)).toBeLessThan(0.1);
  expect(Math.abs(high - 118)).toBeLessThan(0.1);
});

test("of a reading the limits lie 1.645 standard deviations off", () => {
  const { low, high } = band({ v: map(stratified("winch/grip"), (p) => 10 + 2 * normalQuantile(p)), holes: null });
  expect(Math.abs(low - (10 - 2 * 1.6449))).toBeLessThan(0.05);
  expect(Math.abs(high - (10 + 2 * 1.6449))).toBeLessThan(0.05);
});

/** Product of four inputs known to 20 % each, drawn for one shop out of many. */
const productOf = (seed: number): Float64Array => {
  const four = [0, 1, 2, 3].map((i) => stratified(`shop-${seed}/input-${i}`));
  return Float64Array.from({ length: SAMPLES }, (_, k) => four.reduce((p, u) => p * (0.8 + 0.4 * (u[k] ?? 0.5)), 1));
};
/** 5 % limit of that product, from two million independent draws of another kind: a plain generator, no strata. */
const truth = ((): number => {
  const next = uniforms("truth of four");
  const drawn = Float64Array.from({ length: 2_000_000 }, () => [0, 1, 2, 3].reduce((p) => p * (0.8 + 0.4 * next()), 1)).sort();
  return drawn[100_000] ?? NaN;
})();
const scatter = (limits: readonly number[]): { bias: number; spread: number } => {
  const mean = limits.reduce((s, x) => s + x, 0) / limits.length;
  const variance = limits.reduce((s, x) => s + (x - mean) ** 2, 0) / (limits.length - 1);
  return { bias: mean / truth - 1, spread: Math.sqrt(variance) / truth };
};
const seeds = Array.from({ length: 200 }, (_, i) => i);

test("from one set of shops to another the 5 % limit of a product of four scatters by some 1.3 %", () => {
  const { bias, spread } = scatter(seeds.map((s) => band({ v: productOf(s), holes: null }).low));
  expect(spread).toBeGreaterThan(0.009);
  expect(spread).toBeLessThan(0.015);
  expect(Math.abs(bias)).toBeLessThan(0.003);
});

test("the 64 slow shops alone scatter by 5 %, and err to the wide side", () => {
  const { bias, spread } = scatter(seeds.map((s) => band(columnOf(productOf(s).subarray(0, SLOW_SAMPLES))).low));
  expect(spread).toBeLessThan(0.055);
  expect(bias).toBeLessThan(0);
  expect(bias).toBeGreaterThan(-0.02);
});

test("shops without a value count as asked: not at all, or as the worst and the best", () => {
  const v = Float64Array.from({ length: SAMPLES }, (_, k) => (k % 10 === 1 ? NaN : 1 + k / SAMPLES));
  const c: Column = { v, holes: new Map([["refused", 100]]) };
  expect(band(c).low).toBeGreaterThan(1);
  expect(band(c, { low: 0, high: Infinity })).toMatchObject({ low: 0, high: Infinity });
  expect(band(hole("refused"))).toEqual({ nominal: NaN, low: NaN, high: NaN });
  expect(band(hole("refused"), { low: 0, high: Infinity })).toEqual({ nominal: NaN, low: 0, high: Infinity });
  expect(band({ v: new Float64Array(SAMPLES).fill(NaN), holes: new Map([["refused", SAMPLES]]) })).toEqual({
    nominal: NaN,
    low: NaN,
    high: NaN,
  });
});

test("never is a value: a limit may be endless while the other is not", () => {
  const v = Float64Array.from({ length: SAMPLES }, (_, k) => (k % 2 === 0 ? Infinity : k));
  expect(band({ v, holes: null })).toMatchObject({ nominal: Infinity, high: Infinity });
  expect(band({ v, holes: null }).low).toBeGreaterThan(0);
});

test("a column of one value is exact, and its band is kept with it", () => {
  const one = columnOf([3]);
  expect(band(one)).toEqual({ nominal: 3, low: 3, high: 3 });
  const wide = { v: productOf(1), holes: null };
  expect(band(wide)).toBe(band(wide));
});

const threeOf = (seed: number): Float64Array[] => ["a", "b", "c"].map((n) => stratified(`winch-${seed}/share-${n}`));
const three = threeOf(0);
const stranger = stratified("winch/stranger");
const sumOf = (weights: readonly number[], f: (x: number) => number, of = three): Float64Array =>
  Float64Array.from({ length: SAMPLES }, (_, k) => f(weights.reduce((s, w, i) => s + w * ((of[i]?.[k] ?? 0.5) - 0.5), 0)));
const meanOf = (values: readonly number[]): number => values.reduce((s, x) => s + x, 0) / values.length;

test("of a product the unknowns explain their shares of the spread: 9, 4 and 1 of 14", () => {
  // One set of shops reads a share to some 0.02; the mean of fifty to a tenth of that.
  const found = seeds.slice(0, 50).map((seed) => {
    const y = sumOf([3, 2, 1], Math.exp, threeOf(seed));
    return [...threeOf(seed), stranger].map((x) => explained(y, x));
  });
  for (const [i, share] of [9 / 14, 4 / 14, 1 / 14, 0].entries()) {
    const each = found.map((shares) => shares[i] ?? NaN);
    expect(Math.abs(meanOf(each) - share)).toBeLessThan(0.01);
    expect(Math.max(...each.map((x) => Math.abs(x - share)))).toBeLessThan(0.08);
  }
});

test("of what may be negative, endless or a yes and a no the shares are found too", () => {
  for (const f of [(x: number) => x, (x: number) => (x > 0 ? 1 : 0), (x: number) => (x > 1.5 ? Infinity : x + 4)]) {
    const y = sumOf([3, 1, 0], f);
    const [a = 0, b = 0, c = 1] = three.map((x) => explained(y, x));
    expect(a).toBeGreaterThan(0.55);
    expect(b).toBeGreaterThan(0.01);
    expect(b).toBeLessThan(0.2);
    expect(c).toBeLessThan(0.03);
  }
});

test("an unknown that alone decides explains all, up or down, straight or bent; one that decides nothing, nothing", () => {
  const [x = new Float64Array(0)] = three;
  for (const f of [(u: number) => 1 + u, (u: number) => 1 / (1 + u), (u: number) => 1 + (u - 0.5) ** 2])
    expect(explained(map(x, f), x)).toBeGreaterThan(0.98);
  expect(
    explained(
      map(x, () => 5),
      x,
    ),
  ).toBe(0);
  expect(
    explained(
      map(x, () => 0),
      x,
    ),
  ).toBe(0);
  // Rounding noise is no spread.
  expect(
    explained(
      map(x, (u) => 5 * (1 + 1e-16 * u)),
      x,
    ),
  ).toBe(0);
});

test("too few values explain nothing", () => {
  const y = stranger.map((u, k) => (k < 950 ? NaN : 1 + u));
  expect(explained(y, stranger)).toBe(0);
});
