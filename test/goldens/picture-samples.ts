// The pictures of the golden test: one of each kind, with the ordinary case and the awkward one, as plain data.
import { bandPlot } from "../../src/pictures/band-plot.ts";
import { shareBars, stackedBars } from "../../src/pictures/bars.ts";
import type { StackedBars } from "../../src/pictures/bars.ts";
import { beltSketch } from "../../src/pictures/belt.ts";
import type { BeltSketch } from "../../src/pictures/belt.ts";
import { machineDrawing } from "../../src/pictures/blocks.ts";
import type { MachineDrawing } from "../../src/pictures/blocks-spec.ts";
import { icon, iconNames, iconSprite } from "../../src/pictures/icons.ts";
import { marginScale, marginStrip } from "../../src/pictures/margin-strip.ts";
import { terminalBoxes } from "../../src/pictures/terminal-box.ts";
import type { TerminalBox } from "../../src/pictures/terminal-box.ts";
import { verdictIcon } from "../../src/pictures/verdict.ts";
import { voltageRun } from "../../src/pictures/voltage-run.ts";
import { plot } from "../../src/pictures/plot.ts";
import type { PlotSpec } from "../../src/pictures/plot-spec.ts";

const speeds = Array.from({ length: 120 }, (_, i) => 120 + i * 26);

/** Full torque up to the base speed, then falling with the given power of the speed. */
function torque(full: number, base: number, power: number): number[] {
  return speeds.map((n) => full * (0.55 + 0.45 * Math.min(1, n / 900) ** 0.4) * Math.min(1, base / n) ** power);
}

const mostTorque = torque(41, 1150, 1.7);

const torquePlot: PlotSpec = {
  prefix: "torque",
  title: "Torque against speed, with the cuts asked of it",
  label: "The hub cut asks more than the motor can pull above 2100 rpm as found; reconnected it holds up to 3000 rpm.",
  width: 586,
  height: 400,
  x: { label: "spindle", unit: "rpm", min: 0, max: 3200 },
  y: { label: "at the spindle", unit: "N·m" },
  bands: [{ x: speeds, low: mostTorque.map((t) => t * 0.86), high: mostTorque.map((t) => t * 1.16), words: "not known" }],
  series: [
    { name: "reconnected, 60 s", x: speeds, y: torque(44, 2350, 1.1), role: "option", dash: true },
    { name: "reconnected, all day", x: speeds, y: torque(28, 2400, 0.9), role: "option" },
    { name: "as found, 60 s", x: speeds, y: mostTorque, role: "base", dash: true },
    { name: "as found, all day", x: speeds, y: torque(27, 1150, 1.05), role: "base" },
    { name: "rough 304, bar to centre", x: [1000, 1300, 1700, 2100, 2480], y: [21, 16.5, 12.6, 10.2, 8.7], role: "quiet" },
  ],
  points: [
    { x: 300, y: 14, label: "tap 1/2-13", verdict: "tight" },
    { x: 1000, y: 21, label: "part off 304", verdict: "tight" },
    { x: 1530, y: 17.3, label: "rough 304", verdict: "tight" },
    { x: 2300, y: 17, label: "rough hub, 6061", verdict: "fails" },
    { x: 1310, y: 2.6, label: "drill 8.5 mm, titanium", verdict: "holds" },
    { x: 2900, y: 2.5, label: "finish foot", verdict: "open" },
  ],
  limits: [{ on: "x", at: 3000, words: "collet limit 3000", role: "quiet" }],
};

/** A receiver that falls between cut-out and cut-in, faster while the second machine draws: 1 s steps over a shift. */
function shift(): { t: number[]; p: number[]; runs: [number, number][] } {
  const t: number[] = [];
  const p: number[] = [];
  const runs: [number, number][] = [];
  let pressure = 8.5;
  let isRunning = false;
  for (let s = 7 * 3600; s <= 15 * 3600; s += 1) {
    const mill = (s > 9.2 * 3600 && s < 11.6 * 3600) || (s > 13 * 3600 && s < 14.3 * 3600);
    const burst = mill && s % 71 < 9 ? 0.045 : 0;
    pressure -= 0.006 + burst - (isRunning ? 0.02 : 0);
    if (pressure <= 6.5 && !isRunning) {
      isRunning = true;
      runs.push([s, s]);
    }
    if (pressure >= 8.5) isRunning = false;
    const run = runs.at(-1);
    if (isRunning && run) run[1] = s;
    t.push(s);
    p.push(pressure);
  }
  return { t, p, runs };
}

const day = shift();
const lowest = day.p.indexOf(Math.min(...day.p));

function airPlot(width: number, height: number): PlotSpec {
  return {
    prefix: `air-${width}`,
    title: "Receiver pressure over the shift",
    label: "The pressure falls to 5.9 bar once, just below what the closer needs.",
    width,
    height,
    x: { label: "", unit: "", scale: "clock" },
    y: { label: "at the receiver", unit: "bar gauge", min: 4.5, max: 9 },
    series: [{ name: "", x: day.t, y: day.p, role: "base" }],
    limits: [
      { on: "y", at: 8.5, words: "off 8.5", role: "option" },
      { on: "y", at: 6.5, words: "on 6.5", role: "option" },
      {
        on: "y",
        at: 6,
        words: width > 480 ? "below 6.0 here the closer, 0.5 bar down the line, loses its grip" : "grip 6.0",
        forbids: "below",
      },
    ],
    markers: [{ x: day.t[lowest] ?? 0, y: day.p[lowest] ?? 0, words: "lowest: a mill change meets a turret move" }],
    lanes: [
      { name: "pump", busy: day.runs },
      {
        name: "lathe",
        busy: [
          [7.25 * 3600, 12 * 3600],
          [12.5 * 3600, 14.8 * 3600],
        ],
      },
      {
        name: "mill",
        busy: [
          [9.2 * 3600, 11.6 * 3600],
          [13 * 3600, 14.3 * 3600],
        ],
      },
    ],
  };
}

const lowToHigh = Array.from({ length: 200 }, (_, i) => 10 ** (0.3 + (i / 199) * 2.7));
const gain = lowToHigh.map((f) => 40 / Math.hypot(1 - (f / 160) ** 2, 0.12 * (f / 160)) / (1 + f / 30));

const logPlot: PlotSpec = {
  prefix: "bode",
  title: "Position loop",
  label: "The loop gain crosses one at 55 Hz with 40 degrees to spare; the screw rings at 160 Hz.",
  width: 420,
  height: 380,
  x: { label: "frequency", unit: "Hz", scale: "log" },
  y: { label: "gain", unit: "", scale: "log" },
  series: [{ name: "gain, as found", x: lowToHigh, y: gain, role: "base" }],
  limits: [{ on: "y", at: 1, words: "gain 1" }],
  markers: [{ x: 160, y: Math.max(...gain.slice(120)), words: "the screw rings" }],
  points: [20, 35, 55].map((f) => ({ x: f, y: 42 / (1 + f / 28), label: `${f} Hz` })),
  below: {
    y: { label: "phase", unit: "deg" },
    series: [{ name: "phase", x: lowToHigh, y: lowToHigh.map((f) => (-Math.atan(f / 30) * 180) / Math.PI - f / 4), role: "base" }],
    limits: [{ on: "y", at: -180, words: "turns back on itself", forbids: "below" }],
  },
};

const supplyBars: StackedBars = {
  prefix: "supply",
  title: "What the service carries, state by state",
  label: "Spindle starting while the compressor starts reaches 64 A, over the 60 A service.",
  width: 586,
  unit: "A",
  parts: ["shop, existing", "machine at idle", "spindle", "compressor"],
  states: [
    { name: "idle", amounts: [4.5, 3, 0, 0], verdict: "holds" },
    { name: "cutting, compressor on", amounts: [4.5, 3, 21, 9.5], verdict: "holds" },
    { name: "spindle starting", amounts: [4.5, 3, 34, 9.5], verdict: "tight" },
    { name: "both starting", amounts: [4.5, 3, 34, 23], verdict: "fails" },
  ],
  limits: [
    { at: 48, words: "for hours 48" },
    { at: 60, words: "service 60" },
  ],
};

const series: TerminalBox = {
  title: "As found: series, 460 V",
  leads: 9,
  joined: [
    [4, 7],
    [5, 8],
    [6, 9],
  ],
  lines: [[1], [2], [3]],
};
const parallel: TerminalBox = {
  title: "After: parallel, 230 V",
  leads: 9,
  joined: [[4, 5, 6]],
  lines: [
    [1, 7],
    [2, 8],
    [3, 9],
  ],
};
const delta: TerminalBox = {
  title: "Parallel delta",
  leads: 12,
  joined: [
    [1, 6, 7, 12],
    [2, 4, 8, 10],
    [3, 5, 9, 11],
  ],
  lines: [[1], [2], [3]],
};
const crossed: TerminalBox = {
  title: "As typed: two leads swapped",
  leads: 9,
  joined: [
    [4, 8],
    [5, 7],
    [6, 9],
  ],
  lines: [[1], [2], [3]],
};

const belt: BeltSketch = {
  title: "Belt from motor to spindle",
  label: "The belt wraps 176 degrees of the spindle pulley; its lower strand pulls.",
  width: 420,
  unit: "mm",
  driver: { name: "motor", diameter: 140 },
  driven: { name: "spindle", diameter: 112 },
  centre: 410,
  turns: "clockwise",
  tight: "pulls 412 N, 380 to 450",
  slack: "slack 130 N",
};

const strips = () => [
  marginStrip("s1", { verdict: "fails", nominal: null }),
  marginStrip("s2", { verdict: "open", nominal: 0.8, low: 0.35, high: 1.9, reserve: 1.2 }),
  marginStrip("s3", { verdict: "fails", nominal: 0.85, low: 0.74, high: 0.95, reserve: 1.25 }),
  marginStrip("s4", { verdict: "tight", nominal: 1.17, low: 1.02, high: 1.33, reserve: 1.25 }),
  marginStrip("s5", { verdict: "holds", nominal: 1.5, low: 1.33, high: 1.7, reserve: 1.2 }),
  marginStrip("s6", { verdict: "holds", nominal: 8.9, low: 7.4, high: 10.6, reserve: 1.25 }),
  marginStrip("s7", { verdict: "fails", nominal: 0.05, low: 0.04, high: 0.07, reserve: 1 }),
  marginStrip("s8", { verdict: "holds", nominal: null }),
  marginStrip("s9", { verdict: "open", nominal: null }),
];

const lathe: MachineDrawing = {
  title: "Lathe as found, 14 March",
  note: "9 records, 11 typical values",
  label: "The lathe as found: drive, spindle and turret fail; motor, bar feed and receiver are open.",
  width: 540,
  tools: { kind: "turret", stations: 6 },
  blocks: {
    supply: { name: "Supply", verdict: "tight", figures: ["240 V, one phase", "60 A, 49 A at peak"], href: "#/lathe/supply" },
    drive: { name: "Drive", verdict: "fails", figures: ["one-phase input", "240 V out at most"], signal: true, href: "#/lathe/spindle" },
    motor: { name: "Motor", verdict: "open", figures: ["series, 460 V", "30 N·m, 26 to 35"], href: "#/lathe/spindle" },
    belt: { name: "Belt", verdict: "holds", figures: ["140 : 112 mm"] },
    spindle: { name: "Spindle", verdict: "fails", figures: ["2800 rpm wanted", "run-out 8 µm"], signal: true },
    "bar-feed": { name: "Bar feed", verdict: "open", figures: ["16 mm, 1 m out", "bushing clearance?"], air: true },
    closer: { name: "Closer", verdict: "tight", figures: ["5.5 bar, 4.2 kN"], air: true },
    turret: { name: "Turret", verdict: "fails", figures: ["lift 0.4 to 0.9 s"], air: true, signal: true },
    "cut-off": { name: "Cut-off", verdict: "holds", figures: ["and catcher"], air: true },
    axes: { name: "X, Z axes", verdict: "holds", figures: ["12 m/min", "step 0.25 µm"], signal: true },
    board: { name: "Board", verdict: "tight", figures: ["16 in, 8 out", "24 V, 1.07"] },
    compressor: { name: "Compressor", verdict: "tight", figures: ["7 cfm, duty 41 %"] },
    receiver: { name: "Receiver", verdict: "open", figures: ["90 L", "68 s (43 to 148)"] },
    regulator: { name: "Regulator", figures: ["5.5 bar"] },
  },
};

const mill: MachineDrawing = {
  title: "Mill",
  label: "The mill: the head falls too far.",
  width: 540,
  tools: { kind: "carousel", stations: 12 },
  blocks: {
    supply: { name: "Supply", verdict: "holds", figures: ["240 V, one phase"] },
    drive: { name: "Drive", verdict: "holds", figures: ["4 kW"], signal: true },
    motor: { name: "Motor", verdict: "holds", figures: ["3.7 kW"] },
    belt: { name: "Belt", verdict: "holds", figures: ["1 : 2 and 1 : 1"] },
    spindle: { name: "Spindle", verdict: "tight", figures: ["6000 rpm"], signal: true },
    turret: { name: "Carousel", verdict: "open", figures: ["12 pockets"], signal: true },
    axes: { name: "X, Y, Z axes", verdict: "fails", figures: ["head falls 5.7 mm", "brake 90 to 140 ms"], signal: true },
    board: { name: "Board", verdict: "holds", figures: ["24 in, 16 out"] },
  },
};

/** Every golden by the name of its file. */
export const samples: Readonly<Record<string, () => string>> = {
  "plot-torque": () => plot(torquePlot),
  "plot-torque-phone": () => plot({ ...torquePlot, prefix: "torque-phone", width: 358, height: 340 }),
  "plot-air-shift": () => plot(airPlot(1060, 340)),
  "plot-air-shift-phone": () => plot(airPlot(358, 300)),
  "plot-bode": () => plot(logPlot),
  "voltage-run": () =>
    voltageRun({
      prefix: "run",
      title: "Voltage along the run",
      label: "At the peak 236 V arrive at the machine, 8 V above what the drive needs.",
      width: 480,
      height: 260,
      places: ["source", "panel", "machine"],
      cases: [
        { name: "idle", role: "quiet", volts: [243, 242.6, 242.4] },
        { name: "spindle starting", role: "base", volts: [243, 239.6, 236.1], low: [243, 238.2, 233.5], high: [243, 240.8, 238.4] },
      ],
      limits: [{ at: 228, words: "the drive trips below 228", forbids: "below" }],
    }),
  "supply-bars": () => stackedBars(supplyBars),
  "supply-bars-phone": () => stackedBars({ ...supplyBars, prefix: "supply-phone", width: 358 }),
  "share-bars": () =>
    shareBars({
      label: "The standstill reactance makes 68 % of the band.",
      width: 368,
      shares: [
        { name: "standstill reactance", share: 0.68 },
        { name: "drive ceiling", share: 0.04 },
        { name: "stator and magnetising", share: 0.01 },
      ],
    }),
  "band-plot": () =>
    bandPlot({
      prefix: "band",
      label: "Pull-out torque 30.2 N·m, 26 to 35; 30.6 is needed.",
      width: 368,
      unit: "N·m",
      nominal: 30.2,
      low: 26,
      high: 35.2,
      need: { at: 30.6, words: "needed 30.6", side: "above" },
      after: { low: 28.6, high: 31.5, words: "after the test" },
    }),
  "terminal-box": () => terminalBoxes({ label: "Nine leads from series to parallel star.", width: 586, boxes: [series, parallel] }),
  "terminal-box-phone": () => terminalBoxes({ label: "Nine leads, two swapped.", width: 358, boxes: [series, crossed] }),
  "terminal-box-twelve": () => terminalBoxes({ label: "Twelve leads in parallel delta.", width: 280, boxes: [delta] }),
  machine: () => machineDrawing(lathe),
  "machine-phone": () => machineDrawing({ ...lathe, width: 358 }),
  "machine-mill": () => machineDrawing(mill),
  "machine-mill-phone": () => machineDrawing({ ...mill, width: 358 }),
  belt: () => beltSketch(belt),
  "belt-touching": () => beltSketch({ ...belt, centre: 120 }),
  "margin-strips": () => `${[marginScale(), ...strips()].join("\n")}\n`,
  icons: () => `${[iconSprite(), ...iconNames.map((name) => icon(name, 20, name))].join("\n")}\n`,
  "verdict-icons": () => `${(["holds", "tight", "fails", "open"] as const).map((verdict) => verdictIcon(verdict, 28, true)).join("\n")}\n`,
};
