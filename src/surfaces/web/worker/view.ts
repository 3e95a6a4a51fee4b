// What is looked at, as plain data: it is posted to the worker, and every answer is an answer to one of these.
import type { PatchValue } from "../../../kernel/model/plain.ts";

/** The user's wish about units, over what the shop's files say; null leaves it to them. */
export type Units = "metric" | "inch" | null;

/** A value typed into a field and not kept yet; null takes the key away. */
export interface ValueEdit {
  /** As in the answer: `lathe/spindle.motor.plate.power`. */
  readonly address: string;
  readonly value: PatchValue;
}

export interface Laid {
  readonly machine: string;
  readonly name: string;
}

export interface Tried {
  readonly root: string;
  readonly path: string;
  readonly text: string;
}

export interface View {
  /** Grows with every change: an answer to an older one is dropped. */
  readonly pass: number;
  readonly values: readonly ValueEdit[];
  /** Options laid over, in order. */
  readonly options: readonly Laid[];
  /** Values tried out over the options: no edits, and never written unless kept as an option. */
  readonly tries: readonly Tried[];
  readonly units: Units;
}

/** An edit that the files do not take in this form, with the reason. */
export interface Refused {
  readonly address: string;
  readonly says: string;
}

/** Root and path of an address: `lathe/spindle.motor` is `lathe` and `spindle.motor`. */
export function partsOf(address: string): { root: string; path: string } {
  const slash = address.indexOf("/");
  return slash < 0 ? { root: address, path: "" } : { root: address.slice(0, slash), path: address.slice(slash + 1) };
}
