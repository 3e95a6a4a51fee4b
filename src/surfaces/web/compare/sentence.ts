// The sentence over a comparison: which column does most, and at what price. Words between asterisks are the ones that decide.
import type { CheckChange } from "../../../kernel/compare.ts";
import { counted, listed, spelled } from "../model/numbers.ts";

export interface Told {
  readonly name: string;
  readonly checks: readonly CheckChange[];
  readonly cost: string | null;
  readonly hours: string | null;
}

interface Score {
  readonly told: Told;
  readonly cures: number;
  readonly breaks: number;
}

const isEnough = (verdict: string | undefined): boolean => verdict === "holds" || verdict === "tight";
const lower = (word: string): string => word.charAt(0).toLowerCase() + word.slice(1);

function scoreOf(told: Told): Score {
  const cures = told.checks.filter(
    (c) => c.was?.verdict === "fails" && c.now?.verdict !== "fails" && (c.now === null || isEnough(c.now.verdict)),
  );
  const breaks = told.checks.filter((c) => c.now?.verdict === "fails" && c.was?.verdict !== "fails");
  return { told, cures: cures.length, breaks: breaks.length };
}

/** The answer to "which of these?". `found` are the checks as found. */
export function compareSentence(found: readonly CheckChange[], columns: readonly Told[]): string {
  const fails = found.filter((c) => c.was?.verdict === "fails").length;
  if (columns.length === 0) return "No option is laid beside the machine as found. Choose some, or try values out.";
  const scores = columns.map(scoreOf).toSorted((a, b) => b.cures - a.cures || a.breaks - b.breaks);
  const [best] = scores;
  if (!best) return "";
  if (fails === 0) {
    const bad = scores.filter((s) => s.breaks > 0).map((s) => `*${s.told.name}*`);
    return bad.length === 0
      ? "Nothing *fails* as found, and nothing would fail in any column."
      : `Nothing *fails* as found; ${listed(bad)} would make something fail.`;
  }
  const open = `${spelled(fails)} ${fails === 1 ? "check *fails*" : "checks *fail*"} as found`;
  if (best.cures === 0) return `${open}, and none of these columns cures ${fails === 1 ? "it" : "one of them"}.`;
  const all = best.cures === fails ? (fails === 1 ? "it" : "all of them") : `${lower(spelled(best.cures))} of them`;
  const brings = best.breaks === 0 ? "" : ` and makes ${counted(best.breaks, "other check")} fail`;
  const price = [best.told.cost, best.told.hours === null ? null : `${best.told.hours} of own work`].filter((text) => text !== null);
  const others = scores.filter((s) => s !== best && s.cures > 0).length;
  const rest = columns.length === 1 ? "" : others === 0 ? "; no other column cures any" : "";
  return `${open}: *${best.told.name}* cures ${all}${brings}${price.length === 0 ? "" : `, for ${listed(price)}`}${rest}.`;
}
