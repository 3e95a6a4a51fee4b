// Options and remedies tried out: the verdicts they would bring, without touching what is looked at.
import { type Outcome, outcomeOf } from "../../../kernel/compare.ts";
import type { Evaluation } from "../../../kernel/evaluate.ts";
import { triesOf, withNeeds } from "../../../kernel/model/laid.ts";
import type { Variant } from "../../../kernel/model/node.ts";
import { judge } from "../../../kernel/verdict.ts";
import type { Bench } from "./bench.ts";
import type { Laid } from "./view.ts";

export type { Outcome } from "../../../kernel/compare.ts";

/** Verdicts by the address of the check. */
export type Outcomes = Readonly<Record<string, Outcome>>;

function outcomes(e: Evaluation): Outcomes {
  return Object.fromEntries(judge(e).map((j) => [j.cell.address, outcomeOf(j)]));
}

/** What one more option would bring, laid over what is looked at. */
export function tryOption(bench: Bench, of: Laid): Outcomes {
  const { variant } = bench.prepared();
  const options = withNeeds(bench.best().graph.model.options, [...variant.options, of]);
  return outcomes(bench.evaluated({ ...variant, options }, "full"));
}

/** What the remedy of a check would bring, laid over the thing it is about; null where the files would not take it. */
export function tryRemedy(bench: Bench, of: { readonly item: string; readonly lay: Readonly<Record<string, string>> }): Outcomes | null {
  const { variant } = bench.prepared();
  const tried: Variant = { ...variant, tries: [...variant.tries, ...triesOf(of.item, of.lay)] };
  const e = bench.evaluated(tried, "full");
  return e.graph.model.findings.some((f) => f.place.file === "tried" && f.severity === "error") ? null : outcomes(e);
}
