// What the contract tests know of a house: which declarations read which.
import { readFileSync } from "node:fs";
import { readShop } from "../../src/files/shop-folder.ts";
import type { AnyRef, Declared, Joint } from "../../src/kernel/figure.ts";
import type { Room } from "../../src/kernel/room.ts";
import type { Ref, When } from "../../src/kernel/ref.ts";
import { parseShop, type ParsedShop } from "../../src/kernel/model/shop.ts";
import { waywright } from "../../src/rooms/index.ts";

export const root = new URL("../../", import.meta.url).pathname;
export const example: ParsedShop = parseShop(readShop(`${root}examples/heron`).files, waywright.keys);

/** Everything a need may come to stand on, links, firsts and perhapses followed. */
export function targets(ref: Ref<unknown>): readonly (Declared | Joint)[] {
  const r = ref as AnyRef;
  if (r.decl === "via" || r.decl === "perhaps") return targets(r.to);
  if (r.decl === "first") return r.refs.flatMap(targets);
  return r.decl === "part" ? [r, r.joint] : [r];
}

const words = (when: readonly When[] | undefined): readonly Ref<unknown>[] => (when ?? []).map((w) => w.word);

type Reader = Room["figures"][number] | Room["inputs"][number] | Room["slots"][number] | Joint;

/** What a declaration is computed from, its shares included. */
export function readsOf(d: Reader): readonly Ref<unknown>[] {
  if (d.decl === "input") return d.typical && "of" in d.typical ? [d.typical.of] : [];
  if (d.decl === "part") return [d.joint];
  if (d.decl === "slot") return (waywright.offersTo.get(d) ?? []).map((o) => o.from);
  const estimate = d.decl === "simulated" && d.estimate ? [d.estimate] : [];
  return [...Object.values(d.needs), ...words(d.when), ...estimate];
}

/** What of a room somebody looks at without computing with it: checks, offers, notices, pictures, steps. */
function looksAt(room: Room): readonly Ref<unknown>[] {
  return [
    ...room.checks.flatMap((c) => [c.demand, c.capacity, ...words(c.when), ...c.remedies.flatMap((r) => words(r.when))]),
    ...room.offers.flatMap((o) => [o.from, ...words(o.when)]),
    ...room.notices.flatMap((n) => [...Object.values(n.needs), ...words(n.when)]),
    ...room.pictures.flatMap((p) => Object.values(p.needs)),
    ...room.steps.flatMap((s) => s.reads.flatMap((r) => r.expect ?? [])),
  ];
}

/** Every declaration that something in the house reads. */
export const read: ReadonlySet<unknown> = new Set(
  waywright.rooms.flatMap((room) =>
    [...looksAt(room), ...[...room.inputs, ...room.figures, ...room.slots, ...room.joints].flatMap(readsOf)].flatMap(targets),
  ),
);

const readme = (room: string): string => {
  try {
    return readFileSync(`${root}src/rooms/${room}/README.md`, "utf8");
  } catch {
    return "";
  }
};

/** Ids of figures that nothing reads because they are what the user wants to know: the room's README lists them with the reason, some a line. */
export function ownAnswers(room: string): readonly string[] {
  const section = /\n## Answers on their own\n([\s\S]*?)(?=\n## |\n<!-- |$)/.exec(readme(room))?.[1] ?? "";
  const lines = section.matchAll(/^- ((?:`[^`]+`, )*`[^`]+`): \S/gm);
  return [...lines].flatMap((line) => [...(line[1] ?? "").matchAll(/`([^`]+)`/g)].map((m) => m[1] ?? ""));
}
