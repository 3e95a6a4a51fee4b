import { expect, test } from "vitest";
import * as constants from "./constants.ts";
import { dimensionOf, kindOf, kinds, sameDimension } from "./unit.ts";

const { copperResistivity, copperTemperatureCoefficient, copperInverseCoefficient, copperVolumetricHeat, airStates } = constants;

test("copper of the standard has 58 m of length for an ohm and a square millimetre", () => {
  expect(copperResistivity.value * 58).toBeCloseTo(1e-6, 10); // IEC 60028: 1/58 ohm*mm2/m
});

test("copper's coefficient at 20 degC and its inverse at 0 degC tell the same rise", () => {
  // 1/(234.5 + 20) = 0.003929; the standard rounds to 0.00393
  expect(1 / (copperInverseCoefficient.value + 20)).toBeCloseTo(copperTemperatureCoefficient.value, 5);
});

test("a copper conductor in PVC, 70 to 160 degC, has the k of 115 that IEC 60364-5-54 tables", () => {
  const [beta, rho] = [copperInverseCoefficient.value, copperResistivity.value];
  const k = Math.sqrt(((copperVolumetricHeat.value * (beta + 20)) / rho) * Math.log((beta + 160) / (beta + 70)));
  expect(k / 1e6).toBeCloseTo(115, 0); // A*s^0.5/mm2
});

test("a valve of Cv 1 measured at a small drop has a C inside the band, whatever its critical ratio between 0.2 and 0.5", () => {
  // ANSI/NFPA T3.21.3: Q [dm3/s] = 114.5 Cv sqrt(dp p2/T1), here 6.5 to 6.4 bar at 297 K; ISO 6358 with the same flow gives C.
  const [p1, p2, T1] = [6.5, 6.4, 297];
  const Q = 114.5 * Math.sqrt(((p1 - p2) * p2) / T1);
  for (const b of [0.2, 0.3, 0.4, 0.5]) {
    const C = Q / (p1 * Math.sqrt(293.15 / T1) * Math.sqrt(1 - ((p2 / p1 - b) / (1 - b)) ** 2));
    expect(C).toBeGreaterThan(constants.conductancePerCv.low);
    expect(C).toBeLessThan(constants.conductancePerCv.high);
  }
});

test("standard air at 60 degF is 2.9 % more air than the same volume of ANR", () => {
  const { pressure, temperature } = airStates["standard-60"];
  expect((pressure / 100e3) * (293.15 / temperature)).toBeCloseTo(1.0288, 4); // 1.01325 * 293.15 / 288.706 by hand
});

test("every constant names its source and has a unit of the table", () => {
  const all = Object.values(constants).filter((c) => typeof c === "object" && "source" in c);
  expect(all.length).toBeGreaterThan(9);
  for (const c of all) {
    expect(c.source).toMatch(/\d{3}/);
    const kind = "kind" in c ? kindOf(c) : undefined;
    if (kind) expect(sameDimension(dimensionOf(c.unit), dimensionOf(kinds[kind].unit)), c.symbol).toBe(true);
    else expect(dimensionOf(c.unit)).toHaveLength(7);
  }
});
