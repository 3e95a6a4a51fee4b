// What would change a check that fails or is open: its remedies laid over, and the shop's own options, each with the verdict it would bring and what it harms.
import type { Answer, CheckAnswer } from "../../kernel/answer.ts";
import { type Outcome, outcomeOf } from "../../kernel/compare.ts";
import type { Evaluation } from "../../kernel/evaluate.ts";
import { isUnread, triesOf, withNeeds } from "../../kernel/model/laid.ts";
import type { Variant } from "../../kernel/model/node.ts";
import type { Verdict } from "../../kernel/verdict.ts";
import { type Desk, hasError, type Trial, tryOut } from "./desk.ts";

export interface Tried extends Outcome {
  /** Against the check as it stands: better, worse, or neither (null). */
  readonly better: boolean | null;
  /** Other checks whose verdict gets worse. */
  readonly worsens: readonly Harm[];
}
interface Harm extends Outcome {
  readonly address: string;
}

export interface Cures {
  /** In the order of the check's remedies; null where a remedy cannot be laid over. */
  readonly remedies: readonly (Tried | null)[];
  /** Options that move the check, best first. */
  readonly options: readonly (Tried & { readonly machine: string; readonly name: string })[];
}

/** Best first: what is better than what. */
const rank: readonly Verdict[] = ["holds", "tight", "open", "fails"];
export const isWorse = (now: Verdict, was: Verdict): boolean => rank.indexOf(now) > rank.indexOf(was);

/** A margin that moves less than this share is no cure and no harm. */
const worthSaying = 0.05;

const numberOf = (x: CheckAnswer["margin"]["nominal"]): number => (typeof x === "number" ? x : "never" in x ? Infinity : Number.NaN);

/** Whether one outcome is better than another (true), worse (false), or as good as the same (null). */
export function isBetter(a: Outcome, than: Outcome): boolean | null {
  if (a.verdict !== than.verdict) return isWorse(than.verdict, a.verdict);
  const [x, y] = [numberOf(a.margin.nominal), numberOf(than.margin.nominal)];
  if (x === y || Number.isNaN(x) || Number.isNaN(y)) return null;
  if (Number.isFinite(x) && Number.isFinite(y) && Math.abs(x - y) <= worthSaying * Math.abs(y)) return null;
  return x > y;
}

/** The worst verdict first, then the smaller margin. */
export const byHarm = (a: Outcome, b: Outcome): number =>
  rank.indexOf(b.verdict) - rank.indexOf(a.verdict) || numberOf(a.margin.nominal) - numberOf(b.margin.nominal) || 0;

/** Orders what was tried: the best verdict first, then what harms least, then the larger margin. */
export const byWorth = (a: Tried, b: Tried): number =>
  rank.indexOf(a.verdict) - rank.indexOf(b.verdict) ||
  a.worsens.length - b.worsens.length ||
  (isBetter(a, b) === true ? -1 : isBetter(b, a) === true ? 1 : 0);

/** Cures of some checks by address; `answer` is the whole one, for what else they change. Each option is evaluated once. */
export function curesOf(
  desk: Desk,
  variant: Variant,
  answer: Answer,
  before: Evaluation,
  checks: readonly CheckAnswer[],
): Map<string, Cures> {
  const was = new Map(answer.checks.map((c) => [c.address, c.verdict]));
  const tryVariant = (tried: Variant): Made => {
    const trial = tryOut(desk, tried, before);
    // A check that nobody asked before and that fails at once is a harm too.
    const harms = [...trial.judged].flatMap(([address, j]): Harm[] =>
      isWorse(j.verdict, was.get(address) ?? "open") ? [{ address, ...outcomeOf(j) }] : [],
    );
    return { trial, harms };
  };
  const roots = new Set(checks.map((c) => c.root));
  const laid = (o: { machine: string; name: string }): boolean => variant.options.some((l) => l.machine === o.machine && l.name === o.name);
  const options = desk.options
    // What stands at the shop may be changed by an option of any machine.
    .filter((o) => (roots.has(o.machine) || roots.has("shop")) && !laid(o) && !isUnread(desk.parsed, o))
    .map(({ machine, name }) => ({
      machine,
      name,
      made: tryVariant({ ...variant, options: withNeeds(desk.options, [...variant.options, { machine, name }]) }),
    }));
  // Two checks of one thing often share a remedy.
  const remedied = new Map<string, Made>();
  const remedyTried = (c: CheckAnswer, lay: Readonly<Record<string, string>>): Tried | null => {
    const tries = triesOf(c.item, lay);
    const key = JSON.stringify(tries);
    const made = remedied.get(key) ?? tryVariant({ ...variant, tries: [...variant.tries, ...tries] });
    remedied.set(key, made);
    return hasError(made.trial.findings.filter((f) => f.place.file === "tried")) ? null : triedOn(c, made);
  };
  return new Map(
    checks.map((c) => {
      const moved = options.flatMap(({ machine, name, made }) => {
        const tried = triedOn(c, made);
        return tried && tried.better !== null ? [{ machine, name, ...tried }] : [];
      });
      const remedies = c.remedies.map((r) => (r.lay === null ? null : remedyTried(c, r.lay)));
      return [c.address, { remedies, options: moved.toSorted(byWorth) }];
    }),
  );
}

/** A variant tried out, with all checks that it makes worse. */
interface Made {
  readonly trial: Trial;
  readonly harms: readonly Harm[];
}

function triedOn(c: CheckAnswer, { trial, harms }: Made): Tried | null {
  const j = trial.judged.get(c.address);
  if (!j) return null;
  const outcome = outcomeOf(j);
  return { ...outcome, better: isBetter(outcome, c), worsens: harms.filter((h) => h.address !== c.address) };
}
