// Scales: values to pixels and back, with the ticks a person would have drawn.

export interface Tick {
  readonly at: number;
  readonly words: string;
}

export interface Scale {
  readonly min: number;
  readonly max: number;
  /** NaN where the scale has no place for the value (zero or less on a logarithmic one). */
  readonly toPixel: (value: number) => number;
  readonly toValue: (pixel: number) => number;
}

export function linearScale(min: number, max: number, from: number, to: number): Scale {
  const perUnit = (to - from) / (max - min);
  return { min, max, toPixel: (value) => from + (value - min) * perUnit, toValue: (pixel) => min + (pixel - from) / perUnit };
}

export function logScale(min: number, max: number, from: number, to: number): Scale {
  const inner = linearScale(Math.log(min), Math.log(max), from, to);
  return {
    min,
    max,
    toPixel: (value) => (value > 0 ? inner.toPixel(Math.log(value)) : Number.NaN),
    toValue: (pixel) => Math.exp(inner.toValue(pixel)),
  };
}

/** The smallest of 1, 2, 5 times a power of ten that cuts `span` into at most `count` steps. */
export function niceStep(span: number, count: number): number {
  const rough = span / Math.max(1, count);
  const power = 10 ** Math.floor(Math.log10(rough));
  const lead = [1, 2, 5].find((step) => step * power >= rough * (1 - rounding)) ?? 10;
  return lead * power;
}

/** Steps of a clock [s]: those that divide the next larger one. */
const clockSteps = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 10800, 14400, 21600, 43200, 86400];
export function clockStep(span: number, count: number): number {
  return clockSteps.find((step) => span / step <= count) ?? 86400;
}

/** Multiples of the step within [min, max]; a multiple that misses the end by rounding alone counts. */
export function multiples(min: number, max: number, step: number): number[] {
  const first = Math.ceil(min / step - rounding);
  const last = Math.floor(max / step + rounding);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
}
/** Far below a pixel, far above the rounding of a double. */
const rounding = 1e-9;

/** A tick value in words: no more decimals than its step needs. */
export function tickWords(value: number, step: number): string {
  if (value === 0) return "0";
  const size = Math.max(Math.abs(value), step);
  if (size >= 1e7 || step < 1e-5) return Number(value.toPrecision(6)).toExponential().replace("e+", "e").replace("-", "−");
  const decimals = Math.max(0, -Math.floor(Math.log10(step * (1 + rounding))));
  return value.toFixed(decimals).replace("-", "−");
}

/** Hours and minutes of the day, with seconds only where the step is finer than a minute; value and step [s]. */
export function clockWords(value: number, step: number): string {
  const part = (unit: number, of: number) => String(Math.floor(Math.round(value) / unit) % of).padStart(2, "0");
  return `${part(3600, 24)}:${part(60, 60)}${step < 60 ? `:${part(1, 60)}` : ""}`;
}

/** Ticks of a logarithmic scale: 1, 2, 5 of each decade, or decades alone where there are many. */
export function logTicks(min: number, max: number, count: number): Tick[] {
  const decades = Math.log10(max / min);
  const leads = decades * 3 <= count ? [1, 2, 5] : [1];
  const stride = leads.length === 1 ? Math.max(1, Math.ceil(decades / count)) : 1;
  return logMultiples(min, max, leads)
    .filter((at) => stride === 1 || Math.round(Math.log10(at)) % stride === 0)
    .map((at) => ({ at, words: tickWords(at, 10 ** Math.floor(Math.log10(at) + rounding)) }));
}

export function logMultiples(min: number, max: number, leads: readonly number[]): number[] {
  const found: number[] = [];
  for (let power = Math.floor(Math.log10(min)); power <= Math.log10(max); power += 1) {
    found.push(...leads.map((lead) => Number((lead * 10 ** power).toPrecision(12))));
  }
  return found.filter((at) => at >= min * (1 - rounding) && at <= max * (1 + rounding));
}
