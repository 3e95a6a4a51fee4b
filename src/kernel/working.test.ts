import { expect, test } from "vitest";
import { evaluate } from "./evaluate.ts";
import { graphOf, type Tree } from "./toy-house.test-help.ts";
import { working } from "./working.ts";

const work = (address: string, more: { readonly [key: string]: Tree } = {}) => {
  const w = working(evaluate(graphOf(more), "full"), address);
  if (!w) throw new Error(`nothing at ${address}`);
  return w;
};

test("a figure shows its formula, the same with the numbers put in, and where each came from", () => {
  const w = work("winch/late.drum.torque", { load: "300 kg", drum: { radius: "100 mm" } });
  expect(w).toMatchObject({ symbol: "T", formula: "F * r", numbers: "2942 N * 100 mm", source: "lever", method: null });
  expect(w.amount?.text).toBe("294.2 N*m");
  expect(w.needs.map((n) => [n.name, n.address, n.is, n.origin?.by ?? null])).toEqual([
    ["F", "winch/late.weight", "figure", null],
    ["r", "winch/drum.radius", "input", "line"],
  ]);
  expect(w.mathml).toContain("<math");
  expect(w.mathmlNumbers).toContain("2942");
});

test("what decides the spread is named by share, and the share of what is known is not", () => {
  const w = work("winch/late.drum.full-speed");
  expect(w.shares.map((s) => s.address)).toEqual(expect.arrayContaining(["shop/voltage", "winch/drum.radius"]));
  const sum = w.shares.reduce((s, x) => s + x.share, 0);
  expect(Math.abs(sum - 1)).toBeLessThan(0.08);
  expect(work("winch/late.weight").shares).toEqual([]);
});

test("a figure says what it assumes, and which checks hang on it", () => {
  expect(work("winch/late.drum.full-speed").assumes).toEqual(["a shop that is not drawn down"]);
  expect(work("winch/load").usedBy).toEqual(["winch/late.drum.brake-holds"]);
});

test("an input shows what was written and how to find it out", () => {
  const w = work("winch/drum.radius");
  expect(w.input).toMatchObject({ written: "90 to 110 mm", measure: "look at it" });
  expect(w).toMatchObject({ symbol: "r", formula: null });
});

test("a slot lists its shares by the things that gave them", () => {
  expect(work("shop/early.draws").needs.map((n) => [n.name, n.text])).toEqual([
    ["drum.motor", "5 kVA"],
    ["drum.motor", "10 kVA"],
  ]);
});

test("a missing need says so in place of a number: not known, or none", () => {
  const waiting = work("winch/late.weight", { load: "unknown" });
  expect(waiting.needs).toMatchObject([{ name: "m", is: "missing", text: "not known", address: "winch/load" }]);
  expect(waiting.amount?.text).toBe("load on the hook is not known");
  const heat = work("winch/late.drum.heat", { drum: { brake: { grip: "400 N*m" } } });
  expect(heat.needs.find((n) => n.name === "P")).toMatchObject({ is: "missing", text: "none" });
});

test("nothing stands at an address nobody has", () => {
  expect(working(evaluate(graphOf(), "nominal"), "winch/nowhere")).toBeNull();
});
