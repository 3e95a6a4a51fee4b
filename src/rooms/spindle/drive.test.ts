import { expect, test } from "vitest";
import {
  busPower,
  CABLE_WAVE_SPEED,
  chokeInductance,
  criticalCableLength,
  insulationStress,
  inverterWindingLimit,
  outputVoltageMax,
} from "./drive.ts";

test("a bus at 325 V makes 230 V between the lines, 221 V when dead time takes 4 %", () => {
  expect(outputVoltageMax({ V_dc: 325.27, k: 1 })).toBeCloseTo(230, 2);
  expect(outputVoltageMax({ V_dc: 325.27, k: 0.96 })).toBeCloseTo(220.8, 2);
});

test("30 N m at 1745 rpm through 0.86 and 0.96 take 6.64 kW from the bus", () => {
  // 30 * 182.736 = 5482.1 W.
  expect(busPower({ T: 30, w: (1745 * Math.PI) / 30, eta_m: 0.86, eta_d: 0.96 })).toBeCloseTo(5482.1 / 0.8256, 0);
});

test("an edge of 0.1 us is whole after 7.5 m of cable", () => {
  expect(criticalCableLength({ v: CABLE_WAVE_SPEED, t_r: 0.1e-6 })).toBeCloseTo(7.5, 9);
});

test("beyond the critical length the winding sees twice the bus, never more, and at none of it just the bus", () => {
  const stress = (l: number): number => insulationStress({ V_dc: 340, l, l_c: 7.5 });
  expect(stress(0)).toBe(340);
  expect(stress(7.5)).toBe(680);
  expect(stress(100)).toBe(680);
  expect(stress(3.75)).toBeCloseTo(510, 9);
});

test("the stress is an upper bound of an edge bouncing on a lossless line open at its end", () => {
  // Sum of the travelling ramps, by superposition: 2 (r(t) - r(t - tau) + r(t - 2 tau) ...), tau one return trip.
  const ramp = (t: number): number => Math.min(1, Math.max(0, t));
  for (const tau of [0.13, 0.3, 0.47, 0.61, 0.9, 1.5]) {
    let peak = 0;
    for (let t = 0; t < 8; t += 0.001) {
      let sum = 0;
      for (let n = 0; n * tau <= t; n++) sum += (n % 2 === 0 ? 2 : -2) * ramp(t - n * tau);
      peak = Math.max(peak, sum);
    }
    const bound = insulationStress({ V_dc: 1, l: tau / 2, l_c: 1 / 2 });
    expect(peak).toBeLessThanOrEqual(bound + 1e-9);
    expect(peak).toBeGreaterThan(1);
  }
});

test("a winding of 460 V made for inverters stands 1426 V, whichever way it is connected", () => {
  expect(inverterWindingLimit({ V: 460 })).toBeCloseTo(1426, 9);
});

test("a 3 % choke for 2.4 kW at 240 V 60 Hz has 1.91 mH, a 5 % one 3.18 mH", () => {
  expect(chokeInductance({ x_c: 0.03, V: 240, f: 60, P: 2400 })).toBeCloseTo(1.91e-3, 5);
  expect(chokeInductance({ x_c: 0.05, V: 240, f: 60, P: 2400 })).toBeCloseTo(3.18e-3, 5);
});
