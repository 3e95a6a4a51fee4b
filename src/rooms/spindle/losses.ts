// From air gap to shaft: friction, fan, stray loss, and the efficiency that is left.
import { type Circuit, type Point, solveT, synchronousSpeed } from "./circuit.ts";

/**
 * Losses outside the circuit.
 *
 * P_fw [W] friction and windage at shaft speed w_fw [rad/s], taken to grow with the square of speed (bearings less, fan more;
 * assumption). P_stray [W] stray load loss at rotor current I_2n [A], growing with I_2^2 (IEEE 112).
 */
export interface Losses {
  P_fw: number;
  w_fw: number;
  P_stray: number;
  I_2n: number;
}

export interface Shaft extends Point {
  /** Shaft speed [rad/s]. */
  w: number;
  P_fw: number;
  P_stray: number;
  /** Power and torque at the shaft; negative when the shaft drives. */
  P_shaft: number;
  T_shaft: number;
  /** Power out over power in, in the direction it flows; 0 when both flow in and turn to heat. */
  efficiency: number;
}

/**
 * The working point at the shaft.
 *
 * P_shaft [W] = (1 - s) P_ag - P_fw (w/w_fw)^2 - P_stray (I_2/I_2n)^2; T_shaft = P_shaft/w. Source: Chapman, power flow of the
 * induction motor; stray loss as IEEE 112. At standstill friction and stray loss take no torque here.
 */
export function atShaft(V: number, f: number, c: Circuit, l: Losses, s: number): Shaft {
  const point = solveT(V, f, c, s);
  const w = synchronousSpeed(f, c.poles) * (1 - s);
  const P_fw = l.P_fw * (w / l.w_fw) ** 2;
  const P_stray = w === 0 ? 0 : l.P_stray * (point.I_2 / l.I_2n) ** 2;
  const P_shaft = point.P_conv - P_fw - P_stray;
  const T_shaft = w === 0 ? point.T : P_shaft / w;
  return { ...point, w, P_fw, P_stray, P_shaft, T_shaft, efficiency: share(P_shaft, point.P_in) };
}

function share(P_shaft: number, P_in: number): number {
  if (P_shaft > 0 && P_in > 0) return P_shaft / P_in;
  return P_shaft < 0 && P_in < 0 ? P_in / P_shaft : 0;
}
