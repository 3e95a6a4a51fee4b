// Amounts in words: value and band, in full or in as many figures as one needs to see how far apart two of them are.
import type { Amount, Answer } from "../../kernel/answer.ts";
import { show } from "../../kernel/display.ts";
import { kindNames } from "../../kernel/unit.ts";
import { quantity, type Terminal } from "./terminal.ts";

/** `30.21 N·m (26 to 35 N·m)`. */
export function amountText(t: Pick<Terminal, "unicode">, a: { readonly text: string; readonly band: string }): string {
  return quantity(t, isPoint(a) ? a.text : `${a.text} (${a.band})`);
}

const isPoint = (a: { readonly text: string; readonly band: string }): boolean =>
  a.band === "" || a.band === "exact" || a.band === a.text || a.band === "no value";

/** Figures of a value beside its band, which is known to two. */
const briefDigits = 3;

/** `30.2 N·m (26 to 35)`; null where there is no number. */
export function amountBrief(t: Pick<Terminal, "unicode">, a: Amount, system: Answer["show"]): string | null {
  const { nominal } = a;
  if (typeof nominal !== "number") return "never" in nominal ? quantity(t, a.text) : null;
  if (isPoint(a)) return quantity(t, a.text);
  const kind = kindNames.find((k) => k === a.kind) ?? "ratio";
  const { text, unit } = show(nominal, kind, system, briefDigits);
  const band = unit !== "" && a.band.endsWith(` ${unit}`) ? a.band.slice(0, -unit.length - 1) : a.band;
  return quantity(t, `${text} (${band})`);
}
