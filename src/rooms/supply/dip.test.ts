import fc from "fast-check";
import { expect, test } from "vitest";
import { dipAtStart } from "./dip.ts";

const motor = { V_LR: 230, I_LR: 60, pf: 0.4, R: 0.4, X: 0.15, phases: 1 };

test("a 60 A start at 0.4 through 0.4 ohm and j0.15 ohm pulls 230 V down by 7.5 %", () => {
  // By hand: Z = 3.8333 at acos 0.4 = 1.53333 + j3.51331; with the run 1.93333 + j3.66331, magnitude 4.14217.
  expect(dipAtStart(motor)).toBeCloseTo(1 - 3.83333 / 4.14217, 5);
});

test("the dip is what the drop of the current that really flows leaves over", () => {
  const z = 230 / 60;
  const sum = Math.hypot(z * 0.4 + 0.4, z * Math.sqrt(0.84) + 0.15);
  const I = 230 / sum;
  expect(1 - dipAtStart(motor)).toBeCloseTo((I * z) / 230, 12);
});

test("a stiff supply does not dip, nor does a motor that draws nothing", () => {
  expect(dipAtStart({ ...motor, R: 0, X: 0 })).toBeCloseTo(0, 12);
  expect(dipAtStart({ ...motor, I_LR: 0 })).toBe(0);
});

test("three lines of the same impedance dip as one loop of 1.73 times the current", () => {
  const three = dipAtStart({ ...motor, phases: 3 });
  expect(three).toBeCloseTo(dipAtStart({ ...motor, I_LR: motor.I_LR * Math.sqrt(3) }), 12);
});

test("the dip lies between nothing and everything and grows with the current and the length of the run", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 500, noNaN: true }),
      fc.double({ min: 0.2, max: 0.6, noNaN: true }),
      fc.double({ min: 0.01, max: 1, noNaN: true }),
      (I_LR, pf, R) => {
        const dip = dipAtStart({ V_LR: 240, I_LR, pf, R, X: 0.05, phases: 1 });
        expect(dip).toBeGreaterThan(0);
        expect(dip).toBeLessThan(1);
        expect(dipAtStart({ V_LR: 240, I_LR: I_LR * 1.1, pf, R, X: 0.05, phases: 1 })).toBeGreaterThan(dip);
        expect(dipAtStart({ V_LR: 240, I_LR, pf, R: R * 1.1, X: 0.05, phases: 1 })).toBeGreaterThan(dip);
      },
    ),
  );
});
