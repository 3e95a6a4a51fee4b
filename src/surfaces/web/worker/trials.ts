// Options and remedies tried out: the verdicts they would bring, without touching what is looked at.
import { type Outcome, outcomeOf } from "../../../kernel/compare.ts";
import type { Evaluation } from "../../../kernel/evaluate.ts";
import { triesOf, withNeeds } from "../../../kernel/model/laid.ts";
import type { Variant } from "../../../kernel/model/node.ts";
import { judge } from "../../../kernel/verdict.ts";
import type { Bench } from "./bench.ts";
import { workedOff } from "./slices.ts";
import type { Laid } from "./view.ts";

/** Verdicts by the address of the check. */
export type Outcomes = Readonly<Record<string, Outcome>>;

function outcomes(e: Evaluation): Outcomes {
  return Object.fromEntries(judge(e).map((j) => [j.cell.address, outcomeOf(j)]));
}

/** What one more option would bring, laid over what is looked at; null when that changed meanwhile. */
export async function tryOption(bench: Bench, of: Laid): Promise<Outcomes | null> {
  const { variant } = bench.prepared();
  const options = withNeeds(bench.best().graph.model.options, [...variant.options, of]);
  const e = bench.evaluated({ ...variant, options }, "full");
  return (await workedOff(bench, e)) ? outcomes(e) : null;
}

/** What the remedy of a check would bring, laid over the thing it is about; null where the files would not take it. */
export async function tryRemedy(
  bench: Bench,
  of: { readonly item: string; readonly lay: Readonly<Record<string, string>> },
): Promise<Outcomes | null> {
  const { variant } = bench.prepared();
  const tried: Variant = { ...variant, tries: [...variant.tries, ...triesOf(of.item, of.lay)] };
  const e = bench.evaluated(tried, "full");
  if (e.graph.model.findings.some((f) => f.place.file === "tried" && f.severity === "error")) return null;
  return (await workedOff(bench, e)) ? outcomes(e) : null;
}
