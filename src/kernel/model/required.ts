// What nobody may assume: required keys that are missing from the things that are there.
import type { Input } from "../figure.ts";
import type { KeyNode } from "./keys.ts";
import type { MapNode, Node } from "./node.ts";
import type { Draft } from "./report.ts";

/** A note for each required key that is neither written, nor `unknown`, nor `none`, at the thing that lacks it. */
export function requiredMissing(root: MapNode, at: KeyNode): Draft[] {
  const drafts: Draft[] = [];
  const walk = (node: Node | undefined, key: KeyNode, holder: MapNode, path: readonly string[]): void => {
    // `none` or `unknown` at a map answers for all below it; what stands wrongly there was reported.
    if (node?.is === "leaf") return;
    if (node?.is === "list") {
      for (const item of node.items) if (key.item) walk(item, key.item, item.is === "map" ? item : holder, path);
      return;
    }
    const here = node ?? holder;
    for (const [name, below] of key.keys) {
      const child = node?.entries.get(name);
      // What stands there and cannot be read was reported: that says it all.
      if (child === undefined && node?.unread?.includes(name)) continue;
      if (child === undefined && below.input?.required) drafts.push(note(below.input, here, [...path, name]));
      // Another thing that is not there lacks nothing, unless it comes with its holder.
      if (child === undefined && below.says !== undefined && !(below.implied && node)) continue;
      walk(child, below, child?.is === "map" ? child : here, [...path, name]);
    }
    if (node && key.any)
      for (const [name, child] of node.entries)
        if (!key.keys.has(name)) walk(child, key.any, child.is === "map" ? child : here, [...path, name]);
  };
  walk(root, at, root, []);
  return drafts;
}

function note(input: Input<unknown>, holder: MapNode, path: readonly string[]): Draft {
  const words = input.words ? `${input.words.join(", ")}?` : `${input.says}.`;
  return {
    code: "required",
    says: `\`${path.join(".")}\` is missing: ${words} Never assumed; the checks that need it stay open. How to find out: ${input.measure}`,
    place: holder.key ?? holder.place,
    ...(input.words ? { expected: input.words.join(", ") } : {}),
  };
}
