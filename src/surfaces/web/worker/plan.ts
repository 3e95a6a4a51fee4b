// What the machines are made of beyond what the rooms know: enough to draw every block that is there.
import { type MapNode, type Node, nodeAt } from "../../../kernel/model/node.ts";
import type { Model } from "../../../kernel/model/node.ts";

/** The things of a root by their path, each with the word that says what it is. */
export interface Thing {
  readonly path: string;
  readonly kind: string;
}
export type Plan = Readonly<Record<string, readonly Thing[]>>;

/** Things of these maps are named by the user; the others stand for themselves. */
const named = ["devices", "axes", "air.compressors", "air.receivers", "spindle.belts"];
const single = ["spindle", "spindle.motor", "spindle.drive", "bar-feed", "controller", "control", "supply.run"];

export function planOf(model: Model): Plan {
  return Object.fromEntries([...model.roots].map(([root, tree]) => [root, thingsOf(tree)]));
}

function thingsOf(tree: MapNode): Thing[] {
  const there = (path: string): Node | undefined => {
    const node = nodeAt(tree, path.split("."));
    return node?.is === "leaf" && (node.text === "none" || node.text === "unknown") ? undefined : node;
  };
  const alone = single.flatMap((path): Thing[] => (there(path) ? [{ path, kind: kindOf(there(path)) }] : []));
  const many = named.flatMap((path): Thing[] => {
    const node = there(path);
    if (node?.is !== "map") return [];
    return [...node.entries]
      .filter(([, child]) => !(child.is === "leaf" && child.text === "none"))
      .map(([name, child]) => ({ path: `${path}.${name}`, kind: kindOf(child) }));
  });
  return [...alone, ...many];
}

function kindOf(node: Node | undefined): string {
  const kind = node?.is === "map" ? node.entries.get("kind") : undefined;
  return kind?.is === "leaf" ? kind.text : "";
}
