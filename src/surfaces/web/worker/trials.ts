// Options and remedies tried out: the verdicts they would bring, without touching what is looked at.
import type { CheckAnswer } from "../../../kernel/answer.ts";
import { num } from "../../../kernel/answer.ts";
import type { Evaluation } from "../../../kernel/evaluate.ts";
import type { Variant } from "../../../kernel/model/node.ts";
import { judge, type Verdict } from "../../../kernel/verdict.ts";
import type { Bench } from "./bench.ts";
import { type Laid, partsOf } from "./view.ts";

export interface Outcome {
  readonly verdict: Verdict;
  readonly margin: CheckAnswer["margin"];
  readonly yesNo: boolean;
}

/** Verdicts by the address of the check. */
export type Outcomes = Readonly<Record<string, Outcome>>;

function outcomes(e: Evaluation): Outcomes {
  return Object.fromEntries(
    judge(e).map((j) => [
      j.cell.address,
      {
        verdict: j.verdict,
        margin: { nominal: num(j.margin.nominal), low: num(j.margin.low), high: num(j.margin.high) },
        yesNo: j.cell.decl.yesNo ?? false,
      },
    ]),
  );
}

/** The options with all that they build on, what they build on first. */
function withNeeds(bench: Bench, laid: readonly Laid[]): Laid[] {
  const files = bench.best().graph.model.options;
  const all: Laid[] = [];
  const add = (o: Laid, trail: readonly string[]): void => {
    if (trail.includes(o.name) || all.some((a) => a.machine === o.machine && a.name === o.name)) return;
    for (const name of files.find((f) => f.machine === o.machine && f.name === o.name)?.needs ?? [])
      add({ machine: o.machine, name }, [...trail, o.name]);
    all.push(o);
  };
  for (const o of laid) add(o, []);
  return all;
}

/** What one more option would bring, laid over what is looked at. */
export function tryOption(bench: Bench, of: Laid): Outcomes {
  const { variant } = bench.prepared();
  return outcomes(bench.evaluated({ ...variant, options: withNeeds(bench, [...variant.options, of]) }, "full"));
}

/** What the remedy of a check would bring, laid over the thing it is about; null where the files would not take it. */
export function tryRemedy(bench: Bench, of: { readonly item: string; readonly lay: Readonly<Record<string, string>> }): Outcomes | null {
  const { variant } = bench.prepared();
  const tried: Variant = { ...variant, tries: [...variant.tries, ...triesOf(of.item, of.lay)] };
  const e = bench.evaluated(tried, "full");
  return e.graph.model.findings.some((f) => f.place.file === "tried" && f.severity === "error") ? null : outcomes(e);
}

/** A remedy names paths below its thing, or of the shop with `shop/` before them. */
export function triesOf(item: string, lay: Readonly<Record<string, string>>): { root: string; path: string; text: string }[] {
  const { root, path: under } = partsOf(item);
  return Object.entries(lay).map(([path, text]) => ({
    root,
    path: path.startsWith("shop/") || under === "" ? path : `${under}.${path}`,
    text,
  }));
}
