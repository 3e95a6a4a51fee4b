// Option and record files as what they change: paths with the values laid there, each checked against the keys that stand at its path.
import { type Address, addressOf, keyNodeAt } from "./address.ts";
import { checkDate, checkKeys, isBlank, type Scene } from "./check-keys.ts";
import type { Keys } from "./keys.ts";
import type { Leaf, MapNode, Node, OptionFile, RecordFile } from "./node.ts";
import type { Place } from "../finding.ts";

/** One line of `set`, `replace` or `sets`. */
export interface Change {
  readonly text: string;
  readonly address: Address;
  readonly place: Place;
  readonly node: Node;
  /** The key is there and the value can be read. */
  readonly sound: boolean;
}
/** One path of `remove` or `holds-while`, with the digest that a record keeps. */
interface Named {
  readonly text: string;
  readonly address: Address;
  readonly place: Place;
  readonly digest?: string;
}
export interface OptionDoc {
  readonly option: OptionFile;
  readonly place: Place;
  readonly needs: readonly Leaf[];
  readonly remove: readonly Named[];
  readonly replace: readonly Change[];
  readonly set: readonly Change[];
}
export interface RecordDoc {
  readonly record: Omit<RecordFile, "aside">;
  readonly place: Place;
  readonly sets: readonly Change[];
  readonly holdsWhile: readonly Named[];
  readonly under: readonly Leaf[];
  readonly supersedes: string | null;
}

/** What reading an option or record needs: whose it is, and who else there is. */
export interface Around {
  readonly file: string;
  readonly machine: string;
  readonly name: string;
  readonly machines: ReadonlySet<string>;
  readonly keys: Keys;
  readonly scene: Scene;
}

/** Reads an option; `raw` as parsed, `top` as checked. */
export function optionDoc(raw: MapNode, top: MapNode, around: Around): OptionDoc {
  const { machine, name, file } = around;
  const remove = leaves(top.entries.get("remove")).map((leaf) => named(leaf, around));
  return {
    option: {
      machine,
      name,
      title: textOf(top, "title") ?? name,
      cost: textOf(top, "cost"),
      hours: textOf(top, "hours"),
      needs: leaves(top.entries.get("needs")).map((n) => n.text),
      file,
    },
    place: raw.place,
    needs: leaves(top.entries.get("needs")),
    remove,
    replace: changes(raw, "replace", around),
    set: changes(raw, "set", around),
  };
}

/** Reads a record. */
export function recordDoc(raw: MapNode, top: MapNode, around: Around): RecordDoc {
  const { machine, name, file, scene } = around;
  const sets = changes(raw, "sets", around);
  const date = top.entries.get("date");
  const supersedes = textOf(top, "supersedes");
  return {
    record: {
      machine,
      name,
      step: textOf(top, "step") ?? "",
      date: date?.is === "leaf" ? checkDate(date, scene) : "",
      file,
      accepted: textOf(top, "accepted") === "yes",
      sets: sets.map((s) => s.text),
    },
    place: raw.place,
    sets,
    holdsWhile: watched(raw.entries.get("holds-while"), around),
    under: leaves(top.entries.get("under")),
    supersedes: supersedes === "none" ? null : supersedes,
  };
}

function textOf(map: MapNode, key: string): string | null {
  const node = map.entries.get(key);
  return node?.is === "leaf" ? node.text : null;
}

function leaves(node: Node | undefined): Leaf[] {
  return node?.is === "list" ? node.items.filter((n) => n.is === "leaf") : [];
}

function named(leaf: Leaf, { machine, machines }: Around): Named {
  return { text: leaf.text, address: addressOf(leaf.text, machine, machines), place: leaf.place };
}

/** `holds-while`: a list of paths, or a map from path to the digest of what stood there. */
function watched(node: Node | undefined, around: Around): Named[] {
  if (!node || (node.is === "leaf" && (isBlank(node) || node.text === ""))) return [];
  if (node.is === "list") return leaves(node).map((leaf) => named(leaf, around));
  if (node.is === "map") {
    return [...node.entries].map(([text, n]) => ({
      text,
      address: addressOf(text, around.machine, around.machines),
      place: n.key ?? n.place,
      ...(n.is === "leaf" && n.text !== "" ? { digest: n.text } : {}),
    }));
  }
  around.scene.drafts.push({
    code: "not-a-list",
    says: "`holds-while` is a list of paths",
    place: node.place,
    expected: `[ ${node.text} ]`,
  });
  return [];
}

function changes(raw: MapNode, key: string, around: Around): Change[] {
  const { scene, keys, machine, machines } = around;
  const node = raw.entries.get(key);
  if (!node || (node.is === "leaf" && node.text === "")) return [];
  if (node.is !== "map") {
    scene.drafts.push({ code: "not-a-map", says: `\`${key}\` holds paths, one to a line: \`axes.x.screw.lead: 5 mm\``, place: node.place });
    return [];
  }
  return [...node.entries].map(([text, value]) => {
    const place = value.key ?? value.place;
    const address = addressOf(text, machine, machines);
    const at = keyNodeAt(address, keys);
    // Paths are looked over once all files are read; without a key there is nothing to check the value against.
    const checked = at ? checkKeys(value, at, address.path.at(-1) ?? text, scene) : undefined;
    const isLike = at === undefined && address.path.at(-1) === "like";
    return { text, address, place, node: checked ?? value, sound: checked !== undefined || isLike };
  });
}
