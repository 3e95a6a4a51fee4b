import fc from "fast-check";
import { expect, test } from "vitest";
import { prettyUnit, show, showBand, write } from "./display.ts";
import { readQuantity } from "./quantity.ts";
import { type Kind, kindInfo, kindNames, toSI, unitNames, unitOf } from "./unit.ts";

const metric = { units: "metric" } as const;
const inch = { units: "inch" } as const;

test.each<[number, Kind, string, string]>([
  [0.00508, "length", "5.08 mm", "0.2 in"],
  [0.0000254, "fine-length", "25.4 um", "1 thou"],
  [68.0212, "time", "68.02 s", "68.02 s"],
  [745.6998715822702, "power", "0.7457 kW", "1 hp"],
  [298.15, "temperature", "25 degC", "77 degF"],
  [5, "temperature-difference", "5 K", "9 degF"],
  [760e3, "gauge-pressure", "7.6 bar gauge", "110.2 psi gauge"],
  [101325, "absolute-pressure", "1.013 bar abs", "14.7 psi abs"],
  [0.05, "share", "5 %", "5 %"],
  [12345678, "count", "12345678", "12345678"],
  [1.5, "ratio", "1.5", "1.5"],
  [0.877, "money", "0.88 USD", "0.88 USD"],
  [-0, "position", "0 mm", "0 in"],
])("%d of a %s is %s, or %s", (si, kind, inMetric, inInch) => {
  expect(show(si, kind, metric).text).toBe(inMetric);
  expect(show(si, kind, inch).text).toBe(inInch);
});

test("pressures follow the gauge on the wall, money the shop", () => {
  expect(show(700e3, "gauge-pressure", { ...metric, pressure: "psi" }).text).toBe("101.5 psi gauge");
  expect(show(700e3, "pressure-difference", { ...inch, pressure: "kPa" }).text).toBe("700 kPa");
  expect(show(28 / 3600, "money-per-time", { ...metric, currency: "EUR" }).text).toBe("28 EUR/h");
});

test("the unit of a kind never changes with the size of the value", () => {
  fc.assert(
    fc.property(fc.constantFrom(...kindNames), fc.double({ min: 1e-9, max: 1e9 }), fc.double({ min: 1e-9, max: 1e9 }), (kind, a, b) => {
      expect(show(a, kind, metric).unit).toBe(show(b, kind, metric).unit);
    }),
  );
});

test.each<[number, number, Kind, string]>([
  [0.026, 0.035, "length", "26 to 35 mm"],
  [0.02604, 0.0354, "length", "26.0 to 35.4 mm"],
  [1.27, 1.41, "ratio", "1.27 to 1.41"],
  [0.0000169, 0.000026, "fine-length", "16.9 to 26.0 um"],
  [1234, 5678, "time", "1200 to 5700 s"],
  [-0.0004, 0.01, "position", "0 to 10 mm"],
  [4, 4, "time", "4 s"],
])("a band from %d to %d of a %s is %s", (low, high, kind, text) => {
  expect(showBand(low, high, kind, metric).text).toBe(text);
});

test("the ends of a band are rounded by no more than a twentieth of its spread", () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), fc.double({ min: 1e-3, max: 10, noNaN: true }), (low, share) => {
      const high = low * (1 + share);
      const [a, b] = showBand(low, high, "ratio", metric).number.split(" to ").map(Number);
      expect(Math.abs((a ?? NaN) - low)).toBeLessThanOrEqual(0.0501 * (high - low));
      expect(Math.abs((b ?? NaN) - high)).toBeLessThanOrEqual(0.0501 * (high - low));
    }),
  );
});

test("print sets units as print does, and the files read them back", () => {
  expect(prettyUnit("N*m")).toBe("N\u00b7m");
  expect(prettyUnit("dm3/(s*bar)")).toBe("dm\u00b3/(s\u00b7bar)");
  expect(prettyUnit("um/(m*K)")).toBe("\u00b5m/(m\u00b7K)");
  expect(prettyUnit("kg*cm2")).toBe("kg\u00b7cm\u00b2");
  expect([prettyUnit("degC"), prettyUnit("deg"), prettyUnit("kohm"), prettyUnit("mohm/m")]).toEqual([
    "\u00b0C",
    "\u00b0",
    "k\u03a9",
    "m\u03a9/m",
  ]);
  const shown = kindNames.flatMap((kind) => [kindInfo(kind).metric, kindInfo(kind).inch]).filter(Boolean);
  for (const unit of [...unitNames, ...shown]) {
    const [plain, pretty] = [unitOf(unit), unitOf(prettyUnit(unit))];
    expect({ ...pretty, text: "" }).toEqual({ ...plain, text: "" });
  }
});

test("what is written into a file is read back to 12 figures, in every kind and unit", () => {
  const kinds = kindNames.filter((kind) => !kindInfo(kind).whole);
  fc.assert(
    fc.property(fc.constantFrom(...kinds), fc.boolean(), fc.double({ min: 1e-3, max: 1e6, noNaN: true }), (kind, isMetric, number) => {
      const unit = isMetric ? kindInfo(kind).metric : kindInfo(kind).inch;
      const si = unit === "" ? number : toSI(number, unitOf(unit), kind !== "temperature");
      const reading = readQuantity(write(si, kind, unit), kind);
      expect(reading.ok && reading.notes).toEqual([]);
      expect(reading.ok ? Math.abs(reading.nominal / si - 1) : 1).toBeLessThan(1e-11);
    }),
  );
});

test("a pressure or an amount of air is written with what it is counted from", () => {
  expect(write(101325, "absolute-pressure", "kPa")).toBe("101.325 kPa abs");
  expect(write(0, "gauge-pressure", "bar abs")).toBe("1.01325 bar abs");
  expect(write(0, "gauge-pressure", "bar abs", 95e3)).toBe("0.95 bar abs");
  expect(write(0.001, "free-air-flow", "L/min inlet")).toBe("60 L/min ANR");
  expect(write(0.001, "free-air-flow", "L/min")).toBe("60 L/min ANR");
});

test("a torque is written in the pounds of its plate, a wire in square millimetres", () => {
  expect(write(12.2023615349826, "torque", "lb*ft")).toBe("9 lb*ft");
  expect(write(6e-6, "wire-size", "AWG")).toBe("6 mm2");
});

test("a value cannot be written in a unit that measures something else", () => {
  expect(() => write(1, "length", "degC")).toThrow(/unit-mismatch/);
});
