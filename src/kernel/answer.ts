// The whole answer as plain JSON with sorted keys: command line, page, paper and tests read the same object.
import { band, type Column, isColumn } from "./band.ts";
import { show, showBand, type System } from "./display.ts";
import type { Evaluation } from "./evaluate.ts";
import type { Finding, Place } from "./finding.ts";
import { type Cell, type FigureCell, type Graph, type InputCell, isMissing, type PartCell } from "./graph.ts";
import { type Item, itemAddress } from "./item.ts";
import type { Kind } from "./kind.ts";
import type { Leaf, Model, OptionFile, RecordFile } from "./model/node.ts";
import { type Decider, deciders, type Judged, judge, type Reason, type Verdict } from "./verdict.ts";

/** A number of an answer: plain, without end, or refused with its reason. */
export type Num = number | { readonly never: true } | { readonly refused: string };

export interface Amount {
  readonly nominal: Num;
  readonly low: Num;
  readonly high: Num;
  readonly unit: string;
  readonly kind: string;
  /** In the units of the shop: "30.2 N·m". */
  readonly text: string;
  /** "26 to 35 N·m", or "exact". */
  readonly band: string;
}

export interface OriginAnswer {
  readonly by: "option" | "record" | "line" | "catalogue" | "typical" | "estimate" | "given";
  /** "plate", "lathe/machine.yaml:41", "typical: IEC 60038" … as one phrase. */
  readonly says: string;
  readonly name?: string;
  readonly place?: Place;
  readonly unchecked?: true;
}

export interface InputAnswer {
  readonly address: string;
  readonly id: string;
  readonly room: string;
  readonly item: string;
  readonly key: string;
  readonly says: string;
  readonly form: string;
  readonly kind: string | null;
  readonly words: readonly string[];
  /** As written; null where nobody wrote anything. */
  readonly written: string | null;
  /** What is reckoned with. */
  readonly text: string;
  readonly origin: OriginAnswer;
  /** Values that lost against this one. */
  readonly over: readonly { readonly text: string; readonly origin: OriginAnswer }[];
  readonly measure: string;
  readonly required: boolean;
  readonly amount: Amount | null;
}

export interface FigureAnswer {
  readonly address: string;
  readonly id: string;
  readonly room: string;
  readonly item: string;
  readonly symbol: string;
  readonly says: string;
  readonly amount: Amount;
  readonly estimated: boolean;
  readonly coarse: boolean;
}

export interface DeciderAnswer {
  readonly input: string;
  readonly says: string;
  readonly measure: string;
  readonly share: number;
}

export interface CheckAnswer {
  readonly address: string;
  readonly id: string;
  readonly room: string;
  readonly root: string;
  readonly item: string;
  /** What is asked about, in the user's names: "drag-knob rough"; empty for the machine itself. */
  readonly thing: string;
  readonly asks: string;
  readonly verdict: Verdict;
  readonly reason: Reason | null;
  readonly because: string | null;
  readonly yesNo: boolean;
  readonly people: boolean;
  readonly reserve: number;
  readonly margin: { readonly nominal: Num; readonly low: Num; readonly high: Num };
  readonly demand: { readonly address: string; readonly says: string; readonly amount: Amount } | null;
  readonly capacity: { readonly address: string; readonly says: string; readonly amount: Amount } | null;
  readonly near: boolean;
  readonly estimated: boolean;
  readonly deciders: readonly DeciderAnswer[];
  readonly restsOn: readonly { readonly says: string; readonly guard: string | null }[];
  readonly remedies: readonly {
    readonly does: string;
    readonly costs: string;
    readonly changes: readonly string[];
    readonly lay: Readonly<Record<string, string>> | null;
  }[];
}

export interface NoticeAnswer {
  readonly address: string;
  readonly severity: "error" | "warning" | "note";
  readonly says: string;
  readonly at: string;
  readonly room: string;
  readonly root: string;
}

export interface Answer {
  readonly shop: string;
  readonly show: Model["show"];
  readonly variant: readonly string[];
  readonly machines: readonly { readonly root: string; readonly title: string; readonly kind: string; readonly year: string }[];
  readonly rooms: readonly { readonly name: string; readonly title: string; readonly answers: string }[];
  readonly checks: readonly CheckAnswer[];
  readonly notices: readonly NoticeAnswer[];
  readonly figures: Readonly<Record<string, FigureAnswer>>;
  readonly inputs: Readonly<Record<string, InputAnswer>>;
  readonly findings: readonly Finding[];
  readonly options: readonly OptionFile[];
  readonly records: readonly RecordFile[];
  /** What to measure next: the inputs that decide open verdicts, most first. */
  readonly measureNext: readonly (DeciderAnswer & { readonly checks: readonly string[] })[];
  readonly mode: Evaluation["mode"];
}

export function num(x: number, why?: string): Num {
  if (Number.isNaN(x)) return { refused: why ?? "no value" };
  return Number.isFinite(x) ? x : { never: true };
}

export const systemOf = (model: Model): System => ({
  units: model.show.units,
  pressure: model.show.pressure,
  currency: model.show.currency,
});

/** What of a declaration an amount needs: a list or a word has no unit. */
interface Measured {
  readonly unit?: string;
  readonly kind?: Kind | null;
}

/** A time without end is never; anything else without end is no limit. */
const endless = (kind: Kind): string => (kind === "time" || kind === "long-time" || kind === "short-time" ? "never" : "no limit");

/** Amounts kept by their column, which an edit elsewhere hands on, and by all else that goes into one. */
const amounts = new WeakMap<Column, { readonly asked: readonly unknown[]; readonly amount: Amount }>();

export function amountOf(c: Column, decl: Measured, system: System): Amount {
  const asked = [decl.unit, decl.kind, system.units, system.pressure, system.currency];
  const had = amounts.get(c);
  if (had?.asked.every((x, i) => x === asked[i])) return had.amount;
  const amount = worded(c, decl, system);
  amounts.set(c, { asked, amount });
  return amount;
}

function worded(c: Column, decl: Measured, system: System): Amount {
  const { nominal, low, high } = band(c);
  const why = c.holes?.keys().next().value;
  const kind = decl.kind ?? "ratio";
  const textOf = (x: number): string =>
    Number.isNaN(x) ? (why ?? "no value") : Number.isFinite(x) ? show(x, kind, system).text : x > 0 ? endless(kind) : "without limit";
  const spread = (): string => {
    if (c.v.length === 1) return "exact";
    if (Number.isFinite(high - low)) return showBand(low, high, kind, system).text;
    return low === high ? textOf(low) : `${textOf(low)} to ${textOf(high)}`;
  };
  const nums = { nominal: num(nominal, why), low: num(low, why), high: num(high, why) };
  return { ...nums, unit: decl.unit ?? "", kind, text: textOf(nominal), band: spread() };
}

function originOf(leaf: Leaf): OriginAnswer {
  const { origin, place } = leaf;
  const from = leaf.from ? `${leaf.from}, ` : "";
  const at = `${place.file}:${place.line}`;
  switch (origin.by) {
    case "option":
      return { by: "option", says: origin.name === "tried" ? "tried out, not written" : `option ${origin.name}`, name: origin.name, place };
    case "record":
      return { by: "record", says: `record ${origin.name}`, name: origin.name, place };
    case "catalogue":
      return { by: "catalogue", says: `${from}catalogue ${origin.entry}`, name: origin.entry, place };
    case "line":
      // Given on the command line: there is no file to point at.
      return place.file === "" ? { by: "given", says: "given" } : { by: "line", says: `${from}${at}`, place };
  }
}

export function inputAnswer(e: Evaluation, cell: InputCell, system: System): InputAnswer {
  const { decl, leaf } = cell;
  const known = leaf !== null && leaf.text !== "unknown";
  const amount = (): Amount | null => {
    const filled = decl.kind ? e.filled.get(cell) : undefined;
    return filled && isColumn(filled) ? amountOf(filled, decl, system) : null;
  };
  const typical =
    cell.estimate || decl.typical?.value === undefined
      ? null
      : { value: decl.typical.value, source: decl.typical.source, unchecked: decl.typical.unchecked };
  const origin: OriginAnswer = known
    ? originOf(leaf)
    : typical
      ? {
          by: "typical",
          says: `typical: ${typical.source}${typical.unchecked ? " (unchecked)" : ""}`,
          ...(typical.unchecked ? { unchecked: true } : {}),
        }
      : decl.typical
        ? { by: "estimate", says: decl.typical.source }
        : { by: "typical", says: `typical: ${decl.wordsSource ?? "one of these in such shops"}` };
  const text = known
    ? leaf.text.replaceAll("\n", ", ")
    : typical
      ? typical.value
      : (amount()?.text ?? (decl.typicalWords ?? []).join(" or "));
  return {
    address: cell.address,
    id: decl.id,
    room: cell.room,
    item: itemAddress(cell.item),
    key: decl.key,
    says: decl.says,
    form: decl.form,
    kind: decl.kind,
    words: decl.words ?? [],
    written: leaf ? leaf.text.replaceAll("\n", ", ") : null,
    text,
    origin,
    over: (leaf?.over ?? []).map((l) => ({ text: l.text, origin: originOf(l) })),
    measure: decl.measure,
    required: decl.required ?? false,
    // Worked out when read: who asks for the checks alone reads few of them.
    get amount() {
      return amount();
    },
  };
}

export function figureAnswer(e: Evaluation, cell: FigureCell | PartCell, system: System): FigureAnswer | null {
  const filled = e.filled.get(cell);
  const { decl } = cell;
  if (!filled || !isColumn(filled) || !("symbol" in decl)) return null;
  return {
    address: cell.address,
    id: decl.id,
    room: cell.room,
    item: itemAddress(cell.item),
    symbol: decl.symbol,
    says: decl.says,
    amount: amountOf(filled, decl, system),
    estimated: filled.estimated === true,
    coarse: filled.coarse === true,
  };
}

const deciderAnswer = (d: Decider): DeciderAnswer => ({
  input: d.input,
  says: d.says,
  measure: d.measure,
  share: Math.round(d.share * 1000) / 1000,
});

const sayOf = (c: Cell): string => c.decl.says;

/** A joint value as a whole has no unit; its members do. */
export const measured = (c: Cell): Measured => (c.decl.decl === "joint" ? {} : c.decl);

function checkAnswer(e: Evaluation, j: Judged, system: System): CheckAnswer {
  const { cell } = j;
  const side = (c: typeof cell.demand): CheckAnswer["demand"] => {
    if (isMissing(c)) return null;
    const f = e.filled.get(c);
    return f && isColumn(f) ? { address: c.address, says: sayOf(c), amount: amountOf(f, measured(c), system) } : null;
  };
  return {
    address: cell.address,
    id: cell.decl.id,
    room: cell.room,
    root: cell.item.root,
    item: itemAddress(cell.item),
    thing: thingOf(cell.item),
    asks: cell.decl.asks,
    verdict: j.verdict,
    reason: j.reason,
    because: j.because,
    yesNo: cell.decl.yesNo ?? false,
    people: cell.decl.guards === "people",
    reserve: cell.decl.H,
    margin: { nominal: num(j.margin.nominal), low: num(j.margin.low), high: num(j.margin.high) },
    demand: side(cell.demand),
    capacity: side(cell.capacity),
    near: j.near,
    estimated: j.estimated,
    deciders: (j.verdict === "open" || j.reason !== null ? deciders(e, j) : []).map(deciderAnswer),
    restsOn: j.restsOn.map((r) => ({ says: r.contract.says, guard: r.guard?.address ?? null })),
    remedies: cell.decl.remedies
      .filter((r) => e.graph.stands(cell.item, r.when))
      .map((r) => ({
        does: r.does,
        costs: r.costs,
        changes: r.changes.map((ref) => e.graph.find(cell.item, ref).address ?? ref.id),
        lay: r.lay ?? null,
      })),
  };
}

/** Keys that hold things and say nothing themselves. */
const holders = new Set(["work", "operations", "axes", "fluids", "belts"]);
const thingOf = (item: Item): string => item.path.filter((key) => !holders.has(key)).join(" ");

/** Low end of the margin, where the eye should fall first. One that has no number yet stands behind all that fall short of 1. */
const lowOf = (c: CheckAnswer): number => (typeof c.margin.low === "number" ? c.margin.low : "never" in c.margin.low ? Infinity : 1);

/** Every figure by its address, in their order. */
export function figureAnswers(e: Evaluation): Record<string, FigureAnswer> {
  const system = systemOf(e.graph.model);
  const figures: Record<string, FigureAnswer> = {};
  for (const [address, cell] of inOrder(e.graph.cells)) {
    if (cell.is === "input" || cell.is === "slot") continue;
    const f = figureAnswer(e, cell, system);
    if (f) figures[address] = f;
  }
  return figures;
}

const ordered = new WeakMap<Graph["cells"], readonly (readonly [string, Cell])[]>();
/** Cells by their address, sorted once for a graph. */
function inOrder(cells: Graph["cells"]): readonly (readonly [string, Cell])[] {
  let sorted = ordered.get(cells);
  if (!sorted) ordered.set(cells, (sorted = [...cells].toSorted(([a], [b]) => (a < b ? -1 : 1))));
  return sorted;
}

/** The whole answer; without the figures, which cost most, where only checks are wanted. */
export function answer(e: Evaluation, figuresWanted = true): Answer {
  const { graph } = e;
  const { model, house } = graph;
  const system = systemOf(model);
  const checks = judge(e)
    .map((j) => checkAnswer(e, j, system))
    .toSorted((a, b) => lowOf(a) - lowOf(b) || (a.address < b.address ? -1 : 1));
  const inputs: Record<string, InputAnswer> = {};
  for (const [address, cell] of inOrder(graph.cells)) if (cell.is === "input") inputs[address] = inputAnswer(e, cell, system);
  const { notices, findings } = said(e);
  const next = new Map<string, DeciderAnswer & { checks: string[] }>();
  for (const c of checks) {
    if (c.verdict !== "open") continue;
    const top = c.deciders[0];
    if (!top) continue;
    const had = next.get(top.input);
    if (had) had.checks.push(c.address);
    else next.set(top.input, { ...top, checks: [c.address] });
  }
  return {
    shop: model.title,
    show: model.show,
    variant: [...model.variant.options.map((o) => o.name), ...model.variant.tries.map((t) => `${t.root}/${t.path}: ${t.text}`)],
    machines: machinesOf(model),
    rooms: house.rooms
      .filter((r) => r.checks.length + r.figures.length > 0)
      .map((r) => ({ name: r.name, title: r.title, answers: r.answers })),
    checks,
    notices,
    figures: figuresWanted ? figureAnswers(e) : {},
    inputs,
    findings: [...model.findings, ...findings],
    options: model.options,
    records: model.records,
    measureNext: [...next.values()].toSorted((a, b) => b.checks.length - a.checks.length || b.share - a.share),
    mode: e.mode,
  };
}

function machinesOf(model: Model): Answer["machines"] {
  const text = (root: string, key: string): string => {
    const node = model.roots.get(root)?.entries.get(key);
    return node?.is === "leaf" ? node.text : "";
  };
  return [...model.roots.keys()]
    .filter((r) => r !== "shop")
    .map((root) => ({ root, title: text(root, "machine") || root, kind: text(root, "kind"), year: text(root, "year") }));
}

/** What the rooms say about the numbers; where one is a mistake in the files, as a finding with its place. */
function said(e: Evaluation): { notices: NoticeAnswer[]; findings: Finding[] } {
  const found: NoticeAnswer[] = [];
  const findings: Finding[] = [];
  for (const n of e.graph.notices) {
    const x: Record<string, unknown> = {};
    for (const [name, need] of n.needs) {
      const f = isMissing(need) ? undefined : e.filled.get(need);
      x[name] = !f ? null : isColumn(f) ? f.v[0] : f.each[0];
    }
    if (Object.values(x).some((v) => typeof v === "number" && Number.isNaN(v))) continue;
    const says = (n.decl.of as (x: unknown) => string | null)(x);
    if (says === null) continue;
    const place = "leaf" in n.at ? n.at.leaf?.place : undefined;
    if (n.decl.code && place) findings.push({ code: n.decl.code, severity: n.decl.severity === "error" ? "error" : "note", says, place });
    else
      found.push({ address: n.address, severity: n.decl.severity, says, at: n.at.address ?? n.address, room: n.room, root: n.item.root });
  }
  return { notices: found, findings };
}
