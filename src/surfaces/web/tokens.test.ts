// The colours of the pages against WCAG 2.2: contrast of text and of what can be operated, in both themes.
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

const sheet = readFileSync(new URL("tokens.css", import.meta.url), "utf8");
const colours = new Map(
  [...sheet.matchAll(/--([\w-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)].map((match) => [match[1], [match[2], match[3]]]),
);

/** Relative luminance of an sRGB colour: WCAG 2.2, definition of relative luminance. */
function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast ratio: WCAG 2.2, definition of contrast ratio, (L1 + 0.05) / (L2 + 0.05). */
function contrast(a: string, b: string): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].toSorted((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

function pair(front: string, back: string, theme: number): number {
  const [a, b] = [colours.get(front)?.[theme], colours.get(back)?.[theme]];
  if (a === undefined || b === undefined) throw new Error(`no colour ${front} or ${back}`);
  return contrast(a, b);
}

test("black on white is 21 to 1, a grey of 118 on white the smallest that passes", () => {
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 6);
  expect(contrast("#767676", "#ffffff")).toBeGreaterThan(4.5);
  expect(contrast("#777777", "#ffffff")).toBeLessThan(4.5);
});

describe.each([
  ["light", 0],
  ["dark", 1],
])("in the %s theme", (_, theme) => {
  test.each(["ink", "ink-2", "ink-3", "accent", "fails", "tight", "holds", "open"])("words in %s can be read on every ground", (front) => {
    for (const back of ["paper", "sheet", "wash"]) expect(pair(front, back, theme), back).toBeGreaterThanOrEqual(4.5);
  });

  test("words on a filled button can be read", () => {
    expect(pair("on-accent", "accent", theme)).toBeGreaterThanOrEqual(4.5);
  });

  test("the border of what can be operated is seen on every ground", () => {
    for (const back of ["paper", "sheet", "wash"]) expect(pair("field", back, theme), back).toBeGreaterThanOrEqual(3);
  });
});
