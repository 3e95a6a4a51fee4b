// What a file says, without places: the tree before a change, as it should be after it, and whether it is.
import { knownLongForm } from "./check-keys.ts";
import type { Node } from "./node.ts";

/** A text, a list of texts (written in square brackets), or null: take the key away. */
export type PatchValue = string | readonly string[] | null;

/** The key that the short form of a map fills, by the path of the map; undefined where there is no short form. */
export type Heads = (path: readonly string[]) => string | undefined;

/** A tree without places: texts, lists, maps. An empty value is a map without keys, as the loader takes it. */
export type Plain = string | readonly Plain[] | ReadonlyMap<string, Plain>;

export function plain(node: Node): Plain {
  if (node.is === "leaf") return node.text;
  if (node.is === "list") return node.items.map(plain);
  return new Map([...node.entries].map(([key, child]) => [key, plain(child)]));
}

const isPlainMap = (p: Plain | undefined): p is ReadonlyMap<string, Plain> => p instanceof Map;

/** What the tree has to be afterwards; undefined when there is nothing to take away. */
export function changed(
  tree: Plain | undefined,
  path: readonly string[],
  value: PatchValue,
  heads: Heads,
  done: readonly string[],
): Plain | undefined {
  const [key, ...rest] = path;
  if (key === undefined) return value === null ? undefined : longForm(tree, value);
  if (Array.isArray(tree)) {
    const i = (tree as readonly Plain[]).findIndex((item, n) => plainName(item, n) === key);
    const next = i < 0 ? undefined : changed(tree[i] as Plain, rest, value, heads, [...done, key]);
    return next === undefined ? undefined : (tree as readonly Plain[]).with(i, next);
  }
  const head = heads(done);
  if (typeof tree === "string" && rest.length === 0 && key === head) return value ?? undefined;
  const keptHead = typeof tree === "string" && head !== undefined && !["", "none", "unknown"].includes(tree);
  const entries = new Map(isPlainMap(tree) ? tree : keptHead ? [[head, tree]] : []);
  if (value === null && rest.length === 0) return entries.delete(key) ? entries : undefined;
  const next = changed(entries.get(key), rest, value, heads, [...done, key]);
  return next === undefined ? undefined : entries.set(key, next);
}

function longForm(tree: Plain | undefined, value: string | readonly string[]): Plain {
  const keeps = isPlainMap(tree) && tree.has("value") && [...tree.keys()].every((k) => knownLongForm.has(k));
  return keeps ? new Map(tree).set("value", value) : value;
}

function plainName(item: Plain, index: number): string {
  const name = isPlainMap(item) ? (item.get("operation") ?? item.get("step")) : undefined;
  return typeof name === "string" ? name : String(index + 1);
}

export function same(a: Plain, b: Plain): boolean {
  if (typeof a === "string" || typeof b === "string") return a === b;
  if (isPlainMap(a) || isPlainMap(b)) {
    return isPlainMap(a) && isPlainMap(b) && a.size === b.size && [...a].every(([key, x]) => b.has(key) && same(x, b.get(key) as Plain));
  }
  return a.length === b.length && a.every((x, i) => same(x, b[i] as Plain));
}
