import { expect, test } from "vitest";
import { standalone } from "./standalone.ts";
import { drawing, el } from "./svg.ts";
import { words, wordsWidth } from "./words.ts";

const tokens =
  ":root{ color-scheme: light dark; --ink: light-dark(#111111, #eeeeee); --paper: light-dark(#ffffff, #000000); --cut2: var(--ink); }";
const rules =
  ".fi{fill:var(--ink)} .fp { fill: var(--paper) } .gcut{stroke:var(--cut,var(--paper))} .fi:hover{fill:red} /* .x{} */ body{margin:0} .two{fill:var(--cut2)}";
const picture = drawing({ label: "a dot", width: 10, height: 10 }, el("circle", { r: 3, class: "fi" }));

test("a picture on its own carries its colours as they are on paper, with no variable left", () => {
  const svg = standalone(picture, [tokens, rules]);
  expect(svg).toContain(".fi{fill:#111111}");
  expect(svg).toContain(".gcut{stroke:#ffffff}");
  expect(svg).toContain(".two{fill:#111111}");
  expect(svg).not.toMatch(/var\(|light-dark/);
});

test("rules of states and of the page stay behind, and the drawing lies on its own ground", () => {
  const svg = standalone(picture, [tokens, rules]);
  expect(svg).not.toMatch(/hover|body|\.x/);
  expect(svg.indexOf('<rect class="fp" width="100%" height="100%"/>')).toBeLessThan(svg.indexOf("<circle"));
});

test("words keep the room they were laid out for, whatever face the reader has", () => {
  const svg = standalone(
    drawing({ label: "", width: 99, height: 20 }, words(0, 12, "Belt"), words(40, 12, [{ text: "a", bold: true }])),
    [],
  );
  const widths = [...svg.matchAll(/<text textLength="([\d.]+)"/g)].map((match) => Number(match[1]));
  expect(widths[0]).toBeCloseTo(wordsWidth("Belt"), 1);
  expect(widths[1]).toBeCloseTo(wordsWidth([{ text: "a", bold: true }]), 1);
});
