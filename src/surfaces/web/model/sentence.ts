// The one sentence over a page, made from verdicts and never from free text. Words between asterisks are the ones that decide.
import type { CheckAnswer, DeciderAnswer } from "../../../kernel/answer.ts";
import type { Verdict } from "../../../kernel/verdict.ts";
import { counted, listed, spelled } from "./numbers.ts";

export type Counts = Readonly<Record<Verdict, number>>;

export function countsOf(checks: readonly { readonly verdict: Verdict }[]): Counts {
  const counts = { fails: 0, open: 0, tight: 0, holds: 0 };
  for (const { verdict } of checks) counts[verdict] += 1;
  return counts;
}

/** An option with the failing checks that it would cure. */
interface Cure {
  readonly name: string;
  readonly cures: number;
}

interface Told {
  readonly checks: readonly CheckAnswer[];
  /** Options tried out, null while that is still being done. */
  readonly cures: readonly Cure[] | null;
  readonly measureNext: readonly (DeciderAnswer & { readonly checks: readonly string[] })[];
}

const lower = (word: string): string => word.charAt(0).toLowerCase() + word.slice(1);

/** The answer to "can this machine run here?". */
export function marginsSentence({ checks, cures, measureNext }: Told): string {
  if (checks.length === 0) return "Nothing is written yet that could be checked. Start with the supply and the plate of the spindle motor.";
  return [verdictSentence(countsOf(checks)), nextSentence(countsOf(checks), cures, measureNext)].filter((s) => s !== "").join(" ");
}

export function verdictSentence(counts: Counts): string {
  const { fails, open, tight, holds } = counts;
  const all = fails + open + tight + holds;
  if (fails > 0 && open > 0)
    return `${spelled(fails)} ${fails === 1 ? "check *fails*" : "checks *fail*"} and ${lower(spelled(open))} ${open === 1 ? "stays" : "stay"} *open*.`;
  if (fails > 0) return `${spelled(fails)} of ${counted(all, "check")} ${fails === 1 ? "*fails*" : "*fail*"}, nothing stays open.`;
  if (open > 0) return `Nothing fails, ${lower(spelled(open))} of ${counted(all, "check")} ${open === 1 ? "stays" : "stay"} *open*.`;
  if (tight > 0) return `All ${counted(all, "check")} *hold*, ${lower(spelled(tight))} of them *tight*.`;
  return `All ${counted(all, "check")} *hold*.`;
}

function nextSentence({ fails, open }: Counts, cures: Told["cures"], measureNext: Told["measureNext"]): string {
  const best = cures?.toSorted((a, b) => b.cures - a.cures)[0];
  const settled = new Set(measureNext.flatMap((m) => m.checks)).size;
  const parts = [
    ...(fails > 0 && best && best.cures > 0
      ? [
          `option ${best.name} cures ${best.cures === fails ? (fails === 1 ? "it" : "all of them") : `${lower(spelled(best.cures))} of the failures`}`,
        ]
      : []),
    ...(open > 0 && measureNext.length > 0
      ? [
          `${lower(counted(measureNext.length, "answer").replace(/^\d+/, (n) => spelled(Number(n))))} ${measureNext.length === 1 ? "decides" : "decide"} ${settled === open ? (open === 1 ? "it" : "all of the open ones") : `${lower(spelled(settled))} of the open ones`}`,
        ]
      : []),
  ];
  const text = parts.join("; ");
  return text === "" ? "" : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** What waits in the whole shop: machines first. */
export function shopSentence(machines: readonly { readonly name: string; readonly counts: Counts }[], mistakes: number): string {
  const failing = machines.filter((m) => m.counts.fails > 0);
  const said =
    machines.length === 0
      ? "No machine is entered yet."
      : failing.length === 0
        ? `Nothing *fails* on ${listed(machines.map((m) => m.name))}.`
        : `${listed(failing.map((m) => `${m.name} has ${lower(spelled(m.counts.fails))} ${m.counts.fails === 1 ? "check" : "checks"} that *${m.counts.fails === 1 ? "fails" : "fail"}*`))}.`;
  const wrong =
    mistakes === 0
      ? ""
      : ` ${spelled(mistakes)} ${mistakes === 1 ? "mistake" : "mistakes"} in the files ${mistakes === 1 ? "waits" : "wait"} to be put right.`;
  return said + wrong;
}
