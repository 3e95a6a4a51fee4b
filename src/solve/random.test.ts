import { expect, test } from "vitest";
import { uniforms, words } from "./random.ts";

test("the generator gives the words of the published program from state 1, 2, 3, 4", () => {
  // Blackman and Vigna, xoshiro128starstar.c 1.1; the first two by hand: rotl(2 * 5, 7) * 9 = 11520, then s_1 = 0 gives 0.
  const next = words([1, 2, 3, 4]);
  expect(Array.from({ length: 10 }, next)).toEqual([
    11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
  ]);
});

test("one seed gives one stream, and neighbouring seeds have nothing in common", () => {
  const [a, again, b] = [uniforms("motor/1"), uniforms("motor/1"), uniforms("motor/2")];
  let together = 0;
  for (let k = 0; k < 10_000; k++) {
    const x = a();
    expect(again()).toBe(x);
    together += (x - 0.5) * (b() - 0.5);
  }
  // Correlation of 10,000 independent pairs: standard deviation 1/100.
  expect(Math.abs((together / 10_000) * 12)).toBeLessThan(0.04);
});

test("numbers lie evenly between 0 and 1, and each says nothing of the next", () => {
  const u = uniforms("even");
  const cells = Array.from({ length: 100 }, () => 0);
  const draws = 100_000;
  for (let k = 0, before = u(); k < draws; k++) {
    const x = u();
    const cell = 10 * Math.floor(10 * before) + Math.floor(10 * x);
    cells[cell] = (cells[cell] ?? 0) + 1;
    before = x;
  }
  const chiSquare = cells.reduce((sum, seen) => sum + (seen - draws / 100) ** 2 / (draws / 100), 0);
  // 99 degrees of freedom: 0.001 and 0.999 quantiles 61.1 and 148.2 (tables of chi-square).
  expect(chiSquare).toBeGreaterThan(61.1);
  expect(chiSquare).toBeLessThan(148.2);
});

test("an empty seed works and never gives 0 or 1", () => {
  const u = uniforms("");
  for (let k = 0; k < 1000; k++) {
    const x = u();
    expect(x > 0 && x < 1).toBe(true);
  }
});
