import fc from "fast-check";
import { expect, test } from "vitest";
import { type BandRows, bandRows } from "./band-rows.ts";
import { isWithin, overlap, writtenBoxes } from "./words.ts";

const spec: BandRows = {
  title: "Breakdown torque",
  label: "The standstill test narrows it most.",
  width: 586,
  unit: "N·m",
  rows: [
    { name: "from the plate alone", low: 80, high: 103, nominal: 91 },
    { name: "after the standstill test", low: 90, high: 93, nominal: 91, planned: true },
  ],
  limits: [{ at: 30, words: "plate torque" }],
};
const bars = (svg: string) => [...svg.matchAll(/<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)"/g)].map((m) => [Number(m[1]), Number(m[2])]);

test("each band starts and ends where its numbers stand on the one scale", () => {
  const [plate, after] = bars(bandRows(spec));
  const [x = 0, width = 0] = plate ?? [];
  const [x_2 = 0, width_2 = 0] = after ?? [];
  const perUnit = width / 23;
  expect(width_2 / 3).toBeCloseTo(perUnit, 1);
  expect((x_2 - x) / 10).toBeCloseTo(perUnit, 1);
});
test("what a measurement would leave is drawn as a promise, not as a finding", () => {
  expect(bandRows(spec).match(/stroke-dasharray/g)).toHaveLength(1);
});

const tenths = (to: number) => fc.integer({ min: 0, max: to }).map((n) => n / 10);
const row = fc.record({
  name: fc.constantFrom("now", "after the run without load", "with dc resistance and run without load and standstill test"),
  low: tenths(500),
  wide: tenths(600),
});
test("whatever the bands are, no words overlap or leave the drawing", () => {
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 4 }), fc.integer({ min: 340, max: 800 }), tenths(1200), (rows, width, at) => {
      const svg = bandRows({
        ...spec,
        width,
        rows: rows.map((r) => ({ name: r.name, low: r.low, high: r.low + r.wide, nominal: r.low + r.wide / 2 })),
        limits: [{ at, words: "plate torque" }],
      });
      const boxes = writtenBoxes(svg);
      const [, height = "0"] = /height="([\d.]+)"/.exec(svg) ?? [];
      expect(boxes.filter((box) => !isWithin(box, { x: -1, y: 0, width: width + 2, height: Number(height) })).map((b) => b.text)).toEqual(
        [],
      );
      expect(boxes.filter((box, i) => boxes.slice(i + 1).some((other) => overlap(box, other))).map((b) => b.text)).toEqual([]);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    }),
    { seed: 11, numRuns: 120 },
  );
});
