import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { breakdownTorque, currentAtSlip, folded, reconnected, slipAtCurrent, solveT, synchronousSpeed, torqueAtSlip } from "./circuit.ts";
import { expectNear, LATHE } from "./circuits.test-help.ts";
import { isRefusal } from "./refusal.ts";
import {
  baseFrequency,
  constantPowerEnd,
  fluxGuard,
  fluxShare,
  lawTorque,
  plainVoltage,
  pullOut,
  PULL_OUT_RESERVE,
  torqueAtAirGap,
  torqueLimit,
  torqueLimitAtSpeed,
  voltageAt,
  voltageForAirGap,
  type VoltageLaw,
} from "./voltage-laws.ts";

fc.configureGlobal({ seed: 1 });

const series: VoltageLaw = { V_n: 460, f_n: 60, V_max: 240, E_0: null };
const parallel: VoltageLaw = { V_n: 230, f_n: 60, V_max: 240, E_0: null };
const low = reconnected(LATHE, 1 / 2);
/** Air-gap volts of the parallel motor at plate load. */
const E_0 = solveT(230, 60, low, 0.03).E;
const boosted: VoltageLaw = { ...parallel, E_0 };

describe("the lathe motor on a 240 V drive", () => {
  test("has full flux to 31.3 Hz linked in series, to 60 Hz in parallel", () => {
    expectNear(baseFrequency(series), 31.3, 2e-3);
    expect(baseFrequency(parallel)).toBe(60);
    // On along the same slope the drive runs out of volts at 62.6 Hz.
    expect(plainVoltage(parallel, 62.6)).toBeCloseTo(239.97, 2);
    expect(plainVoltage(parallel, 63)).toBe(240);
  });

  test.each([
    ["series", 30, 230, 89.18, 37.41],
    ["series", 60, 240, 30.15, 20.07],
    ["series", 90, 240, 14.44, 12.57],
    ["parallel", 30, 115, 89.18, 37.41],
    ["parallel", 60, 230, 110.77, 38.49],
    ["parallel", 90, 240, 57.74, 27.83],
  ] as const)(
    "linked in %s at %i Hz gets %i V, pulls out at the torque computed apart from this and gives its own at rated current",
    (how, f, V, out, rated) => {
      const [c, law, I] = how === "series" ? [LATHE, series, 11.272] : [low, parallel, 22.544];
      expectNear(plainVoltage(law, f), V, 1e-9);
      const k = folded(c, f);
      expectNear(pullOut(k, law).T, out, 2e-3);
      expectNear(torqueAtSlip(k, V, slipAtCurrent(k, V, I) ?? NaN), rated, 2e-3);
    },
  );

  test("in series at 90 Hz is stopped by pull-out with its reserve, below it by current", () => {
    expect(torqueLimit(LATHE, series, 60, 11.272)).toMatchObject({ by: "current" });
    const fast = torqueLimit(LATHE, series, 90, 11.272);
    expect(fast.by).toBe("pull-out");
    expectNear(fast.T, 14.44 / PULL_OUT_RESERVE, 2e-3);
    expectNear(lawTorque(folded(LATHE, 90), series, fast.s), fast.T, 1e-9);
  });

  test("goes over from current to pull-out near the rule f_b T_bd/(1.3 T_n)", () => {
    const f = constantPowerEnd(LATHE, series, 11.272, 240) ?? NaN;
    expectNear(f, (31.3 * 89.18) / (1.3 * 37.41), 0.35);
    const k = folded(LATHE, f);
    const s = slipAtCurrent(k, 240, 11.272) ?? NaN;
    expectNear(torqueAtSlip(k, 240, s), breakdownTorque(k, 240) / PULL_OUT_RESERVE, 1e-6);
    expect(constantPowerEnd(LATHE, series, 11.272, 50)).toBeNull();
  });
});

describe("holding the air-gap volts", () => {
  test("at plate load and plate frequency asks the plate's volts", () => {
    expectNear(voltageForAirGap(folded(low, 60), E_0, 0.03), 230, 1e-9);
    expectNear(torqueAtAirGap(folded(low, 60), E_0, 0.03), 38.486, 1e-3);
  });

  test("gives plate torque at plate slip speed and plate current at 3 Hz, where plain volts per hertz give a fraction", () => {
    const [k, slow] = [folded(low, 3), torqueLimit(low, boosted, 3, 22.544)];
    expectNear(slow.T, 38.486, 1e-3);
    expectNear(slow.s * 3, 0.03 * 60, 1e-3);
    expect(torqueLimit(low, parallel, 3, 22.544).T).toBeLessThan(0.55 * slow.T);
    expectNear(slow.V, voltageForAirGap(k, E_0 / 20, slow.s), 1e-12);
    expect(slow.V).toBeGreaterThan(1.3 * plainVoltage(parallel, 3));
  });

  const some = (min: number, max: number) => fc.double({ min, max, noNaN: true });

  test("never gives more volts than the drive has, and no slip surpasses its pull-out", () => {
    fc.assert(
      fc.property(some(1, 200), some(1e-4, 1), some(60, 300), (f, s, V_max) => {
        const law = { ...boosted, V_max };
        const k = folded(low, f);
        expect(voltageAt(k, law, s)).toBeLessThanOrEqual(V_max * (1 + 1e-12));
        const out = pullOut(k, law);
        expect(lawTorque(k, law, s)).toBeLessThanOrEqual(out.T * (1 + 1e-9));
        expectNear(lawTorque(k, law, out.s), out.T, 1e-6);
      }),
    );
  });

  test("stays within the current asked and within the reserve, whatever the drive and frequency", () => {
    fc.assert(
      fc.property(some(1, 200), some(5, 90), some(60, 300), fc.boolean(), (f, I, V_max, boost) => {
        const law = { ...(boost ? boosted : parallel), V_max };
        const k = folded(low, f);
        const limit = torqueLimit(low, law, f, I);
        expect(limit.T).toBeLessThanOrEqual((pullOut(k, law).T / PULL_OUT_RESERVE) * (1 + 1e-9));
        if (limit.T > 0) {
          expectNear(limit.V, voltageAt(k, law, limit.s), 1e-6);
          expectNear(torqueAtSlip(k, limit.V, limit.s), limit.T, 1e-6);
          expect(currentAtSlip(k, limit.V, limit.s)).toBeLessThanOrEqual(I * (1 + 1e-6));
          if (limit.by === "current") expectNear(currentAtSlip(k, limit.V, limit.s), I, 1e-6);
        } else {
          expect(currentAtSlip(k, voltageAt(k, law, 0), 0)).toBeGreaterThanOrEqual(I * (1 - 1e-9));
        }
      }),
    );
  });

  test("reaches no torque with less current than magnetises the motor", () => {
    expect(torqueLimit(low, boosted, 60, 5)).toMatchObject({ T: 0, s: 0, by: "current" });
    expect(torqueLimit(low, parallel, 60, 5)).toMatchObject({ T: 0, s: 0, by: "current" });
  });
});

describe("a speed wanted at the shaft", () => {
  test("is met by the frequency found", () => {
    for (const law of [series, parallel, boosted]) {
      const c = law === series ? LATHE : low;
      for (const rpm of [100, 700, 1745, 3000]) {
        const w = (rpm * Math.PI) / 30;
        const limit = torqueLimitAtSpeed(c, law, w, law === series ? 11.272 : 22.544);
        expectNear((1 - (limit?.s ?? NaN)) * synchronousSpeed(limit?.f ?? NaN, 4), w, 1e-6);
        expectNear(limit?.T, torqueLimit(c, law, limit?.f ?? NaN, law === series ? 11.272 : 22.544).T, 1e-9);
      }
    }
  });

  test("of nought is met at slip 1 with plate torque when a boost holds the flux", () => {
    const still = torqueLimitAtSpeed(low, boosted, 0, 22.544);
    expectNear(still?.s, 1, 1e-5);
    expectNear(still?.T, 38.486, 2e-3);
    expectNear(still?.f, 0.03 * 60, 2e-3);
  });
});

test("flux is warned of above 1.1 and refused above 1.2 of rated", () => {
  expect(fluxGuard(fluxShare(230, 60, 230, 60))).toBeNull();
  // A 50 Hz winding for 230 V fed 230 V at 60 Hz has less, one for 60 Hz fed at 50 Hz a fifth more.
  expectNear(fluxShare(230, 60, 230, 50), 0.833, 1e-3);
  expect(fluxGuard(fluxShare(230, 50, 230, 60))).toBe("warn");
  const doubled = fluxGuard(fluxShare(460, 60, 230, 60));
  expect(doubled !== null && doubled !== "warn" && isRefusal(doubled) && doubled.code).toBe("flux-too-high");
});

test("the end of constant power is where pull-out first takes over, and more volts only put it off", () => {
  // Past it the same current stands beyond pull-out, where its torque is small again: no second beginning.
  const c = { R_1: 1.555, X_1: 0.5898, R_2: 0.5575, X_2: 0.9454, X_m: 28.44, G_c: 0, f: 51.32, poles: 4 };
  const law = (V_max: number): VoltageLaw => ({ V_n: 228, f_n: 51.32, V_max, E_0: null });
  let before = 0;
  for (let V = 160; V <= 200; V += 2) {
    const f = constantPowerEnd(c, law(V), 10.41, 20 * 51.32) ?? NaN;
    expect(f, `${V} V`).toBeGreaterThan(before);
    before = f;
  }
});
