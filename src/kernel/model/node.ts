// The shop folder as a tree of located values: what was written, where, and what it replaced.
import type { Finding, Place } from "../finding.ts";

/** Who says so. The order is the order of precedence. */
export type Origin =
  | { readonly by: "option"; readonly name: string }
  | { readonly by: "record"; readonly name: string; readonly date: string }
  | { readonly by: "line" }
  | { readonly by: "catalogue"; readonly entry: string };

export interface Leaf {
  readonly is: "leaf";
  /** As written, without quotes; `unknown` and `none` are kept as words. */
  readonly text: string;
  readonly place: Place;
  /** Where its key stands. */
  readonly key?: Place;
  readonly origin: Origin;
  /** How it is known (`plate`, `seen`, `measured` …), when the long form says so. */
  readonly from?: string;
  readonly date?: string;
  readonly note?: string;
  readonly with?: string;
  /** Values that lost against this one, strongest first. */
  readonly over: readonly Leaf[];
}
export interface MapNode {
  readonly is: "map";
  readonly entries: ReadonlyMap<string, Node>;
  readonly place: Place;
  readonly key?: Place;
  readonly origin: Origin;
  /** Keys that somebody wrote and nobody can read: they are not there, and not missing either. */
  readonly unread?: readonly string[];
}
export interface ListNode {
  readonly is: "list";
  readonly items: readonly Node[];
  readonly place: Place;
  readonly key?: Place;
  readonly origin: Origin;
}
export type Node = Leaf | MapNode | ListNode;

export interface OptionFile {
  readonly machine: string;
  readonly name: string;
  readonly title: string;
  readonly cost: string | null;
  readonly hours: string | null;
  readonly needs: readonly string[];
  readonly file: string;
}

export interface RecordFile {
  readonly machine: string;
  readonly name: string;
  readonly step: string;
  readonly date: string;
  readonly file: string;
  readonly accepted: boolean;
  /** Why it does not count just now, in a sentence; null when it does. */
  readonly aside: string | null;
  readonly sets: readonly string[];
}

/** What is laid over the files, later entries over earlier ones. */
export interface Variant {
  /** Option names, each with its machine. */
  readonly options: readonly { readonly machine: string; readonly name: string }[];
  /** Single values tried out: root (`shop` or a machine), path as written, text. Counts as an option named "tried". */
  readonly tries: readonly { readonly root: string; readonly path: string; readonly text: string }[];
}
export const asFound: Variant = { options: [], tries: [] };

/** One shop with one variant laid over: all that the figures read. */
export interface Model {
  readonly title: string;
  readonly show: {
    readonly units: "metric" | "inch";
    readonly also: "metric" | "inch" | null;
    readonly pressure: "bar" | "psi" | "kPa";
    readonly currency: string;
  };
  /** `shop` and each machine by folder name. `work`, `sequences` (and `catalogue` under shop) are maps below the root. */
  readonly roots: ReadonlyMap<string, MapNode>;
  readonly findings: readonly Finding[];
  readonly options: readonly OptionFile[];
  readonly records: readonly RecordFile[];
  readonly variant: Variant;
}

/** The node at a path below a root; list items are found by the name the scope gives them. */
export function nodeAt(root: Node | undefined, path: readonly string[]): Node | undefined {
  let at = root;
  for (const key of path) {
    if (at?.is === "map") at = at.entries.get(key);
    else if (at?.is === "list") at = at.items.find((n, i) => listName(n, i) === key);
    else return undefined;
  }
  return at;
}

/** Name of a list item: what its `step` or `operation` says, otherwise its number from 1. */
export function listName(node: Node, index: number): string {
  if (node.is === "map") {
    for (const key of ["operation", "step"]) {
      const name = node.entries.get(key);
      if (name?.is === "leaf") return name.text;
    }
  }
  return String(index + 1);
}
