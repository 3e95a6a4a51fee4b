// The column of values tried out while a slider moves: nominal numbers at once, verdicts when their bands are there.
import type { CheckChange } from "../../../kernel/compare.ts";
import type { CheckAnswer } from "../../../kernel/answer.ts";
import { banded, newest, pass } from "../model/desk.ts";
import type { Column } from "./column.ts";

/** Columns with the newest numbers in the one that is looked at, if it is the one of values tried out. */
export function useLive(columns: readonly Column[]): readonly Column[] {
  return columns.map((column) => (column.isTried && column.isChosen ? live(column, columns[0]) : column));
}

function live(column: Column, found: Column | undefined): Column {
  const now = newest.value;
  if (now === null || now.pass !== pass.value || !found?.reply) return column;
  const numbers = new Map(now.answer.checks.map((c) => [c.address, c]));
  const hasBands = banded.value?.pass === pass.value;
  const known = new Map((column.reply?.checks ?? []).map((c) => [c.address, c]));
  const before = column.reply === null ? new Map(found.reply.checks.map((c) => [c.address, c])) : known;
  const checks = [...before.values()].map((c): CheckChange => {
    const check = numbers.get(c.address);
    return check ? changed(c, check, hasBands) : c;
  });
  const reply = column.reply ?? { ...found.reply, figures: [] };
  return { ...column, reply: { ...reply, checks }, isStale: !hasBands };
}

/** Without bands the verdict is the last one known: a nominal number alone decides nothing. */
function changed(c: CheckChange, { margin, verdict, yesNo }: CheckAnswer, hasBands: boolean): CheckChange {
  const now = hasBands || c.now === null ? { verdict, margin, yesNo } : { ...c.now, margin: { ...c.now.margin, nominal: margin.nominal } };
  const isMoved = JSON.stringify(now) !== JSON.stringify(c.was);
  return { ...c, now, isChanged: isMoved, betterIn: hasBands ? c.betterIn : null };
}
