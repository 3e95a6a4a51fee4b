import { expect, test } from "vitest";
import { curveOf } from "./curve.ts";
import { linearScale } from "./scale.ts";

const x = linearScale(0, 100, 0, 100);
const y = linearScale(0, 100, 100, 0);

test("a line of few samples is drawn as it is", () => {
  const curve = curveOf([0, 50, 100], [0, 10, 100], x, y);
  expect(curve).toEqual({
    isThinned: false,
    runs: [
      [
        { x: 0, y: 100 },
        { x: 50, y: 90 },
        { x: 100, y: 0 },
      ],
    ],
  });
});

test("a reading that is missing leaves a gap, not a line across it", () => {
  const { runs } = curveOf([0, 1, 2, 3, 4], [5, 5, Number.NaN, 5, 5], x, y);
  expect(runs.map((run) => run.map((point) => point.x))).toEqual([
    [0, 1],
    [3, 4],
  ]);
});

test("a dense trace keeps the one sample that dips, and at most two points a pixel", () => {
  const times = Array.from({ length: 50_000 }, (_, i) => i / 500);
  const pressure = times.map((t) => 60 + 10 * Math.sin(t));
  pressure[31_234] = 3;
  const { runs, isThinned } = curveOf(times, pressure, x, y);
  const points = runs.flat();
  expect(isThinned).toBe(true);
  expect(points.length).toBeLessThanOrEqual(2 * 101);
  expect(Math.max(...points.map((point) => point.y))).toBeCloseTo(97, 9);
  const inColumn = (column: number) => points.filter((point) => Math.floor(point.x) === column).length;
  expect(Math.max(...points.map((point) => inColumn(Math.floor(point.x))))).toBe(2);
});

test("lowest and highest of a column keep their order in time", () => {
  const times = Array.from({ length: 1000 }, (_, i) => i / 100);
  const rising = curveOf(times, times, x, y).runs.flat();
  expect(rising.every((point, i) => point.y <= (rising[i - 1]?.y ?? Infinity))).toBe(true);
});

test("a path that turns back keeps every point, however many there are", () => {
  const turns = Array.from({ length: 2000 }, (_, i) => i / 100);
  const across = turns.map((t) => 5 + Math.cos(t));
  const { runs, isThinned } = curveOf(across, turns, x, y);
  expect([isThinned, runs.flat().length]).toEqual([false, 2000]);
});
