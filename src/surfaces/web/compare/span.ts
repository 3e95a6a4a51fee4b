// The range of a slider: which values of an input it runs over, in the unit that was typed.
import type { InputAnswer } from "../../../kernel/answer.ts";
import { show, showBand, type System, write } from "../../../kernel/display.ts";
import { readQuantity } from "../../../kernel/quantity.ts";
import type { Kind } from "../../../kernel/unit.ts";

export interface Span {
  readonly low: number;
  readonly high: number;
  readonly step: number;
  readonly decimals: number;
  readonly unit: string;
}

/** Steps of a slider are a round number of the unit; there are at least as many of them. */
const leastSteps = 100;
/** An exact value is tried out between these shares of it. */
const usual = { low: 0.5, high: 1.5 };

/** Over what an input is tried out at first: its band, or half of it to half more. Null where that says nothing. */
export function usualRange({ amount }: InputAnswer, system: System): string | null {
  const { nominal, low, high } = amount ?? {};
  if (amount === null || typeof nominal !== "number" || typeof low !== "number" || typeof high !== "number") return null;
  const kind = amount.kind as Kind; // an amount carries the name of its kind
  const [from, to] = low < high ? [low, high] : [usual.low * nominal, usual.high * nominal];
  return from < to ? showBand(from, to, kind, system).text : null;
}

/** From half of a value to half more, in its own unit; of a range the range itself. Null where the text says no value to start from. */
export function rangeAround(text: string, kind: Kind): string | null {
  const read = readQuantity(text, kind);
  if (!read.ok) return null;
  const [low, high] = read.low < read.high ? [read.low, read.high] : [usual.low * read.nominal, usual.high * read.nominal];
  if (!(low < high)) return null;
  const [[from], [to, unit]] = [apart(write(low, kind, read.unit)), apart(write(high, kind, read.unit))];
  return `${Number(from.toPrecision(shownDigits))} to ${Number(to.toPrecision(shownDigits))} ${unit}`.trim();
}
const shownDigits = 4;

/** Reads `5 to 60 m`; a sentence where that is no range of the kind. */
export function spanOf(text: string, kind: Kind): Span | string {
  const read = readQuantity(text, kind);
  if (!read.ok) return read.issues[0].says;
  if (!(read.low < read.high)) return "two ends are wanted, such as 5 to 60 m";
  const [low, unit] = apart(write(read.low, kind, read.unit));
  const [high] = apart(write(read.high, kind, read.unit));
  const step = roundStep((high - low) / leastSteps);
  return { low, high, step, decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)), unit };
}

/** The nearest round number below: 1, 2 or 5 times a power of ten. */
function roundStep(step: number): number {
  const tens = 10 ** Math.floor(Math.log10(step));
  const lead = step / tens;
  return (lead >= 5 ? 5 : lead >= 2 ? 2 : 1) * tens;
}

function apart(text: string): [number, string] {
  const blank = text.indexOf(" ");
  return blank < 0 ? [Number(text), ""] : [Number(text.slice(0, blank)), text.slice(blank + 1)];
}

/** Where a value stands on a slider, in its unit; null where it cannot be read. A range stands at its middle. */
export function positionOf(text: string, kind: Kind, span: Span): number | null {
  const read = readQuantity(text, kind);
  if (!read.ok) return null;
  return span.unit === "" ? read.nominal : apart(write(read.nominal, kind, span.unit))[0];
}

/** The value at a place of the slider, as one would type it. */
export function textAt(position: number, { decimals, unit }: Span): string {
  const number = position.toFixed(decimals);
  return unit === "" ? number : `${number} ${unit}`;
}

/** What the field of an input shows when one begins to try it: its nominal value as one number. */
export function startText({ amount, text, form }: InputAnswer, system: System): string {
  if (form !== "quantity" || typeof amount?.nominal !== "number") return text;
  return show(amount.nominal, amount.kind as Kind, system).text; // an amount carries the name of its kind
}
