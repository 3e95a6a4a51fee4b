// A motor on unequal line voltages: the backward field it sees, the heat that makes, the load that is left.
import { type Circuit, currentAtSlip, type Folded, folded, torqueAtSlip } from "./circuit.ts";
import { root } from "../../solve/root.ts";

export interface Unbalanced {
  /** Forward and backward current [A rms]; the worst line carries up to their sum. */
  I_1: number;
  I_2: number;
  /** Net air-gap torque [N*m]. */
  T: number;
  /** Copper loss of stator and rotor, both fields [W]. */
  P_copper: number;
  /** The part of it made by the backward field [W]. */
  P_extra: number;
}

/**
 * Working point on unbalanced volts: the circuit run at slip s with V, and at 2 - s with u_2 V.
 *
 * V [V] line volts of the forward (positive) sequence; u_2 [1] = V_2/V_1. Source: Krause, Wasynczuk, Sudhoff, Analysis of Electric
 * Machinery (symmetrical components). Rotor bars show more resistance to the backward field (twice line frequency) than R_2: the rotor
 * part of P_extra is a low figure.
 */
export function unbalanced(k: Folded, c: Circuit, V: number, u_2: number, s: number): Unbalanced {
  const back = 2 - s;
  const I_1 = currentAtSlip(k, V, s);
  const I_2 = currentAtSlip(k, u_2 * V, back);
  const T_1 = torqueAtSlip(k, V, s);
  const T_2 = torqueAtSlip(k, u_2 * V, back);
  const P_extra = 3 * I_2 * I_2 * c.R_1 + back * T_2 * k.w_s;
  return { I_1, I_2, T: T_1 - T_2, P_copper: 3 * I_1 * I_1 * c.R_1 + s * T_1 * k.w_s + P_extra, P_extra };
}

/**
 * Share of rated torque at which copper loss on unbalanced volts is what it is at the rated slip s_n on equal volts.
 *
 * T(s)/T(s_n) [1] with P_copper(s, u_2) = P_copper(s_n, 0); 0 when the backward field alone makes that heat. Source: as unbalanced.
 * The derating curve of NEMA MG 1 (1.0 at 1 %, 0.95 at 2 %, 0.90 at 3 %; over 5 % do not run; points seen in secondary sources) asks
 * for more, since it covers the worst line and the warmer bars.
 */
export function unbalanceDerating(c: Circuit, V: number, f: number, u_2: number, s_n: number): number {
  const k = folded(c, f);
  const rated = unbalanced(k, c, V, 0, s_n);
  if (u_2 === 0) return 1;
  const excess = (s: number) => unbalanced(k, c, V, u_2, s).P_copper - rated.P_copper;
  const s = root(excess, 0, s_n);
  return s === null ? 0 : Math.max(0, unbalanced(k, c, V, u_2, s).T / rated.T);
}
