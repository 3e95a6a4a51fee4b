// What page and worker say to each other. The page holds texts and edits; the worker holds the shop and computes.
import type { Answer } from "../../../kernel/answer.ts";
import type { Mode } from "../../../kernel/evaluate.ts";
import type { PatchValue } from "../../../kernel/model/plain.ts";
import type { Asks } from "./asks.ts";

/** One of the user's wishes about units, laid over what the shop's files say; null leaves it to them. */
export type Units = "metric" | "inch" | null;

/** A value typed into a field and not kept yet: null takes the key away. */
export interface ValueEdit {
  /** As in the answer: `lathe/spindle.motor.plate.power`. */
  readonly address: string;
  readonly value: PatchValue;
}

/** What is looked at: the files as typed in the file view, values typed into fields, options laid over, units. */
export interface View {
  /** Grows with every change: an answer to an older one is dropped. */
  readonly pass: number;
  readonly values: readonly ValueEdit[];
  readonly options: readonly { readonly machine: string; readonly name: string }[];
  readonly units: Units;
}

export type ToWorker =
  /** Texts of files that are new or changed; null for one that is gone. */
  | { readonly say: "texts"; readonly texts: readonly (readonly [path: string, text: string | null])[] }
  | { readonly say: "view"; readonly view: View; readonly modes: readonly Mode[] }
  | { readonly say: "ask"; readonly id: number; readonly ask: AnyAsk };

/** An edit that no file takes in this form, with the reason. */
export interface Refused {
  readonly address: string;
  readonly says: string;
}

export type FromWorker =
  | { readonly say: "answer"; readonly pass: number; readonly mode: Mode; readonly answer: Answer; readonly refused: readonly Refused[] }
  /** The program made a mistake: the last good answer stays on the screen. */
  | { readonly say: "failed"; readonly pass: number; readonly says: string }
  | { readonly say: "reply"; readonly id: number; readonly reply: unknown }
  | { readonly say: "no-reply"; readonly id: number; readonly says: string };

export type AskName = keyof Asks;
export type AnyAsk = { [K in AskName]: { readonly name: K; readonly of: Parameters<Asks[K]>[1] } }[AskName];
export type ReplyOf<K extends AskName> = ReturnType<Asks[K]>;
