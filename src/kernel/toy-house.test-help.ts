// A small house for the tests of the kernel, a shop of winches: every declaration once, and models built by hand, with no loader between.
import { check, notice } from "./check.ts";
import { contract } from "./contract.ts";
import { evaluate, type Evaluation, type Mode } from "./evaluate.ts";
import { figure, first, input, listInput, pairInput, perhaps, textInput, value, via, wordInput } from "./figure.ts";
import { build, type Cell, type Graph } from "./graph.ts";
import { house, type House } from "./house.ts";
import { machine, scope, shop } from "./item.ts";
import { link } from "./ref.ts";
import { asFound, type Leaf, type MapNode, type Model, type Node, type Origin } from "./model/node.ts";
import { type Room, room } from "./room.ts";
import { listSlot, offer, slot } from "./slot.ts";

/** What a file would say: texts, maps and lists of them. */
export type Tree = string | readonly Tree[] | { readonly [key: string]: Tree };

const place = { file: "by-hand.yaml", line: 1, column: 1, endLine: 1, endColumn: 1 };
const origin: Origin = { by: "line" };

function nodeOf(tree: Tree): Node {
  if (typeof tree === "string") return leafOf(tree);
  if (isList(tree)) return { is: "list", items: tree.map(nodeOf), place, origin };
  return mapOf(tree);
}
const isList = (tree: Tree): tree is readonly Tree[] => Array.isArray(tree);
export const leafOf = (text: string, more: Partial<Leaf> = {}): Leaf => ({ is: "leaf", text, place, origin, over: [], ...more });
const mapOf = (tree: { readonly [key: string]: Tree }): MapNode => ({
  is: "map",
  entries: new Map(Object.entries(tree).map(([key, t]) => [key, nodeOf(t)])),
  place,
  origin,
});

/** A model from trees by root: `shop` and machines. */
export function modelOf(roots: { readonly [root: string]: { readonly [key: string]: Tree } }): Model {
  return {
    title: "Winch works",
    show: { units: "metric", also: null, pressure: "bar", currency: "USD" },
    roots: new Map(Object.entries(roots).map(([root, tree]) => [root, mapOf(tree)])),
    findings: [],
    options: [],
    records: [],
    variant: asFound,
  };
}

/** The same model with one leaf exchanged, as a record would. */
export function withLeaf(model: Model, root: string, path: readonly string[], leaf: Leaf): Model {
  const put = (node: Node | undefined, left: readonly string[]): Node => {
    const [key, ...rest] = left;
    if (key === undefined) return leaf;
    const entries = new Map(node?.is === "map" ? node.entries : []);
    return { is: "map", place, origin, entries: entries.set(key, put(entries.get(key), rest)) };
  };
  const top = put(model.roots.get(root), path);
  return { ...model, roots: new Map(model.roots).set(root, top as MapNode) };
}

/** A house of one room named `toy` that brings these declarations. */
export const toyRoom = (brings: Readonly<Record<string, unknown>>, name = "toy"): Room =>
  room({ name, title: name, answers: "", brings: [brings] });
export const houseOf = (...rooms: readonly Room[]): House => house(rooms, { shop: [], machine: [], catalogue: [] });

/** A machine `winch` with these keys, under a house of one room. */
export function benchOf(
  brings: Readonly<Record<string, unknown>>,
  keys: { readonly [key: string]: Tree } = {},
  mode: Mode = "full",
): Evaluation {
  const e = evaluate(build(houseOf(toyRoom(brings)), modelOf({ shop: {}, winch: keys })), mode);
  // Columns come when asked for: here all are asked for at once, so that what ran can be counted.
  for (const cell of e.graph.cells.values()) e.filled.get(cell);
  return e;
}

export function cellAt(graph: Graph, address: string): Cell {
  const cell = graph.cells.get(address);
  if (!cell) throw new Error(`nothing at ${address}; there are ${[...graph.cells.keys()].join(", ")}`);
  return cell;
}
/** The values of a figure, all samples. */
export function columnAt(e: Evaluation, address: string): Float64Array {
  const f = e.filled.get(cellAt(e.graph, address));
  if (!f || !("v" in f)) throw new Error(`${address} is no column`);
  return f.v;
}

const measure = "look at it";

// Things: a winch has a drum, a drum a brake whether written or not, pulleys have names, two pumps stand under fixed keys.
export const drum = scope({ name: "drum", says: "a drum", mounts: ["drum"] });
export const brake = scope({ name: "brake", says: "a brake", mounts: [{ at: "drum.brake", implied: true }] });
export const motor = scope({ name: "motor", says: "a motor", mounts: ["drum.motor", "pulleys.*.motor"] });
export const pulley = scope({ name: "pulley", says: "a pulley", mounts: ["pulleys.*"] });
const pump = scope({ name: "pump", says: "a pump", mounts: ["oil.pump", "water.pump"] });
export const rope = scope({ name: "rope", says: "a rope", mounts: ["ropes.*", "shop/catalogue/ropes.*"] });
export const lift = scope({ name: "lift", says: "a lift", mounts: ["work/*.lifts.*"], nameKey: "operation" });
const meter = scope({ name: "meter", says: "the meter", mounts: ["shop/meter"] });
export const ropeOfLift = link({ per: lift, key: "rope", to: rope, says: "rope" });
export const pulleyOfRope = link({ per: rope, key: "pulley", to: pulley, says: "pulley" });

export const voltage = input({
  key: "voltage",
  per: shop,
  says: "voltage of the shop",
  unit: "V",
  measure,
  typical: { value: "210 to 250 V", source: "toy" },
});
export const rating = input({
  key: "rating",
  per: meter,
  says: "rating of the meter",
  unit: "A",
  required: true,
  measure: "read the plate of the meter",
});
export const load = input({ key: "load", per: machine, says: "load on the hook", unit: "kg", required: true, measure: "weigh it" });
export const radius = input({
  key: "radius",
  per: drum,
  says: "radius of the drum",
  unit: "m",
  symbol: "r",
  measure,
  typical: { value: "80 to 120 mm", source: "toy" },
});
export const grip = input({
  key: "grip",
  per: brake,
  says: "grip of the brake",
  unit: "N*m",
  measure,
  typical: { value: "300 to 500 N*m", source: "toy" },
});
export const power = input({ key: "power", per: motor, says: "power of the motor", unit: "W", measure });
export const motorKind = wordInput({
  key: "kind",
  per: motor,
  says: "kind of motor",
  words: ["cage", "brush"],
  typical: ["cage", "brush"],
  source: "toy",
  measure,
});
export const flow = input({
  key: "flow",
  per: pump,
  says: "flow of the pump",
  unit: "m3/s",
  kind: "flow",
  measure,
  typical: { value: "1 to 2 L/min", source: "toy" },
});
export const strength = input({
  key: "strength",
  per: rope,
  says: "strength of the rope",
  unit: "N",
  measure,
  typical: { value: "8 to 12 kN", source: "toy" },
});
export const speed = input({ key: "speed", per: lift, says: "speed of the lift", unit: "m/s", none: true, measure });
export const ratios = listInput({ key: "ratios", per: drum, says: "ratios of the gear", unit: "1", kind: "ratio", measure });
const volts = pairInput({ key: "volts", per: motor, says: "voltages of the plate", unit: "V", measure });
const remark = textInput({ key: "remark", per: drum, says: "remark", measure });

// The early room sums what the late one offers and relies on a window that the late one could spoil.
const draws = slot({ id: "early.draws", per: shop, says: "what the winches draw", combine: "sum", empty: "zero", unit: "VA" });
const drawList = listSlot<number>({ id: "early.draw-list", per: shop, says: "draw of each motor", empty: "zero" });
const window = contract({ id: "early.window", per: shop, says: "a shop that is not drawn down" });
const current = figure({
  id: "early.current",
  per: shop,
  symbol: "I",
  unit: "A",
  says: "current of the shop",
  formula: "S / V",
  source: "definition",
  needs: { S: draws, V: voltage },
  of: (x) => x.S / x.V,
  signs: { S: "+", V: "-" },
});
export const guard = check({
  id: "early.not-drawn-down",
  per: shop,
  asks: "Can the meter carry the winches?",
  demand: current,
  capacity: rating,
  H: 1.25,
  guarantees: window,
  remedies: [{ does: "run one at a time", costs: "patience", changes: [load] }],
});

const weight = figure({
  id: "late.weight",
  per: machine,
  symbol: "F",
  unit: "N",
  says: "weight on the hook",
  formula: "9.80665 * m",
  source: "Newton",
  needs: { m: load },
  of: (x) => 9.80665 * x.m,
  signs: { m: "+" },
});
const torque = figure({
  id: "late.drum.torque",
  per: drum,
  symbol: "T",
  unit: "N*m",
  says: "torque on the drum",
  formula: "F * r",
  source: "lever",
  needs: { F: weight, r: radius },
  of: (x) => x.F * x.r,
  valid: (x) => (x.r > 0 ? null : "no drum without a radius"),
  signs: { F: "+", r: "+" },
});
export const motorDraw = figure({
  id: "late.motor.draw",
  per: motor,
  symbol: "S_m",
  unit: "VA",
  says: "draw of the motor",
  formula: "P / 0.8",
  source: "toy",
  needs: { P: power },
  when: [{ word: motorKind, is: ["cage"] }],
  of: (x) => x.P / 0.8,
});
const drawOffer = offer(draws, motorDraw);
const drawInList = offer(drawList, motorDraw);
const largest = value({
  id: "late.largest",
  per: shop,
  says: "the draws, largest first",
  each: { unit: "VA" },
  needs: { each: drawList },
  of: (x): readonly number[] => x.each.map((s) => s.value).toSorted((a, b) => b - a),
});
export const fullSpeed = figure({
  id: "late.drum.full-speed",
  per: drum,
  symbol: "v",
  unit: "m/s",
  says: "speed of the rope while the voltage holds",
  formula: "V * r / 100",
  source: "toy",
  needs: { V: voltage, r: radius },
  of: (x) => (x.V * x.r) / 100,
  assumes: [window],
  signs: { V: "+", r: "+" },
});
const pull = figure({
  id: "late.lift.pull",
  per: lift,
  symbol: "F_r",
  unit: "N",
  says: "pull the rope of the lift can take",
  formula: "F_max",
  source: "plate of the rope",
  needs: { F_max: via(ropeOfLift, strength) },
  of: (x) => x.F_max,
});
const wanted = figure({
  id: "late.lift.wanted",
  per: lift,
  symbol: "v_w",
  unit: "m/s",
  says: "speed wanted, or what the drum can do",
  formula: "v",
  source: "toy",
  needs: { v: first(speed, fullSpeed) },
  of: (x) => x.v,
});
const heat = figure({
  id: "late.drum.heat",
  per: drum,
  symbol: "P_h",
  unit: "W",
  says: "heat of the brake, and of a motor if there is one",
  method: "tenth of the motor, hundredth of the grip",
  source: "toy",
  needs: { T: grip, P: perhaps(power) },
  of: (x) => x.T / 100 + (x.P ?? 0) / 10,
});
const brakeHolds = check({
  id: "late.drum.brake-holds",
  per: drum,
  asks: "Does the brake hold the load?",
  demand: torque,
  capacity: grip,
  H: 1.5,
  guards: "people",
  remedies: [],
});
const fastEnough = check({
  id: "late.drum.fast-enough",
  per: drum,
  asks: "Is the rope fast enough?",
  demand: input({
    key: "needed-speed",
    per: drum,
    says: "speed needed",
    unit: "m/s",
    measure,
    typical: { value: "0.1 m/s", source: "toy" },
  }),
  capacity: fullSpeed,
  H: 1,
  remedies: [],
});
const heavy = notice({
  id: "late.heavy",
  per: machine,
  severity: "note",
  needs: { m: load },
  of: (x) => (x.m > 500 ? "more than half a tonne" : null),
  at: load,
});

export const early = toyRoom({ meter, voltage, rating, draws, drawList, window, current, guard }, "early");
const things = [drum, brake, motor, pulley, pump, rope, lift, ropeOfLift, pulleyOfRope];
const inputs = [load, radius, grip, power, motorKind, flow, strength, speed, ratios, volts, remark, fastEnough.demand];
const figures = [weight, torque, motorDraw, drawOffer, drawInList, largest, fullSpeed, pull, wanted, heat];
export const late = toyRoom({ things, inputs, figures, checks: [brakeHolds, fastEnough, heavy] }, "late");
export const winches = houseOf(early, late);

/** Two winches in one shop; `more` is laid over the keys of the first. */
export function shopOf(more: { readonly [key: string]: Tree } = {}, shopKeys: { readonly [key: string]: Tree } = {}): Model {
  return modelOf({
    shop: { meter: { rating: "63 A" }, catalogue: { ropes: { steel: { strength: "10 kN" }, spare: { strength: "9 kN" } } }, ...shopKeys },
    winch: {
      load: "300 kg",
      drum: { radius: "90 to 110 mm", motor: { kind: "cage", power: "4 kW" } },
      pulleys: { top: { motor: { kind: "brush", power: "1 kW" } } },
      ropes: { steel: { strength: "11 kN" } },
      oil: { pump: { flow: "1.5 L/min" } },
      work: {
        crate: {
          lifts: [
            { operation: "up", rope: "steel", speed: "0.2 m/s" },
            { operation: "over", rope: "spare" },
          ],
        },
      },
      ...more,
    },
    crane: { load: "700 kg", drum: { motor: { kind: "cage", power: "8 kW" } } },
  });
}
export const graphOf = (more: { readonly [key: string]: Tree } = {}, shopKeys: { readonly [key: string]: Tree } = {}): Graph =>
  build(winches, shopOf(more, shopKeys));
