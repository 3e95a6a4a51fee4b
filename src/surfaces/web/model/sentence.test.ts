// The sentence over a page says what the verdicts say, in words that fit their number.
import { expect, test } from "vitest";
import type { CheckAnswer } from "../../../kernel/answer.ts";
import type { Verdict } from "../../../kernel/verdict.ts";
import { marginsSentence, shopSentence, verdictSentence } from "./sentence.ts";

const check = (verdict: Verdict, address: string): CheckAnswer => ({
  address,
  id: "supply.current-holds",
  room: "supply",
  root: "shop",
  item: "shop",
  thing: "",
  asks: "Does the service carry everything at once?",
  verdict,
  reason: null,
  because: null,
  yesNo: false,
  people: false,
  reserve: 1.15,
  margin: { nominal: 1, low: 1, high: 1 },
  demand: null,
  capacity: null,
  near: false,
  estimated: false,
  deciders: [],
  restsOn: [],
  remedies: [],
});
const many = (...verdicts: Verdict[]): CheckAnswer[] => verdicts.map((v, i) => check(v, `shop/${i}`));

test.each([
  [{ fails: 3, open: 5, tight: 0, holds: 1 }, "Three checks *fail* and five stay *open*."],
  [{ fails: 1, open: 1, tight: 0, holds: 1 }, "One check *fails* and one stays *open*."],
  [{ fails: 1, open: 0, tight: 2, holds: 9 }, "One of 12 checks *fails*, nothing stays open."],
  [{ fails: 0, open: 2, tight: 0, holds: 8 }, "Nothing fails, two of 10 checks stay *open*."],
  [{ fails: 0, open: 0, tight: 2, holds: 8 }, "All 10 checks *hold*, two of them *tight*."],
  [{ fails: 0, open: 0, tight: 0, holds: 4 }, "All 4 checks *hold*."],
])("counts %j read: %s", (counts, sentence) => {
  expect(verdictSentence(counts)).toBe(sentence);
});

test("the best option is named with what it cures, and the answers still wanted with what they decide", () => {
  const checks = many("fails", "fails", "open", "open");
  const measure = { input: "shop/supply.voltage", says: "voltage", measure: "", share: 0.9, checks: ["shop/2", "shop/3"] };
  const cures = [
    { name: "more-air", cures: 0 },
    { name: "reconnect-low", cures: 2 },
  ];
  expect(marginsSentence({ checks, cures, measureNext: [measure] })).toBe(
    "Two checks *fail* and two stay *open*. Option reconnect-low cures all of them; one answer decides all of the open ones.",
  );
});

test("while options are still being tried out nothing is said of cures", () => {
  expect(marginsSentence({ checks: many("fails"), cures: null, measureNext: [] })).toBe("One of 1 check *fails*, nothing stays open.");
});

test("an empty shop is told where to start", () => {
  expect(marginsSentence({ checks: [], cures: null, measureNext: [] })).toMatch(/^Nothing is written yet/);
});

test("the shop's sentence names the machines that fail and counts mistakes in the files", () => {
  const counts = { fails: 2, open: 0, tight: 0, holds: 3 };
  expect(
    shopSentence(
      [
        { name: "Lathe", counts },
        { name: "Mill", counts: { ...counts, fails: 1 } },
      ],
      1,
    ),
  ).toBe("Lathe has two checks that *fail* and Mill has one check that *fails*. One mistake in the files waits to be put right.");
  expect(shopSentence([{ name: "Mill", counts: { ...counts, fails: 0 } }], 0)).toBe("Nothing *fails* on Mill.");
  expect(shopSentence([], 0)).toBe("No machine is entered yet.");
});
