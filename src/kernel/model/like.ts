// Catalogue parts laid under the things that are `like` them.
import { nearest } from "../nearest.ts";
import type { KeyNode, Keys } from "./keys.ts";
import type { Leaf, MapNode, Node } from "./node.ts";
import { type Draft, some } from "./report.ts";
import { layOver, saidBy } from "./tree.ts";

/** Lays catalogue entries under the maps of a root. One is made for a shop, so that an entry is put together once. */
export interface Shelf {
  /** The catalogue itself, chains of `like` followed. */
  readonly catalogue: MapNode;
  readonly under: (root: MapNode, at: KeyNode) => MapNode;
}

/** `catalogue` as written, options laid over. What is wrong with a `like` goes to `drafts`. */
export function shelf(catalogue: MapNode, keys: Keys, drafts: Draft[]): Shelf {
  const done = new Map<string, MapNode>();
  const underway: string[] = [];

  const group = (name: string): MapNode | undefined => {
    const node = catalogue.entries.get(name);
    return node?.is === "map" ? node : undefined;
  };

  /** An entry with what it is like laid under it, said by the catalogue. */
  const entry = (of: string, name: string, by: Leaf): MapNode | undefined => {
    const mark = `${of}.${name}`;
    const known = done.get(mark);
    if (known) return known;
    const raw = group(of)?.entries.get(name);
    if (raw?.is !== "map") {
      missing(of, name, by);
      return undefined;
    }
    if (underway.includes(mark)) {
      const [start = name, ...others] = underway.slice(underway.indexOf(mark)).map((m) => m.slice(of.length + 1));
      const ring = others.length === 0 ? "itself" : [...others, start].map((other) => `\`${other}\``).join(", which is like ");
      drafts.push({ code: "like-ring", says: `\`${start}\` is like ${ring}; take one \`like\` of the ring out`, place: by.place });
      return undefined;
    }
    underway.push(mark);
    const said = saidBy(raw, { by: "catalogue", entry: name });
    const at = keys.catalogue.keys.get(of)?.any;
    const whole = laid(said, { keys: new Map(), ...at, like: of }) as MapNode; // a map stays one
    underway.pop();
    done.set(mark, whole);
    return whole;
  };

  const missing = (of: string, name: string, by: Leaf): void => {
    const names = [...(group(of)?.entries.keys() ?? [])];
    const near = nearest(name, names);
    const there = near === undefined ? undefined : group(of)?.entries.get(near);
    const where = there?.key ?? there?.place;
    const hint =
      near === undefined
        ? names.length > 0
          ? ` There are: ${some(names)}`
          : ""
        : ` Nearest: \`${near}\`${where ? ` (${where.file}:${where.line})` : ""}`;
    drafts.push({
      code: "not-in-catalogue",
      says: `no \`${name}\` under ${of} in catalogue/.${hint}`,
      place: by.place,
      ...(near === undefined ? {} : { nearest: near }),
    });
  };

  /** Rooms to come: whether any group has the name can be said, not which one is meant. */
  const somewhere = (by: Leaf): void => {
    const groups = [...catalogue.entries.values()].filter((n) => n.is === "map");
    if (groups.some((g) => g.entries.has(by.text))) return;
    const near = nearest(
      by.text,
      groups.flatMap((g) => [...g.entries.keys()]),
    );
    drafts.push({
      code: "not-in-catalogue",
      says: `no \`${by.text}\` in catalogue/.${near ? ` Nearest: \`${near}\`` : ""}`,
      place: by.place,
      ...(near ? { nearest: near } : {}),
    });
  };

  /** Things inside first: their own `like` is nearer to them than what comes from outside. */
  function laid(node: Node, at: KeyNode | undefined): Node {
    if (!at || node.is === "leaf") return node;
    if (node.is === "list") {
      const items = node.items.map((n) => laid(n, at.item ?? (at.lax ? at : undefined)));
      return items.every((n, i) => n === node.items[i]) ? node : { ...node, items };
    }
    let changed = false;
    const entries = new Map<string, Node>();
    for (const [key, child] of node.entries) {
      const next = laid(child, at.keys.get(key) ?? at.any ?? (at.lax ? { keys: new Map(), lax: true } : undefined));
      changed ||= next !== child;
      entries.set(key, next);
    }
    const map: MapNode = changed ? { ...node, entries } : node;
    const like = map.entries.get("like");
    if (like?.is !== "leaf" || at.keys.has("like") || like.text === "none" || like.text === "unknown") return map;
    if (at.like === undefined) {
      if (at.lax) somewhere(like);
      return map;
    }
    const part = entry(at.like, like.text, like);
    return part ? layOver(part, map, "upper") : map;
  }

  const groups = new Map<string, Node>();
  for (const [of, node] of catalogue.entries) {
    if (node.is !== "map") continue;
    const entries = new Map<string, Node>();
    for (const [name, raw] of node.entries) {
      const by: Leaf = { is: "leaf", text: name, place: raw.key ?? raw.place, origin: raw.origin, over: [] };
      entries.set(name, (raw.is === "map" ? entry(of, name, by) : undefined) ?? raw);
    }
    groups.set(of, { ...node, entries });
  }
  return { catalogue: { ...catalogue, entries: groups }, under: (root, at) => laid(root, at) as MapNode }; // a map stays one
}
