// waywright new: a shop folder from some twenty answers, checked at once.
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { createInterface } from "node:readline/promises";
import { parseDocument } from "yaml";
import { nearest } from "../../kernel/nearest.ts";
import { waywright } from "../../rooms/index.ts";
import type { Given } from "./arguments.ts";
import { cautionsOf } from "./cautions.ts";
import { type Checked, checkDesk, checkedJson, type Status } from "./checked.ts";
import { checkPage, tally } from "./check-text.ts";
import { aboutOf } from "./check-words.ts";
import { openDesk } from "./desk.ts";
import { json } from "./json.ts";
import { Misuse } from "./misuse.ts";
import { type Answers, filesOf, folderOf } from "./new-files.ts";
import { isDontKnow, mistakeIn, type Question, questions, wordsOf } from "./questions.ts";
import { type Page, pageFor, print, type Terminal, toned } from "./terminal.ts";
import { listed } from "./text.ts";
import { type FindOut, leftOpen } from "./visits.ts";

/** As many things are named to find out before money is spent. */
const firstThings = 3;

export async function newShop(given: Given, t: Terminal, cwd: string): Promise<Status> {
  if (given.has("questions")) {
    printQuestions(given, t);
    return 0;
  }
  const [word, extra] = given.words;
  if (word === undefined) throw new Misuse("argument-missing", "where? waywright new DIR");
  if (extra !== undefined) throw new Misuse("argument-extra", `new takes one folder; "${extra}" is one too many`);
  const folder = resolve(cwd, word);
  refuseTaken(folder);
  const from = given.value("from");
  const answers = from === undefined ? await ask(t) : answersIn(resolve(cwd, from), from);
  const files = filesOf(answers);
  write(folder, files);
  const desk = openDesk({ ...given, words: [folder], command: { ...given.command, takes: "[DIR]" } }, cwd);
  const checked = checkDesk(desk, { figures: given.has("json"), cures: true });
  const first = findOutFirst(checked, answers);
  const written = files.map((f) => f.path);
  if (given.has("json")) t.out(json({ ...(checkedJson(checked) as object), findOut: first, folder, written }));
  else {
    print(t, checkPage(t, checked, cautionsOf(waywright)));
    t.out("\n");
    print(t, summary(t, checked, first, `Wrote ${written.join(" and ")} in ${folder}`));
  }
  return checked.status;
}

function refuseTaken(folder: string): void {
  const stat = statSync(folder, { throwIfNoEntry: false });
  if (stat && !stat.isDirectory()) throw new Misuse("folder-taken", `${folder} is a file`);
  if (stat && readdirSync(folder).length > 0) throw new Misuse("folder-taken", `${folder} is not empty; nothing was written`);
}

function write(folder: string, files: ReturnType<typeof filesOf>): void {
  try {
    for (const { path, text } of files) {
      const place = join(folder, ...path.split("/"));
      mkdirSync(dirname(place), { recursive: true });
      writeFileSync(place, text, { flag: "wx" }); // never over a file that appeared meanwhile
    }
  } catch (error) {
    throw new Misuse("not-written", `${folder} could not be written: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** What was asked and not answered, by the place where it is found out; then what the checks still wait for. */
function findOutFirst({ answer }: Checked, answers: Answers): FindOut[] {
  const asked = new Set(questions.flatMap((q) => (q.at ? [`${q.at[0] === "shop" ? "shop" : folderOf(answers)}/${q.at[1]}`] : [])));
  const waitedFor = answer.measureNext
    .filter((m) => !asked.has(m.input))
    .map((m) => ({ where: m.says.replace(/ is not known$/, ""), what: m.measure === "" ? [] : [m.measure.replace(/\.$/, "")] }));
  return [...leftOpen(answers), ...waitedFor].slice(0, firstThings);
}

/** What fails already, and what to find out first. */
function summary(t: Terminal, { answer, counts }: Checked, first: readonly FindOut[], wrote: string): Page {
  const page = pageFor(t);
  page.say(`${wrote}: ${tally(counts)}.`);
  const fails = answer.checks.filter((c) => c.verdict === "fails");
  if (fails.length > 0) page.say(toned(t, "Fails already", "strong"));
  for (const c of fails) page.say(`${aboutOf(c)}: ${c.asks}`, "  ", "    ");
  if (first.length > 0) page.say(toned(t, "Find out before buying", "strong"));
  first.forEach(({ where, what }, i) => page.say(`${[where, listed(what)].filter(Boolean).join(": ")}.`, `  ${i + 1}. `));
  return page;
}

/** Asks until every answer can be taken. */
async function ask(t: Terminal): Promise<Answers> {
  if (!t.asks)
    throw new Misuse(
      "argument-missing",
      "nobody sits here to be asked; give the answers with --from FILE (waywright new --questions names them)",
    );
  const lines = createInterface({ input: process.stdin, output: process.stderr, prompt: "> " });
  // Lines wait in it until they are asked for, so that answers may be pasted all at once.
  const typed = lines[Symbol.asyncIterator]();
  const answers: Record<string, string> = {};
  try {
    t.err("Leave an answer empty when you don't know it.\n\n");
    for (const [i, q] of questions.entries()) {
      const page = pageFor(t);
      addQuestion(page, q, i);
      t.err(`${page.lines.join("\n")}\n`);
      for (;;) {
        lines.prompt();
        const { value: answer, done } = await typed.next();
        if (done === true) throw new Misuse("answer-bad", "the answers ended before the last question; nothing was written");
        const mistake = mistakeIn(q, answer, waywright.keys);
        if (!mistake) {
          if (!isDontKnow(answer)) answers[q.name] = answer.trim();
          break;
        }
        t.err(`${mistake.code}: ${mistake.says}\n`);
      }
    }
  } finally {
    lines.close();
  }
  return answers;
}

function addQuestion(page: Page, q: Question, i: number): void {
  page.say(q.asks, `${`${i + 1}.`.padEnd(4)}`);
  const words = q.form === "words" ? ` One of: ${wordsOf(q, waywright.keys).join(", ")}.` : ` Such as: ${q.example}.`;
  page.say(`${q.help}${words}`, "    ");
}

function printQuestions(given: Given, t: Terminal): void {
  if (given.has("json")) {
    t.out(
      json(
        questions.map((q) => ({
          name: q.name,
          asks: q.asks,
          help: q.help,
          example: q.example,
          words: q.form === "words" ? wordsOf(q, waywright.keys) : [],
        })),
      ),
    );
    return;
  }
  // The page is itself a file of answers, ready to be filled in.
  const page = pageFor(t);
  page.say("Answers for waywright new DIR --from FILE; leave out or write unknown what you don't know.", "# ", "# ");
  for (const q of questions) {
    page.gap();
    page.say(`${q.asks} ${q.help}`, "# ", "# ");
    if (q.form === "words") page.say(`One of: ${wordsOf(q, waywright.keys).join(", ")}.`, "# ", "# ");
    page.add(`${q.name}: unknown # ${q.example}`);
  }
  print(t, page);
}

const largest = 100_000;

/** Answers from a file, every mistake at once. */
function answersIn(path: string, file: string): Answers {
  if (!existsSync(path) || !statSync(path).isFile()) throw new Misuse("file-missing", `there is no file ${file}`);
  if (statSync(path).size > largest) throw new Misuse("file-bad", `${file} is larger than ${largest / 1000} kB`);
  const document = parseDocument(readFileSync(path, "utf8"), { schema: "failsafe", maxAliasCount: 0 } as object);
  const [wrong] = document.errors;
  if (wrong)
    throw new Misuse(
      "file-bad",
      `${file}:${wrong.linePos?.[0].line ?? 1}:${wrong.linePos?.[0].col ?? 1} ${wrong.message.split("\n")[0] ?? ""}`,
    );
  const map: unknown = document.toJS();
  if (typeof map !== "object" || map === null || Array.isArray(map))
    throw new Misuse("file-bad", `${file} must hold a map from names to answers; waywright new --questions names them`);
  const answers: Record<string, string> = Object.create(null) as Record<string, string>; // no prototype: any name is just a name
  const mistakes: string[] = [];
  for (const [name, value] of Object.entries(map)) {
    const q = questions.find((x) => x.name === name);
    if (!q) {
      const near = nearest(
        name,
        questions.map((x) => x.name),
      );
      mistakes.push(`${name} is no question${near === undefined ? "" : ` (nearest: ${near})`}`);
      continue;
    }
    const text = value === null || value === undefined ? "" : typeof value === "object" ? null : String(value);
    const mistake = text === null ? { says: "one value is wanted" } : mistakeIn(q, text, waywright.keys);
    if (mistake) mistakes.push(`${name}: ${mistake.says}`);
    else answers[name] = text ?? "";
  }
  if (mistakes.length > 0) throw new Misuse("answer-bad", `${file}: ${mistakes.join("; ")}`, mistakes);
  return answers;
}
