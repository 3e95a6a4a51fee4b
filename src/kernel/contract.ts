// Windows the rooms may rely on: assumed by figures, guarded by one check each, so that circles of data are cut in the open.
import type { Scope } from "./item.ts";

export interface Contract {
  readonly decl: "contract";
  readonly id: string;
  readonly per: Scope;
  /** What is assumed, as it ends the sentence "assuming ...". */
  readonly says: string;
}

/** Declares a window. A verdict that rests on it is open while its guard does not hold. */
export function contract(d: Omit<Contract, "decl">): Contract {
  return { ...d, decl: "contract" };
}
