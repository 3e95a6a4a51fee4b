import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseFormula, toMathML } from "./formula.ts";

/** The markup inside `math`, with the invisible operators and the room between factors made readable. */
const inside = (text: string, numbers?: (name: string) => string): string =>
  toMathML(parseFormula(text), numbers === undefined ? {} : { numbers })
    .replace(/^<math displaystyle="true">(.*)<\/math>$/, "$1")
    .replaceAll('<mo>\u2062</mo><mspace width="0.167em"></mspace>', " ")
    .replaceAll("<mo>\u2062</mo>", "~")
    .replaceAll("<mo>\u2061</mo>", "")
    .replaceAll('<mspace width="0.167em"></mspace>', "_")
    .replaceAll(' mathvariant="normal"', "!");

/** Only what is seen, tags left out. */
const seen = (text: string, numbers?: (name: string) => string): string => inside(text, numbers).replace(/<[^>]*>/g, "");

/** How many children an element must have, where MathML says so. */
const arity: Record<string, number> = { mfrac: 2, msup: 2, msub: 2, msubsup: 3 };

/** What is wrong with the markup: a tag that is not closed, a bare &, an element with the wrong number of children. */
function faults(markup: string): string[] {
  const wrong: string[] = [];
  const open: { name: string; children: number }[] = [];
  for (const [, slash, name = "", text = ""] of markup.matchAll(/<(\/?)([a-z]+)(?: [a-z]+="[^"<&]*")*>|([^<]+|<)/g)) {
    if (text !== "" || name === "") {
      if (/<|>|&(?!amp;|lt;|gt;|quot;)/.test(text)) wrong.push(`text ${text}`);
      if (!["mi", "mn", "mo", "mtext"].includes(open.at(-1)?.name ?? "")) wrong.push(`text in ${open.at(-1)?.name}`);
    } else if (slash === "") {
      const parent = open.at(-1);
      if (parent !== undefined) parent.children++;
      open.push({ name, children: 0 });
    } else {
      const closed = open.pop();
      if (closed?.name !== name) wrong.push(`${closed?.name} closed as ${name}`);
      if (closed !== undefined && (arity[name] ?? closed.children) !== closed.children) wrong.push(`${name} of ${closed.children}`);
    }
  }
  return [...wrong, ...open.map(({ name }) => `${name} left open`)];
}

describe("a formula on paper", () => {
  test.each([
    ["V", "<mi>V</mi>"],
    ["T_bd", "<msub><mi>T</mi><mi!>bd</mi></msub>"],
    ["R_1", "<msub><mi>R</mi><mn>1</mn></msub>"],
    ["p_a", "<msub><mi>p</mi><mi!>a</mi></msub>"],
    ["p_1_max", "<msub><mi>p</mi><mrow><mn>1</mn><mo>,</mo><mi!>max</mi></mrow></msub>"],
    ["eta_b", "<msub><mi>η</mi><mi!>b</mi></msub>"],
    ["w_s", "<msub><mi>w</mi><mi!>s</mi></msub>"],
    ["w_phi", "<msub><mi>w</mi><mi!>φ</mi></msub>"],
    ["sigma", "<mi>σ</mi>"],
    ["omega", "<mi>ω</mi>"],
    ["Delta_p", "<msub><mi>Δ</mi><mi!>p</mi></msub>"],
    ["pi", "<mi!>π</mi>"],
    ["TIR", "<mi>TIR</mi>"],
    ["a_", "<mi>a</mi>"],
  ])("%s is set as a symbol", (text, expected) => {
    expect(inside(text)).toBe(expected);
  });

  test.each([
    ["alpha beta gamma delta epsilon zeta eta theta iota kappa lambda mu", "αβγδεζηθικλμ"],
    ["nu xi omicron rho sigma tau upsilon phi chi psi omega", "νξορστυφχψω"],
    ["Gamma Theta Lambda Sigma Phi Psi Omega", "ΓΘΛΣΦΨΩ"],
  ])("%s are Greek letters", (names, expected) => {
    expect(
      names
        .split(" ")
        .map((name) => seen(name))
        .join(""),
    ).toBe(expected);
  });

  test("products leave room between symbols, none before a bracket, and a dot between figures", () => {
    expect(seen("a * b")).toBe("a b");
    expect(seen("2 * pi * f")).toBe("2 π f");
    expect(seen("2 * (a + b)")).toBe("2~(a+b)");
    expect(seen("(a + b) * c")).toBe("(a+b)~c");
    expect(seen("2 * 3")).toBe("2⋅3");
    expect(seen("a * 2")).toBe("a⋅2");
    expect(seen("2 * (1/3)")).toBe("2⋅13"); // no mixed number: the fraction is an element of its own
  });

  test("brackets stand only where the eye needs them", () => {
    expect(seen("a + (b + c)")).toBe("a+b+c");
    expect(seen("a - (b + c)")).toBe("a−(b+c)");
    expect(seen("a - (b * c)")).toBe("a−b c");
    expect(seen("a * (b * c)")).toBe("a b c");
    expect(seen("a + (-b)")).toBe("a+(−b)");
    expect(seen("-(a + b)")).toBe("−(a+b)");
    expect(seen("-(a * b)")).toBe("−a b");
    expect(seen("-(-a)")).toBe("−(−a)");
    expect(inside("(a + b) / (c + d)")).toBe(
      "<mfrac><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow><mrow><mi>c</mi><mo>+</mo><mi>d</mi></mrow></mfrac>",
    );
    expect(seen("(a / b)^2")).toBe("(ab)2");
    expect(seen("(a^b)^c")).toBe("(ab)c");
    expect(seen("(a * b)^2")).toBe("(a b)2");
    expect(seen("sqrt(a + b) * c")).toBe("a+b c");
    expect(seen("sum(a * b) * c")).toBe("(∑a b)~c");
    expect(seen("sum(a + b) + c")).toBe("∑(a+b)+c");
    expect(seen("c - sum(a)")).toBe("c−∑a");
    expect(seen("sin(a)^2")).toBe("(sin(a))2");
  });

  test("powers stand beside indices, small quotients on one line above", () => {
    expect(inside("x^2")).toBe("<msup><mi>x</mi><mn>2</mn></msup>");
    expect(inside("R_1^2")).toBe("<msubsup><mi>R</mi><mn>1</mn><mn>2</mn></msubsup>");
    expect(inside("x^(1/n)")).toBe("<msup><mi>x</mi><mrow><mn>1</mn><mo>/</mo><mi>n</mi></mrow></msup>");
    expect(inside("x^((k - 1)/k)")).toBe("<msup><mi>x</mi><mfrac><mrow><mi>k</mi><mo>−</mo><mn>1</mn></mrow><mi>k</mi></mfrac></msup>");
  });

  test("functions are upright or have the sign that paper has for them", () => {
    expect(inside("sin(phi)")).toBe("<mrow><mi!>sin</mi><mrow><mo>(</mo><mrow><mi>φ</mi></mrow><mo>)</mo></mrow></mrow>");
    expect(inside("sqrt(x)")).toBe("<msqrt><mrow><mi>x</mi></mrow></msqrt>");
    expect(seen("asin(x) + atan2(y, x)")).toBe("arcsin(x)+arctan2(y,x)");
    expect(seen("abs(x) + ceil(x) + floor(x)")).toBe("|x|+⌈x⌉+⌊x⌋");
    expect(inside("hypot(R_th, a + b)")).toBe(
      "<msqrt><mrow><msubsup><mi>R</mi><mi!>th</mi><mn>2</mn></msubsup><mo>+</mo><msup><mrow><mo>(</mo><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow><mo>)</mo></mrow><mn>2</mn></msup></mrow></msqrt>",
    );
    expect(inside("log10(x)")).toContain("<msub><mi!>log</mi><mn>10</mn></msub>");
    expect(seen("if(a <= b, x, y)")).toBe("{xif\u00a0a≤byotherwise");
  });

  test("powers of ten are written out", () => {
    expect(seen("1e-7")).toBe("10−7");
    expect(seen("2.5e+3 * x")).toBe("2.5×103 x");
    expect(seen("(2e3)^2")).toBe("(2×103)2");
  });

  test("with numbers put in, figures stand apart from upright units", () => {
    const shown: Record<string, string> = {
      V: "100 L",
      p: "800 kPa",
      p_a: "101.3 kPa",
      J: "2 kg*m2",
      x: "-5 mm",
      q: "60 to 240 L/min",
      n: "1.4",
      h: "3 mmH2O",
      never: "never",
    };
    const numbers = (name: string): string => shown[name] ?? "?";
    expect(inside("V", numbers)).toBe("<mrow><mn>100</mn>_<mtext>L</mtext></mrow>");
    expect(seen("V * (p + p_a)", numbers)).toBe("100_L⋅(800_kPa+101.3_kPa)");
    expect(seen("V * J", numbers)).toBe("100_L⋅2_kg⋅m²");
    expect(seen("2 * pi * V", numbers)).toBe("2 π⋅100_L");
    expect(seen("p - x", numbers)).toBe("800_kPa−(−5_mm)");
    expect(seen("p * x", numbers)).toBe("800_kPa⋅(−5_mm)");
    expect(seen("V^2", numbers)).toBe("(100_L)2");
    expect(seen("q * V", numbers)).toBe("(60_to 240 L/min)⋅100_L");
    expect(inside("2^(1/n)", numbers)).toBe("<msup><mn>2</mn><mrow><mn>1</mn><mo>/</mo><mn>1.4</mn></mrow></msup>");
    expect(seen("h", numbers)).toBe("3_mmH2O");
    expect(inside("never", numbers)).toBe("<mtext>never</mtext>");
  });

  test("whatever a shown value says, it cannot break out of the markup", () => {
    expect(inside("a", () => '<b class="x">&')).toBe("<mtext>&lt;b class=&quot;x&quot;&gt;&amp;</mtext>");
    expect(faults(toMathML(parseFormula("a + 2"), { numbers: () => "5 </mtext><script>" }))).toEqual([]);
  });
});

describe("markup", () => {
  test("the checker of this test finds planted faults", () => {
    expect(faults("<mrow><mi>a</mi>")).toEqual(["mrow left open"]);
    expect(faults("<mrow><mi>a</mrow></mi>")).toHaveLength(2);
    expect(faults("<mfrac><mi>a</mi></mfrac>")).toEqual(["mfrac of 1"]);
    expect(faults("<mrow>a</mrow>")).toEqual(["text in mrow"]);
    expect(faults("<mi>a & b</mi>")).toEqual(["text a & b"]);
  });

  test("is well formed for every formula, with symbols and with numbers", () => {
    const anyFormula = fc
      .letrec<{ tree: string }>((tie) => ({
        tree: fc.oneof(
          { maxDepth: 6, depthSize: "medium" },
          fc.constantFrom("a", "b_1", "eta_max_2", "pi", "2", "1e-3"),
          fc.tuple(tie("tree"), fc.constantFrom("+", "-", "*", "/", "^"), tie("tree")).map(([a, op, b]) => `(${a})${op}(${b})`),
          tie("tree").map((a) => `-(${a})`),
          fc.tuple(fc.constantFrom("sqrt", "abs", "log10", "sum", "ceil", "mean"), tie("tree")).map(([f, a]) => `${f}(${a})`),
          fc.tuple(fc.constantFrom("hypot", "max", "atan2"), tie("tree"), tie("tree")).map(([f, a, b]) => `${f}(${a},${b})`),
          fc.tuple(tie("tree"), tie("tree")).map(([a, b]) => `if(${a}>=${b},${a},${b})`),
        ),
      }))
      .tree.filter((text) => text.length < 500);
    const shown = fc.oneof(fc.string(), fc.constantFrom("5", "-5 mm", "2e-3 kg*m2", "a < b & c", "60 to 80 °C"));
    fc.assert(
      fc.property(anyFormula, shown, (text, value) => {
        const formula = parseFormula(text);
        expect(faults(toMathML(formula))).toEqual([]);
        expect(faults(toMathML(formula, { numbers: () => value }))).toEqual([]);
      }),
      { seed: 1, numRuns: 300 },
    );
  });
});
