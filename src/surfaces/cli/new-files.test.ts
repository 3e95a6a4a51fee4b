import fc from "fast-check";
import { parse } from "yaml";
import { expect, test } from "vitest";
import { parseShop, resolve } from "../../kernel/model/resolve.ts";
import { asFound } from "../../kernel/model/node.ts";
import { waywright } from "../../rooms/index.ts";
import { type Answers, filesOf, folderOf } from "./new-files.ts";
import { isDontKnow, mistakeIn, questions } from "./questions.ts";

const load = (answers: Answers) => {
  const files = new Map(filesOf(answers).map((f) => [f.path, { text: f.text }]));
  return resolve(parseShop(files, waywright.keys), waywright.keys, asFound);
};
const errors = (answers: Answers) => load(answers).findings.filter((f) => f.severity === "error");

test("about twenty questions are asked, no name twice", () => {
  expect(questions.length).toBeGreaterThanOrEqual(18);
  expect(questions.length).toBeLessThanOrEqual(25);
  expect(new Set(questions.map((q) => q.name)).size).toBe(questions.length);
});

test("whoever knows nothing gets a folder that loads without an error", () => {
  expect(errors({})).toEqual([]);
  expect(errors(Object.fromEntries(questions.map((q) => [q.name, "don't know"])))).toEqual([]);
});

test("the example of every question is an answer to it, and all of them load without an error", () => {
  for (const q of questions) expect(mistakeIn(q, q.example, waywright.keys), q.name).toBeNull();
  expect(errors(Object.fromEntries(questions.map((q) => [q.name, q.example])))).toEqual([]);
});

test.each(["", " ", "?", "don't know", "Dont know", "do not know", "unknown", "not known"])("%j says that nobody knows", (answer) => {
  expect(isDontKnow(answer)).toBe(true);
});

test.each([
  ["voltage", "240", "unit-missing"],
  ["voltage", "60 A", "unit-mismatch"],
  ["rating", "6O A", "letter-in-number"],
  ["rating", "0,4 A", "decimal-comma"],
  ["service", "split-fase", "unknown-word"],
  ["folder", "My Lathe", "bad-name"],
  ["folder", "shop", "bad-name"],
  ["motor-voltage", "230/460 A", "unit-mismatch"],
  ["shop", "two\nlines", "answer-bad"],
])("%s: %j is refused as %s", (name, answer, code) => {
  const q = questions.find((x) => x.name === name);
  expect(q && mistakeIn(q, answer, waywright.keys)?.code).toBe(code);
});

test("whatever the shop and the machine are called, the files say it again", () => {
  const title = fc.string({ unit: "grapheme", minLength: 1, maxLength: 60 }).map((s) => s.trim());
  fc.assert(
    fc.property(title, title, (shop, machine) => {
      const answers = { shop, machine };
      const [q] = questions.filter((x) => x.name === "shop");
      fc.pre(
        !isDontKnow(shop) &&
          !isDontKnow(machine) &&
          q !== undefined &&
          [shop, machine].every((a) => mistakeIn(q, a, waywright.keys) === null),
      );
      const [first, second] = filesOf(answers).map((f) => parse(f.text, { schema: "failsafe" }) as Record<string, unknown>);
      expect([first?.["shop"], second?.["machine"]]).toEqual([shop, machine]);
    }),
  );
});

test("the folder is named by the answer, else by the kind of machine", () => {
  expect(folderOf({ folder: "old-one", kind: "bed-mill" })).toBe("old-one");
  expect(folderOf({ kind: "bed-mill" })).toBe("mill");
  expect(folderOf({})).toBe("lathe");
});
