// waywright explain: the working of a figure, an input or both sides of a check, opened as far down as wanted.
import type { CheckAnswer } from "../../kernel/answer.ts";
import type { Evaluation } from "../../kernel/evaluate.ts";
import { type Working, working } from "../../kernel/working.ts";
import { namesOf, oneNamed } from "./addresses.ts";
import { type Given, wholeNumber } from "./arguments.ts";
import type { Status } from "./checked.ts";
import { allFindings, hasError, openDesk, studyOf, variantGiven } from "./desk.ts";
import { addFindings } from "./findings-text.ts";
import { json } from "./json.ts";
import { Misuse } from "./misuse.ts";
import { type Page, pageFor, print, type Terminal, toned } from "./terminal.ts";
import { marginText, verdictText } from "./verdict-words.ts";
import { addWorking } from "./working-text.ts";

/** A chain of figures is never deeper. */
const deepest = 50;

export function explain(given: Given, t: Terminal, cwd: string): Status {
  const depth = wholeNumber("--depth", given.value("depth") ?? "0", 0, deepest);
  const desk = openDesk(given, cwd);
  const [word, extra] = desk.words;
  if (word === undefined)
    throw new Misuse("argument-missing", "explain what? A figure, an address or a check: waywright explain lathe/supply.run.length");
  if (extra !== undefined) throw new Misuse("argument-extra", `explain takes one figure; "${extra}" is one too many`);
  const { answer, evaluation } = studyOf(desk, variantGiven(desk, given));
  const findings = allFindings(desk, answer.findings);
  const named = oneNamed(word, namesOf(evaluation.graph), desk.machine);
  const check = answer.checks.find((c) => c.address === named.address) ?? null;
  const tops = check ? [check.demand, check.capacity].flatMap((s) => s?.address ?? []) : [named.address];
  const workings = opened(evaluation, tops, depth);
  if (given.has("json")) t.out(json({ check, findings, workings }));
  else {
    const warned = pageFor(t);
    addFindings(
      warned,
      t,
      findings.filter((f) => f.severity === "error"),
    );
    if (warned.lines.length > 0) t.err(`${warned.lines.join("\n")}\n`);
    const page = pageFor(t);
    if (check) addQuestion(page, t, check);
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

function addQuestion(page: Page, t: Terminal, c: CheckAnswer): void {
  page.say(`${toned(t, c.address, "strong")}: ${c.asks}`, "", "  ");
  page.say(`${verdictText(t, c.verdict).trimEnd()}, ${marginText(c)}${c.yesNo ? "" : `; it holds from ${c.reserve} on`}`, "  ", "    ");
  if (c.because !== null) page.say(c.because, "  ", "    ");
  for (const r of c.restsOn) page.say(`rests on: ${r.says}, which ${r.guard} does not bear out`, "  ", "    ");
  for (const d of c.deciders)
    page.say(`measure: ${d.says}${d.input === d.says ? "" : ` (${d.input})`}, ${Math.round(d.share * 100)} %. ${d.measure}`, "  ", "    ");
  for (const r of c.remedies) page.say(`remedy: ${r.does}${r.costs === "" ? "" : ` (${r.costs})`}`, "  ", "    ");
}
