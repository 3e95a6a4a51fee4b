// waywright explain: the working of a figure, an input or both sides of a check, opened as far down as wanted.
import type { Evaluation } from "../../kernel/evaluate.ts";
import { type Working, working } from "../../kernel/working.ts";
import { namesOf, oneNamed } from "./addresses.ts";
import { type Given, wholeNumber } from "./arguments.ts";
import { addCheckDetail } from "./check-detail.ts";
import type { Status } from "./checked.ts";
import { curesOf } from "./cures.ts";
import { allFindings, hasError, openDesk, studyOf, variantGiven } from "./desk.ts";
import { addFindings } from "./findings-text.ts";
import { json } from "./json.ts";
import { Misuse } from "./misuse.ts";
import { pageFor, print, type Terminal } from "./terminal.ts";
import { addWorking } from "./working-text.ts";

/** A chain of figures is never deeper. */
const deepest = 50;

export function explain(given: Given, t: Terminal, cwd: string): Status {
  const depth = wholeNumber("--depth", given.value("depth") ?? "0", 0, deepest);
  const desk = openDesk(given, cwd);
  const word = desk.words.join(" ");
  if (word === "")
    throw new Misuse("argument-missing", "explain what? A figure, an address or a check: waywright explain lathe/supply.run.length");
  const variant = variantGiven(desk, given);
  const { answer, evaluation } = studyOf(desk, variant, { figures: false });
  const findings = allFindings(desk, answer.findings);
  const named = oneNamed(word, namesOf(evaluation.graph), desk.machine);
  const check = answer.checks.find((c) => c.address === named.address) ?? null;
  const tops = check ? [check.demand, check.capacity].flatMap((s) => s?.address ?? []) : [named.address];
  const workings = opened(evaluation, tops, depth);
  const isBad = check?.verdict === "fails" || check?.verdict === "open";
  const cures =
    check && isBad && desk.mode !== "quick" ? curesOf(desk, variant, answer, evaluation, [check]).get(check.address) : undefined;
  if (given.has("json")) t.out(json({ check, cures: cures ?? null, findings, workings }));
  else {
    const warned = pageFor(t);
    addFindings(
      warned,
      t,
      findings.filter((f) => f.severity === "error"),
    );
    if (warned.lines.length > 0) t.err(`${warned.lines.join("\n")}\n`);
    const page = pageFor(t);
    if (check) addCheckDetail(page, t, check, answer, cures);
    for (const w of workings) {
      page.gap();
      addWorking(page, t, w);
    }
    print(t, page);
  }
  return hasError(findings) ? 2 : check?.verdict === "fails" ? 1 : 0;
}

/** Workings of some addresses and of what they need, level by level, each once; inputs below the top stand in the tables. */
export function opened(e: Evaluation, tops: readonly string[], depth: number): Working[] {
  const seen = new Set<string>();
  const found: Working[] = [];
  let level = tops;
  for (let n = 0; n <= depth && level.length > 0; n += 1) {
    const next: string[] = [];
    for (const address of level) {
      if (seen.has(address)) continue;
      seen.add(address);
      const w = working(e, address);
      if (!w) continue;
      found.push(w);
      for (const need of w.needs) if (need.address !== null && need.is !== "input" && need.is !== "missing") next.push(need.address);
    }
    level = next;
  }
  return found;
}
