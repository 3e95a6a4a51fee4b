// Things of the shop: what kinds there are (scopes), where they may stand in the files (mounts), and how one is addressed.

/** Where things of a kind stand: keys joined by dots, `*` for the user's names, `work/*` for the files of a machine, `shop/` in front for shop.yaml. */
export interface Mount {
  readonly at: string;
  /** The thing is there whenever its holder is, even when nobody wrote a line about it (the drive of a spindle). */
  readonly implied?: true;
}

export interface Scope {
  readonly decl: "scope";
  readonly name: string;
  /** "a motor": how a sentence names one. */
  readonly says: string;
  readonly mounts: readonly Mount[];
  /** Group of catalogue/ whose entries may be laid under one (`like:`). */
  readonly like?: string;
  /** For things in a list: the key that holds the user's name of one. */
  readonly nameKey?: string;
}

export const shop: Scope = { decl: "scope", name: "shop", says: "the shop", mounts: [] };
export const machine: Scope = { decl: "scope", name: "machine", says: "a machine", mounts: [] };

/** Declares a kind of thing. */
export function scope(d: { name: string; says: string; mounts: readonly (string | Mount)[]; like?: string; nameKey?: string }): Scope {
  const { mounts, ...rest } = d;
  return { ...rest, decl: "scope", mounts: mounts.map((m) => (typeof m === "string" ? { at: m } : m)) };
}

/** One thing of this shop. */
export interface Item {
  readonly scope: Scope;
  /** `shop` or the folder of the machine. */
  readonly root: string;
  /** Keys from the top of the root; `work` and `catalogue` stand first for the files of that name. */
  readonly path: readonly string[];
  readonly parent: Item | null;
  /** The user named it; a thing that stands under a fixed key is not. */
  readonly named: boolean;
}

const folders = new Set(["work", "sequences", "catalogue", "options", "records"]);

/** Path as the user writes it: keys joined by dots, a slash after a folder. */
export function pathText(path: readonly string[]): string {
  const [head, ...rest] = path;
  if (head === undefined) return "";
  return folders.has(head) && rest.length > 0 ? `${head}/${rest.join(".")}` : path.join(".");
}

/** The inverse of `pathText`. */
export function pathKeys(text: string): string[] {
  const slash = text.indexOf("/");
  const dot = text.indexOf(".");
  if (slash > 0 && (dot < 0 || slash < dot)) return [text.slice(0, slash), ...text.slice(slash + 1).split(".")];
  return text === "" ? [] : text.split(".");
}

/** Kept by thing: each has many quantities. */
const addresses = new WeakMap<Item, string>();

/** `lathe/spindle.motor`; a quantity of the thing is appended with a dot. */
export function itemAddress(item: Item): string {
  let address = addresses.get(item);
  if (address === undefined) addresses.set(item, (address = addressAt(item.root, item.path)));
  return address;
}

/** Address of the thing at a path, whether there is one or not. */
export function addressAt(root: string, path: readonly string[]): string {
  return path.length === 0 ? root : `${root}/${pathText(path)}`;
}

/** Address of a key below a thing. */
export function addressOf(item: Item, key: string): string {
  return `${itemAddress(item)}${item.path.length === 0 ? "/" : "."}${key}`;
}

/** Address of a quantity of a thing; the room goes before it unless the path already starts with a room. */
export function quantityAddress(item: Item, room: string, quantity: string, rooms: ReadonlySet<string>): string {
  const head = item.path[0];
  if (head === undefined) return `${item.root}/${room}.${quantity}`;
  return rooms.has(head) ? `${itemAddress(item)}.${quantity}` : `${item.root}/${room}.${pathText(item.path)}.${quantity}`;
}

/** A mount as root and keys. */
export function mountKeys(at: string): { root: "shop" | "machine"; keys: string[] } {
  return at.startsWith("shop/") ? { root: "shop", keys: pathKeys(at.slice(5)) } : { root: "machine", keys: pathKeys(at) };
}
