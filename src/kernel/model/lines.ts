// What the files themselves say: one tree for the shop and one for each machine, before anything is laid over or under.
import type { Keys } from "./keys.ts";
import { shelf } from "./like.ts";
import type { MapNode, Node } from "./node.ts";
import { emptyMap, parseFile } from "./parse.ts";
import { type Draft, where } from "./report.ts";
import type { LoadedFile, ParsedShop } from "./shop.ts";
import { layOver, saidBy } from "./tree.ts";

/** `shop` and each machine. */
export type Trees = ReadonlyMap<string, MapNode>;

/** What the files say: a tree for the shop and one for each machine. */
export function linesOf(shop: ParsedShop, drafts: Draft[]): Trees {
  const of = (wanted: (f: LoadedFile) => boolean): LoadedFile[] => [...shop.files.values()].filter(wanted);
  const trees = new Map<string, MapNode>();
  const top = shop.files.get("shop.yaml")?.tree ?? emptyMap("shop.yaml");
  const catalogue = merged(
    of((f) => f.role.is === "catalogue"),
    drafts,
  );
  trees.set("shop", { ...top, entries: new Map([...top.entries, ["catalogue", catalogue]]) });
  for (const machine of [...shop.machines].toSorted()) {
    const own = shop.files.get(`${machine}/machine.yaml`)?.tree;
    if (!own) continue;
    const entries = new Map(own.entries);
    for (const folder of ["work", "sequences"] as const) {
      const files = of(({ role }) => role.is === folder && role.machine === machine);
      const named = files.map((f): [string, Node] => ["name" in f.role ? f.role.name : "", f.tree]);
      if (named.length > 0) entries.set(folder, { ...emptyMap(`${machine}/${folder}`), entries: new Map(named) });
    }
    trees.set(machine, { ...own, entries });
  }
  return trees;
}

/** All files of catalogue/ as one map of groups. */
function merged(files: readonly LoadedFile[], drafts: Draft[]): MapNode {
  const groups = new Map<string, MapNode>();
  for (const { tree } of files) {
    for (const [group, node] of tree.entries) {
      if (node.is !== "map") continue;
      const before = groups.get(group);
      const entries = new Map(before?.entries);
      for (const [name, part] of node.entries) {
        const first = entries.get(name);
        const place = part.key ?? part.place;
        if (!first) entries.set(name, part);
        else
          drafts.push({
            code: "twice",
            says: `\`${name}\` stands twice under ${group} (first: ${where(first.key ?? first.place)}). Keep one`,
            place,
          });
      }
      groups.set(group, { ...(before ?? node), entries });
    }
  }
  return { ...emptyMap("catalogue"), entries: groups };
}

/** Catalogue parts laid under all that is like them. */
export function withParts(trees: Trees, keys: Keys, drafts: Draft[]): Trees {
  const shopTree = trees.get("shop") ?? emptyMap("shop.yaml");
  const raw = shopTree.entries.get("catalogue");
  const own = raw?.is === "map" ? raw : emptyMap("catalogue");
  const parts = shelf(shippedUnder(own, keys), keys, drafts);
  const done: Map<string, MapNode> = new Map();
  for (const [root, tree] of trees) {
    const whole = parts.under(tree, root === "shop" ? keys.shop : keys.machine);
    done.set(root, root === "shop" ? { ...whole, entries: new Map([...whole.entries, ["catalogue", parts.catalogue]]) } : whole);
  }
  return done;
}

const shipped = new WeakMap<Keys, MapNode>();
const SHIPPED = "shipped with the program";

/** The user's catalogue over the one that ships with the program. */
function shippedUnder(own: MapNode, keys: Keys): MapNode {
  let lower = shipped.get(keys);
  if (!lower) {
    const said = (text: string): Node => saidBy(parseFile(SHIPPED, text).root, { by: "catalogue", entry: SHIPPED });
    const all = keys.shipped.reduce<Node>((sum, text) => layOver(sum, said(text), "upper"), emptyMap(SHIPPED));
    lower = all.is === "map" ? all : emptyMap(SHIPPED);
    shipped.set(keys, lower);
  }
  const laid = layOver(lower, own, "upper");
  return laid.is === "map" ? laid : own;
}
