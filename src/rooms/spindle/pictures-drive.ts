// Pictures of the drive's bus: what it does between two crests of the line, and what any power would draw from this supply.
import { perhaps, type Values } from "../../kernel/figure.ts";
import { type Case, picture } from "../../kernel/room.ts";
import { emptyPicture } from "../../pictures/empty.ts";
import { plot } from "../../pictures/plot.ts";
import { plotCsv } from "../../pictures/plot-read.ts";
import type { Limit, PlotSpec, Series } from "../../pictures/plot-spec.ts";
import { shownIn } from "../../pictures/shown.ts";
import { drive } from "../ground/index.ts";
import { frequency } from "../supply/index.ts";
import { type Bus, type BusState, busState, busTrace } from "./bus.ts";
import { chokeInductance } from "./drive.ts";
import {
  busCapacitance,
  busPowerFull,
  fedPhases,
  feedInductance,
  feedResistance,
  feedVoltage,
  lineCurrentBuiltFor,
  sourceL,
} from "./drive-bus.ts";
import { busTrip, choke, underVoltage } from "./drive-inputs.ts";

const bus = {
  V: feedVoltage,
  f: frequency,
  P: busPowerFull,
  C: busCapacitance,
  R: feedResistance,
  L: sourceL,
  phases: fedPhases,
  trip: perhaps(busTrip),
  low: perhaps(underVoltage),
} as const;
type Traced = Values<typeof bus>;
const busOf = ({ V, f, P, C, R, L, phases }: Traced): Bus => ({ V, f, P, C, R, L, phases });

/** What the drive does at its own limits, drawn on the bus voltage. */
const voltageLimits = (x: { trip: number | null; low: number | null }): Limit[] => [
  ...(x.trip === null ? [] : [{ on: "y" as const, at: x.trip, words: `trips at ${Math.round(x.trip)} V`, forbids: "above" as const }]),
  ...(x.low === null ? [] : [{ on: "y" as const, at: x.low, words: `gives up at ${Math.round(x.low)} V`, forbids: "below" as const }]),
];

const CYCLE = "Bus voltage and line current over one cycle";
export const busPicture = picture({
  id: "spindle.drive.bus-picture",
  per: drive,
  title: CYCLE,
  needs: bus,
  draws: (cases, frame) => {
    const found = cases[0];
    if (found === undefined) return emptyPicture(CYCLE, "nothing to draw", frame);
    const x = found.samples.at(0);
    const runs = cases.map((c: Case<Traced>, k) => {
      const b = busOf(c.samples.at(0));
      return { name: c.name, role: k === 0 ? ("base" as const) : ("option" as const), trace: busTrace(b), state: busState(b) };
    });
    const own = runs[0];
    if (own === undefined || own.trace.t.length === 0)
      return emptyPicture(CYCLE, "the supply cannot carry this power: the bus collapses", frame);
    const power = shownIn("power", frame);
    const ms = (t: Float64Array) => Array.from(t, (s) => 1000 * s);
    const series = (of: (r: (typeof runs)[number]) => Float64Array): Series[] =>
      runs
        .filter((r) => r.trace.t.length > 0)
        .map((r) => ({ name: runs.length > 1 ? r.name : "", role: r.role, x: ms(r.trace.t), y: Array.from(of(r)) }));
    const says = (r: (typeof runs)[number], P: number) =>
      r.trace.t.length === 0
        ? `${r.name}: the bus collapses.`
        : `${r.name}: at ${power.text(P)} the bus swings from ${Math.round(r.state.V_valley)} to ${Math.round(r.state.V_crest)} V; the line gives ${r.state.I_line.toFixed(1)} A rms in pulses of ${Math.round(Math.max(...r.trace.current))} A.`;
    const valley = own.trace.voltage.indexOf(Math.min(...own.trace.voltage));
    const spec: PlotSpec = {
      prefix: `${frame.prefix}-bus`,
      title: CYCLE,
      label: runs.map((r, k) => says(r, cases[k]?.samples.at(0).P ?? x.P)).join(" "),
      width: frame.width,
      height: 400,
      x: { label: "time", unit: "ms", min: 0, max: 1000 / x.f },
      y: { label: "bus", unit: "V" },
      series: series((r) => r.trace.voltage),
      limits: voltageLimits(x),
      markers: [{ x: 1000 * (own.trace.t[valley] ?? 0), y: own.state.V_valley, words: `valley ${Math.round(own.state.V_valley)} V` }],
      below: {
        y: { label: x.phases >= 3 ? "current into the bus" : "line current, without its sign", unit: "A", min: 0 },
        series: series((r) => r.trace.current).map((s) => ({ ...s, name: "" })),
      },
    };
    return { svg: plot(spec), csv: plotCsv(spec), plot: spec };
  },
});

const sizing = { ...bus, L: feedInductance, x_c: perhaps(choke), I_b: perhaps(lineCurrentBuiltFor) } as const;
type Sized = Values<typeof sizing>;
/** Powers at which the curve is worked out; the highest as a share of that of full flux. */
const POWERS = 17;
const FARTHEST = 1.6;
const HALVINGS = 8;
/** Change of the bus from cycle to cycle above which it does not come to rest: a choke and a small capacitor swing against a steady power. */
const AT_REST = 0.01;
/** Whether the drive runs there: the supply carries it, the bus comes to rest, and stays between what the drive gives up and trips at. */
const runs = (s: BusState, x: Sized): boolean =>
  s.V_mean > 0 && Math.abs(s.drift) < AT_REST && s.V_valley > (x.low ?? 0) && s.V_crest < (x.trip ?? Infinity);
/** The choke set beside: the usual small one. */
const USUAL_CHOKE = 0.03;

const SIZE = "What this supply gives a drive of any power";
export const sizingPicture = picture({
  id: "spindle.drive.sizing-picture",
  per: drive,
  title: SIZE,
  needs: sizing,
  draws: (cases, frame) => {
    const x = cases[0]?.samples.at(0);
    if (x === undefined) return emptyPicture(SIZE, "nothing to draw", frame);
    const power = shownIn("power", frame);
    const most = FARTHEST * Math.max(...cases.map((c: Case<Sized>) => c.samples.at(0).P));
    const at = Array.from({ length: POWERS }, (_, k) => (most * (k + 1)) / POWERS);
    const curve = (s: Sized, x_c: number) => {
      const L = s.L + (x_c === 0 ? 0 : chokeInductance({ x_c, V: s.V, f: s.f, P: s.P }));
      const state = (P: number) => busState({ V: s.V, f: s.f, P, C: s.C, R: s.R, L, phases: s.phases });
      const states = at.map(state);
      const first = states.findIndex((one) => !runs(one, s));
      if (first < 0) return { powers: at, states, here: state(s.P), end: null };
      // Where it stops running is sought between the last power that ran and the first that did not.
      let good = at[first - 1] ?? 0;
      let bad = at[first] ?? 0;
      for (let k = 0; k < HALVINGS; k += 1) {
        const middle: number = (good + bad) / 2;
        if (runs(state(middle), s)) good = middle;
        else bad = middle;
      }
      const last = good > 0 ? [good] : [];
      return {
        powers: [...at.slice(0, first), ...last],
        states: [...states.slice(0, first), ...last.map(state)],
        here: state(s.P),
        end: good,
      };
    };
    const percent = (x_c: number) => (x_c === 0 ? "no choke" : `${Number((100 * x_c).toPrecision(2))} % choke`);
    const fitted = x.x_c ?? 0;
    const beside = fitted === 0 ? USUAL_CHOKE : 0;
    const lines = [
      { name: percent(fitted), role: "base" as const, ...curve(x, fitted) },
      { name: percent(beside), role: "quiet" as const, ...curve(x, beside) },
      ...cases.slice(1).map((c) => ({ name: c.name, role: "option" as const, ...curve(c.samples.at(0), c.samples.at(0).x_c ?? 0) })),
    ];
    // Where the drive would not run its line ends.
    const drawn = (of: (s: BusState) => number): Series[] =>
      lines.map((l) => ({ name: l.name, role: l.role, x: l.powers.map(power.of), y: l.states.map(of) }));
    const says = (l: (typeof lines)[number]) => {
      const ends = l.end === null ? "" : `, up to ${power.text(l.end)}, where the bus swings past what the drive stands`;
      if (!runs(l.here, x)) return l.end ? `${l.name} runs only to ${power.text(l.end)}` : `${l.name} does not run at all`;
      return `${l.name} ${l.here.I_line.toFixed(1)} A and a valley of ${Math.round(l.here.V_valley)} V${ends}`;
    };
    const built =
      x.I_b !== null && Number.isFinite(x.I_b)
        ? [{ on: "y" as const, at: x.I_b, words: `input built for ${x.I_b.toFixed(1)} A`, forbids: "above" as const }]
        : [];
    const here: Limit = { on: "x", at: power.of(x.P), words: "this motor, full flux", role: "quiet" };
    const spec: PlotSpec = {
      prefix: `${frame.prefix}-size`,
      title: SIZE,
      label: `At ${power.text(x.P)} from the bus: ${lines.slice(0, 2).map(says).join("; ")}.`,
      width: frame.width,
      height: 440,
      x: { label: "power from the bus", unit: power.unit, min: 0, max: power.of(most) },
      y: { label: "line current", unit: "A", min: 0 },
      series: drawn((s) => s.I_line),
      limits: [here, ...built],
      below: {
        y: { label: "bus valley", unit: "V" },
        series: drawn((s) => s.V_valley).map((s) => ({ ...s, name: "" })),
        limits: voltageLimits({ trip: null, low: x.low }),
      },
    };
    return { svg: plot(spec), csv: plotCsv(spec), plot: spec };
  },
});
