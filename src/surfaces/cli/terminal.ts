// Where the program writes to: how wide, with which signs, in colour or not.
import { prettyUnit } from "../../kernel/display.ts";
import { hardBlank, wrap } from "./text.ts";

export type Tone = "holds" | "tight" | "fails" | "open" | "quiet" | "strong";

export interface Terminal {
  readonly width: number;
  readonly colour: boolean;
  /** Signs beyond ASCII can be shown. */
  readonly unicode: boolean;
  /** Somebody sits there and can be asked. */
  readonly asks: boolean;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

/** What of the surroundings decides: so that tests need no terminal. */
export interface Surroundings {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: string;
  readonly isTerminal: boolean;
  readonly columns?: number | undefined;
}

const usualWidth = 80;
export const narrowest = 40;
export const broadest = 400;

/** Never wider than 80 columns unless asked for: lines stay readable, and fit a mail or a page. */
export function widthIn(s: Surroundings): number {
  // Some terminals say 0 for "unknown".
  return Math.max(narrowest, Math.min(usualWidth, (s.isTerminal && s.columns) || usualWidth));
}

/** Colour on a terminal only, and never where NO_COLOR is set to anything. */
export function hasColour({ env, isTerminal }: Surroundings): boolean {
  return isTerminal && !env["NO_COLOR"] && env["TERM"] !== "dumb";
}

/** Whether the locale says UTF-8; systems whose terminals always do need not say so. */
export function hasUnicode({ env, platform }: Surroundings): boolean {
  const locale = env["LC_ALL"] || env["LC_CTYPE"] || env["LANG"];
  return locale ? /utf-?8/i.test(locale) : platform === "win32" || platform === "darwin";
}

const codes: Readonly<Record<Tone, string>> = { holds: "32", tight: "33", fails: "31", open: "36", quiet: "2", strong: "1" };

export function toned(t: Pick<Terminal, "colour">, text: string, tone: Tone): string {
  return t.colour && text !== "" ? `\u001b[${codes[tone]}m${text}\u001b[0m` : text;
}

const plainSigns: readonly (readonly [RegExp, string])[] = [
  [/[\u00b7\u00d7\u22c5]/g, "*"],
  [/\u00b2/g, "2"],
  [/\u00b3/g, "3"],
  [/[\u00b5\u03bc]/g, "u"],
  [/[\u03a9\u2126]/g, "ohm"],
  [/\u00b0/g, "deg"],
  [/\u00b1/g, "+/-"],
  [/\u2026/g, "..."],
  [/[\u2010-\u2015\u2212]/g, "-"],
  [/[\u2018\u2019]/g, "'"],
  [/[\u201c\u201d]/g, '"'],
  [/\u2192/g, "->"],
  [/\u2264/g, "<="],
  [/\u2265/g, ">="],
];

/** Only signs that every terminal shows; what has no like becomes a question mark. */
export function inAscii(text: string): string {
  const known = plainSigns.reduce((t, [from, to]) => t.replace(from, to), text);
  const letters = known.normalize("NFD").replace(/\p{Mn}/gu, "");
  return letters.replace(/[\u0080-\u{10ffff}]/gu, "?");
}

/** A quantity as print sets it, where the terminal can; a word (`unknown`) is none. */
export function quantity(t: Pick<Terminal, "unicode">, text: string): string {
  return t.unicode && /\d/.test(text) ? prettyUnit(text) : text;
}

/** A block of lines under construction. */
export interface Page {
  readonly lines: string[];
  /** Wraps; `first` and `rest` start the lines. */
  readonly say: (text: string, first?: string, rest?: string) => void;
  readonly add: (...lines: string[]) => void;
  /** One empty line, never two. */
  readonly gap: () => void;
}

export function pageFor(t: Pick<Terminal, "width">): Page {
  const lines: string[] = [];
  const add = (...more: string[]): number => lines.push(...more.map((line) => line.replaceAll(hardBlank, " ")));
  return {
    lines,
    say: (text, first, rest) => add(...wrap(text, t.width, first, rest)),
    add,
    gap: () => lines.length > 0 && lines.at(-1) !== "" && lines.push(""),
  };
}

export function print(t: Terminal, page: Page): void {
  const lines = page.lines.at(-1) === "" ? page.lines.slice(0, -1) : page.lines;
  t.out(`${lines.join("\n")}\n`);
}
