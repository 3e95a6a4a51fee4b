import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { beltLength, beltRatio, beltWrap, slipTorqueFixed, slipTorqueSprung, spindleTorque } from "./belt.ts";

fc.configureGlobal({ seed: 1 });

test("140 mm on the motor and 112 mm on the spindle turn the spindle 1.25 times as fast: ratio 0.8", () => {
  expect(beltRatio({ d_m: 0.14, d_s: 0.112 })).toBeCloseTo(0.8, 12);
});

test("equal pulleys wrap half way and need two centre distances and one circumference of belt", () => {
  const even = { d_m: 0.1, d_s: 0.1, c: 0.4 };
  expect(beltWrap(even)).toBeCloseTo(Math.PI, 12);
  expect(beltLength(even)).toBeCloseTo(0.8 + Math.PI * 0.1, 12);
});

test("the length is that of the outline drawn around both pulleys, whichever is larger", () => {
  const x = { d_m: 0.12, d_s: 0.3, c: 0.5 };
  // Straight parts from the tangent points and the arcs, by coordinates.
  const tilt = Math.asin((x.d_s - x.d_m) / 2 / x.c);
  const tangent = (side: number, r: number): [number, number] => [side * x.c + r * -Math.sin(tilt), r * Math.cos(tilt)];
  const [a, b] = [tangent(0, x.d_m / 2), tangent(1, x.d_s / 2)];
  const straight = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const arcs = (x.d_m / 2) * (Math.PI - 2 * tilt) + (x.d_s / 2) * (Math.PI + 2 * tilt);
  expect(beltLength(x)).toBeCloseTo(2 * straight + arcs, 9);
  expect(beltLength({ d_m: x.d_s, d_s: x.d_m, c: x.c })).toBeCloseTo(beltLength(x), 12);
});

const set = { T_0: 300, m: 0.3, v: 12, mu: 0.3, theta: 3, beta: (38 * Math.PI) / 180, d: 0.11 };

describe("torque at slip", () => {
  test("agrees with the two strand tensions solved one after the other", () => {
    const E = Math.exp((set.mu * set.theta) / Math.sin(set.beta / 2));
    const pull = set.m * set.v ** 2;
    // T_1 - c = E (T_2 - c) and T_1 + T_2 = 2 T_0.
    const slack = (2 * set.T_0 - pull + E * pull) / (E + 1);
    const tight = 2 * set.T_0 - slack;
    expect(slipTorqueFixed(set)).toBeCloseTo(((tight - slack) * set.d) / 2, 9);
  });

  test("of a belt at rest is the same whether its centres are fixed or sprung", () => {
    expect(slipTorqueFixed({ ...set, v: 0 })).toBeCloseTo(slipTorqueSprung({ ...set, v: 0 }), 12);
  });

  test("falls with speed between fixed centres down to nothing, and not at all with a tensioner", () => {
    expect(slipTorqueFixed({ ...set, v: 20 })).toBeLessThan(slipTorqueFixed(set));
    expect(slipTorqueFixed({ ...set, v: 40 })).toBe(0);
    expect(slipTorqueSprung({ ...set, v: 40 })).toBeCloseTo(slipTorqueSprung(set), 12);
  });

  test("grows with friction and wrap but never beyond what both strands' tension allows", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 2, noNaN: true }), fc.double({ min: 1, max: 4, noNaN: true }), (mu, theta) => {
        const T = slipTorqueSprung({ ...set, mu, theta });
        expect(T).toBeLessThanOrEqual(set.T_0 * set.d);
        expect(slipTorqueSprung({ ...set, mu: mu * 1.1, theta })).toBeGreaterThanOrEqual(T);
      }),
    );
  });
});

test("25 N m through 1.5 turns and 0.95 less 1.6 N m of bearings leave 34 N m", () => {
  expect(spindleTorque({ eta_b: 0.95, i: 1.5, T_m: 25, T_f: 1.6 })).toBeCloseTo(34.025, 9);
});
