// A verdict as shape and word: told apart without colour, and in ASCII too.
import type { CheckAnswer, Num } from "../../kernel/answer.ts";
import type { Verdict } from "../../kernel/verdict.ts";
import { hardBlank, padEnd } from "./text.ts";
import { type Terminal, toned } from "./terminal.ts";

const shapes: Readonly<Record<Verdict, string>> = { holds: "\u25cf", tight: "\u25b2", fails: "\u25a0", open: "\u25cb" };
const asciiShapes: Readonly<Record<Verdict, string>> = { holds: "*", tight: "!", fails: "#", open: "?" };

/** `● holds`, always as wide as the others. */
export function verdictText(t: Pick<Terminal, "colour" | "unicode">, verdict: Verdict): string {
  const shape = (t.unicode ? shapes : asciiShapes)[verdict];
  return padEnd(toned(t, `${shape} ${verdict}`, verdict), "x holds".length);
}

/** Margins to three figures; above this a margin only says that the check is not near. */
const far = 100;

function marginNumber(x: Num): string {
  if (typeof x !== "number") return "never" in x ? "never" : "no value";
  if (x >= far) return `>${far}`;
  return x >= 10 ? x.toFixed(1) : x.toFixed(2);
}

interface Said {
  readonly verdict: Verdict;
  readonly margin: CheckAnswer["margin"];
  readonly yesNo: boolean;
}

/** `1.83 (1.70 to 1.99)`; for a yes or no the answer, for no value nothing. */
export function marginText(c: Pick<Said, "margin" | "yesNo">): string {
  const { nominal, low, high } = c.margin;
  const [n, a, b] = [nominal, low, high].map(marginNumber);
  if (typeof nominal !== "number" && !("never" in nominal)) return "no margin yet";
  if (c.yesNo) return a === b ? (nominal === 0 ? "no" : "yes") : "yes or no, that is not known";
  if (n === "never") return a === b ? "nothing is asked of it" : `at least ${a}`;
  return a === b && n === a ? `${n}` : `${n} (${a} to ${b})`;
}

/** Whether there is a margin that can be shown beside its verdict. */
export const hasMargin = (c: Pick<Said, "margin">): boolean => typeof c.margin.nominal === "number" || "never" in c.margin.nominal;

/** `● holds 1.83 (1.70 to 1.99)`, the margin on one line with its verdict. */
export const outcomeText = (t: Pick<Terminal, "colour" | "unicode">, o: Said): string =>
  `${verdictText(t, o.verdict).trimEnd()} ${marginText(o)}`.replace(/ (?=\S)/, hardBlank).replace(/ (?=[\d>])/, hardBlank);

/** `● holds 1.83`, for a list in which the word already says where the band lies. */
export const outcomeBrief = (t: Pick<Terminal, "colour" | "unicode">, o: Said): string => outcomeText(t, o).replace(/ \(.*\)$/, "");

/** `● 1.83 (1.70 to 1.99)`, where there is no room for the word; `shapesText` says what the shapes mean. */
export function shapeText(t: Pick<Terminal, "colour" | "unicode">, o: Said): string {
  return `${toned(t, (t.unicode ? shapes : asciiShapes)[o.verdict], o.verdict)} ${o.yesNo && o.verdict === "open" ? "not known" : marginText(o)}`;
}

export const shapesText = (t: Pick<Terminal, "colour" | "unicode">): string =>
  (["fails", "open", "tight", "holds"] as const).map((v) => verdictText(t, v).trimEnd()).join(", ");
