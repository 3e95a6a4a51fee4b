// Verdicts: the margin of each check over the imagined shops, what decides it, and what it rests on.
import { type Band, band, type Column, explained, type Filled, isColumn } from "./band.ts";
import type { Contract } from "./contract.ts";
import { type Evaluation, evaluateCone } from "./evaluate.ts";
import { assumed, type Cell, type CheckCell, cone, type InputCell, isMissing, type Missing, type PartCell } from "./graph.ts";
import type { Item } from "./item.ts";
import { spreadOf } from "./sample.ts";

export type Verdict = "holds" | "tight" | "fails" | "open";
/** Why a verdict is open; `near` is a note beside any word. */
export type Reason = "unknown" | "incomplete" | "refused" | "rests-on";

/** What decides an open verdict: an input, or a reading that would narrow a joint value. */
export interface Decider {
  /** The unknown itself; null where nothing is written yet. */
  readonly cell: InputCell | PartCell | null;
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
  /** Guards that do not hold. */
  readonly restsOn: readonly { readonly contract: Contract; readonly guard: CheckCell }[];
}

const never = { low: 0, high: Infinity };

/** Capacity over demand; nothing demanded is a margin without end, nothing against nothing has none. */
function ratio(capacity: number, demand: number): number {
  if (Number.isNaN(capacity) || Number.isNaN(demand)) return Number.NaN;
  if (demand <= 0) return capacity < 0 || (capacity === 0 && demand === 0) ? Number.NaN : Infinity;
  if (demand === Infinity) return capacity === Infinity ? Number.NaN : 0;
  return Math.max(0, capacity / demand);
}

export function marginColumn(demand: Column, capacity: Column): Column {
  const n = demand.v.length === 1 ? capacity.v.length : capacity.v.length === 1 ? demand.v.length : Math.min(demand.v.length, capacity.v.length);
  const v = new Float64Array(n);
  for (let k = 0; k < n; k += 1) v[k] = ratio(capacity.v[capacity.v.length === 1 ? 0 : k] ?? Number.NaN, demand.v[demand.v.length === 1 ? 0 : k] ?? Number.NaN);
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
  const holes = column_.v.reduce((n, x) => n + (Number.isNaN(x) ? 1 : 0), 0);
  const shown = band(column_);
  let judged = holes > 0 ? band(column_, never) : shown;
  const { H, yesNo, guards } = cell.decl;
  if (guards === "people" && holes === 0) {
    const worst = worstCorner(e, cell, column_);
    judged = { ...judged, low: Math.min(judged.low, worst) };
  }
  let verdict = word(judged, H, yesNo ?? false);
  if (guards === "people" && holes > 0 && (verdict === "holds" || verdict === "tight")) verdict = "open";
  const why = [...(column_.holes?.keys() ?? [])][0] ?? null;
  const limits = boundsOf(demand, capacity);
  if (verdict === "fails" && !limits.mayFail) verdict = "open";
  if ((verdict === "holds" || verdict === "tight") && !limits.mayHold) verdict = "open";
  const allHoles = holes === column_.v.length;
  const reason = verdict !== "open" ? null : allHoles ? "incomplete" : holes > 0 ? "refused" : !limits.mayFail || !limits.mayHold ? "incomplete" : "unknown";
  const because =
    reason === "incomplete" && !allHoles ? "only a limit of it is known" : reason === "refused" ? `${why ?? "no value"}, in ${holes} of ${column_.v.length} cases` : allHoles ? why : null;
  const near = [judged.low, judged.high].some((x) => Math.abs(x / 1 - 1) < 0.02) || Math.abs(judged.low / H - 1) < 0.02;
  return {
    ...base,
    verdict,
    reason,
    because,
    margin: guards === "people" ? { ...shown, low: judged.low } : shown,
    demand: band(demand),
    capacity: band(capacity),
    near: near && column_.v.length > 1,
    estimated: demand.estimated === true || capacity.estimated === true,
  };
}

/** A demand that is at most what is shown may hold and may not fail; one that is at least what is shown the other way round. */
function boundsOf(demand: Column, capacity: Column): { mayHold: boolean; mayFail: boolean } {
  const d = demand.bound;
  const c = capacity.bound;
  const mayFail = d !== "upper" && d !== "both" && c !== "lower" && c !== "both";
  const mayHold = d !== "lower" && d !== "both" && c !== "upper" && c !== "both";
  return { mayHold, mayFail };
}

/**
 * The margin at the worst corner: every unknown of the cone swung alone to both ends, the worse end of each taken together.
 * The worst of all samples counts too, so that a hump between the ends is not overlooked.
 */
function worstCorner(e: Evaluation, cell: CheckCell, margins: Column): number {
  let worst = Infinity;
  for (const m of margins.v) if (m < worst) worst = m;
  const order = cone(cell.demand, cell.capacity);
  const unknown = order.filter((c): c is InputCell => c.is === "input" && c.decl.form === "quantity" && (e.filled.get(c) as Column).v.length > 1 && c.estimate === null);
  const run = (at: ReadonlyMap<Cell, Filled>): number => {
    const filled = evaluateCone(order, "nominal", at);
    const [demand, capacity] = [cell.demand, cell.capacity].map((c) => (isMissing(c) ? undefined : filled.get(c)));
    if (!demand || !capacity || !isColumn(demand) || !isColumn(capacity)) return Number.NaN;
    return ratio(capacity.v[0] ?? Number.NaN, demand.v[0] ?? Number.NaN);
  };
  const corner = new Map<Cell, Filled>();
  for (const c of unknown) {
    const s = spreadOf(c);
    if (!s) continue;
    const [low, high] = [s.low, s.high].map((x) => ({ v: Float64Array.of(x), holes: null }));
    if (!low || !high) continue;
    corner.set(c, run(new Map([[c, low]])) <= run(new Map([[c, high]])) ? low : high);
  }
  const there = corner.size > 0 ? run(corner) : Infinity;
  return Number.isNaN(there) ? worst : Math.min(worst, there);
}

/** Judges every check: plainly first, then each that rests on a window whose guard does not hold is opened. */
export function judge(e: Evaluation): Judged[] {
  const { graph } = e;
  const plain = new Map(graph.checks.map((c) => [c, plainly(e, c)]));
  return graph.checks.map((cell) => {
    const own = plain.get(cell);
    if (!own) throw new Error(`check ${cell.address} was not judged`);
    const rests: { contract: Contract; guard: CheckCell }[] = [];
    for (const { contract, item } of assumed(graph, cone(cell.demand, cell.capacity))) {
      if (cell.decl.guarantees === contract) continue;
      const guard = guardOf(graph.checks, contract, item);
      const said = guard && plain.get(guard)?.verdict;
      if (guard && (said === "open" || said === "fails")) rests.push({ contract, guard });
    }
    if (rests.length === 0) return own;
    const opened = own.verdict === "holds" || own.verdict === "tight";
    return {
      ...own,
      restsOn: rests,
      ...(opened ? { verdict: "open" as const, reason: "rests-on" as const, because: `rests on ${rests.map((r) => r.contract.says).join(" and ")}` } : {}),
    };
  });
}

const guardOf = (checks: readonly CheckCell[], contract: Contract, item: Item): CheckCell | null =>
  checks.find((c) => c.decl.guarantees === contract && c.item === item) ?? null;

/** Below this share an unknown is not worth a trip to the machine. */
const WORTH = 0.02;

/** What decides a check, most first: the unknowns of its cone and the readings that would narrow a joint value. */
export function deciders(e: Evaluation, judged: Judged): Decider[] {
  const { cell } = judged;
  const asked = new Map<string, Decider>();
  const ask = (m: Missing): void => {
    const input = m.address ?? m.says;
    asked.set(input, { cell: null, input, says: m.says, measure: m.input?.measure ?? "", share: 1 });
  };
  [cell.demand, cell.capacity].filter(isMissing).forEach(ask);
  for (const c of cone(cell.demand, cell.capacity)) if (c.is === "figure" && c.waits) ask(c.waits);
  if (asked.size > 0) return [...asked.values()];
  const demand = column(e, cell.demand);
  const capacity = column(e, cell.capacity);
  if (!demand || !capacity) return [];
  const margin = marginColumn(demand, capacity).v;
  const found: Decider[] = [];
  for (const c of cone(cell.demand, cell.capacity)) {
    if (c.is === "input" && c.estimate === null) {
      const f = e.filled.get(c);
      const x = f && !isColumn(f) && c.decl.form === "word" ? ranks(f.each, c.decl.words ?? []) : f && isColumn(f) ? f.v : null;
      if (x && x.length > 1) found.push({ cell: c, input: c.address, says: c.decl.says, measure: c.decl.measure, share: explained(margin, x) });
    }
    if (c.is === "part") {
      const x = column(e, c)?.v;
      for (const r of c.joint.decl.decl === "joint" ? c.joint.decl.readings : []) {
        if (r.part !== c.decl.part || !x || x.length === 1) continue;
        const { address } = e.graph.find(c.item, r.input);
        if (address !== undefined) found.push({ cell: c, input: address, says: r.says, measure: (r.input as { measure?: string }).measure ?? "", share: explained(margin, x) });
      }
    }
  }
  return found.filter((d) => d.share > WORTH).toSorted((a, b) => b.share - a.share);
}

const ranks = (each: readonly unknown[], words: readonly string[]): Float64Array => Float64Array.from(each, (w) => words.indexOf(String(w)));
