import { expect, test } from "vitest";
import { amountOf, answer, num } from "./answer.ts";
import { hole } from "./band.ts";
import { evaluate } from "./evaluate.ts";
import { build } from "./graph.ts";
import { SAMPLES } from "./random.ts";
import { graphOf, leafOf, shopOf, type Tree, winches, withLeaf } from "./toy-house.test-help.ts";

const answerOf = (more: { readonly [key: string]: Tree } = {}) => answer(evaluate(graphOf(more), "full"));

/** Everything plain in an answer, with where it stands. */
function leaves(x: unknown, at = ""): [string, unknown][] {
  if (typeof x !== "object" || x === null) return [[at, x]];
  return Object.entries(x).flatMap(([key, v]) => leaves(v, `${at}/${key}`));
}

test("an answer is plain JSON: no number in it is endless or none, nothing is lost on the way to text and back", () => {
  for (const a of [answerOf(), answerOf({ load: "unknown" }), answerOf({ load: "0 kg" })]) {
    const odd = leaves(a).filter(([, v]) => (typeof v === "number" ? !Number.isFinite(v) : v === undefined || typeof v === "function"));
    expect(odd).toEqual([]);
    expect(JSON.parse(JSON.stringify(a))).toEqual(a);
  }
});

test("the same shop gives the same answer, letter for letter, whatever was asked before", () => {
  const first = JSON.stringify(answerOf());
  answerOf({ load: "200 to 900 kg" });
  expect(JSON.stringify(answerOf())).toBe(first);
});

test("figures and inputs stand under their addresses, sorted", () => {
  const a = answerOf();
  for (const keys of [Object.keys(a.figures), Object.keys(a.inputs)]) {
    expect(keys.length).toBeGreaterThan(5);
    expect(keys).toEqual(keys.toSorted());
  }
  expect(a.figures["winch/late.drum.torque"]).toMatchObject({ id: "late.drum.torque", room: "late", item: "winch/drum", symbol: "T" });
});

test("checks come worst first: what has no number yet behind all that fall short, endless last", () => {
  const lowsOf = (checks: ReturnType<typeof answerOf>["checks"]) =>
    checks.map((c) => (typeof c.margin.low === "number" ? c.margin.low : "never" in c.margin.low ? Infinity : 1));
  for (const { checks } of [answerOf(), answerOf({ load: "unknown" })]) {
    expect(lowsOf(checks)).toEqual(lowsOf(checks).toSorted((p, q) => p - q));
  }
  const { checks } = answerOf({ load: "unknown" });
  expect(checks).toContainEqual(
    expect.objectContaining({ verdict: "open", reason: "incomplete", margin: expect.objectContaining({ low: { refused: "no value" } }) }),
  );
});

test("what to measure next is what decides open verdicts, with the checks it would settle", () => {
  const next = answerOf({ drum: { radius: "90 to 110 mm", motor: { kind: "cage", power: "4 kW" } } }).measureNext;
  expect(next.find((n) => n.input === "shop/voltage")?.checks).toEqual(
    expect.arrayContaining(["shop/early.not-drawn-down", "winch/late.drum.fast-enough", "crane/late.drum.fast-enough"]),
  );
  expect(next.map((n) => n.checks.length)).toEqual(next.map((n) => n.checks.length).toSorted((p, q) => q - p));
});

test("never and refused are said, not written as numbers", () => {
  expect(num(Infinity)).toEqual({ never: true });
  expect(num(NaN, "no speed cap")).toEqual({ refused: "no speed cap" });
  expect(num(0)).toBe(0);
});

const time = { kind: "time", unit: "s" } as const;
const metric = { units: "metric" } as const;
test.each([
  ["a value known to its last digit is exact", [4], "4 s", "exact"],
  ["never in all shops", [Infinity], "never", "exact"],
  ["never in some", [8, ...Array.from({ length: SAMPLES - 1 }, (_, k) => (k < 500 ? Infinity : 8))], "8 s", "8 s to never"],
  ["never in all, by a spread", Array.from({ length: SAMPLES }, () => Infinity), "never", "never"],
  ["a spread", Array.from({ length: SAMPLES }, (_, k) => 10 + k / 100), "10 s", "10.5 to 19.5 s"],
])("in words: %s", (_, values, text, spread) => {
  expect(amountOf({ v: Float64Array.from(values), holes: null }, time, metric)).toMatchObject({ text, band: spread });
});

test("a refused amount shows the reason in place of the number", () => {
  expect(amountOf(hole("no speed cap"), time, metric)).toMatchObject({ text: "no speed cap", nominal: { refused: "no speed cap" } });
});

test("an input says who told it: the line, the plate, a record over a line, or what is typical", () => {
  const says = (model = shopOf()) => answer(evaluate(build(winches, model), "nominal")).inputs;
  expect(says()["winch/drum.radius"]).toMatchObject({ written: "90 to 110 mm", origin: { by: "line", says: "by-hand.yaml:1" } });
  expect(says()["crane/drum.radius"]).toMatchObject({
    written: null,
    text: "80 to 120 mm",
    origin: { by: "typical", says: "typical: toy" },
  });
  const plate = withLeaf(shopOf(), "winch", ["load"], leafOf("250 kg", { from: "plate" }));
  expect(says(plate)["winch/load"]?.origin.says).toBe("plate, by-hand.yaml:1");
  const record = withLeaf(
    shopOf(),
    "winch",
    ["load"],
    leafOf("250 kg", { origin: { by: "record", name: "weighed", date: "2026-02-01" }, over: [leafOf("300 kg")] }),
  );
  expect(says(record)["winch/load"]).toMatchObject({
    text: "250 kg",
    origin: { by: "record", says: "record weighed" },
    over: [{ text: "300 kg", origin: { by: "line" } }],
  });
});

test("a mistake found in the numbers is noticed at the input it belongs to, on the machine that has it", () => {
  expect(answerOf().notices.map((n) => [n.root, n.says, n.at])).toEqual([["crane", "more than half a tonne", "crane/load"]]);
});

test("a check that rests on a window names the guard", () => {
  const c = answerOf().checks.find((k) => k.address === "winch/late.drum.fast-enough");
  expect(c?.restsOn).toEqual([{ says: "a shop that is not drawn down", guard: "shop/early.not-drawn-down" }]);
});

test("a remedy names the inputs it changes where they stand", () => {
  const c = answerOf().checks.find((k) => k.id === "early.not-drawn-down");
  // A shop has many machines: no load is picked by luck, so the declared name stands.
  expect(c?.remedies[0]?.changes).toEqual(["load"]);
});
