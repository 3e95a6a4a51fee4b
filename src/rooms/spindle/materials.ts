// How hard materials are to cut: the shipped table with its bands and doubts, and the fit of one's own test cuts.
import { UNIT_THICKNESS } from "./cutting.ts";
import { linearFit } from "../../solve/fit.ts";

/** One row of the table. Forces [Pa], energies [J/m3]. */
export interface Cuttability {
  /** Main value of the specific cutting force, and its band. */
  readonly kc11: number;
  readonly kc11Band: readonly [number, number];
  /** Its fall with chip thickness [1], and its band. */
  readonly m_c: number;
  readonly m_cBand: readonly [number, number];
  /** Range of specific energy another author gives for the family, as a rough second opinion. */
  readonly energy: readonly [number, number];
  readonly source: string;
}

const MPA = 1e6;
/** 1 J/mm3 [J/m3]. */
const J_PER_MM3 = 1e9;
/** Half width of the band where only one value is known: share of kc11, and in m_c. Assumption, narrowed by a test cut. */
const SPREAD_FORCE = 0.2;
const SPREAD_FALL = 0.03;

const TABLES = "German trade tables after Kienzle and Victor, from memory, unchecked; energy range Kalpakjian and Schmid, unchecked";

function known(kc11: number, m_c: number, energy: readonly [number, number], note = ""): Cuttability {
  return row(kc11, [kc11 * (1 - SPREAD_FORCE), kc11 * (1 + SPREAD_FORCE)], m_c, [m_c - SPREAD_FALL, m_c + SPREAD_FALL], energy, note);
}

function row(
  kc11: number,
  kc11Band: readonly [number, number],
  m_c: number,
  m_cBand: readonly [number, number],
  energy: readonly [number, number],
  note = "",
): Cuttability {
  return {
    kc11: kc11 * MPA,
    kc11Band: [kc11Band[0] * MPA, kc11Band[1] * MPA],
    m_c,
    m_cBand,
    energy: [energy[0] * J_PER_MM3, energy[1] * J_PER_MM3],
    source: note === "" ? TABLES : `${TABLES}; ${note}`,
  };
}

const STEELS = [2, 9] as const;
const STAINLESS = [2, 5] as const;
const TITANIUM = [2, 5] as const;
const COPPERS = [1.4, 3.2] as const;
const ALUMINIUMS = [0.4, 1.0] as const;
const MAGNESIUMS = [0.3, 0.6] as const;

const WROUGHT_ALUMINIUM = row(
  765,
  [700, 830],
  0.24,
  [0.23, 0.25],
  ALUMINIUMS,
  "one row for wrought alloys; the energy range is for larger chips",
);

/** kc11 and m_c of what a small shop cuts, by the names used in the catalogue. */
export const cuttability = {
  "steel-free-cutting": known(1200, 0.18, STEELS, "11SMnPb30, 12L14"),
  "steel-structural": known(
    1990,
    0.26,
    STEELS,
    "E295, 520 to 570 MPa; a published table for 520 MPa mild steel at feeds of 0.1 to 0.6 mm fits kc11 1988, m_c 0.263",
  ),
  "steel-c45": row(1680, [1680, 2220], 0.26, [0.14, 0.26], STEELS, "C45, 1045; sources disagree, the high force goes with the low fall"),
  "stainless-304": known(2350, 0.21, STAINLESS, "X5CrNi18-10"),
  "stainless-316": row(2475, [2350, 2600], 0.21, [0.18, 0.24], STAINLESS, "band of the group"),
  "stainless-303": row(1950, [1800, 2100], 0.21, [0.18, 0.24], STAINLESS, "sulphurised, 0.8 to 0.9 of 304: assumption"),
  "titanium-6al-4v": row(1370, [1245, 2110], 0.21, [0.18, 0.24], TITANIUM, "published tables disagree: 1245 with 0.24, 2110 with 0.22"),
  "brass-leaded": row(650, [500, 800], 0.25, [0.18, 0.32], COPPERS, "CuZn39Pb3, C360; easier than the range of copper alloys"),
  "brass-unleaded": known(1180, 0.15, COPPERS, "CuZn37"),
  "aluminium-6061": WROUGHT_ALUMINIUM,
  "aluminium-7075": WROUGHT_ALUMINIUM,
  magnesium: known(390, 0.19, MAGNESIUMS, "chips burn: class D agent, never water"),
} as const satisfies Record<string, Cuttability>;

/** A test cut: what the spindle drew more than idle, reduced to force, on a chip of known size. */
export interface TestCut {
  /** Chip thickness and width [m]. */
  readonly h: number;
  readonly b: number;
  /** Cutting force [N]. */
  readonly F_c: number;
}

/** Kienzle's two numbers of this tool in this material, with their standard errors, each with n - 2 degrees of freedom. */
export interface KienzleFit {
  readonly kc11: number;
  readonly m_c: number;
  /** Standard error of ln kc11 and of m_c [1]. */
  readonly se_ln_kc11: number;
  readonly se_m_c: number;
  readonly degrees: number;
}

/**
 * Cutting force from the power a cut adds.
 *
 * F_c [N] = eta (P_cut - P_idle)/v_c; P_cut, P_idle [W] at the motor; eta [1] from there to the edge; v_c [m/s]. Source: energy balance.
 */
export function testForce(x: { P_cut: number; P_idle: number; eta: number; v_c: number }): number {
  return (x.eta * (x.P_cut - x.P_idle)) / x.v_c;
}

/**
 * kc11 and m_c from test cuts at different feeds.
 *
 * ln(F_c/(b h)) = ln kc11 - m_c ln(h/1 mm), least squares; at least three cuts at two or more thicknesses, else null. Source: Kienzle's law as a straight line in logarithms;
 * any textbook of regression.
 */
export function kienzleFit(cuts: readonly TestCut[]): KienzleFit | null {
  const degrees = cuts.length - 2;
  if (degrees < 1 || !cuts.every((cut) => cut.F_c > 0 && cut.b > 0 && cut.h > 0)) return null;
  const thickness = cuts.map((cut) => Math.log(cut.h / UNIT_THICKNESS));
  const line = linearFit(
    [thickness],
    cuts.map((cut) => Math.log(cut.F_c / (cut.b * cut.h))),
  );
  const slope = line?.of[0];
  if (line === null || slope === undefined) return null;
  const mean = thickness.reduce((sum, u) => sum + u, 0) / cuts.length;
  const spread = thickness.reduce((sum, u) => sum + (u - mean) ** 2, 0);
  const variance = line.residual / degrees;
  return {
    kc11: Math.exp(line.constant),
    m_c: -slope,
    se_ln_kc11: Math.sqrt(variance * (1 / cuts.length + (mean * mean) / spread)),
    se_m_c: Math.sqrt(variance / spread),
    degrees,
  };
}

/**
 * Intervals of the two numbers of a fit.
 *
 * m_c +- t se(m_c), kc11 exp(+- t se(ln kc11)); t [1] Student's quantile for the degrees of the fit (three cuts, one degree, 90 %: 6.31).
 * Source: any textbook of regression. One degree of freedom promises little: a fourth cut more than halves it.
 */
export function kienzleInterval(fit: KienzleFit, t: number): { kc11: readonly [number, number]; m_c: readonly [number, number] } {
  const factor = Math.exp(t * fit.se_ln_kc11);
  return { kc11: [fit.kc11 / factor, fit.kc11 * factor], m_c: [fit.m_c - t * fit.se_m_c, fit.m_c + t * fit.se_m_c] };
}
