import { expect, test } from "vitest";
import { voltageRun, voltageRunPlot } from "./voltage-run.ts";
import type { VoltageRun } from "./voltage-run.ts";
import { writtenBoxes } from "./words.ts";

const run: VoltageRun = {
  prefix: "v",
  title: "Voltage along the run",
  label: "236 V arrive.",
  width: 480,
  height: 260,
  places: ["source", "panel", "machine"],
  cases: [
    { name: "idle", role: "quiet", volts: [243, 242.6, 242.4] },
    { name: "at the peak", role: "base", volts: [243, 239.6, 236.1], low: [243, 238, 233], high: [243, 241, 238] },
  ],
  limits: [{ at: 228, words: "trips below 228", forbids: "below" }],
};

test("each place is named and each voltage written once", () => {
  const text = writtenBoxes(voltageRun(run)).map((box) => box.text);
  for (const name of ["source", "panel", "machine", "239.6", "236.1", "trips below 228"]) expect(text).toContain(name);
  expect(text.filter((line) => line === "243.0")).toHaveLength(1);
});

test("a voltage that is only known to lie between two is hatched, one that is known is not", () => {
  expect(voltageRunPlot(run).bands).toHaveLength(1);
  expect(voltageRun(run)).toContain('fill="url(#v-hatch)"');
});

test("the run goes downhill as drawn: less voltage stands lower", () => {
  const boxes = writtenBoxes(voltageRun(run));
  const y = (text: string) => boxes.find((box) => box.text === text)?.y ?? 0;
  expect(y("236.1")).toBeGreaterThan(y("242.4"));
});
