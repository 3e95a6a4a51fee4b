// Paths in options, records and tries held against the keys and things that are there, laid on or not.
import type { Place } from "../finding.ts";
import { type Address, addressOf, keyNodeAt, type Makes, strayed } from "./address.ts";
import type { Change, OptionDoc, RecordDoc } from "./change.ts";
import { checkKeys, type Scene } from "./check-keys.ts";
import type { KeyNode, Keys } from "./keys.ts";
import { apply, type Try } from "./lay.ts";
import { type Trees, withParts } from "./lines.ts";
import type { Leaf, Node, Variant } from "./node.ts";
import type { Draft } from "./report.ts";
import { isClear, type ParsedShop } from "./shop.ts";

/** Paths of every option and record, laid on or not. A thing may be there because the lines say so or because an option makes it. */
export function checkAllPaths(
  shop: ParsedShop,
  lines: Trees,
  options: readonly OptionDoc[],
  records: readonly RecordDoc[],
  scene: Scene,
): void {
  const { keys } = shop;
  const possible = filedWith(lines, options, keys);
  const trees = (root: string): readonly (Node | undefined)[] => [possible.filed.get(root), possible.made.get(root)];
  const clear = (file: string, draft: Draft): boolean => {
    const parsed = shop.files.get(file)?.parsed;
    return parsed !== undefined && isClear(draft, parsed);
  };
  const check = (file: string, machine: string, paths: Parameters<typeof checkPaths>[0]): void => {
    const found: Draft[] = [];
    checkPaths(paths, machine, keys, trees, { ...scene, drafts: found });
    scene.drafts.push(...found.filter((d) => clear(file, d)));
  };
  for (const { option, set, replace, remove } of options) {
    const gone = remove.map((r) => ({ ...r, makes: "nothing" as const }));
    check(option.file, option.machine, [...[...set, ...replace].map(making), ...gone]);
  }
  for (const { record, sets, holdsWhile } of records) {
    check(record.file, record.machine, [...sets.map(making), ...holdsWhile.map((h) => ({ ...h, makes: "nothing" as const }))]);
  }
}

const making = (c: Change): Change & { makes: Makes } => ({ ...c, makes: c.node.is === "map" ? "thing" : "value" });

/** The files with their parts, and what all options together would make. */
function filedWith(lines: Trees, options: readonly OptionDoc[], keys: Keys): { filed: Trees; made: Trees } {
  const made = new Map(lines);
  for (const { set, replace } of options)
    for (const change of [...set, ...replace]) if (change.node.is === "map") apply(made, change, { by: "line" }, "set");
  return { filed: withParts(lines, keys, []), made };
}

/** Single values tried out: read as if an option said so. */
export function tried(shop: ParsedShop, keys: Keys, variant: Variant, trees: Trees, scene: Scene): Try[] {
  return variant.tries.flatMap(({ root, path, text }, i): Try[] => {
    const place: Place = { file: "tried", line: i + 1, column: 1, endLine: i + 1, endColumn: text.length + 1 };
    const address = addressOf(path, root, shop.machines);
    const stray = trees.has(address.root)
      ? strayed(address, root, keys, [trees.get(address.root)], "value")
      : { says: `there is no \`${address.root}\`` };
    if (stray) {
      const better = "nearest" in stray ? stray.nearest : undefined;
      scene.drafts.push({
        code: "unknown-path",
        says: `\`${path}\`: ${stray.says}`,
        place,
        ...(better === undefined ? {} : { nearest: better }),
      });
      return [];
    }
    const leaf: Leaf = { is: "leaf", text: text.trim(), place, origin: { by: "option", name: "tried" }, over: [] };
    const at: KeyNode | undefined = keyNodeAt(address, keys);
    const node = at ? checkKeys(leaf, at, address.path.at(-1) ?? path, scene) : leaf;
    return node ? [{ address, node }] : [];
  });
}

/** Reports the paths of a change that lead nowhere. `trees` are the machine's things as they stand and as options would make them. */
function checkPaths(
  paths: readonly { text: string; address: Address; place: Place; makes: Makes }[],
  machine: string,
  keys: Keys,
  trees: (root: string) => readonly (Node | undefined)[],
  scene: Scene,
): void {
  for (const { text, address, place, makes } of paths) {
    const stray = strayed(address, machine, keys, trees(address.root), makes);
    if (!stray) continue;
    scene.drafts.push({
      code: "unknown-path",
      says: `\`${text}\`: ${stray.says}`,
      place,
      ...(stray.nearest === undefined ? {} : { nearest: stray.nearest }),
    });
  }
}
