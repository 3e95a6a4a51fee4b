// The induction motor as one circuit per phase: torque, current and power at any slip, in closed form.

/**
 * One phase of the star-equivalent T circuit (a delta phase impedance divided by 3) [ohm], reactances at the frequency f [Hz].
 *
 * R_1, X_1 stator; R_2, X_2 rotor seen from the stator; X_m magnetising; G_c [S] beside X_m carries the core loss (0: core loss is
 * counted with friction, as the textbooks' examples do). poles [1] counts poles, not pairs.
 */
export interface Circuit {
  R_1: number;
  X_1: number;
  R_2: number;
  X_2: number;
  X_m: number;
  G_c: number;
  f: number;
  poles: number;
}

/** Core loss at constant flux grows as f^1.4 (between the 1.3 and 1.5 of usual sheet; assumption), E^2 G_c alone as f^2. */
const CORE_EXPONENT = 1.4;

/**
 * Speed of the field.
 *
 * w_s [rad/s] = 4 pi f / p; f [Hz]; p [1] number of poles. Definition.
 */
export function synchronousSpeed(f: number, poles: number): number {
  return (4 * Math.PI * f) / poles;
}

/**
 * The circuit at one frequency, folded into real numbers that give torque and current for every slip.
 *
 * With y = R_2/s the input impedance is Z = (p + q y)/(d + y), where d = Z_m + j x_2, q = z_1 + Z_m, p = z_1 d + j x_2 Z_m. Kept are
 * P = |p|^2 [ohm4], M = Re(p q*) [ohm3], Q = |q|^2 [ohm2], D_0 = |d|^2 [ohm2], D_1 = Re d [ohm], Z_2 = |Z_m|^2 [ohm2].
 */
export interface Folded {
  f: number;
  w_s: number;
  R_2: number;
  P: number;
  M: number;
  Q: number;
  D_0: number;
  D_1: number;
  Z_2: number;
  /** Rotor leakage reactance at f [ohm]. */
  x_2: number;
}

/** Folds circuit c at frequency f > 0 [Hz] into `into`, which a loop hands in again and again so that nothing is allocated. */
export function folded(c: Circuit, f: number, into: Folded = emptyFold()): Folded {
  const a = f / c.f;
  const x_1 = a * c.X_1;
  const x_2 = a * c.X_2;
  const b = 1 / (a * c.X_m);
  const g = c.G_c === 0 ? 0 : c.G_c * a ** (CORE_EXPONENT - 2);
  const y_2 = g * g + b * b;
  const r_m = g / y_2;
  const x_m = b / y_2;
  const d_x = x_m + x_2;
  const q_r = c.R_1 + r_m;
  const q_x = x_1 + x_m;
  const p_r = c.R_1 * r_m - x_1 * d_x - x_2 * x_m;
  const p_x = c.R_1 * d_x + x_1 * r_m + x_2 * r_m;
  into.f = f;
  into.w_s = synchronousSpeed(f, c.poles);
  into.R_2 = c.R_2;
  into.P = p_r * p_r + p_x * p_x;
  into.M = p_r * q_r + p_x * q_x;
  into.Q = q_r * q_r + q_x * q_x;
  into.D_0 = r_m * r_m + d_x * d_x;
  into.D_1 = r_m;
  into.Z_2 = r_m * r_m + x_m * x_m;
  into.x_2 = x_2;
  return into;
}

/** A fold to be filled. */
export function emptyFold(): Folded {
  return { f: 0, w_s: 0, R_2: 0, P: 0, M: 0, Q: 0, D_0: 0, D_1: 0, Z_2: 0, x_2: 0 };
}

/**
 * Air-gap torque at line volts V and slip s.
 *
 * T [N*m] = 3 |I_2|^2 R_2/(s w_s) = V^2 Z_2 R_2 s/(w_s (P s^2 + 2 M R_2 s + Q R_2^2)). Motoring 0 < s, generating s < 0, braking s > 1.
 * Source: Chapman, Electric Machinery Fundamentals, induction motor torque; rational form derived from the T circuit.
 */
export function torqueAtSlip(k: Folded, V: number, s: number): number {
  return (V * V * k.Z_2 * k.R_2 * s) / (k.w_s * (k.P * s * s + 2 * k.M * k.R_2 * s + k.Q * k.R_2 * k.R_2));
}

/**
 * Line current [A rms] at line volts V and slip s.
 *
 * I_1^2 = (V^2/3)(D_0 s^2 + 2 D_1 R_2 s + R_2^2)/(P s^2 + 2 M R_2 s + Q R_2^2). Source: as torqueAtSlip.
 */
export function currentAtSlip(k: Folded, V: number, s: number): number {
  const above = k.D_0 * s * s + 2 * k.D_1 * k.R_2 * s + k.R_2 * k.R_2;
  return V * Math.sqrt(above / (3 * (k.P * s * s + 2 * k.M * k.R_2 * s + k.Q * k.R_2 * k.R_2)));
}

/**
 * Largest motoring torque at line volts V, the breakdown.
 *
 * T_bd [N*m] = V^2 Z_2/(2 w_s (M + sqrt(P Q))), the exact Thevenin result 3 V_th^2/(2 w_s (R_th + hypot(R_th, X_th + X_2))).
 * Source: Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed., 6.5.
 */
export function breakdownTorque(k: Folded, V: number): number {
  return (V * V * k.Z_2) / (2 * k.w_s * (k.M + Math.sqrt(k.P * k.Q)));
}

/** Slip of the breakdown, s_bd [1] = R_2 sqrt(Q/P); the generating peak stands at -s_bd. Source: as breakdownTorque. */
export function breakdownSlip(k: Folded): number {
  return k.R_2 * Math.sqrt(k.Q / k.P);
}

/** Largest generating torque, negative: -V^2 Z_2/(2 w_s (sqrt(P Q) - M)) [N*m]. Source: as breakdownTorque, y negative. */
export function generatingBreakdown(k: Folded, V: number): number {
  return (-V * V * k.Z_2) / (2 * k.w_s * (Math.sqrt(k.P * k.Q) - k.M));
}

/**
 * Slip on the stable branch at which the air gap gives torque T (negative: generating); null beyond the breakdown.
 *
 * The smaller root of P s^2 - 2 B R_2 s + Q R_2^2 = 0, B = V^2 Z_2/(2 T w_s) - M. Source: quadratic of torqueAtSlip.
 */
export function slipAtTorque(k: Folded, V: number, T: number): number | null {
  if (T === 0) return 0;
  const B = (V * V * k.Z_2) / (2 * T * k.w_s) - k.M;
  const root = Math.sqrt(B * B - k.P * k.Q);
  if (Number.isNaN(root) || B * T < 0) return null;
  return (k.R_2 * k.Q) / (B + Math.sign(T) * root);
}

/**
 * Motoring slip at which the line current is I; null when the motor never draws so little or so much. May lie beyond the breakdown.
 *
 * The larger root of (P I^2 - D_0 V^2/3) s^2 + 2 R_2 (M I^2 - D_1 V^2/3) s + R_2^2 (Q I^2 - V^2/3) = 0. Source: quadratic of
 * currentAtSlip.
 */
export function slipAtCurrent(k: Folded, V: number, I: number): number | null {
  const v = (V * V) / 3;
  const a = k.P * I * I - k.D_0 * v;
  const b = k.M * I * I - k.D_1 * v;
  const c = k.Q * I * I - v;
  const root = Math.sqrt(b * b - a * c);
  // a >= 0: I is more than the motor draws at any slip.
  if (a >= 0 || Number.isNaN(root)) return null;
  // Of the two forms of the same root, the one without a difference of near-equal numbers.
  const s = b >= 0 ? (-b - root) / a : c / (root - b);
  return s > 0 ? k.R_2 * s : null;
}

/** Everything the circuit says of one working point. Powers [W] of all three phases, currents [A rms] of a line. */
export interface Point {
  /** Air-gap torque [N*m]. */
  T: number;
  I_1: number;
  I_2: number;
  /** cos phi; negative when power flows back into the line. */
  powerFactor: number;
  P_in: number;
  P_ag: number;
  P_core: number;
  P_copper_1: number;
  P_copper_2: number;
  /** Mechanical power before friction, (1 - s) P_ag. */
  P_conv: number;
  /** Voltage across the magnetising branch, one phase [V]. */
  E: number;
}

/**
 * The circuit solved at line volts V, frequency f > 0 and slip s (0: the field's own speed).
 *
 * P_in = 3 R_1 I_1^2 + P_core + P_ag, P_ag = 3 I_2^2 R_2/s, T = P_ag/w_s. Source: Chapman, power flow of the induction motor.
 */
export function solveT(V: number, f: number, c: Circuit, s: number): Point {
  return solvedAt(folded(c, f), V, c, s);
}

/** The same where the circuit stands folded already. */
export function solvedAt(k: Folded, V: number, c: Circuit, s: number): Point {
  const below = k.P * s * s + 2 * k.M * k.R_2 * s + k.Q * k.R_2 * k.R_2;
  const v = (V * V) / 3;
  const I_1 = currentAtSlip(k, V, s);
  const I_2 = Math.abs(s) * Math.sqrt((v * k.Z_2) / below);
  const P_ag = torqueAtSlip(k, V, s) * k.w_s;
  const E = Math.sqrt((v * k.Z_2 * (c.R_2 * c.R_2 + k.x_2 * k.x_2 * s * s)) / below);
  // 1/Z_m = G - jB, so G = D_1/Z_2.
  const P_core = (3 * E * E * k.D_1) / k.Z_2;
  const P_copper_1 = 3 * I_1 * I_1 * c.R_1;
  const P_in = P_copper_1 + P_core + P_ag;
  return {
    T: P_ag / k.w_s,
    I_1,
    I_2,
    powerFactor: P_in / (Math.sqrt(3) * V * I_1),
    P_in,
    P_ag,
    P_core,
    P_copper_1,
    P_copper_2: s * P_ag,
    P_conv: (1 - s) * P_ag,
    E,
  };
}

/**
 * The same winding linked for another voltage: every ohm times k^2.
 *
 * k [1] = new rated voltage / rated voltage as found. Same turns, same flux in each, so torque at a given slip is unchanged when V goes
 * with k. Source: derivation; NEMA MG 1 lead tables (links.ts).
 */
export function reconnected(c: Circuit, k: number): Circuit {
  const z = k * k;
  return { ...c, R_1: c.R_1 * z, X_1: c.X_1 * z, R_2: c.R_2 * z, X_2: c.X_2 * z, X_m: c.X_m * z, G_c: c.G_c / z };
}
