// The page that `compare` prints: as found and every option side by side, below one another where that is too wide.
import { show } from "../../kernel/display.ts";
import type { Finding } from "../../kernel/finding.ts";
import type { Bill } from "../../kernel/model/laid.ts";
import { aboutOf } from "./check-words.ts";
import type { Changed, Comparison } from "./comparison.ts";
import { addFindingsBrief } from "./findings-text.ts";
import { type Page, pageFor, quantity, type Terminal, toned } from "./terminal.ts";
import { counted, listed, padEnd, widthOf } from "./text.ts";
import { outcomeText, shapeText, shapesText } from "./verdict-words.ts";

/** One question or figure with a cell for each variant, as found first; `better` counts imagined shops. */
interface Row {
  readonly says: string;
  readonly cells: readonly string[];
  readonly better: readonly string[];
}

export function comparePage(t: Terminal, c: Comparison, findings: readonly Finding[], all = false): Page {
  const page = pageFor(t);
  addFindingsBrief(page, t, findings);
  page.gap();
  for (const o of c.compared) page.say(`${toned(t, o.name, "strong")}: ${o.options.map((x) => x.title).join("; ")}.`, "", "  ");
  page.gap();
  const names = ["as found", ...c.compared.map((o) => o.name)];
  const costs = ["cost, own work", ...c.compared.map((o) => billText(o.bill, c))];
  const shown = c.changed.filter((row) => all || !holdsThroughout(row, c));
  const groups = alike(shown, c, all);
  const figures = figureRows(t, c);
  const rowsWith = (text: typeof outcomeText): Row[] => groups.map((g) => checkRow(t, g, c, text));
  const full = rowsWith(outcomeText);
  const short = rowsWith(shapeText);
  const others = [...figures.flatMap((f) => f.cells), ...names, ...costs];
  const fits = (rows: readonly Row[]): boolean =>
    Math.max(...[...rows.flatMap((r) => [...r.cells, ...r.better]), ...others].map(widthOf)) <= columnWidth(t, names.length);
  const rows = fits(full) ? full : fits(short) ? short : null;
  const lay = rows ? sideBySide(page, t) : below(page, names);
  if (rows) {
    page.add(`  ${toned(t, cellsText(t, names), "strong")}`);
    lay({ says: "", cells: costs, better: [] });
  } else for (const [i, o] of c.compared.entries()) page.say(`${o.name}: ${costs[i + 1] ?? ""}`, "  ", "    ");
  if (rows === short) page.say(`shapes: ${shapesText(t)}`, "  ");
  page.gap();
  if (c.changed.length === 0) page.say("No verdict and no margin changes.");
  for (const row of rows ?? full) lay(row);
  const still = c.changed.length - shown.length;
  page.gap();
  if (still > 0)
    page.say(
      `${counted(still, "check")} more ${still === 1 ? "holds" : "hold"} in every column, with another margin; --all shows ${still === 1 ? "it" : "them"}.`,
    );
  page.say(
    `${counted(c.unchanged, "check")} ${c.unchanged === 1 ? "stays" : "stay"} as found${c.stillFailing > 0 ? `, of which ${c.stillFailing} ${c.stillFailing === 1 ? "fails" : "fail"}` : ""}.`,
  );
  if (full.some((r) => r.better.length > 0)) page.say("better in: how many of 100 imagined shops have a larger margin than as found.");
  if (figures.length === 0) return page;
  page.gap();
  page.say(toned(t, "Figures that change most", "strong"));
  figures.forEach(lay);
  return page;
}

const outcomesOf = (row: Changed, c: Comparison) => [row.asFound, ...c.compared.map((o) => o.checks.get(row.address)?.outcome ?? null)];
const holdsThroughout = (row: Changed, c: Comparison): boolean => outcomesOf(row, c).every((o) => o?.verdict === "holds");

type Group = readonly [Changed, ...Changed[]];

/** One question about several things of a machine that goes the same way everywhere: the worst, and the names of the rest. */
function alike(rows: readonly Changed[], c: Comparison, all: boolean): Group[] {
  const groups = new Map<string, Group>();
  for (const row of rows) {
    const verdicts = outcomesOf(row, c).map((o) => o?.verdict ?? "none");
    const key = all || row.thing === "" ? row.address : [row.root, row.id, ...verdicts].join(" ");
    const [first, ...more] = groups.get(key) ?? [row];
    groups.set(key, first === row ? [row] : [first, ...more, row]);
  }
  return [...groups.values()];
}

function checkRow(t: Terminal, [row, ...more]: Group, c: Comparison, text: typeof outcomeText): Row {
  const better = c.compared.map((o) => o.checks.get(row.address)?.betterIn ?? null);
  const likewise = more.length === 0 ? "" : ` Likewise ${listed(more.map((m) => m.thing))}.`;
  return {
    says: `${aboutOf(row)}: ${row.asks}${likewise}`,
    cells: outcomesOf(row, c).map((o) => (o ? text(t, o) : "not asked")),
    better: better.every((n) => n === null) ? [] : ["", ...better.map((n) => (n === null ? "" : `better in ${n} of 100`))],
  };
}

function figureRows(t: Terminal, c: Comparison): Row[] {
  const all = new Map(c.compared.flatMap((o) => o.figures.map((f) => [f.address, f])));
  return [...all.values()].map(({ address, says, symbol }) => ({
    says: `${says}${symbol === "" ? "" : `, ${symbol}`} ${toned(t, `(${address})`, "quiet")}`,
    cells: [c.answer.figures[address], ...c.compared.map((o) => o.amounts[address])].map((f) =>
      f && !(typeof f.amount.nominal === "object" && "refused" in f.amount.nominal) ? quantity(t, f.amount.text) : "not known",
    ),
    better: [],
  }));
}

const columnWidth = (t: Terminal, n: number): number => Math.floor((t.width - 2 - 2 * (n - 1)) / n);

const cellsText = (t: Terminal, cells: readonly string[]): string =>
  cells
    .map((cell) => padEnd(cell, columnWidth(t, cells.length)))
    .join("  ")
    .trimEnd();

const sideBySide =
  (page: Page, t: Terminal) =>
  ({ says, cells, better }: Row): void => {
    if (says !== "") page.say(says, "", "  ");
    page.add(`  ${cellsText(t, cells)}`);
    if (better.length > 0) page.add(`  ${toned(t, cellsText(t, better), "quiet")}`);
  };

/** A name longer than this pushes its line out alone. */
const longestName = 28;

const below = (page: Page, names: readonly string[]) => {
  const width = Math.min(longestName, Math.max(...names.map(widthOf)));
  return ({ says, cells, better }: Row): void => {
    page.say(says, "", "  ");
    cells.forEach((cell, i) => {
      const paired = better[i] ?? "";
      page.say(`${cell}${paired === "" ? "" : `; ${paired}`}`, `  ${padEnd(names[i] ?? "", width)}  `, " ".repeat(width + 4));
    });
  };
};

function billText({ cost, hours, silent }: Bill, c: Comparison): string {
  const { units, pressure, currency } = c.answer.show;
  const money =
    cost === null ? "not written" : `${silent.length > 0 ? "at least " : ""}${show(cost, "money", { units, pressure, currency }).text}`;
  return hours === null ? money : `${money}, ${show(hours, "long-time", { units }).text}`;
}
