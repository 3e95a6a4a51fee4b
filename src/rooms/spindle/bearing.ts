// Spindle bearings: the friction that warms them and the plateau a run-in curve is heading for.
import { curveFit } from "../../solve/fit.ts";

/** Load-free friction is counted by viscosity [cSt] times speed [rpm]; below this product it is constant. Palmgren. */
const LOWEST_PRODUCT = 2000;

const CST = 1e-6;
const RPM = Math.PI / 30;
/** Palmgren's numbers give N mm for a mean diameter in mm: [N mm/mm3] is [1e6 N m/m3]. */
const NMM_PER_MM3 = 1e6;

/**
 * Friction torque of a bearing that carries nothing: churning of its lubricant.
 *
 * M_0 = 1e-7 f_0 (nu n)^(2/3) d_m^3 for nu n >= 2000, else 160e-7 f_0 d_m^3 [N mm with cSt, rpm, mm], here [N m]; f_0 [1] by kind and lubrication;
 * nu [m2/s] at temperature (of the base oil for grease); w [rad/s]; d_m [m] mean diameter.
 * Source: Palmgren, in Harris, Rolling Bearing Analysis, ch. 14.
 */
export function churningTorque(x: { f_0: number; nu: number; w: number; d_m: number }): number {
  const product = (x.nu / CST) * (x.w / RPM);
  const factor = product < LOWEST_PRODUCT ? 160e-7 : 1e-7 * product ** (2 / 3);
  return factor * x.f_0 * NMM_PER_MM3 * x.d_m ** 3;
}

/**
 * Friction torque of a bearing by its load.
 *
 * M_1 [N m] = f_1 F d_m; f_1 [1] by kind; F [N] load; d_m [m] mean diameter. Source: Palmgren, in Harris, Rolling Bearing Analysis, ch. 14.
 */
export function loadTorque(x: { f_1: number; F: number; d_m: number }): number {
  return x.f_1 * x.F * x.d_m;
}

/**
 * Heat of a bearing.
 *
 * H [W] = M w; M [N m] friction torque; w [rad/s]. (1.047e-4 n M in rpm and N mm.) Source: definition.
 */
export function bearingHeat(x: { M: number; w: number }): number {
  return x.M * x.w;
}

/** What a run-in curve says. Temperatures [K], times [s]. */
export type Plateau =
  | { readonly kind: "settling"; readonly T_p: number; readonly tau: number; readonly T_0: number; readonly rms: number }
  | { readonly kind: "settled"; readonly T_p: number }
  | { readonly kind: "accelerating"; readonly q: number }
  | { readonly kind: "too-few" };

/** Readings below which three stretches cannot be told apart. */
const FEWEST = 6;

/** Instants at which the curve is read for the start of the search, a multiple of three. */
const INSTANTS = 60;

/** A rise counts when it is larger than this many standard deviations of the means it is taken from. */
const CERTAIN = 3;

/**
 * Plateau that a warming bearing is heading for.
 *
 * T = T_p - (T_p - T_0) exp(-t/tau), least squares over T_p, T_0 [K], tau [s], t from the first reading; started from the means m_1, m_2, m_3 of three
 * stretches of equal length: q = (m_3 - m_2)/(m_2 - m_1), T_p = m_2 + (m_3 - m_2)/(1 - q), tau = -stretch/ln q. q >= 1: the rise does not slow down, it is
 * still accelerating and there is no plateau to name: stop. A rise lost in the scatter, or past its highest: settled, T_p the mean of the last stretch.
 * Source: geometric series (means of stretches follow the same one, and scatter less than single readings); first-order heating.
 * Valid for at least six readings in order of time.
 */
export function plateau(t: readonly number[], T: readonly number[]): Plateau {
  const first = t[0];
  const last = t.at(-1);
  if (first === undefined || last === undefined || T.length !== t.length || t.length < FEWEST || !(last > first))
    return { kind: "too-few" };
  const stretch = (last - first) / 3;
  const [m_1, m_2, m_3] = stretchMeans(t, T, first, last);
  const doubt = CERTAIN * scatter(T) * Math.sqrt(6 / T.length);
  const q = (m_3 - m_2) / (m_2 - m_1);
  if (!(Math.abs(m_3 - m_1) > doubt) || !(q > 0) || (q >= 1 && m_3 < m_1)) return { kind: "settled", T_p: m_3 };
  if (q >= 1) return { kind: "accelerating", q };
  const model = ([T_p = 0, T_0 = 0, tau = 1]: readonly number[], k: number): number =>
    T_p - (T_p - T_0) * Math.exp(-((t[k] ?? last) - first) / tau);
  const tau_0 = -stretch / Math.log(q);
  const T_p0 = m_2 + (m_3 - m_2) / (1 - q);
  const found = curveFit(model, T, [T_p0, T[0] ?? m_1, tau_0]) ?? [T_p0, T[0] ?? m_1, tau_0];
  const [T_p = T_p0, T_0 = m_1, tau = tau_0] = found;
  if (!(tau > 0)) return { kind: "accelerating", q };
  const misses = T.reduce((sum, y, k) => sum + (y - model(found, k)) ** 2, 0);
  return { kind: "settling", T_p, tau, T_0, rms: Math.sqrt(misses / T.length) };
}

/** Means over the three thirds of the time, read off the straight lines between readings, so that readings need not be evenly spaced. */
function stretchMeans(t: readonly number[], T: readonly number[], first: number, last: number): [number, number, number] {
  const sums: [number, number, number] = [0, 0, 0];
  let k = 0;
  for (let n = 0; n < INSTANTS; n++) {
    const now = first + ((n + 0.5) / INSTANTS) * (last - first);
    while ((t[k + 1] ?? Infinity) < now) k++;
    const [t_a = now, t_b = now, T_a = 0, T_b = 0] = [t[k], t[k + 1], T[k], T[k + 1]];
    const value = T_a + ((T_b - T_a) * (now - t_a)) / (t_b - t_a || 1);
    if (3 * n < INSTANTS) sums[0] += value;
    else if (3 * n < 2 * INSTANTS) sums[1] += value;
    else sums[2] += value;
  }
  return [sums[0] / (INSTANTS / 3), sums[1] / (INSTANTS / 3), sums[2] / (INSTANTS / 3)];
}

/** Standard deviation of single readings from their second differences, in which a smooth curve hardly shows. */
function scatter(T: readonly number[]): number {
  let sum = 0;
  for (let k = 2; k < T.length; k++) sum += ((T[k] ?? 0) - 2 * (T[k - 1] ?? 0) + (T[k - 2] ?? 0)) ** 2;
  return Math.sqrt(sum / (6 * (T.length - 2)));
}
