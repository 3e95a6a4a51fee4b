// The calculator's side of the worker: any figure of any room from values typed, with no shop.
import { band, isColumn } from "../../../kernel/band.ts";
import { show, type System } from "../../../kernel/display.ts";
import { parseFormula, toMathML } from "../../../kernel/formula.ts";
import type { Kind } from "../../../kernel/kind.ts";
import { kindInfo } from "../../../kernel/unit.ts";
import { type Field, fieldOf, fieldsOf, workable, workOut, type WorkError } from "../../../kernel/work.ts";
import type { Bench } from "./bench.ts";
import type { Working } from "../../../kernel/working.ts";
import { dressed, typeset, type WorkingReply } from "./workings.ts";

export interface FigureHead {
  readonly id: string;
  /** Name of the room, as its heading. */
  readonly room: string;
  readonly symbol: string;
  readonly says: string;
}

/** In the order of the rooms. Tables and curves are no numbers and left out. */
export function figureList(bench: Bench): readonly FigureHead[] {
  return workable(bench.house)
    .filter((f) => f.decl !== "value")
    .map((f) => ({ id: f.id, room: bench.house.roomOf.get(f)?.title ?? "", symbol: f.symbol, says: f.says }));
}

export interface FormField extends Field {
  /** MathML of its name in the formula. */
  readonly mathml: string;
  readonly examples: readonly string[];
  /** Left out it is worked out from fields of its own. */
  readonly isFigure: boolean;
}

/** What can be said of a figure before anything is typed. */
export interface FigureForm {
  readonly fields: readonly FormField[];
  /** MathML of its symbol. */
  readonly symbol: string;
  readonly working: Pick<Working, "mathml" | "mathmlNumbers" | "method" | "amount">;
  readonly source: string;
}

/** What a figure takes; null where there is none of that id. */
export function figureForm(bench: Bench, of: { readonly figure: string }): FigureForm | null {
  const figure = workable(bench.house).find((f) => f.id === of.figure);
  if (!figure) return null;
  const d = figure.decl === "part" ? figure.joint : figure;
  const mathml = "formula" in d && d.formula !== undefined ? toMathML(parseFormula(d.formula)) : null;
  return {
    fields: fieldsOf(figure).map((f) => dressedField(bench, f)),
    symbol: "symbol" in figure ? typeset(figure.symbol) : "",
    working: { mathml, mathmlNumbers: null, method: "method" in d ? (d.method ?? null) : null, amount: null },
    source: "source" in d ? d.source : "",
  };
}

/** Fields of what lies below a figure, by its ids. */
export function formFields(bench: Bench, of: { readonly ids: readonly string[] }): readonly FormField[] {
  return of.ids.flatMap((id) => {
    const ref = bench.house.byId.get(id);
    return ref ? [{ ...dressedField(bench, fieldOf(id, ref)), optional: false }] : [];
  });
}

function dressedField(bench: Bench, f: Field): FormField {
  const figures = workable(bench.house);
  return {
    ...f,
    mathml: typeset(f.name) || typeset(f.symbol),
    examples: f.kind === null ? [] : kindInfo(f.kind).examples,
    isFigure: f.form === "figure" && figures.some((d) => d.id === f.id),
  };
}

type Values = Readonly<Record<string, string>>;

interface Asked {
  readonly figure: string;
  readonly values: Values;
  readonly system: System;
}

export type WorkReply = { readonly worked: WorkingReply } | { readonly error: WorkError };

export function workFigure(bench: Bench, { figure, values, system }: Asked): WorkReply {
  const worked = workOut(bench.house, figure, values, system);
  return "code" in worked ? { error: worked } : { worked: dressed(worked.working, "full", system) };
}

/** The figure for each text of one value, in the unit in which it is shown; NaN where it has no number. */
export interface AlongReply {
  readonly unit: string;
  readonly nominal: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
  /** Why the first of those without a number has none. */
  readonly says: string | null;
}

/** More digits than are shown: the plot and its table place them. */
const digits = 8;

export function workAlong(bench: Bench, of: Asked & { readonly along: string; readonly texts: readonly string[] }): AlongReply {
  const rows = of.texts.map((text) => workOut(bench.house, of.figure, { ...of.values, [of.along]: text }, of.system));
  let unit = "";
  const numbers = rows.map((row): readonly [number, number, number] => {
    if ("code" in row || !isColumn(row.column)) return [Number.NaN, Number.NaN, Number.NaN];
    const kind = row.amount.kind as Kind; // an amount carries the name of its kind
    const { nominal, low, high } = band(row.column);
    const shown = (x: number): number => {
      if (!Number.isFinite(x)) return x;
      const { number, unit: has } = show(x, kind, of.system, digits);
      unit = has;
      return Number(number);
    };
    return [shown(nominal), shown(low), shown(high)];
  });
  const bad = rows.find((row) => "code" in row);
  return {
    unit,
    nominal: numbers.map(([n]) => n),
    low: numbers.map(([, l]) => l),
    high: numbers.map(([, , h]) => h),
    says: bad && "code" in bad ? bad.message : null,
  };
}
