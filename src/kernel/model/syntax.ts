// YAML's grammar and its slips: one text into one document, every error at the place where the hand slipped and in words of the shop.
import { Composer, type CST, type Document, LineCounter, Parser, type YAMLError } from "yaml";
import type { Place } from "../finding.ts";
import type { Draft } from "./report.ts";

/** Nobody nests keys deeper; the example shop needs eight levels. */
const deepest = 40;

export interface Read {
  readonly document: Document;
  /** Offsets to a place. */
  readonly place: (start: number, end: number) => Place;
  /** The text that the document was read from: the file, sure slips put right so that the rest of it can be looked over too. */
  readonly source: string;
  readonly drafts: readonly Draft[];
  /** From this line on the document is not what was meant; Infinity when all of it is. */
  readonly brokenFrom: number;
}

/** What was typed wrong, and the sure cure if there is one. */
interface Slip {
  readonly draft?: Draft;
  readonly cure?: { readonly at: number; readonly remove: number; readonly insert: string };
  /** The document does not say what was meant from here on. */
  readonly breaks?: boolean;
  /** Whatever the parser says after it is a mere consequence. */
  readonly last?: true;
  /** A mere consequence where the same block was broken before. */
  readonly echo?: true;
}

/** A cured slip may uncover the next one; a file with more than this many layers of them is reported as far as it was read. */
const mostRounds = 6;
/** All rounds together read no more than this many letters, so that large files are not read six times. */
const mostLetters = 400_000;
const mostErrors = 200;
/** A slip shows within this many letters; a line may be as long as a file. */
const longestStretch = 400;

/**
 * Reads a text as YAML 1.2 in which every value is text. Aliases, tags and second documents are refused by their tokens, before anything is
 * composed; so is a text nested too deep, since composing it would exhaust the stack.
 */
export function readSyntax(file: string, text: string): Read | { readonly refused: Draft } {
  const drafts = new Map<number, Draft>();
  let source = text;
  for (let round = 1; ; round++) {
    const lines = new LineCounter();
    const place = placer(file, lines, text.startsWith("\uFEFF"));
    const tokens = tokensOf(source, lines);
    const found = lookOver(tokens, place);
    if ("refused" in found) return found;
    const composer = new Composer({ lineCounter: lines, schema: "failsafe", uniqueKeys: false, prettyErrors: false });
    const document = [...composer.compose(tokens, true, source.length)][0];
    if (!document) throw new Error("a forced document is missing");
    const errors = readable([...document.errors, ...document.warnings]);
    const slips = [
      ...found.slips,
      ...withoutEchoes(
        errors.flatMap((e) => slipOf(e, source, place, found.openers)),
        source,
      ),
    ];
    const cures = slips.filter((s) => s.cure !== undefined);
    const last = cures.length === 0 || round === mostRounds || (round + 1) * source.length > mostLetters;
    // While there are sure cures, the other errors may be mere consequences: they are kept for the last round.
    for (const { draft } of last ? slips : cures) if (draft && !drafts.has(draft.place.line)) drafts.set(draft.place.line, draft);
    if (last) {
      const broken = slips.filter((s) => s.breaks).map((s) => s.draft?.place.line ?? 1);
      return { document, place, source, drafts: [...drafts.values()], brokenFrom: Math.min(Infinity, ...broken) };
    }
    source = cured(source, cures);
  }
}

/** Slips without those that only follow from one before: lines that fit nowhere any more, up to the next line that stands at the margin. */
function withoutEchoes(slips: readonly Slip[], source: string): readonly Slip[] {
  const last = slips.findIndex((s) => s.last);
  const lines = slips.some((s) => s.echo) ? source.split("\n") : [];
  let broken: number | null = null;
  return (last < 0 ? slips : slips.slice(0, last + 1)).filter(({ draft, breaks, echo }) => {
    const line = draft?.place.line;
    if (line === undefined) return true;
    if (echo && broken !== null && !lines.slice(broken, line).some((l) => /^[^\s#]/.test(l))) return false;
    if (breaks) broken = line;
    return true;
  });
}

/** The parser's tokens, up to a few that fit nowhere: a text full of those is none of ours, and each costs an error. */
function tokensOf(source: string, lines: LineCounter): CST.Token[] {
  const tokens: CST.Token[] = [];
  let stray = 0;
  for (const token of new Parser(lines.addNewLine).parse(source)) {
    if (token.type === "error" && ++stray > mostErrors) break;
    tokens.push(token);
  }
  return tokens;
}

/** Errors in order; what follows one that threw the parser out of the document is noise. */
function readable(errors: readonly YAMLError[]): YAMLError[] {
  const inFlow = new Set(errors.filter((e) => e.code === "BLOCK_IN_FLOW").map((e) => e.pos[0]));
  const sorted = errors.filter((e) => e.code !== "MULTILINE_IMPLICIT_KEY" || !inFlow.has(e.pos[0])).toSorted((a, b) => a.pos[0] - b.pos[0]);
  const out = sorted.findIndex((e) => e.message.includes("in YAML stream"));
  return sorted.slice(0, Math.min(mostErrors, out < 0 ? Infinity : out + 1));
}

function placer(file: string, lines: LineCounter, hasMark: boolean): (start: number, end: number) => Place {
  const at = (offset: number): { line: number; column: number } => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, line <= 1 && hasMark ? col - 1 : col) };
  };
  return (start, end) => {
    const [from, to] = [at(start), at(Math.max(start, end))];
    return { file, ...from, endLine: to.line, endColumn: to.column };
  };
}

function cured(source: string, slips: readonly Slip[]): string {
  let text = source;
  let before = Infinity;
  for (const { cure } of slips.toSorted((a, b) => (b.cure?.at ?? 0) - (a.cure?.at ?? 0))) {
    if (!cure || cure.at + cure.remove > before) continue;
    text = text.slice(0, cure.at) + cure.insert + text.slice(cure.at + cure.remove);
    before = cure.at;
  }
  return text;
}

interface Opener {
  readonly at: number;
  readonly sign: string;
}
interface Tokens {
  readonly slips: readonly Slip[];
  /** Brackets and quotes that nobody closed. */
  readonly openers: readonly Opener[];
}

const closers: Readonly<Record<string, string>> = { "{": "}", "[": "]" };

/** Signs beside keys and values that the files do not use. */
const signsLookedAt: ReadonlySet<string> = new Set<CST.SourceToken["type"]>(["anchor", "tag", "explicit-key-ind"]);

/** Goes through the tokens without recursion: depth, and what the files do not use. */
function lookOver(tokens: readonly CST.Token[], place: (a: number, b: number) => Place): Tokens | { readonly refused: Draft } {
  const slips: Slip[] = [];
  const openers: Opener[] = [];
  const stack: { token: CST.Token; depth: number }[] = tokens.toReversed().map((token) => ({ token, depth: 0 }));
  let documents = 0;
  for (let top = stack.pop(); top; top = stack.pop()) {
    const { token, depth } = top;
    if (depth > deepest) {
      return { refused: { code: "too-deep", says: `more than ${deepest} levels deep`, place: place(token.offset, token.offset + 1) } };
    }
    const at = (length: number): Place => place(token.offset, token.offset + length);
    // The last is pushed first, to be looked at last; blanks, line ends and comments need no look.
    const push = (child: CST.Token | null | undefined, deeper: number): void => {
      if (child) stack.push({ token: child, depth: depth + deeper });
    };
    const pushSigns = (signs: readonly CST.SourceToken[] = [], deeper: number): void => {
      for (let i = signs.length - 1; i >= 0; i -= 1) if (signsLookedAt.has(signs[i]?.type ?? "")) push(signs[i], deeper);
    };
    if (token.type === "document") {
      if (++documents > 1)
        slips.push({ draft: { code: "syntax", says: "`---` starts a second document; a file holds one", place: at(3) } });
      pushSigns(token.end, 0);
      push(token.value, 0);
      pushSigns(token.start, 0);
    } else if ("items" in token) {
      for (let i = token.items.length - 1; i >= 0; i -= 1) {
        const item = token.items[i];
        push(item?.value, 1);
        pushSigns(item?.sep, 1);
        push(item?.key, 1);
        pushSigns(item?.start, 1);
      }
      if (token.type === "flow-collection") {
        bracket(token, slips, openers, place);
        slips.push(...eatenInside(token, place));
      }
    } else if (token.type === "single-quoted-scalar" || token.type === "double-quoted-scalar") {
      const sign = token.type === "single-quoted-scalar" ? "'" : '"';
      if (token.source.length < 2 || !token.source.endsWith(sign)) openers.push({ at: token.offset, sign });
    } else if (token.type === "anchor" || token.type === "alias") {
      slips.push({ draft: { code: "alias", says: aliasAdvice, place: at(token.source.length), expected: "like: NAME" } });
    } else if (token.type === "tag") {
      const says = `\`${clip(token.source)}\`: tags are not used here (a text that starts with ! needs quotes)`;
      slips.push({ draft: { code: "syntax", says, place: at(token.source.length) } });
    } else if (token.type === "explicit-key-ind") {
      slips.push({
        draft: {
          code: "syntax",
          says: "`?` starts no key here; write `key: value` (a text that starts with ? needs quotes)",
          place: at(1),
        },
      });
    }
  }
  return { slips, openers };
}

const aliasAdvice =
  "anchors and aliases are not used here; give the part a name in catalogue/ and write `like: NAME` (a text that starts with & or * needs quotes)";

/** Notes a bracket that is not closed, or closed by one of the other sort. */
function bracket(token: CST.FlowCollection, slips: Slip[], openers: Opener[], place: (a: number, b: number) => Place): void {
  const sign = token.start.source;
  const end = token.end.find((t) => t.type === "flow-map-end" || t.type === "flow-seq-end");
  if (!end) openers.push({ at: token.offset, sign });
  else if (end.source !== closers[sign]) {
    const says = `\`${end.source}\` stands where \`${closers[sign] ?? ""}\` is wanted`;
    slips.push({ draft: { code: "syntax", says, place: place(end.offset, end.offset + 1) }, breaks: true });
  }
}

/** `{ size: AWG #8, length: 18 m }`: a blank and # inside braces take the rest of the line along, and mostly the bracket that closes. */
function eatenInside({ items }: CST.FlowCollection, place: (a: number, b: number) => Place): Slip[] {
  return items.flatMap(({ value }): Slip[] => {
    if (value?.type !== "scalar") return [];
    const comment = value.end?.find((t) => t.type === "comment");
    const eaten = /^#(\d[^\s,}\]]*)/.exec(comment?.source ?? "")?.[1];
    if (comment === undefined || eaten === undefined) return [];
    const at = place(value.offset, value.offset + value.source.length);
    return [{ draft: commentAte(value.source, eaten, at), cure: { at: comment.offset, remove: 1, insert: "" } }];
  });
}

/** `AWG #8`: what became a comment, and what is left. */
export function commentAte(left: string, eaten: string, place: Place): Draft {
  const better = left === "" ? `"#${eaten}"` : `${left} ${eaten}`;
  const says = `" #${eaten}" became a comment, ${left === "" ? "nothing" : `\`${left}\``} is left. Write \`${better}\`, or a blank after # for a comment`;
  return { code: "comment-ate-value", says, place, expected: better };
}

const clip = (text: string): string => (text.length > 30 ? `${text.slice(0, 30)}…` : text);
const keyWithoutBlank = /^([A-Za-z][\w-]*):(?=[^\s:])/;

/** One error of the parser as the slip behind it; nothing where another slip already says so. */
function slipOf(error: YAMLError, source: string, place: (a: number, b: number) => Place, openers: readonly Opener[]): Slip[] {
  const [from, to] = error.pos;
  const lineStart = source.lastIndexOf("\n", from - 1) + 1;
  const lineEnd = endOfLine(source, from);
  const indent = /^[ \t]*/.exec(source.slice(lineStart, lineEnd))?.[0] ?? "";
  if (indent.includes("\t")) return [tabSlip(source, lineStart, place, error.code === "BAD_INDENT")];

  const rest = source.slice(from, Math.min(lineEnd, from + longestStretch));
  const plain = (says: string, at: readonly [number, number] = [from, to], breaks = true): Slip => ({
    draft: { code: "syntax", says, place: place(...at) },
    breaks,
  });
  const code: string = error.code; // many codes of the parser cannot come from text that got this far, or need no words of their own
  switch (code) {
    case "MULTILINE_IMPLICIT_KEY":
    case "MISSING_CHAR": {
      const opener = openers.find((o) => o.sign === '"' || o.sign === "'");
      if (opener && /quote/.test(error.message)) return [plain(`\`${opener.sign}\` is never closed`, [opener.at, opener.at + 1])];
      const run = keyWithoutBlank.exec(rest);
      if (run) return [blankSlip(rest, from, run, place)];
      if (code === "MULTILINE_IMPLICIT_KEY" && source.slice(lineStart, from).trim() !== "") {
        // The value of a key runs on into a line with a key of its own.
        const next = source.lastIndexOf("\n", to - 1) + 1;
        const before = /^\s*/.exec(source.slice(next, to))?.[0] ?? "";
        if (before.includes("\t")) return [tabSlip(source, next, place, false)];
        const start = next + before.length;
        return [{ ...plain("this line is indented below a key that already has a value", [start, endOfLine(source, start)]), echo: true }];
      }
      return [plain(`\`${clip(rest.trim())}\`: no colon after the key; write \`key: value\``, [from, lineEnd])];
    }
    case "BLOCK_AS_IMPLICIT_KEY":
    case "BLOCK_IN_FLOW": {
      const stretch = code === "BLOCK_IN_FLOW" ? source.slice(from, Math.min(to, from + longestStretch)) : rest.replace(/\s+#.*$/, "");
      const text = stretch.trimEnd();
      if (text.includes("\n")) return [plain("a comma is missing between two entries, or a bracket is not closed", [from, lineEnd])];
      if (!/:(?:\s|$)/.test(text)) return [];
      // `base:{ frequency: 60 Hz }`: the slip is at the start of the line.
      const run = keyWithoutBlank.exec(source.slice(lineStart + indent.length, from));
      if (code === "BLOCK_AS_IMPLICIT_KEY" && run) {
        const start = lineStart + indent.length;
        return [blankSlip(source.slice(start, Math.min(lineEnd, start + longestStretch)), start, run, place)];
      }
      if (code === "BLOCK_AS_IMPLICIT_KEY" && indentBelow(source, lineEnd) > indent.length) {
        const says = `two keys on one line: \`${clip(text)}\` belongs on a line of its own, further in`;
        return [{ draft: { code: "colon-in-text", says, place: place(from, from + text.length) }, breaks: true }];
      }
      const quoted = JSON.stringify(text);
      return [
        {
          draft: {
            code: "colon-in-text",
            says: `a colon with a blank inside text needs quotes: ${clip(quoted)}${code === "BLOCK_IN_FLOW" ? " (or a comma is missing)" : ""}`,
            place: place(from, from + text.length),
            expected: quoted,
          },
          cure: { at: from, remove: text.length, insert: quoted },
        },
      ];
    }
    case "BAD_INDENT": {
      const opener = openers.find((o) => o.at < from && closers[o.sign] !== undefined && error.message.startsWith("Flow"));
      if (opener) {
        const line = place(from, to).line;
        const says = `\`${opener.sign}\` is not closed before line ${line}, which stands no further in`;
        return [{ ...plain(says, [opener.at, opener.at + 1]), last: true }];
      }
      // A closer of the other sort was already named.
      if (error.message.startsWith("Flow")) return [];
      return [{ ...plain("the indent of this line fits no line above it", [from, lineEnd]), echo: true }];
    }
    case "BAD_SCALAR_START":
      return [plain(`a text that starts with \`${source.charAt(from)}\` needs quotes`, [from, to], false)];
    case "BAD_DQ_ESCAPE":
      return [plain("a backslash inside double quotes starts a code; write it twice, or use single quotes", [from, to], false)];
    case "TAG_RESOLVE_FAILED":
    case "BAD_ALIAS":
      return [];
    case "BAD_DIRECTIVE":
      return [plain("lines that start with % are not used here", [from, to], false)];
    case "UNEXPECTED_TOKEN":
      return [unexpected(error, source, plain)];
    case "TAB_AS_INDENT":
      return [plain("a tab stands where blanks are wanted", [from, to], false)];
    default:
      return [plain("this cannot be read; look for a bracket, a quote or an indent that does not match")];
  }
}

function unexpected(
  error: YAMLError,
  source: string,
  plain: (says: string, at?: readonly [number, number], breaks?: boolean) => Slip,
): Slip {
  const [from] = error.pos;
  const sign = source.charAt(from);
  if (sign === ",") return plain("a comma too many", [from, from + 1], false);
  if (/at node end/.test(error.message))
    return plain("text goes on after the closing quote or bracket", [from, endOfLine(source, from)], false);
  if (/on same line with key/.test(error.message))
    return plain("a list with dashes starts on the line below its key; on one line write `[ a, b ]`", [from, endOfLine(source, from)]);
  if (sign === "}" || sign === "]") return plain(`\`${sign}\` closes a bracket that was never opened`, [from, from + 1]);
  return plain("nothing may follow here", [from, endOfLine(source, from)]);
}

function endOfLine(source: string, from: number): number {
  const end = source.indexOf("\n", from);
  const stop = end < 0 ? source.length : end;
  return source.charAt(stop - 1) === "\r" && stop > from ? stop - 1 : stop;
}

/** Blanks before the next line that says something; -1 where there is none, or a tab among them. */
function indentBelow(source: string, from: number): number {
  const [, blanks] = /^(?:[^\n]*\n)(?:[ \t\r]*(?:#[^\n]*)?\n)*( *)(?=[^\s#])/.exec(source.slice(from, from + 4 * longestStretch)) ?? [];
  return blanks?.length ?? -1;
}

/** Inside brackets any indent will do that is deep enough. */
const deepEnough = " ".repeat(2 * deepest);

function tabSlip(source: string, lineStart: number, place: (a: number, b: number) => Place, inBrackets: boolean): Slip {
  const lineEnd = endOfLine(source, lineStart);
  const indent = /^[ \t]*/.exec(source.slice(lineStart, lineEnd))?.[0] ?? "";
  const tab = lineStart + indent.indexOf("\t");
  const meant = inBrackets
    ? indent.replaceAll("\t", deepEnough)
    : " ".repeat(likeNeighbours(source, lineStart, lineEnd) ?? indent.replaceAll("\t", "  ").length);
  const cure = { at: lineStart, remove: indent.length, insert: meant };
  if (source.slice(lineStart, lineEnd).trim() === "") return { cure: { ...cure, insert: "" } };
  const says = "a tab cannot indent; use two blanks a level";
  return { draft: { code: "tab-indent", says, place: place(tab, tab + 1) }, cure };
}

/** Blanks that a single line with a tab among lines without one was meant to have; null among others with tabs. */
function likeNeighbours(source: string, lineStart: number, lineEnd: number): number | null {
  const above = source.slice(Math.max(0, lineStart - longestStretch), lineStart).trimEnd();
  const before = above.slice(above.lastIndexOf("\n") + 1);
  const blanks = /^[ \t]*/.exec(before)?.[0] ?? "";
  const below = indentBelow(source, lineEnd);
  if (blanks.includes("\t") || before === "" || before.trimStart().startsWith("#")) return null;
  if (/:(?:\s+#.*)?$/.test(before)) return below > blanks.length ? below : null;
  return below > 0 && below <= blanks.length ? below : blanks.length;
}

/** `bore:34 mm`: read as one word, since a key ends with a colon and a blank. */
function blankSlip(text: string, from: number, run: RegExpExecArray, place: (a: number, b: number) => Place): Slip & { draft: Draft } {
  const key = run[1] ?? "";
  const written = text.replace(/\s+#.*$/, "").trimEnd();
  const better = `${key}: ${written.slice(key.length + 1)}`;
  return {
    draft: {
      code: "no-blank-after-colon",
      says: `"${clip(written)}" is read as one word; write \`${clip(better)}\``,
      place: place(from, from + written.length),
      expected: better,
    },
    cure: { at: from + key.length + 1, remove: 0, insert: " " },
  };
}

/** `bore:34 mm` at the start of a text. */
export function runTogether(text: string): RegExpExecArray | null {
  return keyWithoutBlank.exec(text);
}
