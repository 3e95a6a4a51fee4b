import fc from "fast-check";
import { expect, test } from "vitest";
import { waywright } from "../../rooms/index.ts";
import { answerCases } from "./work-cases.ts";

const answers = (cases: unknown): Record<string, unknown>[] =>
  answerCases(waywright, JSON.stringify(cases), "cases.json") as Record<string, unknown>[];
const load = { figure: "supply.load-test-resistance", with: { V_0: "242.6 V", V_1: "238.9 V", I_1: "21 A", phases: 1 } };

test("a load test of 3.7 V at 21 A is 0.17619 ohm of source, in any unit of resistance", () => {
  const [si, milli] = answers([
    { id: "a", ...load },
    { id: 2, ...load, in: "mohm" },
  ]);
  expect(si).toMatchObject({ id: "a", figure: load.figure, unit: "ohm" });
  expect(si?.["value"]).toBeCloseTo(3.7 / 21, 12);
  expect(milli).toMatchObject({ id: 2, unit: "mohm" });
  expect(milli?.["value"]).toBeCloseTo(3700 / 21, 9);
});

test("names may be symbols or input names", () => {
  const [a] = answers([
    {
      id: 1,
      figure: load.figure,
      with: { "supply.load-test.idle": "242.6 V", "supply.load-test.loaded": "238.9 V", I_1: "21 A", phases: "1" },
    },
  ]);
  expect(a?.["value"]).toBeCloseTo(3.7 / 21, 12);
});

test("a range gives a band on both sides of its nominal", () => {
  const [a] = answers([{ id: 1, ...load, with: { ...load.with, I_1: "20 to 22 A" } }]);
  expect(a?.["low"]).toBeGreaterThan(3.7 / 22);
  expect(a?.["low"]).toBeLessThan(3.7 / 21);
  expect(a?.["high"]).toBeGreaterThan(3.7 / 21);
  expect(a?.["high"]).toBeLessThan(3.7 / 20);
});

test("a list of readings is a list or one text", () => {
  // Mean 229.667 V, farthest reading 1.667 V off: 0.72569 %.
  const [a, b] = answers([
    { id: 1, figure: "supply.unbalance", with: { V_i: ["230 V", "231 V", "228 V"] } },
    { id: 2, figure: "supply.unbalance", with: { V_i: "230, 231, 228 V" }, in: "%" },
  ]);
  expect(a?.["value"]).toBeCloseTo(5 / 689, 9);
  expect(b?.["value"]).toBeCloseTo(500 / 689, 7);
});

test.each([
  ["a unit of another kind", { ...load, in: "V" }, "unit-mismatch"],
  ["a word that is no unit", { ...load, in: "ohmm" }, "unit-unknown"],
  ["a number without its unit", { ...load, with: { ...load.with, V_0: 242.6 } }, "unit-missing"],
  ["a value of another kind", { ...load, with: { ...load.with, V_0: "3 A" } }, "unit-mismatch"],
  ["a decimal comma in a list", { figure: "supply.unbalance", with: { V_i: ["230 V", "231,2 V"] } }, "number-bad"],
  ["an unknown figure", { figure: "supply.nope", with: {} }, "figure-unknown"],
  ["an unknown name", { ...load, with: { ...load.with, voltage: "3 V" } }, "name-unknown"],
  ["the name of every object", { ...load, with: JSON.parse('{"__proto__": "3 V"}') as unknown }, "name-unknown"],
  ["a missing value", { figure: load.figure, with: { V_0: "242 V" } }, "needs-missing"],
  ["a loaded voltage above the idle one", { ...load, with: { ...load.with, V_1: "250 V" } }, "refused"],
  ["a figure that is no text", { figure: 7 }, "case-bad"],
  ["a value that is no value", { ...load, with: { V_0: { value: "3 V" } } }, "case-bad"],
  ["values that are no map", { ...load, with: ["3 V"] }, "case-bad"],
  ["no case at all", 7, "case-bad"],
])("%s is an error of its case alone", (_, bad, code) => {
  const [first, second, third] = answers([{ id: "good", ...load }, bad, { id: "good too", ...load }]);
  expect(second).toMatchObject({ error: { code, message: expect.any(String) as unknown } });
  expect(first?.["value"]).toBe(third?.["value"]);
});

test.each([["{"], ["{}"], ["3"]])("%s is no list of cases", (text) => {
  expect(() => answerCases(waywright, text, "c.json")).toThrow(/c\.json/);
});

test("no JSON value makes a case crash", () => {
  fc.assert(
    fc.property(fc.jsonValue(), fc.jsonValue(), (given, unit) => {
      const [a] = answers([{ id: 1, figure: load.figure, with: given, in: unit }]);
      expect(a).toHaveProperty("error.code");
    }),
    { numRuns: 50 },
  );
});
