// What a cut asks of the spindle: force, torque and power of each operation after Kienzle.

/** The chip thickness at which the main value of the specific force is stated, 1 mm [m]. */
export const UNIT_THICKNESS = 1e-3;

/** What every operation needs to know of the material and the tool. */
export interface Work {
  /** Main value of the specific cutting force, at a chip of 1 mm by 1 mm [Pa]. */
  kc11: number;
  /** Its fall with thickness [1]. */
  m_c: number;
  /** All corrections together, rake, wear, tool material [1]. */
  K: number;
}

/** What a cut asks for. */
export interface Cut {
  /** Chip thickness, mean for milling [m]. */
  h: number;
  /** Specific cutting force there, corrected [Pa]. */
  k_c: number;
  /** Cutting force, of all edges together [N]. */
  F_c: number;
  /** Torque at the spindle [N m], mean for milling. */
  T: number;
  /** Power at the cut [W]. */
  P: number;
}

/**
 * Specific cutting force.
 *
 * k_c [Pa] = K kc11 (h/1 mm)^(-m_c); kc11 [Pa]; m_c [1]; K [1]; h [m] chip thickness. Source: O. Kienzle, VDI-Z 94 (1952); Klocke, Fertigungsverfahren 1, ch. 3.
 * Valid for about 0.05 to 2 mm; thinner chips are rubbed rather than cut.
 */
export function specificForce(x: Work & { h: number }): number {
  return x.K * x.kc11 * (x.h / UNIT_THICKNESS) ** -x.m_c;
}

/** Change of the force with rake: 1.5 % a degree [1/rad]. Handbook value after Klocke, unchecked. */
const RAKE_SLOPE = (0.015 * 180) / Math.PI;

/** Rake for which the tables hold [rad]: +6 deg for turning steel, +2 deg for brittle chips. Handbook, unchecked. */
export const TABLE_RAKE = { steel: (6 * Math.PI) / 180, brittle: (2 * Math.PI) / 180 } as const;

/**
 * Correction for rake.
 *
 * K_gamma [1] = 1 - 0.015/deg (gamma - gamma_0); gamma [rad] of the tool, gamma_0 [rad] of the table. Source: handbook rule after Kienzle and Victor, unchecked.
 * Valid within about 15 deg of the table.
 */
export function rakeFactor(x: { gamma: number; gamma_0: number }): number {
  return 1 - RAKE_SLOPE * (x.gamma - x.gamma_0);
}

/** Corrections for wear and for tools of high-speed steel [1]. Handbook, unchecked. */
export const WEAR_FACTOR = { sharp: 1, worn: 1.5, source: "handbook, unchecked" } as const;
export const HIGH_SPEED_STEEL_FACTOR = { value: 1.2, source: "against carbide; handbook, unchecked" } as const;

/**
 * Spindle speed at constant surface speed.
 *
 * w [rad/s] = min(2 v_c/d, w_max); v_c [m/s]; d [m] where the edge is; w_max [rad/s] cap. Source: geometry. At the centre the cap alone holds.
 */
export function spindleSpeed(x: { v_c: number; d: number; w_max: number }): number {
  return Math.min((2 * x.v_c) / x.d, x.w_max);
}

/**
 * Turning, boring and facing.
 *
 * h = f sin kappa, b = a_p/sin kappa, F_c = k_c b h, T = F_c d/2, P = T w; f [m] a turn; a_p [m] depth; kappa [rad] lead angle of the edge; d [m] diameter being cut;
 * w [rad/s]. Source: Klocke, Fertigungsverfahren 1, ch. 3. Valid while the depth is larger than the nose radius.
 */
export function turn(x: Work & { f: number; a_p: number; kappa: number; d: number; w: number }): Cut {
  const h = x.f * Math.sin(x.kappa);
  return atDiameter(x, h, x.f * x.a_p);
}

/**
 * Parting and grooving.
 *
 * h = f, F_c = k_c b f, T = F_c d/2, P = T w; f [m] a turn; b [m] width of the blade; d [m] where the edge is; w [rad/s]. The torque is greatest at the outside.
 * Source: as turning, with the edge square to the feed.
 */
export function groove(x: Work & { f: number; b: number; d: number; w: number }): Cut {
  return atDiameter(x, x.f, x.f * x.b);
}

/**
 * One pass of a single-point thread.
 *
 * F_c = k_c A, T = F_c d/2, P = T w; A [m2] area this pass takes; h [m] thickness of its chip; d [m] major diameter; w [rad/s]. Source: as turning.
 */
export function threadPass(x: Work & { A: number; h: number; d: number; w: number }): Cut {
  return atDiameter(x, x.h, x.A);
}

function atDiameter(x: Work & { d: number; w: number }, h: number, area: number): Cut {
  const k_c = specificForce({ kc11: x.kc11, m_c: x.m_c, K: x.K, h });
  const F_c = k_c * area;
  const T = (F_c * x.d) / 2;
  return { h, k_c, F_c, T, P: T * x.w };
}

/**
 * Drilling with a two-lipped drill, into the full or opening a hole.
 *
 * h = f/2 sin(sigma/2), T = k_c f (D^2 - d_0^2)/8, F_c = k_c f (D - d_0)/2 of both lips, P = T w; f [m] a turn; sigma [rad] point angle; D [m]; d_0 [m] of the hole there is, 0 for
 * none; w [rad/s]. K up to 1.3 for drills, 1.5 worn (handbook, unchecked). Source: Tschaetsch, Applied Machining Technology, drilling.
 */
export function drill(x: Work & { f: number; sigma: number; D: number; d_0: number; w: number }): Cut {
  const h = (x.f / 2) * Math.sin(x.sigma / 2);
  const k_c = specificForce({ kc11: x.kc11, m_c: x.m_c, K: x.K, h });
  const T = (k_c * x.f * (x.D * x.D - x.d_0 * x.d_0)) / 8;
  return { h, k_c, F_c: (k_c * x.f * (x.D - x.d_0)) / 2, T, P: T * x.w };
}

/** The groove a tap cuts, in pitches, from the 60 deg profile of ISO 68-1: 5/8 H deep, 3/4 p wide at the hole, p/8 at its bottom. */
const GROOVE_DEPTH = (5 / 8) * (Math.sqrt(3) / 2);
const GROOVE_OPEN = 3 / 4;
const GROOVE_BOTTOM = 1 / 8;

/** Area of that groove [p^2], 0.2368, and the depth of its centroid below the major diameter [p], 0.335. */
export const TAP_AREA = ((GROOVE_OPEN + GROOVE_BOTTOM) / 2) * GROOVE_DEPTH;
const TAP_CENTROID = (GROOVE_DEPTH * (2 * GROOVE_OPEN + GROOVE_BOTTOM)) / (3 * (GROOVE_OPEN + GROOVE_BOTTOM));

/** Torque of a forming tap against a cutting one, and of a jammed tap against a running one [1]; practice, unchecked. */
export const FORM_TAP_FACTOR = { low: 1.5, high: 2, source: "practice, unchecked" } as const;
export const JAMMED_TAP_FACTOR = { value: 2, source: "practice, unchecked" } as const;

/**
 * Cutting a thread with a tap.
 *
 * T = K_f k_c a (D - 0.67 p)/2, a = 0.2368 p^2, F_c = k_c a, P = T w; p [m] pitch; D [m] major diameter; h [m] chip of one tooth, 0.02 to 0.06 mm; K_f [1] friction, 1.3 to 2;
 * w [rad/s]. The trade rule k_c p^2 D/8 reads 15 to 20 % higher. Source: profile of ISO 68-1 and its centroid; K_f unchecked.
 */
export function tap(x: Work & { p: number; D: number; h: number; K_f: number; w: number }): Cut {
  const k_c = specificForce({ kc11: x.kc11, m_c: x.m_c, K: x.K, h: x.h });
  const F_c = k_c * TAP_AREA * x.p * x.p;
  const T = (x.K_f * F_c * (x.D - 2 * TAP_CENTROID * x.p)) / 2;
  return { h: x.h, k_c, F_c, T, P: T * x.w };
}

/**
 * Power the motor must give for a cut.
 *
 * P_m [W] = P/(eta_b eta_m) + P_idle; P [W] at the cut; eta_b, eta_m [1] of belt and motor (1 for shaft power); P_idle [W] of the unloaded spindle.
 * Source: energy balance.
 */
export function motorPower(x: { P: number; eta_b: number; eta_m: number; P_idle: number }): number {
  return x.P / (x.eta_b * x.eta_m) + x.P_idle;
}
