// One file's text to a tree of located values, and everything that is wrong with its grammar.
import { isMap, isScalar, isSeq, type Pair, Scalar } from "yaml";
import type { Place } from "../finding.ts";
import type { Leaf, MapNode, Node, Origin } from "./node.ts";
import { type Draft, startOf } from "./report.ts";
import { commentAte, type Read, readSyntax, runTogether } from "./syntax.ts";

export interface ParsedFile {
  readonly file: string;
  readonly text: string;
  readonly root: MapNode;
  readonly drafts: readonly Draft[];
  /** Lines that could not be read as written: nothing more is said about them. */
  readonly spoilt: ReadonlySet<number>;
  /** From this line on the tree is not what was meant. */
  readonly brokenFrom: number;
}

/** Ten times the largest file of the example shop; two seconds' work at worst, whatever stands in it. */
const largest = 200_000;

const line: Origin = { by: "line" };

/** Reads one file. Never throws, and takes bounded time on any text. */
export function parseFile(file: string, text: string): ParsedFile {
  const refuse = (draft: Draft): ParsedFile => ({ file, text, root: emptyMap(file), drafts: [draft], spoilt: new Set(), brokenFrom: 1 });
  if (text.length > largest) {
    return refuse({
      code: "too-large",
      says: `${Math.round(text.length / 1000)} kB; files of a shop folder have at most ${largest / 1000}`,
      place: startOf(file),
    });
  }
  const foreign = foreignSign(file, text);
  if (foreign) return refuse(foreign);
  const read = readSyntax(file, text);
  if ("refused" in read) return refuse(read.refused);

  const tree = new TreeOfValues(file, read);
  const root = tree.top();
  const spoilt = new Set([...read.drafts, ...tree.drafts.filter((d) => d.code !== "twice")].map((d) => d.place.line));
  const said = new Set(read.drafts.map((d) => d.place.line));
  const own = tree.drafts.filter((d) => !said.has(d.place.line) && d.place.line < read.brokenFrom);
  return { file, text, root, drafts: [...read.drafts, ...own], spoilt, brokenFrom: read.brokenFrom };
}

export function emptyMap(file: string): MapNode {
  return { is: "map", entries: new Map(), place: startOf(file), origin: line };
}

// Signs that no text has: controls but tab and line ends, and what a decoder leaves for bytes that are not UTF-8.
// oxlint-disable-next-line no-control-regex -- these are the ones looked for
const foreignSigns = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F\uFFFD\uFFFE\uFFFF]/;

function foreignSign(file: string, text: string): Draft | null {
  const at = text.search(foreignSigns);
  if (at < 0) return null;
  const before = text.slice(0, at);
  const row = before.split("\n").length;
  const column = at - before.lastIndexOf("\n");
  const says = "not readable as text in UTF-8; save it again in that encoding";
  return { code: "not-text", says, place: { file, line: row, column, endLine: row, endColumn: column + 1 } };
}

/** Composes the tree of one file; collects what the grammar allows and the files do not. */
class TreeOfValues {
  readonly drafts: Draft[] = [];
  readonly #file: string;
  readonly #read: Read;

  constructor(file: string, read: Read) {
    this.#file = file;
    this.#read = read;
  }

  top(): MapNode {
    const { contents } = this.#read.document;
    if (contents === null || (isScalar(contents) && contents.source === "" && contents.type === Scalar.PLAIN)) return emptyMap(this.#file);
    const root = this.#node(contents, "the file");
    if (root.is === "map") return root;
    const run = root.is === "leaf" ? runTogether(root.text) : null;
    if (run) this.#blankMissing(root.place, run[0].slice(0, -1));
    else this.drafts.push({ code: "not-a-map", says: "a file holds keys, one to a line: `key: value`", place: root.place });
    return emptyMap(this.#file);
  }

  #node(node: unknown, under: string): Node {
    if (isMap(node)) return this.#map(node, under);
    if (isSeq(node)) {
      return { is: "list", items: node.items.map((item) => this.#node(item, under)), place: this.#place(node), origin: line };
    }
    if (isScalar(node)) return this.#leaf(node);
    // An alias: refused already, by its token.
    return { is: "leaf", text: "", place: this.#place(node), origin: line, over: [] };
  }

  #place(node: unknown): Place {
    const range = (node as { range?: readonly [number, number, number] | null }).range;
    return range ? this.#read.place(range[0], range[1]) : startOf(this.#file);
  }

  #leaf(scalar: Scalar): Leaf {
    const text = scalar.source ?? "";
    const place = this.#place(scalar);
    if (scalar.type === Scalar.PLAIN && scalar.range) this.#eatenByComment(text, place, scalar.range[1]);
    return { is: "leaf", text, place, origin: line, over: [] };
  }

  /** `AWG #8`: a blank and # start a comment. Told from a real comment by the digit right behind the sign, or by nothing being left. */
  #eatenByComment(text: string, place: Place, end: number): void {
    const found = /^[ \t]+#([^\s#][^\s]*)/.exec(this.#read.source.slice(end, end + 80));
    const eaten = found?.[1] ?? "";
    if (eaten === "" || (text !== "" && !/^\d/.test(eaten))) return;
    this.drafts.push(commentAte(text, eaten, place));
  }

  #map(map: { items: readonly Pair[] }, under: string): MapNode {
    const entries = new Map<string, Node>();
    const flow = (map as { flow?: boolean }).flow === true;
    let before: { key: string; leaf: Leaf; end: number } | null = null;
    for (const { key, value } of map.items) {
      const at = this.#place(key);
      if (!isScalar(key) || key.source === undefined || key.source === "") {
        const text = isScalar(key) ? "a key is missing before the colon" : "a key is one word, no map and no list";
        this.drafts.push({ code: "bad-name", says: text, place: at });
        continue;
      }
      const name = key.source;
      if (value === null) {
        // In a block the parser has said so; inside braces it is allowed, and never meant.
        if (flow) before = this.#lonely(name, key, at, before, entries);
        continue;
      }
      const first = entries.get(name)?.key;
      if (first) {
        const says = `\`${name}\` stands twice under \`${under}\` (first here: line ${first.line}). Keep one`;
        this.drafts.push({ code: "twice", says, place: at });
        continue;
      }
      const child: Node = { ...this.#node(value, name), key: at };
      if (child.is === "leaf" && child.place.line > at.line) {
        const run = runTogether(child.text);
        if (run && isScalar(value) && value.type === Scalar.PLAIN) this.#blankMissing(child.place, run[0].slice(0, -1));
      }
      entries.set(name, child);
      before =
        child.is === "leaf" && isScalar(value) && value.type === Scalar.PLAIN && value.range
          ? { key: name, leaf: child, end: value.range[1] }
          : null;
    }
    return { is: "map", entries, place: this.#place(map), origin: line };
  }

  #blankMissing(place: Place, key: string): void {
    this.drafts.push({ code: "no-blank-after-colon", says: `a blank is missing after \`${key}:\``, place, expected: `${key}: ` });
  }

  /** A key without a value inside braces: `bore:34 mm`, the second half of `0,4 mm`, or a text with a comma. */
  #lonely(name: string, key: Scalar, at: Place, before: { key: string; leaf: Leaf; end: number } | null, entries: Map<string, Node>) {
    const start = key.range?.[0] ?? 0;
    const run = runTogether(name);
    if (run) {
      const better = `${run[1] ?? ""}: ${name.slice(run[0].length)}`;
      this.drafts.push({
        code: "no-blank-after-colon",
        says: `"${name}" is read as one word; write \`${better}\``,
        place: at,
        expected: better,
      });
    } else if (before && /^\d/.test(name) && /\d$/.test(before.leaf.text) && this.#read.source.slice(before.end, start) === ",") {
      const typed = `${before.leaf.text},${name}`;
      const better = `${before.leaf.text}.${name}`;
      const place: Place = { ...before.leaf.place, endLine: at.endLine, endColumn: at.endColumn };
      this.drafts.push({
        code: "decimal-comma",
        says: `"${typed}": decimal point wanted: \`${better}\` (inside braces a comma starts the next entry)`,
        place,
        expected: better,
      });
      entries.set(before.key, { ...before.leaf, text: typed, place });
    } else {
      this.drafts.push({
        code: "syntax",
        says: `\`${name}\` has no value; inside braces a comma starts a new entry, so a text that holds one needs quotes`,
        place: at,
      });
    }
    return null;
  }
}
