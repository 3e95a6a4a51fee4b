import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { asFound } from "../../kernel/model/node.ts";
import { readArguments } from "./arguments.ts";
import { type Outcome, outcomeOf } from "../../kernel/compare.ts";
import { isUnread } from "../../kernel/model/laid.ts";
import { isBetter } from "./cures.ts";
import { openDesk, studyOf, tryOut } from "./desk.ts";
import { marginText, verdictText } from "./verdict-words.ts";

const outcome = (verdict: Outcome["verdict"], nominal: number): Outcome => ({
  verdict,
  yesNo: false,
  margin: { nominal, low: 0.9 * nominal, high: 1.1 * nominal },
});

test("a better verdict is better whatever the margin", () => {
  expect(isBetter(outcome("tight", 1.2), outcome("open", 1.6))).toBe(true);
  expect(isBetter(outcome("fails", 0.9), outcome("open", 0.8))).toBe(false);
});

test("within one verdict a margin counts when it moves by more than a twentieth", () => {
  expect(isBetter(outcome("fails", 0.8), outcome("fails", 0.5))).toBe(true);
  expect(isBetter(outcome("fails", 0.4), outcome("fails", 0.5))).toBe(false);
  expect(isBetter(outcome("fails", 0.51), outcome("fails", 0.5))).toBeNull();
});

test("a check that nothing is asked of any more is better off", () => {
  expect(
    isBetter(
      { ...outcome("fails", 1), margin: { nominal: { never: true }, low: { never: true }, high: { never: true } } },
      outcome("fails", 0.5),
    ),
  ).toBe(true);
});

test("verdicts differ in shape and in word, in ASCII too", () => {
  for (const unicode of [true, false]) {
    const texts = (["holds", "tight", "fails", "open"] as const).map((v) => verdictText({ colour: false, unicode }, v));
    expect(new Set(texts.map((x) => x[0])).size).toBe(4);
    expect(texts.map((x) => x.slice(2).trim())).toEqual(["holds", "tight", "fails", "open"]);
  }
});

test("a yes or no has an answer instead of a margin", () => {
  expect(marginText({ yesNo: true, margin: { nominal: 0, low: 0, high: 0 } })).toBe("no");
  expect(marginText({ yesNo: true, margin: { nominal: 1, low: 0, high: 1 } })).not.toMatch(/\d/);
  expect(marginText({ yesNo: false, margin: { nominal: { refused: "x" }, low: { refused: "x" }, high: { refused: "x" } } })).toBe(
    "no margin yet",
  );
});

test("an option left out because no room reads what it changes would have changed no verdict", () => {
  const desk = openDesk(readArguments(["check", "--quick", fileURLToPath(new URL("../../../examples/heron", import.meta.url))]), "/");
  const { evaluation } = studyOf(desk, asFound);
  const outcomes = (options: readonly { machine: string; name: string }[]): [string, Outcome][] =>
    [...tryOut(desk, { options, tries: [] }, evaluation).judged].map(([address, j]) => [address, outcomeOf(j)]);
  const found = outcomes([]);
  for (const o of desk.options) if (isUnread(desk.parsed, o)) expect(outcomes([o]), o.name).toEqual(found);
  expect(desk.options.some((o) => !isUnread(desk.parsed, o))).toBe(true);
});
