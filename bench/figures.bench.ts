// The figure graph against loops a programmer would write by hand for the same formulas: 500 figures of four needs over 1,000 imagined shops.
import { answer } from "../src/kernel/answer.ts";
import { band, isColumn } from "../src/kernel/band.ts";
import { check } from "../src/kernel/check.ts";
import { evaluate, type Evaluation } from "../src/kernel/evaluate.ts";
import { figure, input, type Ref } from "../src/kernel/figure.ts";
import { build, type Graph } from "../src/kernel/graph.ts";
import { house } from "../src/kernel/house.ts";
import { machine } from "../src/kernel/item.ts";
import { asFound, type MapNode, type Model, type Node } from "../src/kernel/model/node.ts";
import { SAMPLES, uniforms } from "../src/kernel/random.ts";
import { room } from "../src/kernel/room.ts";
import type { Pair } from "./pair.ts";

const INPUTS = 200;
const FIGURES = 500;
const CHECKS = 40;

interface Four {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}
/** Twenty kinds of arithmetic as figures hold them: products, roots, powers, phasors, branches. Values stay near 1. */
const laws: readonly ((x: Four) => number)[] = [
  (x) => (x.a * x.b) / (x.c + x.d),
  (x) => Math.sqrt(x.a * x.b) + 0.1 * (x.c - x.d),
  (x) => x.a * (1 - ((x.b + 1) / (x.b + 2)) ** (1 / (1 + x.c))) + x.d,
  (x) => Math.hypot(x.a, x.b) / (1 + x.c * x.d),
  (x) => x.a / (1 + (x.b * x.c) ** 2) + x.d / 2,
  (x) => (x.a > x.b ? x.c : x.d) * 0.9,
  (x) => x.a * Math.exp(-x.b * 0.3) + x.c * x.d * 0.3,
  (x) => Math.max(x.a, x.b) / Math.max(x.c, x.d),
  (x) => x.a ** 1.8 / (x.b + x.c + x.d),
  (x) => Math.log(1 + x.a + x.b) * x.c * 0.7 + 0.1 * x.d,
  (x) => (x.a + x.b + x.c + x.d) / 4,
  (x) => x.a * Math.cos(0.3 * x.b) + 0.2 * x.c * Math.sin(0.3 * x.d),
  (x) => 1 / (1 / (x.a + 0.1) + 1 / (x.b + 0.1)) + 0.2 * x.c * x.d,
  (x) => x.a - 0.1 * x.b + 0.1 * x.c - 0.05 * x.d,
  (x) => Math.cbrt(x.a * x.b * x.c) * (1 + 0.1 * x.d),
  (x) => (x.a * x.a * x.b * 0.5 + x.c) / (1 + x.d),
  (x) => Math.atan2(x.a, x.b) + 0.2 * x.c * x.d,
  (x) => (x.a * x.b * x.c * x.d) ** 0.25,
  (x) => Math.min(x.a + x.b, x.c + x.d) / 2,
  (x) => x.a * (1 + 0.004 * (x.b - x.c)) * (0.5 + 0.5 * x.d),
];

// Each figure reads two quantities at random from all before it and two inputs, as rooms do: chains some ten deep.
const next = uniforms("bench/figures");
const any = (n: number): number => Math.floor(next() * n);
const wires = Array.from({ length: FIGURES }, (_, i) => [any(INPUTS + i), any(INPUTS + i), any(INPUTS), any(INPUTS)] as const);
const lawOf = (i: number): ((x: Four) => number) => laws[i % laws.length] ?? (() => Number.NaN);

const inputs = Array.from({ length: INPUTS }, (_, i) =>
  input({ key: `i${i}`, per: machine, says: `input ${i}`, unit: "1", kind: "ratio", measure: "" }),
);
const quantities: Ref<number>[] = [...inputs];
const figures = wires.map((wire, i) => {
  const [a, b, c, d] = wire.map((j) => quantities[j]);
  if (!a || !b || !c || !d) throw new Error(`figure ${i} reads what is not there`);
  const made = figure({
    id: `bench.f${i}`,
    per: machine,
    symbol: "f",
    unit: "1",
    kind: "ratio",
    says: `figure ${i}`,
    method: "bench",
    source: "bench",
    needs: { a, b, c, d },
    of: lawOf(i),
  });
  quantities.push(made);
  return made;
});
const checks = Array.from({ length: CHECKS }, (_, i) => {
  const [demand, capacity] = [figures[any(FIGURES)], figures[FIGURES - 1 - i]];
  if (!demand || !capacity) throw new Error(`check ${i} reads what is not there`);
  return check({ id: `bench.c${i}`, per: machine, asks: "?", demand, capacity, H: 1.1, remedies: [] });
});
const toy = house([room({ name: "bench", title: "", answers: "", brings: [{ inputs, figures, checks }] })], {
  shop: [],
  machine: [],
  catalogue: [],
});

const place = { file: "bench.yaml", line: 1, column: 1, endLine: 1, endColumn: 1 };
const said = { place, origin: { by: "line" } } as const;
const leaf = (text: string): Node => ({ is: "leaf", text, ...said, over: [] });
const map = (entries: [string, Node][]): MapNode => ({ is: "map", entries: new Map(entries), ...said });
/** A machine with every input in a range; one of them moved. */
function model(moved = -1): Model {
  const range = (i: number): string =>
    i === moved ? "1.01 to 1.3" : `${(0.7 + (i % 7) / 20).toFixed(2)} to ${(1.1 + (i % 5) / 10).toFixed(2)}`;
  return {
    title: "bench",
    show: { units: "metric", also: null, pressure: "bar", currency: "USD" },
    roots: new Map([
      ["shop", map([])],
      ["mill", map(inputs.map((d, i) => [d.key, leaf(range(i))]))],
    ]),
    findings: [],
    options: [],
    records: [],
    variant: asFound,
  };
}
const graph = build(toy, model());
const first = evaluate(graph, "full");
const columns = (e: Evaluation, g: Graph, refs: readonly Ref<number>[]): Float64Array[] =>
  refs.map((ref) => {
    const cell = [...g.cells.values()].find((c) => c.decl === ref);
    const f = cell && e.filled.get(cell);
    if (!f || !isColumn(f)) throw new Error(`${ref.id} is no column`);
    return f.v;
  });
const given = columns(first, graph, inputs);

/** The same work by hand: one loop a figure over plain columns. */
function byHand(): Float64Array[] {
  const all = [...given];
  for (const [i, [ia, ib, ic, id]] of wires.entries()) {
    const [a, b, c, d] = [all[ia], all[ib], all[ic], all[id]];
    const of = lawOf(i);
    const v = new Float64Array(SAMPLES);
    if (a && b && c && d) for (let k = 0; k < SAMPLES; k += 1) v[k] = of({ a: a[k] ?? 0, b: b[k] ?? 0, c: c[k] ?? 0, d: d[k] ?? 0 });
    all.push(v);
  }
  return all.slice(INPUTS);
}

// Both ways must say the same before their times are worth a look.
const hand = byHand();
for (const [i, v] of columns(first, graph, figures).entries())
  if (v.some((x, k) => x !== hand[i]?.[k])) throw new Error(`figure ${i} differs from the loop`);

const sorted = new Float64Array(SAMPLES - 1);
/** 5 and 95 % by sorting, with the same rule. */
function bySorting(v: Float64Array): number {
  sorted.set(v.subarray(1));
  sorted.sort();
  return (sorted[49] ?? 0) + (sorted[949] ?? 0);
}
const wide = columns(first, graph, figures).map((v) => ({ v, holes: null }));

/** A slider under way: every turn a value not seen before. */
let turn = 0;
const edits = [3, 57, 111, 199];
const other = build(toy, model(edits[0]));

export const benches: readonly Pair[] = [
  { says: "500 figures, evaluated anew, against loops by hand (bar 3.5)", base: byHand, subject: () => evaluate(graph, "full") },
  {
    says: "the same after one edit, against loops by hand for all",
    base: byHand,
    subject: () => evaluate(turn++ % 2 === 0 ? other : graph, "full", first),
  },
  {
    says: "their bands by selection, against sorting",
    base: () => wide.map((c) => bySorting(c.v)),
    subject: () => wide.map((c) => band({ ...c })),
  },
  { says: "the whole answer with 40 checks and what decides them, against loops by hand", base: byHand, subject: () => answer(first) },
  { says: "the graph built from the model, against loops by hand", base: byHand, subject: () => build(toy, model()) },
];
