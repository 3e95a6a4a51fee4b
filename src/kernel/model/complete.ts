// What may be typed at a place of a file, and what a key there means. Works on half-typed lines: only indents, colons and brackets count.
import { addressOf, keyNodeAt } from "./address.ts";
import { keyAt, type KeyNode, type Keys } from "./keys.ts";
import { listName, type Node, nodeAt } from "./node.ts";
import { parseFile } from "./parse.ts";
import { keysOfFile, type Role } from "./role.ts";
import { describeInput } from "./schema.ts";
import { kindInfo } from "../unit.ts";

interface Candidate {
  readonly label: string;
  readonly detail: string;
  /** What replaces the letters typed so far. */
  readonly insert: string;
}
export interface Completion {
  /** Offset of the first letter that is replaced; the last one stands before the cursor. */
  readonly from: number;
  readonly candidates: readonly Candidate[];
}

/** Names that a key could be given: entries of a catalogue group, things of a kind. */
export type NamesFor = (at: KeyNode) => readonly string[];

/** Keys or values that fit at the offset. */
export function complete(text: string, offset: number, role: Role, keys: Keys, names: NamesFor = () => []): Completion {
  const spot = spotAt(text, offset);
  const from = offset - spot.typed.length;
  const all = spot.key === null ? keyCandidates(text, spot, role, keys) : valueCandidates(spot.holder, spot.key, role, keys, names);
  const typed = spot.typed.toLowerCase();
  const starts = all.filter((c) => c.label.toLowerCase().startsWith(typed));
  return { from, candidates: starts.length > 0 ? starts : all.filter((c) => c.label.toLowerCase().includes(typed)) };
}

/** What the key or value at the offset is, or null. */
export function hover(
  text: string,
  offset: number,
  role: Role,
  keys: Keys,
): { readonly path: readonly string[]; readonly says: string } | null {
  const before = text.slice(0, offset);
  const line = before.split("\n").length;
  const column = offset - before.lastIndexOf("\n") - (line === 1 && text.startsWith("\uFEFF") ? 1 : 0);
  const path = pathAt(parseFile("", text).root, line, column, []);
  const at = path && keyNodeFor(path, role, keys);
  const says = at && describe(at);
  return path && says ? { path, says } : null;
}

function describe(at: KeyNode): string | null {
  if (at.input) return describeInput(at.input);
  if (at.link) return `name of a ${at.link.says}`;
  return at.says ?? null;
}

/** The deepest key whose name or value holds the place. */
function pathAt(node: Node, line: number, column: number, path: readonly string[]): readonly string[] | null {
  const children: [string, Node][] =
    node.is === "map" ? [...node.entries] : node.is === "list" ? node.items.map((n, i) => [listName(n, i), n]) : [];
  for (const [key, child] of children) {
    const here = [...path, key];
    if (child.key && holds(child.key, line, column)) return here;
    if (holds(child.place, line, column)) return pathAt(child, line, column, here) ?? here;
  }
  return null;
}

function holds(place: { line: number; column: number; endLine: number; endColumn: number }, line: number, column: number): boolean {
  if (line < place.line || line > place.endLine) return false;
  return (line > place.line || column >= place.column) && (line < place.endLine || column <= place.endColumn);
}

const changing: ReadonlySet<string> = new Set(["set", "replace", "sets"]);

/** The key at a path of a file; below `set` and its like the path goes on in another file. */
function keyNodeFor(path: readonly string[], role: Role, keys: Keys): KeyNode | undefined {
  const [top = "", target, ...rest] = path;
  if ((role.is === "option" || role.is === "record") && changing.has(top) && target !== undefined) {
    const address = addressOf(target, role.machine, new Set());
    return keyNodeAt({ ...address, path: [...address.path, ...rest] }, keys);
  }
  return keyAt(keysOfFile(role, keys), path);
}

function keyCandidates(text: string, spot: Spot, role: Role, keys: Keys): Candidate[] {
  const { holder, typed } = spot;
  const [top = ""] = holder;
  if ((role.is === "option" || role.is === "record") && changing.has(top) && holder.length === 1)
    return pathCandidates(typed, role.machine, keys);
  const at = keyNodeFor(holder, role, keys);
  if (!at) return [];
  const there = nodeAt(parseFile("", text).root, holder);
  const taken = (key: string): boolean => there?.is === "map" && there.entries.has(key) && key !== typed;
  return keysIn(at)
    .filter(({ label }) => !taken(label))
    .map((c) => ({ ...c, insert: `${c.label}: ` }));
}

function keysIn(at: KeyNode): Candidate[] {
  const own = [...at.keys].map(([key, child]) => ({ label: key, detail: describe(child) ?? "", insert: key }));
  return at.like === undefined ? own : [{ label: "like", detail: `an entry of ${at.like} in catalogue/`, insert: "like" }, ...own];
}

/** `spindle.mot`: keys at the path typed so far. */
function pathCandidates(typed: string, machine: string, keys: Keys): Candidate[] {
  const dot = Math.max(typed.lastIndexOf("."), typed.lastIndexOf("/"));
  const lead = typed.slice(0, dot + 1);
  const address = addressOf(lead.replace(/\.$/, ""), machine, new Set());
  const at = keyNodeAt({ ...address, path: address.path.filter((key) => key !== "") }, keys);
  return at ? keysIn(at).map((c) => ({ ...c, label: lead + c.label, insert: lead + c.label })) : [];
}

function valueCandidates(holder: readonly string[], key: string, role: Role, keys: Keys, names: NamesFor): Candidate[] {
  const above = keyNodeFor(holder, role, keys);
  if (key === "like" && above?.like !== undefined) return names(above).map((n) => ({ label: n, detail: above.like ?? "", insert: n }));
  const at = keyNodeFor([...holder, key], role, keys);
  if (!at) return [];
  const input = at.input ?? (at.head === undefined ? undefined : at.keys.get(at.head)?.input);
  const word =
    (detail: string) =>
    (label: string): Candidate => ({ label, detail, insert: label });
  if (at.link) return [...names(at).map(word(at.link.says)), word("asked, not known")("unknown")];
  const examples = input?.kind ? kindInfo(input.kind).examples.map(word("for example")) : [];
  const absent = !input || input.none ? [word("known to be absent")("none")] : [];
  return [...(input?.words ?? []).map(word(input?.says ?? "")), ...examples, word("asked, not known")("unknown"), ...absent];
}

interface Spot {
  /** Keys of the map in which the cursor stands. */
  readonly holder: readonly string[];
  /** The key whose value is being typed; null while a key is. */
  readonly key: string | null;
  readonly typed: string;
}

interface Frame {
  /** Column of a key in a block; -1 inside brackets. */
  readonly indent: number;
  readonly key: string;
}

/** Where the cursor is. Reads the text before it once, line by line, brackets across lines. */
function spotAt(text: string, offset: number): Spot {
  const frames: Frame[] = [];
  const brackets: Bracket[] = [];
  const lines = text.slice(text.startsWith("\uFEFF") ? 1 : 0, offset).split("\n");
  let spot: Spot = { holder: [], key: null, typed: "" };
  for (const raw of lines) {
    const line = raw.replace(/\r$/, "");
    if (brackets.length > 0) {
      spot = scanBrackets(line, frames, brackets, null);
      continue;
    }
    spot = scanBlock(line, frames, brackets);
  }
  return spot;
}

interface Bracket {
  readonly sign: string;
  /** The key before the bracket inside another one; null for the first, whose key is a frame, and for items of a list. */
  readonly key: string | null;
}

const keyStart = /^(?:"([^"]*)"|'([^']*)'|([^\s:#{}[\],"'][^:#{}[\],]*?)) *:(?=\s|$)/;

function scanBlock(line: string, frames: Frame[], brackets: Bracket[]): Spot {
  let indent = /^ */.exec(line)?.[0].length ?? 0;
  let rest = line.slice(indent);
  const dashes = /^(?:- +)+/.exec(rest)?.[0] ?? "";
  const empty = rest.trim() === "" || rest.startsWith("#");
  // A comment or an empty line closes nothing; the cursor's column says where it stands.
  const holderAt = (column: number): string[] => frames.filter((f) => f.indent < column).map((f) => f.key);
  if (empty) return { holder: holderAt(indent), key: null, typed: "" };
  while (frames.length > 0 && (frames.at(-1)?.indent ?? 0) >= indent) frames.pop();
  if (dashes !== "") {
    frames.push({ indent, key: "1" });
    indent += dashes.length;
    rest = rest.slice(dashes.length);
  }
  const match = keyStart.exec(rest);
  if (!match) {
    const opener = /^[{[]/.exec(rest);
    if (opener && dashes !== "") return scanBrackets(rest, frames, brackets, null);
    return { holder: frames.map((f) => f.key), key: null, typed: rest };
  }
  const key = match[1] ?? match[2] ?? match[3] ?? "";
  frames.push({ indent, key });
  const value = rest.slice(match[0].length).replace(/^\s+/, "");
  if (/^[{[]/.test(value)) return scanBrackets(value, frames, brackets, null);
  const holder = frames.slice(0, -1).map((f) => f.key);
  return { holder, key, typed: /(^|\s)#/.test(value) ? "" : value };
}

function scanBrackets(line: string, frames: readonly Frame[], brackets: Bracket[], pending: string | null): Spot {
  let key = pending;
  let word = "";
  let quote = "";
  for (let i = 0; i < line.length; i++) {
    const sign = line.charAt(i);
    if (quote !== "") {
      if (sign === quote) quote = "";
      else word += sign;
    } else if ((sign === '"' || sign === "'") && word.trim() === "") quote = sign;
    else if (sign === "{" || sign === "[") {
      const outer = brackets.at(-1);
      brackets.push({ sign, key: outer?.sign === "[" ? "1" : key });
      [key, word] = [null, ""];
    } else if (sign === "}" || sign === "]") {
      brackets.pop();
      [key, word] = [null, ""];
      if (brackets.length === 0) break;
    } else if (sign === ",") [key, word] = [null, ""];
    else if (sign === ":" && key === null && /\s|^$/.test(line.charAt(i + 1))) [key, word] = [word.trim(), ""];
    else if (sign === "#" && /\s/.test(line.charAt(i - 1))) break;
    else word += sign;
  }
  const block = frames.map((f) => f.key);
  const inner = brackets.flatMap((b, i) => (i === 0 || b.key === null ? [] : [b.key]));
  const holder = [...block, ...inner];
  if (brackets.length === 0) return { holder: block.slice(0, -1), key: null, typed: "" };
  const typed = word.replace(/^\s+/, "");
  if (brackets.at(-1)?.sign === "[") return { holder: holder.slice(0, -1), key: holder.at(-1) ?? null, typed };
  return { holder, key, typed };
}
