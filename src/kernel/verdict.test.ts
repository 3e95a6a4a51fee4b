import fc from "fast-check";
import { expect, test } from "vitest";
import { exact, explained, type Column } from "./band.ts";
import { check, type Check } from "./check.ts";
import { contract } from "./contract.ts";
import { evaluate } from "./evaluate.ts";
import { figure, input, joint, type Ref, wordInput } from "./figure.ts";
import { build } from "./graph.ts";
import { machine, scope } from "./item.ts";
import { SAMPLES, uniforms } from "./random.ts";
import { offer, slot } from "./slot.ts";
import * as toy from "./toy-house.test-help.ts";
import { benchOf, columnAt, modelOf, shopOf, type Tree } from "./toy-house.test-help.ts";
import { deciders, judge, type Judged, marginColumn, ratio, word } from "./verdict.ts";

const margin = (low: number, high: number) => ({ nominal: (low + high) / 2, low, high });

test.each([
  ["surely enough holds", 1.5, 2, "holds"],
  ["the reserve itself is enough", 1.25, 1.25, "holds"],
  ["a hair less than the reserve is tight", 1.2499999, 3, "tight"],
  ["just enough is tight", 1, 1, "tight"],
  ["a hair less than enough at the low edge is open", 0.9999999, 1, "open"],
  ["surely not enough fails", 0.2, 0.9999999, "fails"],
  ["a high edge of just enough is open", 0.2, 1, "open"],
  ["endless is enough", Infinity, Infinity, "holds"],
  ["anything between nothing and without end is open", 0, Infinity, "open"],
] as const)("%s", (_, low, high, expected) => {
  expect(word(margin(low, high), 1.25, false)).toBe(expected);
});

test("with no reserve asked for, enough holds and nothing is tight; a yes is never tight", () => {
  expect(word(margin(1, 1.1), 1, false)).toBe("holds");
  expect(word(margin(1, 1), 1.2, true)).toBe("holds");
  expect(word(margin(0, 0), 1.2, true)).toBe("fails");
  expect(word(margin(0, 1), 1.2, true)).toBe("open");
});

const edge = fc.oneof(fc.double({ min: 0, max: 4, noNaN: true }), fc.constantFrom(0, 1, 1.25, Infinity));
const rank = { fails: 0, open: 1, tight: 2, holds: 3 } as const;

test("every band has just one of four words, and a better band never a worse word", () => {
  fc.assert(
    fc.property(edge, edge, edge, edge, fc.double({ min: 1, max: 3, noNaN: true }), (a, b, c, d, H) => {
      const [low, high] = [Math.min(a, b), Math.max(a, b)];
      const said = word(margin(low, high), H, false);
      const all = [low >= H, low >= 1 && low < H, high < 1, low < 1 && high >= 1];
      expect(all.filter(Boolean).length).toBe(1);
      expect(said).toBe((["holds", "tight", "fails", "open"] as const)[all.indexOf(true)]);
      // Both edges moved up, or neither.
      expect(rank[word(margin(low + c, high + c + d), H, false)]).toBeGreaterThanOrEqual(rank[said]);
    }),
  );
});

test.each([
  ["twice what is wanted", 4, 2, 2],
  ["nothing wanted", 4, 0, Infinity],
  ["nothing wanted and nothing there", 0, 0, NaN],
  ["nothing there", 0, 2, 0],
  ["overdrawn already", -3, 2, 0],
  ["overdrawn with nothing wanted", -3, 0, 0],
  ["never against a time", Infinity, 2, Infinity],
  ["a time against never", 4, Infinity, 0],
  ["never against never", Infinity, Infinity, NaN],
  ["no number there", NaN, 2, NaN],
  ["no number wanted", 2, NaN, NaN],
])("the margin of %s", (_, capacity, demand, expected) => {
  expect(ratio(capacity, demand)).toBe(expected);
});

test("a margin is taken shop by shop, a single value against all", () => {
  const v = Float64Array.of(4, 6, 8);
  expect(marginColumn(exact(2), { v, holes: null }).v).toEqual(Float64Array.of(2, 3, 4));
  expect(marginColumn({ v, holes: null }, exact(24)).v).toEqual(Float64Array.of(6, 4, 3));
});

const measure = "measure it";
const P = (key: string) => input({ key, per: machine, says: key, unit: "W", measure: `measure ${key}` });
const [a, b, c] = [P("a"), P("b"), P("c")];
const watts = (id: string, needs: Readonly<Record<string, Ref<number>>>, of: (x: Readonly<Record<string, number>>) => number, more = {}) =>
  figure({ id: `toy.${id}`, per: machine, symbol: "P", unit: "W", says: id, method: "toy", source: "toy", needs, of, ...more } as never);
const asks = (more: Partial<Check> & { demand: Ref<number>; capacity: Ref<number> }) =>
  check({ id: "toy.check", per: machine, asks: "Is it enough?", H: 1.25, remedies: [], ...more });
/** Judges the one check of a bench. */
function judged(
  brings: Readonly<Record<string, unknown>>,
  keys: { readonly [key: string]: Tree },
  mode: "full" | "nominal" | "quick" = "full",
) {
  const e = benchOf(brings, keys, mode);
  const [first] = judge(e);
  if (!first) throw new Error("no check");
  return { e, ...first };
}
const plain = asks({ demand: a, capacity: b });

test.each([
  ["4 W", "8 W", "holds", null],
  ["4 W", "4.5 W", "tight", null],
  ["4 W", "2 W", "fails", null],
  ["4 W", "2 to 20 W", "open", "unknown"],
  ["4 W", "0 W", "fails", null],
  ["0 W", "4 W", "holds", null],
  ["0 W", "0 W", "open", "incomplete"],
])("%s asked, %s there: %s", (demand, capacity, verdict, reason) => {
  expect(judged({ a, b, plain }, { a: demand, b: capacity })).toMatchObject({ verdict, reason });
});

test("a demand that nobody wrote leaves the check open, with the words for what is missing", () => {
  const need = input({ key: "need", per: machine, says: "what is needed", unit: "W", required: true, measure });
  const j = judged({ need, b, check: asks({ demand: need, capacity: b }) }, { b: "1 W" });
  expect(j).toMatchObject({ verdict: "open", reason: "incomplete", because: "what is needed is not known" });
  expect(deciders(j.e, j)).toEqual([{ cell: null, input: "winch/need", says: "what is needed is not known", measure, share: 1 }]);
});

const sometimes = (from: number) =>
  watts("sometimes", { c }, (x) => x["c"] ?? 0, {
    valid: (x: Readonly<Record<string, number>>) => ((x["c"] ?? 0) < from ? "no speed cap" : null),
  });

test("shops without a value count as the worst and as the best: many of them leave the check open, few do not", () => {
  const many = sometimes(3);
  const j = judged({ a, c, many, check: asks({ demand: a, capacity: many }) }, { a: "1 W", c: "2 to 4 W" });
  expect(j).toMatchObject({ verdict: "open", reason: "refused" });
  expect(j.because).toMatch(/^no speed cap, in (499|500) of 1000 cases$/);
  const few = sometimes(2.02);
  expect(judged({ a, c, few, check: asks({ demand: a, capacity: few }) }, { a: "1 W", c: "2 to 4 W" })).toMatchObject({ verdict: "holds" });
});

test("where people are guarded any shop without a value forbids a good word, and not a bad one", () => {
  const few = sometimes(2.02);
  const people = asks({ demand: a, capacity: few, guards: "people" });
  expect(judged({ a, c, few, people }, { a: "1 W", c: "2 to 4 W" })).toMatchObject({ verdict: "open", reason: "refused" });
  expect(judged({ a, c, few, people }, { a: "9 W", c: "2 to 4 W" })).toMatchObject({ verdict: "fails" });
});

test("where people are guarded the worst corner decides, not the 5 % edge", () => {
  const capacity = watts("capacity", { b, c }, (x) => (x["b"] ?? 0) + (x["c"] ?? 0), {});
  const keys = { a: "10 W", b: "5 to 10 W", c: "5 to 10 W" };
  const both = (guards: Partial<Check>) => judged({ a, b, c, capacity, check: asks({ demand: a, capacity, H: 1.05, ...guards }) }, keys);
  expect(both({}).verdict).toBe("holds");
  const people = both({ guards: "people" });
  expect(people.verdict).toBe("tight");
  expect(people.margin.low).toBe(1);
  expect(people.margin.high).toBe(both({}).margin.high);
});

test("an unknown on both sides cancels at the corner by itself", () => {
  const demand = watts("demand", { c, b }, (x) => (x["c"] ?? 0) * (x["b"] ?? 0));
  const capacity = watts("capacity", { c }, (x) => 1.8 * (x["c"] ?? 0));
  const j = judged({ b, c, demand, capacity, check: asks({ demand, capacity, guards: "people" }) }, { b: "1 to 1.3 W", c: "1 to 9 W" });
  // By hand: 1.8 / 1.3; interval arithmetic would say 1.8 / (9 * 1.3).
  expect(j.margin.low).toBeCloseTo(1.8 / 1.3, 12);
  expect(j.verdict).toBe("holds");
});

test("a hump between the ends is caught by the shops", () => {
  const demand = watts("demand", { c }, (x) => 1 + Math.exp(-(((x["c"] ?? 0) - 5) ** 2)));
  const j = judged({ b, c, demand, check: asks({ demand, capacity: b, H: 1, guards: "people" }) }, { b: "1.8 W", c: "1 to 9 W" });
  expect(j.margin.low).toBeCloseTo(1.8 / 2, 3);
  expect(j.verdict).toBe("open");
});

test("each typical word is tried at the corner, together with the numbers", () => {
  const kind = wordInput({ key: "kind", per: machine, says: "kind", words: ["new", "worn"], typical: ["new", "worn"], measure });
  const capacity = figure({
    id: "toy.capacity",
    per: machine,
    symbol: "P",
    unit: "W",
    says: "",
    method: "toy",
    source: "toy",
    needs: { kind, b },
    of: (x) => (x.kind === "worn" ? 0.5 : 1) * x.b,
  });
  const j = judged({ a, b, kind, capacity, check: asks({ demand: a, capacity, guards: "people" }) }, { a: "1 W", b: "3 to 9 W" });
  expect(j.margin.low).toBe(1.5);
});

test("of a joint value the least and the greatest sample are tried, and it is not drawn again", () => {
  let draws = 0;
  const circuit = joint({
    id: "toy.corner-circuit",
    per: machine,
    says: "circuit",
    method: "toy",
    source: "toy",
    needs: { c },
    gives: { R: { symbol: "R", unit: "W", says: "R" } },
    of: (_, draw) => {
      draws += 1;
      const next = uniforms("corner");
      return { R: Float64Array.from({ length: draw.count }, (_v, k) => (k === 500 ? 2 : 3 + next())) };
    },
    readings: [],
  });
  const capacity = watts("capacity", { R: circuit.R, b }, (x) => (x["R"] ?? 0) * (x["b"] ?? 0));
  const j = judged(
    { a, b, c, circuit, capacity, check: asks({ demand: a, capacity, guards: "people" }) },
    { a: "1 W", b: "1 to 2 W", c: "1 to 2 W" },
  );
  expect(j.margin.low).toBe(2);
  expect(draws).toBe(1);
});

test("a corner that has no value forbids a good word, though every shop has one", () => {
  const capacity = watts("capacity", { b, c }, (x) => (x["b"] ?? 0) + (x["c"] ?? 0), {
    valid: (x: Readonly<Record<string, number>>) => ((x["b"] ?? 0) + (x["c"] ?? 0) < 4.001 ? "stalled" : null),
  });
  const j = judged(
    { a, b, c, capacity, check: asks({ demand: a, capacity, guards: "people" }) },
    { a: "1 W", b: "2 to 9 W", c: "2 to 9 W" },
  );
  expect(columnAt(j.e, "winch/toy.capacity").some(Number.isNaN)).toBe(false);
  expect(j).toMatchObject({ verdict: "open", reason: "refused", because: "no value at the worst corner" });
});

test("the corner is never better than the worst shop, for any three unknowns and any bend", () => {
  const unit = fc.double({ min: 0.5, max: 3, noNaN: true });
  fc.assert(
    fc.property(unit, unit, fc.constantFrom(-2, -1, 0.5, 1, 2), fc.constantFrom(-1, 1, 2), (p, q, m, n) => {
      const capacity = watts("capacity", { b, c }, (x) => (x["b"] ?? 0) ** m * (x["c"] ?? 0) ** n);
      const j = judged(
        { a, b, c, capacity, check: asks({ demand: a, capacity, guards: "people" }) },
        { a: "1 to 2 W", b: `${p} to ${p + 1} W`, c: `${q} to ${q + 2} W` },
      );
      const shops = marginColumn({ v: columnAt(j.e, "winch/a"), holes: null }, { v: columnAt(j.e, "winch/toy.capacity"), holes: null }).v;
      expect(j.margin.low).toBeLessThanOrEqual(Math.min(...shops));
      const ends = (lo: number, hi: number, power: number): number => Math.min(lo ** power, hi ** power);
      expect(j.margin.low).toBeCloseTo((ends(p, p + 1, m) * ends(q, q + 2, n)) / 2, 9);
    }),
    { numRuns: 25 },
  );
});

const part = scope({ name: "part", says: "a part", mounts: ["parts.*"] });
const share = input({ key: "share", per: part, says: "share", unit: "W", measure });
const parts = { one: { share: "1 W" }, two: { share: "2 W" } };
const limited = (bound: "upper" | "lower", side: "demand" | "capacity", other: string) => {
  const sum = slot({ id: "toy.sum", per: machine, says: "sum", combine: "sum", empty: "zero", bound, unit: "W" });
  const sides = side === "demand" ? { demand: sum, capacity: a } : { demand: a, capacity: sum };
  return judged({ a, part, share, sum, give: offer(sum, share), check: asks(sides) }, { a: other, parts });
};
test.each([
  ["a demand of at most this may hold", "upper", "demand", "9 W", "holds"],
  ["and may not fail", "upper", "demand", "1 W", "open"],
  ["a demand of at least this may fail", "lower", "demand", "1 W", "fails"],
  ["and may not hold", "lower", "demand", "9 W", "open"],
  ["a capacity of at least this may hold", "lower", "capacity", "1 W", "holds"],
  ["and may not fail", "lower", "capacity", "9 W", "open"],
  ["a capacity of at most this may fail", "upper", "capacity", "9 W", "fails"],
  ["and may not hold", "upper", "capacity", "1 W", "open"],
] as const)("%s (%s, %s)", (_, bound, side, other, expected) => {
  const j = limited(bound, side, other);
  expect(j.verdict).toBe(expected);
  expect(j.because).toBe(expected === "open" ? "only a limit of it is known" : null);
});

test("a limited check that hangs on an unknown says so, and not that only a limit is known", () => {
  expect(limited("upper", "demand", "1 to 9 W")).toMatchObject({ verdict: "open", reason: "unknown" });
});

test("a share nobody can count yet leaves a good word open, and is what is asked for", () => {
  const e = evaluate(
    build(toy.winches, shopOf({ drum: { motor: { power: "1 kW", kind: "unknown" } } }, { meter: { rating: "630 A" } })),
    "full",
  );
  const guard = judge(e).find((j) => j.cell.decl === toy.guard);
  expect(guard).toMatchObject({ verdict: "open", reason: "incomplete" });
  expect(guard && deciders(e, guard).map((d) => d.input)).toEqual(["winch/drum.motor.kind"]);
});

test("a limit of a yes within a hair of 1 is no near miss; a margin within 2 % of another word is", () => {
  const yes = watts("yes", { c }, (x) => ((x["c"] ?? 0) > 1 ? 1 : 0));
  const one = watts("one", {}, () => 1);
  expect(judged({ c, yes, one, check: asks({ demand: one, capacity: yes, yesNo: true }) }, { c: "2 to 3 W" }).near).toBe(false);
  expect(judged({ a, b, plain }, { a: "1 W", b: "1.25 to 1.5 W" }).near).toBe(true);
  expect(judged({ a, b, plain }, { a: "1 W", b: "1.4 to 1.5 W" }).near).toBe(false);
});

/** Rests on a window that another check guards. */
const sure = contract({ id: "toy.window", per: machine, says: "a shop that is quiet" });
const resting = watts("resting", { b }, (x) => x["b"] ?? 0, { assumes: [sure] });
const guard = check({ id: "toy.guard", per: machine, asks: "Is it quiet?", demand: c, capacity: a, H: 1, guarantees: sure, remedies: [] });
const main = asks({ demand: a, capacity: resting });
const windowed = (keys: { readonly [key: string]: Tree }): { main: Judged; guard: Judged | undefined; deciding: readonly string[] } => {
  const e = benchOf({ a, b, c, sure, resting, guard, main }, keys);
  const all = judge(e);
  const found = all.find((j) => j.cell.decl === main);
  if (!found) throw new Error("no main check");
  return { main: found, guard: all.find((j) => j.cell.decl === guard), deciding: deciders(e, found).map((d) => d.input) };
};

test("a verdict that rests on a window stands while the guard holds or is tight", () => {
  expect(windowed({ a: "1 W", b: "2 W", c: "0.5 W" }).main).toMatchObject({ verdict: "holds", restsOn: [] });
  expect(windowed({ a: "1 W", b: "2 W", c: "1 W" }).main.verdict).toBe("holds");
});

test("a guard that fails or is open opens what holds, says what it rests on and what to measure, and leaves what fails", () => {
  const failed = windowed({ a: "1 W", b: "2 W", c: "3 W" });
  expect(failed.main).toMatchObject({ verdict: "open", reason: "rests-on", because: "rests on a shop that is quiet" });
  const open = windowed({ a: "1 W", b: "2 to 3 W", c: "0.5 to 3 W" });
  expect(open.main.reason).toBe("rests-on");
  expect(open.deciding).toEqual(["winch/c"]);
  expect(windowed({ a: "4 W", b: "2 W", c: "9 W" }).main).toMatchObject({ verdict: "fails", reason: null, restsOn: [{ contract: sure }] });
});

test("a window without a guard on the thing is no window", () => {
  expect(windowed({ a: "1 W", b: "2 W" }).main).toMatchObject({ verdict: "open", reason: "rests-on", restsOn: [{ guard: null }] });
});

test("a guard does not rest on the window it guards", () => {
  const own = check({
    id: "toy.guard",
    per: machine,
    asks: "Is it quiet?",
    demand: a,
    capacity: resting,
    H: 1,
    guarantees: sure,
    remedies: [],
  });
  for (const [there, verdict] of [
    ["2 W", "holds"],
    ["0.5 W", "fails"],
  ] as const)
    expect(judged({ a, b, sure, resting, own }, { a: "1 W", b: there })).toMatchObject({ verdict, restsOn: [] });
});

test("two windows that guard each other are judged in one pass, each guard plainly for the other", () => {
  const [p, q] = ["p", "q"].map((n) => contract({ id: `toy.${n}`, per: machine, says: n }));
  if (!p || !q) throw new Error("two windows");
  const onP = watts("on-p", { b }, (x) => x["b"] ?? 0, { assumes: [p] });
  const onQ = watts("on-q", { c }, (x) => x["c"] ?? 0, { assumes: [q] });
  const guardP = check({ id: "toy.guard-p", per: machine, asks: "?", demand: a, capacity: onQ, H: 1, guarantees: p, remedies: [] });
  const guardQ = check({ id: "toy.guard-q", per: machine, asks: "?", demand: a, capacity: onP, H: 1, guarantees: q, remedies: [] });
  const words = (keys: { readonly [key: string]: Tree }) =>
    judge(benchOf({ a, b, c, p, q, onP, onQ, guardP, guardQ }, keys)).map((j) => j.verdict);
  expect(words({ a: "1 W", b: "2 W", c: "2 W" })).toEqual(["holds", "holds"]);
  expect(words({ a: "1 W", b: "0.5 W", c: "2 W" })).toEqual(["open", "fails"]);
});

test("what decides an open verdict is named with its share, most first, and how to find it out", () => {
  const capacity = watts("capacity", { b, c }, (x) => (x["b"] ?? 0) ** 3 * (x["c"] ?? 0));
  const j = judged({ a, b, c, capacity, check: asks({ demand: a, capacity }) }, { a: "8 W", b: "1.5 to 2.5 W", c: "0.9 to 1.1 W" });
  const found = deciders(j.e, j);
  expect(found.map((d) => [d.input, d.measure])).toEqual([["winch/b", "measure b"]]);
  expect(found[0]?.share).toBeGreaterThan(0.95);
  const b_ = columnAt(j.e, "winch/b");
  expect(found[0]?.share).toBe(explained(marginColumn(exact(8), { v: columnAt(j.e, "winch/toy.capacity"), holes: null }).v, b_));
});

test("an open yes or no names what decides it", () => {
  const yes = watts("yes", { c }, (x) => ((x["c"] ?? 0) > 2 ? 1 : 0));
  const one = watts("one", {}, () => 1);
  const j = judged({ c, yes, one, check: asks({ demand: one, capacity: yes, yesNo: true }) }, { c: "1 to 3 W" });
  expect(j).toMatchObject({ verdict: "open", reason: "unknown" });
  expect(deciders(j.e, j).map((d) => d.input)).toEqual(["winch/c"]);
});

test("the spread of a joint value is narrowed by a reading: its input is named, though nobody wrote it yet", () => {
  const reading = input({ key: "reading", per: machine, says: "winding resistance", unit: "ohm", measure: "put a meter across it" });
  const circuit = joint({
    id: "toy.read-circuit",
    per: machine,
    says: "circuit",
    method: "toy",
    source: "toy",
    needs: { a },
    gives: { R: { symbol: "R", unit: "W", says: "R" } },
    of: (_, draw) => ({ R: Float64Array.from({ length: draw.count }, (_v, k) => 1 + k / SAMPLES) }),
    readings: [{ part: "R", input: reading, says: "read the winding" }],
  });
  const j = judged({ a, reading, circuit, check: asks({ demand: a, capacity: circuit.R }) }, { a: "1.5 W" });
  expect(deciders(j.e, j)).toMatchObject([{ input: "winch/reading", says: "read the winding", measure: "put a meter across it" }]);
});

test("a nominal look gives the word of the nominal case, people guarded or not", () => {
  for (const guards of [{}, { guards: "people" as const }])
    expect(judged({ a, b, check: asks({ demand: a, capacity: b, ...guards }) }, { a: "1 W", b: "0.5 to 3.5 W" }, "nominal").verdict).toBe(
      "holds",
    );
});

test("the house of winches: the brake guards people, the speed rests on a meter that carries", () => {
  const e = evaluate(build(toy.winches, shopOf()), "full");
  const words = judge(e).map((j) => [j.cell.address, j.verdict, j.reason]);
  // By hand: 12 kW / 0.8 = 15 kVA over 210 to 250 V is 60 to 71 A against 63 A; 300 kg on 110 mm ask 324 N*m of 300 to 500.
  expect(words).toEqual([
    ["shop/early.not-drawn-down", "open", "unknown"],
    ["winch/late.drum.brake-holds", "open", "unknown"],
    ["crane/late.drum.brake-holds", "fails", null],
    ["winch/late.drum.fast-enough", "open", "rests-on"],
    ["crane/late.drum.fast-enough", "open", "rests-on"],
  ]);
});

test("an unknown column of another machine in the same shop changes no verdict here", () => {
  const one = modelOf({ shop: { meter: { rating: "63 A" } }, winch: { load: "300 kg", drum: {} } });
  const two = modelOf({ shop: { meter: { rating: "63 A" } }, winch: { load: "300 kg", drum: {} }, crane: { load: "1 to 2 kg", drum: {} } });
  const margins = (m: typeof one) =>
    judge(evaluate(build(toy.winches, m), "full"))
      .filter((j) => j.cell.item.root === "winch")
      .map((j) => j.margin);
  expect(margins(two)).toEqual(margins(one));
});

test("a column with holes keeps both sides' reasons", () => {
  const holed = (reason: string): Column => ({ v: Float64Array.of(NaN, 1), holes: new Map([[reason, 1]]) });
  expect([...(marginColumn(holed("p"), holed("q")).holes ?? [])]).toEqual([
    ["p", 1],
    ["q", 1],
  ]);
});
