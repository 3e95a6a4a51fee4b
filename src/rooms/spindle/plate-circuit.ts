// From one exact plate and one set of assumptions to the one circuit that has both.
import type { Circuit } from "./circuit.ts";
import type { Losses } from "./losses.ts";
import { root } from "../../solve/root.ts";

/** The plate load as exact numbers: shaft power P [W], line volts V, line current I [A], f [Hz], poles, slip s [1]. */
export interface PlateLoad {
  P: number;
  V: number;
  I: number;
  f: number;
  poles: number;
  s: number;
}

/** What a plate does not say. */
export interface Assumed {
  /** At plate load [1]. */
  efficiency: number;
  /** Friction and windage, core, stray loss [W]. */
  P_fw: number;
  P_core: number;
  P_stray: number;
  /** Stator's share of the leakage, X_1/(X_1 + X_2) [1]. */
  split: number;
  /** Locked-rotor current at V [A]. */
  I_LR: number;
  /** Leakage at running current over leakage at locked-rotor current [1]: the teeth saturate at standstill. */
  saturation: number;
}

export interface PlateCircuit extends Circuit, Losses {
  /** At plate load: air-gap volts of one phase, core loss [W], power factor. */
  E: number;
  P_core: number;
  powerFactor: number;
}

/** Leakage above this multiple of the locked impedance is never met: X_m takes away 10 % of X_2 at most. */
const WIDEST = 1.3;
/** Relative width at which the search for the leakage ends; far below any plate. */
const CLOSE = 1e-10;

/**
 * The circuit that takes I at V, gives P at slip s with these losses, and draws I_LR at standstill; null when there is none.
 *
 * Losses: R_1 = (P/efficiency - P - P_fw - P_core - P_stray - s P_ag)/(3 I^2), P_ag = (P + P_fw + P_stray)/(1 - s). For leakage X:
 * E = V/sqrt3 - I_1 (R_1 + j X_1); y = R_2/s is the greater root of y^2 - (3|E|^2/P_ag) y + X_2^2 = 0; I_2 = E/(y + j X_2);
 * X_m = |E|^2/Im(E conj(I_1 - I_2 - I_c)), I_c = P_core E/(3|E|^2). X makes |R_1 + j X_1 + j X_m || (R_2 + j X_2)| = V/(sqrt3 I_LR);
 * the running circuit is then found again with saturation times X. Source: own derivation from the T circuit (Chapman; Fitzgerald,
 * Kingsley, Umans); exact data give back the circuit they came from. Rotor resistance at standstill is taken as R_2 (deep bars have
 * more: then X comes out a little high).
 */
export function circuitOfPlate(load: PlateLoad, a: Assumed): PlateCircuit | null {
  const { P, V, I, s } = load;
  const v = V / Math.sqrt(3);
  const P_in = P / a.efficiency;
  const powerFactor = P_in / (3 * v * I);
  const P_ag = (P + a.P_fw + a.P_stray) / (1 - s);
  const R_1 = (P_in - a.P_core - P_ag) / (3 * I * I);
  if (!(R_1 > 0) || !(powerFactor < 1)) return null;
  const cut: Cut = {
    v,
    R_1,
    I_r: I * powerFactor,
    I_x: -I * Math.sqrt(1 - powerFactor * powerFactor),
    P_ag,
    P_core: a.P_core,
    s,
    split: a.split,
    R_2: 0,
    X_m: 0,
    E_2: 0,
    I_2: 0,
  };
  const target = v / a.I_LR;
  const X = root((x) => lockedImpedance(cut, x) - target, 0, widest(cut, WIDEST * target), CLOSE * target);
  if (X === null) return null;
  const running = a.saturation * X;
  if (!branches(cut, running)) return null;
  return {
    R_1,
    X_1: a.split * running,
    R_2: cut.R_2,
    X_2: (1 - a.split) * running,
    X_m: cut.X_m,
    G_c: a.P_core / (3 * cut.E_2),
    f: load.f,
    poles: load.poles,
    P_fw: a.P_fw,
    w_fw: (1 - s) * ((4 * Math.PI * load.f) / load.poles),
    P_stray: a.P_stray,
    I_2n: cut.I_2,
    E: Math.sqrt(cut.E_2),
    P_core: a.P_core,
    powerFactor,
  };
}

/** The plate load seen from the stator, and room for the branches found behind it. */
interface Cut {
  v: number;
  R_1: number;
  I_r: number;
  I_x: number;
  P_ag: number;
  P_core: number;
  s: number;
  split: number;
  R_2: number;
  X_m: number;
  E_2: number;
  I_2: number;
}

/** Fills in the branches behind leakage X; false when the rotor cannot take P_ag behind so much leakage or X_m comes out negative. */
function branches(cut: Cut, X: number): boolean {
  const x_1 = cut.split * X;
  const x_2 = X - x_1;
  const E_r = cut.v - cut.I_r * cut.R_1 + cut.I_x * x_1;
  const E_x = -cut.I_x * cut.R_1 - cut.I_r * x_1;
  const E_2 = E_r * E_r + E_x * E_x;
  const A = (3 * E_2) / cut.P_ag;
  const y = (A + Math.sqrt(A * A - 4 * x_2 * x_2)) / 2;
  const z = y * y + x_2 * x_2;
  // Reactive power (per phase) into the gap, less the rotor's, is the magnetising branch's.
  const Q_m = E_x * cut.I_r - E_r * cut.I_x - (E_2 * x_2) / z;
  cut.R_2 = cut.s * y;
  cut.E_2 = E_2;
  cut.X_m = E_2 / Q_m;
  cut.I_2 = Math.sqrt(E_2 / z);
  // Comparisons with NaN are false, which is what is wanted of a circuit that does not exist.
  return y > 0 && cut.X_m > 0;
}

/** |R_1 + j X_1 + j X_m || (R_2 + j X_2)| [ohm] for leakage X; NaN when there are no such branches. */
function lockedImpedance(cut: Cut, X: number): number {
  if (!branches(cut, X)) return NaN;
  const x_1 = cut.split * X;
  const x_m = cut.X_m;
  const x = X - x_1 + x_m;
  const z = cut.R_2 * cut.R_2 + x * x;
  const r = (x_m * x_m * cut.R_2) / z;
  const j = (x_m * (cut.R_2 * cut.R_2 + (X - x_1) * x)) / z;
  return Math.sqrt((cut.R_1 + r) * (cut.R_1 + r) + (x_1 + j) * (x_1 + j));
}

/** The widest leakage tried: `most`, or where the rotor can just take P_ag (3|E|^2 = 2 X_2 P_ag, a quadratic in X) when that is less. */
function widest(cut: Cut, most: number): number {
  const { v, R_1, I_r, I_x, split } = cut;
  const a = split * split * (I_r * I_r + I_x * I_x);
  const real = v - I_r * R_1;
  const b = split * (real * I_x + I_x * R_1 * I_r) - ((1 - split) * cut.P_ag) / 3;
  const c = real * real + I_x * I_x * R_1 * R_1;
  const edge = c / (Math.sqrt(b * b - a * c) - b);
  // A hair inside, so that rounding does not make the discriminant negative there.
  return edge > 0 ? Math.min(most, edge * (1 - CLOSE)) : most;
}
