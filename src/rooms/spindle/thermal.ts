// How warm the winding gets: one body that losses heat and a fan cools, over any cycle and at any speed.
import { type Circuit, currentAtSlip, folded } from "./circuit.ts";
import { fluxShare, lawTorque, plainVoltage, pullOut, voltageAt, type VoltageLaw } from "./voltage-laws.ts";
import { copperInverseCoefficient as beta, absoluteZero } from "../../kernel/constants.ts";
import { root } from "../../solve/root.ts";

/** Rise by resistance above 40 degC of coolant [K] allowed to each insulation class. IEC 60034-1 (class E unchecked). */
export const CLASS_RISE = { A: 60, E: 75, B: 80, F: 105, H: 125 } as const;

/** Core loss at constant flux grows a little faster with frequency in this heat balance than in the circuit, for friction stands with it. */
const FIXED_LOSS_EXPONENT = 1.5;
/** Air speed to cooling: turbulent flow over a ribbed case. */
const COOLING_EXPONENT = 0.7;

/** Nearness at which a slip is found [1], far below what any figure shows. */
const CLOSE = 1e-9;

/** The motor as one warm body. */
export interface Body {
  /** Settled rise at plate load [K]. */
  rise: number;
  /** Time constant at plate speed [s]. */
  tau: number;
  /** Share of the heat at plate load that goes with current squared [1]; the rest is core and friction. */
  share: number;
  /** Cooling left at standstill as a share of that at plate speed [1]: 0.2-0.4 with a fan on the shaft, 1 with a fan of its own. */
  g_0: number;
}

/**
 * Cooling at shaft speed n against plate speed n_n, as a share.
 *
 * g [1] = g_0 + (1 - g_0)(n/n_n)^0.7. Engineering model (IEC TS 60034-25 has the same direction); a heat run replaces it. A motor
 * without a fan, rated so, has g_0 = 1.
 */
export function cooling(g_0: number, n: number, n_n: number): number {
  return g_0 + (1 - g_0) * (Math.abs(n) / n_n) ** COOLING_EXPONENT;
}

/**
 * Heat as a share of that at plate load.
 *
 * h [1] = share (I/I_n)^2 + (1 - share) flux^2 (f/f_n)^1.5; flux [1] = (V/f)/(V_n/f_n), 1 below the base frequency. First-order heating
 * as behind the duty types of IEC 60034-1; the flux factor takes core loss down in field weakening.
 */
export function heat(share: number, I_I_n: number, f_f_n: number, flux: number): number {
  return share * I_I_n * I_I_n + (1 - share) * flux * flux * f_f_n ** FIXED_LOSS_EXPONENT;
}

/** A stretch of a cycle: t [s] long, heat h [1] and cooling g [1] as shares of those at plate load. */
export interface Stretch {
  t: number;
  h: number;
  g: number;
}

/**
 * Rise after a stretch that starts at rise th [K].
 *
 * tau dth/dt = rise h - g th, so th(t) = rise h/g + (th - rise h/g) exp(-g t/tau). Source: first-order heating, closed form. g > 0.
 */
export function riseAfter(body: Body, th: number, stretch: Stretch): number {
  const settled = (body.rise * stretch.h) / stretch.g;
  return settled + (th - settled) * Math.exp((-stretch.g * stretch.t) / body.tau);
}

/**
 * Rise at the start of each stretch when the cycle has been repeated until it no longer changes [K].
 *
 * One cycle carries th to A th + B, so the settled start is B/(1 - A). The rise is monotone within a stretch: the greatest of these
 * values is the greatest of the cycle. Source: closed form of riseAfter. A cycle needs at least one stretch of some length.
 */
export function settledCycle(body: Body, cycle: readonly Stretch[]): number[] {
  const cold = cycle.reduce((th, stretch) => riseAfter(body, th, stretch), 0);
  const kept = Math.exp(-cycle.reduce((sum, stretch) => sum + (stretch.g * stretch.t) / body.tau, 0));
  let th = cold / (1 - kept);
  return cycle.map((stretch) => {
    const start = th;
    th = riseAfter(body, th, stretch);
    return start;
  });
}

/** Time until the rise reaches `limit` [s], from rise th [K] in one unending stretch: Infinity when it settles below. Source: as riseAfter. */
export function timeToRise(body: Body, th: number, h: number, g: number, limit: number): number {
  if (th >= limit) return 0;
  const settled = (body.rise * h) / g;
  return settled <= limit ? Infinity : (body.tau / g) * Math.log((settled - th) / (settled - limit));
}

/** What the plate load was, against which currents and speeds are shares. */
export interface Rated {
  I_n: number;
  f_n: number;
  /** Plate shaft speed [rad/s]. */
  w_n: number;
}

/**
 * Air-gap torque the winding stands for ever at frequency f, and the slip and current there.
 *
 * At the rise of plate load: share (I/I_n)^2 + (1 - share) flux^2 (f/f_n)^1.5 = g(n), solved for I and slip together; torque from the
 * circuit at the volts of the law. Zero where magnetising current alone makes more heat than the fan takes away; never beyond pull-out.
 * Source: heat balance of `heat` and `cooling`.
 */
export function continuousTorque(c: Circuit, law: VoltageLaw, rated: Rated, body: Body, f: number): { T: number; s: number; I: number } {
  const k = folded(c, f);
  const flux = fluxShare(plainVoltage(law, f), f, law.V_n, law.f_n);
  const fixed = heat(body.share, 0, f / rated.f_n, flux);
  const current = (s: number) => currentAtSlip(k, voltageAt(k, law, s), s);
  const excess = (s: number) => {
    const g = cooling(body.g_0, k.w_s * (1 - s), rated.w_n);
    return current(s) - rated.I_n * Math.sqrt(Math.max(0, g - fixed) / body.share);
  };
  if (excess(0) >= 0) return { T: 0, s: 0, I: current(0) };
  const most = pullOut(k, law).s;
  const s = root(excess, 0, most, CLOSE * most) ?? most;
  return { T: lawTorque(k, law, s), s, I: current(s) };
}

/**
 * Torque that heats like the varying one.
 *
 * T_rms [N*m] = sqrt(sum T_i^2 t_i/sum t_i), spin-up counted in. Valid while current goes with torque (not near no load) and the cycle
 * is much shorter than the time constant. Source: definition.
 */
export function rmsTorque(cycle: readonly { T: number; t: number }[]): number {
  const time = cycle.reduce((sum, x) => sum + x.t, 0);
  return Math.sqrt(cycle.reduce((sum, x) => sum + x.T * x.T * x.t, 0) / time);
}

/**
 * Mean temperature of a copper winding from its resistance.
 *
 * T_hot [K] = (R_hot - R_lead)/(R_cold - R_lead) (234.5 K + T_cold) - 234.5 K with both temperatures counted from 0 degC. R [ohm]; R_lead
 * of the test leads, 0 with four wires. Source: IEC 60034-1 (with 235; 234.5 is used throughout here, 0.1 K at a rise of 80 K).
 */
export function windingTemperature(R_hot: number, R_cold: number, T_cold: number, R_lead: number): number {
  const atZero = beta.value - absoluteZero.value;
  return ((R_hot - R_lead) / (R_cold - R_lead)) * (atZero + T_cold) - atZero;
}

/** Resistance of a copper winding carried from temperature T_from to T_to [K]: R (234.5 + t_to)/(234.5 + t_from). Source: IEC 60034-1. */
export function resistanceAt(R: number, T_from: number, T_to: number): number {
  const atZero = beta.value - absoluteZero.value;
  return (R * (atZero + T_to)) / (atZero + T_from);
}

/** Ways a motor is brought to another speed straight from the line, with the heat in the rotor as a multiple of 0.5 J w_s^2. */
const ROTOR_HEAT = { "direct-start": 1, "dc-injection": 1, "plug-to-stop": 3, "plug-reversal": 4 } as const;

/**
 * Heat left in rotor and winding by one start, stop or reversal without load [J].
 *
 * Rotor: 0.5 J w_s^2 for a direct start or a dc-injection stop from w_s, 3 times that for plugging to standstill, 4 times for a full
 * reversal; stator: the rotor's times R_1/R_2 (magnetising current left out; with dc injection the stator's heat is the dc's own and is
 * not counted). J [kg*m2] at the motor, w_s [rad/s]. Source: Chapman; Alger, Induction Machines. On a drive's ramp only about the slip share of it.
 */
export function startHeat(
  how: keyof typeof ROTOR_HEAT,
  J: number,
  w_s: number,
  R_1: number,
  R_2: number,
): { rotor: number; stator: number } {
  const rotor = (ROTOR_HEAT[how] * J * w_s * w_s) / 2;
  return { rotor, stator: how === "dc-injection" ? 0 : (rotor * R_1) / R_2 };
}
