import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { breakdownSlip, breakdownTorque, currentAtSlip, folded, reconnected, solveT } from "./circuit.ts";
import { CHAPMAN, expectNear, LATHE } from "./circuits.test-help.ts";
import {
  circuitFromTests,
  lineResistance,
  noLoadReactance,
  noLoadReading,
  rotationalLoss,
  rotorResistance,
  standstillImpedance,
  standstillReading,
  statorResistance,
} from "./motor-tests.ts";

fc.configureGlobal({ seed: 1 });
const some = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("the tests of Chapman, example 7-8: 208 V, 4 poles, design A", () => {
  const noLoad = { V: 208, f: 60, I: 8.167, P: 420 };
  const blocked = { V: 25, f: 15, I: 27.9, P: 920 };
  const R_1 = statorResistance(13.6 / 28, 300, 300, 1);
  const c = circuitFromTests({ R_1, noLoad, blocked, split: 0.5, f_n: 60, poles: 4 });
  const circuit = c ?? LATHE;

  test("give 0.243 ohm of stator and 371 W of friction and core", () => {
    expectNear(R_1, 0.24286, 2e-3);
    expectNear(rotationalLoss(noLoad, R_1), 371.4, 2e-3);
  });

  test("give R_2 0.16645, X_1 = X_2 0.67232, X_m 13.882 ohm when X_m is not left out", () => {
    // The book's short cut: R_2 0.151, X 0.67, X_m 14.03 ohm; breakdown 66.2 N m.
    expectNear(circuit.R_2, 0.16645, 2e-3);
    expectNear(circuit.X_1, 0.67232, 2e-3);
    expectNear(circuit.X_2, 0.67232, 2e-3);
    expectNear(circuit.X_m, 13.882, 2e-3);
  });

  test("by the book's short cut give a circuit that pulls out at 67.25 N m, slip 0.1134", () => {
    const X_LR = 4 * Math.sqrt((25 / Math.sqrt(3) / 27.9) ** 2 - (920 / 3 / 27.9 ** 2) ** 2);
    const short = { ...circuit, R_2: 920 / 3 / 27.9 ** 2 - R_1, X_1: X_LR / 2, X_2: X_LR / 2, X_m: 208 / Math.sqrt(3) / 8.167 - X_LR / 2 };
    expectNear(short.R_2, 0.15111, 2e-3);
    expectNear(short.X_m, 14.034, 2e-3);
    const k = folded(short, 60);
    expectNear(breakdownTorque(k, 208), 67.25, 2e-3);
    expectNear(breakdownSlip(k), 0.1134, 2e-3);
  });

  test("are read again from the circuit they gave", () => {
    const again = solveT(25, 15, circuit, 1);
    expectNear(again.I_1, 27.9, 1e-9);
    expectNear(again.P_in, 920, 1e-9);
    expectNear(noLoadReactance(noLoad), circuit.X_1 + circuit.X_m, 1e-12);
  });

  test("that no circuit has give none", () => {
    expect(circuitFromTests({ R_1: 2, noLoad, blocked, split: 0.5, f_n: 60, poles: 4 })).toBeNull();
  });
});

describe("a standstill test on two lines", () => {
  const low = reconnected(LATHE, 1 / 2);

  test("of the lathe motor linked in parallel, 24 V 60 Hz, reads 11.7 A and 109 W", () => {
    const read = standstillReading(low, 24, 60);
    expectNear(read.I, 11.707, 1e-3);
    expectNear(read.P, 109.15, 1e-3);
    expectNear(read.R, 0.39819, 1e-3);
    expectNear(read.X, 0.94452, 1e-3);
    expectNear(read.P / (24 * read.I), 0.3885, 1e-3);
  });

  test("gives the impedance back from volts, amperes and watts", () => {
    const { R, X } = standstillImpedance({ V: 24, f: 60, I: 11.707, P: 109.15 });
    expectNear(R, 0.39819, 1e-3);
    expectNear(X, 0.94452, 1e-3);
    expect(standstillImpedance({ V: 24, f: 60, I: 5, P: 130 }).X).toBeNaN();
  });
});

describe("dc resistance", () => {
  test("of 1.71 ohm between lines at 18 degC is 1.05 ohm a phase at 75 degC", () => {
    // By hand: 0.855 * (234.5 + 75)/(234.5 + 18) = 1.048.
    expect(statorResistance(1.71, 291.15, 348.15, 1)).toBeCloseTo(1.048, 3);
  });

  test("goes from meter to circuit and back", () => {
    fc.assert(
      fc.property(some(0.01, 50), some(270, 310), some(320, 400), some(1, 1.1), (R, cold, hot, skin) => {
        expectNear(lineResistance(statorResistance(R, cold, hot, skin), cold, hot, skin), R, 1e-12);
      }),
    );
  });
});

test("a motor without load draws what magnetises it and the power that friction, core and copper take", () => {
  const core = { ...CHAPMAN, G_c: 1e-3 };
  const read = noLoadReading(core, 460, 60, 300, 188);
  const copper = 3 * (read?.I ?? NaN) ** 2 * CHAPMAN.R_1;
  expectNear(read?.I, 460 / Math.sqrt(3) / (26.3 + 1.106), 0.02);
  expectNear((read?.P ?? NaN) - copper, 300 + 3 * (460 / Math.sqrt(3)) ** 2 * 1e-3, 0.1);
  expect(noLoadReading(core, 20, 60, 5000, 188)).toBeNull();
});

test("slip read under a known current gives the rotor resistance, whatever was believed of it before", () => {
  const I = currentAtSlip(folded(LATHE, 60), 460, 0.025);
  for (const guess of [0.4, 0.75, 1.3]) expectNear(rotorResistance({ ...LATHE, R_2: guess }, 460, 60, I, 0.025), 0.75, 1e-6);
  expect(rotorResistance(LATHE, 460, 60, 200, 0.025)).toBeNull();
});
