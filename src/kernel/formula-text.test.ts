import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { FormulaError, parseFormula, valueOf, withNumbers } from "./formula.ts";

const value = (text: string, values: Record<string, number> = {}): number => valueOf(parseFormula(text), values);
/** With every name put in for itself, the canonical text. */
const canonical = (text: string): string => withNumbers(parseFormula(text), (name) => name);

const canonicalOrNone = (text: string): string | null => {
  try {
    return canonical(text);
  } catch (error) {
    if (error instanceof FormulaError) return null;
    throw error;
  }
};

/** The text without one pair of brackets, for every pair that neither belongs to a function nor holds off a minus sign. */
function textsWithoutOneBracket(text: string): string[] {
  const open: number[] = [];
  const texts: string[] = [];
  Array.from(text).forEach((character, at) => {
    if (character === "(") open.push(at);
    if (character !== ")") return;
    const from = open.pop() ?? 0;
    const isNeeded = /[A-Za-z0-9_]/.test(text[from - 1] ?? "") || text[from + 1] === "-";
    if (!isNeeded) texts.push(text.slice(0, from) + text.slice(from + 1, at) + text.slice(at + 1));
  });
  return texts;
}

const holdTime = "V * (p_1 + p_a) * (1 - ((p_2 + p_a) / (p_1 + p_a))^(1/n)) / (p_ref * q)";

/** Random formula texts with more brackets than needed, over numbers that stay in range. */
const anyFormula = fc
  .letrec<{ tree: string }>((tie) => ({
    tree: fc.oneof(
      { maxDepth: 6, depthSize: "medium" },
      fc.constantFrom("a", "b_1", "eta", "pi", "2", "0.5", "1e-3"),
      fc.tuple(tie("tree"), fc.constantFrom("+", "-", "*", "/", "^"), tie("tree")).map(([a, op, b]) => `(${a})${op}(${b})`),
      tie("tree").map((a) => `-(${a})`),
      fc.tuple(fc.constantFrom("sqrt", "abs", "sin"), tie("tree")).map(([f, a]) => `${f}(${a})`),
      fc.tuple(tie("tree"), tie("tree")).map(([a, b]) => `max((${a}),${b})`),
      fc.tuple(tie("tree"), fc.constantFrom("<", "<=", ">", ">="), tie("tree")).map(([a, op, b]) => `if(${a}${op}${b},${a},${b})`),
    ),
  }))
  .tree.filter((text) => text.length < 300);

describe("a formula written again", () => {
  test.each([
    ["((a))", "a"],
    ["(a*b)*c", "a * b * c"],
    ["a*(b*c)", "a * (b * c)"],
    ["(a/b)/c", "a / b / c"],
    ["a/(b/c)", "a / (b / c)"],
    ["a-(b-c)", "a - (b - c)"],
    ["(a^b)^c", "(a^b)^c"],
    ["a^(b^c)", "a^b^c"],
    ["-(a^2)", "-a^2"],
    ["(-a)^2", "(-a)^2"],
    ["a^(-1)", "a^-1"],
    ["a^(1/n)", "a^(1 / n)"],
    ["a*(-b)", "a * (-b)"],
    ["-(a*b)", "-(a * b)"],
    ["-(-a)", "-(-a)"],
    ["a--b*c", "a - (-b * c)"],
    ["if(a<b,c,d)*2", "if(a < b, c, d) * 2"],
    ["max(a,(b+c))", "max(a, b + c)"],
  ])("%s becomes %s", (text, expected) => {
    expect(canonical(text)).toBe(expected);
  });

  test("has the same value to the last digit and does not change any more", () => {
    fc.assert(
      fc.property(anyFormula, (text) => {
        const values = { a: 1.25, b_1: -0.75, eta: 0.9 };
        const again = canonical(text);
        expect(value(again, values)).toBe(value(text, values));
        expect(canonical(again)).toBe(again);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  test("has no bracket that could go, but for those around a sign", () => {
    fc.assert(
      fc.property(anyFormula, (text) => {
        const again = canonical(text);
        for (const bare of textsWithoutOneBracket(again)) expect(canonicalOrNone(bare)).not.toBe(again);
      }),
      { seed: 1 },
    );
  });

  test("with plain numbers put in, signs included, is a formula of the same value", () => {
    fc.assert(
      fc.property(
        anyFormula,
        fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 3, maxLength: 3 }),
        (text, [a = 0, b_1 = 0, eta = 0]) => {
          const values: Record<string, number> = { a: a + 0, b_1: b_1 + 0, eta: eta + 0 };
          const put = withNumbers(parseFormula(text), (name) => String(values[name]));
          expect(value(put)).toBe(value(text, values));
        },
      ),
      { seed: 1, numRuns: 300 },
    );
  });

  test("the working of a receiver reads as a person would write it", () => {
    const shown: Record<string, string> = {
      V: "100 L",
      p_1: "800 kPa",
      p_2: "600 kPa",
      p_a: "101.3 kPa",
      n: "1.2",
      p_ref: "100 kPa",
      q: "2 L/s",
    };
    expect(withNumbers(parseFormula(holdTime), (name) => shown[name] ?? "?")).toBe(
      "100 L * (800 kPa + 101.3 kPa) * (1 - ((600 kPa + 101.3 kPa) / (800 kPa + 101.3 kPa))^(1 / 1.2)) / (100 kPa * 2 L/s)",
    );
  });

  test.each([
    ["a - b", "3 m - (-5 mm)"],
    ["a + b", "3 m + (-5 mm)"],
    ["b + a", "-5 mm + 3 m"],
    ["b^2", "(-5 mm)^2"],
    ["a^2", "(3 m)^2"],
    ["a / v", "3 m / (2 m/s)"],
    ["v / a", "2 m/s / 3 m"],
    ["v * t", "2 m/s * 4 s"],
    ["t * v", "4 s * 2 m/s"],
    ["-a", "-3 m"],
    ["-b", "-(-5 mm)"],
    ["q * 2", "(60 to 240 L/min) * 2"],
    ["max(q, a)", "max(60 to 240 L/min, 3 m)"],
    ["sum(T^2)", "sum(([1, 2] N*m)^2)"],
    ["a^k", "(3 m)^-0.3"],
  ])("values with units get brackets only where they could be misread: %s", (text, expected) => {
    const shown: Record<string, string> = { a: "3 m", b: "-5 mm", v: "2 m/s", t: "4 s", q: "60 to 240 L/min", T: "[1, 2] N*m", k: "-0.3" };
    expect(withNumbers(parseFormula(text), (name) => shown[name] ?? "?")).toBe(expected);
  });
});
