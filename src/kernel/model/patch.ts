// One value changed in the text of a file: spliced in where it stands, every other byte as it was.
import { isMap, isScalar, isSeq, type Pair, Scalar, type YAMLMap, type YAMLSeq } from "yaml";
import { type Address, addressOf } from "./address.ts";
import { knownLongForm } from "./check-keys.ts";
import { keyAt } from "./keys.ts";
import { parseFile } from "./parse.ts";
import { changed, type Heads, type PatchValue, plain, same } from "./plain.ts";
import { keysOfFile, roleOf } from "./role.ts";
import type { ParsedShop } from "./shop.ts";
import { readSyntax } from "./syntax.ts";

export type Patched = { readonly text: string } | { readonly refused: string };

interface Splice {
  readonly at: number;
  readonly remove: number;
  readonly insert: string;
}
type Splices = readonly Splice[] | { readonly refused: string };

/**
 * The text with the value at a path replaced, added or taken away. A value in long form keeps its provenance; missing maps are made; braces are
 * edited inside. The result is read again and compared: when anything else would change its meaning, nothing is written.
 */
export function patch(text: string, path: readonly string[], value: PatchValue, heads: Heads = () => undefined): Patched {
  const before = parseFile("", text);
  const read = readSyntax("", text);
  if ("refused" in read || before.drafts.length > 0) return { refused: "the file cannot be read as it stands; put it right first" };
  if (path.length === 0) return { refused: "a path is wanted" };
  const wanted = changed(plain(before.root), path, value, heads, []);
  if (wanted === undefined) return { refused: `nothing stands at ${path.join(".")}` };
  const edit = new Edit(text, heads);
  let refused = `${path.join(".")} cannot be written there without changing something else`;
  for (const written of spellings(value)) {
    const splices = edit.at(read.document.contents, path, written);
    if ("refused" in splices) {
      refused = splices.refused;
      break;
    }
    const next = spliced(text, splices);
    const parsed = parseFile("", next);
    if (parsed.drafts.length === 0 && same(plain(parsed.root), wanted)) return { text: next };
  }
  return { refused };
}

/** The short forms of a file, told from its path. */
export function headsOf(file: string, shop: ParsedShop): Heads {
  const role = roleOf(file);
  return (path) => (role ? keyAt(keysOfFile(role, shop.keys), path)?.head : undefined);
}

/** The file and the path in it where the value of an address is written. What comes from the catalogue is written beside its `like`. */
export function homeOf(address: string | Address, shop: ParsedShop): { file: string; path: readonly string[] } {
  const { root, path } = typeof address === "string" ? addressOf(address, "shop", shop.machines) : address;
  const [folder = "", name = "", ...rest] = path;
  if (root === "shop" && folder === "catalogue") {
    const files = [...shop.files.values()].filter((f) => f.role.is === "catalogue");
    const holds = (f: (typeof files)[number]): boolean => {
      const group = f.tree.entries.get(name);
      return group?.is === "map" && group.entries.has(rest[0] ?? "");
    };
    return { file: (files.find(holds) ?? files[0])?.parsed.file ?? "catalogue/parts.yaml", path: path.slice(1) };
  }
  if (root === "shop") return { file: "shop.yaml", path };
  if (folder === "work" || folder === "sequences") return { file: `${root}/${folder}/${name}.yaml`, path: rest };
  return { file: `${root}/machine.yaml`, path };
}

/** Ways to write a value, plain first; the first that reads back as it should is taken. */
function spellings(value: PatchValue): (string | null)[] {
  if (value === null) return [null];
  if (typeof value === "string") return value === "" ? ['""'] : [value, JSON.stringify(value)];
  const quoted = (t: string): string => (/^[\w.+/% -]*[\w.+/%-]$/.test(t) ? t : JSON.stringify(t));
  return [value.length === 0 ? "[]" : `[ ${value.map(quoted).join(", ")} ]`];
}

function spliced(text: string, splices: readonly Splice[]): string {
  let next = text;
  for (const { at, remove, insert } of splices.toSorted((a, b) => b.at - a.at)) next = next.slice(0, at) + insert + next.slice(at + remove);
  return next;
}

/** Finds the stretches to change for one path. */
class Edit {
  readonly #text: string;
  readonly #heads: Heads;
  readonly #eol: string;

  constructor(text: string, heads: Heads) {
    this.#text = text;
    this.#heads = heads;
    this.#eol = text.includes("\r\n") ? "\r\n" : "\n";
  }

  at(contents: unknown, path: readonly string[], written: string | null): Splices {
    if (!isMap(contents)) return this.#intoNothing(path, written);
    return this.#below(contents, null, path, 0, written);
  }

  /** A file without a key: all of the path is new. */
  #intoNothing(path: readonly string[], written: string | null): Splices {
    if (written === null) return { refused: "nothing stands there" };
    const lead = this.#text === "" || this.#text === "\uFEFF" || this.#text.endsWith("\n") ? "" : this.#eol;
    return [{ at: this.#text.length, remove: 0, insert: lead + this.#block(path, 0, 2, written) }];
  }

  #below(map: YAMLMap, holder: Pair | null, path: readonly string[], depth: number, written: string | null): Splices {
    const key = path[depth] ?? "";
    const pair = map.items.find((p) => isScalar(p.key) && p.key.source === key);
    const rest = path.slice(depth + 1);
    if (!pair) return written === null ? { refused: "nothing stands there" } : this.#add(map, holder, path.slice(depth), written);
    const node = pair.value;
    if (rest.length === 0) return written === null ? this.#remove(map, holder, pair) : this.#replace(pair, written);
    if (isMap(node)) return this.#below(node, pair, path, depth + 1, written);
    if (isSeq(node)) return this.#inList(node, path, depth + 1, written);
    return this.#inWord(pair, path.slice(0, depth + 1), rest, written);
  }

  #inList(list: YAMLSeq, path: readonly string[], depth: number, written: string | null): Splices {
    const item = list.items.find((node, i) => itemName(node, i) === path[depth]);
    if (isMap(item) && depth + 1 < path.length) return this.#below(item, null, path, depth + 1, written);
    if (isScalar(item) && item.range && depth + 1 === path.length && written !== null) return [this.#over(item.range, written)];
    return { refused: `the list has no item \`${path[depth] ?? ""}\` to be changed in this way` };
  }

  /** A word stands where a map is wanted: `choke: none` gives way, `valve: detent` is the head key of its map. */
  #inWord(pair: Pair, at: readonly string[], rest: readonly string[], written: string | null): Splices {
    const word = isScalar(pair.value) ? (pair.value.source ?? "") : "";
    const head = this.#heads(at);
    if (rest.length === 1 && rest[0] === head && written !== null) return this.#replace(pair, written);
    if (written === null) return { refused: "nothing stands there" };
    const inner = braces(rest, written);
    if (word === "" && isScalar(pair.value) && pair.value.type === Scalar.PLAIN) return this.#replace(pair, `{ ${inner} }`);
    if (word === "none" || word === "unknown") return this.#replace(pair, `{ ${inner} }`);
    if (head === undefined || !isScalar(pair.value) || !pair.value.range)
      return { refused: `\`${at.join(".")}\` is the word "${word}", no map` };
    const [from, to] = pair.value.range;
    return [{ at: from, remove: to - from, insert: `{ ${head}: ${this.#text.slice(from, to)}, ${inner} }` }];
  }

  #over(range: readonly [number, number, number], insert: string): Splice {
    return { at: range[0], remove: range[1] - range[0], insert };
  }

  #replace(pair: Pair, written: string): Splices {
    const node = pair.value;
    if (isScalar(node) && node.range) {
      if (node.type === Scalar.BLOCK_LITERAL || node.type === Scalar.BLOCK_FOLDED)
        return { refused: "a text of several lines stands there; change it in the file" };
      if (node.range[1] > node.range[0]) return [this.#over(node.range, written)];
      const colon = this.#colon(pair);
      return colon === null ? { refused: "no colon after the key" } : [{ at: colon + 1, remove: 0, insert: ` ${written}` }];
    }
    if (isMap(node)) {
      const value = node.items.find((p) => isScalar(p.key) && p.key.source === "value");
      if (value && node.items.every((p) => isScalar(p.key) && knownLongForm.has(p.key.source ?? ""))) return this.#replace(value, written);
    }
    if ((isMap(node) || isSeq(node)) && node.flow && node.range) return [this.#over(node.range, written)];
    return { refused: "several lines stand there; change them in the file" };
  }

  #colon(pair: Pair): number | null {
    const end = isScalar(pair.key) ? pair.key.range?.[1] : undefined;
    if (end === undefined) return null;
    const colon = this.#text.indexOf(":", end);
    return colon >= 0 && this.#text.slice(end, colon).trim() === "" ? colon : null;
  }

  #add(map: YAMLMap, holder: Pair | null, keys: readonly string[], written: string): Splices {
    const last = map.items.at(-1);
    if (map.flow) {
      if (!map.range) return { refused: "the braces cannot be found" };
      const inner = braces(keys, written);
      if (!last) return [this.#over(map.range, `{ ${inner} }`)];
      return [{ at: endOf(last) ?? map.range[1] - 1, remove: 0, insert: `, ${inner}` }];
    }
    const first = map.items[0];
    const start = first && startOfPair(first);
    const end = last && endOf(last);
    if (start === undefined || end === undefined) return { refused: "the map cannot be found" };
    const indent = this.#column(start);
    const outer = holder ? startOfPair(holder) : undefined;
    const step = outer === undefined ? this.#usualStep(map) : Math.max(1, indent - this.#column(outer));
    const after = this.#lineAfter(end);
    const lead = after > 0 && this.#text[after - 1] !== "\n" ? this.#eol : "";
    return [{ at: after, remove: 0, insert: lead + this.#block(keys, indent, step, written) }];
  }

  /** Keys below one another, each further in; the value stands at the last. */
  #block(keys: readonly string[], indent: number, step: number, written: string): string {
    const line = (key: string, i: number): string =>
      `${" ".repeat(indent + i * step)}${spelledKey(key)}:${i === keys.length - 1 ? ` ${written}` : ""}${this.#eol}`;
    return keys.map(line).join("");
  }

  /** How far the file steps in, seen at the first block below the top. */
  #usualStep(map: YAMLMap): number {
    for (const { value } of map.items) {
      const first = isMap(value) && !value.flow ? value.items[0] : undefined;
      const start = first && startOfPair(first);
      if (start !== undefined) return Math.max(1, this.#column(start));
    }
    return 2;
  }

  #column(at: number): number {
    const start = this.#lineStart(at);
    return at - start - (start === 0 && this.#text.startsWith("\uFEFF") ? 1 : 0);
  }

  #lineStart(at: number): number {
    return this.#text.lastIndexOf("\n", at - 1) + 1;
  }

  /** Where the line after the one that holds this letter begins. A value that ends with its line break ends on the line before. */
  #lineAfter(at: number): number {
    if (at > 0 && this.#text[at - 1] === "\n") return at;
    const end = this.#text.indexOf("\n", at);
    return end < 0 ? this.#text.length : end + 1;
  }

  #remove(map: YAMLMap, holder: Pair | null, pair: Pair): Splices {
    const [start, end] = [startOfPair(pair), endOf(pair)];
    if (start === undefined || end === undefined) return { refused: "the key cannot be found" };
    const i = map.items.indexOf(pair);
    if (map.flow) {
      const [before, after] = [map.items[i - 1], map.items[i + 1]];
      const next = after && startOfPair(after);
      if (next !== undefined) return [{ at: start, remove: next - start, insert: "" }];
      const from = before ? endOf(before) : undefined;
      if (from !== undefined) return [{ at: from, remove: end - from, insert: "" }];
      return map.range ? [this.#over(map.range, "{}")] : { refused: "the braces cannot be found" };
    }
    const from = this.#lineStart(start);
    if (this.#text.slice(from, start).replace("\uFEFF", "").trim() !== "")
      return { refused: "the key shares its line with another; change it in the file" };
    const lines: Splice = {
      at: start === 1 && this.#text.startsWith("\uFEFF") ? 1 : from,
      remove: this.#lineAfter(end) - from,
      insert: "",
    };
    if (map.items.length > 1 || !holder) return [lines];
    const colon = this.#colon(holder);
    return colon === null ? { refused: "no colon after the key" } : [lines, { at: colon + 1, remove: 0, insert: " {}" }];
  }
}

function startOfPair(pair: Pair): number | undefined {
  return isScalar(pair.key) ? pair.key.range?.[0] : undefined;
}

function endOf(pair: Pair): number | undefined {
  const key = isScalar(pair.key) ? pair.key.range?.[1] : undefined;
  const { value } = pair;
  if (!(isScalar(value) || isMap(value) || isSeq(value))) return key;
  if (isScalar(value) && value.range && value.range[0] === value.range[1]) return key === undefined ? undefined : key + 1;
  if (isMap(value) && !value.flow) return lastEnd(value.items.at(-1)) ?? value.range?.[1];
  if (isSeq(value) && !value.flow) {
    const item = value.items.at(-1);
    const inner = isMap(item) && !item.flow ? lastEnd(item.items.at(-1)) : undefined;
    return inner ?? (isScalar(item) || isMap(item) || isSeq(item) ? item.range?.[1] : value.range?.[1]);
  }
  return value.range?.[1];
}

const lastEnd = (pair: Pair | undefined): number | undefined => pair && endOf(pair);

function itemName(node: unknown, index: number): string {
  const named = isMap(node)
    ? new Map(node.items.flatMap((p) => (isScalar(p.key) && isScalar(p.value) ? [[p.key.source, p.value.source]] : [])))
    : null;
  return named?.get("operation") ?? named?.get("step") ?? String(index + 1);
}

const spelledKey = (key: string): string => (/^[\w./-]+$/.test(key) ? key : JSON.stringify(key));

function braces(keys: readonly string[], written: string): string {
  const [key = "", ...rest] = keys;
  return `${spelledKey(key)}: ${rest.length === 0 ? written : `{ ${braces(rest, written)} }`}`;
}
