import { describe, expect, test } from "vitest";
import { marginScale, marginStrip } from "./margin-strip.ts";

/** Rectangles of a strip: [x %, width %, kind]. */
function bars(svg: string): [number, number, string][] {
  return [...svg.matchAll(/<rect x="([\d.]+)%" y="[\d.]+" width="([\d.]+)%"[^>]*?(fill="url|fill-opacity|nf)/g)].map((match) => [
    Number(match[1]),
    Number(match[2]),
    match[3] === "fill-opacity" ? "plain" : match[3] === "nf" ? "frame" : "hatched",
  ]);
}

// By hand: ln(1 / 0.3) / ln(6 / 0.3) = 1.20397 / 2.99573 = 40.19 %.
const one = 40.19;

test("the line at 1 runs unbroken from top to bottom at 40.19 % of the width", () => {
  expect(marginStrip("a", { verdict: "holds", nominal: 2 }, 27)).toContain('<line x1="40.19%" x2="40.19%" y1="0" y2="27"');
});

test("a band across 1 is hatched where it falls short and plain where it reaches over", () => {
  const found = bars(marginStrip("a", { verdict: "open", nominal: 0.9, low: 0.6, high: 1.8 }));
  // ln 2 / ln 20 = 23.14 %; ln 6 / ln 20 = 59.81 %.
  expect(found).toEqual([
    [23.14, 17.05, "hatched"],
    [23.14, 17.05, "frame"],
    [one, 19.62, "plain"],
  ]);
});

test("a band all below 1 is all hatched, one all above is all plain, an exact margin has no bar", () => {
  expect(bars(marginStrip("a", { verdict: "fails", nominal: 0.8, low: 0.7, high: 0.9 })).map((bar) => bar[2])).toEqual([
    "hatched",
    "frame",
  ]);
  expect(bars(marginStrip("a", { verdict: "holds", nominal: 2, low: 1.5, high: 3 })).map((bar) => bar[2])).toEqual(["plain"]);
  expect(bars(marginStrip("a", { verdict: "holds", nominal: 2 }))).toEqual([]);
});

describe("what lies off the scale stands at the edge with a chevron, inside the strip", () => {
  test.each([
    [8.9, "100%", "M-6 -4.5"],
    [Infinity, "100%", "M-6 -4.5"],
    [0.05, "0%", "M6 -4.5"],
    [0, "0%", "M6 -4.5"],
  ])("margin %d", (nominal, edge, chevron) => {
    const svg = marginStrip("a", { verdict: nominal > 1 ? "holds" : "fails", nominal });
    expect(svg).toContain(`<svg x="${edge}"`);
    expect(svg).toContain(chevron);
    expect(svg).not.toMatch(/NaN|Infinity%/);
  });
});

test("a rule that is broken points left, one that is kept points right, one that is not known stands on the line", () => {
  expect(marginStrip("a", { verdict: "fails", nominal: null })).toContain('aria-label="fails, rule broken"');
  expect(marginStrip("a", { verdict: "fails", nominal: null })).toContain('<svg x="0%"');
  expect(marginStrip("a", { verdict: "holds", nominal: null })).toContain('<svg x="100%"');
  expect(marginStrip("a", { verdict: "open", nominal: null })).toContain(`<svg x="${one}%"`);
});

test("who cannot see the strip hears verdict, margin, band and reserve", () => {
  const svg = marginStrip("a", { verdict: "tight", nominal: 1.17, low: 1.02, high: 1.33, reserve: 1.25 });
  expect(svg).toContain('aria-label="tight, margin 1.17, band 1.02 to 1.33, asked 1.25"');
});

test("the numbers over the column stand where the strips put those margins", () => {
  const x = [...marginScale().matchAll(/<svg x="([\d.]+)%"/g)].map((match) => Number(match[1]));
  expect(x).toEqual([17.05, 28.28, 40.19, 53.72, 63.33, 76.86, 93.91]); // By hand: ln(m / 0.3) / ln 20.
});
