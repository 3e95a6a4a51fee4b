import { expect, test } from "vitest";
import { bandPlot } from "./band-plot.ts";
import type { BandPlot } from "./band-plot.ts";
import { shareBars, stackedBars } from "./bars.ts";
import type { StackedBars } from "./bars.ts";
import { overlap, writtenBoxes } from "./words.ts";

const supply: StackedBars = {
  prefix: "s",
  title: "The service",
  label: "Both starting reach 64 A.",
  width: 560,
  unit: "A",
  parts: ["existing", "machine", "compressor"],
  states: [
    { name: "idle", amounts: [4, 6, 0], verdict: "holds" },
    { name: "both starting", amounts: [4, 30, 30], verdict: "fails" },
  ],
  limits: [{ at: 60, words: "service 60" }],
};

/** Bars of the drawing: rectangles 18 px high as [x, width]. */
const bars = (svg: string) =>
  [...svg.matchAll(/<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)" height="18"/g)].map(
    (match) => [Number(match[1]), Number(match[2])] as const,
  );

test("the parts of a state stand end to end, each as long as its current", () => {
  const found = bars(stackedBars(supply));
  expect(found).toHaveLength(5); // A compressor that draws nothing has no bar.
  const [existing, machine, , running, compressor] = found;
  if (!existing || !machine || !running || !compressor) throw new Error("bars are missing");
  expect(machine[0]).toBeCloseTo(existing[0] + existing[1], 0);
  expect(machine[1] / existing[1]).toBeCloseTo(6 / 4, 1);
  expect(compressor[1] / running[1]).toBeCloseTo(1, 1);
});

test("every state says its sum and its verdict, on the desk and on the phone", () => {
  for (const width of [560, 358]) {
    const text = writtenBoxes(stackedBars({ ...supply, width })).map((box) => box.text);
    expect(text.some((line) => line.includes("64 A"))).toBe(true);
    expect(text.filter((line) => line === "holds" || line === "fails")).toEqual(["holds", "fails"]);
  }
});

test("limits close together have their words on two rows", () => {
  const boxes = writtenBoxes(
    stackedBars({
      ...supply,
      limits: [
        { at: 58, words: "for hours 58" },
        { at: 60, words: "service 60" },
      ],
    }),
  );
  const [a, b] = [boxes.find((box) => box.text === "for hours 58"), boxes.find((box) => box.text === "service 60")];
  if (!a || !b) throw new Error("a limit has no words");
  expect(overlap(a, b)).toBe(false);
  expect(a.y).not.toBeCloseTo(b.y, 0);
});

test("a share of 68 % is 68 hundredths of the way, a share too small to see is still seen", () => {
  const svg = shareBars({
    label: "",
    width: 300,
    shares: [
      { name: "a", share: 1 },
      { name: "b", share: 0.68 },
      { name: "c", share: 1e-6 },
      { name: "d", share: 0 },
    ],
  });
  const widths = [...svg.matchAll(/width="([\d.]+)" height="8"/g)].map((match) => Number(match[1]));
  expect((widths[1] ?? 0) / (widths[0] ?? 1)).toBeCloseTo(0.68, 2);
  expect(widths.slice(2)).toEqual([1, 0]);
});

const torque: BandPlot = { prefix: "b", label: "", width: 368, unit: "N·m", nominal: 30, low: 26, high: 36 };
/** Widths of the hatched and of the plain part of the band. */
function parts(spec: BandPlot): [hatched: number, plain: number] {
  const svg = bandPlot(spec);
  const width = (pattern: RegExp) => Number(pattern.exec(svg)?.[1] ?? 0);
  return [width(/width="([\d.]+)" height="12" fill="url/), width(/width="([\d.]+)" height="12" class="fi3"/)];
}

test("the part of a band that misses the need is hatched: below it when more is needed, above it when less is", () => {
  const [short, enough] = parts({ ...torque, need: { at: 31, words: "needed 31", side: "above" } });
  expect(short / enough).toBeCloseTo(5 / 5, 1);
  const [over, under] = parts({ ...torque, need: { at: 34, words: "at most 34", side: "below" } });
  expect(over / under).toBeCloseTo(2 / 8, 1);
});

test("a band clear of the need is plain, one all short of it is hatched, one without a need is plain", () => {
  expect(parts({ ...torque, need: { at: 20, words: "needed 20", side: "above" } })[0]).toBe(0);
  expect(parts({ ...torque, need: { at: 50, words: "needed 50", side: "above" } })[1]).toBe(0);
  expect(parts(torque)[0]).toBe(0);
});
