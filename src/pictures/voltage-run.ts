// The voltage along the run, source to machine, idle and at the peak: where the drop happens.
import { plot } from "./plot.ts";
import type { Limit, PlotSpec, Series } from "./plot-spec.ts";

export interface VoltageRun {
  readonly prefix: string;
  readonly title: string;
  readonly label: string;
  readonly width: number;
  readonly height: number;
  /** Source, panel, machine, in the order the current passes them. */
  readonly places: readonly string[];
  readonly cases: readonly VoltageCase[];
  readonly limits?: readonly Omit<Limit, "on">[];
}

interface VoltageCase {
  readonly name: string;
  readonly role: Series["role"];
  /** One voltage for each place [V]. */
  readonly volts: readonly number[];
  /** 5 and 95 % for each place [V]. */
  readonly low?: readonly number[];
  readonly high?: readonly number[];
}

export function voltageRun(spec: VoltageRun): string {
  return plot(voltageRunPlot(spec));
}

/** The run as a plot over named places, for its cursor and its table. */
export function voltageRunPlot(spec: VoltageRun): PlotSpec {
  const x = spec.places.map((_, i) => i);
  const all = spec.cases.flatMap(({ volts, low, high }) => [...volts, ...(low ?? []), ...(high ?? [])]);
  all.push(...(spec.limits ?? []).map((limit) => limit.at));
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const air = (most - least) * 0.18; // Room over the highest line for its voltages.
  const points = spec.cases.flatMap(({ volts }) => volts.map((volt, i) => ({ x: i, y: volt, label: volt.toFixed(1) })));
  const { prefix, title, label, width, height } = spec;
  return {
    prefix,
    title,
    label,
    width,
    height,
    // Half a place of room on either side, so that the voltages at the ends can be read.
    x: { label: "", unit: "", min: -0.3, max: spec.places.length - 0.7, ticks: spec.places.map((words, at) => ({ at, words })) },
    y: { label: "", unit: "V", max: most + air, min: least - air },
    bands: spec.cases.flatMap(({ low, high }) => (low && high ? [{ x, low, high }] : [])),
    series: spec.cases.map(({ name, role, volts }) => ({ name, role, x, y: volts })),
    // Cases that share a voltage at a place share its number.
    points: points.filter((point, i) => points.findIndex((other) => other.x === point.x && other.label === point.label) === i),
    limits: (spec.limits ?? []).map((limit) => ({ ...limit, on: "y" as const })),
  };
}
