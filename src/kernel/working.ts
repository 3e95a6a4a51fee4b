// The working of one figure: formula, the same with numbers put in, inputs with where they came from, what decides the spread.
import { amountOf, type Amount, figureAnswer, inputAnswer, measured, type InputAnswer, type OriginAnswer, systemOf } from "./answer.ts";
import { explained, isColumn } from "./band.ts";
import type { Evaluation } from "./evaluate.ts";
import { parseFormula, toMathML, withNumbers } from "./formula.ts";
import { type Cell, cone, type FigureCell, isMissing, type PartCell, type SlotCell } from "./graph.ts";
import type { System } from "./display.ts";

export interface NeedAnswer {
  /** As in the formula. */
  readonly name: string;
  readonly address: string | null;
  readonly says: string;
  readonly text: string;
  readonly band: string;
  readonly origin: OriginAnswer | null;
  readonly is: "input" | "figure" | "slot" | "missing";
}

export interface Working {
  readonly address: string;
  readonly id: string;
  readonly symbol: string;
  readonly says: string;
  readonly amount: Amount | null;
  readonly formula: string | null;
  readonly method: string | null;
  /** The formula with the numbers put in. */
  readonly numbers: string | null;
  readonly mathml: string | null;
  readonly mathmlNumbers: string | null;
  readonly source: string;
  readonly needs: readonly NeedAnswer[];
  readonly assumes: readonly string[];
  /** What decides the spread, most first. */
  readonly shares: readonly { readonly address: string; readonly says: string; readonly share: number; readonly measure: string }[];
  readonly usedBy: readonly string[];
  readonly estimated: boolean;
  readonly coarse: boolean;
  readonly input: InputAnswer | null;
}

/** The working of what stands at an address; null where nothing does. */
export function working(e: Evaluation, address: string): Working | null {
  const cell = e.graph.cells.get(address);
  return cell ? workingOf(e, cell, systemOf(e.graph.model)) : null;
}

export function workingOf(e: Evaluation, cell: Cell, system: System): Working {
  const usedBy = e.graph.checks
    .filter((c) => [c.demand, c.capacity].some((s) => !isMissing(s) && cone(s).includes(cell)))
    .map((c) => c.address);
  const filled = e.filled.get(cell);
  const none = {
    formula: null,
    method: null,
    numbers: null,
    mathml: null,
    mathmlNumbers: null,
    needs: [],
    assumes: [],
    shares: [],
    estimated: false,
    coarse: false,
    input: null,
  };
  if (cell.is === "input") {
    const input = inputAnswer(e, cell, system);
    return {
      ...none,
      address: cell.address,
      id: cell.decl.id,
      symbol: cell.decl.symbol ?? "",
      says: cell.decl.says,
      amount: input.amount,
      source: input.origin.says,
      usedBy,
      input,
    };
  }
  if (cell.is === "slot") {
    const amount = filled && isColumn(filled) && cell.decl.kind ? amountOf(filled, cell.decl, system) : null;
    return {
      ...none,
      address: cell.address,
      id: cell.decl.id,
      symbol: "",
      says: cell.decl.says,
      amount,
      method: `${cell.decl.combine} of what the rooms offer`,
      source: "sum of shares",
      needs: shareAnswers(e, cell, system),
      usedBy,
      shares: shares(e, cell),
    };
  }
  const answer = figureAnswer(e, cell, system);
  const head = {
    ...none,
    address: cell.address,
    id: cell.decl.id,
    says: cell.decl.says,
    amount: answer?.amount ?? null,
    usedBy,
    shares: shares(e, cell),
    estimated: answer?.estimated ?? false,
    coarse: answer?.coarse ?? false,
  };
  if (cell.is === "part") {
    const { joint } = cell;
    const d = joint.decl;
    return {
      ...head,
      symbol: cell.decl.symbol,
      method: "method" in d ? (d.method ?? null) : null,
      source: "source" in d ? d.source : "",
      needs: needAnswers(e, joint, system),
    };
  }
  const d = cell.decl;
  const needs = needAnswers(e, cell, system);
  if (d.decl !== "figure")
    return {
      ...head,
      symbol: "symbol" in d ? d.symbol : "",
      method: "method" in d ? d.method : null,
      source: "source" in d ? d.source : "",
      needs,
    };
  const formula = d.formula === undefined ? null : parseFormula(d.formula);
  const text = (name: string): string => needs.find((n) => n.name === name)?.text ?? name;
  return {
    ...head,
    symbol: d.symbol,
    formula: d.formula ?? null,
    method: d.method ?? null,
    numbers: formula && withNumbers(formula, text),
    mathml: formula && toMathML(formula, {}),
    mathmlNumbers: formula && toMathML(formula, { numbers: text }),
    source: d.source,
    needs,
    assumes: (d.assumes ?? []).map((c) => c.says),
  };
}

function needAnswers(e: Evaluation, cell: FigureCell, system: System): NeedAnswer[] {
  return [...cell.needs].map(([name, need]) => {
    if (isMissing(need))
      return {
        name,
        address: need.address ?? null,
        says: need.says,
        text: need.missing === "required" ? "not known" : "none",
        band: "",
        origin: null,
        is: "missing" as const,
      };
    return needAnswer(e, name, need, system);
  });
}

function needAnswer(e: Evaluation, name: string, need: Cell, system: System): NeedAnswer {
  const filled = e.filled.get(need);
  const says = need.decl.says;
  const amount = filled && isColumn(filled) ? amountOf(filled, measured(need), system) : null;
  const data = filled && !isColumn(filled) ? dataText(filled.each[0]) : "";
  const origin = need.is === "input" ? inputAnswer(e, need, system).origin : null;
  return {
    name,
    address: need.address,
    says,
    text: amount?.text ?? data,
    band: amount?.band ?? "",
    origin,
    is: need.is === "input" ? "input" : need.is === "slot" ? "slot" : "figure",
  };
}

const dataText = (x: unknown): string =>
  typeof x === "string"
    ? x
    : typeof x === "number"
      ? String(Number(x.toPrecision(4)))
      : Array.isArray(x)
        ? x.map(dataText).join(", ")
        : "table";

function shareAnswers(e: Evaluation, cell: SlotCell, system: System): NeedAnswer[] {
  return cell.shares.map((c) => needAnswer(e, c.item.path.join(".") || c.item.root, c, system));
}

/** Below this share nobody would notice. */
const SEEN = 0.01;

function shares(e: Evaluation, cell: Cell): Working["shares"] {
  const own = e.filled.get(cell);
  if (!own || !isColumn(own) || own.v.length === 1) return [];
  const found: { address: string; says: string; share: number; measure: string }[] = [];
  const seen = new Set<Cell>();
  const consider = (c: Cell | PartCell, measure: string): void => {
    const x = e.filled.get(c);
    if (c === cell || seen.has(c) || !x || !isColumn(x) || x.v.length === 1) return;
    seen.add(c);
    const share = explained(own.v, x.v);
    if (share >= SEEN) found.push({ address: c.address, says: c.decl.says, share: Math.round(share * 1000) / 1000, measure });
  };
  for (const c of cone(cell)) {
    if (c.is === "input" && !c.estimate) consider(c, c.decl.measure);
    if (c.is === "part") consider(c, "");
  }
  return found.toSorted((a, b) => b.share - a.share);
}
