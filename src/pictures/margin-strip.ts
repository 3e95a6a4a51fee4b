// The margin strip: how far a capacity reaches over its demand, all checks on one logarithmic scale. Percentages instead of a
// viewBox, so that it stretches with its column while shapes and words keep their size.
import { el, hatch } from "./svg.ts";
import { verdictShape } from "./verdict.ts";
import type { Verdict } from "../kernel/verdict.ts";
import { smallest, words } from "./words.ts";

export interface Margin {
  readonly verdict: Verdict;
  /** Capacity over demand, nominal; null for a rule that is kept or broken and has no number. */
  readonly nominal: number | null;
  /** 5 and 95 %, unless the margin is exact. */
  readonly low?: number;
  readonly high?: number;
  /** The margin that is asked for. */
  readonly reserve?: number;
}

const least = 0.3;
const most = 6;
const rowHeight = 27;
const barHeight = 8;
const shape = 14;
/** A shape at the end of the scale leaves this much [px] to the chevron outside it. */
const chevron = 9;

/** Where a margin stands on the scale: 0 at 0.3, 1 at 6. */
export function fraction(margin: number): number {
  return Math.min(1, Math.max(0, Math.log(margin / least) / Math.log(most / least)));
}

function percent(part: number): string {
  return `${(part * 100).toFixed(2)}%`;
}

/** Fixed pixels hung on a place in percent. */
function hung(at: string, y: number, ...parts: readonly string[]): string {
  return el("svg", { x: at, y, width: 1, height: 1, overflow: "visible" }, ...parts);
}

export function marginStrip(prefix: string, margin: Margin, height = rowHeight): string {
  const { verdict, nominal, low, high, reserve } = margin;
  const middle = height / 2;
  const top = middle - barHeight / 2;
  const one = fraction(1);
  const parts = [el("line", { x1: percent(one), x2: percent(one), y1: 0, y2: height, class: "i", "stroke-width": "1.25" })];
  if (low !== undefined && high !== undefined) {
    const [from, to] = [fraction(low), fraction(high)];
    const bar = (start: number, end: number) => ({ x: percent(start), y: top, width: percent(end - start), height: barHeight });
    if (from < one) {
      const id = `${prefix}-short`;
      const short = bar(from, Math.min(to, one));
      parts.push(hatch(id, `vs ${verdict}`, 4, 1.5), el("rect", { ...short, fill: `url(#${id})` }));
      parts.push(el("rect", { ...short, class: `nf vs ${verdict}`, "stroke-width": "0.75" }));
    }
    if (to > one) parts.push(el("rect", { ...bar(Math.max(from, one), to), class: `vf ${verdict}`, "fill-opacity": "0.34" }));
  }
  if (reserve !== undefined)
    parts.push(hung(percent(fraction(reserve)), middle + 7.5, el("path", { d: "M-3.2 5.4H3.2L0 .4Z", class: "fi2" })));
  parts.push(nominal === null ? ruleShape(verdict, middle) : nominalShape(verdict, nominal, middle));
  return el("svg", { class: "strip", width: "100%", height, role: "img", "aria-label": inWords(margin) }, ...parts);
}

function nominalShape(verdict: Verdict, nominal: number, middle: number): string {
  const look = { class: `nf vs ${verdict}`, "stroke-width": "1.3" };
  if (nominal > most)
    return hung("100%", middle, verdictShape(verdict, -shape / 2 - chevron, 0), el("path", { d: "M-6 -4.5-1.5 0-6 4.5", ...look }));
  if (nominal < least)
    return hung("0%", middle, verdictShape(verdict, shape / 2 + chevron, 0), el("path", { d: "M6 -4.5 1.5 0 6 4.5", ...look }));
  return hung(percent(fraction(nominal)), middle, verdictShape(verdict, 0, 0));
}

/** A rule without a number: broken lies left of every scale, kept right of it, and not known on the line. */
function ruleShape(verdict: Verdict, middle: number): string {
  const look = { class: `nf vs ${verdict}`, "stroke-width": "1.3" };
  if (verdict === "open") return hung(percent(fraction(1)), middle, verdictShape(verdict, 0, 0));
  if (verdict === "fails")
    return hung("0%", middle, el("path", { d: "M5 0H16M9.5 -4.5 5 0 9.5 4.5", ...look }), verdictShape(verdict, 23, 0));
  return hung("100%", middle, el("path", { d: "M-5 0H-16M-9.5 -4.5-5 0-9.5 4.5", ...look }), verdictShape(verdict, -23, 0));
}

function inWords({ verdict, nominal, low, high, reserve }: Margin): string {
  const two = (value: number) => (value >= 10 ? value.toFixed(1) : value.toFixed(2));
  if (nominal === null) return verdict === "fails" ? "fails, rule broken" : `${verdict}, a rule without a margin`;
  const band = low === undefined || high === undefined ? "exact" : `band ${two(low)} to ${two(high)}`;
  return `${verdict}, margin ${two(nominal)}, ${band}${reserve === undefined ? "" : `, asked ${two(reserve)}`}`;
}

/** The numbers over a column of strips. */
export function marginScale(size = smallest): string {
  const ticks = [0.5, 0.7, 1, 1.5, 2, 3, 5];
  const height = size + 22;
  const parts = ticks.flatMap((at) => {
    const x = percent(fraction(at));
    return [
      el("line", { x1: x, x2: x, y1: height - 4, y2: height, class: at === 1 ? "i" : "i3", "stroke-width": at === 1 ? "1.25" : 1 }),
      el(
        "svg",
        { x, y: 0, width: 1, height, overflow: "visible" },
        words(0, height - 7, String(at), { size, anchor: "middle", tone: at === 1 ? "ink" : "q", bold: at === 1 }),
      ),
    ];
  });
  return el("svg", { class: "strip", width: "100%", height, "aria-hidden": "true" }, ...parts);
}
