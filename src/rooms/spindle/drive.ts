// The drive between bus and winding: what voltage it can make, what it draws, what its cable and its edges do to the winding.

/**
 * Highest line-to-line voltage a drive can make.
 *
 * V_out [V rms] = k V_dc/sqrt 2; V_dc [V] bus voltage, the valley for a check, the mean for the usual case; k [1] what dead time leaves, 0.95 to 0.98.
 * Source: Rashid, Power Electronics, ch. 6 (space-vector modulation, linear range).
 */
export function outputVoltageMax(x: { V_dc: number; k: number }): number {
  return (x.k * x.V_dc) / Math.SQRT2;
}

/**
 * Power a drive takes from its bus.
 *
 * P_bus [W] = T w/(eta_m eta_d); T [N m], w [rad/s] at the motor shaft; eta_m, eta_d [1] of motor and drive at that point (drive 0.95 to 0.98).
 * Source: energy balance. Valid for T w >= 0.
 */
export function busPower(x: { T: number; w: number; eta_m: number; eta_d: number }): number {
  return (x.T * x.w) / (x.eta_m * x.eta_d);
}

/** Speed of a wave on motor cable [m/s], about half that of light. Practice after Mohan, Undeland and Robbins, Power Electronics. */
export const CABLE_WAVE_SPEED = 150e6;

/**
 * Cable length from which the winding sees the whole reflected edge.
 *
 * l_c [m] = v t_r/2; v [m/s]; t_r [s] rise time of the drive's edge. Source: reflection on a line, Mohan, Undeland, Robbins, Power Electronics.
 */
export function criticalCableLength(x: { v: number; t_r: number }): number {
  return (x.v * x.t_r) / 2;
}

/**
 * Greatest voltage between the terminals of the winding.
 *
 * V_peak [V] = V_dc (1 + min(1, l/l_c)); V_dc [V] highest bus voltage (when braking: the trip); l, l_c [m] cable and its critical length.
 * Source: lossless line, open at the motor: before the drive's answer comes back the terminals run ahead by the share of the edge that one return trip
 * takes. An upper bound: cable losses and the winding's own impedance only lower it.
 */
export function insulationStress(x: { V_dc: number; l: number; l_c: number }): number {
  return x.V_dc * (1 + Math.min(1, x.l / x.l_c));
}

/** Peak a general-purpose winding stands, at a rise of 2 us or slower [V]. NEMA MG 1 part 30 (seen quoted). */
export const GENERAL_WINDING_LIMIT = 1000;

/** Peak a winding made for inverters stands as a multiple of its rated voltage [1]: 1.1 * 2 sqrt 2, printed as 3.1. NEMA MG 1 part 31 (seen quoted). */
const INVERTER_WINDING_FACTOR = 3.1;

/**
 * Peak a winding made for inverters stands, at a rise of 0.1 us or slower.
 *
 * V_lim [V] = 3.1 V; V [V rms] its highest rated voltage: a dual-voltage winding has the same insulation in both connections.
 * Source: NEMA MG 1 part 31 (seen quoted).
 */
export function inverterWindingLimit(x: { V: number }): number {
  return INVERTER_WINDING_FACTOR * x.V;
}

/**
 * Inductance of a line choke named by its percentage.
 *
 * L [H] = x_c V^2/(2 pi f P); x_c [1] the percentage as a share; V [V rms]; f [Hz]; P [W] bus power it was named for. Source: definition.
 */
export function chokeInductance(x: { x_c: number; V: number; f: number; P: number }): number {
  return (x.x_c * x.V * x.V) / (2 * Math.PI * x.f * x.P);
}
