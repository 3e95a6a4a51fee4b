import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { currentAtSlip, folded, reconnected, solveT } from "./circuit.ts";
import { expectNear, LATHE } from "./circuits.test-help.ts";
import {
  type Body,
  continuousTorque,
  cooling,
  heat,
  resistanceAt,
  riseAfter,
  rmsTorque,
  settledCycle,
  startHeat,
  timeToRise,
  windingTemperature,
} from "./thermal.ts";
import type { VoltageLaw } from "./voltage-laws.ts";

fc.configureGlobal({ seed: 1 });

const body: Body = { rise: 80, tau: 25 * 60, share: 0.7, g_0: 0.3 };
const some = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyStretch = fc.record({ t: some(1, 5000), h: some(0, 3), g: some(0.2, 1) });

/** The same body marched in small steps (Heun), an independent road. */
function marched(th: number, x: { t: number; h: number; g: number }): number {
  const slope = (at: number) => (body.rise * x.h - x.g * at) / body.tau;
  const steps = 4000;
  const dt = x.t / steps;
  let at = th;
  for (let k = 0; k < steps; k++) {
    const ahead = at + dt * slope(at);
    at += (dt * (slope(at) + slope(ahead))) / 2;
  }
  return at;
}

describe("one warm body", () => {
  test("rises as a march in small steps says", () => {
    fc.assert(
      fc.property(some(0, 120), anyStretch, (th, x) => {
        expect(Math.abs(riseAfter(body, th, x) - marched(th, x))).toBeLessThan(1e-3);
      }),
      { numRuns: 30 },
    );
  });

  test("is at 63.2 % of its rise after one time constant and settles at plate load on the plate's rise", () => {
    expectNear(riseAfter(body, 0, { t: body.tau, h: 1, g: 1 }), 80 * (1 - Math.exp(-1)), 1e-12);
    expectNear(riseAfter(body, 0, { t: 100 * body.tau, h: 1, g: 1 }), 80, 1e-12);
  });

  test("repeats itself in the settled cycle, which many repetitions from cold approach", () => {
    fc.assert(
      fc.property(fc.array(anyStretch, { minLength: 1, maxLength: 6 }), (cycle) => {
        const starts = settledCycle(body, cycle);
        const end = cycle.reduce((th, x) => riseAfter(body, th, x), starts[0] ?? NaN);
        expect(Math.abs(end - (starts[0] ?? NaN))).toBeLessThan(1e-6);
        const long = cycle.reduce((sum, x) => sum + x.t * x.g, 0);
        let th = 0;
        for (let k = 0; k < (20 * body.tau) / long; k++) th = cycle.reduce((at, x) => riseAfter(body, at, x), th);
        expect(Math.abs(th - (starts[0] ?? NaN))).toBeLessThan(1e-3);
      }),
      { numRuns: 50 },
    );
  });

  test("tells how long an overload may last", () => {
    const t = timeToRise(body, 40, 2.25, 1, 80);
    expectNear(riseAfter(body, 40, { t, h: 2.25, g: 1 }), 80, 1e-9);
    expect(timeToRise(body, 0, 0.9, 1, 80)).toBe(Infinity);
    expect(timeToRise(body, 85, 0.5, 1, 80)).toBe(0);
  });
});

test("a fan on the shaft leaves all cooling at plate speed, 0.3 at standstill, the same both ways round", () => {
  expect(cooling(0.3, 1745, 1745)).toBe(1);
  expect(cooling(0.3, 0, 1745)).toBe(0.3);
  expect(cooling(0.3, -900, 1745)).toBe(cooling(0.3, 900, 1745));
  expect(cooling(1, 10, 1745)).toBe(1);
  // sqrt(g), the usual first guess of continuous torque, by hand for g_0 = 0.2 and 0.4.
  for (const [n, low, high] of [
    [0.5, 0.83, 0.88],
    [0.2, 0.68, 0.77],
    [0.1, 0.6, 0.72],
  ] as const) {
    expect(Math.sqrt(cooling(0.2, n, 1))).toBeCloseTo(low, 2);
    expect(Math.sqrt(cooling(0.4, n, 1))).toBeCloseTo(high, 2);
  }
});

describe("torque the winding stands for ever", () => {
  const low = reconnected(LATHE, 1 / 2);
  const law: VoltageLaw = { V_n: 230, f_n: 60, V_max: 240, E_0: null };
  const rated = { I_n: solveT(230, 60, low, 0.03).I_1, f_n: 60, w_n: 0.97 * 60 * Math.PI };

  test("at plate frequency is the plate's", () => {
    const x = continuousTorque(low, law, rated, body, 60);
    expectNear(x.T, 38.486, 1e-3);
    expectNear(x.s, 0.03, 1e-3);
  });

  test("holds the heat balance at every frequency", () => {
    for (const f of [10, 20, 30, 60, 75]) {
      const x = continuousTorque(low, law, rated, body, f);
      const V = Math.min((230 * f) / 60, 240);
      const k = folded(low, f);
      expectNear(currentAtSlip(k, V, x.s), x.I, 1e-9);
      const h = heat(body.share, x.I / rated.I_n, f / 60, V / f / (230 / 60));
      expectNear(h, cooling(body.g_0, k.w_s * (1 - x.s), rated.w_n), 1e-6);
    }
  });

  test("falls with the fan, and less with a fan of its own", () => {
    const own = { ...body, g_0: 1 };
    const torques = [10, 20, 30, 60].map((f) => continuousTorque(low, law, rated, body, f).T);
    for (const [j, T] of torques.entries()) expect(T).toBeGreaterThan(j === 0 ? 0 : (torques[j - 1] ?? NaN));
    expect(continuousTorque(low, law, rated, own, 10).T).toBeGreaterThan(1.3 * (torques[0] ?? NaN));
  });

  test("is far below sqrt(g) at a tenth of speed when most of plate current only magnetises and the flux is held", () => {
    const hungry = { ...low, X_m: 0.5 * low.X_m };
    const plate = solveT(230, 60, hungry, 0.03);
    expect(currentAtSlip(folded(hungry, 60), 230, 0) / plate.I_1).toBeGreaterThan(0.6);
    const held = { ...law, E_0: plate.E };
    const x = continuousTorque(hungry, held, { ...rated, I_n: plate.I_1 }, { ...body, g_0: 0.2 }, 6);
    expect(x.T).toBeGreaterThan(0);
    expect(x.T).toBeLessThan(0.7 * plate.T * Math.sqrt(cooling(0.2, 0.1, 1)));
    // Held flux gives more than plain volts per hertz at the same heat when current is well spent.
    expect(continuousTorque(low, { ...law, E_0: solveT(230, 60, low, 0.03).E }, rated, body, 6).T).toBeGreaterThan(
      continuousTorque(low, law, rated, body, 6).T,
    );
  });

  test("is nothing where magnetising current alone is too much", () => {
    const thirsty = { ...low, X_m: low.X_m / 3 };
    expect(continuousTorque(thirsty, law, rated, body, 5).T).toBe(0);
  });
});

describe("temperature by resistance", () => {
  test("a copper winding of 1.71 ohm at 18 degC that reads 2.10 ohm is at 75.6 degC", () => {
    // By hand: 2.10/1.71 * (234.5 + 18) - 234.5 = 75.59.
    expect(windingTemperature(2.1, 1.71, 291.15, 0) - 273.15).toBeCloseTo(75.59, 2);
  });

  test("leads in both readings must be taken off", () => {
    expect(windingTemperature(2.15, 1.76, 291.15, 0.05)).toBeCloseTo(windingTemperature(2.1, 1.71, 291.15, 0), 9);
  });

  test("goes there and back", () => {
    fc.assert(
      fc.property(some(260, 420), some(260, 420), (from, to) => {
        expectNear(windingTemperature(resistanceAt(1.3, from, to), 1.3, from, 0), to, 1e-9);
      }),
    );
  });
});

test("torque that heats alike is the mean square: 30 s at 20 N m and 30 s at rest are 14.1 N m", () => {
  expect(
    rmsTorque([
      { T: 20, t: 30 },
      { T: 0, t: 30 },
    ]),
  ).toBeCloseTo(20 / Math.SQRT2, 12);
});

describe("heat of a start", () => {
  const w_s = 60 * Math.PI;

  test("in the rotor is what the flywheel stores, four times that for a reversal", () => {
    const start = startHeat("direct-start", 0.06, w_s, 0.9, 0.75);
    expectNear(start.rotor, 0.03 * w_s * w_s, 1e-12);
    expectNear(start.stator + start.rotor, start.rotor * (1 + 0.9 / 0.75), 1e-12);
    expectNear(startHeat("plug-reversal", 0.06, w_s, 0.9, 0.75).rotor, 4 * start.rotor, 1e-12);
    expectNear(startHeat("plug-to-stop", 0.06, w_s, 0.9, 0.75).rotor, 3 * start.rotor, 1e-12);
    expect(startHeat("dc-injection", 0.06, w_s, 0.9, 0.75).stator).toBe(0);
  });

  test("agrees with the circuit run up from standstill step by step", () => {
    // Heat in the rotor: integral of s P_ag dt with J dw = T dt, whatever the shape of the torque.
    const J = 0.06;
    let rotor = 0;
    const steps = 20_000;
    for (let k = 0; k < steps; k++) {
      const s = 1 - (k + 0.5) / steps;
      const { T, P_copper_2 } = solveT(460, 60, LATHE, s);
      rotor += (P_copper_2 * J * (w_s / steps)) / T;
    }
    expectNear(rotor, startHeat("direct-start", J, w_s, 0.9, 0.75).rotor, 1e-6);
  });
});
