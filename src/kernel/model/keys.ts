// Which keys may stand where: a tree built from the declarations of the rooms, read by loader, completion and schema writer alike.
import { type Mount, mountKeys, type Scope } from "../item.ts";
import type { Room } from "../room.ts";
import type { KeyNode, Keys } from "./key-node.ts";
import { layTops } from "./tops.ts";

export type { KeyNode, Keys } from "./key-node.ts";

const fresh = (): KeyNode => ({ keys: new Map() });

function descend(from: KeyNode, path: readonly string[], listAt?: number): KeyNode {
  let at = from;
  path.forEach((key, i) => {
    if (key === "*") {
      if (i === listAt) at = at.item ??= fresh();
      else at = at.item ?? (at.any ??= fresh());
    } else {
      let next = at.keys.get(key);
      if (!next) at.keys.set(key, (next = fresh()));
      at = next;
    }
  });
  return at;
}

function homes(keys: Keys, per: Scope): KeyNode[] {
  if (per.name === "shop") return [keys.shop];
  if (per.name === "machine") return [keys.machine];
  const at = per.mounts.map((m) => mounted(keys, per, m));
  if (per.like) at.push(descend(keys.catalogue, [per.like, "*"]));
  return at;
}

function mounted(keys: Keys, per: Scope, mount: Mount): KeyNode {
  const { root, keys: path } = mountKeys(mount.at);
  if (path[0] === "catalogue") return descend(keys.catalogue, path.slice(1));
  return descend(root === "shop" ? keys.shop : keys.machine, path, per.nameKey ? path.length - 1 : undefined);
}

/** The key tree of a house. `coming` lists, root and top path, the keys of rooms that are not there yet. */
export function keysOf(
  rooms: readonly Room[],
  coming: { shop: readonly string[]; machine: readonly string[]; catalogue: readonly string[] },
): Keys {
  const keys: Keys = { shipped: rooms.flatMap((r) => r.catalogue ?? []), shop: fresh(), machine: fresh(), catalogue: fresh() };
  for (const root of ["shop", "machine", "catalogue"] as const) {
    for (const path of coming[root]) descend(keys[root], path.split(".")).lax = true;
  }
  for (const room of rooms) {
    for (const scope of room.scopes) {
      for (const home of homes(keys, scope)) {
        home.says = scope.says;
        if (scope.like) home.like = scope.like;
        if (scope.nameKey) home.keys.set(scope.nameKey, fresh());
      }
      for (const mount of scope.mounts) if (mount.implied) mounted(keys, scope, mount).implied = true;
    }
  }
  for (const room of rooms) {
    for (const input of room.inputs) {
      for (const home of homes(keys, input.per)) {
        const path = input.key.split(".");
        descend(home, path).input = input;
        const holder = descend(home, path.slice(0, -1));
        const last = path.at(-1) ?? "";
        if (input.head) holder.head = last;
        for (const old of input.was ?? []) (holder.was ??= new Map()).set(old.split(".").at(-1) ?? old, last);
      }
    }
    for (const link of room.links) for (const home of homes(keys, link.per)) descend(home, link.key.split(".")).link = link;
  }
  layTops(keys);
  for (const root of [keys.shop, keys.machine, keys.catalogue]) soften(root, false);
  return keys;
}

/** What stands below a lax key is lax too, whatever the rooms that are there already know of it. */
function soften(node: KeyNode, lax: boolean): void {
  if (lax) node.lax = true;
  for (const child of [...node.keys.values(), node.any, node.item]) if (child) soften(child, node.lax === true);
}

/** The node for a path, user's names and list items followed; undefined where nothing may stand. */
export function keyAt(root: KeyNode, path: readonly string[]): KeyNode | undefined {
  let at: KeyNode | undefined = root;
  for (const key of path) {
    if (!at) return undefined;
    at = at.keys.get(key) ?? at.any ?? at.item ?? (at.lax ? { keys: new Map(), lax: true } : undefined);
  }
  return at;
}
