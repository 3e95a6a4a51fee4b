// The lowest bus voltage on a line without impedance: a quick estimate beside the simulation.
import { root } from "../../solve/root.ts";

/**
 * Lowest bus voltage between two crests of an ideal line.
 *
 * V_min [V] = V_p |cos(2 pi f t)| at the t where it meets sqrt(V_p^2 - 2 P t/C), between a quarter and half a cycle after the crest; with three phases
 * V_p cos(2 pi f t - 60 deg) between a twelfth and a sixth of a cycle, and never below V_p cos 30 deg. V_p = sqrt 2 V; V [V rms] between lines;
 * f [Hz]; P [W] taken whatever the voltage; C [F]. Source: energy balance of the capacitor from the crest on. Reads up to 0.3 % low, as discharge really
 * starts a little after the crest. A bus that is empty before the next half-wave comes: 0 V.
 */
export function idealValley(x: { V: number; f: number; P: number; C: number; phases: number }): number {
  const crest = Math.SQRT2 * x.V;
  const w = 2 * Math.PI * x.f;
  const spacing = x.phases === 3 ? Math.PI / 3 : Math.PI;
  const left = (t: number): number => crest * crest - (2 * x.P * t) / x.C;
  const next = (t: number): number => (crest * Math.cos(w * t - spacing)) ** 2;
  const dip = spacing / 2 / w;
  const atDip = next(dip);
  if (x.phases === 3 && left(dip) <= atDip) return Math.sqrt(atDip);
  if (left(dip) <= 0) return 0;
  const meets = root((t) => next(t) - left(t), dip, 2 * dip);
  return meets === null ? crest : Math.sqrt(left(meets));
}

/** Lowest bus voltage at no load, and at half, all and one and a half of a power [V]. */
export type ValleyCurve = readonly [number, number, number, number];

/**
 * Lowest bus voltage [V] at a share u of that power, between the points it was simulated for.
 *
 * The cubic through u = 0, 1/2, 1, 3/2 (Newton's divided differences); straight on at the end's slope above, never below zero. The valley is smooth
 * and nearly straight in power, so four points hold it to a few tenths of a percent (tested against the simulation).
 */
export function valleyOnCurve(curve: ValleyCurve, u: number): number {
  const [a, b, d, e] = curve;
  const at = 2 * u;
  if (at > 3) return Math.max(0, e + (at - 3) * (e - d));
  const second = (d - 2 * b + a) / 2;
  const third = (e - 3 * d + 3 * b - a) / 6;
  return Math.max(0, a + at * (b - a + (at - 1) * (second + (at - 2) * third)));
}
