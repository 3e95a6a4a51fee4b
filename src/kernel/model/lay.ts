// What is laid over the lines: records, options, records taken under an option, tries, each stronger than the one before.
import type { Place } from "../finding.ts";
import type { Address } from "./address.ts";
import type { Change, OptionDoc, RecordDoc } from "./change.ts";
import type { Trees } from "./lines.ts";
import type { MapNode, Node, Origin } from "./node.ts";
import { changeAt, layOver, saidBy } from "./tree.ts";

/** A record that counts in this variant. */
export interface Counting {
  readonly doc: RecordDoc;
  /** Taken with an option carried out that is laid on: it knows better than the option. */
  readonly beatsOptions: boolean;
}
export interface Try {
  readonly address: Address;
  readonly node: Node;
}

/** Records over lines, options over records, records taken under an option over those, tries over everything. */
export function lay(lines: Trees, laid: readonly OptionDoc[], records: readonly Counting[], tries: readonly Try[]): Trees {
  const trees = new Map(lines);
  const say = ({ record, sets }: RecordDoc): void => {
    for (const change of sets) apply(trees, change, { by: "record", name: record.name, date: record.date }, "set");
  };
  for (const { doc, beatsOptions } of records) if (!beatsOptions) say(doc);
  for (const { option, remove, replace, set } of laid) {
    const origin: Origin = { by: "option", name: option.name };
    for (const { address, place } of remove) put(trees, address, place, origin, () => undefined);
    for (const change of replace) apply(trees, change, origin, "replace");
    for (const change of set) apply(trees, change, origin, "set");
  }
  for (const { doc, beatsOptions } of records) if (beatsOptions) say(doc);
  for (const { address, node } of tries) put(trees, address, node.place, node.origin, (old) => layOver(old, node, "lower"));
  return trees;
}

/** One line of `set` or `replace`, said by somebody. */
export function apply(trees: Map<string, MapNode>, { address, place, node, sound }: Change, origin: Origin, how: "set" | "replace"): void {
  if (!sound) return;
  const said = saidBy(node, origin);
  put(trees, address, place, origin, (old) => (how === "set" ? layOver(old, said, "lower") : said));
}

function put(
  trees: Map<string, MapNode>,
  { root, path }: Address,
  place: Place,
  origin: Origin,
  change: (old: Node | undefined) => Node | undefined,
): void {
  const tree = trees.get(root);
  if (!tree || path.length === 0) return;
  const frame: MapNode = { is: "map", entries: new Map(), place, key: place, origin };
  const next = changeAt(tree, path, change, frame);
  if (next?.is === "map") trees.set(root, next);
}
