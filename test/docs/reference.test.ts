// The generated parts of the documents stand as the declarations say. UPDATE_DOCS=1 writes them; a room that has none yet is written at once.
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { figuresSection, framesSection, keysSection, readmeSection, tabled } from "./reference.ts";

const root = new URL("../../", import.meta.url).pathname;
const isUpdating = process.env["UPDATE_DOCS"] === "1";
/** As with any kept answer: what is new is written where somebody works, and is a fault where a fresh copy is judged. */
const writesNew = process.env["CI"] === undefined;

const begin = (name: string): string => `<!-- generated: ${name} -->`;
const end = (name: string): string => `<!-- end: ${name} -->`;

/** The section of a document, or null where it has none. */
function sectionOf(text: string, name: string): string | null {
  const [from, to] = [text.indexOf(begin(name)), text.indexOf(end(name))];
  return from === -1 || to === -1 ? null : text.slice(from + begin(name).length, to).trim();
}

function withSection(text: string, name: string, body: string): string {
  const block = `${begin(name)}\n\n${body}\n\n${end(name)}`;
  const [from, to] = [text.indexOf(begin(name)), text.indexOf(end(name))];
  return from === -1 || to === -1 ? `${text.trimEnd()}\n\n${block}\n` : text.slice(0, from) + block + text.slice(to + end(name).length);
}

const documents: readonly (readonly [file: string, sections: Readonly<Record<string, string>>])[] = [
  ["docs/model.md", { "every shop": framesSection(), ...Object.fromEntries(tabled.map((r) => [r.name, keysSection(r)])) }],
  ["docs/figures.md", Object.fromEntries(tabled.filter((r) => r.figures.length > 0).map((r) => [r.name, figuresSection(r)]))],
  ...tabled.filter((r) => r.figures.length > 0).map((r) => [`src/rooms/${r.name}/README.md`, { figures: readmeSection(r) }] as const),
];

test.each(documents)("%s says what the declarations say", (file, sections) => {
  const path = root + file;
  expect(existsSync(path), `${file} is wanted, with the words that no declaration holds`).toBe(true);
  const kept = readFileSync(path, "utf8");
  let text = kept;
  for (const [name, body] of Object.entries(sections)) {
    if (isUpdating || (writesNew && sectionOf(text, name) === null)) text = withSection(text, name, body);
  }
  if (text !== kept) writeFileSync(path, text);
  const stale = Object.keys(sections).filter((name) => sectionOf(text, name) !== sections[name]);
  expect(stale, `${file} is out of date here: run UPDATE_DOCS=1 npm run test:unit -- test/docs, and look at what moved`).toEqual([]);
  const written = [...text.matchAll(/<!-- generated: (.*) -->/g)].map((m) => m[1] ?? "");
  expect(written.toSorted(), `${file} has a section of a room that is gone`).toEqual(Object.keys(sections).toSorted());
});

test("every room says which questions it answers", () => {
  const silent = tabled.filter((r) => r.figures.length > 0 && !readFileSync(`${root}src/rooms/${r.name}/README.md`, "utf8").includes("\n## Questions it answers\n"));
  expect(silent.map((r) => r.name)).toEqual([]);
});
