// What the drive gives the motor at each frequency, and the torque that current, voltage and pull-out leave.
import {
  breakdownSlip,
  breakdownTorque,
  type Circuit,
  emptyFold,
  type Folded,
  folded,
  slipAtCurrent,
  slipAtTorque,
  torqueAtSlip,
} from "./circuit.ts";
import type { Refusal } from "./refusal.ts";
import { root } from "../../solve/root.ts";

/** How volts follow frequency. Volts are rms between lines, E_0 rms of one phase. */
export interface VoltageLaw {
  /** Rated volts of the winding as it is linked, at f_n [Hz]. */
  V_n: number;
  f_n: number;
  /** The most the drive can give at this load. */
  V_max: number;
  /** Air-gap volts held at f_n in proportion to frequency (boost, or vector control); null for plain volts per hertz. */
  E_0: number | null;
}

/** A working point of the drive held at its limit. */
export interface LimitPoint {
  /** Frequency there [Hz]. */
  f: number;
  /** Air-gap torque [N*m]. */
  T: number;
  s: number;
  /** Line volts there [V rms]. */
  V: number;
  by: "current" | "pull-out";
}

/** What a limit is found in, handed in again and again by a search, so that thousands of them allocate nothing. */
export interface Scratch {
  readonly fold: Folded;
  readonly out: LimitPoint;
  readonly at: LimitPoint;
}
export const scratch = (): Scratch => ({ fold: emptyFold(), out: emptyPoint(), at: emptyPoint() });
const emptyPoint = (): LimitPoint => ({ f: 0, T: 0, s: 0, V: 0, by: "current" });

function filled(into: LimitPoint, f: number, T: number, s: number, V: number, by: LimitPoint["by"]): LimitPoint {
  into.f = f;
  into.T = T;
  into.s = s;
  into.V = V;
  into.by = by;
  return into;
}

/** Reserve kept below the breakdown, so that a dip of the supply or a rough cut does not stall the motor. */
export const PULL_OUT_RESERVE = 1.3;

/**
 * Highest frequency with full flux.
 *
 * f_b [Hz] = f_n min(1, V_max/V_n). Source: definition; flux goes with V/f. A law that goes on above V_n keeps the flux to f_n V_max/V_n.
 */
export function baseFrequency(law: VoltageLaw): number {
  return law.f_n * Math.min(1, law.V_max / law.V_n);
}

/**
 * Line volts of plain volts per hertz, V [V] = min(V_n f/f_n, V_max). Source: Rashid, Power Electronics, 4th ed., 15.2.
 */
export function plainVoltage(law: VoltageLaw, f: number): number {
  return Math.min((law.V_n * f) / law.f_n, law.V_max);
}

/**
 * Line volts that hold E volts (one phase) across the air gap at slip s, without a ceiling.
 *
 * V [V] = sqrt3 |E + I_1 (R_1 + j X_1 f/f_n)| = sqrt3 E |p + q y|/(|Z_m| |y + j x_2|), y = R_2/s. Source: constant air-gap flux,
 * Rashid, Power Electronics, 4th ed., 15.2.
 */
export function voltageForAirGap(k: Folded, E: number, s: number): number {
  const q = s / k.R_2;
  return E * Math.sqrt((3 * (k.P * q * q + 2 * k.M * q + k.Q)) / (k.Z_2 * (1 + k.x_2 * k.x_2 * q * q)));
}

/** Air-gap torque [N*m] with E volts of one phase held across the gap: T = 3 E^2 y/(w_s (y^2 + x_2^2)). Source: as voltageForAirGap. */
export function torqueAtAirGap(k: Folded, E: number, s: number): number {
  const q = s / k.R_2;
  return (3 * E * E * q) / (k.w_s * (1 + k.x_2 * k.x_2 * q * q));
}

/** Slip at which the current is I with E volts held across the gap; null when it never is. Source: as slipAtCurrent. */
function slipAtAirGapCurrent(k: Folded, E: number, I: number): number | null {
  const a = I * I * k.Z_2 * k.x_2 * k.x_2 - E * E * k.D_0;
  const b = -E * E * k.D_1;
  const c = I * I * k.Z_2 - E * E;
  const q = (-b - Math.sqrt(b * b - a * c)) / a;
  return a < 0 && q > 0 ? k.R_2 * q : null;
}

/** Slip at which the law runs into the ceiling while it holds E: the greater root of V(s)^2 = V_max^2; Infinity when it never does. */
function slipAtCeiling(k: Folded, E: number, V_max: number): number {
  const v = (V_max * V_max * k.Z_2) / 3;
  const a = E * E * k.P - v * k.x_2 * k.x_2;
  const b = E * E * k.M;
  const c = E * E * k.Q - v;
  if (c >= 0) return 0;
  if (a <= 0) return Infinity;
  return (k.R_2 * (Math.sqrt(b * b - a * c) - b)) / a;
}

/** Largest torque of the law at this frequency, without reserve, and where it stands. */
export function pullOut(k: Folded, law: VoltageLaw, into: LimitPoint = emptyPoint()): LimitPoint {
  const plain = plainVoltage(law, k.f);
  if (law.E_0 === null) return filled(into, k.f, breakdownTorque(k, plain), breakdownSlip(k), plain, "pull-out");
  const E = (law.E_0 * k.f) / law.f_n;
  const peak = k.R_2 / k.x_2;
  const ceiling = slipAtCeiling(k, E, law.V_max);
  if (peak <= ceiling) return filled(into, k.f, torqueAtAirGap(k, E, peak), peak, voltageForAirGap(k, E, peak), "pull-out");
  // At the ceiling the terminal voltage is fixed: its own breakdown, unless that slip was passed before the ceiling was met.
  const s = Math.max(ceiling, breakdownSlip(k));
  return filled(into, k.f, torqueAtSlip(k, law.V_max, s), s, law.V_max, "pull-out");
}

/**
 * Torque the motor may give at frequency f with line current I [A rms]: the lower of the torque at that current and pull-out over
 * PULL_OUT_RESERVE; air gap, before friction.
 *
 * I is the drive's current limit, or the current the winding stands for the time asked (thermal.ts). Zero torque where I does not
 * reach the magnetising current. Source: Novotny, Lipo, Vector Control and Dynamics of AC Drives (current, voltage and pull-out limits).
 */
export function torqueLimit(c: Circuit, law: VoltageLaw, f: number, I: number, on: Scratch = scratch()): LimitPoint {
  const k = folded(c, f, on.fold);
  const out = pullOut(k, law, on.out);
  const T_out = out.T / PULL_OUT_RESERVE;
  const atCurrent = currentPoint(k, law, I, on.at);
  if (atCurrent !== null && atCurrent.s <= out.s && atCurrent.T <= T_out) return atCurrent;
  const s = slipBelowPullOut(k, law, out, T_out);
  return filled(on.at, f, T_out, s, voltageAt(k, law, s), "pull-out");
}

/** The working point at line current I; null when no slip draws so much. */
function currentPoint(k: Folded, law: VoltageLaw, I: number, into: LimitPoint): LimitPoint | null {
  if (law.E_0 !== null) {
    const E = (law.E_0 * k.f) / law.f_n;
    const s = slipAtAirGapCurrent(k, E, I);
    if (s === null && I * I * k.Z_2 <= E * E && voltageForAirGap(k, E, 0) <= law.V_max) return unloaded(k, law, into);
    if (s !== null && voltageForAirGap(k, E, s) <= law.V_max) {
      return filled(into, k.f, torqueAtAirGap(k, E, s), s, voltageForAirGap(k, E, s), "current");
    }
  }
  const V = law.E_0 === null ? plainVoltage(law, k.f) : law.V_max;
  const s = slipAtCurrent(k, V, I);
  if (s !== null) return filled(into, k.f, torqueAtSlip(k, V, s), s, V, "current");
  // Without a slip the current is either more than the motor ever draws (no limit) or less than it needs without load.
  return I * I * k.Q <= (V * V) / 3 ? unloaded(k, law, into) : null;
}

function unloaded(k: Folded, law: VoltageLaw, into: LimitPoint): LimitPoint {
  return filled(into, k.f, 0, 0, voltageAt(k, law, 0), "current");
}

/** Line volts of the law at slip s. */
export function voltageAt(k: Folded, law: VoltageLaw, s: number): number {
  if (law.E_0 === null) return plainVoltage(law, k.f);
  return Math.min(voltageForAirGap(k, (law.E_0 * k.f) / law.f_n, s), law.V_max);
}

/** Air-gap torque of the law at slip s [N*m]. */
export function lawTorque(k: Folded, law: VoltageLaw, s: number): number {
  return torqueAtSlip(k, voltageAt(k, law, s), s);
}

function slipBelowPullOut(k: Folded, law: VoltageLaw, out: LimitPoint, T: number): number {
  // On plain volts per hertz the terminal voltage does not move with slip, and the torque's own quadratic answers.
  if (law.E_0 === null) return slipAtTorque(k, out.V, T) ?? out.s;
  return root((s) => lawTorque(k, law, s) - T, 0, out.s) ?? out.s;
}

/**
 * The limit at shaft speed w >= 0 [rad/s]: the frequency is sought at which the motor, at its limit there, turns at w.
 *
 * f [Hz] such that (1 - s(f)) 4 pi f/p = w. null when no frequency up to four times the one without slip gives it.
 * `near` [Hz]: where a search like this one ended, to start from. The scratch is left folded at f.
 */
export function torqueLimitAtSpeed(
  c: Circuit,
  law: VoltageLaw,
  w: number,
  I: number,
  near?: number,
  on: Scratch = scratch(),
): LimitPoint | null {
  const mostSlip = 4;
  const lowest = 0.02; // Hz; below, the circuit gives no torque worth a name
  const still = Math.max((w * c.poles) / (4 * Math.PI), lowest);
  const quick = atSpeedBySecant(c, law, still, I, near ?? still, on);
  if (quick !== null) return quick;
  const lag = (f: number) => ((4 * Math.PI * f) / c.poles) * (1 - torqueLimit(c, law, f, I, on).s) - w;
  const f = root(lag, still, Math.max(mostSlip * still, law.f_n), 1e-9 * law.f_n);
  return f === null ? null : torqueLimit(c, law, f, I, on);
}

/** Steps after which a frequency that has not settled is sought by bracketing instead. */
const STEPS = 10;
/** Change of frequency at which it has settled [1]. */
const SETTLED = 1e-10;

/**
 * The limit where f (1 - s(f)) = `still` [Hz], by the secant of g(f) = still/(1 - s(f)) - f: slip changes slowly with frequency, so a few
 * steps do. null where they do not.
 */
function atSpeedBySecant(c: Circuit, law: VoltageLaw, still: number, I: number, near: number, on: Scratch): LimitPoint | null {
  let f = near;
  let change = 0;
  let missBefore = 0;
  for (let step = 0; step < STEPS; step += 1) {
    const point = torqueLimit(c, law, f, I, on);
    if (!(point.s < 1)) return null;
    const miss = still / (1 - point.s) - f;
    if (Math.abs(miss) <= SETTLED * f) return point;
    // The first step takes slip as the same at all frequencies.
    const slope = step === 0 ? -1 : (miss - missBefore) / change;
    change = -miss / slope;
    missBefore = miss;
    f += change;
    if (!(f >= still && Number.isFinite(f))) return null;
  }
  return null;
}

/**
 * Frequency above which pull-out and no longer current I decides: the end of constant power [Hz].
 *
 * Torque at constant current falls nearly as 1/f, breakdown as (V/f)^2; both from the circuit. null when current decides up to
 * `highest` or pull-out already at the base frequency. Source: Novotny, Lipo, Vector Control and Dynamics of AC Drives.
 */
export function constantPowerEnd(c: Circuit, law: VoltageLaw, I: number, highest: number): number | null {
  const on = scratch();
  const spare = (f: number) => {
    const out = pullOut(folded(c, f, on.fold), law, on.out);
    const atCurrent = currentPoint(on.fold, law, I, on.at);
    // A current met only past pull-out, or never, is no limit: there pull-out decides, whatever torque that current would give.
    return out.T / PULL_OUT_RESERVE - (atCurrent !== null && atCurrent.s <= out.s ? atCurrent.T : out.T);
  };
  return root(spare, baseFrequency(law), highest, 1e-9 * law.f_n);
}

/** Flux above which the linear circuit is doubtful, and above which it says nothing: shares of rated. Engineering choice. */
const FLUX_WARN = 1.1;
const FLUX_REFUSE = 1.2;

/**
 * How far the flux stands above rated: (V/f)/(V_n/f_n) [1], V at the terminals for plain volts per hertz, across the air gap (one
 * phase, both) where a boost makes up for the drop. Source: flux = E/(2 pi f), definition.
 */
export function fluxShare(V: number, f: number, V_n: number, f_n: number): number {
  return V / f / (V_n / f_n);
}

/** What the flux allows: null (as rated), "warn" (iron near saturation), or the refusal of every figure from the circuit. */
export function fluxGuard(share: number): null | "warn" | Refusal {
  if (share > FLUX_REFUSE) {
    const percent = Math.round(100 * share);
    return {
      code: "flux-too-high",
      refused: `flux at ${percent} % of rated: the iron saturates, magnetising current and heat cannot be told; enter volts and hertz of the winding as it is linked`,
    };
  }
  return share > FLUX_WARN ? "warn" : null;
}
