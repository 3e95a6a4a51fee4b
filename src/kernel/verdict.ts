// Verdicts: the margin of each check over the imagined shops, what decides it, and what it rests on.
import { type Band, band, type Column, exact, explained, type Filled, isColumn } from "./band.ts";
import type { Verdict } from "./check.ts";
import type { Contract } from "./contract.ts";
import { type Evaluation, evaluateCone } from "./evaluate.ts";
import { assumed, type Cell, type CheckCell, cone, type InputCell, isMissing, type Missing, type FigureCell } from "./graph.ts";
import type { Item } from "./item.ts";
import { spreadOf } from "./sample.ts";

export type { Verdict } from "./check.ts";
/** Why a verdict is open; `near` is a note beside any word. */
export type Reason = "unknown" | "incomplete" | "refused" | "rests-on";

/** What decides an open verdict: an input, or a reading that would narrow a joint value. */
export interface Decider {
  /** The unknown itself; null where nothing is written yet. */
  readonly cell: InputCell | FigureCell | null;
  /** The address of the input to be filled in. */
  readonly input: string;
  readonly says: string;
  readonly measure: string;
  /** Share of the spread of the margin that goes away when this is known; 1 when nothing can be said without it. */
  readonly share: number;
}

export interface Judged {
  readonly cell: CheckCell;
  readonly verdict: Verdict;
  readonly reason: Reason | null;
  /** A sentence for the reason. */
  readonly because: string | null;
  readonly margin: Band;
  readonly demand: Band | null;
  readonly capacity: Band | null;
  /** A limit of the band lies within 2 % of changing the verdict. */
  readonly near: boolean;
  readonly estimated: boolean;
  readonly missing: Missing | null;
  /** Windows whose guard does not hold, or is not there. */
  readonly restsOn: readonly Rest[];
}
interface Rest {
  readonly contract: Contract;
  readonly guard: CheckCell | null;
  readonly said: Verdict | null;
}

const never = { low: 0, high: Infinity };

/** Capacity over demand; nothing demanded is a margin without end, less than nothing left over for it is none, nothing against nothing has none. */
export function ratio(capacity: number, demand: number): number {
  if (Number.isNaN(capacity) || Number.isNaN(demand)) return Number.NaN;
  if (demand <= 0) return capacity === demand ? Number.NaN : capacity > demand ? Infinity : 0;
  if (demand === Infinity) return capacity === Infinity ? Number.NaN : 0;
  return Math.max(0, capacity / demand);
}

/** Kept by what it is made of: an edit leaves the sides of most checks as they are. */
const margins = new WeakMap<Column, WeakMap<Column, Column>>();

export function marginColumn(demand: Column, capacity: Column): Column {
  let ofDemand = margins.get(demand);
  if (!ofDemand) margins.set(demand, (ofDemand = new WeakMap()));
  let margin = ofDemand.get(capacity);
  if (!margin) ofDemand.set(capacity, (margin = makeMargin(demand, capacity)));
  return margin;
}

function makeMargin(demand: Column, capacity: Column): Column {
  const n =
    demand.v.length === 1 ? capacity.v.length : capacity.v.length === 1 ? demand.v.length : Math.min(demand.v.length, capacity.v.length);
  const v = new Float64Array(n);
  for (let k = 0; k < n; k += 1)
    v[k] = ratio(capacity.v[capacity.v.length === 1 ? 0 : k] ?? Number.NaN, demand.v[demand.v.length === 1 ? 0 : k] ?? Number.NaN);
  const holes = demand.holes || capacity.holes ? new Map([...(demand.holes ?? []), ...(capacity.holes ?? [])]) : null;
  return { v, holes };
}

/** The word for a margin: one rule for every check. */
export function word(margin: Band, H: number, yesNo: boolean): Verdict {
  if (margin.low >= H) return "holds";
  if (margin.high < 1) return "fails";
  if (margin.low >= 1) return yesNo ? "holds" : "tight";
  return "open";
}

const column = (e: Evaluation, c: Cell | Missing): Column | null => {
  const f = isMissing(c) ? undefined : e.filled.get(c);
  return f && isColumn(f) ? f : null;
};

function plainly(e: Evaluation, cell: CheckCell): Judged {
  const none: Band = { nominal: Number.NaN, low: Number.NaN, high: Number.NaN };
  const base = { cell, margin: none, demand: null, capacity: null, near: false, estimated: false, missing: null, restsOn: [] };
  const missing = isMissing(cell.demand) ? cell.demand : isMissing(cell.capacity) ? cell.capacity : null;
  if (missing) return { ...base, verdict: "open", reason: "incomplete", because: missing.says, missing };
  const demand = column(e, cell.demand);
  const capacity = column(e, cell.capacity);
  if (!demand || !capacity) return { ...base, verdict: "open", reason: "incomplete", because: "not computed" };
  const column_ = marginColumn(demand, capacity);
  const holes = countHoles(column_.v);
  const shown = band(column_);
  const { H, guards } = cell.decl;
  const yesNo = cell.decl.yesNo ?? false;
  const corner = guards === "people" && holes === 0 ? worstCorner(e, cell, column_) : null;
  // A corner that has no value is a hole like any other.
  const refused = holes > 0 || Number.isNaN(corner);
  const low = corner === null ? shown.low : Number.isNaN(corner) ? never.low : Math.min(shown.low, corner);
  const judged = holes > 0 ? band(column_, never) : { ...shown, low };
  const said = word(judged, H, yesNo);
  const enough = said === "holds" || said === "tight";
  const limits = boundsOf(demand, capacity);
  const limited = (said === "fails" && !limits.mayFail) || (enough && !limits.mayHold);
  const forbidden = guards === "people" && refused && enough;
  const verdict = limited || forbidden ? "open" : said;
  const allHoles = holes === column_.v.length;
  const why = reasonsOf(column_);
  const [reason, because] = ((): [Reason | null, string | null] => {
    if (verdict !== "open") return [null, null];
    if (allHoles) return ["incomplete", why];
    if (refused) return ["refused", holes > 0 ? `${why}, in ${holes} of ${column_.v.length} cases` : "no value at the worst corner"];
    return limited ? ["incomplete", "only a limit of it is known"] : ["unknown", null];
  })();
  const near = !yesNo && [judged.low, judged.high, judged.low / H].some((x) => Math.abs(x - 1) < NEAR);
  return {
    ...base,
    verdict,
    reason,
    because,
    margin: guards === "people" ? { ...shown, low } : shown,
    demand: band(demand),
    capacity: band(capacity),
    near: near && column_.v.length > 1,
    estimated: demand.estimated === true || capacity.estimated === true,
  };
}

function countHoles(v: Float64Array): number {
  let n = 0;
  for (const x of v) if (Number.isNaN(x)) n += 1;
  return n;
}

/** Limits of a band scatter by a percent from one set of samples to another; closer to another word than this is said. */
const NEAR = 0.02;

const reasonsOf = (c: Column): string => c.holes?.keys().next().value ?? "no value";

/** A demand that is at most what is shown may hold and may not fail; one that is at least what is shown the other way round. */
function boundsOf(demand: Column, capacity: Column): { mayHold: boolean; mayFail: boolean } {
  const d = demand.bound;
  const c = capacity.bound;
  const mayFail = d !== "upper" && d !== "both" && c !== "lower" && c !== "both";
  const mayHold = d !== "lower" && d !== "both" && c !== "upper" && c !== "both";
  return { mayHold, mayFail };
}

/**
 * The margin at the worst corner: every unknown of the cone swung alone to its ends (a word to each of its typical ones, a joint value to its
 * least and greatest sample), the worst end of each taken together. The worst of all samples counts too, so that a hump between the ends is
 * not overlooked. NaN when the corner has no value.
 */
function worstCorner(e: Evaluation, cell: CheckCell, margins: Column): number {
  const worst = margins.v.reduce((least, m) => Math.min(least, m), Infinity);
  const order = cone(cell.demand, cell.capacity);
  const middle = new Map<Cell, Filled>();
  const ends = new Map<Cell, readonly Filled[]>();
  for (const c of order) {
    const f = e.filled.get(c);
    if (f && c.is === "figure" && c.decl.decl === "joint") middle.set(c, f);
    const there = f && endsOf(c, f);
    if (!there || !f) continue;
    ends.set(c, there);
    middle.set(c, isColumn(f) ? exact(f.v[0] ?? Number.NaN) : { each: [f.each[0]] });
  }
  if (ends.size === 0) return worst;
  const run = (...at: readonly (readonly [Cell, Filled])[]): number => {
    const filled = evaluateCone(order, e.mode, new Map([...middle, ...at]));
    const [demand, capacity] = [cell.demand, cell.capacity].map((c) => (isMissing(c) ? undefined : filled.get(c)));
    if (!demand || !capacity || !isColumn(demand) || !isColumn(capacity)) return Number.NaN;
    return ratio(capacity.v[0] ?? Number.NaN, demand.v[0] ?? Number.NaN);
  };
  const corner = [...ends].map(([c, there]) => {
    const [first, ...more] = there.map((end) => ({ end, margin: run([c, end]) }));
    const least = more.reduce((a, b) => (a && (Number.isNaN(a.margin) || a.margin <= b.margin) ? a : b), first);
    return [c, least?.end ?? exact(Number.NaN)] as const;
  });
  return Math.min(worst, run(...corner));
}

/** Where an unknown may lie furthest; null for what is known. */
function endsOf(c: Cell, f: Filled): readonly Filled[] | null {
  if (c.is === "input" && c.estimate === null && !isColumn(f) && c.decl.form === "word")
    return f.each.length > 1 ? [...new Set(f.each)].map((w) => ({ each: [w] })) : null;
  if (!isColumn(f) || f.v.length === 1) return null;
  if (c.is === "part") return [exact(f.v.reduce((a, b) => Math.min(a, b))), exact(f.v.reduce((a, b) => Math.max(a, b)))];
  if (c.is !== "input" || c.estimate !== null) return null;
  const s = spreadOf(c);
  return s && [exact(s.low), exact(s.high)];
}

/** Judges every check: plainly first, then each that rests on a window whose guard does not hold is opened. */
export function judge(e: Evaluation): Judged[] {
  const { graph } = e;
  const plain = new Map(graph.checks.map((c) => [c, plainly(e, c)]));
  return graph.checks.map((cell) => {
    const own = plain.get(cell);
    if (!own) throw new Error(`check ${cell.address} was not judged`);
    const rests: Rest[] = [];
    for (const { contract, item } of assumed(graph, cone(cell.demand, cell.capacity))) {
      if (cell.decl.guarantees === contract) continue;
      const guard = guardOf(graph.checks, contract, item);
      const said = guard ? (plain.get(guard)?.verdict ?? null) : null;
      if (said !== "holds" && said !== "tight") rests.push({ contract, guard, said });
    }
    if (rests.length === 0) return own;
    const opened = own.verdict === "holds" || own.verdict === "tight";
    return {
      ...own,
      restsOn: rests,
      ...(opened
        ? { verdict: "open" as const, reason: "rests-on" as const, because: `rests on ${rests.map((r) => r.contract.says).join(" and ")}` }
        : {}),
    };
  });
}

const guardOf = (checks: readonly CheckCell[], contract: Contract, item: Item): CheckCell | null =>
  checks.find((c) => c.decl.guarantees === contract && c.item === item) ?? null;

/** Below this share an unknown is not worth a trip to the machine. */
const WORTH = 0.02;

/** What decides a check, most first: the unknowns of its cone and the readings that would narrow a joint value. */
export function deciders(e: Evaluation, judged: Judged): Decider[] {
  // Where only a limit of a number is known, no reading would turn it into the number itself; what somebody left out of a sum would.
  const limited = judged.reason === "incomplete" && judged.missing === null && !Number.isNaN(judged.margin.nominal);
  if (limited && !cone(judged.cell.demand, judged.cell.capacity).some((c) => waitsOf(c) !== null)) return [];
  // A verdict that rests on a window hangs on what keeps the guard open, not on its own spread.
  const cells = judged.reason === "rests-on" ? judged.restsOn.flatMap((r) => (r.guard && r.said === "open" ? r.guard : [])) : [judged.cell];
  const found = new Map<string, Decider>();
  for (const d of cells.flatMap((cell) => decidersOf(e, cell))) if (d.share > (found.get(d.input)?.share ?? 0)) found.set(d.input, d);
  return [...found.values()].filter((d) => d.share > WORTH).toSorted((a, b) => b.share - a.share);
}

function decidersOf(e: Evaluation, cell: CheckCell): Decider[] {
  const cells = cone(cell.demand, cell.capacity);
  const asked = [cell.demand, cell.capacity, ...cells.map(waitsOf)].filter((c) => c !== null && isMissing(c));
  if (asked.length > 0)
    return asked.map((m) => ({
      cell: null,
      input: m.address ?? m.says,
      says: m.says,
      measure: m.input?.measure ?? m.measure ?? "",
      share: 1,
    }));
  const demand = column(e, cell.demand);
  const capacity = column(e, cell.capacity);
  if (!demand || !capacity) return [];
  const margin = marginColumn(demand, capacity).v;
  const found: Decider[] = [];
  for (const c of cells) {
    if (c.is === "input" && c.estimate === null) {
      const f = e.filled.get(c);
      const x = f && !isColumn(f) && c.decl.form === "word" ? ranks(f.each, c.decl.words ?? []) : f && isColumn(f) ? f.v : null;
      if (x && x.length > 1)
        found.push({ cell: c, input: c.address, says: c.decl.says, measure: c.decl.measure, share: explained(margin, x) });
    }
    if (c.is !== "figure" || c.decl.decl !== "joint") continue;
    // A reading narrows a joint value through members the check itself may not use.
    const whole = e.filled.get(c);
    const members = whole && !isColumn(whole) ? (whole.each[0] as Readonly<Record<string, Float64Array>>) : {};
    for (const r of c.decl.readings) {
      const x = members[r.part];
      const { address } = e.graph.find(c.item, r.input);
      const { measure = "" } = r.input as { measure?: string };
      if (x && address !== undefined) found.push({ cell: c, input: address, says: r.says, measure, share: explained(margin, x) });
    }
  }
  return found;
}

const waitsOf = (c: Cell): Missing | null => ("waits" in c ? c.waits : null);

/** Words as numbers, kept so that what they explain can be. */
const ranked = new WeakMap<readonly unknown[], Float64Array>();
function ranks(each: readonly unknown[], words: readonly string[]): Float64Array {
  let ranks_ = ranked.get(each);
  if (!ranks_) ranked.set(each, (ranks_ = Float64Array.from(each, (w) => words.indexOf(String(w)))));
  return ranks_;
}
