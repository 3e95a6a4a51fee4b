// What would change a check that does not hold: its remedies laid over, and the shop's own options, each with the verdict it would bring.
import type { Answer, CheckAnswer } from "../../kernel/answer.ts";
import { type Outcome, outcomeOf } from "../../kernel/compare.ts";
import type { Evaluation } from "../../kernel/evaluate.ts";
import { isUnread, triesOf, withNeeds } from "../../kernel/model/laid.ts";
import type { Variant } from "../../kernel/model/node.ts";
import type { Verdict } from "../../kernel/verdict.ts";
import { type Desk, hasError, type Trial, tryOut } from "./desk.ts";

export interface Cures {
  /** In the order of the check's remedies; null where a remedy cannot be laid over. */
  readonly remedies: readonly (Outcome | null)[];
  readonly options: readonly (Outcome & { readonly machine: string; readonly name: string; readonly better: boolean })[];
}

/** Best first: what is better than what. */
const rank: readonly Verdict[] = ["holds", "tight", "open", "fails"];
/** A margin that moves less than this share is no cure and no harm. */
const worthSaying = 0.05;

const numberOf = (x: CheckAnswer["margin"]["nominal"]): number => (typeof x === "number" ? x : "never" in x ? Infinity : Number.NaN);

/** Whether one outcome is better than another (true), worse (false), or as good as the same (null). */
export function isBetter(a: Outcome, than: Outcome): boolean | null {
  if (a.verdict !== than.verdict) return rank.indexOf(a.verdict) < rank.indexOf(than.verdict);
  const [x, y] = [numberOf(a.margin.nominal), numberOf(than.margin.nominal)];
  if (x === y || Number.isNaN(x) || Number.isNaN(y)) return null;
  if (Number.isFinite(x) && Number.isFinite(y) && Math.abs(x - y) <= worthSaying * Math.abs(y)) return null;
  return x > y;
}

/** Cures of every check that does not hold, by its address. Each option is evaluated once. */
export function curesOf(desk: Desk, variant: Variant, answer: Answer, before: Evaluation): Map<string, Cures> {
  const bad = answer.checks.filter((c) => c.verdict !== "holds");
  const machines = new Set(bad.map((c) => c.root));
  const laid = (machine: string, name: string): boolean => variant.options.some((o) => o.machine === machine && o.name === name);
  const trials: { machine: string; name: string; trial: Trial }[] = [];
  for (const o of desk.options) {
    // What stands at the shop may be changed by an option of any machine.
    if (!(machines.has(o.machine) || machines.has("shop")) || laid(o.machine, o.name) || isUnread(desk.parsed, o)) continue;
    const trial = tryOut(
      desk,
      { ...variant, options: withNeeds(desk.options, [...variant.options, { machine: o.machine, name: o.name }]) },
      before,
    );
    trials.push({ machine: o.machine, name: o.name, trial });
  }
  // Two checks of one thing often share a remedy.
  const remedied = new Map<string, Trial>();
  const cures = new Map<string, Cures>();
  for (const c of bad) {
    const remedies = c.remedies.map((r): Outcome | null => {
      if (r.lay === null) return null;
      const tries = triesOf(c.item, r.lay);
      const key = JSON.stringify(tries);
      const trial = remedied.get(key) ?? tryOut(desk, { ...variant, tries: [...variant.tries, ...tries] }, before);
      remedied.set(key, trial);
      const j = trial.judged.get(c.address);
      return j === undefined || hasError(trial.findings.filter((f) => f.place.file === "tried")) ? null : outcomeOf(j);
    });
    const options = trials.flatMap(({ machine, name, trial }) => {
      const j = trial.judged.get(c.address);
      const outcome = j && outcomeOf(j);
      const better = outcome && isBetter(outcome, c);
      return outcome && typeof better === "boolean" ? [{ machine, name, ...outcome, better }] : [];
    });
    cures.set(c.address, { remedies, options: options.toSorted((a, b) => Number(b.better) - Number(a.better)) });
  }
  return cures;
}
