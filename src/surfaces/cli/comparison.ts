// What a comparison of options holds, before it is worded.
import type { Answer, CheckAnswer } from "../../kernel/answer.ts";
import type { FigureChange, Outcome } from "../../kernel/compare.ts";
import type { Bill } from "../../kernel/model/laid.ts";

interface Compared {
  /** As named on the line. */
  readonly name: string;
  readonly options: readonly { readonly machine: string; readonly name: string; readonly title: string }[];
  readonly bill: Bill;
  /** By address: what changes, with how many of 100 imagined shops are better off. */
  readonly checks: ReadonlyMap<string, Against>;
  /** Those that move most, one of a kind. */
  readonly figures: readonly FigureChange[];
  /** All figures of the variant. */
  readonly amounts: Answer["figures"];
}
interface Against {
  readonly outcome: Outcome | null;
  readonly betterIn: number | null;
}

export type Changed = Pick<CheckAnswer, "address" | "id" | "room" | "root" | "thing" | "asks"> & {
  readonly asFound: Outcome | null;
};

export interface Comparison {
  readonly answer: Answer;
  /** Checks with a change in any of the options, worst as found first. */
  readonly changed: readonly Changed[];
  readonly unchanged: number;
  /** Of the unchanged. */
  readonly stillFailing: number;
  readonly compared: readonly Compared[];
}
