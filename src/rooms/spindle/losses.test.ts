import { describe, expect, test } from "vitest";
import { synchronousSpeed } from "./circuit.ts";
import { CHAPMAN, expectNear, FKU } from "./circuits.test-help.ts";
import { atShaft } from "./losses.ts";

const fku = { P_fw: 403, w_fw: 0.98 * synchronousSpeed(60, 6), P_stray: 0, I_2n: 16.3 };
const chapman = { P_fw: 1100, w_fw: (1 - 0.022) * synchronousSpeed(60, 4), P_stray: 0, I_2n: 20 };

test("the 10 hp motor of Fitzgerald, Kingsley, Umans, example 6.2, gives 42.4 N m at 1176 rpm with 86.3 %", () => {
  const shaft = atShaft(220, 60, FKU, fku, 0.02);
  expectNear((shaft.w * 30) / Math.PI, 1176, 1e-9);
  expectNear(shaft.P_shaft, 5221.6, 1e-3);
  expectNear(shaft.T_shaft, 42.4, 1e-3);
  expectNear(shaft.efficiency, 0.863, 1e-3);
});

test("the 25 hp motor of Chapman, example 7-3, gives 56.8 N m with 83.7 %", () => {
  const shaft = atShaft(460, 60, CHAPMAN, chapman, 0.022);
  expectNear(shaft.T_shaft, 56.84, 1e-3); // book: 56.9
  expectNear(shaft.efficiency, 0.8366, 1e-3);
  expectNear((shaft.w * 30) / Math.PI, 1760.4, 1e-4);
});

describe("losses outside the air gap", () => {
  const lossy = { ...fku, P_stray: 90 };

  test("close the balance: in = copper + core + friction + stray + shaft", () => {
    const core = { ...FKU, G_c: 2e-3 };
    for (const s of [-0.02, 0.01, 0.05]) {
      const x = atShaft(220, 60, core, lossy, s);
      expectNear(x.P_copper_1 + x.P_copper_2 + x.P_core + x.P_fw + x.P_stray + x.P_shaft, x.P_in, 1e-12);
    }
  });

  test("grow with the square of speed and of rotor current", () => {
    const [slow, fast] = [atShaft(110, 30, FKU, lossy, 0.02), atShaft(220, 60, FKU, lossy, 0.02)];
    expectNear(slow.P_fw, fast.P_fw / 4, 1e-9);
    expectNear(fast.P_stray, 90 * (fast.I_2 / 16.3) ** 2, 1e-12);
  });

  test("leave the starting torque alone", () => {
    const start = atShaft(220, 60, FKU, lossy, 1);
    expect(start.P_fw).toBe(0);
    expect(start.T_shaft).toBe(start.T);
    expect(start.efficiency).toBe(0);
  });

  test("count from shaft to line when the spindle drives the motor, and for nothing when both feed it", () => {
    const generating = atShaft(220, 60, FKU, lossy, -0.03);
    expectNear(generating.efficiency, generating.P_in / generating.P_shaft, 1e-12);
    expect(generating.efficiency).toBeGreaterThan(0.7);
    expect(generating.efficiency).toBeLessThan(1);
    expect(atShaft(220, 60, FKU, lossy, 1.5).efficiency).toBe(0);
    expect(atShaft(220, 60, FKU, lossy, 0).efficiency).toBe(0);
  });
});
