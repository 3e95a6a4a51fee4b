// What would be written if all were kept now.
import { homeOf } from "../../../kernel/model/patch.ts";
import { type Bench, written } from "./bench.ts";
import type { Refused } from "./view.ts";

export interface Kept {
  readonly files: readonly { readonly path: string; readonly text: string }[];
  readonly refused: readonly Refused[];
}

export function kept(bench: Bench): Kept {
  const { texts, refused } = written(bench.shop, bench.view.values);
  return { files: [...texts].map(([path, text]) => ({ path, text })), refused };
}

/** Which of these values would be written into a file. */
export function valuesIn(
  bench: Bench,
  of: { readonly path: string; readonly values: readonly string[] },
): { readonly addresses: readonly string[] } {
  return { addresses: of.values.filter((address) => homeOf(address, bench.shop).file === of.path) };
}
