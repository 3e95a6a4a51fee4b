import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Capability, lawAt, motorLimit } from "./capability.ts";
import { reconnected, solveT } from "./circuit.ts";
import { expectNear, LATHE } from "./circuits.test-help.ts";
import type { ValleyCurve } from "./valley.ts";
import { torqueLimitAtSpeed } from "./voltage-laws.ts";

fc.configureGlobal({ seed: 1 });

const low = reconnected(LATHE, 1 / 2);
const E_0 = solveT(230, 60, low, 0.03).E;
const w_n = (1746 * Math.PI) / 30;
const P_full = 7000;

/** The lathe motor linked for 230 V on a bus that falls to these shares of its crest at half, all and one and a half of 7 kW. */
const lathe = (shares: readonly [number, number, number], law: number | null = null): Capability => ({
  circuit: low,
  losses: { P_fw: 120, w_fw: w_n, P_stray: 80, I_2n: 20 },
  V_n: 230,
  f_n: 60,
  E_0: law,
  P: P_full,
  valleys: [1, ...shares].map((share) => 340 * share) as unknown as ValleyCurve, // four of them
  k_dt: 0.97,
  eta_d: 0.96,
  I_hours: 22.5,
  I_short: 34,
  T_n: 30.6,
  I_n: 22.5,
  w_n,
  k_f: 0.1,
  share: 0.6,
  g_0: 0.3,
  tested: false,
});
const stiff = lathe([1, 1, 1]);

/** Bus power the motor takes at the limit when the bus stands where a power P leaves it. */
function powerOn(c: Capability, P: number, w: number, I: number): number {
  const point = torqueLimitAtSpeed(c.circuit, lawAt(c, P), w, I);
  return point === null ? Number.NaN : Math.max(0, solveT(point.V, point.f, c.circuit, point.s).P_in) / c.eta_d;
}

describe("torque and bus settle on each other", () => {
  const sag = fc.double({ min: 0.03, max: 0.22, noNaN: true });
  const speed = fc.double({ min: 0.05, max: 2.5, noNaN: true });
  test.each([
    ["plain volts per hertz", null],
    ["flux held", E_0],
  ])("so that the power taken leaves the very bus it is taken from: %s", (_, law) => {
    fc.assert(
      fc.property(sag, speed, fc.double({ min: 12, max: 60, noNaN: true }), (a, u, I) => {
        const c = lathe([1 - a, 1 - 2 * a, 1 - 3.2 * a], law);
        const limit = motorLimit(c, u * w_n, I);
        expect(Math.abs(powerOn(c, limit.P_bus, u * w_n, I) - limit.P_bus)).toBeLessThan(3e-4 * c.P);
      }),
    );
  });

  test("on a stiff bus at once: torque of the circuit less friction and stray loss", () => {
    const at = torqueLimitAtSpeed(low, lawAt(stiff, 0), w_n, 22.5);
    const { I_2 } = solveT(at?.V ?? 0, at?.f ?? 0, low, at?.s ?? 0);
    const lost = 120 / w_n + (80 / w_n) * (I_2 / 20) ** 2;
    expectNear(motorLimit(stiff, w_n, 22.5).T, (at?.T ?? 0) - lost, 1e-9);
  });

  test("and a bus that sags more leaves less torque where volts are short, none the more where they are not", () => {
    for (const law of [null, E_0]) {
      const [firm, weak] = [lathe([0.97, 0.94, 0.9], law), lathe([0.88, 0.76, 0.62], law)];
      expect(motorLimit(weak, 2 * w_n, 22.5).T).toBeLessThan(0.95 * motorLimit(firm, 2 * w_n, 22.5).T);
      expectNear(motorLimit(weak, w_n / 4, 22.5).T, motorLimit(firm, w_n / 4, 22.5).T, 1e-9);
    }
  });

  test("also where the bus would collapse under full power: a slow motor asks for less", () => {
    const frail = lathe([0.7, 0, 0]);
    const slow = motorLimit(frail, w_n / 8, 22.5);
    expect(slow.P_bus).toBeLessThan(P_full / 4);
    expectNear(slow.T, motorLimit(stiff, w_n / 8, 22.5).T, 1e-9);
  });
});

test("far above the speeds that the volts reach a motor gives no torque", () => {
  expect(motorLimit(lathe([0.97, 0.94, 0.9]), 400 * w_n, 22.5).T).toBe(0);
});
