// Paths as options, records and tries write them: to a root, keys, and what may stand there.
import { pathKeys, pathText } from "../item.ts";
import { nearest } from "../nearest.ts";
import { keyAt, type KeyNode, type Keys } from "./keys.ts";
import { listName, type Node } from "./node.ts";

export interface Address {
  /** `shop` or the folder of a machine. */
  readonly root: string;
  readonly path: readonly string[];
}

/** `shop/air.leaks`, `mill/axes.x`, `work/spool-shaft.batch`, `axes.x.screw`: the path as seen from a machine. */
export function addressOf(text: string, machine: string, machines: ReadonlySet<string>): Address {
  const slash = text.indexOf("/");
  const head = text.slice(0, Math.max(0, slash));
  if (head === "shop" || machines.has(head)) return { root: head, path: pathKeys(text.slice(slash + 1)) };
  return { root: machine, path: pathKeys(text) };
}

/** The text that `addressOf` reads back from the same machine. */
function addressText({ root, path }: Address, machine: string): string {
  return root === machine ? pathText(path) : `${root}/${pathText(path)}`;
}

/** The key tree and the way down it. */
function keyRoot({ root, path }: Address, keys: Keys): { top: KeyNode; path: readonly string[] } {
  if (root !== "shop") return { top: keys.machine, path };
  return path[0] === "catalogue" ? { top: keys.catalogue, path: path.slice(1) } : { top: keys.shop, path };
}

/** What may stand at an address; undefined where nothing may. */
export function keyNodeAt(address: Address, keys: Keys): KeyNode | undefined {
  const { top, path } = keyRoot(address, keys);
  return keyAt(top, path);
}

/** What stands at the end of a path that is set: a whole thing may bear a new name, a single value only one that is no slip of an old name. */
export type Makes = "thing" | "value" | "nothing";

export interface Stray {
  readonly says: string;
  /** The whole path put right. */
  readonly nearest?: string;
}

/**
 * Why a path leads nowhere, or null. Keys are looked up in the key tree; names of things and of list items among those that are there, unless
 * the path ends at a name, which may be new. `trees` are all places where the thing could be found.
 */
export function strayed(address: Address, machine: string, keys: Keys, trees: readonly (Node | undefined)[], makes: Makes): Stray | null {
  const { top, path } = keyRoot(address, keys);
  const skipped = address.path.length - path.length;
  let at: KeyNode | undefined = top;
  let nodes = trees.map((tree) => address.path.slice(0, skipped).reduce(child, tree));
  for (const [i, key] of path.entries()) {
    if (at.lax && !at.keys.has(key)) return null;
    const next: KeyNode | undefined = at.keys.get(key) ?? at.any ?? at.item;
    const below = nodes.map((n) => child(n, key));
    const isKey = at.keys.has(key) || (key === "like" && at.like !== undefined);
    const isThere = next !== undefined && below.some((n) => n !== undefined);
    if (!isKey && !isThere) {
      const names = [...at.keys.keys(), ...(at.like === undefined ? [] : ["like"]), ...nodes.flatMap(namesIn)];
      const near = nearest(key, new Set(names));
      const isNew = at.any !== undefined && i === path.length - 1 && (makes === "thing" || (makes === "value" && near === undefined));
      if (isNew) return null;
      const better = near === undefined ? undefined : addressText({ ...address, path: address.path.with(skipped + i, near) }, machine);
      const holder = path[i - 1];
      const says = `${at.says ?? (holder === undefined ? "nothing" : `\`${holder}\``)} has no \`${key}\` here.${better === undefined ? "" : ` Did you mean \`${better}\`?`}`;
      return { says, ...(better === undefined ? {} : { nearest: better }) };
    }
    if (!next) return i === path.length - 1 ? null : { says: `nothing stands below \`${key}\`` };
    [at, nodes] = [next, below];
  }
  return path.length === 0 ? { says: "a path is wanted" } : null;
}

function child(node: Node | undefined, key: string): Node | undefined {
  if (node?.is === "map") return node.entries.get(key);
  if (node?.is === "list") return node.items.find((n, i) => listName(n, i) === key);
  return undefined;
}

function namesIn(node: Node | undefined): string[] {
  if (node?.is === "map") return [...node.entries.keys()];
  if (node?.is === "list") return node.items.map(listName);
  return [];
}
