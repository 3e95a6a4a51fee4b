// Inertia, spin-up and coasting of motor, belt and spindle as one turning mass.
import { linearFit } from "../../solve/fit.ts";

/** Torque as a function of speed [N m] of [rad/s]. */
export type TorqueAt = (w: number) => number;

/**
 * Inertia the motor feels while it speeds the spindle up.
 *
 * J [kg m2] = J_m + J_s/(i^2 eta); J_m, J_s [kg m2] on motor and spindle; i [1] motor turns per spindle turn; eta [1] of the belt, whose loss
 * the motor makes up. Source: energy balance.
 */
export function inertiaSpeedingUp(x: { J_m: number; J_s: number; i: number; eta: number }): number {
  return x.J_m + x.J_s / (x.i * x.i * x.eta);
}

/** Inertia the motor feels while it brakes: the belt's loss helps, J [kg m2] = J_m + J_s eta/i^2. Symbols as inertiaSpeedingUp. */
export function inertiaSlowingDown(x: { J_m: number; J_s: number; i: number; eta: number }): number {
  return x.J_m + (x.J_s * x.eta) / (x.i * x.i);
}

/**
 * Energy in everything that turns.
 *
 * E [J] = (J_m (i w)^2 + J_s w^2)/2; J_m, J_s [kg m2]; i [1] motor turns per spindle turn; w [rad/s] spindle. Source: mechanics.
 */
export function storedEnergy(x: { J_m: number; J_s: number; i: number; w: number }): number {
  return ((x.J_m * x.i * x.i + x.J_s) * x.w * x.w) / 2;
}

/**
 * Height from which a weight would bring the same energy: what it means to stand in the way.
 *
 * h [m] = E/(m g_n); E [J]; m [kg]; g_n [m/s2]. Source: mechanics.
 */
export function dropHeight(x: { E: number; m: number; g_n: number }): number {
  return x.E / (x.m * x.g_n);
}

/** What is to be brought from one speed to another, all at one shaft. */
export interface SpinUp {
  /** Inertia [kg m2]. */
  J: number;
  /** Speeds at start and end [rad/s]. */
  w_0: number;
  w_1: number;
  /** Driving torque and all that works against it [N m]. */
  T: TorqueAt;
  T_l: TorqueAt;
}

/** Panels of the integral over speed (even): a kink in the torque at base speed costs less than 1e-5 of the time. */
const PANELS = 400;

/** Steps of the marched curve. */
const STEPS = 2000;

/**
 * Time to bring the spindle from one speed to another.
 *
 * t [s] = integral of J/(T(w) - T_l(w)) dw from w_0 to w_1, Simpson over 400 panels. Symbols: SpinUp. Source: Newton. Where the torque does not exceed
 * what works against it anywhere on the way, the speed is never reached: Infinity.
 */
export function spinUpTime(x: SpinUp): number {
  const dw = (x.w_1 - x.w_0) / PANELS;
  let sum = 0;
  for (let k = 0; k <= PANELS; k++) {
    const w = x.w_0 + k * dw;
    const net = x.T(w) - x.T_l(w);
    if (!(net > 0)) return Infinity;
    sum += (k === 0 || k === PANELS ? 1 : k % 2 === 1 ? 4 : 2) / net;
  }
  return (x.J * sum * dw) / 3;
}

/** Speed against time, and where the work went. Empty and never when the speed cannot be reached. */
export interface SpinUpCurve {
  /** Time [s] and speed [rad/s] at each step. */
  t: Float64Array;
  w: Float64Array;
  /** Speed reached at the end [rad/s]. */
  w_end: number;
  /** Work of the driving torque and of what works against it [J]. */
  E_T: number;
  E_l: number;
}

/**
 * The same spin-up marched in time, for the picture and for its energy.
 *
 * J dw/dt = T(w) - T_l(w), classical fourth-order Runge-Kutta with spinUpTime/2000 a step, work summed with the same weights, so that
 * E_T - E_l = J (w_end^2 - w_0^2)/2 shows whether the steps are fine enough. Symbols: SpinUp. Source: Newton.
 */
export function spinUpCurve(x: SpinUp): SpinUpCurve {
  const total = spinUpTime(x);
  if (total === Infinity) return { t: new Float64Array(), w: new Float64Array(), w_end: x.w_0, E_T: 0, E_l: 0 };
  const curve = { t: new Float64Array(STEPS + 1), w: new Float64Array(STEPS + 1) };
  const h = total / STEPS;
  let w = x.w_0;
  let E_T = 0;
  let E_l = 0;
  curve.w[0] = w;
  for (let k = 1; k <= STEPS; k++) {
    const T_a = x.T(w);
    const l_a = x.T_l(w);
    const w_b = w + ((h / 2) * (T_a - l_a)) / x.J;
    const T_b = x.T(w_b);
    const l_b = x.T_l(w_b);
    const w_c = w + ((h / 2) * (T_b - l_b)) / x.J;
    const T_c = x.T(w_c);
    const l_c = x.T_l(w_c);
    const w_d = w + (h * (T_c - l_c)) / x.J;
    const T_d = x.T(w_d);
    const l_d = x.T_l(w_d);
    E_T += (h / 6) * (T_a * w + 2 * T_b * w_b + 2 * T_c * w_c + T_d * w_d);
    E_l += (h / 6) * (l_a * w + 2 * l_b * w_b + 2 * l_c * w_c + l_d * w_d);
    w += ((h / 6) * (T_a - l_a + 2 * (T_b - l_b) + 2 * (T_c - l_c) + (T_d - l_d))) / x.J;
    curve.t[k] = k * h;
    curve.w[k] = w;
  }
  return { ...curve, w_end: w, E_T, E_l };
}

/** Share of the power that friction takes below which the logarithm cancels and its series is better. */
const SLIGHT = 1e-4;

/**
 * Time to speed with full torque to base speed and constant power above: the closed form beside the integral.
 *
 * t [s] = J w_b/(T - T_l) + J (-(w - w_b)/T_l - P/T_l^2 ln((P - T_l w)/(P - T_l w_b))), P = T w_b; from rest; J [kg m2], T, T_l [N m] at the motor, T_l the same
 * at all speeds; w_b base speed, w end speed [rad/s], w <= w_b leaves the second part out. Source: Newton, integrated. Not reached: Infinity.
 */
export function spinUpEstimate(x: { J: number; T: number; T_l: number; w_b: number; w: number }): number {
  const P = x.T * x.w_b;
  if (x.T <= x.T_l || (x.w > x.w_b && P <= x.T_l * x.w)) return Infinity;
  const base = (x.J * Math.min(x.w, x.w_b)) / (x.T - x.T_l);
  if (x.w <= x.w_b) return base;
  const taken = (x.T_l * x.w) / P;
  if (taken < SLIGHT) {
    return base + (x.J / P) * ((x.w ** 2 - x.w_b ** 2) / 2 + ((x.T_l / P) * (x.w ** 3 - x.w_b ** 3)) / 3);
  }
  return base + x.J * (-(x.w - x.w_b) / x.T_l - (P / x.T_l ** 2) * Math.log((P - x.T_l * x.w) / (P - x.T_l * x.w_b)));
}

/**
 * Time to coast to standstill against friction that changes with speed in a straight line.
 *
 * t [s] = J/b ln(1 + b w/T_0), b = (T_1 - T_0)/w_1; J w/T_0 when b = 0; J [kg m2]; w [rad/s] at the start; T_0 [N m] near standstill, T_1 [N m] at
 * w_1 [rad/s]. Source: Newton, integrated. Without friction near standstill it never stops: Infinity.
 */
export function coastTime(x: { J: number; w: number; T_0: number; T_1: number; w_1: number }): number {
  const b = (x.T_1 - x.T_0) / x.w_1;
  const growth = (b * x.w) / x.T_0;
  if (!(x.T_0 > 0) || growth <= -1) return x.w > 0 ? Infinity : 0;
  return growth === 0 ? (x.J * x.w) / x.T_0 : (x.J / b) * Math.log1p(growth);
}

/** A record of speed against time: times [s] in order, speeds [rad/s]. */
export interface SpeedRecord {
  readonly t: readonly number[];
  readonly w: readonly number[];
}

/** Inertia [kg m2], friction near standstill [N m], its growth [N m s/rad], and scatter of the speeds about the fit [rad/s]. */
export interface InertiaFit {
  readonly J: number;
  readonly T_0: number;
  readonly b: number;
  readonly rms: number;
}

/**
 * Inertia and friction from a coast-down and a spin-up at known torque, both at once.
 *
 * w(t) - w(0) = (T/J) t - (T_0/J) t - (b/J) integral of w dt, T = 0 while coasting: linear in 1/J, T_0/J, b/J, solved by least squares with a free start for each curve.
 * T [N m] torque during the spin-up, as long as it is constant. Source: Newton, integrated, so that no slope of noisy readings is needed.
 * Null when the curves cannot tell the three apart.
 */
export function inertiaAndFriction(coast: SpeedRecord, spinUp: SpeedRecord, T: number): InertiaFit | null {
  const torque: number[] = [];
  const time: number[] = [];
  const angle: number[] = [];
  const which: number[] = [];
  const speed: number[] = [];
  for (const [record, drive] of [[coast, 0] as const, [spinUp, T] as const]) {
    let turned = 0;
    for (const [k, w] of record.w.entries()) {
      const t = record.t[k] ?? 0;
      const before = record.t[k - 1];
      if (before !== undefined) turned += ((w + (record.w[k - 1] ?? w)) / 2) * (t - before);
      const since = t - (record.t[0] ?? 0);
      torque.push(drive * since);
      time.push(-since);
      angle.push(-turned);
      which.push(drive === 0 ? 0 : 1);
      speed.push(w);
    }
  }
  const fitted = linearFit([torque, time, angle, which], speed);
  const [inverse = 0, steady = 0, growing = 0] = fitted?.of ?? [];
  if (fitted === null || !(inverse > 0)) return null;
  return { J: 1 / inverse, T_0: steady / inverse, b: growing / inverse, rms: Math.sqrt(fitted.residual / speed.length) };
}
