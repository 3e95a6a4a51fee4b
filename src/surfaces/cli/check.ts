// waywright check: every check of the shop, worst first, with what would change it and what to measure next.
import type { Answer } from "../../kernel/answer.ts";
import type { Finding } from "../../kernel/finding.ts";
import { asFound, type Variant } from "../../kernel/model/node.ts";
import type { Verdict } from "../../kernel/verdict.ts";
import { waywright } from "../../rooms/index.ts";
import type { Given } from "./arguments.ts";
import { cautionsOf } from "./cautions.ts";
import { checkPage } from "./check-text.ts";
import { type Cures, curesOf } from "./cures.ts";
import { allFindings, concerns, type Desk, hasError, openDesk, studyOf, variantGiven } from "./desk.ts";
import { json } from "./json.ts";
import { print, type Terminal } from "./terminal.ts";

export type Status = 0 | 1 | 2;

export interface Checked {
  readonly answer: Answer;
  readonly findings: readonly Finding[];
  readonly cures: ReadonlyMap<string, Cures>;
  readonly counts: Readonly<Record<Verdict, number>>;
  readonly status: Status;
}

export function check(given: Given, t: Terminal, cwd: string): Status {
  const desk = openDesk(given, cwd);
  const checked = checkDesk(desk, variantGiven(desk, given));
  if (given.has("json")) t.out(json(checkedJson(checked)));
  else print(t, checkPage(t, checked, cautionsOf(waywright)));
  return checked.status;
}

/** Everything that `check` prints, before it is worded. */
export function checkDesk(desk: Desk, variant: Variant = asFound): Checked {
  const { answer: whole, evaluation } = studyOf(desk, variant);
  const answer = ofMachine(desk, whole);
  const findings = allFindings(desk, whole.findings);
  const counts = { fails: 0, open: 0, tight: 0, holds: 0 };
  for (const c of answer.checks) counts[c.verdict] += 1;
  const status = hasError(findings) ? 2 : counts.fails > 0 ? 1 : 0;
  return { answer, findings, cures: curesOf(desk, variant, answer, evaluation), counts, status };
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
  cures,
  counts,
  status,
});
