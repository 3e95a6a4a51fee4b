// Milling: mean power by the mean chip, and the torque of single teeth, which a coarse cutter asks in bursts.
import { type Cut, specificForce, type Work } from "./cutting.ts";

/** A cutter and its engagement. */
export interface Mill extends Work {
  /** Feed a tooth [m]. */
  f_z: number;
  /** Teeth [1]. */
  z: number;
  /** Diameter [m]. */
  D: number;
  /** Depth along the axis, width of the engagement [m]; a_e <= D. */
  a_p: number;
  a_e: number;
  /** Lead angle of the edge [rad], 90 deg for a shell end mill. */
  kappa: number;
  /** Speed [rad/s]. */
  w: number;
}

/** A milling cut, with the highest torque as teeth come and go [N m] and the mean number of teeth in the cut [1]. */
export interface MillingCut extends Cut {
  T_peak: number;
  z_e: number;
}

/**
 * Peripheral milling: the cutter stands beside the work.
 *
 * phi_s = acos(1 - 2 a_e/D), h_m = f_z sin kappa (2 a_e/D)/phi_s, P = a_p a_e v_f k_c(h_m), v_f = f_z z w/(2 pi), T = P/w. T_peak: sum over the teeth in the cut of k_c(h) b h D/2 with
 * h = f_z sin phi sin kappa, b = a_p/sin kappa, over one pitch of the cutter, straight teeth (a helix only smooths it). Symbols: Mill.
 * Source: Klocke, Fertigungsverfahren 1, milling; Tschaetsch, Applied Machining Technology.
 */
export function peripheralMill(x: Mill): MillingCut {
  const arc = Math.acos(1 - (2 * x.a_e) / x.D);
  return mill(x, 0, arc);
}

/** Face milling with the cutter over the middle of the work: phi = 2 asin(a_e/D), else as peripheralMill. */
export function centredMill(x: Mill): MillingCut {
  const half = Math.asin(x.a_e / x.D);
  return mill(x, Math.PI / 2 - half, Math.PI / 2 + half);
}

function mill(x: Mill, from: number, to: number): MillingCut {
  const arc = to - from;
  const h = (x.f_z * Math.sin(x.kappa) * (2 * x.a_e)) / x.D / arc;
  const k_c = specificForce({ kc11: x.kc11, m_c: x.m_c, K: x.K, h });
  const T = (x.a_p * x.a_e * x.f_z * x.z * k_c) / (2 * Math.PI);
  return { h, k_c, F_c: (2 * T) / x.D, T, P: T * x.w, T_peak: peakTorque(x, from, to), z_e: (x.z * arc) / (2 * Math.PI) };
}

/** Angles within one pitch of the cutter at which the teeth are summed first; the highest is then closed in on. */
const ANGLES = 64;
/** Halvings of the gap around the highest: it ends up far below a thousandth of a pitch. */
const HALVINGS = 12;

/** Highest sum of the torques of all teeth in the cut, over one pitch of the cutter [N m]. */
function peakTorque(x: Mill, from: number, to: number): number {
  const pitch = (2 * Math.PI) / x.z;
  const sine = Math.sin(x.kappa);
  // k_c(h) h falls apart into a constant and h^(1 - m_c), so that the loop holds one power only.
  const scale = specificForce({ kc11: x.kc11, m_c: x.m_c, K: x.K, h: x.f_z * sine }) * x.f_z * x.a_p * (x.D / 2);
  const exponent = 1 - x.m_c;
  const teeth = (offset: number): number => {
    let sum = 0;
    for (let phi = from + offset; phi <= to; phi += pitch) sum += Math.max(0, Math.sin(phi)) ** exponent;
    return sum;
  };
  // Just before a tooth leaves, the sum has its jumps; there it is looked at besides.
  const leaving = (to - from) % pitch;
  let best = leaving;
  let peak = teeth(leaving * (1 - 1e-12));
  for (let k = 0; k <= ANGLES; k++) {
    const sum = teeth((k / ANGLES) * pitch);
    if (sum > peak) {
      peak = sum;
      best = (k / ANGLES) * pitch;
    }
  }
  for (let gap = pitch / ANGLES / 2, n = 0; n < HALVINGS; n++, gap /= 2) {
    for (const at of [best - gap, best + gap]) {
      if (at < 0 || at > pitch) continue;
      const sum = teeth(at);
      if (sum > peak) {
        peak = sum;
        best = at;
      }
    }
  }
  return scale * peak;
}
