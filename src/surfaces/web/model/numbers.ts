// Numbers as the page words them: margins, bands, shares.
import type { CheckAnswer, Num } from "../../../kernel/answer.ts";

/** Above this a margin only says that the check is not near. */
const far = 100;

export function marginNumber(x: Num): string {
  if (typeof x !== "number") return "never" in x ? "no limit" : "no value";
  if (x >= far) return `over ${far}`;
  return x >= 10 ? x.toFixed(1) : x.toFixed(2);
}

/** What stands in the margin column: for a yes or no its answer. A word that rounding would belie gets one more digit. */
export function marginWord({ margin, yesNo, verdict }: Pick<CheckAnswer, "margin" | "yesNo" | "verdict">): string {
  const { nominal } = margin;
  if (yesNo && typeof nominal === "number") return verdict === "open" ? "–" : nominal === 0 ? "no" : "yes";
  if (typeof nominal !== "number") return "never" in nominal ? "no limit" : "–";
  const text = marginNumber(nominal);
  return nominal < 1 && text === "1.00" ? nominal.toFixed(3) : text;
}

/** The band of a margin in words; `exact` where it has none. */
export function bandWord({ margin, yesNo }: Pick<CheckAnswer, "margin" | "yesNo">): string {
  const [low, high] = [marginNumber(margin.low), marginNumber(margin.high)];
  if (typeof margin.nominal !== "number" && "refused" in margin.nominal) return "none yet";
  if (yesNo) return margin.low === margin.high ? "exact" : "not known";
  if (low === high) return "exact";
  return `${low} to ${high}`;
}

export function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

/** A number with the noun in its number: `1 check`, `3 checks`. */
export function counted(n: number, noun: string, many = `${noun}s`): string {
  return `${n} ${n === 1 ? noun : many}`;
}

const small = ["No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten", "Eleven", "Twelve"];

/** A number as a sentence starts with it: `Three`, `27`. */
export function spelled(n: number): string {
  return small[n] ?? String(n);
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(words: readonly string[]): string {
  const last = words.at(-1);
  return words.length < 2 ? (last ?? "") : `${words.slice(0, -1).join(", ")} and ${last ?? ""}`;
}
