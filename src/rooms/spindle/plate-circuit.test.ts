import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { breakdownSlip, folded, solveT } from "./circuit.ts";
import { expectNear } from "./circuits.test-help.ts";
import { atShaft } from "./losses.ts";
import { circuitOfPlate } from "./plate-circuit.ts";

fc.configureGlobal({ seed: 1 });

describe("a plate whose losses are known exactly", () => {
  test("gives back the 10 hp motor of Fitzgerald, Kingsley, Umans", () => {
    const [P, V, I, powerFactor] = [5221.6, 220, 18.77819, 0.845565];
    const c = circuitOfPlate(
      { P, V, I, f: 60, poles: 6, s: 1 - 1176 / 1200 },
      {
        efficiency: P / (Math.sqrt(3) * V * I * powerFactor),
        P_fw: 403,
        P_core: 0,
        P_stray: 0,
        split: 0.503 / 0.712,
        I_LR: 152.6438,
        saturation: 1,
      },
    );
    expectNear(c?.R_1, 0.294, 1e-3);
    expectNear(c?.X_1, 0.503, 1e-3);
    expectNear(c?.R_2, 0.144, 1e-3);
    expectNear(c?.X_2, 0.209, 1e-3);
    expectNear(c?.X_m, 13.25, 1e-3);
  });
});

const some = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test("any circuit found draws the plate's current at the plate's slip, with its power factor and losses, and gives its power", () => {
  let found = 0;
  fc.assert(
    fc.property(
      some(0.7, 0.92),
      some(0.65, 0.92),
      some(0.01, 0.07),
      some(4, 9),
      some(1, 1.4),
      some(0.3, 0.6),
      (efficiency, pf, s, times, saturation, split) => {
        const [P, V, poles] = [4000, 400, 4];
        const I = P / (Math.sqrt(3) * V * efficiency * pf);
        const loss = P / efficiency - P;
        const assumed = { efficiency, P_fw: 0.12 * loss, P_core: 0.2 * loss, P_stray: 0.015 * P, split, I_LR: times * I, saturation };
        const c = circuitOfPlate({ P, V, I, f: 50, poles, s }, assumed);
        if (c === null) return;
        found++;
        const shaft = atShaft(V, 50, c, c, s);
        expectNear(shaft.I_1, I, 1e-9);
        expectNear(shaft.powerFactor, pf, 1e-9);
        expectNear(shaft.efficiency, efficiency, 1e-9);
        expectNear(shaft.P_shaft, P, 1e-9);
        expectNear(shaft.P_core, assumed.P_core, 1e-9);
        expectNear(c.X_1 / (c.X_1 + c.X_2), split, 1e-9);
        // At standstill with the leakage of standstill the locked current comes out (core branch aside).
        if (saturation < 1.0001) expectNear(solveT(V, 50, { ...c, G_c: 0 }, 1).I_1, times * I, 2e-3);
      },
    ),
  );
  expect(found).toBeGreaterThan(30);
});

test("without saturation the motor found draws just the locked current", () => {
  const load = { P: 4000, V: 400, I: 8.6, f: 50, poles: 4, s: 0.04 };
  const c = circuitOfPlate(load, { efficiency: 0.84, P_fw: 80, P_core: 0, P_stray: 60, split: 0.4, I_LR: 52, saturation: 1 });
  expectNear(c === null ? null : solveT(400, 50, c, 1).I_1, 52, 1e-8);
  const running = circuitOfPlate(load, { efficiency: 0.84, P_fw: 80, P_core: 0, P_stray: 60, split: 0.4, I_LR: 52, saturation: 1.25 });
  expectNear((running?.X_1 ?? NaN) / (c?.X_1 ?? NaN), 1.25, 1e-9);
  expect(c !== null && breakdownSlip(folded(c, 50)) > 0.04).toBe(true);
});

describe("assumptions that contradict the plate", () => {
  const load = { P: 4000, V: 400, I: 8.6, f: 50, poles: 4, s: 0.04 };
  const good = { efficiency: 0.84, P_fw: 80, P_core: 100, P_stray: 60, split: 0.4, I_LR: 52, saturation: 1.2 };

  test("have no circuit: no loss left for the stator, more real than apparent power, current no leakage allows", () => {
    expect(circuitOfPlate(load, good)).not.toBeNull();
    expect(circuitOfPlate(load, { ...good, efficiency: 0.93 })).toBeNull();
    expect(circuitOfPlate(load, { ...good, efficiency: 0.6 })).toBeNull();
    expect(circuitOfPlate(load, { ...good, I_LR: 2000 })).toBeNull();
    expect(circuitOfPlate(load, { ...good, I_LR: 5 })).toBeNull();
  });
});
