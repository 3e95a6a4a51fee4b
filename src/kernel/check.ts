// Checks: a demand against a capacity, with the real ways to cure one that fails.
import type { Contract } from "./contract.ts";
import type { FindingCode } from "./finding.ts";
import type { Ref, Values, When } from "./ref.ts";
import type { Scope } from "./item.ts";

export type Verdict = "holds" | "tight" | "fails" | "open";

interface Remedy {
  readonly does: string;
  /** What else it changes or costs. */
  readonly costs: string;
  /** Inputs it would change. */
  readonly changes: readonly Ref<unknown>[];
  /** Changes to lay over, path below the thing -> text, so that the new verdict can be shown. */
  readonly lay?: Readonly<Record<string, string>>;
  /** Only where these words stand. */
  readonly when?: readonly When[];
}

export interface Check {
  readonly decl: "check";
  readonly id: string;
  readonly per: Scope;
  /** The user's question. */
  readonly asks: string;
  readonly demand: Ref<number>;
  readonly capacity: Ref<number>;
  /** Reserve asked for: `holds` begins at this margin. */
  readonly H: number;
  /** Answered by yes or no: the margin is 1 or 0, never tight. */
  readonly yesNo?: true;
  /** Guards a person: judged at the extremes, not at the 5 % edge. */
  readonly guards?: "people";
  readonly guarantees?: Contract;
  readonly when?: readonly When[];
  readonly remedies: readonly Remedy[];
}

/** Declares a check. Demand and capacity have one kind. */
export function check(d: Omit<Check, "decl">): Check {
  return { ...d, decl: "check" };
}

/** A mistake people make, found in the numbers: said beside the checks, at the input it belongs to. */
export interface Notice {
  readonly decl: "notice";
  readonly id: string;
  readonly per: Scope;
  readonly severity: "error" | "warning" | "note";
  /** Given, it is said as a mistake in the files, with its place. */
  readonly code?: FindingCode;
  readonly needs: Readonly<Record<string, Ref<unknown>>>;
  readonly when?: readonly When[];
  readonly of: (x: never) => string | null;
  readonly at: Ref<unknown>;
}

/** Declares a notice: a sentence from the nominal values, or null where all is well. */
export function notice<const X extends Readonly<Record<string, Ref<unknown>>>>(
  d: Omit<Notice, "decl" | "needs" | "of"> & { needs: X; of: (x: Values<X>) => string | null },
): Notice {
  return { ...d, decl: "notice" } as unknown as Notice;
}
