// Bands of sample columns: 5 % and 95 % by selection, and how much of a spread one input explains.
import { SAMPLES } from "./random.ts";

/** Values of one quantity over the imagined shops. Length 1: the same in all of them. */
export interface Column {
  readonly v: Float64Array;
  /** Why samples have no value: root reason -> how many. */
  readonly holes: ReadonlyMap<string, number> | null;
  /** Known to be at most, or at least, the truth. */
  readonly bound?: "upper" | "lower" | "both";
  /** Stands for a simulation that has not run. */
  readonly estimated?: true;
  /** Fewer samples than usual. */
  readonly coarse?: true;
}
/** Values that are no numbers. Length 1: the same in all shops. */
export interface Data {
  readonly each: readonly unknown[];
}
export type Filled = Column | Data;
export const isColumn = (f: Filled): f is Column => "v" in f;

export const exact = (value: number): Column => ({ v: Float64Array.of(value), holes: null });
export const hole = (reason: string): Column => ({ v: Float64Array.of(Number.NaN), holes: new Map([[reason, 1]]) });

export interface Band {
  readonly nominal: number;
  readonly low: number;
  readonly high: number;
}

const buffer = new Float64Array(SAMPLES);

/** k-th smallest of the first n entries of `a`, which is reordered (C. A. R. Hoare, Algorithm 65, 1961). */
function select(a: Float64Array, n: number, k: number): number {
  let lo = 0;
  let hi = n - 1;
  while (lo < hi) {
    const pivot = a[(lo + hi) >> 1] ?? 0;
    let i = lo;
    let j = hi;
    while (i <= j) {
      while ((a[i] ?? 0) < pivot) i += 1;
      while ((a[j] ?? 0) > pivot) j -= 1;
      if (i <= j) {
        const held = a[i] ?? 0;
        a[i] = a[j] ?? 0;
        a[j] = held;
        i += 1;
        j -= 1;
      }
    }
    if (k <= j) hi = j;
    else if (k >= i) lo = i;
    else break;
  }
  return a[k] ?? Number.NaN;
}

/**
 * The limit below which the share p of the samples lies, read with the n + 1 rule (a little wide rather than narrow), linear between
 * neighbours. Reorders the first n entries.
 */
function limit(a: Float64Array, n: number, p: number): number {
  const at = Math.min(Math.max(p * (n + 1) - 1, 0), n - 1);
  const k = Math.floor(at);
  const low = select(a, n, k);
  if (at === k) return low;
  const high = select(a, n, k + 1);
  return low === high || !Number.isFinite(high - low) ? (at - k < 0.5 ? low : high) : low + (at - k) * (high - low);
}

/** Nominal and 5 to 95 % band; samples without a value count as `asLow` for the low edge and `asHigh` for the high one, or not at all. */
export function band(column: Column, holesAs?: { low: number; high: number }): Band {
  const { v } = column;
  const nominal = v[0] ?? Number.NaN;
  if (v.length === 1) return Number.isNaN(nominal) && holesAs ? { nominal, low: holesAs.low, high: holesAs.high } : { nominal, low: nominal, high: nominal };
  const edge = (p: number, fill: number | undefined): number => {
    let n = 0;
    for (let k = 1; k < v.length; k += 1) {
      const x = v[k] ?? Number.NaN;
      if (!Number.isNaN(x)) buffer[n++] = x;
      else if (fill !== undefined) buffer[n++] = fill;
    }
    return n === 0 ? Number.NaN : limit(buffer, n, p);
  };
  return { nominal, low: edge(0.05, holesAs?.low), high: edge(0.95, holesAs?.high) };
}

/** Groups the samples are sorted into to see what an input explains; 25 keeps 40 samples a group. */
const GROUPS = 25;

/**
 * Share of the spread of log y that goes away when x is known: 1 - mean variance within groups of like x / variance (the correlation
 * ratio, estimated as K. Pearson 1905, less the share that chance alone would explain). Both columns must be long.
 */
export function explained(y: Float64Array, x: Float64Array): number {
  const n = Math.min(y.length, x.length);
  const order: number[] = [];
  for (let k = 1; k < n; k += 1) {
    const value = y[k] ?? Number.NaN;
    if (value > 0 && Number.isFinite(value) && Number.isFinite(x[k] ?? Number.NaN)) order.push(k);
  }
  if (order.length < 4 * GROUPS) return 0;
  order.sort((a, b) => (x[a] ?? 0) - (x[b] ?? 0));
  const logs = order.map((k) => Math.log(y[k] ?? 1));
  const mean = logs.reduce((s, l) => s + l, 0) / logs.length;
  const total = logs.reduce((s, l) => s + (l - mean) ** 2, 0);
  if (total < 1e-18 * logs.length) return 0;
  let within = 0;
  for (let g = 0; g < GROUPS; g += 1) {
    const part = logs.slice(Math.floor((g * logs.length) / GROUPS), Math.floor(((g + 1) * logs.length) / GROUPS));
    const m = part.reduce((s, l) => s + l, 0) / part.length;
    within += part.reduce((s, l) => s + (l - m) ** 2, 0);
  }
  const share = 1 - within / (logs.length - GROUPS) / (total / (logs.length - 1));
  return Math.max(0, share);
}
