import { expect, test } from "vitest";
import { type Column, isColumn } from "./band.ts";
import { evaluate as lazily, type Evaluation } from "./evaluate.ts";
import { figure, input, joint, perhaps, type Ref, simulated, value, wordInput } from "./figure.ts";
import { build } from "./graph.ts";
import { machine, scope } from "./item.ts";
import { job } from "./job.ts";
import { SAMPLES, SLOW_SAMPLES, uniforms } from "./random.ts";
import { listSlot, offer, slot } from "./slot.ts";
import * as toy from "./toy-house.test-help.ts";
import { benchOf, cellAt, columnAt, houseOf, leafOf, modelOf, shopOf, toyRoom, type Tree, withLeaf } from "./toy-house.test-help.ts";

/** Columns come when asked for: here all are asked for at once, so that what ran can be counted. */
const evaluate: typeof lazily = (...of) => {
  const e = lazily(...of);
  for (const cell of e.graph.cells.values()) e.filled.get(cell);
  return e;
};

const measure = "look at it";
const at = (e: Evaluation, address: string) => {
  const f = e.filled.get(cellAt(e.graph, address));
  if (!f) throw new Error(`${address} was not computed`);
  return f;
};
const holesAt = (e: Evaluation, address: string) => [...(at(e, address).holes ?? [])];

const a = input({ key: "a", per: machine, says: "a", unit: "W", measure });
const b = input({ key: "b", per: machine, says: "b", unit: "W", measure });
type Ofs = {
  needs: Readonly<Record<string, Ref<number>>>;
  of: (x: Readonly<Record<string, number>>) => number;
  signs?: Readonly<Record<string, "+" | "-">>;
};
/** A figure in watts of the machine. */
const watts = (id: string, d: Ofs & { valid?: (x: Readonly<Record<string, number>>) => string | null }) =>
  figure({ id: `toy.${id}`, per: machine, symbol: "P", unit: "W", says: id, method: "toy", source: "toy", ...d } as never);

test("every figure is its formula in every one of the imagined shops", () => {
  const e = evaluate(build(toy.winches, shopOf()), "full");
  const [T, r] = [columnAt(e, "winch/late.drum.torque"), columnAt(e, "winch/drum.radius")];
  expect(T.length).toBe(SAMPLES);
  expect(T.every((x, k) => x === 9.80665 * 300 * (r[k] ?? NaN))).toBe(true);
  expect(columnAt(e, "winch/late.weight")).toEqual(Float64Array.of(9.80665 * 300));
});

test("the nominal case alone is the first shop of all", () => {
  const [full, nominal] = (["full", "nominal"] as const).map((mode) => evaluate(build(toy.winches, shopOf()), mode));
  if (!full || !nominal) throw new Error("two modes");
  for (const cell of nominal.graph.cells.values()) {
    const f = nominal.filled.get(cell);
    if (!f) throw new Error(`nothing for ${cell.address}`);
    const all = full.filled.get([...full.graph.cells.values()].find((c) => c.address === cell.address) ?? cell);
    expect(isColumn(f) ? [f.v.length, f.v[0]] : f.each[0]).toEqual(all && isColumn(all) ? [1, all.v[0]] : all?.each[0]);
  }
});

const part = scope({ name: "part", says: "a part", mounts: ["parts.*"] });
const share = input({ key: "share", per: part, says: "share", unit: "W", measure });
const slots = (["sum", "max", "min"] as const).map((combine) =>
  slot({ id: `toy.${combine}`, per: machine, says: combine, combine, empty: "zero", unit: "W" }),
);
const parts = (...shares: readonly string[]): Tree => Object.fromEntries(shares.map((s, i) => [`p${i}`, { share: s }]));
const offers = slots.map((s) => offer(s, share));

test("a slot sums, takes the largest or takes the least, shop by shop", () => {
  const e = benchOf({ part, share, slots, offers }, { parts: parts("1 to 3 W", "2 W", "1 to 3 W") });
  const [x, z] = ["p0", "p2"].map((p) => columnAt(e, `winch/parts.${p}.share`));
  for (const [name, put] of [
    ["sum", (p: number, q: number) => p + 2 + q],
    ["max", (p: number, q: number) => Math.max(p, 2, q)],
    ["min", (p: number, q: number) => Math.min(p, 2, q)],
  ] as const) {
    const v = columnAt(e, `winch/toy.${name}`);
    expect(v.every((s, k) => Math.abs(s - put(x?.[k] ?? NaN, z?.[k] ?? NaN)) < 1e-12)).toBe(true);
  }
});

test("endless shares stay endless, and one hole is a hole in sum, largest and least", () => {
  const lost = figure({
    id: "toy.part.lost",
    per: part,
    symbol: "P",
    unit: "W",
    says: "lost",
    method: "toy",
    source: "toy",
    needs: { s: share },
    of: (x) => (x.s > 2 ? Infinity : x.s),
    valid: (x) => (x.s < 1.5 ? "too little to tell" : null),
  });
  const e = benchOf({ part, share, lost, slots, offers: slots.map((s) => offer(s, lost)) }, { parts: parts("1 to 3 W", "2 W") });
  const x = columnAt(e, "winch/parts.p0.share");
  for (const name of ["sum", "max", "min"]) {
    const v = columnAt(e, `winch/toy.${name}`);
    expect(v.every((s, k) => Number.isNaN(s) === (x[k] ?? 0) < 1.5)).toBe(true);
    expect(v.some((s) => s === Infinity)).toBe(name !== "min");
    expect(holesAt(e, `winch/toy.${name}`).map(([reason]) => reason)).toEqual(["too little to tell"]);
  }
});

test("everything at once is an upper limit as soon as there are two that might take turns", () => {
  const all = slot({ id: "toy.all", per: machine, says: "all", combine: "sum", empty: "zero", bound: "upper", unit: "W" });
  const bound = (...shares: readonly string[]) =>
    at(benchOf({ part, share, all, give: offer(all, share) }, { parts: parts(...shares) }), "winch/toy.all").bound;
  expect(bound("1 W")).toBeUndefined();
  expect(bound("1 W", "2 W")).toBe("upper");
});

test("a list slot hands each share on by name, and is refused where one share is", () => {
  const list = listSlot<number>({ id: "toy.list", per: machine, says: "list", empty: "zero" });
  const half = figure({
    id: "toy.part.half",
    per: part,
    symbol: "P",
    unit: "W",
    says: "half",
    method: "toy",
    source: "toy",
    needs: { s: share },
    of: (x) => x.s / 2,
    valid: (x) => (x.s < 1.5 ? "too little to tell" : null),
  });
  const total = value({
    id: "toy.total",
    per: machine,
    says: "total",
    needs: { list },
    of: (x) => x.list.reduce((s, p) => s + p.value, 0),
  });
  const twice = watts("twice", { needs: { total: total }, of: (x) => 2 * (x["total"] ?? 0) });
  const e = benchOf({ part, share, list, half, total, twice, give: offer(list, half) }, { parts: parts("1 to 3 W", "2 W") });
  const x = columnAt(e, "winch/parts.p0.share");
  const v = columnAt(e, "winch/toy.twice");
  expect(v.every((s, k) => ((x[k] ?? 0) < 1.5 ? Number.isNaN(s) : Math.abs(s - (x[k] ?? 0) - 2) < 1e-12))).toBe(true);
  expect(holesAt(e, "winch/toy.twice")).toEqual([["too little to tell", x.filter((s) => s < 1.5).length]]);
});

test("a hole keeps the reason of its root all the way down, each shop its own", () => {
  const low = watts("low", { needs: { a }, of: (x) => x["a"] ?? 0, valid: (x) => ((x["a"] ?? 0) < 2 ? "a is too low" : null) });
  const high = watts("high", { needs: { b }, of: (x) => x["b"] ?? 0, valid: (x) => ((x["b"] ?? 0) > 2 ? "b is too high" : null) });
  const both = watts("both", { needs: { low, high }, of: (x) => (x["low"] ?? 0) + (x["high"] ?? 0) });
  const last = watts("last", { needs: { both }, of: (x) => x["both"] ?? 0 });
  const e = benchOf({ a, b, low, high, both, last }, { a: "1 to 3 W", b: "1 to 3 W" });
  const [x, y] = [columnAt(e, "winch/a"), columnAt(e, "winch/b")];
  const first = x.filter((s) => s < 2).length;
  const second = x.filter((s, k) => s >= 2 && (y[k] ?? 0) > 2).length;
  expect(new Map(holesAt(e, "winch/toy.both"))).toEqual(
    new Map([
      ["a is too low", first],
      ["b is too high", second],
    ]),
  );
  expect(holesAt(e, "winch/toy.last").reduce((n, [, count]) => n + count, 0)).toBe(first + second);
});

test("no figure ever sees a number that is none", () => {
  const seen: number[] = [];
  const low = watts("low", { needs: { a }, of: (x) => Math.sqrt((x["a"] ?? 0) - 2) });
  const next = watts("next", {
    needs: { low },
    of: (x) => (seen.push(x["low"] ?? NaN), 1),
    valid: (x) => (seen.push(x["low"] ?? NaN), null),
  });
  const e = benchOf({ a, low, next }, { a: "1 to 3 W" });
  expect(seen.length).toBeGreaterThan(500);
  expect(seen.some(Number.isNaN)).toBe(false);
  expect(holesAt(e, "winch/toy.next").map(([reason]) => reason)).toEqual(["no number for toy.low"]);
});

test("nothing divided by nothing is a hole, something divided by nothing is never", () => {
  const ratio = watts("ratio", { needs: { a, b }, of: (x) => (x["a"] ?? 0) / (x["b"] ?? 0) });
  const of = (p: string, q: string) => columnAt(benchOf({ a, b, ratio }, { a: p, b: q }), "winch/toy.ratio")[0];
  expect(of("1 W", "0 W")).toBe(Infinity);
  expect(of("0 W", "0 W")).toBeNaN();
});

test("a program error is a hole that names the figure and the numbers, and spoils nothing else", () => {
  const wrong = watts("wrong", {
    needs: { a, b },
    of: (x) => {
      if ((x["a"] ?? 0) > 1.5) throw new RangeError("no such row");
      return 1;
    },
  });
  const right = watts("right", { needs: { a }, of: (x) => x["a"] ?? 0 });
  const e = benchOf({ a, b, wrong, right }, { a: "1 to 2 W", b: "5 W" });
  const [[reason] = [""]] = holesAt(e, "winch/toy.wrong");
  expect(reason).toMatch(/^program error in winch\/toy\.wrong: no such row \(a = 1\.\d+, b = 5\)$/);
  expect(columnAt(e, "winch/toy.right").length).toBe(SAMPLES);
});

const bound = (d: { first: "upper" | "lower"; second?: "upper" | "lower"; signs: Readonly<Record<string, "+" | "-">> }) => {
  const x = slot({ id: "toy.x", per: machine, says: "x", combine: "sum", empty: "zero", bound: d.first, unit: "W" });
  const y = slot({
    id: "toy.y",
    per: machine,
    says: "y",
    combine: "sum",
    empty: "zero",
    ...(d.second ? { bound: d.second } : {}),
    unit: "W",
  });
  const f = watts("f", { needs: { x, y }, of: (v) => (v["x"] ?? 0) + (v["y"] ?? 0), signs: d.signs });
  const e = benchOf({ part, share, x, y, f, give: [offer(x, share), offer(y, share)] }, { parts: parts("1 W", "2 W") });
  return at(e, "winch/toy.f").bound;
};
test.each([
  ["a limit rises with what it bounds", { first: "upper", signs: { x: "+", y: "+" } }, "upper"],
  ["and turns round where the figure falls", { first: "upper", signs: { x: "-", y: "+" } }, "lower"],
  ["a lower limit likewise", { first: "lower", signs: { x: "-", y: "+" } }, "upper"],
  ["without a sign nobody knows which way", { first: "upper", signs: { y: "+" } }, "both"],
  ["two limits of one way stay one", { first: "upper", second: "upper", signs: { x: "+", y: "+" } }, "upper"],
  ["two of opposite ways bound nothing", { first: "upper", second: "lower", signs: { x: "+", y: "+" } }, "both"],
  ["opposite limits through opposite signs agree", { first: "upper", second: "lower", signs: { x: "+", y: "-" } }, "upper"],
] as const)("bounds through signs: %s", (_, d, expected) => {
  expect(bound(d)).toBe(expected);
});

test("a limit that bounds both ways stays both ways, and is not lost in a table", () => {
  const x = slot({ id: "toy.x", per: machine, says: "x", combine: "sum", empty: "zero", bound: "upper", unit: "W" });
  const f = watts("f", { needs: { x }, of: (v) => v["x"] ?? 0 });
  const g = watts("g", { needs: { f }, of: (v) => v["f"] ?? 0, signs: { f: "+" } });
  const table = value({ id: "toy.table", per: machine, says: "table", needs: { x }, of: (v) => [v.x] });
  const h = figure({
    id: "toy.h",
    per: machine,
    symbol: "P",
    unit: "W",
    says: "h",
    method: "toy",
    source: "toy",
    needs: { table },
    of: (v) => v.table[0] ?? 0,
    signs: { table: "+" },
  });
  const e = benchOf({ part, share, x, f, g, table, h, give: offer(x, share) }, { parts: parts("1 W", "2 W") });
  expect(at(e, "winch/toy.g").bound).toBe("both");
  expect(at(e, "winch/toy.h").bound).toBe("both");
});

test("an edit redoes what hangs on it and hands every other column on as the same object", () => {
  const graph = (radius: string) => build(toy.winches, shopOf({ drum: { radius, motor: { kind: "cage", power: "4 kW" } } }));
  const before = evaluate(graph("90 to 110 mm"), "full");
  const after = evaluate(graph("95 to 105 mm"), "full", before);
  const changed = [...after.graph.cells.keys()].filter((address) => at(after, address) !== at(before, address));
  expect(changed.toSorted()).toEqual(
    ["winch/drum.radius", "winch/late.drum.full-speed", "winch/late.drum.torque", "winch/late.work/crate.lifts.over.wanted"].toSorted(),
  );
  const again = evaluate(graph("95 to 105 mm"), "full", after);
  expect([...again.graph.cells.keys()].every((address) => at(again, address) === at(after, address))).toBe(true);
  expect(at(evaluate(graph("95 to 105 mm"), "full"), "winch/late.drum.torque")).toEqual(at(after, "winch/late.drum.torque"));
});

test("another name that leads nowhere is said, not the one before it", () => {
  const graph = (rope: string) => build(toy.winches, shopOf({ work: { crate: { lifts: [{ operation: "up", rope }] } } }));
  const before = evaluate(graph("hemp"), "full");
  const after = evaluate(graph("silk"), "full", before);
  expect(holesAt(after, "winch/late.work/crate.lifts.up.pull")).toEqual([["no rope named silk", 1]]);
});

test("a quick look stands estimates in for runs and marks them", () => {
  const e = benchOf({ a, close, run: sim(close) }, { a: "1 to 2 W" }, "quick");
  expect(at(e, "winch/toy.run")).toMatchObject({ estimated: true, v: columnAt(e, "winch/toy.close") });
  const without = benchOf({ a, run: sim() }, { a: "1 to 2 W" }, "quick");
  expect(holesAt(without, "winch/toy.run")).toEqual([["not run: asked for quick answers only", 1]]);
});

let runs = 0;
const slow = job<{ a: number }, { p: number }>({ id: "toy.slow", version: 1, run: (b) => ((runs += 1), { p: 1.1 * b.a }) });
const close = watts("close", { needs: { a }, of: (x) => x["a"] ?? 0 });
const sim = (estimate?: Ref<number>) =>
  simulated({
    id: "toy.run",
    per: machine,
    symbol: "P",
    unit: "W",
    says: "run",
    method: "toy",
    source: "toy",
    needs: { a },
    job: slow,
    brief: (x) => ({ a: x.a }),
    read: (r) => r.p,
    tolerance: 0.01,
    signs: { a: "+" },
    ...(estimate ? { estimate } : {}),
  });

test("a run is made for 64 shops, and for none twice", () => {
  runs = 0;
  const e = benchOf({ a, run: sim() }, { a: "1 to 2 W" });
  expect(runs).toBe(SLOW_SAMPLES);
  const f = at(e, "winch/toy.run");
  expect(f).toMatchObject({ coarse: true });
  expect(columnAt(e, "winch/toy.run").length).toBe(SLOW_SAMPLES);
  benchOf({ a, run: sim() }, { a: "1 to 2 W" });
  expect(runs).toBe(SLOW_SAMPLES);
});

test("what hangs on a short run is short and coarse too", () => {
  const run = sim();
  const next = watts("next", { needs: { run, a }, of: (x) => (x["run"] ?? 0) + (x["a"] ?? 0), signs: { run: "+" } });
  const e = benchOf({ a, run, next }, { a: "1 to 2 W" });
  expect(at(e, "winch/toy.next")).toMatchObject({ coarse: true });
  expect(columnAt(e, "winch/toy.next").length).toBe(SLOW_SAMPLES);
});

test("a run with an estimate is carried to all shops, exactly where the estimate is off by a factor", () => {
  const e = benchOf({ a, close, run: sim(close) }, { a: "1 to 2 W" });
  const [x, v] = [columnAt(e, "winch/a"), columnAt(e, "winch/toy.run")];
  expect(v.length).toBe(SAMPLES);
  expect(at(e, "winch/toy.run").coarse).toBeUndefined();
  expect(v.every((p, k) => Math.abs(p - 1.1 * (x[k] ?? NaN)) < 1e-12)).toBe(true);
});

test("a run is not carried where its estimate says never, nothing or has no value", () => {
  for (const of of [(x: number) => (x > 1.9 ? Infinity : x), () => 0, (x: number) => (x > 1.9 ? NaN : x)]) {
    const odd = watts("close", { needs: { a }, of: (x) => of(x["a"] ?? 0) });
    expect(at(benchOf({ a, odd, run: sim(odd) }, { a: "1 to 2 W" }), "winch/toy.run")).toMatchObject({ coarse: true });
  }
});

test("a bound on what is run passes through the signs it declares", () => {
  const x = slot({ id: "toy.x", per: machine, says: "x", combine: "sum", empty: "zero", bound: "upper", unit: "W" });
  const run = (signs: { readonly x?: "+" | "-" }) =>
    simulated({
      id: "toy.run",
      per: machine,
      symbol: "P",
      unit: "W",
      says: "run",
      method: "toy",
      source: "toy",
      needs: { x },
      job: slow,
      brief: (v) => ({ a: v.x }),
      read: (r) => r.p,
      tolerance: 0.01,
      signs,
    });
  const of = (signs: { readonly x?: "+" | "-" }) =>
    at(benchOf({ part, share, x, run: run(signs), give: offer(x, share) }, { parts: parts("1 W", "2 W") }), "winch/toy.run").bound;
  expect([of({ x: "-" }), of({ x: "+" }), of({})]).toEqual(["lower", "upper", "both"]);
});

/** Many winches in one shop: each is one draw of the imagined shops, since columns are seeded by address. */
const WINCHES = 200;
test.each([
  [2, 0.015],
  [10, 0.016],
  [30, 0.019],
])("runs off by %d in a hundred keep, carried by their estimate, a limit as sharp as a thousand runs would", (percent, spread) => {
  const ratio = (key: string) => input({ key, per: machine, says: key, unit: "1", kind: "ratio", measure });
  const four = { p: ratio("a"), q: ratio("b"), r: ratio("c"), s: ratio("d") };
  const hidden = input({ key: "hidden", per: machine, says: "hidden", unit: "1", kind: "ratio", measure });
  const product = figure({
    id: "toy.product",
    per: machine,
    symbol: "p",
    unit: "1",
    kind: "ratio",
    says: "product",
    method: "toy",
    source: "toy",
    needs: four,
    of: (x) => x.p * x.q * x.r * x.s,
  });
  const off = job<{ e: number; h: number }, number>({ id: "toy.off", version: 1, run: (b) => b.e * b.h });
  const run = simulated({
    id: "toy.run",
    per: machine,
    symbol: "p",
    unit: "1",
    kind: "ratio",
    says: "run",
    method: "toy",
    source: "toy",
    needs: { e: product, h: hidden },
    job: off,
    brief: (x) => ({ e: x.e, h: x.h }),
    read: (v) => v,
    estimate: product,
    tolerance: 0.01,
  });
  const keys = {
    ...Object.fromEntries(["a", "b", "c", "d"].map((k) => [k, "0.8 to 1.2"])),
    hidden: `${1 - percent / 100} to ${1 + percent / 100}`,
  };
  const shop = modelOf({ shop: {}, ...Object.fromEntries(Array.from({ length: WINCHES }, (_, i) => [`winch-${i}`, keys])) });
  const e = evaluate(build(houseOf(toyRoom({ four, hidden, product, run })), shop), "full");
  const next = uniforms("truth of a run");
  const half = percent / 100;
  const drawn = Float64Array.from({ length: 1_000_000 }, () =>
    [0, 1, 2, 3].reduce((x) => x * (0.8 + 0.4 * next()), 1 - half + 2 * half * next()),
  ).sort();
  const truth = drawn[50_000] ?? NaN;
  const limits = Array.from({ length: WINCHES }, (_, i) => columnAt(e, `winch-${i}/toy.run`).toSorted()[50] ?? NaN);
  const mean = limits.reduce((x, y) => x + y, 0) / WINCHES;
  const scatter = Math.sqrt(limits.reduce((x, y) => x + (y - mean) ** 2, 0) / (WINCHES - 1)) / truth;
  expect(Math.abs(mean / truth - 1)).toBeLessThan(0.004);
  expect(scatter).toBeLessThan(spread);
});

const circuit = joint({
  id: "toy.circuit",
  per: machine,
  says: "circuit",
  method: "toy",
  source: "toy",
  needs: { a, b: perhaps(b) },
  gives: { R: { symbol: "R", unit: "ohm", says: "R" }, X: { symbol: "X", unit: "ohm", says: "X" } },
  of: (x, draw) => {
    if (x.a > 5) return { refused: "readings contradict the plate" };
    const next = uniforms(draw.seed);
    const R = Float64Array.from({ length: draw.count }, () => x.a + (draw.half.a ?? 0) * (next() - 0.5));
    return { R, X: R.map((r) => 10 - r) };
  },
  readings: [{ part: "R", input: b, says: "read b" }],
});
const impedance = figure({
  id: "toy.impedance",
  per: machine,
  symbol: "Z",
  unit: "ohm",
  says: "Z",
  formula: "R + X",
  source: "toy",
  needs: { R: circuit.R, X: circuit.X },
  of: (x) => x.R + x.X,
});

test("members of a joint value stay together: sample k of each is one circuit", () => {
  const e = benchOf({ a, b, circuit, impedance }, { a: "1 to 3 W" });
  const R = columnAt(e, "winch/toy.circuit.R");
  expect(R.length).toBe(SAMPLES);
  expect(Math.max(...R) - Math.min(...R)).toBeGreaterThan(0.9);
  expect(columnAt(e, "winch/toy.impedance").every((z) => Math.abs(z - 10) < 1e-12)).toBe(true);
});

test("a joint value takes half of a range and two deviations of a reading as what a need may be off by", () => {
  const half: (number | undefined)[] = [];
  const spy = joint({
    id: "toy.spy",
    per: machine,
    says: "spy",
    method: "toy",
    source: "toy",
    needs: { a },
    gives: { R: { symbol: "R", unit: "ohm", says: "R" } },
    of: (_, draw) => (half.push(draw.half.a), { R: new Float64Array(draw.count) }),
    readings: [],
  });
  const house = houseOf(toyRoom({ a, spy }));
  const bare = modelOf({ shop: {}, winch: {} });
  for (const leaf of [leafOf("1 to 3 W"), leafOf("2 W +/- 0.5 W", { from: "measured" }), leafOf("2 W")])
    evaluate(build(house, withLeaf(bare, "winch", ["a"], leaf)), "full");
  expect(half.map((h) => h?.toFixed(9))).toEqual(["1.000000000", "0.500000000", "0.000000000"]);
});

test("a joint value that refuses refuses all its members and what needs them, in its own words", () => {
  const e = benchOf({ a, b, circuit, impedance }, { a: "6 W" });
  expect(holesAt(e, "winch/toy.circuit.R")).toEqual([["readings contradict the plate", 1]]);
  expect(holesAt(e, "winch/toy.impedance")).toEqual([["readings contradict the plate", 1]]);
});

test("an unknown word is one in each shop, and the figure follows it", () => {
  const kind = wordInput({ key: "kind", per: machine, says: "kind", words: ["one", "two"], typical: ["one", "two"], measure });
  const f = figure({
    id: "toy.f",
    per: machine,
    symbol: "P",
    unit: "W",
    says: "f",
    method: "toy",
    source: "toy",
    needs: { kind, a },
    of: (x) => (x.kind === "one" ? 1 : 2) * x.a,
  });
  const e = benchOf({ a, kind, f }, { a: "3 W" });
  const v = columnAt(e, "winch/toy.f");
  expect(v[0]).toBe(3);
  expect(new Set(v)).toEqual(new Set([3, 6]));
});

test("a typical value that is itself a figure spreads with what it is estimated from", () => {
  const guess = watts("guess", { needs: { a }, of: (x) => 2 * (x["a"] ?? 0) });
  const plate = input({ key: "plate", per: machine, says: "plate", unit: "W", measure, typical: { of: guess, source: "toy" } });
  const e = benchOf({ a, guess, plate }, { a: "1 to 2 W" });
  expect(at(e, "winch/plate")).toBe(at(e, "winch/toy.guess"));
  expect(columnAt(benchOf({ a, guess, plate }, { a: "1 to 2 W", plate: "5 W" }), "winch/plate")).toEqual(Float64Array.of(5));
});

test("a column of a given length meets one value: the one value goes for all shops", () => {
  const sum = watts("sum", { needs: { a, b }, of: (x) => (x["a"] ?? 0) + (x["b"] ?? 0) });
  const e = benchOf({ a, b, sum }, { a: "1 to 2 W", b: "5 W" });
  const x = columnAt(e, "winch/a");
  expect((at(e, "winch/toy.sum") as Column).v.every((s, k) => s === (x[k] ?? NaN) + 5)).toBe(true);
});
