// The example shop with a few letters changed, and what the program then finds that it does not find in the whole one.
import { readShop } from "../../src/files/shop-folder.ts";
import type { Finding, FindingCode } from "../../src/kernel/finding.ts";
import { parseShop } from "../../src/kernel/model/shop.ts";
import { study } from "../../src/kernel/study.ts";
import { waywright } from "../../src/rooms/index.ts";
import { example } from "./house.ts";

/** `was` is replaced by `typed`; a mark (▸) in `typed` shows where a finding has to stand, and is not typed itself. */
export interface Edit {
  readonly file: string;
  readonly was: string;
  readonly typed: string;
}
export interface BrokenFolder {
  readonly edits: readonly Edit[];
  /** Options of the lathe that are laid on. */
  readonly options?: readonly string[];
}

/** What a finding has to say besides its place. */
export interface Finds {
  readonly code: FindingCode;
  readonly severity?: "note";
  readonly expected?: string;
  readonly nearest?: string;
}

export const MARK = "▸";
const whole = readShop(new URL("../../examples/heron", import.meta.url).pathname).files;

const key = ({ place, code, says }: Finding): string => `${place.file} ${code} ${says}`;
const variant = (options: readonly string[]) => ({ options: options.map((name) => ({ machine: "lathe", name })), tries: [] });

/** The findings that the edits bring, in the order of their places; and the places that are marked. */
export function found({ edits, options = [] }: BrokenFolder): { findings: readonly Finding[]; places: readonly string[] } {
  const files = new Map([...whole].map(([file, { text }]) => [file, { text }]));
  for (const { file, was, typed } of edits) {
    const text = files.get(file)?.text ?? "";
    const parts = text.split(was);
    if (was !== "" && parts.length !== 2) throw new Error(`"${was}" stands ${parts.length - 1} times in ${file}`);
    files.set(file, { text: was === "" ? typed : parts.join(typed) });
  }
  const places = [...files].toSorted(([a], [b]) => (a < b ? -1 : 1)).flatMap(([file, { text }]) => marks(file, text));
  for (const [file, { text }] of files) files.set(file, { text: text.replaceAll(MARK, "") });
  const before = study(waywright, example, variant(options.filter((o) => whole.has(`lathe/options/${o}.yaml`))), "nominal");
  const known = new Set(before.answer.findings.map(key));
  const after = study(waywright, parseShop(files, waywright.keys, example), variant(options), "nominal");
  const findings = after.answer.findings.filter((f) => !known.has(key(f)));
  return { findings: findings.toSorted((a, b) => (a.place.file < b.place.file ? -1 : a.place.file > b.place.file ? 1 : a.place.line - b.place.line || a.place.column - b.place.column)), places };
}

function marks(file: string, text: string): string[] {
  return text.split("\n").flatMap((line, row) => {
    const parts = line.split(MARK);
    let column = 1;
    return parts.slice(0, -1).map((part) => `${file}:${row + 1}:${(column += part.length)}`);
  });
}

/** A finding as the rows put it. */
export function told(findings: readonly Finding[]): (Finds & { at: string })[] {
  return findings.map(({ code, severity, place, expected, nearest }) => ({
    code,
    at: `${place.file}:${place.line}:${place.column}`,
    ...(severity === "note" && { severity }),
    ...(expected !== undefined && { expected }),
    ...(nearest !== undefined && { nearest }),
  }));
}
