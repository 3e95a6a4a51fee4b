// The file view's side of the worker: completion and help at a place of a text, by the keys that the rooms declare.
import { complete, type Completion, hover } from "../../../kernel/model/complete.ts";
import type { KeyNode } from "../../../kernel/model/keys.ts";
import { nodeAt } from "../../../kernel/model/node.ts";
import { roleOf } from "../../../kernel/model/role.ts";
import type { Bench } from "./bench.ts";

export interface Spot {
  readonly file: string;
  /** As it stands in the editor: the worker's own may be a letter behind. */
  readonly text: string;
  readonly offset: number;
}

export function completeAt(bench: Bench, { file, text, offset }: Spot): Completion | null {
  const role = roleOf(file);
  return role && complete(text, offset, role, bench.house.keys, (at) => namesFor(bench, at));
}

export function hoverAt(bench: Bench, { file, text, offset }: Spot): { readonly path: string; readonly says: string } | null {
  const role = roleOf(file);
  const found = role && hover(text, offset, role, bench.house.keys);
  return found && { path: found.path.join("."), says: found.says };
}

/** Names the shop has for what is wanted: entries of the catalogue, things of a kind. */
function namesFor(bench: Bench, at: KeyNode): readonly string[] {
  const { graph } = bench.best();
  const group = (name: string): string[] => {
    const node = nodeAt(graph.model.roots.get("shop"), ["catalogue", name]);
    return node?.is === "map" ? [...node.entries.keys()] : [];
  };
  const own = at.like === undefined ? [] : group(at.like);
  const to = at.link?.to;
  const things = to === undefined ? [] : graph.items.filter((i) => i.scope === to && i.named).map((i) => i.path.at(-1) ?? "");
  return [...new Set([...own, ...things, ...(to?.like === undefined ? [] : group(to.like))])].toSorted();
}
