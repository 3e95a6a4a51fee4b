// The page that `compare` prints.
import type { Finding } from "../../kernel/finding.ts";
import { show } from "../../kernel/display.ts";
import { outcomeText } from "./verdict-words.ts";
import type { Bill } from "../../kernel/model/laid.ts";
import type { Compared, Comparison } from "./comparison.ts";
import { addFindings } from "./findings-text.ts";
import { type Page, pageFor, quantity, type Terminal, toned } from "./terminal.ts";
import { counted, listed, padEnd, table } from "./text.ts";

/** A name longer than this pushes its line out alone. */
const longestName = 28;

export function comparePage(t: Terminal, c: Comparison, findings: readonly Finding[]): Page {
  const page = pageFor(t);
  addFindings(
    page,
    t,
    findings.filter((f) => f.severity === "error"),
  );
  page.gap();
  for (const one of c.compared) addOption(page, t, one, c);
  page.gap();
  if (c.changed.length === 0) page.say("No verdict and no margin changes.");
  const names = ["as found", ...c.compared.map((o) => o.name)];
  const width = Math.min(longestName, Math.max(...names.map((n) => n.length)));
  for (const check of c.changed) {
    page.say(`${check.asks} ${toned(t, check.address, "quiet")}`, "", "  ");
    addLine(page, "as found", width, check.asFound ? outcomeText(t, check.asFound) : "is not asked");
    for (const o of c.compared) {
      const found = o.checks.get(check.address);
      const text = found?.outcome ? outcomeText(t, found.outcome) : "is not asked";
      const paired = found?.betterIn === null || found?.betterIn === undefined ? "" : `; better in ${found.betterIn} of 100 imagined shops`;
      addLine(page, o.name, width, text + paired);
    }
  }
  page.gap();
  page.say(`${counted(c.unchanged, "check")} ${c.unchanged === 1 ? "stays" : "stay"} as found.`);
  for (const o of c.compared) addFigures(page, t, o);
  return page;
}

function addLine(page: Page, name: string, width: number, text: string): void {
  page.say(text, `  ${padEnd(name, width)}  `, " ".repeat(width + 4));
}

function addOption(page: Page, t: Terminal, o: Compared, c: Comparison): void {
  const what = o.options.map((x) => x.title).join("; ");
  page.say(`${toned(t, o.name, "strong")}: ${what}. ${billText(o.bill, c)}`, "", "  ");
}

function billText(bill: Bill, c: Comparison): string {
  const { units, pressure, currency } = c.answer.show;
  const cost = bill.cost === null ? null : show(bill.cost, "money", { units, pressure, currency }).text;
  const hours = bill.hours === null ? null : show(bill.hours, "long-time", { units }).text;
  const said = [cost, hours === null ? null : `${hours} of own work`].filter((x) => x !== null);
  const silent = bill.silent.length === 0 ? "" : `${said.length === 0 ? "" : "; "}no cost written for ${listed(bill.silent)}`;
  return `${said.length === 0 ? "" : listed(said)}${silent}.`;
}

function addFigures(page: Page, t: Terminal, o: Compared): void {
  if (o.figures.length === 0) return;
  page.gap();
  page.say(`Figures that change most with ${o.name}`);
  const rows = o.figures.map((f) => [
    f.symbol,
    quantity(t, f.from),
    quantity(t, f.to),
    typeof f.ratio === "number" ? `x ${Number(f.ratio.toPrecision(2))}` : "",
    `${f.says} (${f.address})`,
  ]);
  page.add(
    ...table(
      [{ head: "" }, { head: "as found", right: true }, { head: "then", right: true }, { head: "" }, { head: "" }],
      rows,
      t.width,
      "  ",
    ),
  );
}
