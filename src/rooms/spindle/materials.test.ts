import { describe, expect, test } from "vitest";
import { specificForce } from "./cutting.ts";
import { cuttability, kienzleFit, kienzleInterval, testForce } from "./materials.ts";

const mm = 1e-3;
const MPa = 1e6;

describe("the shipped table", () => {
  // Cross-check column of the design: specific force at a chip of 0.1 mm, worked apart from this code.
  test.each([
    ["steel-free-cutting", 1816],
    ["steel-structural", 3621],
    ["stainless-304", 3811],
    ["titanium-6al-4v", 2222],
    ["brass-unleaded", 1667],
  ] as const)("%s resists a chip of 0.1 mm with %d N/mm2", (name, expected) => {
    const { kc11, m_c } = cuttability[name];
    expect(specificForce({ kc11, m_c, K: 1, h: 0.1 * mm }) / MPa).toBeCloseTo(expected, 0);
  });

  test("every value lies inside its band, and every row says where it comes from", () => {
    for (const [name, row] of Object.entries(cuttability)) {
      expect(row.kc11, name).toBeGreaterThanOrEqual(row.kc11Band[0]);
      expect(row.kc11, name).toBeLessThanOrEqual(row.kc11Band[1]);
      expect(row.m_c, name).toBeGreaterThanOrEqual(row.m_cBand[0]);
      expect(row.m_c, name).toBeLessThanOrEqual(row.m_cBand[1]);
      expect(row.source, name).toContain("unchecked");
    }
  });

  test("steels and stainless at 0.1 mm fall into the energies another author gives", () => {
    for (const name of ["steel-structural", "steel-c45", "stainless-303", "stainless-304", "stainless-316"] as const) {
      const { kc11, m_c, energy } = cuttability[name];
      const force = specificForce({ kc11, m_c, K: 1, h: 0.1 * mm });
      expect(force, name).toBeGreaterThan(energy[0]);
      expect(force, name).toBeLessThan(energy[1]);
    }
  });
});

describe("Kienzle's numbers from test cuts", () => {
  const cut = (kc11: number, m_c: number, f: number, error = 1) => ({
    h: f * mm,
    b: 1.5 * mm,
    F_c: error * kc11 * MPa * f ** -m_c * f * mm * 1.5 * mm,
  });

  test("a published table for mild steel, five feeds, gives 1988 N/mm2 and 0.263, close to the row of the shipped table", () => {
    // Specific force of 520 MPa mild steel at feeds 0.1 to 0.6 mm: 3610, 3100, 2720, 2500, 2280 N/mm2 (carbide data table, quoted from memory);
    // the straight line through their logarithms was fitted apart from this code.
    const rows = [
      [0.1, 3610],
      [0.2, 3100],
      [0.3, 2720],
      [0.4, 2500],
      [0.6, 2280],
    ] as const;
    const fit = kienzleFit(rows.map(([f, kc]) => ({ h: f * mm, b: 1 * mm, F_c: kc * f })));
    expect((fit?.kc11 ?? 0) / MPa).toBeCloseTo(1987.64, 2);
    expect(fit?.m_c).toBeCloseTo(0.2631, 4);
    expect((fit?.kc11 ?? 0) / cuttability["steel-structural"].kc11).toBeCloseTo(1, 1);
    expect(fit?.degrees).toBe(3);
  });

  test("three clean cuts give the law back with no doubt left", () => {
    const fit = kienzleFit([cut(2350, 0.21, 0.08), cut(2350, 0.21, 0.16), cut(2350, 0.21, 0.32)]);
    expect((fit?.kc11 ?? 0) / MPa).toBeCloseTo(2350, 6);
    expect(fit?.m_c).toBeCloseTo(0.21, 9);
    expect(fit?.se_m_c).toBeCloseTo(0, 9);
    expect(fit?.degrees).toBe(1);
  });

  test("errors of two percent leave the interval that the textbook sums give", () => {
    const feeds = [0.08, 0.16, 0.32];
    const errors = [1.02, 0.98, 1.01];
    const fit = kienzleFit(feeds.map((f, k) => cut(2350, 0.21, f, errors[k])));
    // Evenly spaced in ln f: the slope is half the difference of the ends over ln 2, the residual one sixth of the second difference squared.
    const logs = errors.map(Math.log);
    const [y_1 = 0, y_2 = 0, y_3 = 0] = logs;
    const slope = (y_3 - y_1) / (2 * Math.LN2);
    const se = Math.sqrt((y_1 - 2 * y_2 + y_3) ** 2 / 6 / (2 * Math.LN2 ** 2));
    expect(fit?.m_c).toBeCloseTo(0.21 - slope, 9);
    expect(fit?.se_m_c).toBeCloseTo(se, 9);
    if (fit === null) return;
    const interval = kienzleInterval(fit, 6.31);
    expect(interval.m_c[1] - interval.m_c[0]).toBeCloseTo(2 * 6.31 * se, 9);
    expect(interval.kc11[0] * interval.kc11[1]).toBeCloseTo(fit.kc11 ** 2, -6);
  });

  test("two cuts, cuts at one feed, or a cut without force have no answer", () => {
    expect(kienzleFit([cut(2350, 0.21, 0.1), cut(2350, 0.21, 0.2)])).toBeNull();
    expect(kienzleFit([cut(2350, 0.21, 0.1), cut(2350, 0.21, 0.1), cut(2350, 0.21, 0.1)])).toBeNull();
    expect(kienzleFit([cut(2350, 0.21, 0.1), cut(2350, 0.21, 0.2), { h: 0.3 * mm, b: mm, F_c: 0 }])).toBeNull();
  });
});

test("1500 W above idle at 2 m/s and 0.8 are 600 N at the edge", () => {
  expect(testForce({ P_cut: 1800, P_idle: 300, eta: 0.8, v_c: 2 })).toBeCloseTo(600, 9);
});
