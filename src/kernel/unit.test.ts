import fc from "fast-check";
import { expect, test } from "vitest";
import {
  type Measure,
  dimensionOf,
  fromSI,
  kindInfo,
  kindNames,
  kindOf,
  power,
  readUnit,
  sameDimension,
  times,
  toSI,
  unitNames,
  unitOf,
} from "./unit.ts";

// NIST SP 811 (2008) appendix B.8, seven figures each.
test.each([
  ["psi", 6.894757e3],
  ["hp", 7.456999e2],
  ["PS", 7.354988e2],
  ["lbf", 4.448222],
  ["ozf", 2.780139e-1],
  ["kgf", 9.80665],
  ["lbf*ft", 1.355818],
  ["lbf*in", 1.129848e-1],
  ["ozf*in", 7.061552e-3],
  ["lb", 4.535924e-1],
  ["oz", 2.834952e-2],
  ["lb*in2", 2.926397e-4],
  ["lb*ft2", 4.214011e-2],
  ["lb/in3", 2.76799e4],
  ["kgf/cm2", 9.80665e4],
  ["gal", 3.785412e-3],
  ["cfm", 4.719474e-4],
  ["kcmil", 5.067075e-7],
  ["sfm", 5.08e-3],
  ["mil", 2.54e-5],
  ["cSt", 1e-6],
  ["rpm", 1.047198e-1],
  ["deg", 1.745329e-2],
  ["arcmin", 2.908882e-4],
  ["arcsec", 4.848137e-6],
  ["kWh", 3.6e6],
  ["yr", 3.1536e7],
  ["bar", 1e5],
])("one %s is %d in SI", (unit, si) => {
  expect(toSI(1, unitOf(unit)) / si).toBeCloseTo(1, 6);
});

test("a pound per square inch is exact to the last digits of a double", () => {
  // 0.45359237 * 9.80665 / 0.0254^2, worked to 16 figures by hand
  expect(toSI(1, unitOf("psi")) / 6894.757293168361).toBeCloseTo(1, 14);
  expect(toSI(1, unitOf("hp")) / 745.6998715822702).toBeCloseTo(1, 14);
});

test("a lead of 5.08 mm is 0.00508 m, without a trailing 000001", () => {
  expect(toSI(5.08, unitOf("mm"))).toBe(0.00508);
  expect(toSI(0.2, unitOf("in"))).toBe(0.00508);
  expect(fromSI(0.00508, unitOf("mm"))).toBe(5.08);
  expect(toSI(1, unitOf("tenths"))).toBe(0.00000254);
});

test.each([
  ["kg*m2", "kg*m^2"],
  ["dm3/(s*bar)", "L/s/bar"],
  ["um/(m*K)", "um/m/K"],
  ["N/um", "kN/mm"],
  ["/h", "1/h"],
  ["s-1", "1/s"],
  ["s^-1", "Hz"],
  ["s\u207b\u00b9", "1/s"],
  ["mm\u00b2", "mm2"],
  ["\u00b5m", "um"],
  ["\u03bcm", "um"],
  ["k\u03a9", "kohm"],
  ["M\u2126", "Mohm"],
  ["N\u00b7m", "N*m"],
  ["\u00b0", "deg"],
  ["W/K", "W/degC"],
  ["mL", "cc"],
  ["l/min", "L/min"],
  ["N/mm2", "MPa"],
  ["lb*in*s2", "lb*in*s^2"],
  ["tenths", "mil/10"],
])("%s and %s are one unit", (a, b) => {
  const [x, y] = [unitOf(a), unitOf(b)];
  expect(sameDimension(x.dimension, y.dimension)).toBe(true);
  expect(toSI(1, x, true) / toSI(1, y, true)).toBeCloseTo(1, 14);
});

test("an angle counts: a shaft at 60 rpm is no 1 Hz", () => {
  expect(sameDimension(dimensionOf("rpm"), dimensionOf("Hz"))).toBe(false);
  expect(sameDimension(dimensionOf("rpm"), dimensionOf("rad/s"))).toBe(true);
});

test("temperatures have a zero of their own, differences have none", () => {
  expect(toSI(77, unitOf("degF"))).toBeCloseTo(298.15, 10); // 25 degC
  expect(toSI(-40, unitOf("degF"))).toBeCloseTo(toSI(-40, unitOf("degC")), 10);
  expect(toSI(9, unitOf("degF"), true)).toBeCloseTo(5, 12);
  expect(toSI(1, unitOf("W/degF"))).toBeCloseTo(1.8, 12);
});

test("on a plate lb*ft is a force, in an inertia lb*in2 is a mass", () => {
  const reading = readUnit("lb*ft", "force");
  expect(reading.ok && sameDimension(reading.unit.dimension, dimensionOf("N*m"))).toBe(true);
  expect(sameDimension(dimensionOf("lb*in2"), dimensionOf("kg*m2"))).toBe(true);
});

test("pressures and air keep the word that says what they are counted from", () => {
  const base = (text: string): unknown => unitOf(text).base;
  expect([base("psia"), base("psig"), base("bar abs"), base("bar gauge"), base("bar")]).toEqual([
    "abs",
    "gauge",
    "abs",
    "gauge",
    undefined,
  ]);
  expect([base("L/min ANR"), base("cfm inlet"), base("cfm compressed"), base("cfm")]).toEqual(["ANR", "inlet", "compressed", undefined]);
});

test.each([
  ["MM", "mm"],
  ["kpa", "kPa"],
  ["RPM", "rpm"],
  ["kw", "kW"],
  ["degc", "degC"],
  ["ohms", "ohm"],
  ["kgg*cm2", "kg*cm2"],
])("%s is no unit; the nearest is %s", (typed, meant) => {
  const reading = readUnit(typed);
  expect(reading.ok).toBe(false);
  expect(reading.ok ? undefined : reading.nearest).toBe(meant);
});

test("when two units differ from the word in case only, both are named and none is preferred", () => {
  const reading = readUnit("MOHM");
  expect(reading.ok ? [] : reading.either).toEqual(["mohm", "Mohm"]);
  expect(reading.ok ? "" : reading.nearest).toBeUndefined();
});

test.each(["", " ", "(", "kg**m", "/", "kg/", "5 m", "m^", "__proto__", "constructor", "toString", "((((((((((m))))))))))))"])(
  "%j is no unit",
  (text) => {
    expect(readUnit(text).ok).toBe(false);
  },
);

test("a hundred thousand letters are no unit", () => {
  expect(readUnit("m".repeat(100_000)).ok).toBe(false);
  expect(readUnit("(".repeat(100_000)).ok).toBe(false);
});

test("unit text of a programmer that is none stops the program", () => {
  expect(() => dimensionOf("furlong")).toThrow(/unit-unknown/);
});

test("no unit name stands for two things", () => {
  expect(new Set(unitNames).size).toBe(unitNames.length);
});

test("products, quotients and powers of units multiply, divide and raise what they measure", () => {
  const unit = fc.constantFrom(...unitNames.filter((name) => !/^(?:deg[CF]|psi[ag]|bar[ag]|%)$/.test(name)));
  fc.assert(
    fc.property(unit, unit, fc.integer({ min: 1, max: 4 }), (a, b, n) => {
      const [x, y] = [unitOf(a), unitOf(b)];
      const size = (text: string): number => toSI(1, unitOf(text));
      expect(sameDimension(dimensionOf(`${a}*${b}`), times(x.dimension, y.dimension))).toBe(true);
      expect(sameDimension(dimensionOf(`${a}/${b}^${n}`), times(x.dimension, power(y.dimension, -n)))).toBe(true);
      expect(size(`${a}*${b}`) / (size(a) * size(b))).toBeCloseTo(1, 12);
      expect(size(`${a}/(${b}*s)`) / (size(a) / size(b))).toBeCloseTo(1, 12);
    }),
  );
});

test("roots of units come back when they are squared", () => {
  expect(sameDimension(power(power(dimensionOf("A2*s"), 0.5), 2), dimensionOf("A2*s"))).toBe(true);
  expect(sameDimension(dimensionOf("A*s^0.5/mm2"), times(power(dimensionOf("A2*s"), 0.5), power(dimensionOf("m"), -2)))).toBe(true);
});

test("each kind is shown in units of its own dimension", () => {
  for (const kind of kindNames) {
    const { unit, metric, inch } = kindInfo(kind);
    for (const shown of [metric, inch]) expect(sameDimension(dimensionOf(shown || "1"), dimensionOf(unit)), kind).toBe(true);
  }
});

test("a declared measure has one kind: the unit's own, the usual one, or the one named", () => {
  expect(kindOf({ unit: "N*m" })).toBe("torque");
  expect(kindOf({ unit: "J" })).toBe("energy");
  expect(kindOf({ unit: "m" })).toBe("length");
  expect(kindOf({ unit: "m", kind: "fine-length" })).toBe("fine-length");
  expect(kindOf({ unit: "Pa", kind: "gauge-pressure" })).toBe("gauge-pressure");
  // @ts-expect-error a pressure says what it is counted from
  const bare: Measure = { unit: "Pa" };
  // @ts-expect-error a stiffness is no kind of pressure
  const wrong: Measure = { unit: "Pa", kind: "stiffness" };
  // @ts-expect-error nobody has such a unit
  const none: Measure = { unit: "Liters" };
  // @ts-expect-error a torque has no kinds to choose from
  const more: Measure = { unit: "N*m", kind: "energy" };
  expect([bare, wrong, more].map((m) => m.unit)).toEqual(["Pa", "Pa", "N*m"]);
  expect(() => kindOf(none)).toThrow(/unit-unknown/);
});
