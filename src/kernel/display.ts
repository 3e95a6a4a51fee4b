// Quantities for people: fixed units for each kind, numbers of a few figures, and text that the files read back.
import { standardAtmosphere } from "./constants.ts";
import { baseShift, fromSI, isFreeAir, type Kind, kindInfo, kinds, unitFor, unitOf, withoutBase } from "./unit.ts";

/** Which units the user wants to see. */
export interface System {
  readonly units: "metric" | "inch";
  readonly pressure?: "bar" | "psi" | "kPa";
  readonly currency?: string;
}

export interface Shown {
  readonly text: string;
  readonly number: string;
  readonly unit: string;
}

/** Figures of a single value; four, as in a workshop table. */
const usualDigits = 4;

/** Figures of the spread of a band: its ends are no better known than 1 to 2 % (1,000 samples). */
const spreadDigits = 2;

/** Figures of text written into a file: more than any instrument, fewer than the noise of binary numbers. */
const writtenDigits = 12;

/** The unit in which a kind is shown: fixed by kind and wish, never by the size of the value. */
function displayUnit(kind: Kind, system: System): string {
  const unit: string = kinds[kind][system.units];
  if (isPressure(kind) && system.pressure) return unit.replace(/^\w+/, system.pressure);
  return system.currency ? unit.replace("USD", system.currency) : unit;
}

function isPressure(kind: Kind): boolean {
  return kind === "gauge-pressure" || kind === "absolute-pressure" || kind === "pressure-difference";
}

/** A value in SI as number and unit. Endless values ("never") have no number and are worded by the caller. */
export function show(value: number, kind: Kind, system: System, digits: number = usualDigits): Shown {
  const unit = displayUnit(kind, system);
  const shown = inUnit(value, kind, unit);
  const cents = kind === "money" && Math.abs(shown) >= 0.1;
  return assemble(cents ? plain(shown.toFixed(2), false) : rounded(shown, digits, kind === "count"), unit);
}

/** A band as `26 to 35 mm`: one unit, as many decimals as give the spread two figures. */
export function showBand(low: number, high: number, kind: Kind, system: System): Shown {
  const unit = displayUnit(kind, system);
  const [a, b] = [inUnit(low, kind, unit), inUnit(high, kind, unit)];
  const spread = Math.abs(b - a);
  // Ends equal but for the noise of binary numbers are one value.
  if (!(spread > 1e-12 * Math.max(Math.abs(a), Math.abs(b)))) return show(low, kind, system);
  const decimals = spreadDigits - 1 - Math.floor(Math.log10(spread));
  const ends = [a, b].map((end) => atDecimals(end, decimals));
  const whole = ends.every((end) => /\.0+$/.test(end));
  const [from = "", to = ""] = whole ? ends.map((end) => end.replace(/\.0+$/, "")) : ends;
  return assemble(`${from} to ${to}`, unit);
}

function assemble(number: string, unit: string): Shown {
  return { text: unit === "" ? number : `${number} ${unit}`, number, unit };
}

function inUnit(value: number, kind: Kind, unit: string): number {
  return unit === "" ? value : fromSI(value, unitOf(unit), kind !== "temperature");
}

function rounded(value: number, digits: number, whole: boolean): string {
  if (whole && Number.isInteger(value)) return plain(value.toFixed(0), false);
  return plain(String(Number(value.toPrecision(digits))), false);
}

function atDecimals(value: number, decimals: number): string {
  if (decimals >= 0) return plain(value.toFixed(Math.min(decimals, 20)), true);
  const step = 10 ** -decimals;
  return plain(String(Math.round(value / step) * step), true);
}

/** No minus before a zero. */
function plain(number: string, keepZeros: boolean): string {
  return /^-0(?:\.0+)?$/.test(number) ? (keepZeros ? number.slice(1) : "0") : number;
}

const prettySigns: readonly (readonly [RegExp, string])[] = [
  [/\*/g, "\u00b7"],
  [/(?<=[A-Za-z)])2(?![\d.])/g, "\u00b2"],
  [/(?<=[A-Za-z)])3(?![\d.])/g, "\u00b3"],
  [/\bu(?=[A-Za-z])/g, "\u00b5"],
  [/\bdeg(?=[CF]\b)/g, "\u00b0"],
  [/\bdeg\b/g, "\u00b0"],
  [/\b([mkMu\u00b5]?)ohm\b/g, "$1\u03a9"],
];

/** Unit text as print sets it: N*m as N·m, mm2 as mm², um as µm. The files read both. */
export function prettyUnit(unitText: string): string {
  return prettySigns.reduce((text, [from, to]) => text.replace(from, to), unitText);
}

/**
 * Text for a file: the value in the unit asked for, to 12 figures. A value inside is free air at ANR and a pressure has its base, so the
 * text says so even when the unit asked for does not. A unit that does not fit the kind is a programmer's mistake.
 */
export function write(value: number, kind: Kind, unitText: string, ambient: number = standardAtmosphere.value): string {
  const named = /^(?:AWG|Cv|Kv|bore)\b/.test(unitText) ? kinds[kind].metric : unitText;
  const number = (x: number): string => String(Number(x.toPrecision(writtenDigits)));
  if (named === "") return number(value);
  const unit = unitFor(withBase(named, kind), kind);
  if (!unit) throw new Error(`unit-mismatch: "${unitText}" is no unit of ${kindInfo(kind).says}`);
  return `${number(fromSI(value - baseShift(unit, kind, ambient), unit, kind !== "temperature"))} ${unit.text}`;
}

function withBase(unitText: string, kind: Kind): string {
  if (isFreeAir(kind)) return `${withoutBase(unitText)} ANR`;
  return kind === "absolute-pressure" && withoutBase(unitText) === unitText ? `${unitText} abs` : unitText;
}
