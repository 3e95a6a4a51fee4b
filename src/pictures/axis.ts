// Axes: the range, the ticks and the pad grid behind a plot.
import { clockStep, clockWords, linearScale, logMultiples, logScale, logTicks, multiples, niceStep, tickWords } from "./scale.ts";
import type { Scale, Tick } from "./scale.ts";
import type { Axis } from "./plot-spec.ts";
import { textWidth } from "./text-width.ts";

export interface Ruled {
  readonly scale: Scale;
  readonly ticks: readonly Tick[];
  /** Where the fine lines of the pad run. */
  readonly minor: readonly number[];
}

/** Fine lines closer than this [px] would be grey, not a grid. */
const finest = 9;

interface Range {
  readonly min: number;
  readonly max: number;
}

/** The range an axis shows: as asked, or the data; `nice` widens it to whole ticks. */
function rangeOf(axis: Axis, values: readonly number[], count: number, nice: boolean): Range {
  const isLog = axis.scale === "log";
  let low = Infinity;
  let high = -Infinity;
  for (const value of values) {
    if (!Number.isFinite(value) || (isLog && value <= 0)) continue;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  if (low > high) [low, high] = isLog ? [1, 10] : [0, 1];
  if (nice && !isLog && axis.scale !== "clock") {
    // A picture of amounts starts at nothing unless all of them are nearly alike.
    if (low > 0 && low < high * nearlyAlike) low = 0;
    if (high < 0 && high > low * nearlyAlike) high = 0;
  }
  low = axis.min ?? low;
  high = axis.max ?? high;
  if (!(high > low)) [low, high] = isLog ? [low / 2, low * 2] : widened(low, axis.min !== undefined);
  if (!nice || axis.scale === "clock") return { min: low, max: high };
  if (isLog) {
    const all = logMultiples(low / 10, high * 10, [1, 2, 5]);
    return { min: axis.min ?? all.findLast((at) => at <= low) ?? low, max: axis.max ?? all.find((at) => at >= high) ?? high };
  }
  const step = niceStep(high - low, count);
  return { min: axis.min ?? Math.floor(low / step + 1e-9) * step, max: axis.max ?? Math.ceil(high / step - 1e-9) * step };
}
const nearlyAlike = 0.6;

function widened(at: number, keepLow: boolean): [number, number] {
  const by = Math.abs(at) * 0.1 || 1;
  return [keepLow ? at : at - by, at + by];
}

/** An axis over the pixels from..to with at most `count` ticks, ruled. */
export function ruled(axis: Axis, values: readonly number[], from: number, to: number, count: number, nice: boolean): Ruled {
  const { min, max } = rangeOf(axis, values, count, nice);
  const scale = axis.scale === "log" ? logScale(min, max, from, to) : linearScale(min, max, from, to);
  if (axis.ticks) return { scale, ticks: axis.ticks.filter((tick) => tick.at >= min && tick.at <= max), minor: [] };
  if (axis.scale === "log") return { scale, ticks: logTicks(min, max, count), minor: logMultiples(min, max, [1, 2, 3, 4, 5, 6, 7, 8, 9]) };
  const isClock = axis.scale === "clock";
  const step = isClock ? clockStep(max - min, count) : niceStep(max - min, count);
  const ticks = multiples(min, max, step).map((at) => ({ at, words: isClock ? clockWords(at, step) : tickWords(at, step) }));
  const stepPixels = (Math.abs(to - from) * step) / (max - min);
  const cuts = isClock || isTwo(step) ? [4, 2] : [5, 2];
  const parts = cuts.find((cut) => stepPixels / cut >= finest) ?? 1;
  return { scale, ticks, minor: multiples(min, max, step / parts) };
}

function isTwo(step: number): boolean {
  return Math.round(step / 10 ** Math.floor(Math.log10(step) + 1e-9)) === 2;
}

/** A horizontal axis with as many ticks as stand side by side without touching. */
export function ruledAcross(axis: Axis, values: readonly number[], from: number, to: number, size: number): Ruled {
  for (let count = Math.min(mostTicks, Math.max(2, Math.floor((to - from) / leastTickPitch))); ; count -= 1) {
    const tried = ruled(axis, values, from, to, count, false);
    if (count <= 1 || axis.ticks || isClear(tried, size)) return tried;
  }
}
const mostTicks = 10;
const leastTickPitch = 56;
const leastTickGap = 12;

function isClear({ scale, ticks }: Ruled, size: number): boolean {
  return ticks.every((tick, i) => {
    const before = ticks[i - 1];
    if (before === undefined) return true;
    const half = (textWidth(tick.words, size) + textWidth(before.words, size)) / 2;
    return scale.toPixel(tick.at) - scale.toPixel(before.at) >= half + leastTickGap;
  });
}

export function axisWords(axis: Axis): string {
  return [axis.label, axis.unit].filter((part) => part !== "").join(", ");
}
