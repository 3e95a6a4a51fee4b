import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bearingHeat, churningTorque, loadTorque, plateau } from "./bearing.ts";

fc.configureGlobal({ seed: 1 });

const rpm = Math.PI / 30;
const bearing = { f_0: 2, nu: 22e-6, w: 3000 * rpm, d_m: 0.08 };

describe("a bearing of 80 mm in oil of 22 cSt at 3000 rpm", () => {
  test("churns with 167.24 N mm and warms with 52.53 W", () => {
    // Palmgren by hand: 1e-7 * 2 * 66000^(2/3) * 80^3 N mm; 1.047e-4 * 3000 * 167.24 W.
    const M = churningTorque(bearing);
    expect(M * 1e3).toBeCloseTo(167.24, 2);
    expect(Math.abs(bearingHeat({ M, w: bearing.w }) / 52.53 - 1)).toBeLessThan(1e-3);
  });

  test("churns the same at all low speeds, and the two laws meet within a percent", () => {
    const slow = churningTorque({ ...bearing, w: 50 * rpm });
    expect(churningTorque({ ...bearing, w: 10 * rpm })).toBe(slow);
    expect(slow * 1e3).toBeCloseTo(160e-7 * 2 * 80 ** 3, 6);
    expect(churningTorque({ ...bearing, w: (2001 / 22) * rpm }) / slow).toBeCloseTo(1, 1);
  });

  test("churns eight times as hard at twice the size", () => {
    expect(churningTorque({ ...bearing, d_m: 0.16 }) / churningTorque(bearing)).toBeCloseTo(8, 9);
  });
});

test("500 N on 80 mm with 0.001 drag with 40 N mm", () => {
  expect(loadTorque({ f_1: 0.001, F: 500, d_m: 0.08 })).toBeCloseTo(0.04, 12);
});

const minutes = (n: number): number[] => Array.from({ length: n }, (_, k) => 120 * k);

describe("the plateau of a run-in", () => {
  const warming = (t: number): number => 321 - (321 - 295) * Math.exp(-t / 900);

  test("is found to a hundredth of a kelvin from clean readings every two minutes", () => {
    const t = minutes(16);
    const found = plateau(t, t.map(warming));
    expect(found.kind).toBe("settling");
    if (found.kind !== "settling") return;
    expect(found.T_p).toBeCloseTo(321, 2);
    expect(found.tau).toBeCloseTo(900, 0);
    expect(found.T_0).toBeCloseTo(295, 2);
    expect(found.rms).toBeLessThan(1e-3);
  });

  test("is found whatever the plateau, time constant and start, also from uneven readings and while cooling", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 285, max: 350, noNaN: true }),
        fc.double({ min: 5, max: 40, noNaN: true }),
        fc.boolean(),
        fc.double({ min: 300, max: 2400, noNaN: true }),
        (T_0, rise, down, tau) => {
          const T_p = down ? T_0 - rise : T_0 + rise;
          const t = Array.from({ length: 20 }, (_, k) => 90 * k + 25 * Math.sin(7 * k));
          const found = plateau(
            t,
            t.map((at) => T_p - (T_p - T_0) * Math.exp(-at / tau)),
          );
          expect(found.kind).toBe("settling");
          if (found.kind === "settling") expect(found.T_p).toBeCloseTo(T_p, 1);
        },
      ),
    );
  });

  test("is within 2 K when a probe that shows whole tenths scatters by a few of them", () => {
    const t = minutes(20);
    const found = plateau(
      t,
      t.map((at, k) => Math.round(10 * (warming(at) + 0.25 * Math.sin(k * 12.9898))) / 10),
    );
    expect(found.kind).toBe("settling");
    if (found.kind === "settling") expect(Math.abs(found.T_p - 321)).toBeLessThan(2);
  });

  test("is refused while the rise gets faster: still accelerating", () => {
    const t = minutes(12);
    const found = plateau(
      t,
      t.map((at) => 295 + 4 * (Math.exp(at / 700) - 1)),
    );
    expect(found).toMatchObject({ kind: "accelerating" });
    if (found.kind === "accelerating") expect(found.q).toBeGreaterThan(1);
  });

  test("has been reached when readings only scatter, or have passed their highest", () => {
    const t = minutes(12);
    expect(
      plateau(
        t,
        t.map((_, k) => 310 + 0.1 * Math.sin(k * 12.9898)),
      ).kind,
    ).toBe("settled");
    expect(
      plateau(
        t,
        t.map(() => 310),
      ),
    ).toEqual({ kind: "settled", T_p: 310 });
    const purged = [295, 300, 305, 309, 312, 314, 315, 315, 314.5, 314, 313.5, 313];
    expect(plateau(t, purged).kind).toBe("settled");
  });

  test("is no question for five readings, or for readings without a time", () => {
    expect(plateau(minutes(5), [295, 300, 303, 305, 306]).kind).toBe("too-few");
    expect(plateau(minutes(8), [295, 300, 303]).kind).toBe("too-few");
  });
});
