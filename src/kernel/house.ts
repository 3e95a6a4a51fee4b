// The house: all rooms together, looked over once when the program starts. What is wrong here is a programmer's mistake and throws.
import type { Check, Notice } from "./check.ts";
import type { Figure, Joint, JointPart, Ref, Simulated, Value } from "./figure.ts";
import type { Scope } from "./item.ts";
import { machine, shop } from "./item.ts";
import { type Keys, keysOf } from "./model/keys.ts";
import type { Room } from "./room.ts";
import type { Offer, Slot } from "./slot.ts";

/** Keys of rooms still to come, by root: accepted in the files, not read. */
export interface Coming {
  readonly shop: readonly string[];
  readonly machine: readonly string[];
  readonly catalogue: readonly string[];
}

type Computed = Figure | Simulated | JointPart | Value<unknown>;

export interface House {
  readonly rooms: readonly Room[];
  readonly names: ReadonlySet<string>;
  readonly keys: Keys;
  readonly scopes: readonly Scope[];
  readonly roomOf: ReadonlyMap<unknown, Room>;
  /** Everything with an id that `work` and `explain` may name. */
  readonly byId: ReadonlyMap<string, Ref<unknown>>;
  readonly offersTo: ReadonlyMap<Slot<unknown>, readonly Offer[]>;
}

type Owned = Room["inputs"][number] | Computed | Joint | Slot<unknown> | Check | Notice;

export function house(rooms: readonly Room[], coming: Coming): House {
  const roomOf = new Map<unknown, Room>();
  const byId = new Map<string, Ref<unknown>>();
  const taken = new Map<string, string>();
  const offersTo = new Map<Slot<unknown>, Offer[]>();
  const own = (room: Room, d: Owned): void => {
    roomOf.set(d, room);
    const at = `${d.decl}:${d.per.name}:${d.id}`;
    const holder = taken.get(d.id);
    // An input of the shop and one of a machine may share a key; nothing else may share a name.
    if (holder !== undefined && !(d.decl === "input" && holder.startsWith("input:") && holder !== at)) throw new Error(`id twice: ${d.id}`);
    taken.set(d.id, at);
    if (d.decl !== "check" && d.decl !== "notice" && d.decl !== "joint" && !byId.has(d.id)) byId.set(d.id, d);
  };
  for (const room of rooms) {
    for (const d of [...room.inputs, ...room.figures, ...room.joints, ...room.slots, ...room.checks, ...room.notices]) own(room, d);
    for (const d of [...room.figures, ...room.checks, ...room.slots]) {
      if (d.decl !== "part" && !d.id.startsWith(`${room.name}.`)) throw new Error(`${d.id} does not start with its room, ${room.name}`);
    }
    for (const offer of room.offers) {
      const [given, taken] = [kindOfRef(offer.from), kindOfRef(offer.to)];
      if (taken !== null && given !== taken)
        throw new Error(`${offer.to.id} takes a ${taken} and is offered a ${String(given)} by ${offer.from.id}`);
    }
    for (const offer of room.offers) offersTo.set(offer.to, [...(offersTo.get(offer.to) ?? []), offer]);
    for (const c of room.contracts) {
      const guards = rooms.flatMap((r) => r.checks).filter((k) => k.guarantees === c);
      if (guards.length !== 1) throw new Error(`contract ${c.id} wants one guard and has ${guards.length}`);
    }
    for (const c of room.checks) {
      const [demand, capacity] = [kindOfRef(c.demand), kindOfRef(c.capacity)];
      if (!(c.H >= 1)) throw new Error(`${c.id} asks for a reserve below 1: ${c.H}`);
      if (demand !== capacity) throw new Error(`${c.id} holds a ${String(demand)} against a ${String(capacity)}`);
    }
  }
  const names = new Set(rooms.map((r) => r.name));
  return {
    rooms,
    names,
    keys: keysOf(rooms, coming),
    scopes: [shop, machine, ...rooms.flatMap((r) => r.scopes)],
    roomOf,
    byId,
    offersTo,
  };
}

/** Follows via, first and perhaps to the kind of what stands at the end. */
export function kindOfRef(ref: Ref<unknown>): string | null {
  const r = ref as { decl: string; kind?: string | null; to?: Ref<unknown>; refs?: readonly Ref<unknown>[] };
  if (r.decl === "via" || r.decl === "perhaps") return r.to ? kindOfRef(r.to) : null;
  if (r.decl === "first") return r.refs?.[0] ? kindOfRef(r.refs[0]) : null;
  return r.kind ?? null;
}

/** The quantity in an id: room and kind of thing left out. */
export function quantityOf(id: string, room: string, per: Scope): string {
  const rest = id.startsWith(`${room}.`) ? id.slice(room.length + 1) : id;
  return rest.startsWith(`${per.name}.`) ? rest.slice(per.name.length + 1) : rest;
}
