import { expect, test } from "vitest";
import { questions } from "./questions.ts";
import { leftOpen, visits } from "./visits.ts";

/** What one knows without going anywhere. */
const known = ["shop", "units", "machine", "folder", "kind"];

test("every question about the machine and its supply is answered on exactly one visit", () => {
  const found = visits.flatMap((v) => Object.keys(v.finds));
  expect(found.toSorted()).toEqual(
    questions
      .map((q) => q.name)
      .filter((name) => !known.includes(name))
      .toSorted(),
  );
});

test("the service is found out before the motor, and the motor before the cable", () => {
  expect(leftOpen({}).map((v) => v.where.replace(/,.*/, ""))).toEqual([
    "At the main panel",
    "At the spindle motor",
    "Along the cable to the machine",
    "On the drawings of your parts",
    "At the compressor",
  ]);
});

test("what was answered is not looked for again", () => {
  const answers = { service: "split-phase", voltage: "240 V", rating: "60 A", existing: "don't know", ampacity: "?" };
  const [panel, , cable] = leftOpen(answers);
  expect(panel?.what).toEqual([expect.stringContaining("already draws")]);
  expect(cable?.what).toHaveLength(3);
  expect(leftOpen(Object.fromEntries(questions.map((q) => [q.name, q.example])))).toEqual([]);
});
