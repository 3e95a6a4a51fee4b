// A shop checked: the answer with what would change each check, before it is worded.
import type { Answer } from "../../kernel/answer.ts";
import type { Finding } from "../../kernel/finding.ts";
import { asFound, type Variant } from "../../kernel/model/node.ts";
import type { Verdict } from "../../kernel/verdict.ts";
import { type Cures, curesOf } from "./cures.ts";
import { allFindings, concerns, type Desk, hasError, studyOf } from "./desk.ts";

/** Exit status: 0 nothing fails, 1 a check fails, 2 bad input or usage. */
export type Status = 0 | 1 | 2;

export interface Checked {
  readonly answer: Answer;
  readonly findings: readonly Finding[];
  /** Null where none were tried. */
  readonly cures: ReadonlyMap<string, Cures> | null;
  readonly counts: Readonly<Record<Verdict, number>>;
  readonly status: Status;
}

/** What is wanted besides the checks; both cost time. */
export interface Wants {
  readonly figures: boolean;
  /** Each trial is an evaluation of the whole shop; none is tried where simulations are left out. */
  readonly cures: boolean;
}

export function checkDesk(desk: Desk, wants: Wants, variant: Variant = asFound): Checked {
  const { answer: whole, evaluation } = studyOf(desk, variant, { figures: wants.figures });
  const answer = ofMachine(desk, whole);
  const findings = allFindings(desk, whole.findings);
  const counts = { fails: 0, open: 0, tight: 0, holds: 0 };
  for (const c of answer.checks) counts[c.verdict] += 1;
  const status = hasError(findings) ? 2 : counts.fails > 0 ? 1 : 0;
  const bad = answer.checks.filter((c) => c.verdict === "fails" || c.verdict === "open");
  const cures = wants.cures && desk.mode !== "quick" ? curesOf(desk, variant, whole, evaluation, bad) : null;
  return { answer, findings, cures, counts, status };
}

/** What concerns the machine that was named; everything when none was. */
function ofMachine(desk: Desk, answer: Answer): Answer {
  const checks = answer.checks.filter((c) => concerns(desk, c.root));
  const addresses = new Set(checks.map((c) => c.address));
  const measureNext = answer.measureNext
    .map((m) => ({ ...m, checks: m.checks.filter((c) => addresses.has(c)) }))
    .filter((m) => m.checks.length > 0);
  return { ...answer, checks, measureNext, notices: answer.notices.filter((n) => concerns(desk, n.root)) };
}

export const checkedJson = ({ answer, findings, cures, counts, status }: Checked): unknown => ({
  ...answer,
  findings,
  cures: cures ?? {},
  counts,
  status,
});
