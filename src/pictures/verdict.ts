// The four verdicts as shapes that differ in silhouette, so that they are told apart without colour and in one ink.
import type { Verdict } from "../kernel/verdict.ts";
import { el } from "./svg.ts";
import type { Attributes } from "./svg.ts";
import { words, wordsWidth } from "./words.ts";
import type { WordStyle } from "./words.ts";

/** The shapes are drawn on a square of this side and scaled. */
const side = 14;

const cut: Attributes = { class: "nf gcut", "stroke-width": 1.7 };

// Written out with their own decimals: a tenth of a pixel is too coarse for a shape that is scaled.
const shapes: Readonly<Record<Verdict, string>> = {
  holds: el("circle", { cx: "7", cy: "7", r: "6.2", class: "vf holds" }) + el("path", { d: "M3.9 7.3 6.2 9.5 10.2 4.8", ...cut }),
  tight: el("path", { d: "M7 .8 13.6 13H.4Z", class: "vf tight" }) + el("path", { d: "M7 5v4M7 10.2v1.5", ...cut }),
  fails: el("rect", { x: "1", y: "1", width: "12", height: "12", class: "vf fails" }) + el("path", { d: "M4 4l6 6M10 4l-6 6", ...cut }),
  open:
    el("circle", { cx: "7", cy: "7", r: "6", class: "gcutf vs open", "stroke-width": "1.4", "stroke-dasharray": "2.6 1.6" }) +
    el("path", { d: "M5.2 5.5a1.85 1.85 0 1 1 2.6 1.7c-.6.3-.8.6-.8 1.2M7 9.7v1.2", class: "nf vs open", "stroke-width": "1.3" }),
};

/** The shape centred on (x, y) [px], `size` [px] wide, as a fragment of a drawing. */
export function verdictShape(verdict: Verdict, x: number, y: number, size = side): string {
  const scale = size / side;
  const corner = `translate(${(x - size / 2).toFixed(2)} ${(y - size / 2).toFixed(2)})`;
  return el("g", { transform: scale === 1 ? corner : `${corner} scale(${scale.toFixed(3)})` }, shapes[verdict]);
}

/** The shape as an image of its own. With the word beside it, it is decoration; standing alone, it carries the word. */
export function verdictIcon(verdict: Verdict, size = side, alone = false): string {
  const voice = alone ? { role: "img", "aria-label": verdict } : { "aria-hidden": "true" };
  return el("svg", { class: "verdict-icon", width: size, height: size, viewBox: `0 0 ${side} ${side}`, ...voice }, shapes[verdict]);
}

const gap = 4;

/** Shape and word on one line, the shape starting at x, the word on the base line y. */
export function verdictWord(verdict: Verdict, x: number, y: number, style: WordStyle & { readonly size: number }): string {
  const shape = shapeSize(style.size);
  const middle = y - style.size * 0.33; // Half the height of a capital above the base line.
  return verdictShape(verdict, x + shape / 2, middle, shape) + words(x + shape + gap, y, verdict, { ...style, tone: verdict });
}

export function verdictWordWidth(verdict: Verdict, style: WordStyle & { readonly size: number }): number {
  return shapeSize(style.size) + gap + wordsWidth(verdict, style);
}

/** A shape one pixel larger than the words beside it looks as large as they do; below 11 px the cut closes. */
function shapeSize(size: number): number {
  return Math.max(11, size + 1);
}
