// What page and worker say to each other. The page holds texts and edits; the worker holds the shop and computes.
import type { Answer, FigureAnswer, Num } from "../../../kernel/answer.ts";
import type { Mode } from "../../../kernel/evaluate.ts";
import type { Asks } from "./asks.ts";
import type { Plan } from "./plan.ts";
import type { Refused, View } from "./view.ts";

export type ToWorker =
  /** Texts of files that are new or changed; null for one that is gone. */
  | { readonly say: "texts"; readonly texts: readonly (readonly [path: string, text: string | null])[] }
  /** Answered in every mode, one after another, unless a newer view comes between. */
  | { readonly say: "view"; readonly view: View }
  | { readonly say: "ask"; readonly id: number; readonly name: AskName; readonly of: unknown };

export interface Answered {
  readonly pass: number;
  readonly mode: Mode;
  readonly answer: Answer;
  /** What the machines are made of, for their drawings. */
  readonly plan: Plan;
  readonly refused: readonly Refused[];
}

/** Nominal numbers alone, where an answer with the same checks and figures was sent before: small, so that a keystroke is answered soon. */
export interface Numbers {
  readonly pass: number;
  readonly margins: Readonly<Record<string, Num>>;
  readonly figures: Readonly<Record<string, FigureAnswer>>;
  readonly refused: readonly Refused[];
}

export type FromWorker =
  | ({ readonly say: "answer" } & Answered)
  | ({ readonly say: "numbers" } & Numbers)
  /** The program made a mistake: the last good answer stays on the screen. */
  | { readonly say: "failed"; readonly pass: number; readonly says: string }
  | { readonly say: "reply"; readonly id: number; readonly reply: unknown }
  | { readonly say: "no-reply"; readonly id: number; readonly says: string };

/** A question to the worker, and what comes back. */
export type AskName = keyof Asks;
export type OfAsk<K extends AskName> = Parameters<Asks[K]> extends [unknown, infer O] ? O : null;
export type ReplyOf<K extends AskName> = Awaited<ReturnType<Asks[K]>>;
