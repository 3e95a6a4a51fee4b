// Trees of located values laid over one another, and reached by path.
import { type Leaf, type ListNode, listName, type MapNode, type Node, type Origin } from "./node.ts";

/** Every value of the tree said by somebody else. */
export function saidBy(node: Node, origin: Origin): Node {
  if (node.is === "leaf") return { ...node, origin };
  if (node.is === "list") return { ...node, origin, items: node.items.map((n) => saidBy(n, origin)) };
  return { ...node, origin, entries: new Map([...node.entries].map(([k, n]) => [k, saidBy(n, origin)])) };
}

/** The tree with losers noted under each of its leaves. */
function beaten(node: Node, losers: readonly Leaf[]): Node {
  if (losers.length === 0 || node.is === "list") return node;
  if (node.is === "leaf") return { ...node, over: [...node.over, ...losers] };
  return { ...node, entries: new Map([...node.entries].map(([k, n]) => [k, beaten(n, losers)])) };
}

const flat = (leaf: Leaf): Leaf[] => [{ ...leaf, over: [] }, ...leaf.over];

/** A map is merged key by key, a value or list is replaced. What lost stays in `over`, strongest first. The place is that of `standing`. */
export function layOver(lower: Node | undefined, upper: Node, standing: "lower" | "upper"): Node {
  if (!lower) return upper;
  if (lower.is === "leaf") return beaten(upper, flat(lower));
  if (lower.is !== "map" || upper.is !== "map") return upper;
  const frame = standing === "lower" ? lower : upper;
  const entries = new Map(lower.entries);
  for (const [key, node] of upper.entries) entries.set(key, layOver(lower.entries.get(key), node, standing));
  const unread = [...(lower.unread ?? []), ...(upper.unread ?? [])];
  return unread.length > 0 ? { ...frame, entries, unread } : { ...frame, entries };
}

/**
 * The tree with the node at a path changed; maps on the way are made where they are missing. A list is entered by the name of an item, which
 * has to be there; otherwise the tree stays as it was.
 */
export function changeAt(
  tree: Node | undefined,
  path: readonly string[],
  change: (old: Node | undefined) => Node | undefined,
  frame: MapNode,
): Node | undefined {
  const [key, ...rest] = path;
  if (key === undefined) return change(tree);
  if (tree?.is === "list") {
    const items = tree.items.flatMap((item, i) => (listName(item, i) === key ? (changeAt(item, rest, change, frame) ?? []) : item));
    return { ...tree, items } satisfies ListNode;
  }
  // A single word on the way (`choke: none`, then `choke.share`) gives way to a map; it is kept as what lost.
  const base = tree?.is === "map" ? tree : frame;
  const losers = tree?.is === "leaf" ? flat(tree) : [];
  const next = changeAt(base.entries.get(key), rest, change, frame);
  const entries = new Map(base.entries);
  if (next) entries.set(key, beaten(next, losers));
  else if (!entries.delete(key)) return tree;
  return { ...base, entries };
}
