// What is on the screen while bands are still being computed: the newest nominal number, and word and band of the last full answer.
import type { Answer, CheckAnswer } from "../../../kernel/answer.ts";

export interface Row {
  readonly check: CheckAnswer;
  /** Word, band and place in the list belong to an older state, or are not known yet. */
  readonly isStale: boolean;
  /** Nothing has been said about it yet but its nominal number. */
  readonly isNew: boolean;
}

/** Rows in the order of the last full answer, so that none jumps while one types. `isFresh`: the full answer is the newest. */
export function rowsOf(nominal: Answer | null, banded: Answer | null, isFresh: boolean): Row[] {
  if (banded === null) return (nominal?.checks ?? []).map((check) => ({ check, isStale: true, isNew: true }));
  if (isFresh || nominal === null) return banded.checks.map((check) => ({ check, isStale: !isFresh, isNew: false }));
  const newest = new Map(nominal.checks.map((c) => [c.address, c]));
  const had = new Set(banded.checks.map((c) => c.address));
  const known = banded.checks.flatMap((check): Row[] => {
    const now = newest.get(check.address);
    // A check that is no more (an option took the thing away) goes at once.
    return now ? [{ check: { ...check, margin: { ...check.margin, nominal: now.margin.nominal } }, isStale: true, isNew: false }] : [];
  });
  return [...known, ...nominal.checks.filter((c) => !had.has(c.address)).map((check) => ({ check, isStale: true, isNew: true }))];
}
