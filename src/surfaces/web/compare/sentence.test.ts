// The sentence over a comparison, from verdicts alone.
import { expect, test } from "vitest";
import type { CheckChange, Outcome } from "../../../kernel/compare.ts";
import { compareSentence } from "./sentence.ts";

const at = (verdict: Outcome["verdict"]): Outcome => ({ verdict, yesNo: false, margin: { nominal: 1, low: 1, high: 1 } });
const checks = (...pairs: [Outcome["verdict"], Outcome["verdict"] | null][]): CheckChange[] =>
  pairs.map(([was, now], i) => ({
    address: `lathe/${i}`,
    asks: "?",
    item: "lathe",
    was: at(was),
    now: now && at(now),
    isChanged: was !== now,
    betterIn: null,
  }));
const told = (name: string, ...pairs: [Outcome["verdict"], Outcome["verdict"] | null][]) => ({
  name,
  checks: checks(...pairs),
  cost: null,
  hours: null,
});

test("the column that cures most is named with its price", () => {
  const found = checks(["fails", "fails"], ["fails", "fails"], ["holds", "holds"]);
  const both = { ...told("both", ["fails", "holds"], ["fails", "tight"], ["holds", "holds"]), cost: "640 USD", hours: "6 h" };
  expect(compareSentence(found, [told("one", ["fails", "holds"], ["fails", "fails"], ["holds", "holds"]), both])).toBe(
    "Two checks *fail* as found: *both* cures all of them, for 640 USD and 6 h of own work.",
  );
});

test("what it breaks is said, and that no other column cures any", () => {
  const found = checks(["fails", "fails"], ["fails", "fails"], ["holds", "holds"]);
  const text = compareSentence(found, [
    told("a", ["fails", "holds"], ["fails", "fails"], ["holds", "fails"]),
    told("b", ["fails", "fails"], ["fails", "open"], ["holds", "holds"]),
  ]);
  expect(text).toBe("Two checks *fail* as found: *a* cures one of them and makes 1 other check fail; no other column cures any.");
});

test("a check that is not asked any more is cured, one that becomes open is not", () => {
  const found = checks(["fails", "fails"]);
  expect(compareSentence(found, [told("a", ["fails", null])])).toContain("*a* cures it");
  expect(compareSentence(found, [told("a", ["fails", "open"])])).toBe("One check *fails* as found, and none of these columns cures it.");
});

test("where nothing fails, the column that would make something fail is named", () => {
  const found = checks(["holds", "holds"]);
  expect(compareSentence(found, [told("a", ["holds", "fails"])])).toBe("Nothing *fails* as found; *a* would make something fail.");
  expect(compareSentence(found, [])).toMatch(/^No option is laid beside/);
});
