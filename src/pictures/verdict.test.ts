import { expect, test } from "vitest";
import { verdictIcon, verdictShape, verdictWord, verdictWordWidth } from "./verdict.ts";
import { writtenBoxes } from "./words.ts";

const all = ["holds", "tight", "fails", "open"] as const;

test("the four verdicts differ in outline, with every colour taken away", () => {
  const outlines = all.map((verdict) => {
    const first = /<(circle|path|rect) ([^>]*)>/.exec(verdictShape(verdict, 0, 0));
    return `${first?.[1]} ${first?.[2]?.includes("stroke-dasharray") ? "dashed" : "solid"}`;
  });
  expect(outlines).toEqual(["circle solid", "path solid", "rect solid", "circle dashed"]);
  const colourless = all.map((verdict) => verdictShape(verdict, 0, 0).replaceAll(/class="[^"]*"/g, ""));
  expect(new Set(colourless).size).toBe(4);
});

test("a shape is centred where it is asked for, at any size", () => {
  expect(verdictShape("holds", 50, 30, 14)).toContain('transform="translate(43.00 23.00)"');
  expect(verdictShape("holds", 50, 30, 28)).toContain('transform="translate(36.00 16.00) scale(2.000)"');
});

test("an icon that stands alone says its word to those who cannot see it; beside the word it is silent", () => {
  for (const verdict of all) {
    expect(verdictIcon(verdict, 14, true)).toContain(`role="img" aria-label="${verdict}"`);
    expect(verdictIcon(verdict)).toContain('aria-hidden="true"');
  }
});

test("shape and word take the width that was told beforehand", () => {
  for (const verdict of all) {
    const [word] = writtenBoxes(verdictWord(verdict, 100, 20, { size: 12, bold: true }));
    expect((word?.x ?? 0) + (word?.width ?? 0)).toBeCloseTo(100 + verdictWordWidth(verdict, { size: 12, bold: true }), 6);
  }
});
