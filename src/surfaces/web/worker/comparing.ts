// One column of a comparison: a variant of the shop against the shop as found, and what its options would change in the files.
import { figureAnswers, type FigureAnswer, systemOf } from "../../../kernel/answer.ts";
import { type CheckChange, checksAgainst, type FigureChange, figuresAgainst, type Trial, trialOf } from "../../../kernel/compare.ts";
import { show } from "../../../kernel/display.ts";
import { billOf, changesOf, isUnread, type OptionChange, withNeeds } from "../../../kernel/model/laid.ts";
import { asFound, type Variant } from "../../../kernel/model/node.ts";
import { type ParsedShop, resolve } from "../../../kernel/model/resolve.ts";
import type { Bench } from "./bench.ts";
import { workedOff } from "./slices.ts";
import type { Laid, Tried } from "./view.ts";

export interface ColumnReply {
  readonly checks: readonly CheckChange[];
  /** Only those that move. */
  readonly figures: readonly FigureChange[];
  /** Null where no option says any. */
  readonly cost: string | null;
  readonly hours: string | null;
  /** Options laid on, with those they build on. */
  readonly options: readonly Laid[];
  /** What this variant makes wrong in the files: options that meet, values that cannot be read. */
  readonly mistakes: readonly string[];
}

interface Found {
  readonly trial: Trial;
  readonly figures: Readonly<Record<string, FigureAnswer>>;
}
/** The shop as found and what was compared with it, while files and edits stay; which options are laid on does not matter. */
let held: { readonly shop: ParsedShop; readonly key: string; base: Found | null; readonly replies: Map<string, ColumnReply> } | null = null;

async function tried(bench: Bench, variant: Variant): Promise<Found | null> {
  const evaluation = bench.evaluated(variant, "full");
  return (await workedOff(bench, evaluation)) ? { trial: trialOf(evaluation), figures: figureAnswers(evaluation) } : null;
}

/** Null when what is looked at changed while it was being worked out. */
export async function column(
  bench: Bench,
  of: { readonly options: readonly Laid[]; readonly tries: readonly Tried[] },
): Promise<ColumnReply | null> {
  const prepared = bench.prepared();
  const key = JSON.stringify([prepared.found, bench.view.units]);
  if (held?.shop !== prepared.shop || held.key !== key) held = { shop: prepared.shop, key, base: null, replies: new Map() };
  const state = held;
  const name = JSON.stringify(of);
  const known = state.replies.get(name);
  if (known) return known;
  const base = (state.base ??= await tried(bench, prepared.found));
  if (base === null) return null;
  const reply = await against(bench, prepared, base, of);
  // Of values on a slider only the last is looked at again.
  if (reply !== null && of.tries.length === 0) state.replies.set(name, reply);
  return reply;
}

type Prepared = ReturnType<Bench["prepared"]>;

async function against(
  bench: Bench,
  prepared: Prepared,
  base: Found,
  of: { readonly options: readonly Laid[]; readonly tries: readonly Tried[] },
): Promise<ColumnReply | null> {
  const { model } = base.trial.evaluation.graph;
  const options = withNeeds(model.options, of.options);
  const variant: Variant = { options, tries: [...prepared.found.tries, ...of.tries] };
  const isFound = options.length === 0 && of.tries.length === 0;
  const now = isFound ? base : await tried(bench, variant);
  if (now === null) return null;
  const files = model.options.filter((f) => options.some((o) => o.machine === f.machine && o.name === f.name));
  const bill = billOf(files);
  const system = systemOf(model);
  const known = new Set(model.findings.map((f) => f.says));
  return {
    checks: checksAgainst(base.trial, now.trial),
    figures: figuresAgainst(base.figures, now.figures),
    cost: bill.cost === null ? null : show(bill.cost, "money", system).text,
    hours: bill.hours === null ? null : show(bill.hours, "long-time", system).text,
    options,
    mistakes: now.trial.evaluation.graph.model.findings.filter((f) => f.severity === "error" && !known.has(f.says)).map((f) => f.says),
  };
}

/** What options would change in the files, value by value. */
export function changes(bench: Bench, of: { readonly options: readonly Laid[] }): readonly OptionChange[] {
  const { shop, found: variant } = bench.prepared();
  const model = resolve(shop, bench.house.keys, variant);
  return changesOf(shop, model, withNeeds(model.options, of.options));
}

/** Options of a machine of which no room reads a word yet, by name. */
export function unread(bench: Bench, of: { readonly machine: string }): readonly string[] {
  const { shop } = bench.prepared();
  const { options } = resolve(shop, bench.house.keys, asFound);
  return options.filter((o) => o.machine === of.machine && isUnread(shop, o)).map(({ name }) => name);
}
