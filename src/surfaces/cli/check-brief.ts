// The checks of a room in brief: those that do not hold, each with why and what would change it; those that hold, counted.
import type { Answer, CheckAnswer } from "../../kernel/answer.ts";
import { amountBrief } from "./amount-words.ts";
import { aboutOf, nameOf } from "./check-words.ts";
import { byHarm, byWorth, type Cures, isWorse, type Tried } from "./cures.ts";
import { type Page, type Terminal, toned } from "./terminal.ts";
import { counted, listed, widthOf } from "./text.ts";
import { hasMargin, marginText, outcomeBrief, verdictText } from "./verdict-words.ts";

/** Lines below a check stand under its question, right of shape and word. */
export const under = " ".repeat("  x holds  ".length);

export interface Brief {
  readonly answer: Answer;
  /** Null where none were tried. */
  readonly cures: ReadonlyMap<string, Cures> | null;
  /** Number of a measurement in the list at the end, by its input. */
  readonly measureAt: ReadonlyMap<string, number>;
}

export function addRoomBrief(page: Page, t: Terminal, checks: readonly CheckAnswer[], b: Brief): void {
  const groups = alike(checks.filter((c) => c.verdict !== "holds")).map(([worst, ...more]) => ({
    worst,
    lines: [...linesUnder(t, worst, b), ...(more.length > 0 ? [likewise(more)] : [])],
  }));
  groups.forEach(({ worst, lines }, i) => {
    page.say(`${aboutOf(worst)}: ${worst.asks}`, `  ${verdictText(t, worst.verdict)}  `, under);
    // Checks that one answer settles stand together, and what is missing is said once.
    if (JSON.stringify(groups[i + 1]?.lines) === JSON.stringify(lines)) return;
    for (const line of lines) page.say(line, under, `${under}  `);
  });
  const held = checks.filter((c) => c.verdict === "holds").length;
  if (held > 0)
    page.say(toned(t, `${counted(held, "check")}; --all shows ${held === 1 ? "it" : "them"}`, "quiet"), `  ${verdictText(t, "holds")}  `);
}

type Group = readonly [CheckAnswer, ...CheckAnswer[]];

/** One question about several things of a machine (the cuts of its work), with one verdict: a group, the worst first as they come. */
function alike(checks: readonly CheckAnswer[]): Group[] {
  const groups = new Map<string, Group>();
  for (const c of checks) {
    const key = c.thing === "" ? c.address : [c.root, c.id, c.verdict].join(" ");
    const [first, ...more] = groups.get(key) ?? [c];
    groups.set(key, first === c ? [c] : [first, ...more, c]);
  }
  return [...groups.values()];
}

/** Of several alike, as many are named beside the worst. */
const mostNamed = 3;

function likewise(more: readonly CheckAnswer[]): string {
  const named = more.slice(0, mostNamed).map((c) => (hasMargin(c) ? `${c.thing} ${marginText(c)}` : c.thing));
  const rest = more.length - named.length;
  return `likewise ${listed([...named, ...(rest > 0 ? [`${rest} more`] : [])])}`;
}

function linesUnder(t: Terminal, c: CheckAnswer, b: Brief): string[] {
  const top = c.verdict === "open" ? c.deciders[0] : undefined;
  const number = top ? b.measureAt.get(top.input) : undefined;
  const isSaid = top?.says === c.because; // what is missing is what must be found out
  const why = whyText(t, c, b);
  const lines = why === "" ? [] : [isSaid && number !== undefined ? `${why}: see ${number} below` : why];
  if (top && !isSaid && number !== undefined) lines.push(`see ${number} below: ${top.says}${shareText(top.share)}`);
  return c.verdict === "tight" ? lines : [...lines, ...cureLines(t, c, b)];
}

const shareText = (share: number): string => (share >= 1 ? "" : `, ${Math.round(share * 100)} % of the spread`);

/** The numbers, and why there is no verdict where they do not say it. */
function whyText(t: Terminal, c: CheckAnswer, b: Brief): string {
  const reasons = c.reason === "rests-on" ? c.restsOn.map((r) => restText(r, c.root, b.answer)) : c.because === null ? [] : [c.because];
  // Where nothing is known yet, it was not judged in any way; that all of them are estimates is said at the top.
  const marks = c.reason === "incomplete" ? [] : marksOf(c.estimated && b.answer.mode === "quick" ? { ...c, estimated: false } : c);
  const rest = [...reasons, ...marks].join("; ");
  if (!hasMargin(c) || (c.yesNo && c.verdict === "open")) return rest;
  return numbersText(t, c, b.answer, rest === "" ? "" : `; ${rest}`);
}

/** `0.51 (0.37 to 0.59): wants 10.9 N·m (10.1 to 11.8), has 5.62 N·m (4.1 to 6.4)`, then `rest`; bands of the sides only where they fit. */
function numbersText(t: Terminal, c: CheckAnswer, answer: Answer, rest: string): string {
  const margin = marginText(c);
  if (c.yesNo || !c.demand || !c.capacity) return margin + rest;
  const [wants, has] = [c.demand, c.capacity].map((side) => amountBrief(t, side.amount, answer.show));
  if (!wants || !has) return margin + rest;
  const withBands = (demand: boolean, capacity: boolean): string =>
    `${margin}: wants ${demand ? wants : bare(wants)}, has ${capacity ? has : bare(has)}${rest}`;
  const texts = [withBands(true, true), withBands(false, true), withBands(false, false)];
  return texts.find((text) => widthOf(under + text) <= t.width) ?? withBands(false, false);
}

const bare = (amount: string): string => amount.replace(/ \([^)]*\)$/, "");

/** The window that a verdict rests on, and the check that ought to bear it out. */
export function restText({ says, guard }: CheckAnswer["restsOn"][number], root: string, answer: Answer): string {
  return `rests on ${says}${guard === null ? "" : `, which ${nameOf(answer, guard, root)} does not bear out`}`;
}

export const marksOf = (c: Pick<CheckAnswer, "people" | "near" | "estimated">): string[] =>
  [
    c.people ? "guards a person, judged at the worst" : "",
    c.near ? "near another verdict" : "",
    c.estimated ? "estimated, not simulated" : "",
  ].filter(Boolean);

/** As many cures are shown; --all shows the rest. */
const mostCures = 3;
/** As many remedies are named that cannot be tried out in numbers. */
const mostUntried = 2;

function cureLines(t: Terminal, c: CheckAnswer, b: Brief): string[] {
  const cures = b.cures?.get(c.address);
  const found = [
    ...(cures?.options ?? []).map((o) => ({ says: `option ${optionName(o, c.root)}:`, tried: o })),
    ...c.remedies.flatMap((r, i) => {
      const tried = cures?.remedies[i];
      return tried ? [{ says: `remedy: ${r.does}; then`, tried }] : [];
    }),
  ]
    .filter(({ tried }) => tried.better === true)
    .toSorted((x, y) => byWorth(x.tried, y.tried));
  const lifted = found.filter(({ tried }) => isWorse(c.verdict, tried.verdict));
  // A better number that leaves the verdict where it is counts only where nothing does more.
  const shown = lifted.length > 0 ? lifted : c.verdict === "fails" ? found : [];
  const lines = shown
    .slice(0, mostCures)
    .map(({ says, tried }) => `${says} ${outcomeBrief(t, tried)}${worsensText(tried, c.root, b.answer)}`);
  const untried = c.verdict === "fails" && lifted.length === 0 ? c.remedies.filter((_, i) => !cures?.remedies[i]) : [];
  if (untried.length === 0 || lines.length >= mostCures) return lines;
  return [
    ...lines,
    `${untried.length > 1 ? "remedies" : "remedy"}: ${untried
      .slice(0, mostUntried)
      .map((r) => r.does)
      .join("; ")}`,
  ];
}

/** Name of an option for somebody who looks at one machine. */
export const optionName = (o: { readonly machine: string; readonly name: string }, root: string): string =>
  o.machine === root ? o.name : `${o.machine}/${o.name}`;

function worsensText({ worsens }: Tried, root: string, answer: Answer): string {
  const [first, ...more] = worsens;
  if (!first) return "";
  return `, worsens ${more.length > 0 ? counted(worsens.length, "other") : nameOf(answer, first.address, root)}`;
}

/** As many of the harms of an option are told. */
const mostHarms = 3;

/** What the options that cure something do to other checks: once, since one option cures many. */
export function addSideEffects(page: Page, t: Terminal, { answer, cures }: Brief): void {
  const options = new Map(
    [...(cures?.values() ?? [])].flatMap((c) => c.options.filter((o) => o.better).map((o) => [`${o.machine}/${o.name}`, o])),
  );
  const harmful = [...options.values()].filter((o) => o.worsens.length > 0);
  if (harmful.length === 0) return;
  page.gap();
  page.say(toned(t, "What the options worsen", "strong"));
  for (const { machine, name, worsens } of harmful) {
    for (const h of worsens.toSorted(byHarm).slice(0, mostHarms)) {
      const was = answer.checks.find((c) => c.address === h.address);
      const before = was ? `${outcomeBrief(t, was)}, ` : "";
      page.say(`${name}: ${nameOf(answer, h.address, machine)} ${before}then ${outcomeBrief(t, h)}`, "  ", "    ");
    }
    if (worsens.length > mostHarms) page.say(`${name}: and ${worsens.length - mostHarms} more`, "  ");
  }
}
