// Bands of sample columns: 5 % and 95 % by selection, and how much of a spread one input explains.
import { SAMPLES } from "./random.ts";

/** What travels down with the values. */
export interface Marks {
  /** Why samples have no value: root reason -> how many. */
  readonly holes?: ReadonlyMap<string, number> | null;
  /** Known to be at most, or at least, the truth. */
  readonly bound?: "upper" | "lower" | "both";
  /** Stands for a simulation that has not run. */
  readonly estimated?: true;
  /** Fewer samples than usual. */
  readonly coarse?: true;
}
/** Values of one quantity over the imagined shops. Length 1: the same in all of them. */
export interface Column extends Marks {
  readonly v: Float64Array;
  readonly holes: ReadonlyMap<string, number> | null;
}
/** Values that are no numbers. Length 1: the same in all shops. A sample without a value holds NaN. */
interface Data extends Marks {
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
  if (n === 0) return Number.NaN;
  const at = Math.min(Math.max(p * (n + 1) - 1, 0), n - 1);
  const k = Math.floor(at);
  const low = select(a, n, k);
  if (at === k) return low;
  const high = select(a, n, k + 1);
  return low === high || !Number.isFinite(high - low) ? (at - k < 0.5 ? low : high) : low + (at - k) * (high - low);
}

/** Kept by column: an edit hands most columns on as they are. */
const bands = new WeakMap<Column, Band>();

/** Nominal and 5 to 95 % band; samples without a value count as `asLow` for the low edge and `asHigh` for the high one, or not at all. */
export function band(column: Column, holesAs?: { low: number; high: number }): Band {
  const { v } = column;
  const nominal = v[0] ?? Number.NaN;
  if (v.length === 1)
    return Number.isNaN(nominal) && holesAs ? { nominal, low: holesAs.low, high: holesAs.high } : { nominal, low: nominal, high: nominal };
  if (holesAs) return { nominal, low: limit(...gathered(v, holesAs.low), LOW), high: limit(...gathered(v, holesAs.high), HIGH) };
  const known = bands.get(column);
  if (known) return known;
  const all = gathered(v);
  const made = { nominal, low: limit(...all, LOW), high: limit(...all, HIGH) };
  bands.set(column, made);
  return made;
}

const LOW = 0.05;
const HIGH = 0.95;

/** All samples but the nominal one in the buffer, and how many; those without a value filled in, or left out. */
function gathered(v: Float64Array, fill?: number): [Float64Array, number] {
  let n = 0;
  for (let k = 1; k < v.length; k += 1) {
    const x = v[k] ?? Number.NaN;
    if (!Number.isNaN(x)) buffer[n++] = x;
    else if (fill !== undefined) buffer[n++] = fill;
  }
  return [buffer, n];
}

/** Groups the samples are sorted into to see what an input explains; 25 keeps 40 samples a group. */
const GROUPS = 25;

/** Samples in the order of a column, the nominal one and those without a value left out; kept, since one input is held against many figures. */
const orders = new WeakMap<Float64Array, Uint16Array>();
function orderOf(x: Float64Array): Uint16Array {
  const known = orders.get(x);
  if (known) return known;
  const finite = Uint16Array.from(x.keys()).filter((k) => k > 0 && Number.isFinite(x[k]));
  const order = finite.sort((a, b) => (x[a] ?? 0) - (x[b] ?? 0));
  orders.set(x, order);
  return order;
}

/** What was found of pairs of columns, y then x: an edit leaves most of them as they are. */
const shares = new WeakMap<Float64Array, WeakMap<Float64Array, number>>();

/**
 * Share of the spread of y that goes away when x is known: 1 - mean variance within groups of like x / variance (the correlation
 * ratio, estimated as K. Pearson 1905, less the share that chance alone would explain). The spread is that of log y where y has one in all
 * samples, otherwise that of y, with what is endless taken at the furthest value that is not. Both columns must be long.
 */
export function explained(y: Float64Array, x: Float64Array): number {
  let ofY = shares.get(y);
  if (!ofY) shares.set(y, (ofY = new WeakMap()));
  let share = ofY.get(x);
  if (share === undefined) ofY.set(x, (share = correlationRatio(y, x)));
  return share;
}

function correlationRatio(y: Float64Array, x: Float64Array): number {
  let n = 0;
  let far = 0;
  let logs = true;
  for (const k of orderOf(x)) {
    const value = y[k] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    buffer[n++] = value;
    if (Number.isFinite(value)) far = Math.max(far, Math.abs(value));
    logs &&= value > 0 && value < Infinity;
  }
  if (n < 4 * GROUPS) return 0;
  if (far === 0) far = 1;
  for (let i = 0; i < n; i += 1) {
    const value = buffer[i] ?? Number.NaN;
    buffer[i] = logs ? Math.log(value) : Math.max(-far, Math.min(far, value)) / far;
  }
  const total = spreadOf(buffer, 0, n);
  // Rounding noise is no spread.
  if (total < 1e-18 * n) return 0;
  let within = 0;
  for (let g = 0; g < GROUPS; g += 1) within += spreadOf(buffer, Math.floor((g * n) / GROUPS), Math.floor(((g + 1) * n) / GROUPS));
  return Math.max(0, 1 - within / (n - GROUPS) / (total / (n - 1)));
}

/** Sum of the squares about the mean of a stretch. */
function spreadOf(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i += 1) sum += values[i] ?? 0;
  const mean = sum / (to - from);
  let squares = 0;
  for (let i = from; i < to; i += 1) squares += ((values[i] ?? 0) - mean) ** 2;
  return squares;
}
