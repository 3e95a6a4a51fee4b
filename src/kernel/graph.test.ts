import { expect, test } from "vitest";
import { check } from "./check.ts";
import { evaluate } from "./evaluate.ts";
import { figure, first, input, perhaps, type Ref, value, via, wordInput } from "./figure.ts";
import { assumed, build, type Cell, cone, type Graph, isMissing, type Missing } from "./graph.ts";
import { type Item, itemAddress, machine, scope, shop } from "./item.ts";
import { link } from "./ref.ts";
import { listSlot, offer, slot } from "./slot.ts";
import * as toy from "./toy-house.test-help.ts";
import { benchOf, cellAt, columnAt, graphOf, houseOf, modelOf, toyRoom, type Tree } from "./toy-house.test-help.ts";

const itemOf = (g: Graph, address: string): Item => {
  const item = g.items.find((i) => itemAddress(i) === address);
  if (!item) throw new Error(`no ${address} among ${g.items.map(itemAddress).join(", ")}`);
  return item;
};
const at = (g: Graph, from: string, ref: Ref<unknown>): Cell | Missing => g.find(itemOf(g, from), ref);
const addressOf = (c: Cell | Missing): string => (isMissing(c) ? `${c.missing}: ${c.says}` : c.address);
const measure = "look at it";

test("a need is looked up on the thing itself, then on its holders up to the shop", () => {
  const g = graphOf();
  expect(addressOf(at(g, "winch/drum", toy.radius))).toBe("winch/drum.radius");
  expect(addressOf(at(g, "winch/drum.motor", toy.radius))).toBe("winch/drum.radius");
  expect(addressOf(at(g, "winch/drum.motor", toy.load))).toBe("winch/load");
  expect(addressOf(at(g, "winch/drum.motor", toy.voltage))).toBe("shop/voltage");
  expect(addressOf(at(g, "crane/drum", toy.load))).toBe("crane/load");
});

test("the only thing of its kind under a fixed key is found from its holder and from beside it", () => {
  const g = graphOf();
  expect(addressOf(at(g, "winch", toy.radius))).toBe("winch/drum.radius");
  expect(addressOf(at(g, "winch/drum", toy.power))).toBe("winch/drum.motor.power");
  expect(addressOf(at(g, "winch/oil.pump", toy.radius))).toBe("winch/drum.radius");
  expect(addressOf(at(g, "winch", toy.rating))).toBe("shop/meter.rating");
});

test("a thing with a user's name is never found by luck, nor a machine from the shop, nor one of two pumps", () => {
  const ratio = input({ key: "ratio", per: toy.pulley, says: "ratio", unit: "1", kind: "ratio", measure });
  const house = houseOf(toy.early, toy.late, toyRoom({ ratio }));
  const tree: { readonly [key: string]: Tree } = { load: "1 kg", pulleys: { top: { ratio: "2" } }, oil: { pump: { flow: "1 L/min" } } };
  const one = build(house, modelOf({ shop: {}, winch: tree }));
  expect(addressOf(at(one, "winch/pulleys.top", ratio))).toBe("winch/pulleys.top.ratio");
  expect(addressOf(at(one, "winch", ratio))).toBe("not-there: there is no pulley here");
  expect(addressOf(at(one, "shop", toy.load))).toBe("not-there: there is no machine here");
  expect(addressOf(at(one, "winch", toy.flow))).toBe("winch/oil.pump.flow");
  const two = build(house, modelOf({ shop: {}, winch: { ...tree, water: { pump: { flow: "2 L/min" } } } }));
  expect(addressOf(at(two, "winch", toy.flow))).toBe("not-there: there is no pump here");
  expect(addressOf(at(two, "winch/water.pump", toy.flow))).toBe("winch/water.pump.flow");
});

test("a brake nobody wrote about is there with its drum, and with no drum there is none", () => {
  const g = graphOf();
  expect(addressOf(at(g, "winch/drum", toy.grip))).toBe("winch/drum.brake.grip");
  expect(g.items.map(itemAddress)).toContain("crane/drum.brake");
  const without = build(toy.winches, modelOf({ shop: {}, winch: { load: "1 kg" } }));
  expect(without.items.map(itemAddress)).toEqual(["shop", "winch"]);
  expect(graphOf({ drum: "none" }).items.map(itemAddress)).not.toContain("winch/drum.brake");
  expect(graphOf({ drum: { brake: "none" } }).items.map(itemAddress)).not.toContain("winch/drum.brake");
  expect(graphOf({ drum: { brake: "unknown" } }).items.map(itemAddress)).toContain("winch/drum.brake");
});

test("items of a list go by the name the user gave them, others by their number", () => {
  const g = graphOf({ work: { crate: { lifts: [{ operation: "up" }, { rope: "steel" }] } } });
  expect(g.items.filter((i) => i.scope === toy.lift).map(itemAddress)).toEqual(["winch/work/crate.lifts.up", "winch/work/crate.lifts.2"]);
});

test("via follows the name to the machine's own thing first, then to the catalogue of the shop", () => {
  const g = graphOf();
  const ropes = via(toy.ropeOfLift, toy.strength);
  expect(addressOf(at(g, "winch/work/crate.lifts.up", ropes))).toBe("winch/ropes.steel.strength");
  expect(addressOf(at(g, "winch/work/crate.lifts.over", ropes))).toBe("shop/catalogue/ropes.spare.strength");
});

test("a chain of links is followed from thing to thing", () => {
  const g = graphOf({ ropes: { steel: { strength: "1 kN", pulley: "top" } } });
  const chain = via([toy.ropeOfLift, toy.pulleyOfRope], toy.power);
  expect(addressOf(at(g, "winch/work/crate.lifts.up", chain))).toBe("winch/pulleys.top.motor.power");
});

test.each([
  ["a link nobody wrote takes what is typical of such things", {}, "winch/work/crate.lifts.up.rope.strength"],
  ["a link set to none does too", { rope: "none" }, "winch/work/crate.lifts.up.rope.strength"],
  ["an unknown link has to be told first", { rope: "unknown" }, "required: rope not known"],
  ["a link to a thing that is not there says its name", { rope: "hemp" }, "required: no rope named hemp"],
] as const)("%s", (_, more, expected) => {
  const g = graphOf({ work: { crate: { lifts: [{ operation: "up", ...more }] } } });
  expect(addressOf(at(g, "winch/work/crate.lifts.up", via(toy.ropeOfLift, toy.strength)))).toBe(expected);
});

test("what is typical stands in at the place that asks, once for each, and has no typical value to give where a figure estimates it", () => {
  const g = graphOf({ work: { crate: { lifts: [{ operation: "up" }, { operation: "over" }] } } });
  const [a, b] = ["up", "over"].map((l) => cellAt(g, `winch/late.work/crate.lifts.${l}.pull`));
  expect(a === undefined ? [] : cone(a).map((c) => c.address)).toContain("winch/work/crate.lifts.up.rope.strength");
  expect(b === undefined ? [] : cone(b).map((c) => c.address)).toContain("winch/work/crate.lifts.over.rope.strength");
  const stretch = input({
    key: "stretch",
    per: toy.rope,
    says: "stretch",
    unit: "1",
    kind: "ratio",
    measure,
    typical: { of: toy.strength as never, source: "toy" },
  });
  expect(addressOf(g.find(itemOf(g, "winch/work/crate.lifts.up"), via(toy.ropeOfLift, stretch)))).toBe("not-there: no rope named");
});

test("first takes the first that is there; of what is missing it says the one that somebody can tell", () => {
  const g = graphOf();
  expect(addressOf(at(g, "winch/work/crate.lifts.up", first(toy.speed, toy.fullSpeed)))).toBe("winch/work/crate.lifts.up.speed");
  expect(addressOf(at(g, "winch/work/crate.lifts.over", first(toy.speed, toy.fullSpeed)))).toBe(
    "winch/drum.full-speed".replace("/", "/late."),
  );
  const none = graphOf({ load: "unknown" });
  expect(addressOf(at(none, "winch", first(toy.ratios as Ref<unknown>, toy.load)))).toBe("required: load on the hook is not known");
});

test("perhaps hands on null where a thing is missing, and the value where it is not", () => {
  const e = (drum: Tree) => evaluate(graphOf({ drum }), "nominal");
  expect(columnAt(e({ brake: { grip: "400 N*m" } }), "winch/late.drum.heat")[0]).toBe(4);
  expect(columnAt(e({ brake: { grip: "400 N*m" }, motor: { power: "1 kW" } }), "winch/late.drum.heat")[0]).toBe(104);
});

test("what exists hangs on words: a motor of another kind has no such figure, one of an unknown kind leaves it open", () => {
  const kind = (word: string) => at(graphOf({ drum: { motor: { power: "1 kW", kind: word } } }), "winch/drum.motor", toy.motorDraw);
  expect(addressOf(kind("cage"))).toBe("winch/late.drum.motor.draw");
  expect(addressOf(kind("brush"))).toBe("not-there: kind of motor is brush");
  expect(kind("unknown")).toEqual({
    missing: "required",
    says: "kind of motor is not known",
    address: "winch/drum.motor.kind",
    input: toy.motorKind,
  });
});

test("a word nobody wrote is as unknown as one said to be, unless only one is typical", () => {
  const unwritten = at(graphOf({ drum: { motor: { power: "1 kW" } } }), "winch/drum.motor", toy.motorDraw);
  expect(addressOf(unwritten)).toBe("required: kind of motor is not known");
  const kind = wordInput({ key: "kind", per: machine, says: "kind", words: ["a", "b"], typical: ["a"], measure });
  const says = figure({
    id: "toy.says",
    per: machine,
    symbol: "s",
    unit: "s",
    says: "",
    method: "one",
    source: "",
    needs: {},
    when: [{ word: kind, is: ["a"] }],
    of: () => 1,
  });
  expect(benchOf({ kind, says }).graph.cells.has("winch/toy.says")).toBe(true);
});

test("a check on an unknown word is there and open, with the word to be told", () => {
  const sure = check({
    id: "late.motor.sure",
    per: toy.motor,
    asks: "?",
    demand: toy.power,
    capacity: toy.power,
    H: 1,
    when: [{ word: toy.motorKind, is: ["cage"] }],
    remedies: [],
  });
  const g = build(
    houseOf(toy.early, toy.late, toyRoom({ sure: { ...sure, id: "toy.sure" } })),
    toy.shopOf({ drum: { motor: { power: "1 kW", kind: "unknown" } } }),
  );
  const found = g.checks.filter((c) => c.decl.id === "toy.sure").map((c) => [itemAddress(c.item), addressOf(c.demand)]);
  expect(found).toEqual([
    ["winch/drum.motor", "required: kind of motor is not known"],
    ["crane/drum.motor", "crane/drum.motor.power"],
  ]);
});

test("an optional input exists where it is written; one asked for and unknown holds up what needs it; none makes it absent", () => {
  const speed = (more: { readonly [key: string]: string }) =>
    at(graphOf({ work: { crate: { lifts: [{ operation: "up", ...more }] } } }), "winch/work/crate.lifts.up", toy.speed);
  expect(addressOf(speed({ speed: "1 m/s" }))).toBe("winch/work/crate.lifts.up.speed");
  expect(addressOf(speed({}))).toBe("not-there: speed of the lift is not written");
  expect(addressOf(speed({ speed: "unknown" }))).toBe("required: speed of the lift is not known");
  expect(addressOf(speed({ speed: "none" }))).toBe("not-there: speed of the lift: none");
});

test("a required input that nobody wrote holds up figures, which stay in the graph and say what they wait for", () => {
  const g = build(toy.winches, modelOf({ shop: {}, winch: { drum: {} } }));
  const cell = cellAt(g, "winch/late.weight");
  expect(cell.is === "figure" && cell.waits).toMatchObject({ missing: "required", address: "winch/load" });
  const held = evaluate(g, "full").filled.get(cellAt(g, "winch/late.drum.torque"));
  expect(held?.holes && [...held.holes.keys()]).toEqual(["load on the hook is not known"]);
});

test("a map set to unknown answers for every key below it, and so does none", () => {
  const deep = input({ key: "oil.level.low", per: machine, says: "low level", unit: "m", measure });
  const house = houseOf(toyRoom({ deep }));
  const g = (oil: Tree) => {
    const graph = build(house, modelOf({ shop: {}, winch: { oil } }));
    return addressOf(at(graph, "winch", deep));
  };
  expect(g({ level: { low: "20 mm" } })).toBe("winch/oil.level.low");
  expect(g({ level: "unknown" })).toBe("required: low level is not known");
  expect(g("unknown")).toBe("required: low level is not known");
  expect(g({ level: "none" })).toBe("not-there: low level: none");
  expect(g("none")).toBe("not-there: low level: none");
});

test("an offer lands on the nearest owner above the thing that gives it", () => {
  const g = graphOf();
  const draws = cellAt(g, "shop/early.draws");
  expect(draws.is === "slot" && draws.shares.map((c) => c.address)).toEqual(["winch/late.drum.motor.draw", "crane/late.drum.motor.draw"]);
});

test("an offer by a link lands on the thing that is named, and nowhere when none is", () => {
  const bus = scope({ name: "bus", says: "a bus", mounts: ["buses.*"] });
  const drive = scope({ name: "drive", says: "a drive", mounts: ["drives.*"] });
  const busOf = link({ per: drive, key: "bus", to: bus, says: "bus" });
  const draw = input({ key: "draw", per: drive, says: "draw", unit: "W", measure });
  const total = slot({ id: "toy.bus.total", per: bus, says: "draw of the bus", combine: "sum", empty: "zero", unit: "W" });
  const e = benchOf(
    { bus, drive, busOf, draw, total, give: offer(total, draw, { by: busOf }) },
    {
      buses: { a: {}, b: {} },
      drives: { x: { draw: "1 W", bus: "a" }, y: { draw: "2 W", bus: "a" }, z: { draw: "4 W", bus: "b" }, w: { draw: "8 W" } },
    },
  );
  expect(columnAt(e, "winch/toy.buses.a.total")).toEqual(Float64Array.of(3));
  expect(columnAt(e, "winch/toy.buses.b.total")).toEqual(Float64Array.of(4));
});

test("a slot that refuses when empty is missing, one that takes zero is zero", () => {
  const most = slot({ id: "toy.most", per: machine, says: "most of all", combine: "max", empty: "refuse", unit: "W" });
  const sum = slot({ id: "toy.sum", per: machine, says: "sum of all", combine: "sum", empty: "zero", unit: "W" });
  const e = benchOf({ most, sum });
  expect(addressOf(at(e.graph, "winch", most))).toBe("required: most of all: nothing entered");
  expect(columnAt(e, "winch/toy.sum")).toEqual(Float64Array.of(0));
});

test("a share nobody can count yet makes the sum a lower limit and is asked for", () => {
  const short = graphOf({ drum: { motor: { power: "4 kW", kind: "unknown" } } });
  const draws = cellAt(short, "shop/early.draws");
  expect(draws.is === "slot" && draws.waits?.address).toBe("winch/drum.motor.kind");
  expect(evaluate(short, "nominal").filled.get(draws)).toMatchObject({ v: Float64Array.of(10_000), bound: "lower" });
});

test("things of which nobody knows how many there are make the sum a lower limit; none of them makes it whole", () => {
  const draws = (pulleys: Tree) => {
    const g = graphOf({ pulleys });
    const cell = cellAt(g, "shop/early.draws");
    return [evaluate(g, "nominal").filled.get(cell)?.bound, cell.is === "slot" ? cell.waits?.address : null];
  };
  expect(draws("unknown")).toEqual(["lower", "winch/pulleys"]);
  expect(draws("none")).toEqual([undefined, undefined]);
});

test("a circle of figures is refused and printed, slots on the way included", () => {
  const sum: Ref<number> & { decl: "slot" } = slot({ id: "toy.sum", per: machine, says: "", combine: "sum", empty: "zero", unit: "W" });
  const one = figure({
    id: "toy.one",
    per: machine,
    symbol: "a",
    unit: "W",
    says: "",
    formula: "S",
    source: "",
    needs: { S: sum },
    of: (x) => x.S,
  });
  const two = figure({
    id: "toy.two",
    per: machine,
    symbol: "b",
    unit: "W",
    says: "",
    formula: "P",
    source: "",
    needs: { P: one },
    of: (x) => x.P,
  });
  expect(() => benchOf({ sum, one, two, give: offer(sum as never, two) })).toThrow(
    "circle of figures: winch toy.one -> winch toy.sum -> winch toy.two -> winch toy.one",
  );
});

test("two quantities at one address are refused, so that none hides the other", () => {
  const room = scope({ name: "reel", says: "a reel", mounts: ["toy.reel"] });
  const mass = input({ key: "mass", per: room, says: "mass", unit: "kg", measure });
  const same = figure({
    id: "toy.reel.mass",
    per: room,
    symbol: "m",
    unit: "kg",
    says: "",
    formula: "1",
    source: "",
    needs: {},
    of: () => 1,
  });
  expect(() => benchOf({ room, mass, same }, { toy: { reel: { mass: "2 kg" } } })).toThrow(
    "two things at one address: winch/toy.reel.mass",
  );
});

test("a cone holds each cell once, needs before what needs them", () => {
  const order = cone(cellAt(graphOf(), "winch/late.drum.torque")).map((c) => c.address);
  expect(order).toEqual(["winch/load", "winch/late.weight", "winch/drum.radius", "winch/late.drum.torque"]);
});

test("windows assumed in a cone are found at the thing that owns them", () => {
  const g = graphOf();
  const found = assumed(g, cone(cellAt(g, "winch/late.drum.full-speed"))).map((a) => [a.contract.id, itemAddress(a.item)]);
  expect(found).toEqual([["early.window", "shop"]]);
  expect(assumed(g, cone(cellAt(g, "winch/late.drum.torque")))).toEqual([]);
});

test("a notice is there once all it needs is, on every thing of its kind", () => {
  expect(graphOf().notices.map((n) => n.item.root)).toEqual(["winch", "crane"]);
  expect(graphOf({ load: "unknown" }).notices.map((n) => n.item.root)).toEqual(["crane"]);
});

test("a list keeps its shares under the names of the things that gave them", () => {
  const part = scope({ name: "part", says: "a part", mounts: ["parts.*"] });
  const mass = input({ key: "mass", per: part, says: "mass", unit: "kg", measure });
  const all = listSlot<number>({ id: "toy.all", per: machine, says: "masses", empty: "zero" });
  const names = value({
    id: "toy.names",
    per: machine,
    says: "names",
    needs: { all, none: perhaps(mass) },
    of: (x) => x.all.map((s) => `${s.from} ${s.value}`),
  });
  const e = benchOf({ part, mass, all, names, give: offer(all, mass) }, { parts: { hook: { mass: "2 kg" }, block: { mass: "5 kg" } } });
  expect(e.filled.get(cellAt(e.graph, "winch/toy.names"))).toMatchObject({ each: [["hook 2", "block 5"]] });
});

test("the shop is above all machines and no machine is above another", () => {
  const g = graphOf();
  expect(g.holder(itemOf(g, "winch/drum"), shop)?.root).toBe("shop");
  expect(g.holder(itemOf(g, "shop"), machine)).toBeNull();
});
