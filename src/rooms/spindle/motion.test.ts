import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  coastTime,
  dropHeight,
  inertiaAndFriction,
  inertiaSlowingDown,
  inertiaSpeedingUp,
  spinUpCurve,
  spinUpEstimate,
  spinUpTime,
  storedEnergy,
} from "./motion.ts";

fc.configureGlobal({ seed: 1 });

const rpm = Math.PI / 30;

describe("a spin-up across base speed: 14.8 N m overloaded 1.5 times, base 1745 rpm, to 3000 rpm of the spindle", () => {
  const machine = { J_m: 0.032, J_s: 0.09, i: 1.5, eta: 0.95 };
  const J = inertiaSpeedingUp(machine);
  const T = 14.8 * 1.5;
  const T_l = 1.6 / (1.5 * 0.95);
  const w_b = 1745 * rpm;
  const w = 4500 * rpm;
  const torque = (at: number): number => T * Math.min(1, w_b / at);
  const spinUp = { J, w_0: 0, w_1: w, T: torque, T_l: (): number => T_l };

  // Reference: integrated by hand on both sides of base speed, apart from this code.
  test("turns 0.074105 kg m2 at the motor", () => {
    expect(J).toBeCloseTo(0.074105, 6);
  });

  test("takes 0.64248 s to base speed and 2.5507 s in all, in closed form", () => {
    expect(spinUpEstimate({ J, T, T_l, w_b, w: w_b })).toBeCloseTo(0.64248, 5);
    expect(spinUpEstimate({ J, T, T_l, w_b, w })).toBeCloseTo(2.5507, 4);
  });

  test("the integral over speed agrees to 0.1 %", () => {
    expect(Math.abs(spinUpTime(spinUp) / 2.5507 - 1)).toBeLessThan(1e-3);
  });

  test("marched in time it arrives at the same speed to 0.1 %", () => {
    expect(Math.abs(spinUpCurve(spinUp).w_end / w - 1)).toBeLessThan(1e-3);
  });

  test("stores 7994.4 J, a 1 kg weight dropped from 815 m", () => {
    const E = storedEnergy({ ...machine, w: 3000 * rpm });
    expect(E).toBeCloseTo(7994.4, 1);
    expect(dropHeight({ E, m: 1, g_n: 9.80665 })).toBeCloseTo(815.2, 1);
  });
});

const anySpinUp = fc.record({
  J: fc.double({ min: 0.005, max: 0.5, noNaN: true }),
  T: fc.double({ min: 5, max: 60, noNaN: true }),
  lost: fc.double({ min: 0, max: 0.4, noNaN: true }),
  w_b: fc.double({ min: 80, max: 200, noNaN: true }),
  above: fc.double({ min: 0.3, max: 2.2, noNaN: true }),
});

/** Torque constant to base speed and falling as 1/w above, against a constant loss that leaves torque over at the end. */
function drawn(x: { J: number; T: number; lost: number; w_b: number; above: number }) {
  const T_l = x.lost * x.T;
  const w = x.above * x.w_b;
  return { T_l, w, spinUp: { J: x.J, w_0: 0, w_1: w, T: (at: number): number => x.T * Math.min(1, x.w_b / at), T_l: (): number => T_l } };
}

describe("any spin-up", () => {
  test("keeps energy to 0.1 %: what the motor gave is stored or lost", () => {
    fc.assert(
      fc.property(anySpinUp, (x) => {
        const { spinUp } = drawn(x);
        const curve = spinUpCurve(spinUp);
        expect(Math.abs((curve.E_T - curve.E_l) / ((x.J * curve.w_end ** 2) / 2) - 1)).toBeLessThan(1e-3);
      }),
    );
  });

  test("takes the time of the closed form, and the marched curve ends at the speed asked for", () => {
    fc.assert(
      fc.property(anySpinUp, (x) => {
        const { spinUp, T_l, w } = drawn(x);
        const t = spinUpTime(spinUp);
        expect(Math.abs(t / spinUpEstimate({ J: x.J, T: x.T, T_l, w_b: x.w_b, w }) - 1)).toBeLessThan(1e-3);
        const curve = spinUpCurve(spinUp);
        expect(Math.abs(curve.w_end / w - 1)).toBeLessThan(1e-3);
        expect(curve.t.at(-1)).toBeCloseTo(t, 9);
      }),
    );
  });

  test("takes twice as long with twice the inertia, and half as long with twice the torque and friction", () => {
    fc.assert(
      fc.property(anySpinUp, (x) => {
        const once = spinUpTime(drawn(x).spinUp);
        expect(spinUpTime(drawn({ ...x, J: 2 * x.J }).spinUp) / once).toBeCloseTo(2, 9);
        expect(spinUpTime(drawn({ ...x, T: 2 * x.T }).spinUp) / once).toBeCloseTo(0.5, 9);
      }),
    );
  });

  test("at constant torque is speed times inertia over what is left of the torque", () => {
    const spinUp = { J: 0.1, w_0: 50, w_1: 300, T: (): number => 12, T_l: (): number => 2 };
    expect(spinUpTime(spinUp)).toBeCloseTo((0.1 * 250) / 10, 12);
    expect(spinUpCurve(spinUp).w_end).toBeCloseTo(300, 9);
  });

  test("never ends where friction eats the torque on the way", () => {
    const stalled = { J: 0.1, w_0: 0, w_1: 300, T: (w: number): number => 12 * Math.min(1, 100 / w), T_l: (): number => 5 };
    expect(spinUpTime(stalled)).toBe(Infinity);
    expect(spinUpCurve(stalled).t).toHaveLength(0);
    expect(spinUpEstimate({ J: 0.1, T: 12, T_l: 5, w_b: 100, w: 300 })).toBe(Infinity);
    expect(spinUpEstimate({ J: 0.1, T: 5, T_l: 5, w_b: 100, w: 50 })).toBe(Infinity);
  });
});

test("the closed form joins smoothly where friction fades away", () => {
  const x = { J: 0.1, T: 20, w_b: 150, w: 400 };
  const none = spinUpEstimate({ ...x, T_l: 0 });
  // Constant power: J (w^2 - w_b^2)/(2 P) above base speed.
  expect(none).toBeCloseTo((0.1 * 150) / 20 + (0.1 * (400 ** 2 - 150 ** 2)) / (2 * 20 * 150), 9);
  const [below, above] = [7.4e-4, 7.6e-4].map((T_l) => spinUpEstimate({ ...x, T_l }));
  expect((above ?? 0) / (below ?? 0)).toBeCloseTo(1, 5);
  expect(below).toBeGreaterThan(none);
});

test("the belt's loss makes an inertia heavier to start and lighter to stop", () => {
  const x = { J_m: 0.03, J_s: 0.09, i: 1.5, eta: 0.95 };
  const lossless = inertiaSpeedingUp({ ...x, eta: 1 });
  expect(inertiaSpeedingUp(x)).toBeGreaterThan(lossless);
  expect(inertiaSlowingDown(x)).toBeLessThan(lossless);
  expect(inertiaSlowingDown({ ...x, eta: 1 })).toBeCloseTo(lossless, 12);
});

describe("coasting", () => {
  const spindle = { J: 0.09, w: 300, T_0: 1.2, T_1: 3, w_1: 300 };

  test("with friction that grows in a straight line agrees with small steps", () => {
    let w = spindle.w;
    let t = 0;
    const h = 1e-4;
    while (w > 0) {
      const mid = w - (h / 2 / spindle.J) * (1.2 + (1.8 * w) / 300);
      w -= (h / spindle.J) * (1.2 + (1.8 * mid) / 300);
      t += h;
    }
    expect(coastTime(spindle)).toBeCloseTo(t, 3);
  });

  test("with the same friction at all speeds takes J w/T", () => {
    expect(coastTime({ ...spindle, T_1: 1.2 })).toBeCloseTo((0.09 * 300) / 1.2, 9);
    expect(coastTime({ ...spindle, T_1: 1.2 + 1e-9 })).toBeCloseTo((0.09 * 300) / 1.2, 6);
  });

  test("without friction never ends, and a spindle at rest has nothing to coast", () => {
    expect(coastTime({ ...spindle, T_0: 0, T_1: 0 })).toBe(Infinity);
    expect(coastTime({ ...spindle, w: 0 })).toBe(0);
  });
});

describe("inertia and friction from a coast-down and a spin-up", () => {
  const [J, T_0, b, T] = [0.074, 1.1, 0.006, 18];
  const record = (drive: number, w_0: number, seconds: number, noise: (k: number) => number) => {
    const net = drive - T_0;
    const t = Array.from({ length: 121 }, (_, k) => (seconds * k) / 120);
    // Exact: J dw/dt = net - b w.
    return { t, w: t.map((at, k) => net / b + (w_0 - net / b) * Math.exp((-b * at) / J) + noise(k)) };
  };

  test("are found exactly from clean curves", () => {
    const found = inertiaAndFriction(
      record(0, 300, 6, () => 0),
      record(T, 0, 1.2, () => 0),
      T,
    );
    expect(found?.J).toBeCloseTo(J, 5);
    expect(found?.T_0).toBeCloseTo(T_0, 3);
    expect(found?.b).toBeCloseTo(b, 4);
  });

  test("are found within 2 % when the readings scatter by half a turn a second", () => {
    const wobble = (k: number): number => 3 * Math.sin(k * 12.9898) * Math.cos(k * 78.233);
    const found = inertiaAndFriction(record(0, 300, 6, wobble), record(T, 0, 1.2, wobble), T);
    expect(Math.abs((found?.J ?? 0) / J - 1)).toBeLessThan(0.02);
    expect(found?.rms).toBeGreaterThan(0.5);
    expect(found?.rms).toBeLessThan(3);
  });

  test("cannot be told apart from a coast-down alone", () => {
    const coast = record(0, 300, 6, () => 0);
    expect(inertiaAndFriction(coast, { t: [], w: [] }, T)).toBeNull();
  });
});
