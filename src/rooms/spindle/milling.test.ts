import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { centredMill, peripheralMill } from "./milling.ts";

fc.configureGlobal({ seed: 1 });

const mm = 1e-3;
const steel = { kc11: 1990e6, m_c: 0.26, K: 1, kappa: Math.PI / 2 };
const endMill = { ...steel, f_z: 0.06 * mm, z: 4, D: 16 * mm, a_p: 8 * mm, a_e: 4 * mm, w: 250 };

/** Mean torque of straight teeth by integrating the chip over the arc, a second way to the same mean. */
function meanByIntegral(x: typeof endMill, from: number, to: number): number {
  const steps = 20000;
  let sum = 0;
  for (let k = 0; k < steps; k++) {
    const h = x.f_z * Math.sin(from + ((k + 0.5) / steps) * (to - from));
    sum += x.kc11 * (h / mm) ** -x.m_c * h;
  }
  return (x.z * x.a_p * (x.D / 2) * sum * (to - from)) / steps / (2 * Math.PI);
}

describe("peripheral milling", () => {
  test("a quarter of 16 mm engaged is a sixth of a turn with a mean chip of 0.48 of the feed", () => {
    // phi_s = acos(1/2) = 60 degrees; h_m = 0.06 * 0.5 / 1.0472.
    const cut = peripheralMill(endMill);
    expect(cut.h / mm).toBeCloseTo((0.06 * 0.5) / 1.0472, 5);
    expect(cut.z_e).toBeCloseTo(4 / 6, 9);
  });

  test("power is the volume cut a second times the specific force", () => {
    const cut = peripheralMill(endMill);
    const v_f = (endMill.f_z * endMill.z * endMill.w) / (2 * Math.PI);
    expect(cut.P).toBeCloseTo(endMill.a_p * endMill.a_e * v_f * cut.k_c, 9);
    expect(cut.T * endMill.w).toBeCloseTo(cut.P, 9);
  });

  test("the mean chip stands for the changing chip within 5 %", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 1, noNaN: true }), (share) => {
        const x = { ...endMill, a_e: share * endMill.D };
        expect(Math.abs(peripheralMill(x).T / meanByIntegral(x, 0, Math.acos(1 - 2 * share)) - 1)).toBeLessThan(0.05);
      }),
    );
  });

  test("with less than one tooth in the cut the peak is one tooth leaving at its thickest chip", () => {
    const h = endMill.f_z * Math.sin(Math.PI / 3);
    const tooth = endMill.kc11 * (h / mm) ** -endMill.m_c * h * endMill.a_p * (endMill.D / 2);
    expect(Math.abs(peripheralMill(endMill).T_peak / tooth - 1)).toBeLessThan(2e-3);
  });

  test("with fewer than two teeth in the cut the peak is 1.5 times the mean or more, and never below it", () => {
    expect(peripheralMill(endMill).T_peak / peripheralMill(endMill).T).toBeGreaterThan(1.5);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), fc.double({ min: 0.05, max: 1, noNaN: true }), (z, share) => {
        const x = { ...endMill, z, a_e: share * endMill.D };
        expect(peripheralMill(x).T_peak).toBeGreaterThan(0.99 * meanByIntegral(x, 0, Math.acos(1 - 2 * share)));
      }),
    );
  });

  test("many teeth smooth the torque to its mean", () => {
    const x = { ...endMill, z: 60, a_e: 16 * mm };
    expect(peripheralMill(x).T_peak / meanByIntegral(x, 0, Math.PI)).toBeCloseTo(1, 1);
  });

  test("twice the depth or twice the teeth take twice the mean torque", () => {
    const once = peripheralMill(endMill);
    expect(peripheralMill({ ...endMill, a_p: 16 * mm }).T).toBeCloseTo(2 * once.T, 12);
    expect(peripheralMill({ ...endMill, z: 8 }).T).toBeCloseTo(2 * once.T, 12);
  });
});

describe("a face mill over the middle of the work", () => {
  const face = { ...steel, f_z: 0.1 * mm, z: 5, D: 50 * mm, a_p: 1 * mm, a_e: 40 * mm, w: 90 };

  test("cuts through twice asin(0.8) with a mean chip of 0.863 of the feed", () => {
    // 2 * 0.8 / 1.8546.
    const cut = centredMill(face);
    expect(cut.h / face.f_z).toBeCloseTo(1.6 / 1.8546, 4);
    expect(Math.abs(cut.T / meanByIntegral(face, Math.PI / 2 - Math.asin(0.8), Math.PI / 2 + Math.asin(0.8)) - 1)).toBeLessThan(0.03);
  });

  test("slotting is the same seen either way", () => {
    const slot = { ...endMill, a_e: endMill.D };
    expect(centredMill(slot).T).toBeCloseTo(peripheralMill(slot).T, 9);
    expect(centredMill(slot).T_peak).toBeCloseTo(peripheralMill(slot).T_peak, 9);
  });

  test("a lead angle of 45 degrees thins the chip and raises the specific force", () => {
    const leaning = centredMill({ ...face, kappa: Math.PI / 4 });
    expect(leaning.h / centredMill(face).h).toBeCloseTo(Math.SQRT1_2, 9);
    expect(leaning.T / centredMill(face).T).toBeCloseTo(Math.SQRT1_2 ** -0.26, 9);
  });
});
