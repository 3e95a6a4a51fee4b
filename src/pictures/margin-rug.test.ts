// A variant's margins as strokes: each where the margin strips have it, and counted in words.
import { expect, test } from "vitest";
import { marginRug } from "./margin-rug.ts";
import { fraction } from "./margin-strip.ts";

const strokes = (svg: string, verdict: string): number[] =>
  [...svg.matchAll(/<path d="M([\d.]+) [^"]*" class="vs (\w+)"/g)].filter((m) => m[2] === verdict).map((m) => Number(m[1]));

test("a margin stands where the strips have it, and one beyond the scale at its end", () => {
  const svg = marginRug(
    [
      { verdict: "fails", nominal: 0.5 },
      { verdict: "holds", nominal: 2 },
      { verdict: "holds", nominal: 400 },
    ],
    104,
  );
  expect(strokes(svg, "fails")[0]).toBeCloseTo(2 + 100 * fraction(0.5), 1);
  expect(strokes(svg, "holds")).toEqual([expect.closeTo(2 + 100 * fraction(2), 1), 102]);
});

test("the picture says in words how many hold and how many fail, and what is open differs by its stroke", () => {
  const svg = marginRug(
    [
      { verdict: "open", nominal: 1 },
      { verdict: "fails", nominal: 0.9 },
      { verdict: "fails", nominal: 0.4 },
    ],
    98,
  );
  expect(svg).toContain('aria-label="Margins: 2 fail, 1 open, 0 tight, 0 hold"');
  expect(/class="vs open"[^>]*stroke-dasharray/.test(svg)).toBe(true);
  expect(/class="vs fails"[^>]*stroke-dasharray/.test(svg)).toBe(false);
});
