import { expect, test } from "vitest";
import { shareOfLarger } from "./paired.ts";

const column = (...v: number[]): Float64Array => Float64Array.from(v);

test("shops are compared one by one, the nominal case left out", () => {
  expect(shareOfLarger(column(9, 1, 2, 3, 4), column(0, 2, 3, 2, 5))).toBe(75);
});

test("two columns that overlap widely may still be better in every shop", () => {
  const was = column(0, 1, 10, 100);
  expect(
    shareOfLarger(
      was,
      was.map((x) => 1.01 * x),
    ),
  ).toBe(100);
});

test("what differs by rounding alone is not better", () => {
  const was = column(0, 1, 2, 3);
  expect(
    shareOfLarger(
      was,
      was.map((x) => x * (1 + 1e-12)),
    ),
  ).toBe(0);
});

test("shops without a value are left out, and with none there is nothing to say", () => {
  expect(shareOfLarger(column(0, 1, Number.NaN, 1), column(0, 2, 2, 0.5))).toBe(50);
  expect(shareOfLarger(column(Number.NaN), column(1))).toBeNull();
});

test("a margin that is the same in all shops is compared once, and one without end is the larger", () => {
  expect(shareOfLarger(column(1), column(2))).toBe(100);
  expect(shareOfLarger(column(0, 1, 1), column(Infinity))).toBe(100);
});
