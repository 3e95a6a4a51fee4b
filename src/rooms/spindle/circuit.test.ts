import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  breakdownSlip,
  breakdownTorque,
  type Circuit,
  currentAtSlip,
  emptyFold,
  folded,
  generatingBreakdown,
  reconnected,
  slipAtCurrent,
  slipAtTorque,
  solveT,
  synchronousSpeed,
  torqueAtSlip,
} from "./circuit.ts";
import { CHAPMAN, expectNear, FKU, LATHE, SEN } from "./circuits.test-help.ts";

fc.configureGlobal({ seed: 1 });

/** Values below were recomputed in double precision from the cited circuit; the books' own digits, rounded by hand, stand in the titles or beside. */
const EXACT = 1e-3;

describe("the 10 hp motor of Fitzgerald, Kingsley, Umans, examples 6.2 and 6.3", () => {
  const k = folded(FKU, 60);

  test("draws 18.8 A at slip 0.02 and puts 5739 W across the gap", () => {
    const point = solveT(220, 60, FKU, 0.02);
    expectNear(point.I_1, 18.778, EXACT);
    expectNear(point.powerFactor, 0.8456, EXACT); // book: 0.844
    expectNear(point.P_ag, 5739.4, EXACT);
    expectNear(point.P_conv - 403, 5221.6, EXACT); // book: 5220 W
  });

  test("gives 65.4 N m at slip 0.03 with 23.9 A in the rotor", () => {
    const point = solveT(220, 60, FKU, 0.03);
    expectNear(point.I_2, 23.892, EXACT);
    expectNear(point.T, 65.41, EXACT);
    expectNear(point.P_conv, 7973, EXACT);
  });

  test("pulls out at 175 N m, slip 0.192", () => {
    expectNear(breakdownTorque(k, 220), 174.56, EXACT);
    expectNear(breakdownSlip(k), 0.19181, EXACT);
    expectNear(((1 - breakdownSlip(k)) * synchronousSpeed(60, 6) * 30) / Math.PI, 969.8, EXACT);
  });

  test("starts with 77.6 N m, 150 A in the rotor", () => {
    const start = solveT(220, 60, FKU, 1);
    expectNear(start.I_1, 152.64, EXACT);
    expectNear(start.I_2, 150.26, EXACT);
    expectNear(start.T, 77.62, EXACT);
  });
});

test("the 25 hp motor of Chapman, examples 7-3 and 7-5, runs, pulls out and starts as recomputed", () => {
  const point = solveT(460, 60, CHAPMAN, 0.022);
  expectNear(point.I_1, 18.892, EXACT); // book: 18.88 A
  expectNear((Math.acos(point.powerFactor) * 180) / Math.PI, 33.68, EXACT);
  expectNear(point.P_ag, 11838.8, EXACT); // book: 11,845 W
  expectNear(point.P_conv, 11578.4, EXACT);
  expectNear(point.T, 62.807, EXACT); // book: 62.8
  const k = folded(CHAPMAN, 60);
  expectNear(breakdownTorque(k, 460), 230.8, EXACT); // book, Thevenin rounded: 229 at 0.198
  expectNear(breakdownSlip(k), 0.20141, EXACT);
  expectNear(torqueAtSlip(k, 460, 1), 106.56, EXACT); // book: 104
});

test("the 1740 rpm motor of Sen, example 5.4, starts, runs and pulls out as recomputed", () => {
  const start = solveT(460, 60, SEN, 1);
  expectNear(start.I_1, 244.19, EXACT); // book: 245.9 A
  expectNear(start.T, 183.62, EXACT); // book: 185.2
  const full = solveT(460, 60, SEN, 60 / 1800);
  expectNear(full.I_1, 42.823, EXACT); // book: 42.75 A
  expectNear(full.powerFactor, 0.9414, EXACT);
  expectNear(full.T, 163.11, EXACT);
  expectNear(full.P_conv - 1700, 28020.7, EXACT);
  expectNear((full.P_conv - 1700) / full.P_in, 0.8724, EXACT); // book: 87.5 %
  const k = folded(SEN, 60);
  expectNear(breakdownTorque(k, 460), 429.37, EXACT); // book: 431.7 at 0.1965
  expectNear(breakdownSlip(k), 0.19554, EXACT);
});

test("at half the volts and half the hertz Sen's motor loses what R_1 drops, neither a half nor a quarter", () => {
  const k = folded(SEN, 30);
  expectNear(breakdownTorque(k, 230), 340.55, EXACT);
  expectNear(breakdownSlip(k), 0.36018, EXACT);
  const sameSlipSpeed = 60 / 900;
  expectNear(torqueAtSlip(k, 230, sameSlipSpeed), 151.37, EXACT);
  expectNear(currentAtSlip(k, 230, sameSlipSpeed), 41.254, EXACT);
});

test("the lathe motor as found gives 38.5 N m for 11.3 A and 46 N m locked", () => {
  const rated = solveT(460, 60, LATHE, 0.03);
  expectNear(rated.I_1, 11.272, EXACT);
  expectNear(rated.powerFactor, 0.846, EXACT);
  expectNear(rated.T, 38.486, EXACT);
  const k = folded(LATHE, 60);
  expectNear(breakdownTorque(k, 460), 110.77, EXACT);
  expectNear(breakdownSlip(k), 0.19235, EXACT);
  expectNear(currentAtSlip(k, 460, 1), 64.77, EXACT);
  expectNear(torqueAtSlip(k, 460, 1), 46.26, EXACT);
});

const some = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Any motor from a few watts to a large one, with and without a core branch; ohms in proportion to one another as motors have them. */
const anyCircuit: fc.Arbitrary<Circuit> = fc
  .record({
    base: some(0.1, 100),
    r_1: some(0.01, 0.15),
    x_1: some(0.03, 0.2),
    r_2: some(0.01, 0.15),
    x_2: some(0.03, 0.2),
    x_m: some(1, 5),
    g: fc.constantFrom(0, 0.01, 0.05),
    f: fc.constantFrom(50, 60),
    poles: fc.constantFrom(2, 4, 6, 8),
  })
  .map(({ base, r_1, x_1, r_2, x_2, x_m, g, f, poles }) => ({
    R_1: r_1 * base,
    X_1: x_1 * base,
    R_2: r_2 * base,
    X_2: x_2 * base,
    X_m: x_m * base,
    G_c: g / base,
    f,
    poles,
  }));
const anySlip = fc.oneof(some(-1, -1e-4), some(1e-4, 1), some(1, 2));
const hertz = some(3, 120);

/** The same circuit by complex node equations, an independent road: [I_1^2, I_2^2, E^2] in A^2 and V^2 of one phase. */
function byNodes(V: number, f: number, c: Circuit, s: number): [number, number, number] {
  const a = f / c.f;
  const admit = (r: number, x: number): [number, number] => [r / (r * r + x * x), -x / (r * r + x * x)];
  const y_1 = admit(c.R_1, a * c.X_1);
  const y_2 = admit(c.R_2 / s, a * c.X_2);
  const y_m: [number, number] = [c.G_c * a ** -0.6, -1 / (a * c.X_m)];
  const y: [number, number] = [y_1[0] + y_2[0] + y_m[0], y_1[1] + y_2[1] + y_m[1]];
  const v = V / Math.sqrt(3);
  const square = y[0] ** 2 + y[1] ** 2;
  const E: [number, number] = [(v * (y_1[0] * y[0] + y_1[1] * y[1])) / square, (v * (y_1[1] * y[0] - y_1[0] * y[1])) / square];
  const E_2 = E[0] ** 2 + E[1] ** 2;
  return [((v - E[0]) ** 2 + E[1] ** 2) * (y_1[0] ** 2 + y_1[1] ** 2), E_2 * (y_2[0] ** 2 + y_2[1] ** 2), E_2];
}

describe("any induction motor", () => {
  test("has the currents that Kirchhoff's equations give", () => {
    fc.assert(
      fc.property(anyCircuit, hertz, anySlip, (c, f, s) => {
        const point = solveT(400, f, c, s);
        const [I_1, I_2, E] = byNodes(400, f, c, s);
        expectNear(point.I_1 ** 2, I_1, 1e-9);
        expectNear(point.I_2 ** 2, I_2, 1e-9);
        expectNear(point.E ** 2, E, 1e-9);
        expectNear(point.T, (3 * I_2 * c.R_2) / s / synchronousSpeed(f, c.poles), 1e-9);
      }),
    );
  });

  test("takes from the line what its stator, core and air gap take, motoring, generating or braking", () => {
    fc.assert(
      fc.property(anyCircuit, hertz, anySlip, (c, f, s) => {
        const point = solveT(400, f, c, s);
        const [I_1] = byNodes(400, f, c, s);
        expectNear(point.P_in, 3 * I_1 * c.R_1 + point.P_core + point.P_ag, 1e-9);
        expect(Math.abs(point.powerFactor)).toBeLessThanOrEqual(1);
        // Apparent power squared is real squared plus reactive squared; reactive is what the three reactances take.
        const a = f / c.f;
        const reactive = 3 * a * (I_1 * c.X_1 + point.I_2 ** 2 * c.X_2) + (3 * point.E ** 2) / (a * c.X_m);
        expectNear(Math.hypot(point.P_in, reactive), Math.sqrt(3) * 400 * point.I_1, 1e-9);
      }),
    );
  });

  test("gives power back above the field's speed, and brakes below standstill with heat from both sides", () => {
    fc.assert(
      fc.property(anyCircuit, some(20, 60), (c, f) => {
        expect(solveT(400, f, c, -0.5 * breakdownSlip(folded(c, f))).T).toBeLessThan(0);
        const plugged = solveT(400, f, c, 1.8);
        expect(plugged.P_conv).toBeLessThan(0);
        expect(plugged.P_copper_2).toBeGreaterThan(plugged.P_ag);
      }),
    );
  });

  test("has a breakdown no slip surpasses, and generates harder than it pulls", () => {
    fc.assert(
      fc.property(anyCircuit, hertz, some(1e-4, 2), (c, f, s) => {
        const k = folded(c, f);
        expect(torqueAtSlip(k, 400, s)).toBeLessThanOrEqual(breakdownTorque(k, 400) * (1 + 1e-12));
        expect(torqueAtSlip(k, 400, -s)).toBeGreaterThanOrEqual(generatingBreakdown(k, 400) * (1 + 1e-12));
        expectNear(torqueAtSlip(k, 400, breakdownSlip(k)), breakdownTorque(k, 400), 1e-9);
        expectNear(torqueAtSlip(k, 400, -breakdownSlip(k)), generatingBreakdown(k, 400), 1e-9);
        expect(-generatingBreakdown(k, 400)).toBeGreaterThan(breakdownTorque(k, 400));
      }),
    );
  });

  test("pulls out at the same torque whatever resistance the rotor has, only at another slip", () => {
    fc.assert(
      fc.property(anyCircuit, hertz, some(0.2, 5), (c, f, more) => {
        const [k, other] = [folded(c, f), folded({ ...c, R_2: more * c.R_2 }, f)];
        expectNear(breakdownTorque(other, 400), breakdownTorque(k, 400), 1e-12);
        expectNear(breakdownSlip(other), more * breakdownSlip(k), 1e-12);
      }),
    );
  });

  test("runs at the slip that a torque below breakdown asks, motoring and generating", () => {
    fc.assert(
      fc.property(anyCircuit, hertz, some(0.001, 0.999), (c, f, share) => {
        const k = folded(c, f);
        for (const T of [share * breakdownTorque(k, 400), share * generatingBreakdown(k, 400)]) {
          const s = slipAtTorque(k, 400, T);
          expectNear(torqueAtSlip(k, 400, s ?? NaN), T, 1e-9);
          expect(Math.abs(s ?? NaN)).toBeLessThanOrEqual(breakdownSlip(k));
        }
        expect(slipAtTorque(k, 400, 1.001 * breakdownTorque(k, 400))).toBeNull();
        expect(slipAtTorque(k, 400, 1.001 * generatingBreakdown(k, 400))).toBeNull();
        expect(slipAtTorque(k, 400, 0)).toBe(0);
      }),
    );
  });

  test("is found again from its current anywhere between light load and standstill", () => {
    fc.assert(
      fc.property(anyCircuit, hertz, some(0.2, 1), (c, f, share) => {
        const k = folded(c, f);
        const s = share * breakdownSlip(k);
        fc.pre(currentAtSlip(k, 400, s) > 1.01 * currentAtSlip(k, 400, 0));
        expectNear(slipAtCurrent(k, 400, currentAtSlip(k, 400, s)), s, 1e-6);
      }),
    );
  });

  test("never draws more than with its rotor shorted, nor less than to magnetise itself", () => {
    fc.assert(
      fc.property(anyCircuit, hertz, (c, f) => {
        const k = folded(c, f);
        expect(slipAtCurrent(k, 400, 1.01 * currentAtSlip(k, 400, 1e12))).toBeNull();
        expect(slipAtCurrent(k, 400, 0.2 * currentAtSlip(k, 400, 0))).toBeNull();
      }),
    );
  });

  test("keeps torque and takes current in inverse proportion when it is linked for other volts", () => {
    fc.assert(
      fc.property(anyCircuit, hertz, anySlip, fc.constantFrom(1 / 2, 1 / Math.sqrt(3), 2, 1 / (2 * Math.sqrt(3))), (c, f, s, k) => {
        const [before, after] = [solveT(400, f, c, s), solveT(400 * k, f, reconnected(c, k), s)];
        expectNear(after.T, before.T, 1e-9);
        expectNear(after.I_1, before.I_1 / k, 1e-9);
        expectNear(after.powerFactor, before.powerFactor, 1e-9);
        expectNear(after.P_core + 1, before.P_core + 1, 1e-9);
      }),
    );
  });
});

test("without load the motor takes magnetising current only", () => {
  const point = solveT(220, 60, FKU, 0);
  expect(point.T).toBe(0);
  expect(point.I_2).toBe(0);
  expectNear(point.I_1, 220 / Math.sqrt(3) / Math.hypot(0.294, 13.753), 1e-12);
});

test("a fold handed in again and again is the fold made new", () => {
  const k = emptyFold();
  folded(SEN, 12, k);
  expect(folded(FKU, 41, k)).toEqual(folded(FKU, 41));
});
