// The inputs of a room as fields: every thing of a machine that the room reads, with what is written, what stands in, and what nobody wrote.
import { inputAnswer, type InputAnswer, systemOf } from "../../../kernel/answer.ts";
import type { Evaluation } from "../../../kernel/evaluate.ts";
import type { Input } from "../../../kernel/figure.ts";
import { isMissing } from "../../../kernel/graph.ts";
import { type Item, itemAddress } from "../../../kernel/item.ts";
import { type Node, nodeAt } from "../../../kernel/model/node.ts";
import { kindInfo } from "../../../kernel/unit.ts";
import type { Bench } from "./bench.ts";

/**
 * `there`: written or typical; `wanted`: never assumed and missing; `unknown`: asked, not known, and nothing stands in; `none`: known to be
 * absent; `absent`: nobody wrote it and nothing waits.
 */
export interface Field extends InputAnswer {
  readonly state: "there" | "wanted" | "unknown" | "none" | "absent";
  readonly symbol: string;
  readonly allowsNone: boolean;
  readonly examples: readonly string[];
}

export interface FieldGroup {
  readonly key: string;
  readonly item: string;
  /** What the group is: `motor plate`, `drive`, `run`. */
  readonly title: string;
  /** Stands under the room's own key in the files. */
  readonly isOwn: boolean;
  readonly fields: readonly Field[];
}

export function fields(bench: Bench, of: { readonly machine: string; readonly room: string }): readonly FieldGroup[] {
  const e = bench.best();
  const room = e.graph.house.rooms.find((r) => r.name === of.room);
  if (!room) return [];
  const items = e.graph.items.filter((i) => i.root === of.machine || i.root === "shop");
  const groups = items.flatMap((item) => {
    const inputs = room.inputs.filter((d) => d.per === item.scope);
    return inputs.length === 0 ? [] : groupsOf(e, room.name, item, inputs);
  });
  // The parts of a room's own things stand first, in the order of the file; the thing itself after them, other rooms' things last.
  const order = (g: FieldGroup): string => fileOrder(e, g.item);
  return groups.toSorted((a, b) => rankOf(a, of) - rankOf(b, of) || (order(a) < order(b) ? -1 : order(a) > order(b) ? 1 : 0));
}

/** Inputs as their keys stand in the file, those that nobody wrote after them. */
function inFileOrder(e: Evaluation, item: Item, inputs: readonly Input<unknown>[]): Input<unknown>[] {
  const root = e.graph.model.roots.get(item.root);
  const placeOf = (input: Input<unknown>): string => placesAlong(root, [...item.path, ...input.key.split(".")]);
  return inputs
    .map((input) => ({ input, at: placeOf(input) }))
    .toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0))
    .map(({ input }) => input);
}

/** Where a thing stands in its file: sorts as text. */
function fileOrder(e: Evaluation, address: string): string {
  const item = e.graph.items.find((i) => itemAddress(i) === address);
  return item ? placesAlong(e.graph.model.roots.get(item.root), item.path) : "";
}

function placesAlong(root: Node | undefined, path: readonly string[]): string {
  let node = root;
  const places: string[] = [];
  for (const key of path) {
    const at = node?.is === "map" ? [...node.entries.keys()].indexOf(key) : -1;
    places.push(String(at < 0 ? 999 : at).padStart(3, "0"));
    node = nodeAt(node, [key]);
  }
  return places.join(".");
}

function rankOf(g: FieldGroup, of: { readonly machine: string; readonly room: string }): number {
  const [own, deeper, elsewhere, shelf] = [2, 1, 3, 4];
  if (g.item.includes("/catalogue")) return shelf;
  if (!g.isOwn) return elsewhere;
  return g.item === `${of.machine}/${of.room}` || g.item === of.machine ? own : g.item === "shop" ? 0 : deeper;
}

function groupsOf(e: Evaluation, room: string, item: Item, inputs: readonly Input<unknown>[]): FieldGroup[] {
  const isTop = item.path.length === 0;
  const isOwn = isTop || item.path[0] === room;
  const thing = item.path.slice(isOwn && item.path.length > 1 ? 1 : 0).map((key) => names[key] ?? key);
  const parts = new Map<string, Field[]>();
  for (const input of inFileOrder(e, item, inputs)) {
    const keys = input.key.split(".").slice(isTop ? 1 : 0);
    const part = keys.length > 1 ? keys.slice(0, -1).join(" ") : "";
    parts.set(part, [...(parts.get(part) ?? []), fieldOf(e, item, input)]);
  }
  // A part of one field is no group of its own.
  const main = parts.get("") ?? [];
  const several = [...parts].filter(([part, list]) => {
    if (part === "" || list.length > 1) return part !== "";
    main.push(...list);
    return false;
  });
  // A plate is what one reads first.
  const plate = several.filter(([part]) => part === "plate");
  const rest = several.filter(([part]) => part !== "plate");
  const all: [string, Field[]][] = [...plate, ...(main.length === 0 ? [] : [["", main] as [string, Field[]]]), ...rest];
  return all.map(([part, list]) => ({
    key: `${itemAddress(item)} ${part}`,
    item: itemAddress(item),
    title:
      [...thing.filter((word) => word !== ""), part]
        .filter((word) => word !== "")
        .join(" ")
        .replaceAll("-", " ") || (item.root === "shop" ? "service" : room),
    isOwn,
    fields: list,
  }));
}

/** Keys that hold things, by the word for one of them; empty where the name says it all. */
const names: Readonly<Record<string, string>> = {
  belts: "belt",
  bearings: "bearing",
  loads: "load",
  axes: "",
  fluids: "",
  work: "",
  operations: "",
  catalogue: "",
  tools: "tool",
  air: "",
  compressors: "compressor",
  inserts: "insert",
  materials: "material",
};

function fieldOf(e: Evaluation, item: Item, input: Input<unknown>): Field {
  const cell = e.graph.find(item, input);
  const info = {
    symbol: input.symbol ?? "",
    allowsNone: input.none ?? false,
    examples: input.words ?? (input.kind === null ? [] : kindInfo(input.kind).examples),
  };
  if (!isMissing(cell)) {
    if (cell.is === "input") return { ...inputAnswer(e, cell, systemOf(e.graph.model)), ...info, state: "there" };
    // Nothing is written and the figure that would stand in has no number either.
    return { ...blank(item, input, null), ...info, state: "unknown" };
  }
  // Of a map that is unknown as a whole, so is every value.
  const leaf = leafAbove(e.graph.model.roots.get(item.root), [...item.path, ...input.key.split(".")]);
  const written = leaf === "unknown" || leaf === "none" ? leaf : null;
  const state =
    input.required && written !== "none" ? "wanted" : written === "unknown" ? "unknown" : written === "none" ? "none" : "absent";
  return { ...blank(item, input, written), ...info, state };
}

/** The word at a path, or at the first map on the way that is only a word. */
function leafAbove(root: Node | undefined, path: readonly string[]): string | null {
  let at = root;
  for (const key of path) {
    if (at?.is === "leaf") break;
    at = nodeAt(at, [key]);
  }
  return at?.is === "leaf" ? at.text : null;
}

function blank(item: Item, input: Input<unknown>, written: string | null): InputAnswer {
  return {
    address: `${itemAddress(item)}${item.path.length === 0 ? "/" : "."}${input.key}`,
    id: input.id,
    room: "",
    item: itemAddress(item),
    key: input.key,
    says: input.says,
    form: input.form,
    kind: input.kind,
    words: input.words ?? [],
    written,
    text: written === null || written === "unknown" ? "" : written,
    origin: { by: "typical", says: written === "unknown" ? "asked, not known" : "not written" },
    over: [],
    measure: input.measure,
    required: input.required ?? false,
    amount: null,
  };
}
