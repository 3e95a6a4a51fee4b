// The belt between motor and spindle: how far it wraps, how long it is, what torque it carries before it slips.

/**
 * Ratio of a belt drive, motor turns per spindle turn.
 *
 * i [1] = d_s/d_m; d_m, d_s [m] pitch diameters on motor and spindle, or their teeth. Source: definition.
 */
export function beltRatio(x: { d_m: number; d_s: number }): number {
  return x.d_s / x.d_m;
}

/**
 * Wrap on the smaller of two pulleys.
 *
 * theta [rad] = pi - 2 asin(|d_s - d_m|/(2 c)); d_m, d_s [m] pitch diameters; c [m] between centres. Source: Shigley, Mechanical Engineering
 * Design, ch. 17 (open belt). Valid for c > |d_s - d_m|/2.
 */
export function beltWrap(x: { d_m: number; d_s: number; c: number }): number {
  return Math.PI - 2 * Math.asin(Math.abs(x.d_s - x.d_m) / (2 * x.c));
}

/**
 * Pitch length of an open belt.
 *
 * L [m] = 2 sqrt(c^2 - ((d_s - d_m)/2)^2) + d/2 theta + D/2 (2 pi - theta), d and D the smaller and larger of d_m, d_s [m]; c [m] between centres;
 * theta [rad] wrap on the smaller. Source: Shigley, Mechanical Engineering Design, ch. 17.
 */
export function beltLength(x: { d_m: number; d_s: number; c: number }): number {
  const theta = beltWrap(x);
  const small = Math.min(x.d_m, x.d_s);
  const large = Math.max(x.d_m, x.d_s);
  const free = Math.sqrt(x.c * x.c - ((large - small) / 2) ** 2);
  return 2 * free + (small / 2) * theta + (large / 2) * (2 * Math.PI - theta);
}

/** A set of belts by what decides its grip. */
export interface BeltGrip {
  /** Static strand tension of the whole set [N]. */
  T_0: number;
  /** Mass per length of the whole set [kg/m]. */
  m: number;
  /** Belt speed [m/s]. */
  v: number;
  /** Friction coefficient [1]. */
  mu: number;
  /** Wrap on the smaller pulley [rad]. */
  theta: number;
  /** Included groove angle [rad]; pi for a flat belt. */
  beta: number;
  /** Pitch diameter of the smaller pulley [m]. */
  d: number;
}

/**
 * Torque at which a belt between fixed centres slips, at the smaller pulley.
 *
 * T [N m] = (T_0 - m v^2) d (E - 1)/(E + 1), E = exp(mu theta/sin(beta/2)). Symbols: BeltGrip. Source: Shigley, Mechanical Engineering Design, ch. 17,
 * with T_1 + T_2 = 2 T_0: between fixed centres the belt's own centrifugal pull eats grip. None left: 0.
 */
export function slipTorqueFixed(x: BeltGrip): number {
  return Math.max(0, x.T_0 - x.m * x.v * x.v) * x.d * gripShare(x);
}

/**
 * Torque at which a belt held by a spring or a weight slips, at the smaller pulley.
 *
 * T [N m] = T_0 d (E - 1)/(E + 1), E = exp(mu theta/sin(beta/2)); the tensioner takes up the centrifugal pull, T_1 + T_2 = 2 (T_0 + m v^2).
 * Symbols: BeltGrip. Source: Shigley, Mechanical Engineering Design, ch. 17.
 */
export function slipTorqueSprung(x: BeltGrip): number {
  return x.T_0 * x.d * gripShare(x);
}

/** (E - 1)/(E + 1) with E = exp(mu theta/sin(beta/2)), as a hyperbolic tangent, which does not overflow. */
function gripShare(x: BeltGrip): number {
  return Math.tanh((x.mu * x.theta) / (2 * Math.sin(x.beta / 2)));
}

/**
 * Torque at the spindle for a torque at the motor.
 *
 * T_s [N m] = eta_b i T_m - T_f; eta_b [1] of the belt, V 0.93 to 0.97, toothed 0.97 to 0.99 (practice); i [1] motor turns per spindle turn;
 * T_m [N m]; T_f [N m] friction of the spindle at that speed. Source: energy balance.
 */
export function spindleTorque(x: { eta_b: number; i: number; T_m: number; T_f: number }): number {
  return x.eta_b * x.i * x.T_m - x.T_f;
}
