// Text on a grid of characters: width, wrapping, padding, columns.
import { stripVTControlCharacters } from "node:util";

const wide =
  /[\u1100-\u115F\u2E80-\uA4CF\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF00-\uFF60\uFFE0-\uFFE6\u{1F300}-\u{1FAFF}\u{20000}-\u{3FFFD}]/u;
const zero = /[\p{Mn}\p{Me}\p{Cf}]/u;

/** Columns that a text takes on a terminal: colours none, wide characters two. */
export function widthOf(text: string): number {
  let n = 0;
  for (const c of stripVTControlCharacters(text)) n += zero.test(c) ? 0 : wide.test(c) ? 2 : 1;
  return n;
}

export function padEnd(text: string, width: number): string {
  return text + " ".repeat(Math.max(0, width - widthOf(text)));
}

export function padStart(text: string, width: number): string {
  return " ".repeat(Math.max(0, width - widthOf(text))) + text;
}

/** A word too long for a line is cut behind a sign that joins its parts, or wherever the line ends. */
function pieces(word: string, width: number): string[] {
  const done: string[] = [];
  let left = word;
  while (widthOf(left) > width) {
    let fits = 0;
    let n = 0;
    let joint = 0;
    for (const c of left) {
      n += widthOf(c);
      if (n > width) break;
      fits += c.length;
      if (/[./\-+,;]/.test(c)) joint = fits;
    }
    const at = joint > fits / 2 ? joint : Math.max(1, fits);
    done.push(left.slice(0, at));
    left = left.slice(at);
  }
  return [...done, left];
}

/** A blank at which no line ends. */
export const hardBlank = "\u00a0";

/** Lines of at most `width` columns. `first` starts the first line, `rest` the others. */
export function wrap(text: string, width: number, first = "", rest = " ".repeat(widthOf(first))): string[] {
  const room = (n: number): number => Math.max(8, width - widthOf(n === 0 ? first : rest));
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/[^\S\u00a0]+/).filter((w) => w !== "")) {
    const joined = line === "" ? word : `${line} ${word}`;
    if (widthOf(joined) <= room(lines.length)) {
      line = joined;
      continue;
    }
    if (line !== "") lines.push(line);
    const parts = pieces(word, room(lines.length));
    lines.push(...parts.slice(0, -1));
    line = parts.at(-1) ?? "";
  }
  if (line !== "" || lines.length === 0) lines.push(line);
  return lines.map((l, i) => `${i === 0 ? first : rest}${l}`.trimEnd());
}

export interface Column {
  readonly head: string;
  readonly right?: boolean;
}

/** A table with two blanks between columns; the columns that are too wide are wrapped, the widest first. */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[], width: number, indent = ""): string[] {
  const heads = columns.some((c) => c.head !== "") ? [columns.map((c) => c.head)] : [];
  const all = [...heads, ...rows];
  const widths = columns.map((_, i) => Math.max(0, ...all.map((r) => widthOf(r[i] ?? ""))));
  const free = width - widthOf(indent) - 2 * (columns.length - 1);
  const least = Math.max(4, Math.floor(free / columns.length / 2));
  for (let over = sum(widths) - free; over > 0; over = sum(widths) - free) {
    const widest = widths.indexOf(Math.max(...widths));
    const had = widths[widest] ?? 0;
    if (had <= least) break;
    const second = Math.max(least, ...widths.filter((_, i) => i !== widest));
    widths[widest] = Math.max(least, Math.min(had - 1, Math.max(second, had - over)));
  }
  return all.flatMap((row) => {
    const cells = columns.map((_, i) => wrap(row[i] ?? "", widths[i] ?? least));
    const height = Math.max(...cells.map((c) => c.length));
    return Array.from({ length: height }, (_, n) => {
      const line = columns.map((c, i) => (c.right ? padStart : padEnd)(cells[i]?.[n] ?? "", widths[i] ?? least)).join("  ");
      return `${indent}${line}`.trimEnd();
    });
  });
}

const sum = (xs: readonly number[]): number => xs.reduce((a, b) => a + b, 0);

/** "3 checks", "1 check". */
export function counted(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

/** "a, b and c". */
export function listed(words: readonly string[], and = "and"): string {
  return words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} ${and} ${words.at(-1)}`;
}
