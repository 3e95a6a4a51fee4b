// waywright compare: options against the machine as found, over the same imagined shops.
import { type Answer, type Num, num } from "../../kernel/answer.ts";
import { asFound, type OptionFile, type Variant } from "../../kernel/model/node.ts";
import { readQuantity } from "../../kernel/quantity.ts";
import type { Study } from "../../kernel/study.ts";
import { type Judged, judge } from "../../kernel/verdict.ts";
import type { Given } from "./arguments.ts";
import type { Status } from "./checked.ts";
import type { Bill, Comparison, FigureChange } from "./comparison.ts";
import { comparePage } from "./compare-text.ts";
import { type Outcome, outcomeOf } from "./cures.ts";
import { allFindings, concerns, type Desk, hasError, openDesk, optionsNamed, studyOf, withNeeds } from "./desk.ts";
import { json } from "./json.ts";
import { Misuse } from "./misuse.ts";
import { betterIn } from "./paired.ts";
import { print, type Terminal } from "./terminal.ts";

export function compare(given: Given, t: Terminal, cwd: string): Status {
  const desk = openDesk(given, cwd);
  if (desk.words.length === 0) {
    const names = desk.options.filter((o) => concerns(desk, o.machine)).map((o) => o.name);
    throw new Misuse(
      "argument-missing",
      `which options? ${names.length === 0 ? "There are none in this shop" : `There are ${names.join(", ")}`}`,
      names,
    );
  }
  const base = studyOf(desk, asFound);
  const studies = desk.words.map((name) => {
    const options = withNeeds(desk, optionsNamed(desk, [name]));
    const variant: Variant = { options, tries: [] };
    return { name, study: studyOf(desk, variant, base), options };
  });
  const findings = allFindings(desk, [...base.answer.findings, ...studies.flatMap((s) => s.study.answer.findings)]);
  const once = findings.filter((f, i) => findings.findIndex((g) => JSON.stringify(g) === JSON.stringify(f)) === i);
  const comparison = compared(desk, base, studies);
  if (given.has("json")) t.out(json({ ...comparison, answer: undefined, findings: once }));
  else print(t, comparePage(t, comparison, once));
  return hasError(once) ? 2 : 0;
}

/** A margin or a figure that moves less than this share has not changed: limits of bands are no better known. */
const sameWithin = 0.005;

const isSame = (a: Num, b: Num): boolean =>
  typeof a === "number" && typeof b === "number"
    ? Math.abs(a - b) <= sameWithin * Math.max(Math.abs(a), Math.abs(b))
    : JSON.stringify(a) === JSON.stringify(b);

const isSameOutcome = (a: Outcome, b: Outcome): boolean =>
  a.verdict === b.verdict && (["nominal", "low", "high"] as const).every((k) => isSame(a.margin[k], b.margin[k]));

type Laid = Variant["options"];

function compared(desk: Desk, base: Study, studies: readonly { name: string; study: Study; options: Laid }[]): Comparison {
  const of = (s: Study): Map<string, Judged> =>
    new Map(
      judge(s.evaluation)
        .filter((j) => concerns(desk, j.cell.item.root))
        .map((j) => [j.cell.address, j]),
    );
  const found = of(base);
  const with_ = studies.map((s) => of(s.study));
  const order = [...base.answer.checks.map((c) => c.address), ...with_.flatMap((m) => [...m.keys()])];
  const all = [...new Set(order)].filter((a) => found.has(a) || with_.some((m) => m.has(a)));
  const isChanged = (address: string, j: Judged | undefined): boolean => {
    const was = found.get(address);
    if (!was || !j) return was !== j;
    return !isSameOutcome(outcomeOf(was), outcomeOf(j));
  };
  const changed = all.filter((a) => with_.some((m) => isChanged(a, m.get(a))));
  return {
    answer: base.answer,
    changed: changed.map((address) => {
      const was = found.get(address);
      const asks = (was ?? with_.map((m) => m.get(address)).find((j) => j !== undefined))?.cell.decl.asks ?? "";
      return { address, asks, asFound: was ? outcomeOf(was) : null };
    }),
    unchanged: all.length - changed.length,
    compared: studies.map(({ name, study, options }, i) => ({
      name,
      options: options.map((o) => ({ ...o, title: fileOf(desk, o)?.title ?? o.name })),
      bill: billOf(options.flatMap((o) => fileOf(desk, o) ?? [])),
      checks: new Map(
        changed.map((address) => {
          const [was, now] = [found.get(address), with_[i]?.get(address)];
          return [
            address,
            { outcome: now ? outcomeOf(now) : null, betterIn: was && now ? betterIn(base.evaluation, was, study.evaluation, now) : null },
          ];
        }),
      ),
      figures: figuresChanged(desk, base.answer, study.answer),
    })),
  };
}

const fileOf = (desk: Desk, o: Laid[number]): OptionFile | undefined =>
  desk.options.find((f) => f.machine === o.machine && f.name === o.name);

/** Money and time add up where they can be read; what says nothing is named. */
export function billOf(files: readonly OptionFile[]): Bill {
  const total = (texts: readonly (string | null)[], kind: "money" | "long-time"): number | null =>
    texts.reduce<number | null>((sum, text) => {
      const read = text === null ? null : readQuantity(text, kind);
      return read?.ok ? (sum ?? 0) + read.nominal : sum;
    }, null);
  return {
    cost: total(
      files.map((f) => f.cost),
      "money",
    ),
    hours: total(
      files.map((f) => f.hours),
      "long-time",
    ),
    silent: files.filter((f) => f.cost === null).map((f) => f.name),
  };
}

/** As many figures are shown; the rest moves less. */
const mostFigures = 8;

function figuresChanged(desk: Desk, before: Answer, after: Answer): FigureChange[] {
  const moved: (FigureChange & { by: number })[] = [];
  for (const [address, now] of Object.entries(after.figures)) {
    const was = before.figures[address];
    const root = address.slice(0, address.indexOf("/"));
    if (!was || !concerns(desk, root)) continue;
    const [a, b] = [was.amount.nominal, now.amount.nominal];
    if (isSame(a, b)) continue;
    const ratio = typeof a === "number" && typeof b === "number" && a !== 0 ? b / a : Number.NaN;
    // Halving weighs as much as doubling; from nothing or to nothing weighs most.
    const by = ratio > 0 ? Math.abs(Math.log(ratio)) : Infinity;
    moved.push({
      address,
      symbol: now.symbol,
      says: now.says,
      from: was.amount.text,
      to: now.amount.text,
      ratio: num(ratio, "from nothing"),
      by,
    });
  }
  return moved
    .toSorted((a, b) => b.by - a.by || (a.address < b.address ? -1 : 1))
    .slice(0, mostFigures)
    .map(({ by: _by, ...rest }) => rest);
}
