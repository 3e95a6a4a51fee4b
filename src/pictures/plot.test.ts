import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { plotFrame } from "./plot-frame.ts";
import type { PlotSpec } from "./plot-spec.ts";
import { plot } from "./plot.ts";
import { isWithin, overlap, writtenBoxes } from "./words.ts";

const speeds = Array.from({ length: 60 }, (_, i) => i * 50);
const base: PlotSpec = {
  prefix: "p",
  title: "Torque against speed",
  label: "The cut stays below the motor.",
  width: 560,
  height: 360,
  x: { label: "spindle", unit: "rpm" },
  y: { label: "torque", unit: "N·m" },
  series: [{ name: "as found", x: speeds, y: speeds.map((n) => 30 - n / 200), role: "base" }],
};

const written = (svg: string, text: string) => writtenBoxes(svg).filter((box) => box.text === text);

test("the name of a line stands on the plot, near its line and clear of it", () => {
  const svg = plot(base);
  const [name] = written(svg, "as found");
  const { panels, x } = plotFrame(base);
  const panel = panels[0];
  if (!name || !panel) throw new Error("the name was not written");
  expect(isWithin(name, panel.area)).toBe(true);
  const middle = name.x + name.width / 2;
  const line = panel.y.scale.toPixel(30 - x.scale.toValue(middle) / 200);
  const distance = Math.min(Math.abs(name.y - line), Math.abs(name.y + name.height - line));
  expect(distance).toBeLessThan(14);
  expect(name.y < line && name.y + name.height > line).toBe(false);
});

test("a name asked to stand at a speed stands there", () => {
  const svg = plot({ ...base, series: [{ name: "as found", x: speeds, y: speeds.map(() => 20), role: "base", labelAt: 2000 }] });
  const [name] = written(svg, "as found");
  expect(plotFrame(base).x.scale.toValue((name?.x ?? 0) + (name?.width ?? 0) / 2)).toBeCloseTo(2000, -2);
});

test("every verdict on the plot has its word and its shape", () => {
  const svg = plot({ ...base, points: [{ x: 1000, y: 12, label: "rough 304", verdict: "fails" }] });
  expect(written(svg, "fails rough 304")).toHaveLength(1);
  expect(svg).toContain('class="vf fails"/><path d="M4 4l6 6');
  expect(svg).toContain("<title>rough 304: fails</title>");
});

test("everything that could run out of the plot is clipped to it", () => {
  const svg = plot({ ...base, y: { ...base.y, min: 20, max: 25 } });
  const clip = /<clipPath id="p-clip-0"><rect x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)"/.exec(svg);
  const { area } = plotFrame(base).panels[0] ?? {};
  expect(clip?.slice(1, 5).map(Number)).toEqual([area?.x, area?.y, area?.width, area?.height]);
  expect(/<g clip-path="url\(#p-clip-0\)">[\s\S]*<title>as found<\/title>[\s\S]*<\/g>/.test(svg)).toBe(true);
});

test("what a limit forbids is hatched on its side only", () => {
  const svg = plot({ ...base, limits: [{ on: "y", at: 20, words: "not below 20", forbids: "below" }] });
  const { area, y } = plotFrame({ ...base, limits: [{ on: "y", at: 20, words: "", forbids: "below" }] }).panels[0] ?? {};
  const rect = /<rect x="[\d.]+" y="([\d.]+)" width="[\d.]+" height="([\d.]+)" fill="url\(#p-hatch\)"/.exec(svg);
  if (!area || !y) throw new Error("no panel");
  expect(Number(rect?.[1])).toBeCloseTo(y.scale.toPixel(20), 0);
  expect(Number(rect?.[1]) + Number(rect?.[2])).toBeCloseTo(area.y + area.height, 0);
  expect(written(svg, "not below 20")).toHaveLength(1);
});

test("a limit outside the range is not drawn", () => {
  const svg = plot({ ...base, x: { ...base.x, max: 2000 }, limits: [{ on: "x", at: 3000, words: "collet", role: "quiet" }] });
  expect(svg).not.toContain('stroke-dasharray="1 3"');
});

test("amounts start at nothing unless they are nearly alike; the ends of the y axis are whole ticks", () => {
  const ends = (y: number[]) => {
    const { min, max } = plotFrame({ ...base, series: [{ name: "", x: [0, 1], y, role: "base" }] }).panels[0]?.y.scale ?? {};
    return [min, max];
  };
  expect(ends([3, 41])).toEqual([0, 50]);
  expect(ends([236, 243])).toEqual([236, 243]);
  expect(ends([-3, 8])).toEqual([-4, 8]);
});

describe("a plot of nothing is still a plot", () => {
  test.each([
    ["no series", []],
    ["one sample", [{ name: "a", x: [3], y: [3], role: "base" as const }]],
    ["no number at all", [{ name: "a", x: [1, 2], y: [Number.NaN, Number.NaN], role: "base" as const }]],
    ["zero on a logarithmic axis", [{ name: "a", x: [0, 1, 10], y: [0, 1, 10], role: "base" as const }]],
  ])("%s", (name, series) => {
    const axis = name.includes("log") ? { scale: "log" as const } : {};
    const svg = plot({ ...base, series, x: { ...base.x, ...axis }, y: { ...base.y, ...axis } });
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    expect(written(svg, "Torque against speed")).toHaveLength(1);
  });
});

const number = fc.double({ min: -1e4, max: 1e4, noNaN: true });
const word = fc.constantFrom("a", "rough 304", "as found, all day", "part off 32 mm, worst diameter", "M");
const verdict = fc.constantFrom("holds" as const, "tight" as const, "fails" as const, "open" as const);
const spot = { x: number, y: number };
const panel = {
  series: fc.array(
    fc.record({
      name: word,
      role: fc.constantFrom("base" as const, "option" as const, "limit" as const, "quiet" as const),
      dash: fc.boolean(),
      x: fc.array(number, { minLength: 2, maxLength: 12 }),
      y: fc.array(number, { minLength: 12, maxLength: 12 }),
    }),
    { maxLength: 5 },
  ),
  points: fc.array(fc.record({ ...spot, label: word, verdict }), { maxLength: 8 }),
  markers: fc.array(fc.record({ ...spot, words: word }), { maxLength: 2 }),
  limits: fc.array(fc.record({ on: fc.constantFrom("x" as const, "y" as const), at: number, words: word }), { maxLength: 3 }),
};
const lanes = fc.array(fc.record({ name: word, busy: fc.array(fc.tuple(number, number), { maxLength: 3 }) }), { maxLength: 3 });
const below = fc.record({ ...panel, y: fc.constant({ label: "power", unit: "kW" }) });
const anyPlot = fc.record({ ...panel, lanes, width: fc.integer({ min: 320, max: 1100 }), height: fc.integer({ min: 220, max: 500 }) });

test("whatever is plotted, no two words overlap, none leaves the drawing and none is smaller than 12 px", () => {
  fc.assert(
    fc.property(anyPlot, fc.option(below), (random, lower) => {
      const svg = plot({ ...base, ...random, ...(lower ? { below: lower, height: random.height + 160 } : {}) });

      const boxes = writtenBoxes(svg);
      const sheet = { x: 0, y: 0, width: random.width, height: random.height + (lower ? 160 : 0) };
      expect(boxes.filter((box) => !isWithin(box, sheet))).toEqual([]);
      expect(boxes.filter((box, i) => boxes.slice(i + 1).some((other) => overlap(box, other)))).toEqual([]);
      expect(boxes.every((box) => box.size >= 12)).toBe(true);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    }),
    { seed: 7, numRuns: 150 },
  );
});
