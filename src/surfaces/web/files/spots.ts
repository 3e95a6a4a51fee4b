// Findings as stretches of the editor's text: never empty, never outside it.
import type { Place } from "../../../kernel/finding.ts";

/** Where each line of a text begins, and where the text ends. */
export function lineStarts(text: string): number[] {
  const starts = [0];
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) starts.push(at + 1);
  return starts;
}

/** The stretch of a place; where the text has changed since, the nearest there is. */
export function stretchOf(place: Place, text: string, starts: readonly number[] = lineStarts(text)): { from: number; to: number } {
  const at = (line: number, column: number): number => {
    const start = starts[Math.min(line, starts.length) - 1] ?? 0;
    const end = (starts[Math.min(line, starts.length)] ?? text.length + 1) - 1;
    return Math.min(start + Math.max(0, column - 1), end);
  };
  const from = at(place.line, place.column);
  const to = at(place.endLine, place.endColumn);
  if (to > from) return { from, to };
  // A place without width is seen at the letter it stands before, at the end of a line at the one behind.
  return text[from] === undefined || text[from] === "\n" ? { from: Math.max(0, from - 1), to: from } : { from, to: from + 1 };
}
