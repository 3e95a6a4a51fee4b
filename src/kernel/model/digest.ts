// What stands at a path, in 64 digits: a record keeps it to notice later that its ground has moved.
import { sha256 } from "../sha256.ts";
import type { Node } from "./node.ts";

/**
 * SHA-256 over the canonical values of a tree: keys sorted, numbers without idle zeros, no notes, dates or provenance, and no `like`, since
 * what it lays under is there itself. Nothing there has a digest too.
 */
export function digest(node: Node | undefined): string {
  return sha256(canonical(node));
}

/** The text that `digest` is taken of: equal for trees that say the same. */
export function canonical(node: Node | undefined): string {
  if (!node) return "-";
  if (node.is === "leaf") return JSON.stringify(value(node.text));
  if (node.is === "list") return `[${node.items.map(canonical).join(",")}]`;
  const keys = [...node.entries.keys()].filter((key) => key !== "like").toSorted();
  return `{${keys.map((key) => `${JSON.stringify(key)}:${canonical(node.entries.get(key))}`).join(",")}}`;
}

/** `5.0 mm` and `5 mm` say the same; a word, a channel or a name is taken as it is. */
function value(text: string): string {
  const tidy = text.trim().replace(/\s+/g, " ");
  if (!/^[-+]?[\d.]/.test(tidy)) return tidy;
  return tidy.replace(/(?<![\w.])\d+\.\d+(?![\w.])/g, (n) => n.replace(/\.?0+$/, ""));
}
