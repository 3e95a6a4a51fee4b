// While bands are being computed the list keeps its order and its words; only nominal numbers move.
import { expect, test } from "vitest";
import type { Answer, CheckAnswer } from "../../../kernel/answer.ts";
import { rowsOf } from "./shown.ts";

const check = (address: string, nominal: number, verdict: CheckAnswer["verdict"]): CheckAnswer =>
  ({ address, verdict, margin: { nominal, low: nominal * 0.9, high: nominal * 1.1 } }) as CheckAnswer; // the rest plays no part here
const answer = (...checks: CheckAnswer[]): Answer => ({ checks }) as unknown as Answer; // nor does that of the answer

const before = answer(check("a", 0.8, "fails"), check("b", 1.5, "holds"));

test("an edit moves the nominal number at once and leaves word, band and order until bands return", () => {
  const rows = rowsOf(answer(check("b", 0.7, "fails"), check("a", 2, "holds")), before, false);
  expect(rows.map((r) => [r.check.address, r.check.margin.nominal, r.check.margin.low, r.check.verdict, r.isStale])).toEqual([
    ["a", 2, 0.8 * 0.9, "fails", true],
    ["b", 0.7, 1.5 * 0.9, "holds", true],
  ]);
});

test("a check that came with the edit stands last and says nothing yet, one that went is gone", () => {
  const rows = rowsOf(answer(check("b", 1.5, "holds"), check("c", 3, "holds")), before, false);
  expect(rows.map((r) => [r.check.address, r.isNew])).toEqual([
    ["b", false],
    ["c", true],
  ]);
});

test("when bands have returned the rows are theirs", () => {
  expect(rowsOf(answer(check("a", 9, "holds")), before, true).map((r) => [r.check, r.isStale])).toEqual(
    before.checks.map((c) => [c, false]),
  );
});

test("before the first bands every row is new", () => {
  expect(rowsOf(before, null, false).every((r) => r.isNew)).toBe(true);
  expect(rowsOf(null, null, false)).toEqual([]);
});
