import { expect, test } from "vitest";
import { isColumn } from "./band.ts";
import { input, listInput, listsInput, pairInput, textInput, wordInput } from "./figure.ts";
import { build, type InputCell } from "./graph.ts";
import { machine } from "./item.ts";
import type { Leaf } from "./model/node.ts";
import { SAMPLES } from "./random.ts";
import { fillInput, spreadOf } from "./sample.ts";
import { cellAt, houseOf, leafOf, modelOf, toyRoom, withLeaf } from "./toy-house.test-help.ts";

const measure = "look at it";
const length = input({ key: "length", per: machine, says: "length", unit: "m", measure, typical: { value: "10 to 30 mm", source: "toy" } });
const turns = input({ key: "turns", per: machine, says: "turns", unit: "1", kind: "ratio", measure });
const kind = wordInput({ key: "kind", per: machine, says: "kind", words: ["a", "b", "c"], typical: ["a", "b"], measure });
const list = listInput({ key: "list", per: machine, says: "list", unit: "m", measure });
const pair = pairInput({ key: "pair", per: machine, says: "pair", unit: "V", measure });
const words = listsInput({ key: "words", per: machine, says: "words", measure });
const text = textInput({ key: "text", per: machine, says: "text", measure });
const house = houseOf(toyRoom({ length, turns, kind, list, pair, words, text }));

function cell(key: string, leaf: Leaf | null): InputCell {
  const bare = modelOf({ shop: {}, winch: {} });
  const found = cellAt(build(house, leaf ? withLeaf(bare, "winch", [key], leaf) : bare), `winch/${key}`);
  if (found.is !== "input") throw new Error(`${key} is no input`);
  return found;
}
const filled = (key: string, leaf: Leaf | string | null): unknown => {
  const f = fillInput(cell(key, typeof leaf === "string" ? leafOf(leaf) : leaf), false);
  return isColumn(f) ? f.v : f.each;
};
const columnOf = (key: string, leaf: Leaf | string | null): Float64Array => {
  const v = filled(key, leaf);
  if (!(v instanceof Float64Array)) throw new Error("no column");
  return v;
};

test("what is exact is one value, a range fills all shops with the middle as the nominal one", () => {
  expect(columnOf("length", "20 mm")).toEqual(Float64Array.of(0.02));
  const v = columnOf("length", "10 to 20 mm");
  expect(v.length).toBe(SAMPLES);
  expect(v[0]).toBeCloseTo(0.015, 12);
  expect(v.every((x) => x >= 0.01 && x <= 0.02)).toBe(true);
});

test("unknown and unwritten take the typical band, the same for both", () => {
  expect(filled("length", null)).toBe(filled("length", "unknown"));
  const v = columnOf("length", null);
  expect([Math.min(...v), Math.max(...v)].map((x) => x.toFixed(3))).toEqual(["0.010", "0.030"]);
});

test("a stated tolerance is closed at its ends; that of a measurement is two standard deviations of a normal one", () => {
  const stated = columnOf("length", "20 mm +/- 2 mm");
  expect(Math.min(...stated)).toBeGreaterThanOrEqual(0.018);
  const measured = columnOf("length", leafOf("20 mm +/- 2 mm", { from: "measured" }));
  const mean = measured.reduce((s, x) => s + x, 0) / SAMPLES;
  const deviation = Math.sqrt(measured.reduce((s, x) => s + (x - mean) ** 2, 0) / SAMPLES);
  expect(mean).toBeCloseTo(0.02, 5);
  // Cut at three standard deviations: 1.3 % less than 1 mm.
  expect(Math.abs(deviation / 0.001 - 0.987)).toBeLessThan(0.01);
  expect(spreadOf(cell("length", leafOf("20 mm +/- 2 mm", { from: "measured" })))).toMatchObject({
    shape: "normal",
    low: 0.017,
    high: 0.023,
  });
  expect(spreadOf(cell("length", leafOf("20 mm +/- 2 mm", { origin: { by: "record", name: "r", date: "2026-01-01" } })))).toMatchObject({
    shape: "normal",
  });
});

test("a measured range is still a range", () => {
  expect(spreadOf(cell("length", leafOf("18 to 22 mm", { from: "measured" })))).toMatchObject({
    shape: "uniform",
    low: 0.018,
    high: 0.022,
  });
});

test("a rough reading of a length never leaves a shop with a negative one", () => {
  const v = columnOf("length", leafOf("2 mm +/- 1.9 mm", { from: "measured" }));
  expect(Math.min(...v)).toBe(0);
  expect(Math.max(...v)).toBeLessThanOrEqual(0.00485 + 1e-12);
});

test("an edit elsewhere hands out the very same column, another text another one, going back the first again", () => {
  const first = filled("length", "10 to 20 mm");
  expect(filled("length", "10 to 20 mm")).toBe(first);
  expect(filled("length", "10 to 21 mm")).not.toBe(first);
  expect(filled("length", "10 to 20 mm")).toBe(first);
});

test("two ranges of one input are the same shops: sample for sample in step", () => {
  const [a, b] = [columnOf("length", "10 to 20 mm"), columnOf("length", "110 to 120 mm")];
  expect(a.every((x, k) => Math.abs((b[k] ?? NaN) - x - 0.1) < 1e-12)).toBe(true);
});

test("declarations of one name in two houses do not share a column", () => {
  const other = input({ key: "length", per: machine, says: "length", unit: "m", measure, typical: { value: "1 to 2 m", source: "toy" } });
  const found = cellAt(build(houseOf(toyRoom({ other })), modelOf({ shop: {}, winch: {} })), "winch/length");
  const f = found.is === "input" ? fillInput(found, false) : null;
  expect(f && isColumn(f) && Math.min(...f.v)).toBeGreaterThan(0.9);
  expect(Math.max(...columnOf("length", null))).toBeLessThan(0.04);
});

test("an unknown word is one of the typical ones in each shop, half of them each, the first in the nominal one", () => {
  const each = filled("kind", "unknown") as string[];
  expect(each.length).toBe(SAMPLES);
  expect(each[0]).toBe("a");
  expect(new Set(each)).toEqual(new Set(["a", "b"]));
  expect(Math.abs(each.filter((w) => w === "a").length - 500)).toBeLessThan(3);
  expect(filled("kind", "c")).toEqual(["c"]);
});

test("lists, pairs, words and texts are data, the same in all shops", () => {
  expect(filled("list", "10 mm\n20 mm")).toEqual([[0.01, 0.02]]);
  expect(filled("list", "")).toEqual([[]]);
  expect(filled("pair", "230/460 V")).toEqual([[230, 460]]);
  expect(filled("pair", "400 V")).toEqual([[400]]);
  expect(filled("words", "4-7\n5-8")).toEqual([["4-7", "5-8"]]);
  expect(filled("words", "")).toEqual([[]]);
  expect(filled("text", "old but good")).toEqual(["old but good"]);
});

test("what cannot be read is a hole that says so", () => {
  const f = fillInput(cell("turns", leafOf("a few")), false);
  expect(f.holes && [...f.holes]).toEqual([["turns cannot be read", 1]]);
});

test("the nominal case alone is the first of all shops", () => {
  for (const said of ["10 to 20 mm", "20 mm"]) {
    const [all, one] = [false, true].map((nominal) => fillInput(cell("length", leafOf(said)), nominal));
    expect(one && isColumn(one) && one.v.length).toBe(1);
    expect(one && isColumn(one) && one.v[0]).toBe(all && isColumn(all) && all.v[0]);
  }
});
