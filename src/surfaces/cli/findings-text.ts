// Findings as a compiler tells them: place, code, sentence, the line with a caret below it.
import { type Finding, findingSentence } from "../../kernel/finding.ts";
import { type Page, type Terminal, toned } from "./terminal.ts";
import { counted, listed, widthOf, wrap } from "./text.ts";

export function addFindings(page: Page, t: Terminal, findings: readonly Finding[]): void {
  for (const f of findings) {
    const { file, line, column } = f.place;
    const note = f.severity === "note" ? "(note) " : "";
    const [head = "", ...rest] = wrap(`${file}:${line}:${column} ${f.code}: ${note}${findingSentence(f)}`, t.width, "", "  ");
    page.add(toned(t, head, f.severity === "error" ? "fails" : "open"), ...rest.map((l) => toned(t, l, "quiet")));
    if (f.excerpt !== undefined) page.add(...excerpt(f.excerpt, t.width));
  }
}

/** As many notes are told one by one. */
const mostNotes = 3;

/** Mistakes in full; of the notes a line each, or their number where they are many. */
export function addFindingsBrief(page: Page, t: Terminal, findings: readonly Finding[]): void {
  addFindings(
    page,
    t,
    findings.filter((f) => f.severity === "error"),
  );
  const notes = findings.filter((f) => f.severity === "note");
  if (notes.length > mostNotes) {
    const codes = [...new Set(notes.map((f) => f.code))];
    page.say(`${counted(notes.length, "note")} on the files (${listed(codes)}); --all shows them.`);
  } else for (const { place, code, says } of notes) page.say(`${place.file}:${place.line} ${code}: ${firstSentence(says)}`, "", "  ");
}

const firstSentence = (text: string): string => text.replace(/(?<=[.?!]) .*$/s, "");

/** The part of the line around the caret that fits, with the caret under its place. */
export function excerpt(text: string, width: number): string[] {
  const [line = "", carets = ""] = text.split("\n").map((l) => l.replaceAll("\t", " "));
  const room = width - 2;
  const start = carets.search(/\^/);
  if (widthOf(line) <= room && widthOf(carets) <= room) return [`  ${line}`, `  ${carets}`];
  const from = Math.max(0, Math.min(start - Math.floor(room / 3), line.length - room));
  return [`  ${line.slice(from, from + room)}`, `  ${carets.slice(from, from + room)}`].map((l) => l.trimEnd());
}
