// Options as the user lays them: what builds on what, what they cost together, and what each writes where.
import { keyNodeAt } from "./address.ts";
import { type Model, type Node, nodeAt, type OptionFile, type Variant } from "./node.ts";
import { homeOf } from "./patch.ts";
import type { ParsedShop } from "./shop.ts";
import { pathText } from "../item.ts";
import { readQuantity } from "../quantity.ts";

type Laid = Variant["options"][number];

/** The options with all that they build on, what they build on first. */
export function withNeeds(files: readonly OptionFile[], laid: readonly Laid[]): Laid[] {
  const all: Laid[] = [];
  const add = (o: Laid, trail: readonly string[]): void => {
    if (trail.includes(o.name) || all.some((a) => a.machine === o.machine && a.name === o.name)) return;
    const needs = files.find((f) => f.machine === o.machine && f.name === o.name)?.needs ?? [];
    for (const name of needs) add({ machine: o.machine, name }, [...trail, o.name]);
    all.push(o);
  };
  for (const o of laid) add(o, []);
  return all;
}

/** What a remedy lays over, as single values tried out. Its paths are below the thing it is about, or start with `shop/`. */
export function triesOf(item: string, lay: Readonly<Record<string, string>>): Variant["tries"] {
  const slash = item.indexOf("/");
  const [root, under] = slash < 0 ? [item, ""] : [item.slice(0, slash), item.slice(slash + 1)];
  return Object.entries(lay).map(([path, text]) => ({
    root,
    path: path.startsWith("shop/") || under === "" ? path : `${under}.${path}`,
    text,
  }));
}

/** Money and time of several options together. */
export interface Bill {
  /** Sum in the currency of the shop; null when an option does not say. */
  readonly cost: number | null;
  readonly hours: number | null;
  /** Options that say no cost, or no hours. */
  readonly silent: readonly string[];
}

/** Money and time add up where they can be read; what says nothing is named. */
export function billOf(files: readonly OptionFile[]): Bill {
  const total = (texts: readonly (string | null)[], kind: "money" | "long-time"): number | null =>
    texts.reduce<number | null>((sum, text) => {
      const read = text === null ? null : readQuantity(text, kind);
      return read?.ok ? (sum ?? 0) + read.nominal : sum;
    }, null);
  return {
    cost: total(
      files.map((f) => f.cost),
      "money",
    ),
    hours: total(
      files.map((f) => f.hours),
      "long-time",
    ),
    silent: files.filter((f) => f.cost === null).map((f) => f.name),
  };
}

/** Whether an option changes nothing but keys that no room reads yet. */
export function isUnread(shop: ParsedShop, { file }: OptionFile): boolean {
  const doc = shop.files.get(file)?.option;
  const touched = doc ? [...doc.set, ...doc.replace, ...doc.remove] : [];
  return (
    touched.length > 0 &&
    touched.every(({ address }) => {
      const node = keyNodeAt(address, shop.keys);
      return node?.lax === true && node.keys.size === 0 && !node.any && !node.item && !node.input;
    })
  );
}

/** One value that an option would change: where it would be written, what stands there and what would. */
export interface OptionChange {
  readonly option: string;
  /** The file in which the value would be written once the option is carried out, and its path as options write it. */
  readonly file: string;
  readonly path: string;
  readonly from: string | null;
  /** Null where the option takes the value away. */
  readonly to: string | null;
}

/** What options change, value by value, in the order of their files; `found` is the shop without them. */
export function changesOf(shop: ParsedShop, found: Model, laid: readonly Laid[]): OptionChange[] {
  return laid.flatMap(({ machine, name }) => {
    const file = found.options.find((o) => o.machine === machine && o.name === name)?.file;
    const doc = file === undefined ? undefined : shop.files.get(file)?.option;
    if (!doc) return [];
    const one = (root: string, path: readonly string[], to: string | null): OptionChange => ({
      option: name,
      file: homeOf({ root, path }, shop).file,
      path: root === machine ? pathText(path) : `${root}/${pathText(path)}`,
      from: textOf(nodeAt(found.roots.get(root), path)),
      to,
    });
    const all = [...doc.replace, ...doc.set].flatMap(({ address: { root, path }, node }) =>
      leavesOf(node).map(([below, text]) => one(root, [...path, ...below], text)),
    );
    return [...doc.remove.map(({ address: { root, path } }) => one(root, path, null)), ...all];
  });
}

/** Single values of a node with their paths below it; a list is one value. */
function leavesOf(node: Node): [readonly string[], string][] {
  if (node.is !== "map") return [[[], textOf(node) ?? ""]];
  return [...node.entries].flatMap(([key, child]) => leavesOf(child).map(([path, text]): [string[], string] => [[key, ...path], text]));
}

/** A value as a file would hold it on one line. */
function textOf(node: Node | undefined): string | null {
  if (node === undefined) return null;
  switch (node.is) {
    case "leaf":
      return node.text;
    case "list":
      return `[${node.items.map((item) => textOf(item) ?? "").join(", ")}]`;
    case "map":
      return `{${[...node.entries].map(([key, child]) => `${key}: ${textOf(child) ?? ""}`).join(", ")}}`;
  }
}
