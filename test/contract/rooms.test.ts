// What every room owes the house, whatever it is about. Nothing here names a room: a new one is held to all of it by its registry line.
import { describe, expect, test } from "vitest";
import { isMissing } from "../../src/kernel/graph.ts";
import type { Input } from "../../src/kernel/figure.ts";
import { type Item, mountKeys } from "../../src/kernel/item.ts";
import type { KeyNode } from "../../src/kernel/model/key-node.ts";
import { asFound, type Variant } from "../../src/kernel/model/node.ts";
import { readQuantity } from "../../src/kernel/quantity.ts";
import type { Room } from "../../src/kernel/room.ts";
import { study } from "../../src/kernel/study.ts";
import { waywright } from "../../src/rooms/index.ts";
import { example, ownAnswers, read, readsOf, targets } from "./house.ts";

const rooms = waywright.rooms;
const steps = rooms.flatMap((r) => r.steps);
const ids = (r: Room): string[] =>
  [...r.figures, ...r.joints, ...r.slots, ...r.contracts, ...r.checks, ...r.notices, ...r.steps, ...r.pictures].map((d) => d.id);

/** A label starts small (a symbol or a proper name may not) and is no sentence. */
const label = /^(?:[a-z0-9]|[A-Z]\w*_).*[^.]$/;
const sentence = /^[A-Z0-9].*[.?]$/;
/** Words are small; what a plate carries as a letter stays the letter. */
const word = /^(?:[a-z0-9]+(?:-[a-z0-9]+)*|[A-Z]{1,2})$/;

test("no two things of the house share an id, and every contract has a room", () => {
  const all = rooms.flatMap(ids);
  expect(all.length).toBeGreaterThan(100);
  expect(all.filter((id, i) => all.indexOf(id) !== i)).toEqual([]);
});

describe.each(rooms.map((r) => [r.name, r] as const))("room %s", (name, room) => {
  test("says what it answers, and every id begins with its name", () => {
    const isFloor = room.figures.length + room.checks.length === 0;
    expect(isFloor ? "?" : room.answers).toMatch(/\?$/);
    expect(ids(room).filter((id) => !id.startsWith(`${name}.`))).toEqual([]);
  });

  test("every key has a label and says how to find it out at home", () => {
    expect(room.inputs.filter((i) => !label.test(i.says)).map((i) => `${i.id}: ${i.says}`)).toEqual([]);
    expect(room.inputs.filter((i) => !sentence.test(i.measure)).map((i) => `${i.id}: ${i.measure}`)).toEqual([]);
    expect(
      room.inputs.filter((i) => i.key !== i.key.toLowerCase() || !i.key.split(".").every((k) => word.test(k))).map((i) => i.key),
    ).toEqual([]);
  });

  test("words are small, and the typical ones are among them", () => {
    const odd = room.inputs.flatMap((i) => (i.words ?? []).filter((w) => !word.test(w)).map((w) => `${i.id}: ${w}`));
    const strange = room.inputs.flatMap((i) => (i.typicalWords ?? []).filter((w) => !i.words?.includes(w)).map((w) => `${i.id}: ${w}`));
    expect([...odd, ...strange]).toEqual([]);
  });

  test("a typical band is readable in its kind and names a source; a key that is never assumed has none", () => {
    const bands = room.inputs.flatMap((i) =>
      i.typical?.value === undefined || i.kind === null ? [] : [{ i, kind: i.kind, text: i.typical.value }],
    );
    expect(bands.filter(({ kind, text }) => !readQuantity(text, kind).ok).map(({ i, text }) => `${i.id}: ${text}`)).toEqual([]);
    const unsourced = room.inputs.filter((i) => (i.typical && i.typical.source === "") || (i.typicalWords && !i.wordsSource));
    expect(unsourced.map((i) => i.id)).toEqual([]);
    expect(room.inputs.filter((i) => i.required && (i.typical || i.typicalWords)).map((i) => i.id)).toEqual([]);
  });

  // A text is a label that the surfaces print; the keys of a room that computes nothing are read by them too.
  test("every key is read by something", () => {
    const isLabel = (i: Input<unknown>): boolean => i.form === "text" || room.figures.length === 0;
    expect(room.inputs.filter((i) => !isLabel(i) && !read.has(i)).map((i) => i.id)).toEqual([]);
  });

  test("every figure is read by something, or its README lists it as an answer on its own; every slot is read", () => {
    const own = ownAnswers(name);
    expect(room.figures.filter((f) => !read.has(f) && !own.includes(f.id)).map((f) => f.id)).toEqual([]);
    expect(own.filter((id) => !room.figures.some((f) => f.id === id && !read.has(f)))).toEqual([]);
    expect(room.slots.filter((s) => !read.has(s)).map((s) => s.id)).toEqual([]);
  });

  test("every figure has a symbol, a label and a source", () => {
    const bare = room.figures.filter((f) => f.decl !== "value" && f.decl !== "part" && (f.symbol === "" || f.source === ""));
    expect(bare.map((f) => f.id)).toEqual([]);
    expect(room.figures.filter((f) => !label.test(f.says)).map((f) => `${f.id}: ${f.says}`)).toEqual([]);
  });

  test("every check asks a question and has a remedy with its price; what a remedy lays over stands under a key there is", () => {
    expect(room.checks.filter((c) => !/^[A-Z].*\?$/.test(c.asks)).map((c) => c.id)).toEqual([]);
    expect(room.checks.filter((c) => c.remedies.length === 0).map((c) => c.id)).toEqual([]);
    expect(room.checks.flatMap((c) => c.remedies.filter((r) => r.does === "" || r.costs === "").map((r) => `${c.id}: ${r.does}`))).toEqual(
      [],
    );
    const lost = room.checks.flatMap((c) =>
      c.remedies.flatMap((r) =>
        Object.keys(r.lay ?? {})
          .filter((path) => !tops(c.per).some((top) => keyAt(top, path)))
          .map((path) => `${c.id}: ${path}`),
      ),
    );
    expect(lost).toEqual([]);
  });

  test("a step that is dangerous carries its hazards, comes after steps that exist, and says what is accepted", () => {
    const known = new Set(steps.map((s) => s.id));
    expect(room.steps.flatMap((s) => s.after.filter((id) => !known.has(id)).map((id) => `${s.id} after ${id}`))).toEqual([]);
    expect(room.steps.filter((s) => s.does.length === 0 || s.accept === "").map((s) => s.id)).toEqual([]);
    const owned = new Set(rooms.flatMap((r) => r.hazards));
    expect(room.steps.flatMap((s) => s.hazards).filter((h) => !owned.has(h))).toEqual([]);
  });

  test("every hazard belongs to a step and defers to the local code or licensed practice", () => {
    const worn = new Set(steps.flatMap((s) => s.hazards));
    expect(room.hazards.filter((h) => !worn.has(h)).map((h) => h.id)).toEqual([]);
    expect(room.hazards.filter((h) => !/local (?:\w+ )?code|licensed/.test(h.says)).map((h) => h.id)).toEqual([]);
  });

  test("nothing it says claims to be safe", () => {
    const texts = [
      ...[...room.inputs, ...room.figures, ...room.slots, ...room.hazards].map((d) => d.says),
      ...room.inputs.map((i) => i.measure),
      ...room.checks.flatMap((c) => [c.asks, ...c.remedies.flatMap((r) => [r.does, r.costs])]),
      ...room.steps.flatMap((s) => [s.title, ...s.does, s.accept]),
    ];
    expect(texts.filter((t) => /\b(?:un)?safe(?:ly|ty)?\b/i.test(t))).toEqual([]);
  });
});

/** The maps of the files in which a thing of a kind may stand. */
function tops(per: Item["scope"]): KeyNode[] {
  if (per.name === "shop") return [waywright.keys.shop];
  if (per.name === "machine") return [waywright.keys.machine];
  return per.mounts.flatMap((mount) => {
    const { root, keys } = mountKeys(mount.at);
    const [head, ...rest] = keys;
    const top = head === "catalogue" ? keyAt(waywright.keys.catalogue, rest.join(".")) : keyAt(waywright.keys[root], keys.join("."));
    return top ?? [];
  });
}

function keyAt(top: KeyNode, path: string): KeyNode | undefined {
  return path.split(".").reduce<KeyNode | undefined>((at, key) => at?.keys.get(key) ?? at?.any ?? at?.item, top);
}

test("bring-up steps never wait for each other in a circle", () => {
  const done = new Set<string>();
  const circles: string[] = [];
  const visit = (id: string, trail: readonly string[]): void => {
    if (trail.includes(id)) circles.push([...trail, id].join(" -> "));
    if (done.has(id) || trail.includes(id)) return;
    for (const before of steps.find((s) => s.id === id)?.after ?? []) visit(before, [...trail, id]);
    done.add(id);
  };
  for (const s of steps) visit(s.id, []);
  expect(circles).toEqual([]);
});

test("no figure is computed from itself, on any machine whatever", () => {
  const done = new Set<unknown>();
  const circles: string[] = [];
  const visit = (d: Parameters<typeof readsOf>[0], trail: readonly (typeof d)[]): void => {
    if (trail.includes(d)) circles.push([...trail.slice(trail.indexOf(d)), d].map((x) => x.id).join(" -> "));
    if (done.has(d) || trail.includes(d)) return;
    for (const next of readsOf(d).flatMap(targets)) visit(next, [...trail, d]);
    done.add(d);
  };
  for (const room of rooms) for (const d of [...room.figures, ...room.slots, ...room.joints, ...room.inputs]) visit(d, []);
  expect(circles).toEqual([]);
});

/** Everything plain in an answer that is a number without a value. */
const noNumbers = (x: unknown): number =>
  typeof x === "number"
    ? Number(!Number.isFinite(x))
    : typeof x === "object" && x !== null
      ? Object.values(x).reduce<number>((n, v) => n + noNumbers(v), 0)
      : 0;

const found = study(waywright, example, asFound, "full");
const variants: readonly (readonly [string, Variant])[] = [
  ["as found", asFound],
  ...found.answer.options.map(({ machine, name }) => [`with ${machine}/${name}`, { options: [{ machine, name }], tries: [] }] as const),
];

test("the example has options to be laid over it", () => {
  expect(variants.length).toBeGreaterThan(10);
});

test.each(variants)("the example shop %s: no mistake in the files, no number without a value, no error of the program", (_, variant) => {
  const { answer, evaluation, graph } = study(waywright, example, variant, "full", found);
  expect(answer.findings.filter((f) => f.severity === "error")).toEqual([]);
  expect(noNumbers(answer)).toBe(0);
  const reasons = [...graph.cells.values()].flatMap((c) => [...(evaluation.filled.get(c)?.holes?.keys() ?? [])]);
  expect([...new Set(reasons)].filter((r) => r.startsWith("program error") || r.startsWith("no number for"))).toEqual([]);
  // A check whose sides exist gives a verdict for a reason that can be read.
  expect(answer.checks.filter((c) => c.verdict === "open" && c.reason === null).map((c) => c.address)).toEqual([]);
  expect(graph.checks.filter((c) => isMissing(c.demand) && c.demand.missing === "not-there")).toEqual([]);
});
