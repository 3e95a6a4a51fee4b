// Every cell's column over the imagined shops. Everything is evaluated; a column whose needs are the same columns as before is kept.
import { type Column, exact, type Filled, hole, isColumn } from "./band.ts";
import type { Draw, Figure, Joint, Refusal, Simulated, Value } from "./figure.ts";
import { type Cell, cone, type FigureCell, type Graph, type InputCell, isMissing, type PartCell, type SlotCell } from "./graph.ts";
import { canonical, type Job, type Json } from "./job.ts";
import { type Ends, fillInput } from "./sample.ts";
import { SAMPLES, SLOW_SAMPLES } from "./random.ts";

export interface Evaluation {
  readonly graph: Graph;
  readonly mode: Mode;
  readonly filled: ReadonlyMap<Cell, Filled>;
  readonly memo: ReadonlyMap<string, Memo>;
}
/** full: all samples, simulations run; quick: estimates stand for simulations; nominal: the nominal case alone. */
export type Mode = "full" | "quick" | "nominal";

interface Memo {
  readonly decl: unknown;
  readonly parts: readonly (Filled | null)[];
  readonly result: Filled;
}

/** Kept answers of jobs and joint values: pure functions, so that a kept answer is never wrong, only forgotten. */
const answers = new Map<string, unknown>();
const ANSWERS = 20_000;
function kept<T>(key: string, make: () => T): T {
  if (answers.has(key)) return answers.get(key) as T;
  const made = make();
  if (answers.size >= ANSWERS) answers.clear();
  answers.set(key, made);
  return made;
}

/** Runs a job, or takes the answer of an equal brief. */
export function runJob<B extends Json, R extends Json>(job: Job<B, R>, brief: B): R {
  return kept(`${job.id} ${job.version} ${canonical(brief)}`, () => job.run(brief));
}

export function evaluate(graph: Graph, mode: Mode, before?: Evaluation, swung?: ReadonlyMap<Cell, Filled>): Evaluation {
  const filled = new Map<Cell, Filled>();
  const memo = new Map<string, Memo>();
  const old = before?.mode === mode && !swung ? before.memo : undefined;
  for (const cell of cone(...graph.cells.values())) fill(cell, filled, memo, old, mode, swung);
  return { graph, mode, filled, memo };
}

/** Evaluates the cone of some cells alone, with some columns replaced. */
export function evaluateCone(order: readonly Cell[], mode: Mode, replaced: ReadonlyMap<Cell, Filled>): Map<Cell, Filled> {
  const filled = new Map<Cell, Filled>();
  for (const cell of order) fill(cell, filled, new Map(), undefined, mode, replaced);
  return filled;
}

function fill(
  cell: Cell,
  filled: Map<Cell, Filled>,
  memo: Map<string, Memo>,
  old: ReadonlyMap<string, Memo> | undefined,
  mode: Mode,
  swung: ReadonlyMap<Cell, Filled> | undefined,
): void {
  const swap = swung?.get(cell);
  if (swap) {
    filled.set(cell, swap);
    return;
  }
  const parts = partsOf(cell, filled);
  const past = old?.get(cell.address);
  // An input's column is itself kept by what is written, so comparing columns is enough everywhere else.
  const same = cell.is !== "input" && past && past.decl === cell.decl && past.parts.length === parts.length && past.parts.every((p, i) => p === parts[i]);
  const result = same ? past.result : make(cell, filled, mode);
  filled.set(cell, result);
  memo.set(cell.address, { decl: cell.decl, parts, result });
}

function partsOf(cell: Cell, filled: ReadonlyMap<Cell, Filled>): (Filled | null)[] {
  const get = (c: Cell): Filled | null => filled.get(c) ?? null;
  switch (cell.is) {
    case "input":
      return cell.estimate ? [get(cell.estimate)] : [];
    case "part":
      return [get(cell.joint)];
    case "slot":
      return cell.shares.map(get);
    case "figure":
      return [...[...cell.needs.values()].map((c) => (isMissing(c) ? null : get(c))), ...(cell.estimate ? [get(cell.estimate)] : [])];
  }
}

function make(cell: Cell, filled: ReadonlyMap<Cell, Filled>, mode: Mode): Filled {
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

function makeInput(cell: InputCell, filled: ReadonlyMap<Cell, Filled>, mode: Mode): Filled {
  if (cell.estimate) return filled.get(cell.estimate) ?? hole("no estimate");
  return fillInput(cell, mode === "nominal");
}

function makePart(cell: PartCell, filled: ReadonlyMap<Cell, Filled>, mode: Mode): Filled {
  const whole = filled.get(cell.joint);
  if (!whole || isColumn(whole)) return whole ?? hole("not computed");
  const columns = whole.each[0] as Readonly<Record<string, Float64Array>>;
  const v = columns[cell.decl.part];
  if (!v) return hole(`no ${cell.decl.part}`);
  return mode === "nominal" ? exact(v[0] ?? Number.NaN) : { v, holes: null };
}

const lengthOf = (f: Filled): number => (isColumn(f) ? f.v.length : f.each.length);
const longest = (parts: readonly Filled[]): number => parts.reduce((n, f) => (lengthOf(f) === 1 ? n : n === 1 ? lengthOf(f) : Math.min(n, lengthOf(f))), 1);
const entry = (f: Filled, k: number): unknown => (isColumn(f) ? f.v[f.v.length === 1 ? 0 : k] : f.each[f.each.length === 1 ? 0 : k]);

function mergeHoles(parts: readonly Filled[]): Map<string, number> | null {
  let all: Map<string, number> | null = null;
  for (const f of parts) {
    if (!isColumn(f) || !f.holes) continue;
    all ??= new Map();
    for (const [reason, n] of f.holes) all.set(reason, Math.max(n, all.get(reason) ?? 0));
  }
  return all;
}

const isNoColumn = (f: Filled): boolean => isColumn(f) && f.v.length === 1 && Number.isNaN(f.v[0]) && f.holes !== null;

function makeSlot(cell: SlotCell, filled: ReadonlyMap<Cell, Filled>): Filled {
  const parts = cell.shares.map((c) => filled.get(c) ?? hole("not computed"));
  const n = longest(parts);
  const { combine } = cell.decl;
  if (combine === "list") {
    const each = Array.from({ length: n }, (_, k) => parts.map((f, i) => ({ from: cell.shares[i]?.item.path.at(-1) ?? cell.shares[i]?.item.root ?? "", value: entry(f, k) })));
    return { each };
  }
  const v = new Float64Array(n).fill(combine === "sum" || parts.length === 0 ? 0 : combine === "max" ? -Infinity : Infinity);
  for (const f of parts) {
    if (!isColumn(f)) continue;
    for (let k = 0; k < n; k += 1) {
      const x = f.v[f.v.length === 1 ? 0 : k] ?? Number.NaN;
      const sum = v[k] ?? 0;
      v[k] = combine === "sum" ? sum + x : Number.isNaN(x) || Number.isNaN(sum) ? Number.NaN : combine === "max" ? Math.max(sum, x) : Math.min(sum, x);
    }
  }
  const { bound } = cell.decl;
  return flagged({ v, holes: mergeHoles(parts), ...(bound && parts.length > 1 ? { bound } : {}) }, parts);
}

/** Marks that travel down: estimated, coarse, and bounds through the signs of the needs. */
function flagged(column: Column, parts: readonly Filled[], signs?: readonly ("+" | "-" | undefined)[]): Column {
  let bound = column.bound;
  let estimated = column.estimated;
  let coarse = column.coarse;
  parts.forEach((f, i) => {
    if (!isColumn(f)) return;
    if (f.estimated) estimated = true;
    if (f.coarse) coarse = true;
    if (f.bound) {
      const sign = signs ? signs[i] : "+";
      const here = sign === undefined || f.bound === "both" ? "both" : sign === "+" ? f.bound : f.bound === "upper" ? "lower" : "upper";
      bound = bound && bound !== here ? "both" : here;
    }
  });
  return { v: column.v, holes: column.holes, ...(bound ? { bound } : {}), ...(estimated ? { estimated } : {}), ...(coarse ? { coarse } : {}) };
}

function makeFigure(cell: FigureCell, filled: ReadonlyMap<Cell, Filled>, mode: Mode): Filled {
  const { decl } = cell;
  if (cell.waits) return hole(cell.waits.says);
  const names: string[] = [];
  const parts: Filled[] = [];
  const x: Record<string, unknown> = {};
  for (const [name, need] of cell.needs) {
    x[name] = null;
    if (isMissing(need)) continue;
    const f = filled.get(need) ?? hole("not computed");
    if (isNoColumn(f) && decl.decl !== "value") return hole([...((f as Column).holes?.keys() ?? [])][0] ?? "no value");
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
    const numbers = Object.entries(x).map(([name, v]) => `${name} = ${typeof v === "object" ? "..." : String(v)}`);
    return hole(`program error in ${cell.address}: ${error instanceof Error ? error.message : String(error)} (${numbers.join(", ")})`);
  }
}

function makeColumn(cell: FigureCell, decl: Figure, x: Record<string, unknown>, names: readonly string[], parts: readonly Filled[]): Column {
  const n = longest(parts);
  const v = new Float64Array(n);
  const of = decl.of as (x: unknown) => number;
  const valid = decl.valid as ((x: unknown) => string | null) | undefined;
  const long = names.map((name, i) => ({ name, f: parts[i] })).filter((p): p is { name: string; f: Filled } => p.f !== undefined && lengthOf(p.f) > 1);
  const inherited = mergeHoles(parts);
  let holes: Map<string, number> | null = null;
  const miss = (reason: string): void => {
    holes ??= new Map();
    holes.set(reason, (holes.get(reason) ?? 0) + 1);
  };
  const root = inherited ? ([...inherited.keys()][0] ?? "no value") : null;
  for (let k = 0; k < n; k += 1) {
    let empty = false;
    for (const { name, f } of long) {
      const value = isColumn(f) ? f.v[k] : f.each[k];
      if (typeof value === "number" && value !== value) empty = true;
      x[name] = value;
    }
    if (empty) {
      v[k] = Number.NaN;
      miss(root ?? "no value");
      continue;
    }
    const no = valid ? valid(x) : null;
    if (no !== null) {
      v[k] = Number.NaN;
      miss(no);
      continue;
    }
    const value = of(x);
    if (value !== value) miss(`no number for ${cell.decl.id}`);
    v[k] = value;
  }
  const signs = names.map((name) => decl.signs?.[name]);
  return flagged({ v, holes }, parts, signs);
}

function makeValue(decl: Value<unknown>, x: Record<string, unknown>, names: readonly string[], parts: readonly Filled[]): Filled {
  const of = decl.of as (x: unknown) => unknown;
  const n = longest(parts);
  const each: unknown[] = [];
  for (let k = 0; k < n; k += 1) {
    names.forEach((name, i) => {
      const f = parts[i];
      if (f) x[name] = entry(f, k);
    });
    each.push(of({ ...x }));
  }
  return { each };
}

/** A joint value takes its needs at their nominal, and the half width of each (two standard deviations of a reading). */
function makeJoint(cell: FigureCell, decl: Joint, x: Record<string, unknown>, names: readonly string[], needs: FigureCell["needs"]): Filled {
  const half: Record<string, number> = {};
  for (const name of names) {
    const need = needs.get(name);
    if (need && !isMissing(need) && need.is === "input") half[name] = halfOf(need);
  }
  const key = `${decl.id} ${cell.address} ${canonical({ x, half } as unknown as Json)}`;
  const of = decl.of as (x: unknown, draw: Draw<string>) => Readonly<Record<string, Float64Array>> | Refusal;
  const got = kept(key, (): Filled => {
    const answer = of(x, { seed: cell.address, count: SAMPLES, half });
    if ("refused" in answer && typeof answer.refused === "string") return hole(answer.refused);
    return { each: [answer] };
  });
  return got;
}

function halfOf(cell: InputCell): number {
  const f = fillInput(cell, true) as Column & { ends?: Ends };
  return f.ends ? (f.ends.high - f.ends.low) / 2 : 0;
}

function makeSimulated(
  cell: FigureCell,
  decl: Simulated,
  x: Record<string, unknown>,
  names: readonly string[],
  parts: readonly Filled[],
  filled: ReadonlyMap<Cell, Filled>,
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
  let holes: Map<string, number> | null = null;
  for (let k = 0; k < n; k += 1) {
    let empty = false;
    names.forEach((name, i) => {
      const f = parts[i];
      if (!f) return;
      const value = entry(f, k);
      if (typeof value === "number" && Number.isNaN(value)) empty = true;
      x[name] = value;
    });
    const no = empty ? "no value" : valid ? valid(x) : null;
    ran[k] = no === null ? read(runJob(decl.job, brief(x))) : Number.NaN;
    if (no !== null || Number.isNaN(ran[k])) holes = (holes ?? new Map<string, number>()).set(no ?? "no value", (holes?.get(no ?? "no value") ?? 0) + 1);
  }
  const carried = estimate && n > 1 && holes === null ? carry(ran, estimate) : null;
  if (carried) return flagged({ v: carried, holes }, parts);
  return flagged({ v: ran, holes, ...(n > 1 ? { coarse: true as const } : {}) }, parts);
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
