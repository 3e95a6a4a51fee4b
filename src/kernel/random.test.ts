import { expect, test } from "vitest";
import { SAMPLES, SLOW_SAMPLES, stratified, uniforms } from "./random.ts";

/** How often each of n strata is hit by the samples from one place to another. */
function hits(u: Float64Array, from: number, to: number): number[] {
  const n = to - from;
  const count = Array.from({ length: n }, () => 0);
  for (let k = from; k < to; k += 1) {
    const s = Math.floor((u[k] ?? -1) * n);
    count[s] = (count[s] ?? 0) + 1;
  }
  return count;
}

const once = (n: number): number[] => Array.from({ length: n }, () => 1);

test("the 63 slow shops and the 936 others each hit every one of their strata once", () => {
  for (const name of ["winch/load", "crane/load", "shop/voltage"]) {
    const u = stratified(name);
    expect(u[0]).toBe(0.5);
    expect(hits(u, 1, SLOW_SAMPLES)).toEqual(once(63));
    expect(hits(u, SLOW_SAMPLES, SAMPLES)).toEqual(once(936));
  }
});

test("a name always draws the same numbers, whatever was drawn before", () => {
  const first = Float64Array.from(stratified("winch/first"));
  for (let i = 0; i < 6000; i += 1) stratified(`winch/another-${i}`);
  expect(stratified("winch/first")).toEqual(first);
});

test("numbers lie inside 0 and 1, never on them, and their mean is a half", () => {
  const next = uniforms("winch/mean");
  const drawn = Array.from({ length: 100_000 }, next);
  expect(drawn.every((u) => u > 0 && u < 1)).toBe(true);
  // Standard error of the mean: 1 / sqrt(12 n) = 0.0009; five of them.
  expect(Math.abs(drawn.reduce((s, u) => s + u, 0) / drawn.length - 0.5)).toBeLessThan(0.0046);
});

test("what two inputs happen to be has nothing to do with one another", () => {
  const columns = Array.from({ length: 60 }, (_, i) => stratified(`lathe/axes.x.input-${i}`));
  const ranked = (u: Float64Array): number[] => Array.from(u.subarray(1), (x) => x - 0.5);
  let worst = 0;
  for (const [i, a] of columns.entries())
    for (const b of columns.slice(i + 1)) {
      const [x, y] = [ranked(a), ranked(b)];
      worst = Math.max(worst, Math.abs(12 * (x.reduce((s, v, k) => s + v * (y[k] ?? 0), 0) / x.length)));
    }
  // 1,770 pairs of 999: the largest of as many normal draws of 1 / sqrt(999) is about 3.5 of them; five would be a fault.
  expect(worst).toBeLessThan(5 / Math.sqrt(999));
});
