// Numbers taken apart for the eye: value, unit, band.
import type { Amount } from "../../../kernel/answer.ts";
import { prettyUnit } from "../../../kernel/display.ts";

export function numberAndUnit(text: string): { readonly number: string; readonly unit: string } {
  const [, number = text, unit = ""] = /^([-+\d.,]+(?:e[-+]?\d+)?(?: to [-+\d.,]+)?)\s+(.+)$/.exec(text) ?? [];
  return { number, unit: prettyUnit(unit) };
}

/** The band without the unit that the value beside it has already; `exact` where there is none. */
export function bandWords(amount: Pick<Amount, "text" | "band" | "nominal">): string {
  if (typeof amount.nominal !== "number" && "refused" in amount.nominal) return "";
  if (amount.band === "exact" || amount.band === amount.text) return "exact";
  const [value, band] = [numberAndUnit(amount.text), numberAndUnit(amount.band)];
  return value.unit === band.unit ? band.number : prettyUnit(amount.band);
}
