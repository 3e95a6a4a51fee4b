// The documents as data: fenced blocks with what stands behind their fence, and the small shell that their commands need.
import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { parse, stringify } from "yaml";
import type { Terminal } from "../../src/surfaces/cli/terminal.ts";
import { run } from "../../src/surfaces/cli/run.ts";

export const root = new URL("../../", import.meta.url).pathname;
export const pages = [
  "README.md",
  ...["model", "figures", "command-line", "architecture", "decisions", "how-a-figure-is-added", "how-a-room-is-added"].map((p) => `docs/${p}.md`),
  "CHANGELOG.md",
];
export const textOf = (page: string): string => readFileSync(join(root, page), "utf8");

export interface Block {
  readonly language: string;
  /** What stands behind the language: a file name, and perhaps `+` for "added to it". */
  readonly words: readonly string[];
  readonly text: string;
}

export function blocksOf(page: string): Block[] {
  return [...textOf(page).matchAll(/^```(\w+)(?: ([^\n]*))?\n([\s\S]*?)^```$/gm)].map(([, language = "", words = "", text = ""]) => ({
    language,
    words: words.split(" ").filter((w) => w !== ""),
    text,
  }));
}

/** Lays the YAML of a page into a folder, file by file; `+` merges into what the page wrote before. */
export function layFiles(blocks: readonly Block[], folder: string): void {
  for (const { language, words, text } of blocks) {
    const [file, more] = words;
    if (language !== "yaml" || file === undefined) continue;
    const path = join(folder, file);
    mkdirSync(dirname(path), { recursive: true });
    const whole = more === "+" && existsSync(path) ? stringify(merged(parse(readFileSync(path, "utf8")), parse(text))) : text;
    writeFileSync(path, whole);
  }
}

const isMap = (x: unknown): x is Record<string, unknown> => typeof x === "object" && x !== null && !Array.isArray(x);
function merged(a: unknown, b: unknown): unknown {
  if (!isMap(a) || !isMap(b)) return b;
  return { ...a, ...Object.fromEntries(Object.entries(b).map(([key, value]) => [key, merged(a[key], value)])) };
}

/** A folder with the example in it, as a reader of the page would have it. */
export function layExample(folder: string): void {
  cpSync(join(root, "examples"), join(folder, "examples"), { recursive: true });
}

/** The words of a command line; quotes hold blanks together. */
export function wordsOf(line: string): string[] {
  return [...line.matchAll(/(?:"[^"]*"|'[^']*'|[^\s"'])+/g)].map(([word]) => word.replaceAll(/["']/g, ""));
}

interface Told {
  readonly command: string;
  readonly output: string;
}
/** Commands of a console block with what they print. */
export function toldIn(block: Block): Told[] {
  const parts = block.text.split(/^\$ /m).slice(1);
  return parts.map((part) => {
    const end = part.indexOf("\n");
    return { command: part.slice(0, end), output: part.slice(end + 1) };
  });
}

/** Runs the words of one command in a folder. */
export async function ran(words: readonly string[], folder: string): Promise<{ status: number; text: string }> {
  let text = "";
  const write = (more: string): void => {
    text += more;
  };
  const terminal: Terminal = { width: 80, colour: false, unicode: true, asks: false, out: write, err: write };
  return { status: await run(words, terminal, folder), text };
}

/** What a command of a console block prints, with the filters and the one question that the documents use. */
export async function printed(command: string, folder: string): Promise<string> {
  const [line = "", asked] = command.split("; ");
  const isDropped = line.endsWith(" > /dev/null");
  const [program = "", ...filters] = line.replace(" > /dev/null", "").split(" | ");
  // Behind a filter a shell would answer with the status of the filter.
  if (asked !== undefined && (asked !== "echo $?" || filters.length > 0))
    throw new Error(`only the status of waywright itself is asked for: ${command}`);
  const [name, ...words] = wordsOf(program);
  if (name !== "waywright") throw new Error(`the documents run waywright only, not ${name ?? "nothing"}`);
  const { status, text } = await ran(words, folder);
  const lines = isDropped ? [] : filters.reduce(filtered, text.replace(/\n$/, "").split("\n"));
  return [...lines, ...(asked === undefined ? [] : [String(status)])].map((l) => `${l}\n`).join("");
}

function filtered(lines: readonly string[], filter: string): string[] {
  const [name, ...words] = wordsOf(filter);
  const n = Number(words.find((w) => /^-?\d+$/.test(w))?.replace("-", ""));
  if (name === "head") return lines.slice(0, n);
  if (name === "tail") return lines.slice(-n);
  if (name === "grep" && words[0] === "-A") {
    const at = lines.findIndex((l) => l.includes(words.at(-1) ?? ""));
    return at === -1 ? [] : lines.slice(at, at + n + 1);
  }
  throw new Error(`the documents know head -N, tail -N and grep -A N TEXT, not ${filter}`);
}
