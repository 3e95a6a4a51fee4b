// waywright work: any single figure from values given on the line, with no shop folder.
import { existsSync, readFileSync, statSync } from "node:fs";
import { resolve } from "node:path";
import type { System } from "../../kernel/display.ts";
import { nearest } from "../../kernel/nearest.ts";
import { fieldsOf, workable } from "../../kernel/work.ts";
import { waywright } from "../../rooms/index.ts";
import type { Given } from "./arguments.ts";
import type { Status } from "./checked.ts";
import { json } from "./json.ts";
import { Misuse } from "./misuse.ts";
import { readingsOf } from "./readings.ts";
import { pageFor, print, quantity, type Terminal, toned } from "./terminal.ts";
import { table } from "./text.ts";
import { isFailure, workedOut } from "./work-answer.ts";
import { answerCases } from "./work-cases.ts";
import { addWorking } from "./working-text.ts";

type Workable = ReturnType<typeof workable>[number];

export function work(given: Given, t: Terminal, cwd: string): Status {
  const cases = given.value("cases");
  if (given.has("list")) return list(given, t);
  if (cases !== undefined) {
    if (given.words.length > 0)
      throw new Misuse("argument-extra", `--cases takes its values from the file; "${given.words[0]}" is one too many`);
    t.out(json(answerCases(waywright, textIn(cases, cwd), cases)));
    return 0;
  }
  const [figure, ...rest] = given.words;
  if (figure === undefined) throw new Misuse("argument-missing", "which figure? waywright work --list names them all");
  const system: System = { units: given.value("units") === "inch" ? "inch" : "metric" };
  const answer = workedOut(waywright, figure, valuesOf(rest, cwd), system, given.value("in"));
  if (isFailure(answer)) {
    if (given.has("json")) t.out(json({ figure, error: answer }));
    else refuse(t, figure, answer);
    return 2;
  }
  const { worked, text } = answer;
  if (given.has("json")) {
    t.out(json({ ...text, working: worked.working }));
    return 0;
  }
  const page = pageFor(t);
  addWorking(page, t, worked.working, true);
  if (given.has("in")) page.say(`${worked.working.symbol || "value"} = ${text.text}`, "  ", "    ");
  print(t, page);
  return 0;
}

/** The mistake in a sentence; below it what the figure takes, since that is what one asks next. */
function refuse(t: Terminal, id: string, error: { readonly code: string; readonly message: string; readonly nearest?: string }): void {
  const page = pageFor(t);
  page.say(`${error.code}: ${error.message}${error.nearest === undefined ? "" : `; nearest: ${error.nearest}`}`, "", "  ");
  const figure = workable(waywright).find((f) => f.id === id);
  if (figure && (error.code === "needs-missing" || error.code === "name-unknown")) addFields(page.lines, t, figure);
  t.err(`${page.lines.join("\n")}\n`);
}

/** name=value pairs; @file.csv:column reads the value from a table. */
export function valuesOf(words: readonly string[], cwd: string): Record<string, string> {
  const values: Record<string, string> = Object.create(null) as Record<string, string>;
  for (const word of words) {
    const at = word.indexOf("=");
    const name = word.slice(0, Math.max(0, at)).trim();
    if (name === "") throw new Misuse("argument-bad", `"${word}" is no name=value; put quotes around a value with blanks: length="18 m"`);
    if (Object.hasOwn(values, name)) throw new Misuse("argument-extra", `${name} is given twice`);
    const value = word.slice(at + 1).trim();
    if (value === "") throw new Misuse("argument-missing", `${name} has no value; leave it out, or write ${name}=unknown`);
    values[name] = value.startsWith("@") ? fromTable(value.slice(1), cwd) : value;
  }
  return values;
}

function fromTable(text: string, cwd: string): string {
  const colon = text.lastIndexOf(":");
  const isWhole = colon < 0 || existsSync(resolve(cwd, text));
  const file = isWhole ? text : text.slice(0, colon);
  return readingsOf(textIn(file, cwd), file, isWhole ? undefined : text.slice(colon + 1));
}

/** A table of readings, or cases, of a person or a script has far less. */
const largest = 20_000_000;

function textIn(file: string, cwd: string): string {
  const path = resolve(cwd, file);
  const stat = statSync(path, { throwIfNoEntry: false });
  if (!stat?.isFile()) throw new Misuse("file-missing", `there is no file ${file}`);
  if (stat.size > largest) throw new Misuse("file-bad", `${file} is larger than ${largest / 1e6} MB`);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(readFileSync(path));
  } catch {
    throw new Misuse("file-bad", `${file} is no text in UTF-8, or cannot be read`);
  }
}

const symbolOf = (f: Workable): string => ("symbol" in f ? f.symbol : "");
const unitOf = (f: Workable): string => ("unit" in f ? (f.unit ?? "") : "");

function list(given: Given, t: Terminal): Status {
  const [word = "", extra] = given.words;
  if (extra !== undefined) throw new Misuse("argument-extra", `--list takes one word; "${extra}" is one too many`);
  const all = workable(waywright).toSorted((a, b) => (a.id < b.id ? -1 : 1));
  const wanted = word.toLowerCase();
  const found = all.filter((f) => [f.id, f.says, symbolOf(f)].some((s) => s.toLowerCase().includes(wanted)));
  if (given.has("json")) {
    const kind = (f: Workable): string | null => ("kind" in f ? (f.kind ?? null) : null);
    t.out(json(found.map((f) => ({ id: f.id, symbol: symbolOf(f), unit: unitOf(f), kind: kind(f), says: f.says, needs: fieldsOf(f) }))));
    return 0;
  }
  const page = pageFor(t);
  if (found.length === 0) {
    const near = nearest(
      word,
      all.flatMap((f) => [f.id, ...f.id.split(/[.-]/)]),
    );
    page.say(`no figure has "${word}" in its name${near === undefined ? "" : `; nearest: ${near}`}`);
  }
  for (const f of found) {
    page.say(
      `${toned(t, f.id, "strong")}  ${[symbolOf(f), unitOf(f) === "" ? "" : `[${quantity(t, unitOf(f))}]`].filter(Boolean).join(" ")}  ${f.says}`,
      "",
      "  ",
    );
    addFields(page.lines, t, f);
  }
  print(t, page);
  return 0;
}

/** Names a figure takes: as in its formula, and as in the files; its unit or words; what stands in when it is left out. */
function addFields(lines: string[], t: Terminal, f: Workable): void {
  const rows = fieldsOf(f).map((n) => {
    const takes = n.words.length > 0 ? n.words.join(", ") : n.unit === "1" ? "" : quantity(t, n.unit);
    const stands = n.typical !== null ? `else ${n.typical}` : n.optional ? "may be left out" : n.form === "figure" ? "else worked out" : "";
    return [n.name, n.id, takes, [n.says, stands].filter(Boolean).join("; ")];
  });
  lines.push(...table([{ head: "" }, { head: "" }, { head: "" }, { head: "" }], rows, t.width, "    "));
}
