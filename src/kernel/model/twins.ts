// Names in lists: two operations of a part, or two steps of a sequence, must not answer to one name.
import { listName, type MapNode, type Node } from "./node.ts";
import { type Draft, where } from "./report.ts";

/** The tree without list items whose name an earlier one bears; each of them is reported. */
export function withoutTwins(root: MapNode, drafts: Draft[]): MapNode {
  const walk = (node: Node): Node => {
    if (node.is === "leaf") return node;
    if (node.is === "map") {
      let changed = false;
      const entries = new Map<string, Node>();
      for (const [key, child] of node.entries) {
        const next = walk(child);
        changed ||= next !== child;
        entries.set(key, next);
      }
      return changed ? { ...node, entries } : node;
    }
    const first = new Map<string, Node>();
    const items = node.items.flatMap((item, i) => {
      const name = listName(item, i);
      const other = first.get(name);
      if (!other) {
        first.set(name, item);
        return [walk(item)];
      }
      const says = `\`${name}\` stands twice in this list (first: ${where(other.place)}). Give one of them another name`;
      drafts.push({ code: "twice", says, place: nameOf(item)?.place ?? item.place });
      return [];
    });
    return items.length === node.items.length && items.every((item, i) => item === node.items[i]) ? node : { ...node, items };
  };
  return walk(root) as MapNode; // a map stays one
}

const nameOf = (item: Node): Node | undefined =>
  item.is === "map" ? (item.entries.get("operation") ?? item.entries.get("step")) : undefined;
