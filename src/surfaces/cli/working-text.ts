// The working of one figure on the terminal: formula, numbers put in, needs with where each came from, what decides it.
import type { InputAnswer, OriginAnswer } from "../../kernel/answer.ts";
import type { NeedAnswer, Working } from "../../kernel/working.ts";
import { amountText } from "./amount-words.ts";
import { type Page, quantity, type Terminal, toned } from "./terminal.ts";
import { padEnd, table, widthOf } from "./text.ts";

/** `plain`: figures stand alone, so no addresses are shown. */
export function addWorking(page: Page, t: Terminal, w: Working, plain = false): void {
  const name = toned(t, plain ? w.id : w.address, "strong");
  if (!w.input && w.needs.length === 0 && w.amount) {
    page.say(`${name}: ${w.says}, ${amountText(t, w.amount)} (${w.source})`, "", "  ");
    return;
  }
  page.say(`${name}: ${w.says}`, "", "  ");
  if (w.input) addInput(page, t, w.input);
  else addComputed(page, t, w);
  addShares(page, w, plain);
  if (w.assumes.length > 0) page.say(`assuming: ${w.assumes.join("; ")}`, "  ", "    ");
  if (!w.input && w.source !== "") page.say(`source: ${w.source}`, "  ", "    ");
  if (w.usedBy.length > 0) page.say(`used by: ${usersText(w.usedBy)}`, "  ", "    ");
}

/** More users than this are counted by their last word: an input of every cut has dozens. */
const mostUsers = 6;

function usersText(addresses: readonly string[]): string {
  if (addresses.length <= mostUsers) return addresses.join(", ");
  const groups = new Map<string, string[]>();
  for (const address of addresses) {
    const key = `${address.split("/")[0] ?? ""} ${address.split(".").at(-1) ?? ""}`;
    groups.set(key, [...(groups.get(key) ?? []), address]);
  }
  return [...groups].map(([key, all]) => (all.length === 1 ? (all[0] ?? "") : `${all.length} of ${key}`)).join(", ");
}

function addComputed(page: Page, t: Terminal, w: Working): void {
  const left = w.symbol === "" ? "value" : w.symbol;
  if (w.formula !== null) page.say(`${left} = ${w.formula}`, "  ", "      ");
  if (w.method !== null) page.say(`worked out by: ${w.method}`, "  ", "    ");
  if (w.numbers !== null && w.numbers !== w.formula && w.numbers !== w.amount?.text)
    page.say(`${left} = ${quantity(t, w.numbers)}`, "  ", "      ");
  page.say(`${left} = ${w.amount ? amountText(t, w.amount) : "no single number"}${marks(w)}`, "  ", "      ");
  addNeeds(page, t, w.needs);
}

/** A symbol longer than this stands in its line like any word. */
const longestSymbol = 12;

function addNeeds(page: Page, t: Terminal, needs: readonly NeedAnswer[]): void {
  const [first] = needs;
  if (!first) return;
  page.say("from:", "  ");
  const isOneKind = needs.length > 1 && needs.every((n) => n.says === first.says && n.origin === null);
  if (isOneKind) {
    // Shares of a slot: one figure of many things, said once, and named by the thing.
    page.say(`of each ${first.says} (${first.address?.split(".").at(-1) ?? ""})`, "    ");
    page.add(
      ...table(
        [{ head: "" }, { head: "" }],
        needs.map((n) => [n.name, amountText(t, n)]),
        t.width,
        "    ",
      ),
    );
    return;
  }
  const wide = Math.max(...needs.map((n) => widthOf(n.name)).filter((n) => n <= longestSymbol), 0);
  const indent = "    ";
  for (const n of needs) {
    const isSymbol = widthOf(n.name) <= longestSymbol;
    const rest = isSymbol ? " ".repeat(indent.length + wide + 2) : `${indent}  `;
    page.say(`${amountText(t, n)}: ${n.says}; ${fromText(n)}`, `${indent}${padEnd(n.name, isSymbol ? wide : 0)}  `, rest);
  }
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

/** Shares below this say nothing worth a line, and no more than these are worth reading. */
const worthALine = 0.02;
const mostShares = 6;

function addShares(page: Page, w: Working, plain: boolean): void {
  const worth = w.shares.filter((s) => s.share >= worthALine && s.address !== w.address);
  if (worth.length === 0) return;
  page.say("what decides its spread:", "  ");
  for (const s of worth.slice(0, mostShares)) {
    const where = plain ? "" : ` (${s.address})`;
    page.say(`${s.says}${where}. ${s.measure}`, `  ${`${Math.round(s.share * 100)} %`.padStart(7)}  `);
  }
  if (worth.length > mostShares) page.say(`and ${worth.length - mostShares} more with less`, "           ");
}
