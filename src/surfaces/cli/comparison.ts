// What a comparison of options holds, before it is worded.
import type { Answer } from "../../kernel/answer.ts";
import type { FigureChange, Outcome } from "../../kernel/compare.ts";
import type { Bill } from "../../kernel/model/laid.ts";

export interface Compared {
  /** As named on the line. */
  readonly name: string;
  readonly options: readonly { readonly machine: string; readonly name: string; readonly title: string }[];
  readonly bill: Bill;
  /** By address: what changes, with how many of 100 imagined shops are better off. */
  readonly checks: ReadonlyMap<string, { readonly outcome: Outcome | null; readonly betterIn: number | null }>;
  readonly figures: readonly FigureChange[];
}

export interface Comparison {
  readonly answer: Answer;
  /** Checks with a change in any of the options, worst as found first. */
  readonly changed: readonly { readonly address: string; readonly asks: string; readonly asFound: Outcome | null }[];
  readonly unchanged: number;
  readonly compared: readonly Compared[];
}
