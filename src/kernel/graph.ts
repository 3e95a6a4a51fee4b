// From a model to cells: every declared quantity at every thing that has it, each knowing the cells it needs.
import type { Check, Notice } from "./check.ts";
import type { Contract } from "./contract.ts";
import type { AnyRef, Figure, Input, Joint, JointPart, Link, Ref, Simulated, Value, When } from "./figure.ts";
import { type House, quantityOf } from "./house.ts";
import { addressAt, addressOf, type Item, itemAddress, machine, mountKeys, quantityAddress, type Scope, shop } from "./item.ts";
import { type Leaf, listName, type Model, type Node, nodeAt } from "./model/node.ts";
import type { Offer, Slot } from "./slot.ts";

/** Why something is not there: nothing of the kind (then nobody misses it), or somebody has to say something first. */
export interface Missing {
  readonly missing: "not-there" | "required";
  readonly says: string;
  /** Where it would be written. */
  readonly address?: string;
  /** The input that would bring it. */
  readonly input?: Input<unknown>;
  /** How to find it out, where no single input would bring it. */
  readonly measure?: string;
}

interface CellBase {
  readonly address: string;
  readonly item: Item;
  readonly room: string;
}
export interface InputCell extends CellBase {
  readonly is: "input";
  readonly decl: Input<unknown>;
  readonly leaf: Leaf | null;
  /** Stands in while nothing is known, when the typical value is itself a figure. */
  readonly estimate: Cell | null;
}
export interface FigureCell extends CellBase {
  readonly is: "figure";
  readonly decl: Figure | Simulated | Value<unknown> | Joint;
  readonly needs: ReadonlyMap<string, Cell | Missing>;
  readonly estimate: Cell | null;
  /** First need that somebody has to answer before this can be computed. */
  readonly waits: Missing | null;
}
export interface PartCell extends CellBase {
  readonly is: "part";
  readonly decl: JointPart;
  readonly joint: FigureCell;
}
export interface SlotCell extends CellBase {
  readonly is: "slot";
  readonly decl: Slot<unknown>;
  readonly shares: readonly Cell[];
  /** First share that somebody has to answer before it can be counted: until then the slot holds less than it should. */
  readonly waits: Missing | null;
}
export type Cell = InputCell | FigureCell | PartCell | SlotCell;

export interface CheckCell extends CellBase {
  readonly decl: Check;
  readonly demand: Cell | Missing;
  readonly capacity: Cell | Missing;
}
interface NoticeCell extends CellBase {
  readonly decl: Notice;
  readonly needs: ReadonlyMap<string, Cell | Missing>;
  readonly at: Cell | Missing;
}

export interface Graph {
  readonly house: House;
  readonly model: Model;
  readonly items: readonly Item[];
  readonly cells: ReadonlyMap<string, Cell>;
  readonly checks: readonly CheckCell[];
  readonly notices: readonly NoticeCell[];
  /** Whether the words stand at a thing on which something hangs. */
  readonly stands: (item: Item, when: readonly When[] | undefined) => boolean;
  /** The cell a reference leads to from a thing. */
  readonly find: (from: Item, ref: Ref<unknown>) => Cell | Missing;
  /** The nearest thing of a kind: the thing itself, the only one its holder has, and so on upwards. */
  readonly holder: (from: Item, per: Scope) => Item | null;
}

export const isMissing = (c: Cell | Missing): c is Missing => "missing" in c;

/** The node at a path; a map set to `unknown` or `none` answers for every key below it. */
function answering(top: Node | undefined, path: readonly string[]): Node | undefined {
  let at = top;
  for (const key of path) {
    if (at?.is === "leaf") return at.text === "unknown" || at.text === "none" ? at : undefined;
    at = at?.is === "map" ? at.entries.get(key) : nodeAt(at, [key]);
  }
  return at;
}

/** What is written at a key below a thing, dots in it and all. */
function leafAt(thing: Node | undefined, key: string): Leaf | null {
  const at = answering(thing, key.includes(".") ? key.split(".") : [key]);
  if (at?.is === "leaf") return at;
  return at?.is === "list" ? listLeaf(at) : null;
}

/** A list of plain values as one leaf: the texts joined by a line feed, which no value can hold. */
function listLeaf(list: Node): Leaf | null {
  if (list.is !== "list") return null;
  const texts = list.items.map((n) =>
    n.is === "leaf" ? n.text : n.is === "list" ? n.items.map((m) => (m.is === "leaf" ? m.text : "")).join("\t") : "",
  );
  return { is: "leaf", text: texts.join("\n"), place: list.place, origin: list.origin, over: [] };
}

/** Where it is written that nobody knows how many things of a kind there are. */
interface Unsaid {
  readonly scope: Scope;
  readonly root: string;
  readonly path: readonly string[];
}

function itemsOf(model: Model, scopes: readonly Scope[]): { items: Item[]; unsaid: Unsaid[] } {
  const tops = new Map<string, Item>();
  const shopItem: Item = { scope: shop, root: "shop", path: [], parent: null, named: false };
  tops.set("shop", shopItem);
  for (const root of model.roots.keys())
    if (root !== "shop") tops.set(root, { scope: machine, root, path: [], parent: shopItem, named: true });
  const found: { scope: Scope; root: string; path: string[]; implied: boolean; named: boolean }[] = [];
  const unsaid: Unsaid[] = [];
  for (const scope of scopes) {
    for (const mount of scope.mounts) {
      const { root: kind, keys } = mountKeys(mount.at);
      for (const root of tops.keys()) {
        if ((root === "shop") !== (kind === "shop")) continue;
        const walk = (node: Node | undefined, done: string[], left: readonly string[]): void => {
          const [key, ...rest] = left;
          if (node?.is === "leaf" && node.text === "unknown" && left.includes("*")) {
            unsaid.push({ scope, root, path: done });
            return;
          }
          if (key === undefined) {
            const there = node?.is === "map";
            if (there || (mount.implied && !(node?.is === "leaf" && node.text === "none")))
              found.push({ scope, root, path: done, implied: !there, named: keys.at(-1) === "*" });
            return;
          }
          if (key === "*") {
            if (node?.is === "map") for (const [name, child] of node.entries) walk(child, [...done, name], rest);
            if (node?.is === "list") node.items.forEach((child, i) => walk(child, [...done, listName(child, i)], rest));
            return;
          }
          const next = nodeAt(node, [key]);
          if (next === undefined && !mount.implied) return;
          walk(next, [...done, key], rest);
        };
        walk(model.roots.get(root), [], keys);
      }
    }
  }
  // Holders first, so that a thing finds its parent among those already made.
  const items: Item[] = [...tops.values()];
  const byPath = new Map<string, Item>(items.map((i) => [itemAddress(i), i]));
  for (const f of found.toSorted((a, b) => a.path.length - b.path.length)) {
    let parent: Item | null = null;
    for (let n = f.path.length - 1; n >= 0 && !parent; n -= 1) parent = byPath.get(addressAt(f.root, f.path.slice(0, n))) ?? null;
    // An implied thing needs a holder of its own: no spindle, no drive.
    if (f.implied && parent?.path.length !== f.path.length - 1) continue;
    const item: Item = { scope: f.scope, root: f.root, path: f.path, parent, named: f.named };
    items.push(item);
    byPath.set(itemAddress(item), item);
  }
  return { items, unsaid };
}

function pushAt<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const all = map.get(key);
  if (all) all.push(value);
  else map.set(key, [value]);
}

/** Builds the cells of a model. Throws on a circle of figures, naming it. */
export function build(house: House, model: Model): Graph {
  const { items, unsaid } = itemsOf(model, house.scopes);
  const byAddress = new Map(items.map((i) => [itemAddress(i), i]));
  const children = new Map<Item, Item[]>();
  const byScope = new Map<Scope, Item[]>();
  for (const item of items) {
    if (item.parent) pushAt(children, item.parent, item);
    pushAt(byScope, item.scope, item);
  }
  const cells = new Map<string, Cell>();
  const made = new Map<Ref<unknown> | Joint, Map<Item, Cell | Missing | null>>();
  const underway: { readonly item: Item; readonly decl: { readonly id: string } }[] = [];
  const nodes = new Map<Item, Node | undefined>(items.map((i) => [i, answering(model.roots.get(i.root), i.path)]));

  const holder = (from: Item, per: Scope): Item | null => {
    for (let at: Item | null = from; at; at = at.parent) {
      if (at.scope === per) return at;
      // Things with a user's name (machines too) are never picked because there happens to be only one of them; nor is one of several.
      const own = children.get(at)?.filter((c) => c.scope === per && !c.named) ?? [];
      if (own.length === 1) return own[0] ?? null;
    }
    return null;
  };

  const follow = (from: Item, link: Link): Item | Missing => {
    const at = holder(from, link.per);
    const leaf = at && leafAt(nodes.get(at), link.key);
    if (!at || !leaf || leaf.text === "none") return { missing: "not-there", says: `no ${link.says} named` };
    const address = `${itemAddress(at)}.${link.key}`;
    if (leaf.text === "unknown") return { missing: "required", says: `${link.says} not known`, address };
    const named = (byScope.get(link.to) ?? []).filter((i) => i.path.at(-1) === leaf.text && (i.root === at.root || i.root === "shop"));
    return (
      named.find((i) => i.root === at.root) ?? named[0] ?? { missing: "required", says: `no ${link.says} named ${leaf.text}`, address }
    );
  };

  const words = (item: Item, when: readonly When[] | undefined): Missing | null => {
    for (const w of when ?? []) {
      const cell = find(item, w.word);
      if (isMissing(cell)) return cell;
      const text = cell.is === "input" ? wordOf(cell) : undefined;
      if (text === undefined || text === "unknown")
        return {
          missing: "required",
          says: `${nameOf(cell.decl)} is not known`,
          address: cell.address,
          ...(cell.is === "input" ? { input: cell.decl } : {}),
        };
      if (!w.is.includes(text)) return { missing: "not-there", says: `${nameOf(cell.decl)} is ${text}` };
    }
    return null;
  };

  const place = (decl: { id: string; per: Scope }, item: Item): { address: string; room: string } => {
    const room = house.roomOf.get(decl)?.name ?? decl.id.split(".")[0] ?? "";
    return { address: quantityAddress(item, room, quantityOf(decl.id, room, decl.per), house.names), room };
  };

  const inputCell = (decl: Input<unknown>, item: Item): Cell | Missing => {
    const room = house.roomOf.get(decl)?.name ?? "";
    const address = addressOf(item, decl.key);
    const leaf = leafAt(nodes.get(item), decl.key);
    if (leaf?.text === "none") return { missing: "not-there", says: `${decl.says}: none`, address, input: decl };
    const known = leaf !== null && leaf.text !== "unknown";
    if (!known && decl.typical === undefined && decl.typicalWords === undefined) {
      if (decl.required || leaf) return { missing: "required", says: `${decl.says} is not known`, address, input: decl };
      return { missing: "not-there", says: `${decl.says} is not written`, address, input: decl };
    }
    let estimate: Cell | null = null;
    if (!known && decl.typical && "of" in decl.typical) {
      const of = find(item, decl.typical.of);
      if (!isMissing(of)) estimate = of;
      else if (decl.typical.value === undefined) return of;
    }
    return { is: "input", address, item, room, decl, leaf, estimate };
  };

  const needsOf = (
    item: Item,
    needs: Readonly<Record<string, Ref<unknown>>>,
  ): { found: Map<string, Cell | Missing>; absent: Missing | null; waits: Missing | null } => {
    const found = new Map<string, Cell | Missing>();
    let absent: Missing | null = null;
    let waits: Missing | null = null;
    for (const [name, ref] of Object.entries(needs)) {
      const cell = find(item, ref);
      found.set(name, cell);
      if (!isMissing(cell) || ref.decl === "perhaps") continue;
      if (cell.missing === "not-there") absent ??= cell;
      else waits ??= cell;
    }
    return { found, absent, waits };
  };

  const figureCell = (decl: Figure | Simulated | Value<unknown> | Joint, item: Item): Cell | Missing => {
    const no = words(item, decl.when);
    if (no) return no;
    const { found, absent, waits } = needsOf(item, decl.needs);
    if (absent) return absent;
    const close = decl.decl === "simulated" && decl.estimate ? find(item, decl.estimate) : null;
    return { is: "figure", ...place(decl, item), item, decl, needs: found, waits, estimate: close && !isMissing(close) ? close : null };
  };

  const slotCell = (decl: Slot<unknown>, item: Item): Cell | Missing => {
    const shares: Cell[] = [];
    let waits: Missing | null = null;
    for (const offer of house.offersTo.get(decl) ?? []) {
      for (const giver of byScope.get(offer.from.per) ?? []) {
        if (owner(offer, giver) !== item) continue;
        const cell = words(giver, offer.when) ?? find(giver, offer.from);
        if (!isMissing(cell)) shares.push(cell);
        else if (cell.missing === "required") waits ??= cell;
      }
      for (const none of unsaid) {
        if (none.scope !== offer.from.per || ownerAbove(none, decl.per) !== item) continue;
        const address = addressAt(none.root, none.path);
        waits ??= { missing: "required", says: `nobody knows how many of ${none.scope.says} there are`, address };
      }
    }
    if (shares.length === 0 && decl.empty === "refuse") {
      const { enter } = decl;
      const where = enter ? { address: addressOf(item, enter.key), measure: enter.measure } : {};
      return waits ?? { missing: "required", says: `${decl.says}: nothing entered`, ...where };
    }
    return { is: "slot", ...place(decl, item), item, decl, shares, waits };
  };

  /** The thing whose slot would have taken an offer from below a path. */
  const ownerAbove = ({ root, path }: Unsaid, per: Scope): Item | null => {
    for (let n = path.length; n >= 0; n -= 1) {
      const above = byAddress.get(addressAt(root, path.slice(0, n)));
      if (above) return holder(above, per);
    }
    return null;
  };

  const owner = (offer: Offer, giver: Item): Item | null => {
    const from = offer.by ? follow(giver, offer.by) : giver;
    return "missing" in from ? null : holder(from, offer.to.per);
  };

  function find(from: Item, ref: Ref<unknown>): Cell | Missing {
    const r = ref as AnyRef;
    switch (r.decl) {
      case "perhaps":
        return find(from, r.to);
      case "first": {
        let best: Missing | null = null;
        for (const one of r.refs) {
          const cell = find(from, one);
          if (!isMissing(cell)) return cell;
          if (!best || (best.missing === "not-there" && cell.missing === "required")) best = cell;
        }
        return best ?? { missing: "not-there", says: "none of several is there" };
      }
      case "via": {
        let at: Item | Missing = from;
        for (const link of r.links) {
          at = follow(at, link);
          if ("missing" in at) {
            // Nothing named: the typical value of the thing still stands in, at the place that asks.
            const to = r.to as AnyRef;
            const typical = to.decl === "input" && (to.typical?.value !== undefined || to.typicalWords !== undefined);
            if (at.missing === "not-there" && typical) return typicalHere(to, from);
            return at;
          }
        }
        return find(at, r.to);
      }
      case "part": {
        const whole = cell(r.joint, from);
        if (isMissing(whole) || whole.is !== "figure") return isMissing(whole) ? whole : { missing: "not-there", says: r.says };
        const address = `${whole.address}.${r.part}`;
        const known = cells.get(address);
        if (known) return known;
        const made: PartCell = { is: "part", address, item: whole.item, room: whole.room, decl: r, joint: whole };
        cells.set(address, made);
        return made;
      }
      case "input":
      case "figure":
      case "simulated":
      case "value":
      case "slot":
        return cell(r, from);
      default:
        return r satisfies never;
    }
  }

  const typicalHere = (decl: Input<unknown>, item: Item): Cell => {
    const address = addressOf(item, decl.id);
    const known = cells.get(address);
    if (known) return known;
    const made: InputCell = { is: "input", address, item, room: house.roomOf.get(decl)?.name ?? "", decl, leaf: null, estimate: null };
    cells.set(address, made);
    return made;
  };

  function cell(decl: Input<unknown> | Figure | Simulated | Value<unknown> | Joint | Slot<unknown>, from: Item): Cell | Missing {
    const item = holder(from, decl.per);
    if (!item) return { missing: "not-there", says: `there is no ${decl.per.name} here` };
    let per = made.get(decl);
    if (!per) made.set(decl, (per = new Map()));
    const known = per.get(item);
    if (known) return known;
    if (known === null) {
      const first = underway.findIndex((u) => u.decl === decl && u.item === item);
      const ring = [...underway.slice(first), { item, decl }].map((u) => `${itemAddress(u.item)} ${u.decl.id}`);
      throw new Error(`circle of figures: ${ring.join(" -> ")}`);
    }
    // Underway: whoever asks for it meanwhile goes round in a circle.
    per.set(item, null);
    underway.push({ item, decl });
    const got = decl.decl === "input" ? inputCell(decl, item) : decl.decl === "slot" ? slotCell(decl, item) : figureCell(decl, item);
    underway.pop();
    per.set(item, got);
    if (!isMissing(got)) {
      const other = cells.get(got.address);
      if (other) throw new Error(`two things at one address: ${got.address} is ${other.decl.id} and ${decl.id}`);
      cells.set(got.address, got);
    }
    return got;
  }

  for (const room of house.rooms) {
    for (const decl of [...room.inputs, ...room.figures, ...room.slots]) for (const item of byScope.get(decl.per) ?? []) find(item, decl);
  }
  const checks: CheckCell[] = [];
  const notices: NoticeCell[] = [];
  for (const room of house.rooms) {
    for (const decl of room.checks) {
      for (const item of byScope.get(decl.per) ?? []) {
        const no = words(item, decl.when);
        const [demand, capacity] = [no ?? find(item, decl.demand), no ?? find(item, decl.capacity)];
        if ([demand, capacity].some((c) => isMissing(c) && c.missing === "not-there")) continue;
        checks.push({ ...place(decl, item), item, decl, demand, capacity });
      }
    }
    for (const decl of room.notices) {
      for (const item of byScope.get(decl.per) ?? []) {
        if (words(item, decl.when)) continue;
        const { found, absent, waits } = needsOf(item, decl.needs);
        if (!absent && !waits) notices.push({ ...place(decl, item), item, decl, needs: found, at: find(item, decl.at) });
      }
    }
  }
  return { house, model, items, cells, checks, notices, stands: (item, when) => words(item, when) === null, find, holder };
}

/** The word on which existence hangs: never one of several that are typical. */
const wordOf = ({ leaf, decl }: InputCell): string | undefined =>
  leaf?.text ?? (decl.typicalWords?.length === 1 ? decl.typicalWords[0] : undefined);

const nameOf = (d: { id: string; says?: string }): string => d.says ?? d.id;

/** Cells that a cell is computed from, itself included, each once, needs before what needs them. */
export function cone(...tops: readonly (Cell | Missing)[]): Cell[] {
  const seen = new Set<Cell>();
  const order: Cell[] = [];
  const visit = (c: Cell | Missing | null): void => {
    if (!c || isMissing(c) || seen.has(c)) return;
    seen.add(c);
    if (c.is === "input") visit(c.estimate);
    else if (c.is === "part") visit(c.joint);
    else if (c.is === "slot") c.shares.forEach(visit);
    else {
      c.needs.forEach(visit);
      visit(c.estimate);
    }
    order.push(c);
  };
  tops.forEach(visit);
  return order;
}

/** Windows assumed anywhere in the cone of a cell, each with the thing it belongs to. */
export function assumed(graph: Graph, cells: readonly Cell[]): { contract: Contract; item: Item }[] {
  const out = new Map<string, { contract: Contract; item: Item }>();
  for (const c of cells) {
    if (c.is !== "figure" || !("assumes" in c.decl)) continue;
    for (const contract of c.decl.assumes ?? []) {
      const item = graph.holder(c.item, contract.per);
      if (item) out.set(`${contract.id} ${itemAddress(item)}`, { contract, item });
    }
  }
  return [...out.values()];
}
