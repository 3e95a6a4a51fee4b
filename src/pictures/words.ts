// Words on a drawing, each with the box it takes, so that nothing is ever written over anything else.
import type { Verdict } from "../kernel/verdict.ts";
import { el, escaped } from "./svg.ts";
import { textWidth } from "./text-width.ts";

export type Tone = "ink" | "q" | "q2" | "accent" | Verdict;
export type Anchor = "start" | "middle" | "end";

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Part {
  readonly text: string;
  readonly bold?: boolean;
  readonly tone?: Tone;
}

export interface WordStyle {
  readonly size?: number;
  readonly bold?: boolean;
  readonly anchor?: Anchor;
  readonly tone?: Tone;
  /** Ground-coloured edge for words that stand on lines. */
  readonly halo?: boolean;
}

/** No words on a screen are smaller (phone drawings: one more). */
export const smallest = 12;
/** Below this width a drawing is read at arm's length. */
export const phoneWidth = 480;

/** The size of notes and axes for a drawing of this width. */
export function noteSize(width: number): number {
  return width < phoneWidth ? smallest + 1 : smallest;
}

// How far the letters of the face reach above and below the line they stand on, in text sizes (d, p, with a little air).
const above = 0.78;
const below = 0.22;

const classOf: Readonly<Record<Tone, string>> = {
  ink: "fi",
  q: "q",
  q2: "q2",
  accent: "acf",
  holds: "vf holds",
  tight: "vf tight",
  fails: "vf fails",
  open: "vf open",
};

function partsOf(text: string | readonly Part[]): readonly Part[] {
  return typeof text === "string" ? [{ text }] : text;
}

export function wordsWidth(text: string | readonly Part[], style: WordStyle = {}): number {
  const size = style.size ?? smallest;
  return partsOf(text).reduce((sum, part) => sum + textWidth(part.text, size, part.bold ?? style.bold), 0);
}

/** The box of words whose line starts, is centred or ends at x [px], on the base line y [px]. */
export function wordBox(x: number, y: number, text: string | readonly Part[], style: WordStyle = {}): Box {
  const size = style.size ?? smallest;
  const width = wordsWidth(text, style);
  const left = style.anchor === "end" ? x - width : style.anchor === "middle" ? x - width / 2 : x;
  return { x: left, y: y - above * size, width, height: (above + below) * size };
}

/** The base line that puts the box of words of this size with its top at y. */
export function baseLine(top: number, size: number): number {
  return top + above * size;
}

export function words(x: number, y: number, text: string | readonly Part[], style: WordStyle = {}): string {
  const { size = smallest, bold = false, anchor = "start", tone = "ink", halo = false } = style;
  const attributes = {
    x,
    y,
    class: `w ${classOf[tone]}${halo ? " halo" : ""}`,
    "font-size": size,
    "font-weight": bold ? 600 : undefined,
    "text-anchor": anchor === "start" ? undefined : anchor,
  };
  if (partsOf(text).every((part) => part.text === "")) return "";
  const inner = partsOf(text).map((part) => {
    const weight = part.bold === undefined || part.bold === bold ? undefined : part.bold ? 600 : 400;
    if (weight === undefined && part.tone === undefined) return escaped(part.text);
    return el("tspan", { class: part.tone && classOf[part.tone], "font-weight": weight }, escaped(part.text));
  });
  return el("text", attributes, ...inner);
}

export function overlap(a: Box, b: Box, air = 0): boolean {
  return a.x < b.x + b.width + air && b.x < a.x + a.width + air && a.y < b.y + b.height + air && b.y < a.y + a.height + air;
}

export function isWithin(inner: Box, outer: Box): boolean {
  const right = inner.x + inner.width <= outer.x + outer.width;
  const bottom = inner.y + inner.height <= outer.y + outer.height;
  return inner.x >= outer.x && inner.y >= outer.y && right && bottom;
}

export interface WrittenBox extends Box {
  readonly text: string;
  readonly size: number;
}

/** Every line of words in a finished drawing with the box it takes: read from the SVG text itself, for checks. */
export function writtenBoxes(svg: string): WrittenBox[] {
  return [...svg.matchAll(/<text ([^>]*)>(.*?)<\/text>/gs)].map((match) => {
    const read = attributesOf(match[1] ?? "");
    const bold = read("font-weight") === "600";
    const parts = [...(match[2] ?? "").matchAll(/<tspan([^>]*)>([^<]*)<\/tspan>|([^<]+)/g)].map((part) => {
      const weight = attributesOf(part[1] ?? "")("font-weight");
      return { text: plain(part[2] ?? part[3] ?? ""), bold: weight === undefined ? bold : weight === "600" };
    });
    const anchor = read("text-anchor");
    const size = Number(read("font-size"));
    const style: WordStyle = { size, anchor: anchor === "middle" || anchor === "end" ? anchor : "start" };
    return { ...wordBox(Number(read("x")), Number(read("y")), parts, style), size, text: parts.map((part) => part.text).join("") };
  });
}

function attributesOf(list: string): (name: string) => string | undefined {
  const found = new Map([...list.matchAll(/([\w-]+)="([^"]*)"/g)].map((match) => [match[1], match[2]]));
  return (name) => found.get(name);
}

function plain(text: string): string {
  return text.replaceAll("&quot;", '"').replaceAll("&gt;", ">").replaceAll("&lt;", "<").replaceAll("&amp;", "&");
}
