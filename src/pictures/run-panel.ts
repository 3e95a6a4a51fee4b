// A figure along a range of one input: its line, and hatched where it may lie.
import type { Panel } from "./plot-spec.ts";

interface RunOf {
  /** On the line and on the axis: the symbol, or the words where there is none. */
  readonly name: string;
  readonly unit: string;
  readonly x: readonly number[];
  /** NaN where there is no value, Infinity for never: both are gaps. */
  readonly nominal: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
}

export function runPanel({ name, unit, x, nominal, low, high }: RunOf): Panel {
  const banded = x.map((_, k) => k).filter((k) => Number.isFinite(low[k]) && Number.isFinite(high[k]));
  const at = (values: readonly number[]): number[] => banded.map((k) => values[k] ?? Number.NaN);
  const hasBand = banded.length > 1 && banded.some((k) => low[k] !== high[k]);
  return {
    y: { label: name, unit },
    series: [{ name, x, y: nominal.map((y) => (Number.isFinite(y) ? y : Number.NaN)), role: "base" }],
    ...(hasBand
      ? { bands: [{ x: at(x), low: at(low), high: at(high), ...(isWide(at(low), at(high)) ? { words: "5 % to 95 %" } : {}) }] }
      : {}),
  };
}

/** Words in a band narrower than this share of the height would lie on its line. */
const roomForWords = 0.12;

function isWide(low: readonly number[], high: readonly number[]): boolean {
  const whole = Math.max(...high) - Math.min(...low);
  return Math.max(...high.map((y, k) => y - (low[k] ?? y))) > roomForWords * whole;
}
