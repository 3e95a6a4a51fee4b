import { expect, test } from "vitest";
import { plotCsv, plotData } from "./plot-read.ts";
import type { PlotSpec } from "./plot-spec.ts";

const spec: PlotSpec = {
  prefix: "p",
  title: "Torque",
  label: "Torque falls.",
  width: 500,
  height: 300,
  x: { label: "spindle", unit: "rpm", min: 0, max: 3000 },
  y: { label: "torque", unit: "N·m" },
  series: [
    { name: "as found", x: [0, 1000, 3000], y: [30, 20, 10], role: "base" },
    { name: "gap", x: [0, 1000, 3000], y: [30, Number.NaN, 10], role: "quiet" },
    { name: "loop", x: [0, 2000, 1000], y: [1, 2, 3], role: "limit" },
  ],
  below: { y: { label: "power", unit: "kW" }, series: [{ name: "as found", x: [0, 3000], y: [0, 3], role: "base" }] },
};

test("a cursor reads every line between its samples, in both plots, and nothing in a gap or on a path that turns back", () => {
  const data = plotData(spec);
  const reading = data.at(data.x.toPixel(2000));
  expect(reading.x).toBeCloseTo(2000, 9);
  expect(reading.values.map(({ name, unit, value }) => [name, unit, Number(value.toFixed(6))])).toEqual([
    ["as found", "N·m", 15],
    ["as found", "kW", 2],
  ]);
  const [upper, lower] = data.panels;
  expect(reading.values[0]?.pixel).toBeCloseTo(upper?.y.toPixel(15) ?? 0, 6);
  expect(reading.values[1]?.pixel).toBeGreaterThan((lower?.area.y ?? Infinity) - 1);
});

test("a cursor outside the plot reads its edge", () => {
  const data = plotData(spec);
  expect(data.at(-500).x).toBeCloseTo(0, 9);
  expect(data.at(9999).x).toBeCloseTo(3000, 9);
  expect(data.at(-500).values.find((value) => value.name === "as found")?.value).toBe(30);
});

test("the table has units in its head row and one x column for lines that share their x", () => {
  const rows = plotCsv(spec).split("\r\n");
  expect(rows[0]).toBe("\uFEFFspindle [rpm],as found [N·m],gap [N·m],spindle [rpm],loop [N·m],spindle [rpm],as found [kW]");
  expect(rows[1]).toBe("0,30,30,0,1,0,0");
  expect(rows[2]).toBe("1000,20,,2000,2,3000,3");
  expect(rows[3]).toBe("3000,10,10,1000,3,,");
});

test("bands and points go into the table with their verdicts", () => {
  const rows = plotCsv({
    ...spec,
    series: [],
    below: { y: spec.y },
    bands: [{ x: [0, 1], low: [2, 3], high: [4, 5], words: "not known" }],
    points: [{ x: 7, y: 8, label: "rough, 304", verdict: "tight" }],
  }).split("\r\n");
  expect(rows[0]).toBe('\uFEFFspindle [rpm],"not known, low [N·m]","not known, high [N·m]",point,spindle [rpm],torque [N·m],verdict');
  expect(rows[1]).toBe('0,2,4,"rough, 304",7,8,tight');
});
