import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "./circuits.test-help.ts";
import {
  bridgeVoltage,
  dcSpeed,
  dcVoltage,
  fluxLinkage,
  phasePeak,
  rippleTorque,
  servoCurrent,
  servoTopSpeed,
  servoTorque,
  weakenedTorque,
} from "./other-motors.ts";

fc.configureGlobal({ seed: 1 });
const some = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("a dc spindle motor", () => {
  const motor = { k_phi: 1.2, R_a: 0.8 };

  test("of 1.2 V s and 0.8 ohm turns at 182 rad/s with 12 N m on 240 V at most by hand: (240 - 2 - 8)/1.2", () => {
    expect(dcSpeed(motor, 240, 12)).toBeCloseTo(230 / 1.2, 12);
  });

  test("asks the volts that give its speed back", () => {
    fc.assert(
      fc.property(some(0, 300), some(0, 40), (w, T) => {
        expect(dcSpeed(motor, dcVoltage(motor, w, T), T)).toBeCloseTo(w, 9);
      }),
    );
  });

  test("on a 230 V single-phase bridge has 207 V at most: a 240 V armature never reaches base speed", () => {
    expect(bridgeVoltage(230, 0)).toBeCloseTo(207.1, 1);
    // Mean of |sin| by quadrature, fired at 30 degrees and conducting until the next firing.
    const alpha = Math.PI / 6;
    let mean = 0;
    const steps = 10_000;
    for (let k = 0; k < steps; k++) mean += (230 * Math.SQRT2 * Math.sin(alpha + ((k + 0.5) * Math.PI) / steps)) / steps;
    expectNear(bridgeVoltage(230, alpha), mean, 1e-6);
  });

  test("loses torque to ripple, and above base speed to the weaker field at constant power", () => {
    expect(rippleTorque(26, 1.3)).toBeCloseTo(20, 12);
    expect(weakenedTorque(26, 180, 90)).toBe(26);
    expect(weakenedTorque(26, 180, 360) * 360).toBeCloseTo(26 * 180, 9);
  });
});

describe("a permanent-magnet servo", () => {
  const motor = { R: 0.9, L: 4e-3, lambda: fluxLinkage(0.6, 4), pairs: 4 };
  const U = phasePeak(300, 1, 3);

  test("makes its torque constant's torque from one ampere rms", () => {
    expectNear(servoCurrent(motor, 0.6), Math.SQRT2, 1e-12);
  });

  test("turns without load until its emf meets the inverter's volts", () => {
    expectNear(servoTopSpeed(motor, U, 0), U / (4 * motor.lambda), 1e-12);
    expectNear(U, 300 / Math.sqrt(3) - 3, 1e-12);
  });

  test("at its highest speed just uses up the volts", () => {
    fc.assert(
      fc.property(some(0, 15), (T) => {
        const w = servoTopSpeed(motor, U, T);
        const i_q = servoCurrent(motor, T);
        const used = Math.hypot(motor.R * i_q + 4 * w * motor.lambda, 4 * w * motor.L * i_q);
        expectNear(used, U, 1e-9);
        expectNear(servoTorque(motor, U, w, 1e9) + 1, T + 1, 1e-9);
      }),
    );
  });

  test("never exceeds its peak torque, and has none beyond the speed of its emf", () => {
    expect(servoTorque(motor, U, 0, 7.2)).toBe(7.2);
    expect(servoTorque(motor, U, 1.01 * servoTopSpeed(motor, U, 0), 7.2)).toBe(0);
    expect(servoTopSpeed(motor, 10, 1000)).toBe(0);
  });
});
