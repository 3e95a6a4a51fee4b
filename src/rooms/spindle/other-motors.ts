// Spindle motors that are no induction motors: direct current, and permanent-magnet servo.

/** Volts lost at the two brush contacts of a dc armature, nearly constant (textbook value for carbon brushes). */
export const BRUSH_DROP = 2;
/** Mean of a full-wave rectified sine over its rms value. */
const BRIDGE_MEAN = (2 * Math.SQRT2) / Math.PI;

/** A dc motor at one field current: k_phi [V*s = N*m/A], armature resistance R_a [ohm]. */
export interface DcMotor {
  k_phi: number;
  R_a: number;
}

/**
 * Speed of a dc motor at armature volts V_a and torque T (both forward).
 *
 * w [rad/s] = (V_a - 2 V - R_a T/k_phi)/k_phi, from V_a = k_phi w + I_a R_a + 2 V and T = k_phi I_a. Source: Chapman, dc motors.
 * Below 0 the volts do not hold that torque at standstill.
 */
export function dcSpeed(m: DcMotor, V_a: number, T: number): number {
  return (V_a - BRUSH_DROP - (m.R_a * T) / m.k_phi) / m.k_phi;
}

/** Armature volts for speed w [rad/s] at torque T [N*m]: V_a = k_phi w + R_a T/k_phi + 2 V. Source: as dcSpeed. */
export function dcVoltage(m: DcMotor, w: number, T: number): number {
  return m.k_phi * w + (m.R_a * T) / m.k_phi + BRUSH_DROP;
}

/**
 * Mean volts of a single-phase full bridge of thyristors fired at angle alpha [rad], current never ceasing.
 *
 * V [V] = (2 sqrt2/pi) V_rms cos(alpha) = 0.900 V_rms cos(alpha). Source: Rashid, Power Electronics, 4th ed., ch. 10.
 */
export function bridgeVoltage(V_rms: number, alpha: number): number {
  return BRIDGE_MEAN * V_rms * Math.cos(alpha);
}

/**
 * Continuous torque of a dc motor on a rippling supply: plate torque over the form factor F = I_rms/I_mean (1.1-1.4 on a single-phase
 * bridge without a choke; unchecked), since torque goes with the mean and heat with the rms. [N*m]
 */
export function rippleTorque(T_n: number, F: number): number {
  return T_n / F;
}

/**
 * Torque left above base speed with the field weakened, at constant power: T_n w_b/w [N*m], to the plate's field-weakened speed and no
 * further. Source: T = k phi I_a with k phi w constant. Loss of the field is overspeed: a hard-wired trip, not software, guards it.
 */
export function weakenedTorque(T_n: number, w_b: number, w: number): number {
  return w <= w_b ? T_n : (T_n * w_b) / w;
}

/**
 * A permanent-magnet servo motor, phase values: R [ohm] and L [H] of one phase (half of the line-to-line readings), lambda [V*s] peak flux
 * linkage of one phase, pairs [1] of poles.
 */
export interface Servo {
  R: number;
  L: number;
  lambda: number;
  pairs: number;
}

/**
 * Peak flux linkage from the torque constant printed on a servo, lambda [V*s] = k_T/(1.5 pairs sqrt2), k_T [N*m/A rms of a line, star].
 * Source: T = 1.5 pairs lambda i_q with i_q peak (Krause, Wasynczuk, Sudhoff, Analysis of Electric Machinery).
 */
export function fluxLinkage(k_T: number, pairs: number): number {
  return k_T / (1.5 * pairs * Math.SQRT2);
}

/** Current for torque T, i_q [A peak] = T/(1.5 pairs lambda). Source: as fluxLinkage. */
export function servoCurrent(m: Servo, T: number): number {
  return T / (1.5 * m.pairs * m.lambda);
}

/**
 * Peak volts of one phase the inverter can give, U [V] = m V_dc/sqrt3 - drop; V_dc at the valley, m [1] share of the hexagon's circle used
 * (1 at most with space-vector modulation), drop [V] of switches and dead time. Source: Rashid, Power Electronics, 4th ed.
 */
export function phasePeak(V_dc: number, m: number, drop: number): number {
  return (m * V_dc) / Math.sqrt(3) - drop;
}

/**
 * Highest speed at torque T without field weakening.
 *
 * w [rad/s]: (R i_q + pairs w lambda)^2 + (pairs w L i_q)^2 = U^2, the positive root of a quadratic; U [V] peak of one phase. Source:
 * v_q = R i_q + pairs w lambda, v_d = -pairs w L i_q (Krause). 0 when U does not drive the current at standstill.
 */
export function servoTopSpeed(m: Servo, U: number, T: number): number {
  const i_q = servoCurrent(m, T);
  const drop = m.R * i_q;
  if (drop >= U) return 0;
  const a = m.lambda * m.lambda + m.L * m.L * i_q * i_q;
  const b = drop * m.lambda;
  // Rationalised, so that it stays exact when b is large against a (U^2 - drop^2).
  return (U * U - drop * drop) / (b + Math.sqrt(b * b + a * (U * U - drop * drop))) / m.pairs;
}

/**
 * Torque the volts leave at speed w, at most T_peak.
 *
 * T [N*m] = 1.5 pairs lambda i_q with i_q the positive root of (R^2 + (pairs w L)^2) i_q^2 + 2 R pairs w lambda i_q + (pairs w lambda)^2
 * - U^2 = 0; 0 above the speed whose emf alone is U. Source: as servoTopSpeed.
 */
export function servoTorque(m: Servo, U: number, w: number, T_peak: number): number {
  const e = m.pairs * w * m.lambda;
  if (e >= U) return 0;
  const x = m.pairs * w * m.L;
  const i_q = (U * U - e * e) / (m.R * e + Math.sqrt(m.R * m.R * e * e + (m.R * m.R + x * x) * (U * U - e * e)));
  return Math.min(T_peak, 1.5 * m.pairs * m.lambda * i_q);
}
