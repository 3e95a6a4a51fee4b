// Bars that add up and share: the supply state by state, and what decides a band.
import type { Verdict } from "../kernel/verdict.ts";
import { ruledAcross } from "./axis.ts";
import { titleSize } from "./plot-frame.ts";
import { stagger } from "./stagger.ts";
import { drawing, el, hatch, short } from "./svg.ts";
import { fitted, textWidth } from "./text-width.ts";
import { verdictWord, verdictWordWidth } from "./verdict.ts";
import { noteSize, phoneWidth, wordBox, words } from "./words.ts";

export interface StackedBars {
  readonly prefix: string;
  readonly title: string;
  readonly label: string;
  readonly width: number;
  readonly unit: string;
  /** What adds up, in order: service, existing, machine, compressor. */
  readonly parts: readonly string[];
  readonly states: readonly { readonly name: string; readonly amounts: readonly number[]; readonly verdict: Verdict }[];
  readonly limits: readonly { readonly at: number; readonly words: string }[];
}

const barHeight = 18;

/** Fills that differ without colour, in the order of the parts: plain, hatched, washed, hollow. */
function fillsOf(prefix: string): readonly Readonly<Record<string, string>>[] {
  return [{ class: "fi3 i" }, { class: "i", fill: `url(#${prefix}-part)` }, { class: "fw i" }, { class: "fs i" }, { class: "fi i" }];
}

/** Horizontal stacked bars, one for each state, on one scale with the limits across all of them. */
export function stackedBars(spec: StackedBars): string {
  const { width, prefix } = spec;
  const size = noteSize(width);
  const isPhone = width < phoneWidth;
  const fills = fillsOf(prefix);
  const fillOf = (i: number) => ({ ...fills[i % fills.length], "stroke-width": "0.75" });
  const total = (amounts: readonly number[]) => amounts.reduce((sum, amount) => sum + amount, 0);
  const totals = spec.states.map((state) => total(state.amounts));
  const most = Math.max(...totals, ...spec.limits.map((limit) => limit.at), 0) * 1.04;

  const key = keyRow(spec.parts, fillOf, width, size);
  const sums = totals.map((sum) => `${Number(sum.toPrecision(3))} ${spec.unit}`);
  const sumRoom = isPhone ? 0 : Math.max(0, ...sums.map((sum) => textWidth(sum, size, true))) + 12;
  const verdictRoom = Math.max(0, ...spec.states.map((state) => verdictWordWidth(state.verdict, { size }))) + 12;
  const nameRoom = isPhone ? 0 : Math.min(width * 0.3, Math.max(0, ...spec.states.map((state) => textWidth(state.name, size))) + 12);
  const right = width - (isPhone ? 14 : sumRoom + verdictRoom);
  const x = ruledAcross({ label: "", unit: spec.unit, min: 0, max: most || 1 }, [], Math.max(nameRoom, 8), right, size);
  const rowHeight = isPhone ? barHeight + size + 16 : barHeight + 12;
  const limitRows = stagger(
    spec.limits,
    (limit) => wordBox(x.scale.toPixel(limit.at), 0, limit.words, { size, bold: true, anchor: "middle" }),
    width,
  );
  const limitsTop = titleSize + 12 + key.height;
  const top = limitsTop + limitRows.count * (size + 4) + 4;
  const bottom = top + spec.states.length * rowHeight;
  const height = bottom + size * 2 + 20;

  const rows = spec.states.flatMap((state, i) => {
    const rowTop = top + i * rowHeight;
    const barTop = isPhone ? rowTop + size + 8 : rowTop + 4;
    const base = isPhone ? rowTop + size : barTop + barHeight / 2 + size * 0.33;
    let start = 0;
    const segments = state.amounts.flatMap((amount, k) => {
      const from = x.scale.toPixel(start);
      start += amount;
      const to = x.scale.toPixel(start);
      return to - from < 0.5 ? [] : [el("rect", { x: from, y: barTop, width: to - from, height: barHeight, ...fillOf(k) })];
    });
    const sum = sums[i] ?? "";
    const name = fitted(state.name, isPhone ? width - verdictRoom - textWidth(sum, size, true) - 24 : nameRoom - 12, size);
    const text = isPhone ? [{ text: `${name} ` }, { text: sum, bold: true }] : name;
    return [
      ...segments,
      words(isPhone ? 8 : 0, base, text, { size }),
      isPhone ? "" : words(right + sumRoom, base, sum, { size, bold: true, anchor: "end" }),
      verdictWord(state.verdict, width - verdictRoom + 12, base, { size }),
    ];
  });
  const limits = spec.limits.flatMap((limit, i) => {
    const pixel = x.scale.toPixel(limit.at);
    const box = limitRows.boxes[i];
    const base = limitsTop + ((limitRows.rows[i] ?? 0) + 1) * (size + 4);
    // On a phone the names stand between the bars: there the line crosses the bars only.
    const strokes = isPhone
      ? spec.states.map((_, k) => `M${short(pixel)} ${short(top + k * rowHeight + size + 6)}v${barHeight + 4}`).join("")
      : `M${short(pixel)} ${short(base + 3)}V${short(bottom)}`;
    return [
      el("path", { d: strokes, class: "i", "stroke-width": "1.25" }),
      box ? words(box.x, base, limit.words, { size, bold: true, halo: true }) : "",
    ];
  });
  const grid = x.ticks.map((tick) => `M${short(x.scale.toPixel(tick.at))} ${short(top)}V${short(bottom)}`).join("");
  return drawing(
    { label: spec.label, width, height },
    el("defs", {}, hatch(`${prefix}-part`, "i2", 4, 1.25)),
    words(isPhone ? 8 : 0, titleSize + 2, fitted(spec.title, width - 8, titleSize, true), { size: titleSize, bold: true }),
    ...key.parts,
    el("path", { d: grid, class: "gm", "stroke-width": 1 }),
    ...rows,
    el("path", { d: `M${short(x.scale.toPixel(0))} ${short(bottom)}H${short(right)}`, class: "i", "stroke-width": 1 }),
    ...x.ticks.map((tick) => words(x.scale.toPixel(tick.at), bottom + size + 5, tick.words, { size, tone: "q", anchor: "middle" })),
    words(right, bottom + size * 2 + 12, spec.unit, { size, tone: "q", anchor: "end" }),
    ...limits,
  );
}

function keyRow(names: readonly string[], fillOf: (i: number) => Readonly<Record<string, string>>, width: number, size: number) {
  const parts: string[] = [];
  let x = width < phoneWidth ? 8 : 0;
  let base = titleSize + size + 12;
  names.forEach((name, i) => {
    const room = 20 + textWidth(name, size);
    if (x > 8 && x + room > width) [x, base] = [width < phoneWidth ? 8 : 0, base + size + 6];
    parts.push(el("rect", { x: x + 0.5, y: base - size * 0.75, width: 13, height: size * 0.75, ...fillOf(i) }));
    parts.push(words(x + 19, base, fitted(name, width - x - 19, size), { size, tone: "q2" }));
    x += room + 18;
  });
  return { parts, height: base - titleSize };
}

export interface ShareBars {
  readonly label: string;
  readonly width: number;
  /** Share of the band that each unknown makes [1]. */
  readonly shares: readonly { readonly name: string; readonly share: number }[];
}

/** What decides it: which unknown makes how much of a band. */
export function shareBars(spec: ShareBars): string {
  const { width } = spec;
  const size = noteSize(width) + 1;
  const rowHeight = size + 9;
  const numberRoom = textWidth("100 %", size) + 8;
  const longest = Math.max(0, ...spec.shares.map((item) => textWidth(item.name, size)));
  const nameRoom = Math.min(longest, width * 0.6);
  const full = width - numberRoom - nameRoom - 12;
  const rows = spec.shares.flatMap((item, i) => {
    const base = i * rowHeight + size + 2;
    // A share that exists is seen, however small.
    const bar = Math.max(item.share > 0 ? 1 : 0, Math.min(1, item.share) * full);
    return [
      words(0, base, fitted(item.name, nameRoom, size), { size }),
      el("rect", { x: nameRoom + 12, y: base - size * 0.62, width: bar, height: 8, class: "fa" }),
      words(width, base, `${Math.round(item.share * 100)} %`, { size, anchor: "end" }),
    ];
  });
  return drawing({ label: spec.label, width, height: spec.shares.length * rowHeight + 6 }, ...rows);
}
