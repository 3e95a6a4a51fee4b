// Every cell's column over the imagined shops. Everything is evaluated; a column whose needs are the same columns as before is kept.
import { type Column, exact, type Filled, hole, isColumn, type Marks } from "./band.ts";
import type { Draw, Figure, Joint, Refusal, Simulated, Value } from "./figure.ts";
import { type Cell, type FigureCell, type Graph, type InputCell, isMissing, type PartCell, type SlotCell } from "./graph.ts";
import { itemAddress } from "./item.ts";
import { canonical, type Job, type Json } from "./job.ts";
import { kept, shelved } from "./kept.ts";
import { fillInput, spreadOf } from "./sample.ts";
import { SAMPLES, SLOW_SAMPLES } from "./random.ts";

/** Columns by cell. */
interface Columns {
  readonly get: (cell: Cell) => Filled | undefined;
}
export interface Evaluation {
  readonly graph: Graph;
  readonly mode: Mode;
  readonly filled: Columns;
  readonly memo: ReadonlyMap<string, Memo>;
}
/** full: all samples, simulations run; quick: estimates stand for simulations; nominal: the nominal case alone. */
export type Mode = "full" | "quick" | "nominal";

interface Memo {
  readonly decl: unknown;
  readonly parts: readonly (Filled | null)[];
  /** What somebody had to say first: it stands in the result and in no part. */
  readonly waits: string | null;
  readonly result: Filled;
}

/** Runs a job, or takes the answer of an equal brief. */
export function runJob<B extends Json, R extends Json>(job: Job<B, R>, brief: B): R {
  return kept(`${job.id} ${job.version} ${canonical(brief)}`, () => job.run(brief));
}

/**
 * The columns of a graph. Each is worked out when first asked for, so that a question costs what its cone costs; a column whose needs are
 * the same columns as in the evaluation before is handed on.
 */
export function evaluate(graph: Graph, mode: Mode, before?: Evaluation): Evaluation {
  const done = new Map<Cell, Filled>();
  const memo = new Map<string, Memo>();
  const old = before?.mode === mode ? before.memo : undefined;
  const filled: Columns = {
    get(cell) {
      const had = done.get(cell);
      if (had) return had;
      const result = cell.is === "input" ? make(cell, filled, mode) : handedOn(cell);
      done.set(cell, result);
      return result;
    },
  };
  // An input's column is kept by what is written (sample.ts), so comparing columns is enough everywhere else.
  const handedOn = (cell: Exclude<Cell, InputCell>): Filled => {
    const parts = partsOf(cell, filled);
    const waits = "waits" in cell ? (cell.waits?.says ?? null) : null;
    const past = old?.get(cell.address);
    const same =
      past?.decl === cell.decl && past.waits === waits && past.parts.length === parts.length && past.parts.every((p, i) => p === parts[i]);
    const result = past && same ? past.result : make(cell, filled, mode);
    memo.set(cell.address, { decl: cell.decl, parts, waits, result });
    return result;
  };
  return { graph, mode, filled, memo };
}

/** Evaluates the cone of some cells alone, with some columns replaced. */
export function evaluateCone(order: readonly Cell[], mode: Mode, replaced: ReadonlyMap<Cell, Filled>): Map<Cell, Filled> {
  const filled = new Map<Cell, Filled>();
  for (const cell of order) filled.set(cell, replaced.get(cell) ?? make(cell, filled, mode));
  return filled;
}

/** What a cell that is no input is computed from. */
function partsOf(cell: Exclude<Cell, InputCell>, filled: Columns): (Filled | null)[] {
  const get = (c: Cell): Filled | null => filled.get(c) ?? null;
  switch (cell.is) {
    case "part":
      return [get(cell.joint)];
    case "slot":
      return cell.shares.map(get);
    case "figure": {
      const parts: (Filled | null)[] = [];
      for (const c of cell.needs.values()) parts.push(isMissing(c) ? null : get(c));
      if (cell.estimate) parts.push(get(cell.estimate));
      return parts;
    }
  }
}

function make(cell: Cell, filled: Columns, mode: Mode): Filled {
  switch (cell.is) {
    case "input":
      return makeInput(cell, filled, mode);
    case "part":
      return makePart(cell, filled, mode);
    case "slot":
      return makeSlot(cell, filled);
    case "figure":
      return makeFigure(cell, filled, mode);
  }
}

function makeInput(cell: InputCell, filled: Columns, mode: Mode): Filled {
  if (cell.estimate) return filled.get(cell.estimate) ?? hole("no estimate");
  return fillInput(cell, mode === "nominal");
}

function makePart(cell: PartCell, filled: Columns, mode: Mode): Filled {
  const whole = filled.get(cell.joint);
  if (!whole || isColumn(whole)) return whole ?? hole("not computed");
  const columns = whole.each[0] as Readonly<Record<string, Float64Array>>;
  const v = columns[cell.decl.part];
  if (!v) return hole(`no ${cell.decl.part}`);
  return mode === "nominal" ? exact(v[0] ?? Number.NaN) : { v, holes: null };
}

const lengthOf = (f: Filled): number => (isColumn(f) ? f.v.length : f.each.length);
const longest = (parts: readonly Filled[]): number =>
  parts.reduce((n, f) => (lengthOf(f) === 1 ? n : n === 1 ? lengthOf(f) : Math.min(n, lengthOf(f))), 1);
const entry = (f: Filled, k: number): unknown => (isColumn(f) ? f.v[f.v.length === 1 ? 0 : k] : f.each[f.each.length === 1 ? 0 : k]);
const reasonOf = (f: Filled): string => f.holes?.keys().next().value ?? "no value";
const isNone = (f: Filled): boolean => lengthOf(f) === 1 && Number.isNaN(entry(f, 0));

function mergeHoles(parts: readonly Filled[]): Map<string, number> | null {
  let all: Map<string, number> | null = null;
  for (const f of parts) {
    if (!f.holes) continue;
    all ??= new Map();
    for (const [reason, n] of f.holes) all.set(reason, Math.max(n, all.get(reason) ?? 0));
  }
  return all;
}

const combined = {
  sum: (a: number, b: number) => a + b,
  max: Math.max,
  min: Math.min,
} as const;

function makeSlot(cell: SlotCell, filled: Columns): Filled {
  const parts = cell.shares.map((c) => filled.get(c) ?? hole("not computed"));
  const n = longest(parts);
  const { combine, bound: allAtOnce } = cell.decl;
  const holes = mergeHoles(parts);
  const bound = allAtOnce && parts.length > 1 ? { bound: allAtOnce } : {};
  // A share that nobody can count yet only adds to a sum; shares are never below nothing.
  const short: Marks[] = cell.waits ? [{ bound: combine === "min" ? "upper" : "lower" }] : [];
  if (combine === "list") {
    const from = cell.shares.map((c) => ({ from: c.item.path.at(-1) ?? c.item.root, item: itemAddress(c.item) }));
    const each = Array.from({ length: n }, (_, k): unknown => {
      const values = parts.map((f) => entry(f, k));
      return values.some(Number.isNaN) ? Number.NaN : values.map((value, i) => ({ ...from[i], value }));
    });
    return flagged({ each, holes, ...bound }, [...parts, ...short]);
  }
  const v = new Float64Array(n).fill(combine === "sum" || parts.length === 0 ? 0 : combine === "max" ? -Infinity : Infinity);
  const put = combined[combine];
  for (const f of parts) {
    if (!isColumn(f)) continue;
    for (let k = 0; k < n; k += 1) v[k] = put(v[k] ?? 0, f.v[f.v.length === 1 ? 0 : k] ?? Number.NaN);
  }
  return flagged({ v, holes, ...bound }, [...parts, ...short]);
}

/** Marks that travel down: estimated, coarse, and bounds through the signs of the needs; without signs, as they are. */
function flagged<F extends Filled>(f: F, parts: readonly Marks[], signs?: readonly ("+" | "-" | undefined)[]): F {
  let { bound, estimated, coarse } = f;
  parts.forEach((part, i) => {
    if (part.estimated) estimated = true;
    if (part.coarse) coarse = true;
    if (!part.bound) return;
    const sign = signs ? signs[i] : "+";
    const here =
      sign === undefined || part.bound === "both" ? "both" : sign === "+" ? part.bound : part.bound === "upper" ? "lower" : "upper";
    bound = bound && bound !== here ? "both" : here;
  });
  return { ...f, ...(bound ? { bound } : {}), ...(estimated ? { estimated } : {}), ...(coarse ? { coarse } : {}) };
}

/** A need that is not the same in all samples. */
interface Long {
  readonly name: string;
  readonly values: ArrayLike<unknown>;
  readonly part: Filled;
}

function longOf(names: readonly string[], parts: readonly Filled[]): Long[] {
  return parts.flatMap((part, i) => {
    const name = names[i];
    return name === undefined || lengthOf(part) === 1 ? [] : [{ name, values: isColumn(part) ? part.v : part.each, part }];
  });
}

/** Lays a sample of the long needs into x; says why where one of them has no value. */
function lay(x: Record<string, unknown>, long: readonly Long[], k: number): string | null {
  let none: Filled | null = null;
  // Counted by hand: this runs a million times in a start of the program, mostly before anything is compiled.
  for (let i = 0; i < long.length; i += 1) {
    const need = long[i] as Long; // i is below the length
    const value = need.values[k];
    // The one value unlike itself is NaN: a hole.
    if (value !== value) none ??= need.part;
    x[need.name] = value;
  }
  return none && reasonOf(none);
}

/** Counts samples without a value by their reason. */
function counted(holes: Map<string, number> | null, reason: string): Map<string, number> {
  return (holes ?? new Map<string, number>()).set(reason, (holes?.get(reason) ?? 0) + 1);
}

function makeFigure(cell: FigureCell, filled: Columns, mode: Mode): Filled {
  const { decl } = cell;
  if (cell.waits) return hole(cell.waits.says);
  const names: string[] = [];
  const parts: Filled[] = [];
  const x: Record<string, unknown> = {};
  for (const [name, need] of cell.needs) {
    x[name] = null;
    if (isMissing(need)) continue;
    const f = filled.get(need) ?? hole("not computed");
    if (isNone(f)) return hole(reasonOf(f));
    names.push(name);
    parts.push(f);
    x[name] = entry(f, 0);
  }
  try {
    switch (decl.decl) {
      case "joint":
        return makeJoint(cell, decl, x, names, cell.needs);
      case "value":
        return makeValue(decl, x, names, parts);
      case "figure":
        return makeColumn(cell, decl, x, names, parts);
      case "simulated":
        return makeSimulated(cell, decl, x, names, parts, filled, mode);
    }
  } catch (error) {
    const numbers = Object.entries(x).map(([name, v]) => `${name} = ${typeof v === "number" || typeof v === "string" ? v : "..."}`);
    return hole(`program error in ${cell.address}: ${error instanceof Error ? error.message : String(error)} (${numbers.join(", ")})`);
  }
}

function makeColumn(
  cell: FigureCell,
  decl: Figure,
  x: Record<string, unknown>,
  names: readonly string[],
  parts: readonly Filled[],
): Column {
  const v = new Float64Array(longest(parts));
  const of = decl.of as (x: unknown) => number;
  const valid = decl.valid as ((x: unknown) => string | null) | undefined;
  const long = longOf(names, parts);
  let holes: Map<string, number> | null = null;
  for (let k = 0; k < v.length; k += 1) {
    const no = lay(x, long, k) ?? (valid ? valid(x) : null);
    const value = no === null ? of(x) : Number.NaN;
    if (value !== value) holes = counted(holes, no ?? `no number for ${cell.decl.id}`);
    v[k] = value;
  }
  return flagged(
    { v, holes },
    parts,
    names.map((name) => decl.signs?.[name]),
  );
}

/** A table or a list has no signs: a bound on what it is made of bounds it in no direction that is known. */
function makeValue(decl: Value<unknown>, x: Record<string, unknown>, names: readonly string[], parts: readonly Filled[]): Filled {
  const of = decl.of as (x: unknown) => unknown;
  const long = longOf(names, parts);
  let holes: Map<string, number> | null = null;
  const each: unknown[] = [];
  for (let k = 0, n = longest(parts); k < n; k += 1) {
    const no = lay(x, long, k);
    if (no !== null) holes = counted(holes, no);
    each.push(no === null ? of(x) : Number.NaN);
  }
  return flagged({ each, holes }, parts, []);
}

/** A joint value takes its needs at their nominal, and the half width of each (two standard deviations of a reading). */
function makeJoint(
  cell: FigureCell,
  decl: Joint,
  x: Record<string, unknown>,
  names: readonly string[],
  needs: FigureCell["needs"],
): Filled {
  const half: Record<string, number> = {};
  for (const name of names) {
    const need = needs.get(name);
    if (need && !isMissing(need) && need.is === "input") half[name] = halfOf(need);
  }
  const key = `${decl.id} ${cell.address} ${canonical({ x, half } as unknown as Json)}`;
  const of = decl.of as (x: unknown, draw: Draw<string>) => Readonly<Record<string, Float64Array>> | Refusal;
  const draw = (): Filled => {
    const answer = of(x, { seed: cell.address, count: SAMPLES, half });
    if ("refused" in answer && typeof answer.refused === "string") return hole(answer.refused);
    return { each: [answer] };
  };
  return kept(key, () => shelved(key, draw));
}

/** Two standard deviations of a reading, half of a range. */
function halfOf(cell: InputCell): number {
  const s = spreadOf(cell);
  if (!s) return 0;
  return s.shape === "normal" ? 2 * s.sigma : (s.high - s.low) / 2;
}

function makeSimulated(
  cell: FigureCell,
  decl: Simulated,
  x: Record<string, unknown>,
  names: readonly string[],
  parts: readonly Filled[],
  filled: Columns,
  mode: Mode,
): Column {
  const close = cell.estimate ? filled.get(cell.estimate) : undefined;
  const estimate = close && isColumn(close) ? close : undefined;
  if (mode === "quick") return estimate ? { ...estimate, estimated: true } : hole("not run: asked for quick answers only");
  const n = Math.min(longest(parts), SLOW_SAMPLES);
  const brief = decl.brief as (x: unknown) => Json;
  const read = decl.read as (r: Json) => number;
  const valid = decl.valid as ((x: unknown) => string | null) | undefined;
  const ran = new Float64Array(n);
  const long = longOf(names, parts);
  let holes: Map<string, number> | null = null;
  for (let k = 0; k < n; k += 1) {
    const no = lay(x, long, k) ?? (valid ? valid(x) : null);
    const value = no === null ? read(runJob(decl.job, brief(x))) : Number.NaN;
    if (Number.isNaN(value)) holes = counted(holes, no ?? `no number for ${decl.id}`);
    ran[k] = value;
  }
  const signs = names.map((name) => decl.signs?.[name]);
  const carried = estimate && n > 1 && holes === null ? carry(ran, estimate) : null;
  if (carried) return flagged({ v: carried, holes }, parts, signs);
  return flagged({ v: ran, holes, ...(n > 1 ? { coarse: true as const } : {}) }, parts, signs);
}

/** Carries the runs to all samples by their ratio to the estimate; null where the estimate says never, nothing, or is itself short. */
function carry(ran: Float64Array, estimate: Column): Float64Array | null {
  if (estimate.v.length !== SAMPLES) return null;
  const ratio = new Float64Array(ran.length);
  for (let k = 0; k < ran.length; k += 1) {
    const e = estimate.v[k] ?? Number.NaN;
    if (!(Math.abs(e) > 0) || !Number.isFinite(e) || !Number.isFinite(ran[k] ?? Number.NaN)) return null;
    ratio[k] = (ran[k] ?? 0) / e;
  }
  const v = new Float64Array(SAMPLES);
  v.set(ran);
  for (let k = ran.length; k < SAMPLES; k += 1) v[k] = (estimate.v[k] ?? Number.NaN) * (ratio[1 + ((k - 1) % (ran.length - 1))] ?? 1);
  return v.some(Number.isNaN) ? null : v;
}
