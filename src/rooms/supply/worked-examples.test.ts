// The run of a machine, worked out through the public names from values alone.
import { expect, test } from "vitest";
import { house } from "../../kernel/house.ts";
import { workOut } from "../../kernel/work.ts";
import { ground } from "../ground/index.ts";
import { supply } from "./index.ts";

const bench = house([ground, supply], { shop: [], machine: [], catalogue: [] });

const worked = (id: string, given: Readonly<Record<string, string>>): number => {
  const got = workOut(bench, id, given, { units: "metric" });
  if ("code" in got) throw new Error(`${id}: ${got.code}: ${got.message}`);
  return got.column.v[0] ?? Number.NaN;
};
/** 208 V three-phase, 25 m of 4 mm2 copper at 60 degC, 0.08 mohm/m, 18 A at power factor 0.85. Tolerance 0.1 %. */
const near = (value: number, reference: number): void =>
  expect(Math.abs(value / reference - 1), `${value} against ${reference}`).toBeLessThanOrEqual(1e-3);

const run = { L: "25 m", A: "4 mm2", n_ph: "3", "supply.run.temperature": "60 degC", "supply.run.material": "copper" };
test("25 m of 4 mm2 copper at 60 degC have 0.12470 ohm a conductor (rho20 IEC 60028)", () => {
  near(worked("supply.loop-resistance", run), 0.1247);
});
const wires = { R: "0.12470 ohm", X: "0.002 ohm", pf: "0.85" };
test("18 A drop 3.3373 V by the short form of IEC 60364-5-52 annex G", () => {
  near(worked("supply.drop-short-form", { ...wires, I: "18 A", n_ph: "3" }), 3.3373);
});
test("the same 18 A seen at the load drop 3.3469 V exactly", () => {
  const S = Math.sqrt(3) * (208 - 3.3469) * 18;
  near(worked("supply.drop", { ...wires, V: "208 V", S: `${S} VA` }), 3.3469);
});

test.each([
  ["PVC, 70 to 160 degC", "copper", "70 degC", "160 degC", 114.84],
  ["cross-linked, 90 to 250 degC", "copper", "90 degC", "250 degC", 142.87],
  ["PVC laid bare, 30 to 160 degC", "copper", "30 degC", "160 degC", 142.69],
] as const)("the constant k of copper, %s (IEC 60364-5-54 annex A tables 115 and 143)", (_, metal, T_i, T_f, k) => {
  near(worked("supply.conductor-k", { metal, T_i, T_f }) / 1e6, k);
});

test("a fault of all three lines is driven by 230 V of a 400 V service, one between two lines of one phase by all of its voltage", () => {
  const loop = { V: "400 V", R: "0.4 ohm", f: "50 Hz", L_m: "0 H" };
  near(worked("supply.fault-current", { ...loop, n_ph: "3" }), 400 / Math.sqrt(3) / 0.4);
  near(worked("supply.fault-current", { ...loop, n_ph: "1" }), 1000);
});
test("a step-up transformer draws its in-rush at the volts it is fed with: 5 kVA on 240 V, eight times, 236 A", () => {
  near(worked("supply.transformer.inrush-crest", { k_i: "8", S_t: "5 kVA", V: "240 V", n_ph: "1" }), (8 * Math.SQRT2 * 5000) / 240);
  near(
    worked("supply.transformer.inrush-crest", { k_i: "8", S_t: "5 kVA", V: "400 V", n_ph: "3" }),
    (8 * Math.SQRT2 * 5000) / (Math.sqrt(3) * 400),
  );
});
test.each([
  ["1 %", 1],
  ["2 %", 0.95],
  ["3 %", 0.9],
  ["4 %", 0.82],
  ["5 %", 0.76],
  ["5.1 %", 0],
] as const)("%s of unbalance leave a motor %d of its plate load (NEMA MG 1 figure, points as printed in secondary tables)", (u, k) => {
  expect(worked("supply.unbalance-derating", { u })).toBeCloseTo(k, 9);
});
