// What a comparison of options holds, before it is worded.
import type { Answer, Num } from "../../kernel/answer.ts";
import type { Outcome } from "./cures.ts";

export interface Bill {
  /** Sum in the currency of the shop; null when an option does not say. */
  readonly cost: number | null;
  readonly hours: number | null;
  /** Options that say no cost, or no hours. */
  readonly silent: readonly string[];
}

export interface Compared {
  /** As named on the line. */
  readonly name: string;
  readonly options: readonly { readonly machine: string; readonly name: string; readonly title: string }[];
  readonly bill: Bill;
  /** By address: what changes, with how many of 100 imagined shops are better off. */
  readonly checks: ReadonlyMap<string, { readonly outcome: Outcome | null; readonly betterIn: number | null }>;
  readonly figures: readonly FigureChange[];
}

export interface FigureChange {
  readonly address: string;
  readonly symbol: string;
  readonly says: string;
  readonly from: string;
  readonly to: string;
  /** To over from. */
  readonly ratio: Num;
}

export interface Comparison {
  readonly answer: Answer;
  /** Checks with a change in any of the options, worst as found first. */
  readonly changed: readonly { readonly address: string; readonly asks: string; readonly asFound: Outcome | null }[];
  readonly unchanged: number;
  readonly compared: readonly Compared[];
}
