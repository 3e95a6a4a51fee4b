// The band of one number against what is needed, and the width that the next measurement would leave.
import { ruledAcross } from "./axis.ts";
import { stagger } from "./stagger.ts";
import { drawing, el, hatch, line, short } from "./svg.ts";
import { textWidth } from "./text-width.ts";
import { noteSize, wordBox, words } from "./words.ts";
import type { Tone } from "./words.ts";

export interface BandPlot {
  readonly prefix: string;
  readonly label: string;
  readonly width: number;
  readonly unit: string;
  readonly nominal: number;
  /** 5 and 95 %. */
  readonly low: number;
  readonly high: number;
  /** What is asked, and on which side of it the number should lie. */
  readonly need?: { readonly at: number; readonly words: string; readonly side: "above" | "below" };
  /** The width that the next measurement would leave, drawn around the nominal. */
  readonly after?: { readonly low: number; readonly high: number; readonly words: string };
}

/** The band of one number: bar from 5 to 95 %, hatched where it misses the need, and what the next measurement would leave. */
export function bandPlot(spec: BandPlot): string {
  const { width, low, high, need, after, nominal } = spec;
  const size = noteSize(width);
  const ends = [low, high, nominal, ...(need ? [need.at] : []), ...(after ? [after.low, after.high] : [])];
  const air = (Math.max(...ends) - Math.min(...ends)) * 0.15 || Math.abs(nominal) * 0.1 || 1;
  const axis = { label: "", unit: spec.unit, min: Math.min(...ends) - air, max: Math.max(...ends) + air };
  const end = width - textWidth(spec.unit, size) - 20;
  const x = ruledAcross(axis, [], 12, end, size);
  const to = x.scale.toPixel;

  const texts: { at: number; words: string; tone: Tone }[] = [];
  if (after) texts.push({ at: (after.low + after.high) / 2, words: after.words, tone: "accent" });
  if (need) texts.push({ at: need.at, words: need.words, tone: "ink" });
  const placed = stagger(texts, (text) => wordBox(to(text.at), 0, text.words, { size, anchor: "middle" }), width);
  const top = placed.count * (size + 4) + 6;
  const bottom = top + 12;
  const axisY = bottom + 8;
  const bar = (from: number, until: number) => ({ x: to(from), y: top, width: Math.max(0, to(until) - to(from)), height: 12 });

  const parts = [el("defs", {}, hatch(`${spec.prefix}-short`, "i2", 4, 1.25))];
  const clamp = (value: number) => Math.min(high, Math.max(low, value));
  const edge = need ? clamp(need.at) : low;
  const [shortFrom, shortTo] = need?.side === "below" ? [edge, high] : [low, need ? edge : low];
  const [fineFrom, fineTo] = need?.side === "below" ? [low, edge] : [need ? edge : low, high];
  if (shortTo > shortFrom)
    parts.push(el("rect", { ...bar(shortFrom, shortTo), fill: `url(#${spec.prefix}-short)`, class: "i2", "stroke-width": "0.75" }));
  if (fineTo > fineFrom) parts.push(el("rect", { ...bar(fineFrom, fineTo), class: "fi3", "fill-opacity": "0.4" }));
  if (after) parts.push(el("rect", { ...bar(after.low, after.high), class: "nf ac", "stroke-width": "1.5", "stroke-dasharray": "3 2" }));
  parts.push(el("circle", { cx: to(nominal), cy: top + 6, r: 5, class: "fi" }));
  texts.forEach((text, i) => {
    const box = placed.boxes[i];
    const base = top - 6 - (placed.count - 1 - (placed.rows[i] ?? 0)) * (size + 4);
    if (box) parts.push(words(box.x, base, text.words, { size, tone: text.tone, halo: true }));
  });
  if (need) {
    const row = placed.rows[texts.length - 1] ?? 0;
    const from = top - 4 - (placed.count - 1 - row) * (size + 4);
    parts.splice(1, 0, line({ x: to(need.at), y: from }, { x: to(need.at), y: axisY }, { class: "i", "stroke-width": "1.25" }));
  }
  const marks = x.ticks.map((tick) => `M${short(to(tick.at))} ${short(axisY)}v5`).join("");
  parts.push(el("path", { d: `M12 ${short(axisY)}H${short(end)}${marks}`, class: "nf i3", "stroke-width": 1 }));
  parts.push(...x.ticks.map((tick) => words(to(tick.at), axisY + size + 6, tick.words, { size, tone: "q", anchor: "middle" })));
  parts.push(words(width, axisY + size + 6, spec.unit, { size, tone: "q", anchor: "end" }));
  return drawing({ label: spec.label, width, height: axisY + size + 12 }, ...parts);
}
