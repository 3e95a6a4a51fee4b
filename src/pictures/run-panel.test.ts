// A figure along a range: gaps where there is no number, a hatched band only where there is a spread.
import { expect, test } from "vitest";
import { runPanel } from "./run-panel.ts";

const x = [1, 2, 3];

test("what has no value and what never ends are gaps", () => {
  const { series, bands } = runPanel({
    name: "t",
    unit: "s",
    x,
    nominal: [1, Infinity, Number.NaN],
    low: [1, Infinity, Number.NaN],
    high: [1, Infinity, Number.NaN],
  });
  expect(series?.[0]?.y).toEqual([1, Number.NaN, Number.NaN]);
  expect(bands).toBeUndefined();
});

test("an exact figure has no band", () => {
  expect(runPanel({ name: "F", unit: "N", x, nominal: x, low: x, high: x }).bands).toBeUndefined();
});

test("a wide band carries its words, a narrow one would write them over its line", () => {
  const of = (spread: number): string | undefined =>
    runPanel({
      name: "F",
      unit: "N",
      x,
      nominal: [10, 20, 30],
      low: [10, 20, 30].map((y) => y - spread),
      high: [10, 20, 30].map((y) => y + spread),
    }).bands?.[0]?.words;
  expect(of(4)).toBe("5 % to 95 %");
  expect(of(0.2)).toBeUndefined();
});
