import { describe, expect, test } from "vitest";
import { currentAtSlip, folded, torqueAtSlip } from "./circuit.ts";
import { expectNear, LATHE, SEN } from "./circuits.test-help.ts";
import { unbalanceDerating, unbalanced } from "./unbalanced.ts";

const k = folded(LATHE, 60);

describe("unequal line voltages", () => {
  test("of 3 % negative sequence make a current of 15 to 25 %, some six times their share of volts", () => {
    const x = unbalanced(k, LATHE, 460, 0.03, 0.03);
    const share = x.I_2 / x.I_1;
    expect(share / 0.03).toBeGreaterThan(5);
    expect(share / 0.03).toBeLessThan(8.5);
    // The backward field sees nearly the locked motor.
    expectNear(x.I_2, 0.03 * currentAtSlip(k, 460, 1), 0.05);
  });

  test("heat by the square of their share and take a little torque", () => {
    const [one, two] = [unbalanced(k, LATHE, 460, 0.01, 0.03), unbalanced(k, LATHE, 460, 0.02, 0.03)];
    expectNear(two.P_extra, 4 * one.P_extra, 1e-9);
    expect(two.T).toBeLessThan(torqueAtSlip(k, 460, 0.03));
  });

  test("put the backward field's line and shaft power into copper: 3 I^2 R_1 + (2 - s) P_ag", () => {
    const x = unbalanced(k, LATHE, 460, 0.05, 0.03);
    const backward = torqueAtSlip(k, 23, 1.97);
    expectNear(x.P_extra, 3 * x.I_2 ** 2 * LATHE.R_1 + 1.97 * backward * k.w_s, 1e-12);
  });

  test("that are none leave the motor as it was", () => {
    const x = unbalanced(k, LATHE, 460, 0, 0.03);
    expect(x.P_extra).toBe(0);
    expect(x.I_2).toBe(0);
    expectNear(x.T, 38.486, 1e-3);
    expect(unbalanceDerating(LATHE, 460, 60, 0, 0.03)).toBe(1);
  });
});

describe("the load left at rated copper loss", () => {
  test("falls the more unequal the lines are, and stays above the curve of NEMA MG 1", () => {
    for (const [c, s] of [
      [LATHE, 0.03],
      [SEN, 1 / 30],
    ] as const) {
      const left = [0.01, 0.02, 0.03, 0.05].map((u) => unbalanceDerating(c, 460, 60, u, s));
      for (const [j, share] of left.entries()) expect(share).toBeLessThan(j === 0 ? 1 : (left[j - 1] ?? 0));
      expect(left[1]).toBeGreaterThan(0.95);
      expect(left[2]).toBeGreaterThan(0.9);
      expect(left[3]).toBeLessThan(0.99);
    }
  });

  test("makes just the rated copper loss", () => {
    const share = unbalanceDerating(LATHE, 460, 60, 0.04, 0.03);
    const rated = unbalanced(k, LATHE, 460, 0, 0.03);
    let [lo, hi] = [0, 0.03];
    for (let j = 0; j < 60; j++) {
      const middle = (lo + hi) / 2;
      if (unbalanced(k, LATHE, 460, 0.04, middle).T < share * rated.T) lo = middle;
      else hi = middle;
    }
    expectNear(unbalanced(k, LATHE, 460, 0.04, lo).P_copper, rated.P_copper, 1e-6);
  });

  test("is nothing where the backward field alone burns the winding", () => {
    expect(unbalanceDerating(LATHE, 460, 60, 0.4, 0.03)).toBe(0);
  });
});
