// How findings of the loader are put together: place, excerpt with a caret, order, and no second finding where one says it all.
import { type Finding, type FindingCode, findings as table, type Place } from "../finding.ts";

/** A finding still without its excerpt; `from` and `to` mark the exact stretch when the place is wider (letters from the start of the place). */
export interface Draft {
  readonly code: FindingCode;
  readonly says: string;
  readonly place: Place;
  readonly expected?: string;
  readonly nearest?: string;
  readonly mark?: { readonly at: number; readonly length: number };
}

/** The very first letter of a file: where something that is missing altogether is reported. */
export function startOf(file: string): Place {
  return { file, line: 1, column: 1, endLine: 1, endColumn: 1 };
}

/** Longest stretch of a line that is shown around the caret. */
const widest = 120;

/** The line of the text at a place, and a caret line below it. Tabs stay tabs, so that the caret stands where it should. */
function excerptOf(text: string, place: Place, mark: Draft["mark"]): string {
  const line = lineAt(text, place.line);
  const start = Math.min(place.column - 1 + (mark?.at ?? 0), line.length);
  const end = mark ? start + mark.length : place.endLine === place.line ? place.endColumn - 1 : line.length;
  const from = line.length > widest && start > widest / 2 ? start - widest / 2 : 0;
  const shown = line.slice(from, from + widest);
  const lead = shown.slice(0, start - from).replace(/[^\t]/g, " ");
  const carets = "^".repeat(Math.max(1, Math.min(end, from + widest) - start));
  return `${shown}\n${lead}${carets}`;
}

function lineAt(text: string, line: number): string {
  let start = text.startsWith("\uFEFF") ? 1 : 0;
  for (let i = 1; i < line; i++) {
    const next = text.indexOf("\n", start);
    if (next < 0) return "";
    start = next + 1;
  }
  const end = text.indexOf("\n", start);
  return text.slice(start, end < 0 ? text.length : end).replace(/\r$/, "");
}

/** More findings than this help nobody; the rest is counted. */
const mostFindings = 200;

/** Findings with severity and excerpt, sorted by place, each said once. `texts` gives the text of a file. */
export function settle(drafts: readonly Draft[], texts: (file: string) => string | undefined): Finding[] {
  const seen = new Set<string>();
  const once = drafts.filter((d) => {
    const key = `${d.place.file}:${d.place.line}:${d.place.column} ${d.code} ${d.says}`;
    return seen.has(key) ? false : seen.add(key);
  });
  const sorted = once.toSorted((a, b) => byPlace(a.place, b.place));
  const shown = sorted.slice(0, mostFindings).map((d) => finished(d, texts(d.place.file)));
  const last = shown.at(-1);
  const left = sorted.length - shown.length;
  if (left > 0 && last) shown[shown.length - 1] = { ...last, says: `${last.says} (and ${left} more findings after this one)` };
  return shown;
}

function finished(draft: Draft, text: string | undefined): Finding {
  const { mark, ...rest } = draft;
  const finding: Finding = { ...rest, severity: table[draft.code].severity };
  return text === undefined ? finding : { ...finding, excerpt: excerptOf(text, draft.place, mark) };
}

/** Findings of the loader and of the rooms as one list: by place, each said once, with the line it is about. */
export function together(findings: readonly Finding[], texts: (file: string) => string | undefined): Finding[] {
  const once = new Map(findings.map((f) => [`${f.place.file}:${f.place.line}:${f.place.column} ${f.code} ${f.says}`, f]));
  return [...once.values()]
    .toSorted((a, b) => byPlace(a.place, b.place))
    .map((f) => {
      const text = f.excerpt === undefined ? texts(f.place.file) : undefined;
      return text === undefined ? f : { ...f, excerpt: excerptOf(text, f.place, undefined) };
    });
}

/** Order of findings: file, line, column. */
function byPlace(a: Place, b: Place): number {
  if (a.file !== b.file) return a.file < b.file ? -1 : 1;
  return a.line - b.line || a.column - b.column;
}

/** `lead, starts, diameter …`: the keys or words that would do, not more than fit in a sentence. */
export function some(names: Iterable<string>, most = 8): string {
  const all = [...names];
  return all.length > most ? `${all.slice(0, most).join(", ")} …` : all.join(", ");
}

/** `catalogue/parts.yaml:3`. */
export function where(place: Place): string {
  return `${place.file}:${place.line}`;
}
