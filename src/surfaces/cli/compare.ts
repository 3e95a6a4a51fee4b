// waywright compare: options against the machine as found, over the same imagined shops.
import type { Answer } from "../../kernel/answer.ts";
import { type CheckChange, checksAgainst, type FigureChange, figuresAgainst, trialOf } from "../../kernel/compare.ts";
import { billOf, withNeeds } from "../../kernel/model/laid.ts";
import { asFound, type OptionFile, type Variant } from "../../kernel/model/node.ts";
import type { Study } from "../../kernel/study.ts";
import type { Given } from "./arguments.ts";
import type { Status } from "./checked.ts";
import type { Comparison } from "./comparison.ts";
import { comparePage } from "./compare-text.ts";
import { allFindings, concerns, type Desk, hasError, openDesk, optionsNamed, studyOf } from "./desk.ts";
import { json } from "./json.ts";
import { Misuse } from "./misuse.ts";
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
    const options = withNeeds(desk.options, optionsNamed(desk, [name]));
    const variant: Variant = { options, tries: [] };
    return { name, study: studyOf(desk, variant, { before: base }), options };
  });
  const findings = allFindings(desk, [...base.answer.findings, ...studies.flatMap((s) => s.study.answer.findings)]);
  const once = findings.filter((f, i) => findings.findIndex((g) => JSON.stringify(g) === JSON.stringify(f)) === i);
  const comparison = compared(desk, base, studies);
  if (given.has("json"))
    t.out(
      json({ ...comparison, compared: comparison.compared.map((o) => ({ ...o, amounts: undefined })), answer: undefined, findings: once }),
    );
  else print(t, comparePage(t, comparison, once, given.has("all")));
  return hasError(once) ? 2 : 0;
}

type Laid = Variant["options"];

/** As many figures are shown of each option; the rest moves less. */
const mostFigures = 4;

function compared(desk: Desk, base: Study, studies: readonly { name: string; study: Study; options: Laid }[]): Comparison {
  const found = trialOf(base.evaluation);
  const rank = new Map(base.answer.checks.map((c, i) => [c.address, i]));
  const isOurs = (c: { address: string }): boolean => concerns(desk, c.address.slice(0, c.address.indexOf("/")));
  const each = studies.map(
    (s) => new Map(checksAgainst(found, trialOf(s.study.evaluation)).flatMap((c) => (isOurs(c) ? [[c.address, c]] : []))),
  );
  const all = [...new Map(each.flatMap((checks) => [...checks])).values()];
  const place = (c: CheckChange): number => rank.get(c.address) ?? rank.size;
  const changed = all.filter((c) => each.some((checks) => checks.get(c.address)?.isChanged)).toSorted((a, b) => place(a) - place(b));
  const answers = new Map([...studies.map((s) => s.study), base].flatMap((s) => s.answer.checks.map((c) => [c.address, c])));
  return {
    answer: base.answer,
    changed: changed.flatMap(({ address, was }) => {
      const c = answers.get(address);
      return c ? [{ address, id: c.id, room: c.room, root: c.root, thing: c.thing, asks: c.asks, asFound: was }] : [];
    }),
    unchanged: all.length - changed.length,
    stillFailing: all.filter((c) => c.was?.verdict === "fails" && !changed.includes(c)).length,
    compared: studies.map(({ name, study, options }, i) => ({
      name,
      options: options.map((o) => ({ ...o, title: fileOf(desk, o)?.title ?? o.name })),
      bill: billOf(options.flatMap((o) => fileOf(desk, o) ?? [])),
      checks: new Map(
        changed.map(({ address }) => {
          const change = each[i]?.get(address);
          return [address, { outcome: change?.now ?? null, betterIn: change?.betterIn ?? null }];
        }),
      ),
      figures: oneOfAKind(figuresAgainst(base.answer.figures, study.answer.figures).filter(isOurs), base.answer).slice(0, mostFigures),
      amounts: study.answer.figures,
    })),
  };
}

/** The figure of each kind that moves most: every cut has the same ones. */
function oneOfAKind(figures: readonly FigureChange[], { figures: found }: Answer): FigureChange[] {
  const seen = new Set<string>();
  return figures.filter(({ address }) => {
    const id = found[address]?.id ?? address;
    return !seen.has(id) && seen.add(id);
  });
}

const fileOf = (desk: Desk, o: Laid[number]): OptionFile | undefined =>
  desk.options.find((f) => f.machine === o.machine && f.name === o.name);
