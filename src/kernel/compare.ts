// One variant of a shop against another: which verdicts change and which figures, over the same imagined shops.
import { type CheckAnswer, type FigureAnswer, num, type Num } from "./answer.ts";
import type { Evaluation } from "./evaluate.ts";
import { itemAddress } from "./item.ts";
import { betterIn } from "./paired.ts";
import { judge, type Judged, type Verdict } from "./verdict.ts";

/** What a check says, without the numbers behind it. */
export interface Outcome {
  readonly verdict: Verdict;
  readonly margin: CheckAnswer["margin"];
  readonly yesNo: boolean;
}

export const outcomeOf = (j: Judged): Outcome => ({
  verdict: j.verdict,
  margin: { nominal: num(j.margin.nominal), low: num(j.margin.low), high: num(j.margin.high) },
  yesNo: j.cell.decl.yesNo ?? false,
});

/** A variant judged, without the answers around it. */
export interface Trial {
  readonly evaluation: Evaluation;
  readonly judged: ReadonlyMap<string, Judged>;
}

export function trialOf(evaluation: Evaluation): Trial {
  return { evaluation, judged: new Map(judge(evaluation).map((j) => [j.cell.address, j])) };
}

/** A margin or a figure that moves less than this share has not changed: limits of bands are no better known. */
const sameWithin = 0.005;

function isSame(a: Num, b: Num): boolean {
  return typeof a === "number" && typeof b === "number"
    ? Math.abs(a - b) <= sameWithin * Math.max(Math.abs(a), Math.abs(b))
    : JSON.stringify(a) === JSON.stringify(b);
}

function isSameOutcome(a: Outcome, b: Outcome): boolean {
  return a.verdict === b.verdict && (["nominal", "low", "high"] as const).every((k) => isSame(a.margin[k], b.margin[k]));
}

/** One check in both variants; null where it is not asked. */
export interface CheckChange {
  readonly address: string;
  readonly asks: string;
  /** Address of the thing it is about. */
  readonly item: string;
  readonly was: Outcome | null;
  readonly now: Outcome | null;
  readonly isChanged: boolean;
  /** In how many of 100 imagined shops the margin is the larger one now; null where that cannot be said. */
  readonly betterIn: number | null;
}

/** Every check of the two, those of the first first. */
export function checksAgainst(before: Trial, after: Trial): CheckChange[] {
  const addresses = new Set([...before.judged.keys(), ...after.judged.keys()]);
  return [...addresses].flatMap((address): CheckChange[] => {
    const [a, b] = [before.judged.get(address), after.judged.get(address)];
    const cell = (a ?? b)?.cell;
    if (!cell) return [];
    const [was, now] = [a ? outcomeOf(a) : null, b ? outcomeOf(b) : null];
    return [
      {
        address,
        asks: cell.decl.asks,
        item: itemAddress(cell.item),
        was,
        now,
        isChanged: was && now ? !isSameOutcome(was, now) : was !== now,
        betterIn: a && b ? betterIn(before.evaluation, a, after.evaluation, b) : null,
      },
    ];
  });
}

export interface FigureChange {
  readonly address: string;
  readonly symbol: string;
  readonly says: string;
  readonly from: string;
  readonly to: string;
  /** To over from. */
  readonly ratio: Num;
}

type Figures = Readonly<Record<string, FigureAnswer>>;

/** Figures that are there in both and move, those that move most first: halving weighs as much as doubling, from nothing or to nothing most. */
export function figuresAgainst(before: Figures, after: Figures): FigureChange[] {
  const moved: (FigureChange & { by: number })[] = [];
  for (const [address, now] of Object.entries(after)) {
    const was = before[address];
    if (!was) continue;
    const [a, b] = [was.amount.nominal, now.amount.nominal];
    if (isSame(a, b)) continue;
    const ratio = typeof a === "number" && typeof b === "number" && a !== 0 ? b / a : Number.NaN;
    const by = ratio > 0 ? Math.abs(Math.log(ratio)) : Infinity;
    const { symbol, says } = now;
    moved.push({ address, symbol, says, from: was.amount.text, to: now.amount.text, ratio: num(ratio, "from nothing"), by });
  }
  return moved.toSorted((a, b) => b.by - a.by || (a.address < b.address ? -1 : 1)).map(({ by: _by, ...rest }) => rest);
}
