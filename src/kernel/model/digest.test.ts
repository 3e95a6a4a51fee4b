import { expect, test } from "vitest";
import { digest } from "./digest.ts";
import { parseFile } from "./parse.ts";

const of = (text: string): string => digest(parseFile("f.yaml", text).root);

test("what says the same has the same digest, whatever the order, the blanks and the idle noughts", () => {
  const same = [
    "a: 5 mm\nb: { c: x }\n",
    "b: { c: x }\na: 5.0 mm\n",
    "a:   5.00   mm   # note\nb:\n  c: x\n",
    "a: 5 mm\nb: { c: x, like: some-part }\n",
  ];
  expect(new Set(same.map(of)).size).toBe(1);
  expect(of(same[0] ?? "")).toMatch(/^[0-9a-f]{64}$/);
});

test("what says something else has another digest", () => {
  const different = [
    "a: 5 mm\n",
    "a: 50 mm\n",
    "a: 5 cm\n",
    "b: 5 mm\n",
    "a: [ 5 mm ]\n",
    "a: { b: 5 mm }\n",
    "a: 1.10 x\n",
    "a: in.10\n",
    "a: in.1\n",
    "",
  ];
  expect(new Set(different.map(of)).size).toBe(different.length);
  expect(digest(undefined)).not.toBe(of(""));
});
