// Where along a range a figure is worked out: ends and steps as typed, evenly spaced or by equal ratios.
import { readQuantity } from "../../../kernel/quantity.ts";
import type { Kind } from "../../../kernel/kind.ts";
import { write } from "../../../kernel/display.ts";

export interface Places {
  readonly unit: string;
  /** In the unit. */
  readonly x: readonly number[];
  /** As one would type them. */
  readonly texts: readonly string[];
}

export const usualSteps = 41;
const mostSteps = 201;

/** Digits of a value along the range: none of them is seen, and the ends stay as typed. */
const digits = 10;

/** Reads range and steps; a sentence where they cannot be. */
export function placesOf(range: string, steps: string, scale: "linear" | "log", kind: Kind): Places | string {
  const read = readQuantity(range, kind);
  if (!read.ok) return read.issues[0].says;
  if (!(read.low < read.high)) return `"${range}" is no range: write two ends, such as 100 to 200 mm`;
  const count = steps.trim() === "" ? usualSteps : Number(steps);
  if (!Number.isInteger(count) || count < 2 || count > mostSteps) return `Steps are a whole number from 2 to ${mostSteps}.`;
  const [low, unit] = apart(write(read.low, kind, read.unit));
  const [high] = apart(write(read.high, kind, read.unit));
  if (scale === "log" && low <= 0) return "On a logarithmic scale both ends are above 0.";
  const at = (part: number): number => (scale === "log" ? low * (high / low) ** part : low + (high - low) * part);
  const x = Array.from({ length: count }, (_, i) => Number(at(i / (count - 1)).toPrecision(digits)));
  return { unit, x, texts: x.map((value) => (unit === "" ? String(value) : `${value} ${unit}`)) };
}

function apart(text: string): [number, string] {
  const blank = text.indexOf(" ");
  return blank < 0 ? [Number(text), ""] : [Number(text.slice(0, blank)), text.slice(blank + 1)];
}
