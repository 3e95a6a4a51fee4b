import { expect, test } from "vitest";
import { readArguments } from "./arguments.ts";
import { Misuse } from "./misuse.ts";

function misuse(...words: string[]): Misuse {
  try {
    readArguments(words);
  } catch (error) {
    if (error instanceof Misuse) return error;
    throw error;
  }
  throw new Error(`${words.join(" ")} was understood`);
}

test("words, flags and values of a command line are told apart", () => {
  const given = readArguments(["sweep", "lathe/a.b", "5 to 60 m", "x", "--steps", "5", "--option=one", "--option", "two", "--json"]);
  expect(given.command.name).toBe("sweep");
  expect(given.words).toEqual(["lathe/a.b", "5 to 60 m", "x"]);
  expect(given.value("steps")).toBe("5");
  expect(given.values("option")).toEqual(["one", "two"]);
  expect([given.has("json"), given.has("quick")]).toEqual([true, false]);
});

test("a value may begin with a minus sign, and what stands behind -- is a word", () => {
  expect(readArguments(["work", "f", "x=-5 mm", "--", "--y=2"]).words).toEqual(["f", "x=-5 mm", "--y=2"]);
});

test.each([
  [["chek"], "command-unknown", ["check"]],
  [["check", "--quik"], "option-unknown", ["--quick"]],
  [["check", "-q"], "option-unknown", []],
  [["check", "--width"], "argument-missing", []],
  [["check", "--option", "--json"], "argument-missing", []],
  [["check", "--width", "12"], "argument-bad", []],
  [["check", "--width", "1e2"], "argument-bad", []],
  [["check", "--json=yes"], "argument-bad", []],
  [["check", "--machine", "a", "--machine", "b"], "argument-extra", []],
  [["work", "--units", "imperial"], "argument-bad", ["metric", "inch"]],
])("%j is refused as %s", (words, code, among) => {
  const error = misuse(...words);
  expect(error.code).toBe(code);
  expect(error.among).toEqual(among);
});

test("names of every object are no commands and no flags", () => {
  expect(misuse("constructor").code).toBe("command-unknown");
  expect(misuse("check", "--__proto__").code).toBe("option-unknown");
});
