// Rows of a comparison: what a column changes beside what was found. What changes a verdict comes first, worst as found on top.
import type { CheckChange, Outcome } from "../../../kernel/compare.ts";
import { numberAndUnit } from "../parts/amount-words.ts";
import type { ColumnReply } from "../worker/comparing.ts";

/** A check in one column; `null` in a row while its column is still being worked out. */
export interface CheckCell {
  /** Null where it is not asked. */
  readonly outcome: Outcome | null;
  readonly isChanged: boolean;
  readonly betterIn: number | null;
}

export interface CheckRow {
  readonly address: string;
  readonly asks: string;
  readonly item: string;
  readonly changes: "verdict" | "margin" | "nothing";
  readonly found: Outcome | null;
  readonly cells: readonly (CheckCell | null)[];
}

type Columns = readonly (ColumnReply | null)[];

/** Rows by the low end of the margin as found, as on every other page; checks that are asked in other columns only come last. */
export function checkRows(found: ColumnReply, columns: Columns): CheckRow[] {
  const by = columns.map((column) => column && new Map(column.checks.map((c) => [c.address, c])));
  const all = new Map<string, CheckChange>();
  for (const checks of [found.checks, ...columns.map((column) => column?.checks ?? [])])
    for (const c of checks) if (!all.has(c.address)) all.set(c.address, c);
  return [...all.values()]
    .map((check): CheckRow => {
      const cells = by.map((checks) => (checks ? cellOf(checks.get(check.address), check) : null));
      return { address: check.address, asks: check.asks, item: check.item, changes: changesOf(check.was, cells), found: check.was, cells };
    })
    .toSorted((a, b) => weight[a.changes] - weight[b.changes] || lowOf(a.found) - lowOf(b.found) || (a.address < b.address ? -1 : 1));
}

/** A margin that has no number yet stands behind all that fall short of 1. Far, not endless: two such rows are still to be ordered. */
function lowOf(outcome: Outcome | null): number {
  const low = outcome?.margin.low;
  if (low === undefined) return Number.MAX_VALUE;
  return typeof low === "number" ? low : "never" in low ? Number.MAX_VALUE / 2 : 1;
}

const weight = { verdict: 0, margin: 1, nothing: 2 };

function cellOf(change: CheckChange | undefined, check: CheckChange): CheckCell {
  if (!change) return { outcome: null, isChanged: check.was !== null, betterIn: null };
  return { outcome: change.now, isChanged: change.isChanged, betterIn: change.isChanged ? change.betterIn : null };
}

function changesOf(found: Outcome | null, cells: CheckRow["cells"]): CheckRow["changes"] {
  const changed = cells.filter((cell) => cell?.isChanged);
  if (changed.length === 0) return "nothing";
  return changed.some((cell) => cell?.outcome?.verdict !== found?.verdict) ? "verdict" : "margin";
}

export interface FigureRow {
  readonly address: string;
  readonly symbol: string;
  readonly says: string;
  /** Unit of all its numbers; empty where they differ and each says its own. */
  readonly unit: string;
  readonly found: string;
  /** What it would be; null where it stays, undefined while that is worked out. */
  readonly cells: readonly (string | null | undefined)[];
}

/** Figures that change in any column, those that move most first. */
export function figureRows(columns: Columns): FigureRow[] {
  const rows = new Map<string, { row: FigureRow; by: number }>();
  columns.forEach((column, i) => {
    for (const f of column?.figures ?? []) {
      const ratio = typeof f.ratio === "number" && f.ratio > 0 ? Math.abs(Math.log(f.ratio)) : Infinity;
      const had = rows.get(f.address);
      const cells = had?.row.cells ?? columns.map((c) => (c ? null : undefined));
      const { address, symbol, says, from: found } = f;
      const row: FigureRow = { address, symbol, says, found, unit: "", cells: cells.with(i, f.to) };
      rows.set(address, { row, by: Math.max(had?.by ?? 0, ratio) });
    }
  });
  return [...rows.values()].toSorted((a, b) => b.by - a.by || (a.row.address < b.row.address ? -1 : 1)).map(({ row }) => inOneUnit(row));
}

/** The unit goes to the head of the row when all its numbers share it. */
function inOneUnit(row: FigureRow): FigureRow {
  const texts = [row.found, ...row.cells.filter((text) => typeof text === "string")].filter(isNumber);
  const units = new Set(texts.map((text) => numberAndUnit(text).unit));
  const [unit = ""] = units;
  if (units.size !== 1 || unit === "") return row;
  const bare = (text: string): string => numberAndUnit(text).number;
  return { ...row, unit, found: bare(row.found), cells: row.cells.map((text) => (typeof text === "string" ? bare(text) : text)) };
}

/** A number, and not the reason why there is none. */
export function isNumber(text: string): boolean {
  return /^[-+]?\d/.test(text);
}
