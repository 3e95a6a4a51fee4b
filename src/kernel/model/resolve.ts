// Many files to one shop: records, options and tries laid over the lines, catalogue parts laid under them.
import type { OptionDoc, RecordDoc } from "./change.ts";
import type { Scene } from "./check-keys.ts";
import type { Keys } from "./keys.ts";
import { lay } from "./lay.ts";
import { linesOf, type Trees, withParts } from "./lines.ts";
import { type MapNode, type Model, nodeAt, type Variant } from "./node.ts";
import { chosen, collisions } from "./options.ts";
import { checkAllPaths, tried } from "./paths.ts";
import { judge } from "./records.ts";
import { type Draft, settle } from "./report.ts";
import { requiredMissing } from "./required.ts";
import { withoutTwins } from "./twins.ts";
import { isClear, type ParsedShop } from "./shop.ts";

export { parseShop, type ParsedShop } from "./shop.ts";

/** What does not depend on the variant, once for a shop: a page lays many variants over the same files. */
interface Ground {
  readonly lines: Trees;
  readonly options: readonly OptionDoc[];
  readonly records: readonly RecordDoc[];
  readonly drafts: readonly Draft[];
}
const grounds = new WeakMap<ParsedShop, Ground>();

function groundOf(shop: ParsedShop): Ground {
  const known = grounds.get(shop);
  if (known) return known;
  const files = [...shop.files.values()];
  const drafts: Draft[] = [...shop.drafts, ...files.flatMap((f) => f.drafts)];
  const lines = linesOf(shop, drafts);
  const options = files.flatMap((f) => f.option ?? []);
  const records = files.flatMap((f) => f.record ?? []);
  checkAllPaths(shop, lines, options, records, { drafts, currency: shop.currency });
  const ground = { lines, options, records, drafts };
  grounds.set(shop, ground);
  return ground;
}

/** The shop with one variant laid over: all that the figures read, and everything that is wrong with the files. */
export function resolve(shop: ParsedShop, keys: Keys, variant: Variant): Model {
  const { lines, options, records, drafts: before } = groundOf(shop);
  const drafts = [...before];
  const scene: Scene = { drafts, currency: shop.currency };
  const laid = chosen(options, records, variant, drafts);
  collisions(laid, drafts);
  const judged = judge(lines, records, laid, options, keys, drafts);
  const over = lay(lines, laid, judged.counting, []);
  const trees = lay(over, [], [], tried(shop, keys, variant, over, scene));
  const parts: Draft[] = [];
  const twins: Draft[] = [];
  const under = new Map([...withParts(trees, keys, parts)].map(([root, tree]) => [root, withoutTwins(tree, twins)]));
  drafts.push(...twins.filter((d) => standsClear(d, shop)));
  // Of a catalogue that could not be read whole nobody can say what is missing in it; the same goes for a file and its keys.
  const catalogueRead = [...shop.files.values()].every((f) => f.role.is !== "catalogue" || f.parsed.brokenFrom === Infinity);
  drafts.push(...parts.filter((d) => catalogueRead || d.code !== "not-in-catalogue"));
  for (const [root, tree] of under) {
    drafts.push(...requiredMissing(tree, root === "shop" ? keys.shop : keys.machine).filter((d) => standsClear(d, shop)));
  }
  return {
    ...front(under.get("shop")),
    roots: under,
    findings: settle(drafts, (file) => shop.files.get(file)?.parsed.text),
    options: options.map((o) => o.option),
    records: judged.records,
    variant,
  };
}

/** The files as they stand, catalogue parts laid under, no records and no options: what the digests of `holds-while` are taken of. */
export function filed(shop: ParsedShop, keys: Keys): ReadonlyMap<string, MapNode> {
  return withParts(linesOf(shop, []), keys, []);
}

function standsClear(draft: Draft, shop: ParsedShop): boolean {
  const parsed = shop.files.get(draft.place.file)?.parsed;
  return parsed !== undefined && parsed.brokenFrom === Infinity && isClear(draft, parsed);
}

const pressures = ["bar", "psi", "kPa"] as const;

/** Title and display of the shop. */
function front(shop: MapNode | undefined): Pick<Model, "title" | "show"> {
  const text = (...path: string[]): string | undefined => {
    const node = nodeAt(shop, path);
    return node?.is === "leaf" ? node.text : undefined;
  };
  const system = (word: string | undefined): "metric" | "inch" | null => (word === "metric" || word === "inch" ? word : null);
  return {
    title: text("shop") ?? "",
    show: {
      units: system(text("show", "units")) ?? "metric",
      also: system(text("show", "also")),
      pressure: pressures.find((p) => p === text("show", "pressure")) ?? "bar",
      currency: text("show", "currency") ?? "USD",
    },
  };
}
