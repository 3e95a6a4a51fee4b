import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { agreesButForAngle, dimensionOfFormula, parseFormula } from "./formula.ts";
import { type Dimension, dimensionOf } from "./unit.ts";

const holdTime = "V * (p_1 + p_a) * (1 - ((p_2 + p_a) / (p_1 + p_a))^(1/n)) / (p_ref * q)";

describe("the dimension of a formula", () => {
  const pure: Dimension = [0, 0, 0, 0, 0, 0, 0];
  const base = {
    m: [1, 0, 0, 0, 0, 0, 0],
    kg: [0, 1, 0, 0, 0, 0, 0],
    s: [0, 0, 1, 0, 0, 0, 0],
    A: [0, 0, 0, 1, 0, 0, 0],
    K: [0, 0, 0, 0, 1, 0, 0],
  };
  const derived = {
    rad: [0, 0, 0, 0, 0, 1, 0],
    money: [0, 0, 0, 0, 0, 0, 1],
    N: [1, 1, -2, 0, 0, 0, 0],
    Pa: [-1, 1, -2, 0, 0, 0, 0],
    W: [2, 1, -3, 0, 0, 0, 0],
  };
  const dims: Record<string, Dimension> = {
    ...base,
    ...derived,
    one: pure,
    Nm: [2, 1, -2, 0, 0, 0, 0],
    w: [0, 0, -1, 0, 0, 1, 0],
    f: [0, 0, -1, 0, 0, 0, 0],
    m3: [3, 0, 0, 0, 0, 0, 0],
    ohm: [2, 1, -3, -2, 0, 0, 0],
    c_p: [2, 0, -2, 0, -1, 0, 0],
  };
  const dimension = (text: string): Dimension => dimensionOfFormula(parseFormula(text), dims);
  const d = (name: string): Dimension => dims[name] ?? [];

  test("the hold time of a receiver is a time", () => {
    const given = { V: d("m3"), p_1: d("Pa"), p_2: d("Pa"), p_a: d("Pa"), n: pure, p_ref: d("Pa"), q: [3, 0, -1, 0, 0, 0, 0] };
    expect(agreesButForAngle(dimensionOfFormula(parseFormula(holdTime), given), d("s"))).toBe(true);
    const forgotten = holdTime.replace("/ (p_ref * q)", "/ q");
    expect(agreesButForAngle(dimensionOfFormula(parseFormula(forgotten), given), d("s"))).toBe(false);
  });

  test.each([
    ["N * m", "Nm"],
    ["kg * m / s^2", "N"],
    ["Nm * w", "W"],
    ["2 * pi * f", "w"],
    ["m * rad", "m"],
    ["rad + 1", "rad"],
    ["m * sin(rad)", "m"],
    ["m * sin(one)", "m"],
    ["asin(m / m)", "rad"],
    ["atan2(m, m)", "rad"],
    ["atan2(m, m) - asin(one) / 2", "one"],
    ["sqrt(m * m)", "m"],
    ["(m^2)^(1/2)", "m"],
    ["(m^3)^(1/3)", "m"],
    ["m^0.1 * m^0.2 * m^0.7", "m"],
    ["m^(-1) * m3 / m", "m"],
    ["(N / N)^(1/one)", "one"],
    ["hypot(m, m, 3 * m)", "m"],
    ["hypot(ohm, w * ohm / f)", "ohm"],
    ["A^2 * ohm", "W"],
    ["kg * c_p * K / s", "W"],
    ["max(m, 0)", "m"],
    ["0 + m", "m"],
    ["m - 0", "m"],
    ["if(m > 0, s, 0)", "s"],
    ["if(s < 2 * s, m, m3 / m^2)", "m"],
    ["sqrt(sum(Nm^2 * s) / sum(s))", "Nm"],
    ["count(m)", "one"],
    ["mean(m) + min(m)", "m"],
    ["abs(-m)", "m"],
    ["ln(m / m) + exp(one) + log10(2)", "one"],
    ["ceil(m / m)", "one"],
    ["money / s * s", "money"],
    ["0", "one"],
  ])("%s fits %s", (text, expected) => {
    expect(agreesButForAngle(dimension(text), d(expected))).toBe(true);
  });

  test.each([
    ["m + s", "dimension-mismatch", 0, "m + s"],
    ["s * (m - m^2)", "dimension-mismatch", 5, "m - m^2"],
    ["1 - Pa", "dimension-mismatch", 0, "1 - Pa"],
    ["m + rad", "dimension-mismatch", 0, "m + rad"],
    ["m * w + s", "dimension-mismatch", 0, "m * w + s"],
    ["2 * max(m, N)", "dimension-mismatch", 4, "max(m, N)"],
    ["hypot(m, s)", "dimension-mismatch", 0, "hypot(m, s)"],
    ["atan2(m, s)", "dimension-mismatch", 0, "atan2(m, s)"],
    ["if(m < s, one, one)", "dimension-mismatch", 0, "if(m < s, one, one)"],
    ["if(m < m, one, s)", "dimension-mismatch", 0, "if(m < m, one, s)"],
    ["2 * sin(m)", "dimension-of-argument", 4, "sin(m)"],
    ["exp(s)", "dimension-of-argument", 0, "exp(s)"],
    ["ln(Pa)", "dimension-of-argument", 0, "ln(Pa)"],
    ["sin(w)", "dimension-of-argument", 0, "sin(w)"],
    ["ceil(m)", "dimension-of-argument", 0, "ceil(m)"],
    ["2^m", "dimension-of-exponent", 2, "2^m"],
    ["m^s", "dimension-of-exponent", 2, "m^s"],
    ["m^one", "dimension-of-exponent", 2, "m^one"],
    ["1 + (Pa)^(1/one)", "dimension-of-exponent", 10, "Pa^(1 / one)"],
    ["m^(1/0)", "dimension-of-exponent", 3, "m^(1 / 0)"],
  ])("%s is refused: %s at %d, naming %s", (text, code, offset, part) => {
    const error = { code, offset, message: expect.stringContaining(`'${part}'`) };
    expect(() => dimension(text)).toThrow(expect.objectContaining(error));
  });

  test("a factor planted anywhere in a product is seen in the result", () => {
    const names = Object.keys(dims).filter((name) => !agreesButForAngle(d(name), pure));
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...names), { minLength: 1, maxLength: 6 }), fc.constantFrom(...names), (factors, planted) => {
        const good = factors.join(" * ");
        expect(agreesButForAngle(dimension(`${good} * ${planted}`), dimension(good))).toBe(false);
        expect(agreesButForAngle(dimension(`${good} * ${planted} / ${planted}`), dimension(good))).toBe(true);
      }),
      { seed: 1 },
    );
  });

  test("base units stand in the order of the unit table", () => {
    expect(agreesButForAngle(dimensionOf("rad"), pure)).toBe(true);
    for (const unit of ["m", "kg", "s", "A", "K"]) {
      expect(agreesButForAngle(dimensionOf(unit), pure)).toBe(false);
      const act = (): Dimension => dimensionOfFormula(parseFormula("1 + x"), { x: dimensionOf(unit) });
      expect(act).toThrow(expect.objectContaining({ code: "dimension-mismatch", message: expect.stringMatching(new RegExp(` ${unit}$`)) }));
    }
  });
});
