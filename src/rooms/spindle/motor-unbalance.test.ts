import { describe, expect, test } from "vitest";
import { parseShop } from "../../kernel/model/shop.ts";
import { asFound } from "../../kernel/model/node.ts";
import { study } from "../../kernel/study.ts";
import { bench, expectNear, worked } from "./bench.test-help.ts";

/** Motor of Sen, Example 5.4. */
const motor = {
  V: "460 V",
  f: "60 Hz",
  p: "4",
  s: "3.33333333 %",
  R_1: "0.25 ohm",
  X_1: "0.5 ohm",
  R_2: "0.2 ohm",
  X_2: "0.5 ohm",
  X_m: "30 ohm",
};
const at = (id: string, u_2: string, more = {}) => worked(`spindle.motor.${id}`, { ...motor, u_2, ...more });

describe("unequal voltages", () => {
  test("equal ones make no backward current and cost nothing", () => {
    expect(at("negative-sequence-current", "0 %")).toBe(0);
    expect(at("unbalance-loss", "0 %")).toBe(0);
    expect(at("unbalance-derating", "0 %")).toBe(1);
  });

  test("the backward field sees the motor nearly as at standstill: 3 % of voltage drive 17.7 % of plate current", () => {
    // By hand at slip 2 - 1/30: 0.1017 + j0.5 beside j30 is 0.0984 + j0.4920, with the stator 0.3484 + j0.9920 = 1.0514 ohm; 0.03 * 265.58 V.
    expectNear(at("negative-sequence-current", "3 %"), (0.03 * 265.58) / 1.0514, 1e-3);
    expectNear(at("negative-sequence-current", "3 %") / 42.823, 0.177, 1e-2);
  });

  test("extra copper loss goes with the square of the share of voltage", () => {
    expectNear(at("unbalance-loss", "4 %"), 4 * at("unbalance-loss", "2 %"), 1e-9);
  });

  test("the load that is left falls as the voltages part, and is nothing when the backward field makes all the heat", () => {
    const left = ["1 %", "3 %", "5 %", "8 %"].map((u) => at("unbalance-derating", u));
    for (const [k, share] of left.entries()) expect(share).toBeLessThan(left[k - 1] ?? 1);
    expect(at("unbalance-derating", "40 %")).toBe(0);
  });

  test("at plate load on equal voltages the heat is the rated one; 5 % apart it is more by just the extra loss", () => {
    const rated = worked("spindle.motor.rated-copper-loss", motor);
    expectNear(at("unbalance-heat", "0 %", { k_l: "100 %" }), rated, 1e-9);
    expectNear(at("unbalance-heat", "5 %", { k_l: "100 %" }), rated + at("unbalance-loss", "5 %"), 1e-9);
  });
});

test("a motor on the line sees the unequal voltages, one behind a drive does not", () => {
  const shop =
    "waywright: 1\nshop: bench\nsupply: { kind: three-phase-star, voltage: 208 V, rating: 60 A, existing: 10 A, line-voltages: [ 208 V, 214 V, 199 V ] }\n";
  const plate = "{ kind: induction, leads: 3, plate: { power: 5 hp, voltage: 208 V, current: 14 A, frequency: 60 Hz, speed: 1740 rpm } }";
  const shareOf = (drive: string) => {
    const files = new Map([
      ["shop.yaml", { text: shop }],
      ["lathe/machine.yaml", { text: `machine: lathe\nkind: turret-lathe\nspindle:\n  motor: ${plate}\n  drive: ${drive}\n` }],
    ]);
    const s = study(bench, parseShop(files, bench.keys), asFound, "quick");
    return s.answer.figures["lathe/spindle.motor.negative-sequence"]?.amount.nominal;
  };
  expect(shareOf("{ rated-current: 20 A }")).toBe(0);
  expect(shareOf("none")).toBeGreaterThan(0.03);
});
