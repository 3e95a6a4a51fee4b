import { describe, expect, test } from "vitest";
import { terminalBoxes } from "./terminal-box.ts";
import type { TerminalBox } from "./terminal-box.ts";
import { writtenBoxes } from "./words.ts";

const lines = [[1], [2], [3]];
const box = (leads: number, joined: number[][], on = lines): TerminalBox => ({ title: "As found", leads, joined, lines: on });
const draw = (before: TerminalBox, after?: TerminalBox, width = 600) =>
  terminalBoxes({ label: "the links", width, boxes: after ? [before, after] : [before] });

/** Bars as [kind, class]: straight lines or bows. */
const bars = (svg: string) => [...svg.matchAll(/<(line|path) [^>]*class="([^"]*)" stroke-width="7"/g)].map((match) => [match[1], match[2]]);
const isAslant = (svg: string) =>
  [...svg.matchAll(/<line x1="([\d.]+)" y1="([\d.]+)" x2="([\d.]+)" y2="([\d.]+)"[^>]*stroke-width="7"/g)].map(
    (match) => match[1] !== match[3] && match[2] !== match[4],
  );

// Lead numbers as in the tables of NEMA MG 1 for nine and twelve leads, and 1..6 for U1 V1 W1 U2 V2 W2 (IEC 60034-8).
describe("the ordinary connections are drawn with straight bars between neighbours", () => {
  test.each([
    [
      "nine leads, series star",
      box(9, [
        [4, 7],
        [5, 8],
        [6, 9],
      ]),
      3,
    ],
    [
      "nine leads, parallel star",
      box(
        9,
        [[4, 5, 6]],
        [
          [1, 7],
          [2, 8],
          [3, 9],
        ],
      ),
      5,
    ],
    [
      "nine leads, parallel delta",
      box(9, [
        [1, 6, 7],
        [2, 4, 8],
        [3, 5, 9],
      ]),
      6,
    ],
    ["six leads, star", box(6, [[4, 5, 6]]), 2],
    [
      "six leads, delta",
      box(6, [
        [1, 6],
        [2, 4],
        [3, 5],
      ]),
      3,
    ],
    [
      "twelve leads, series star",
      box(12, [
        [4, 7],
        [5, 8],
        [6, 9],
        [10, 11, 12],
      ]),
      5,
    ],
    [
      "twelve leads, parallel star",
      box(12, [
        [1, 7],
        [2, 8],
        [3, 9],
        [4, 5, 6],
        [10, 11, 12],
      ]),
      7,
    ],
    [
      "twelve leads, parallel delta",
      box(12, [
        [1, 6, 7, 12],
        [2, 4, 8, 10],
        [3, 5, 9, 11],
      ]),
      9,
    ],
  ])("%s", (_, terminals, count) => {
    const svg = draw(terminals);
    expect(bars(svg)).toEqual(Array.from({ length: count }, () => ["line", "i"]));
    expect(isAslant(svg)).toEqual(Array.from({ length: count }, () => false));
  });
});

test("every lead has a stud with its number, and each line its name", () => {
  const text = writtenBoxes(draw(box(12, []))).map((written) => written.text);
  for (const name of ["1", "7", "12", "L1", "L2", "L3", "nothing joined"]) expect(text).toContain(name);
});

test("a link at the wrong stud is drawn where it is, aslant", () => {
  expect(
    isAslant(
      draw(
        box(9, [
          [4, 8],
          [5, 7],
          [6, 9],
        ]),
      ),
    ),
  ).toContain(true);
});

test("only links that were not there before are drawn as new", () => {
  const svg = draw(
    box(9, [
      [4, 7],
      [5, 8],
      [6, 9],
    ]),
    box(9, [
      [4, 7],
      [5, 8],
      [6, 9],
      [1, 2],
    ]),
  );
  expect(bars(svg).filter(([, tone]) => tone?.includes("ac"))).toHaveLength(1);
});

test("the connection stands in words too", () => {
  const text = writtenBoxes(
    draw(
      box(
        9,
        [[4, 5, 6]],
        [
          [1, 7],
          [2, 8],
          [3, 9],
        ],
      ),
    ),
  ).map((written) => written.text);
  expect(text).toContain("joined 4-5-6");
  expect(text).toContain("L1 to 1, 7; L2 to 2, 8; L3 to 3, 9");
});

test("a link to a lead that the motor has not is left out, not drawn at random", () => {
  expect(bars(draw(box(6, [[4, 5, 13]])))).toHaveLength(1);
});
