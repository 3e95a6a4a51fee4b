import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  adiabaticConstant,
  conductorMetals,
  faultCurrent,
  loopResistance,
  resistivity,
  TYPICAL_REACTANCE,
  withstandIntegral,
  withstandTime,
} from "./conductor.ts";
import { currentAtLoad, shortDrop, voltageAtCurrent, voltageAtLoad } from "./drop.ts";
import { lineFactor } from "./service.ts";

const celsius = (t: number): number => t + 273.15;
const { copper, aluminium } = conductorMetals;
const warmCopper = resistivity({ ...copper, T: celsius(60) });

/** Magnitude of the voltage needed at the source for U at the load: the phasor sum, written out by components. */
function sourceVoltage(x: { U: number; P: number; Q: number; R: number; X: number }): number {
  const along = x.P / x.U;
  const behind = x.Q / x.U;
  return Math.hypot(x.U + along * x.R + behind * x.X, along * x.X - behind * x.R);
}

describe("a run of 25 m of 4 mm2 copper at 60 degC, 208 V three-phase, 18 A at 0.85", () => {
  // Worked by hand: R = 1.7241e-8 * (1 + 0.00393 * 40) * 25 / 4e-6.
  const R = loopResistance({ b: 1, rho: warmCopper, L: 25, A: 4e-6 });
  const X = TYPICAL_REACTANCE * 25;
  const run = { I: 18, pf: 0.85, R, X, phases: 3 };

  test("each conductor has 0.12470 ohm", () => {
    expect(R).toBeCloseTo(0.1247, 5);
  });

  test("the short form of the installers gives 3.337 V, 1.604 %", () => {
    expect(shortDrop(run)).toBeCloseTo(3.3373, 4);
    expect(shortDrop(run) / 208).toBeCloseTo(0.01604, 5);
  });

  test("the exact drop for 18 A seen at the load is 3.347 V", () => {
    expect(208 - voltageAtCurrent({ ...run, V: 208 })).toBeCloseTo(3.3469, 4);
  });

  test("a load that takes the same power finds the same voltage and the same current", () => {
    const U = voltageAtCurrent({ ...run, V: 208 });
    const S = Math.sqrt(3) * U * 18;
    const found = voltageAtLoad({ V: 208, P: S * 0.85, Q: S * Math.sqrt(1 - 0.85 ** 2), R, X });
    expect(found).toBeCloseTo(U, 9);
    expect(currentAtLoad({ S, U: found, phases: 3 })).toBeCloseTo(18, 9);
  });
});

describe("voltage at the load", () => {
  const load = fc.record({
    V: fc.double({ min: 100, max: 500, noNaN: true }),
    P: fc.double({ min: 0, max: 8e3, noNaN: true }),
    Q: fc.double({ min: 0, max: 4e3, noNaN: true }),
    R: fc.double({ min: 1e-3, max: 2, noNaN: true }),
    X: fc.double({ min: 0, max: 1, noNaN: true }),
  });

  test("added to the drop as phasors it is the voltage of the source again", () => {
    fc.assert(
      fc.property(load, (x) => {
        const U = voltageAtLoad(x);
        if (U > 0) expect(sourceVoltage({ ...x, U }) / x.V).toBeCloseTo(1, 8);
      }),
    );
  });

  test("is the same when power and impedance trade a common factor: only their product counts", () => {
    fc.assert(
      fc.property(load, fc.double({ min: 0.2, max: 5, noNaN: true }), (x, k) => {
        const traded = voltageAtLoad({ V: x.V, P: x.P * k, Q: x.Q * k, R: x.R / k, X: x.X / k });
        expect(traded).toBeCloseTo(voltageAtLoad(x), 5);
      }),
    );
  });

  test("never rises when the load takes more or the run gets longer", () => {
    fc.assert(
      fc.property(load, fc.double({ min: 1, max: 3, noNaN: true }), (x, k) => {
        const U = voltageAtLoad(x);
        expect(voltageAtLoad({ ...x, P: x.P * k })).toBeLessThanOrEqual(U + 1e-9);
        expect(voltageAtLoad({ ...x, R: x.R * k, X: x.X * k })).toBeLessThanOrEqual(U + 1e-9);
      }),
    );
  });

  test("a matched load gets half the voltage, and anything beyond it collapses to 0 V with no end to the current", () => {
    // Greatest power through a resistance: V^2/(4 R), at half the voltage.
    const most = 240 ** 2 / (4 * 0.5);
    expect(voltageAtLoad({ V: 240, P: most, Q: 0, R: 0.5, X: 0 })).toBeCloseTo(120, 6);
    const U = voltageAtLoad({ V: 240, P: most * 1.001, Q: 0, R: 0.5, X: 0 });
    expect(U).toBe(0);
    expect(currentAtLoad({ S: most, U, phases: 1 })).toBe(Infinity);
  });

  test("no load, no drop; no impedance, no drop", () => {
    expect(voltageAtLoad({ V: 230, P: 0, Q: 0, R: 0.4, X: 0.1 })).toBeCloseTo(230, 9);
    expect(voltageAtLoad({ V: 230, P: 5e3, Q: 1e3, R: 0, X: 0 })).toBeCloseTo(230, 9);
    expect(currentAtLoad({ S: 0, U: 0, phases: 1 })).toBe(0);
  });

  test("a current that the run cannot pass leaves nothing at its end", () => {
    expect(voltageAtCurrent({ V: 24, I: 100, pf: 1, R: 0.5, X: 0, phases: 1 })).toBe(0);
    expect(voltageAtCurrent({ V: 24, I: 100, pf: 0, R: 0.5, X: 0, phases: 1 })).toBe(0);
  });
});

describe("the short form", () => {
  test("is linear in current and in length, and 1.73 times larger with three lines of the same impedance", () => {
    const run = { I: 10, pf: 0.8, R: 0.3, X: 0.05, phases: 1 };
    expect(shortDrop({ ...run, I: 30 })).toBeCloseTo(3 * shortDrop(run), 12);
    expect(shortDrop({ ...run, R: 0.6, X: 0.1 })).toBeCloseTo(2 * shortDrop(run), 12);
    expect(shortDrop({ ...run, phases: 3 }) / shortDrop(run)).toBeCloseTo(lineFactor(3), 12);
  });

  test("meets the exact drop when the drop is small", () => {
    const run = { I: 1, pf: 0.8, R: 0.3, X: 0.05, phases: 1 };
    expect((230 - voltageAtCurrent({ ...run, V: 230 })) / shortDrop(run)).toBeCloseTo(1, 3);
  });
});

describe("the adiabatic constant", () => {
  const k = (metal: typeof copper | typeof aluminium, from: number, to: number): number =>
    adiabaticConstant({ ...metal, T_i: celsius(from), T_f: celsius(to) }) / 1e6;

  test("agrees with IEC 60364-5-54 for copper: 115 in PVC, 143 in XLPE", () => {
    expect(k(copper, 70, 160)).toBeCloseTo(114.84, 2);
    expect(k(copper, 90, 250)).toBeCloseTo(142.87, 2);
    expect(Math.round(k(copper, 70, 160))).toBe(115);
    expect(Math.round(k(copper, 90, 250))).toBe(143);
  });

  test("gives 142.7 for a cold copper earth wire in PVC, tabled 143", () => {
    expect(k(copper, 30, 160)).toBeCloseTo(142.69, 2);
  });

  test("agrees with IEC 60364-5-54 for aluminium: 76 in PVC, 94 in XLPE", () => {
    expect(Math.round(k(aluminium, 70, 160))).toBe(76);
    expect(Math.round(k(aluminium, 90, 250))).toBe(94);
  });

  test("2.5 mm2 of copper in PVC stands 1 kA for 83 ms, the same heat for half the current four times as long", () => {
    const kCopper = 115e6;
    expect(withstandTime({ k: kCopper, A: 2.5e-6, I_k: 1000 })).toBeCloseTo((115 * 2.5) ** 2 / 1e6, 9);
    expect(withstandTime({ k: kCopper, A: 2.5e-6, I_k: 500 }) / withstandTime({ k: kCopper, A: 2.5e-6, I_k: 1000 })).toBeCloseTo(4, 9);
    expect(withstandIntegral({ k: kCopper, A: 2.5e-6 })).toBeCloseTo(82656.25, 3);
  });

  test("a run without fault current never gets hot", () => {
    expect(withstandTime({ k: 115e6, A: 2.5e-6, I_k: 0 })).toBe(Infinity);
  });
});

test("copper at 75 degC has 1.216 times its resistance at 20 degC", () => {
  // 1 + 0.00393 * 55 = 1.21615.
  expect(resistivity({ ...copper, T: celsius(75) }) / copper.rho_20).toBeCloseTo(1.21615, 10);
});

test("there and back is twice the one way", () => {
  const one = { rho: warmCopper, L: 18, A: 8.37e-6 };
  expect(loopResistance({ ...one, b: 2 })).toBeCloseTo(2 * loopResistance({ ...one, b: 1 }), 12);
});

test("230 V behind 0.3 ohm and j0.4 ohm drives 460 A into a fault; no impedance, no limit", () => {
  expect(faultCurrent({ V: 230, R: 0.3, X: 0.4 })).toBeCloseTo(460, 9);
  expect(faultCurrent({ V: 230, R: 0, X: 0 })).toBe(Infinity);
});
