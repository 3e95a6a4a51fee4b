// The working of one figure on the terminal: formula, numbers put in, needs with where each came from, what decides it.
import type { InputAnswer, OriginAnswer } from "../../kernel/answer.ts";
import type { NeedAnswer, Working } from "../../kernel/working.ts";
import { amountText } from "./check-text.ts";
import { type Page, quantity, type Terminal, toned } from "./terminal.ts";
import { table } from "./text.ts";

/** `plain`: figures stand alone, so no addresses are shown. */
export function addWorking(page: Page, t: Terminal, w: Working, plain = false): void {
  const name = plain ? w.id : w.address;
  page.say(`${toned(t, name, "strong")}: ${w.says}`, "", "  ");
  if (w.input) addInput(page, t, w.input);
  else addComputed(page, t, w);
  addShares(page, w, plain);
  if (w.assumes.length > 0) page.say(`assuming: ${w.assumes.join("; ")}`, "  ", "    ");
  if (!w.input && w.source !== "") page.say(`source: ${w.source}`, "  ", "    ");
  if (w.usedBy.length > 0) page.say(`used by: ${w.usedBy.join(", ")}`, "  ", "    ");
}

function addComputed(page: Page, t: Terminal, w: Working): void {
  const left = w.symbol === "" ? "value" : w.symbol;
  if (w.formula !== null) page.say(`${left} = ${w.formula}`, "  ", "      ");
  if (w.method !== null) page.say(`worked out by: ${w.method}`, "  ", "    ");
  if (w.numbers !== null && w.numbers !== w.formula) page.say(`${left} = ${quantity(t, w.numbers)}`, "  ", "      ");
  page.say(`${left} = ${w.amount ? amountText(t, w.amount) : "no single number"}${marks(w)}`, "  ", "      ");
  if (w.needs.length === 0) return;
  const heads = [{ head: "symbol" }, { head: "value" }, { head: "band" }, { head: "what, and where from" }];
  const rows = w.needs.map((n) => [n.name, quantity(t, n.text), quantity(t, n.band), `${n.says}; ${fromText(n)}`]);
  page.add(...table(heads, rows, t.width, "  "));
}

const marks = (w: Working): string =>
  `${w.estimated ? ", estimated, not simulated" : ""}${w.coarse ? ", from fewer samples than usual" : ""}`;

/** Where a need came from: an input says who said so, a figure where it stands. */
function fromText(n: NeedAnswer): string {
  if (n.origin)
    return `${originText(n.origin)}${n.address === null || n.origin.by === "given" || n.address.startsWith("bench/") ? "" : ` (${n.address})`}`;
  return n.address === null ? "missing" : n.address.replace(/^bench\//, "");
}

function originText(o: OriginAnswer): string {
  const place = o.place && o.place.file !== "" && o.by !== "line" ? `, ${o.place.file}:${o.place.line}` : "";
  return `${o.says}${o.by === "option" && o.name === "tried" ? "" : place}`;
}

function addInput(page: Page, t: Terminal, i: InputAnswer): void {
  page.say(
    `value: ${quantity(t, i.text)}${i.amount && i.amount.band !== "exact" ? `, reckoned as ${amountText(t, i.amount)}` : ""}`,
    "  ",
    "    ",
  );
  page.say(`from: ${originText(i.origin)}`, "  ", "    ");
  if (i.written !== null && i.written !== i.text) page.say(`written: ${i.written}`, "  ", "    ");
  for (const o of i.over) page.say(`lost against it: ${quantity(t, o.text)}, ${originText(o.origin)}`, "  ", "    ");
  if (i.words.length > 0) page.say(`words: ${i.words.join(", ")}`, "  ", "    ");
  if (i.required) page.say("never assumed: without it the checks that need it stay open", "  ", "    ");
  if (i.measure !== "") page.say(`how to find out: ${i.measure}`, "  ", "    ");
}

/** Shares below this say nothing worth a line. */
const worthALine = 0.02;

function addShares(page: Page, w: Working, plain: boolean): void {
  const worth = w.shares.filter((s) => s.share >= worthALine && s.address !== w.address);
  if (worth.length === 0) return;
  page.say("what decides its spread:", "  ");
  for (const s of worth) {
    const where = plain ? "" : ` (${s.address})`;
    page.say(`${s.says}${where}. ${s.measure}`, `  ${`${Math.round(s.share * 100)} %`.padStart(7)}  `);
  }
}
