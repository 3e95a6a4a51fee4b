import { expect, test } from "vitest";
import { hurtFolder, survives } from "./folders.ts";

test("300 hurt shop folders load, with findings in place of a crash", () => {
  for (let seed = 0; seed < 300; seed++) expect(() => survives(seed), `folder ${seed}`).not.toThrow();
});

test("a seed names one folder for ever, and another seed another", () => {
  expect([...hurtFolder(5)]).toEqual([...hurtFolder(5)]);
  expect([...hurtFolder(5)]).not.toEqual([...hurtFolder(6)]);
});
