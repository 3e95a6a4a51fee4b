import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dimensionOfFormula, FormulaError, type FormulaValue, namesIn, parseFormula, valueOf, withNumbers } from "./formula.ts";

const value = (text: string, values: Record<string, FormulaValue> = {}): number => valueOf(parseFormula(text), values);
const refusal = (act: () => unknown): { code: string; offset: number; says: string } => {
  try {
    act();
  } catch (error) {
    if (error instanceof FormulaError) return { code: error.code, offset: error.offset, says: error.message };
    throw error;
  }
  return { code: "none", offset: -1, says: "" };
};
const refused = (act: () => unknown): [code: string, offset: number] => {
  const { code, offset } = refusal(act);
  return [code, offset];
};

const holdTime = "V * (p_1 + p_a) * (1 - ((p_2 + p_a) / (p_1 + p_a))^(1/n)) / (p_ref * q)";

describe("the value of a formula", () => {
  test("100 L falling slowly from 8 to 6 bar carry 120 L/min for 100 s", () => {
    // by hand: 0.1 m3 * 200 kPa / (100 kPa * 0.002 m3/s)
    expect(value(holdTime, { V: 0.1, p_1: 800e3, p_2: 600e3, p_a: 101.325e3, n: 1, q: 0.002, p_ref: 100e3 })).toBeCloseTo(100, 9);
  });

  test.each([
    ["2 + 3 * 4", 14],
    ["(2 + 3) * 4", 20],
    ["12 / 3 / 2", 2],
    ["12 / (3 / 2)", 8],
    ["10 - 3 - 2", 5],
    ["2^3^2", 512],
    ["(2^3)^2", 64],
    ["-2^2", -4],
    ["(-2)^2", 4],
    ["2^-1", 0.5],
    ["2^-2^2", 0.0625],
    ["3 * -2", -6],
    ["3 - -2", 5],
    ["--2", 2],
    ["2 * 3^2", 18],
    ["1e-7 * 1E+7", 1],
    ["  2.5e3\t/ 5\n", 500],
  ])("%s is %d", (text, expected) => {
    expect(value(text)).toBe(expected);
  });

  test.each([
    ["2 * pi", 6.283185307179586],
    ["sqrt(16)", 4],
    ["abs(-3)", 3],
    ["exp(0)", 1],
    ["ln(exp(2))", 2],
    ["log10(1000)", 3],
    ["sin(pi / 6)", 0.5],
    ["cos(pi / 3)", 0.5],
    ["tan(pi / 4)", 1],
    ["asin(1) / pi", 0.5],
    ["acos(0) / pi", 0.5],
    ["atan(1) / pi", 0.25],
    ["atan2(1, -1) / pi", 0.75],
    ["hypot(3, 4)", 5],
    ["hypot(2, 3, 6)", 7],
    ["min(3, 1, 2)", 1],
    ["max(3, 1, 2)", 3],
    ["ceil(1.2)", 2],
    ["floor(-1.2)", -2],
  ])("%s is %d", (text, expected) => {
    expect(value(text)).toBeCloseTo(expected, 12);
  });

  test("a condition takes the branch that holds, also at the border", () => {
    expect([1, 2, 3].map((a) => value("if(a < 2, 10, 20)", { a }))).toEqual([10, 20, 20]);
    expect([1, 2, 3].map((a) => value("if(a <= 2, 10, 20)", { a }))).toEqual([10, 10, 20]);
    expect([1, 2, 3].map((a) => value("if(a > 2, 10, 20)", { a }))).toEqual([20, 20, 10]);
    expect([1, 2, 3].map((a) => value("if(a >= 2, 10, 20)", { a }))).toEqual([20, 10, 10]);
  });

  test("a machine that never stops has an infinite time, and that passes through", () => {
    expect(value("t / 2 + 1", { t: Infinity })).toBe(Infinity);
    expect(value("J * w / T", { J: 1, w: 10, T: 0 })).toBe(Infinity);
  });

  test("names are told once each, pi is not one of them", () => {
    expect(namesIn(parseFormula(holdTime))).toEqual(["V", "p_1", "p_a", "p_2", "n", "p_ref", "q"]);
    expect(namesIn(parseFormula("2 * pi * f + pi_2"))).toEqual(["f", "pi_2"]);
    expect(namesIn(parseFormula("if(a < b, c, sum(d))"))).toEqual(["a", "b", "c", "d"]);
  });

  test("one text is read once", () => {
    expect(parseFormula(holdTime)).toBe(parseFormula(holdTime));
  });

  test("a name that is not given is refused where it stands, also when it is a word of the language", () => {
    expect(refused(() => value("2 * p_9", { p_1: 1 }))).toEqual(["unknown-name", 4]);
    expect(refused(() => value("2 * constructor"))).toEqual(["unknown-name", 4]);
    expect(refused(() => dimensionOfFormula(parseFormula("1 + toString"), {}))).toEqual(["unknown-name", 4]);
  });
});

describe("lists", () => {
  test("the rms torque of a duty weighs each square with its time", () => {
    // by hand: (10^2 * 1 + 2^2 * 4 + 8^2 * 1) / 6 = 180 / 6 = 30
    expect(value("sqrt(sum(T^2 * t) / sum(t))", { T: [10, -2, 8], t: [1, 4, 1] })).toBeCloseTo(Math.sqrt(30), 12);
  });

  test("the scatter of returns is taken about their mean", () => {
    // by hand: mean 5, squares 9 1 1 1 0 0 4 16 = 32, over 7
    const x = [2, 4, 4, 4, 5, 5, 7, 9];
    expect(value("sqrt(sum((x - mean(x))^2) / (count(x) - 1))", { x })).toBeCloseTo(Math.sqrt(32 / 7), 12);
    expect(value("max(x) - min(x)", { x })).toBe(7);
  });

  test("several arguments of max with a list among them go element by element", () => {
    expect(value("sum(max(P, 0))", { P: [5, -3, 2] })).toBe(7);
    expect(value("sum(if(P > 0, P, 0) * 2)", { P: [5, -3, 2] })).toBe(14);
    expect(value("sum(-x)", { x: [1, 2] })).toBe(-3);
  });

  test("sum, mean, least and greatest agree for lists of 2 to 40", () => {
    const list = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 2, maxLength: 40 });
    fc.assert(
      fc.property(list, (x) => {
        const sum = value("sum(x)", { x });
        expect(value("mean(x)", { x })).toBe(sum / x.length);
        expect(value("min(x)", { x })).toBe(Math.min(...x));
        expect(value("max(x)", { x })).toBe(Math.max(...x));
        expect(value("count(x)", { x })).toBe(x.length);
        expect(value("sum(x * 1)", { x })).toBe(sum);
      }),
      { seed: 1 },
    );
  });

  test("an empty list sums to nothing, but has no mean, no least and no greatest", () => {
    expect(value("sum(x) + count(x)", { x: [] })).toBe(0);
    for (const text of ["mean(x)", "min(x)", "max(x)"]) expect(refused(() => value(`1 + ${text}`, { x: [] }))).toEqual(["list-empty", 4]);
  });

  test("a list where a number is wanted, and the other way round, are refused", () => {
    expect(refused(() => value("x * 2", { x: [1, 2] }))).toEqual(["list-left", 0]);
    expect(refused(() => value("1 + sum(x)", { x: 3 }))).toEqual(["not-a-list", 4]);
    expect(refused(() => value("min(x)", { x: 3 }))).toEqual(["not-a-list", 0]);
    expect(refused(() => value("sum(sum(x))", { x: [3] }))).toEqual(["not-a-list", 0]);
    expect(refused(() => value("2 * sum(T * t)", { T: [1, 2], t: [1, 2, 3] }))).toEqual(["list-lengths", 8]);
  });
});

describe("text that is no formula is refused with its place", () => {
  test.each([
    ["", "empty", 0],
    ["  ", "empty", 0],
    ["2 +", "unexpected", 3],
    ["* 2", "unexpected", 0],
    ["2 x", "unexpected", 2],
    ["2x", "unexpected", 1],
    ["a b", "unexpected", 2],
    ["(a + b", "unexpected", 6],
    ["a + b)", "unexpected", 5],
    ["a, b", "unexpected", 1],
    ["a < b", "unexpected", 2],
    ["if(a, b, c)", "unexpected", 4],
    ["if(a < b, c)", "unexpected", 11],
    ["sqrt(a b)", "unexpected", 7],
    ["sin()", "unexpected", 4],
    ["+a", "unexpected", 0],
    ["a ** b", "unexpected", 3],
    ["a = b", "bad-character", 2],
    ["a + µ", "bad-character", 4],
    ["2 + .5", "bad-character", 4],
    ["1,5 * 𝑥", "bad-character", 6],
    ["_a", "bad-character", 0],
    ["2 * 1e999", "number-range", 4],
    ["V(p + q)", "unknown-function", 0],
    ["1 + toString(2)", "unknown-function", 4],
    ["2 * sum", "reserved-name", 4],
    ["if + 1", "reserved-name", 0],
    ["pi(2)", "unknown-function", 0],
    ["1 + atan2(a)", "argument-count", 4],
    ["sqrt(a, b)", "argument-count", 0],
    ["hypot(a)", "argument-count", 0],
    ["sum(a, b)", "argument-count", 0],
  ])("%j: %s at %d", (text, code, offset) => {
    expect(refused(() => parseFormula(text))).toEqual([code, offset]);
  });

  test("ten thousand brackets, signs or powers give an error, not a crash", () => {
    const brackets = `${"(".repeat(10_000)}a${")".repeat(10_000)}`;
    expect(refusal(() => parseFormula(brackets)).code).toBe("too-long");
    expect(refusal(() => parseFormula("(".repeat(900) + "a" + ")".repeat(900)))).toMatchObject({ code: "too-deep", offset: 100 });
    expect(refusal(() => parseFormula("-".repeat(1_900) + "a"))).toMatchObject({ code: "too-deep", offset: 100 });
    expect(refusal(() => parseFormula("2^".repeat(900) + "a")).code).toBe("too-deep");
    expect(refusal(() => parseFormula("sin(".repeat(300) + "a" + ")".repeat(300))).code).toBe("too-deep");
  });

  test("the longest chain that may be written is worked out by every reader", () => {
    const formula = parseFormula(`x${"+x".repeat(999)}`);
    expect(valueOf(formula, { x: 1 })).toBe(1000);
    expect(dimensionOfFormula(formula, { x: [1, 0, 0, 0, 0, 0, 0] })).toEqual([1, 0, 0, 0, 0, 0, 0]);
    expect(withNumbers(formula, () => "1 m").split(" + ")).toHaveLength(1000);
  });

  test("whatever is typed, the answer is a formula or a FormulaError with a place inside the text", () => {
    const piece = fc.constantFrom(
      "a",
      "b_1",
      "2",
      "1e3",
      "+",
      "-",
      "*",
      "/",
      "^",
      "(",
      ")",
      ",",
      "<",
      ">=",
      "sin",
      "if",
      "sum",
      "pi",
      " ",
      ".",
      "é",
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 30 }), (pieces) => {
        const text = pieces.join("");
        const { code, offset } = refusal(() => parseFormula(text));
        expect(offset).toBeLessThanOrEqual(text.length);
        expect(code === "none").toBe(offset < 0);
      }),
      { seed: 1 },
    );
  });
});
