// The working of what stands at an address: symbols typeset, numbers for its band plot, and how well it is known yet.
import type { Amount } from "../../../kernel/answer.ts";
import { systemOf } from "../../../kernel/answer.ts";
import { show, type System } from "../../../kernel/display.ts";
import type { Mode } from "../../../kernel/evaluate.ts";
import { parseFormula, toMathML } from "../../../kernel/formula.ts";
import type { Kind } from "../../../kernel/kind.ts";
import { working, type Working } from "../../../kernel/working.ts";
import type { Bench } from "./bench.ts";

/** Numbers in the unit in which they are shown. */
export interface BandNumbers {
  readonly unit: string;
  readonly nominal: number;
  readonly low: number;
  readonly high: number;
}

export interface WorkingReply {
  readonly working: Working;
  readonly mode: Mode;
  /** MathML of the symbol, empty where it has none. */
  readonly symbol: string;
  /** MathML of the symbols of its needs, by name. */
  readonly symbols: Readonly<Record<string, string>>;
  readonly plot: BandNumbers | null;
}

/** From the best evaluation there is; null where nothing stands at the address. */
export function workingReply(bench: Bench, of: { readonly address: string }): WorkingReply | null {
  const evaluation = bench.best();
  const found = working(evaluation, of.address);
  return found && dressed(found, evaluation.mode, systemOf(evaluation.graph.model));
}

/** A working with its symbols typeset and its band in numbers. */
export function dressed(found: Working, mode: Mode, system: System): WorkingReply {
  return {
    working: found,
    mode,
    symbol: typeset(found.symbol),
    symbols: Object.fromEntries(found.needs.map(({ name }) => [name, typeset(name)])),
    plot: found.amount === null ? null : bandNumbers(found.amount, system),
  };
}

/** A name that is no symbol (a thing that offers to a slot) stays text. */
export function typeset(symbol: string): string {
  if (!/^[A-Za-z][A-Za-z0-9_]*$/.test(symbol)) return "";
  return toMathML(parseFormula(symbol));
}

function bandNumbers(amount: Amount, system: System): BandNumbers | null {
  const { nominal, low, high, kind } = amount;
  if (typeof nominal !== "number" || typeof low !== "number" || typeof high !== "number") return null;
  /** More digits than are shown: the plot places them. */
  const digits = 8;
  // An amount says its kind as the declarations do.
  const shown = (x: number): { number: string; unit: string } => show(x, kind as Kind, system, digits);
  const [n, l, h] = [nominal, low, high].map((x) => Number(shown(x).number));
  return n === undefined || l === undefined || h === undefined ? null : { unit: shown(nominal).unit, nominal: n, low: l, high: h };
}
