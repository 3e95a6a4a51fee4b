// What a meter says about a circuit: dc resistance, run without load, standstill, slip under a load; and the circuit from such tests.
import { type Circuit, currentAtSlip, folded, slipAtCurrent, slipAtTorque, solveT } from "./circuit.ts";
import { resistanceAt } from "./thermal.ts";
import { root } from "../../solve/root.ts";

/** Volts, hertz, amperes and watts of one run of a test, three-phase unless said. */
export interface TestRun {
  V: number;
  f: number;
  I: number;
  P: number;
}

/**
 * R_1 [ohm] = R_ll/2, half of the resistance between two lines, star and delta alike in the star equivalent.
 *
 * Brought from temperature T_cold to T_hot [K] as copper, and times skin [1] (1.00-1.05) for alternating current. Source: Chapman, dc
 * test; IEEE 112.
 */
export function statorResistance(R_ll: number, T_cold: number, T_hot: number, skin: number): number {
  return (resistanceAt(R_ll, T_cold, T_hot) * skin) / 2;
}

/** Resistance between two lines that a meter reads at T_cold [K] where the circuit has R_1 at T_hot [K]: statorResistance turned round. */
export function lineResistance(R_1: number, T_cold: number, T_hot: number, skin: number): number {
  return resistanceAt((2 * R_1) / skin, T_hot, T_cold);
}

/** X_1 + X_m [ohm] at the test's frequency from a run without load: sqrt(Z^2 - R^2), Z = V/(sqrt3 I), R = P/(3 I^2). Source: IEEE 112. */
export function noLoadReactance(x: TestRun): number {
  const Z = x.V / (Math.sqrt(3) * x.I);
  const R = x.P / (3 * x.I * x.I);
  return Math.sqrt(Z * Z - R * R);
}

/** Friction, fan and core together, P_rot [W] = P - 3 I^2 R_1 of a run without load. Source: Chapman, no-load test. */
export function rotationalLoss(x: TestRun, R_1: number): number {
  return x.P - 3 * x.I * x.I * R_1;
}

/**
 * Impedance of one phase from a standstill test with single phase on two line terminals, the third open.
 *
 * Z [ohm] = V/(2 I), R = P/(2 I^2), X = sqrt(Z^2 - R^2); star equivalent. Source: two phases in series; the pulsating field of a rotor at rest is
 * two equal turning ones, each at slip 1. Valid while the rotor rests; with current at most the plate's the leakage is the running one.
 */
export function standstillImpedance(x: TestRun): { R: number; X: number } {
  const Z = x.V / (2 * x.I);
  const R = x.P / (2 * x.I * x.I);
  return { R, X: Math.sqrt(Z * Z - R * R) };
}

/** What the standstill test would read of a circuit: current [A] and power [W] at V, f. Source: as standstillImpedance. */
export function standstillReading(c: Circuit, V: number, f: number): { I: number; P: number; R: number; X: number } {
  const k = folded(c, f);
  // |Z|^2 = (P + 2 M y + Q y^2)/(D_0 + 2 D_1 y + y^2) at y = R_2; volts across one phase are half of V, so I is that of sqrt3/2 V on three.
  const I = currentAtSlip(k, (Math.sqrt(3) / 2) * V, 1);
  const point = solveT((Math.sqrt(3) / 2) * V, f, c, 1);
  const P = (2 / 3) * point.P_in;
  const { R, X } = standstillImpedance({ V, f, I, P });
  return { I, P, R, X };
}

/**
 * What an uncoupled motor draws at V, f: current [A] and power [W] with the slip that carries friction P_fw at speed w_fw.
 *
 * Source: the circuit at T = P_fw (w/w_fw)^2/w, w taken as the field's speed (slip without load is below 1 %).
 */
export function noLoadReading(c: Circuit, V: number, f: number, P_fw: number, w_fw: number): { I: number; P: number } | null {
  const k = folded(c, f);
  const s = slipAtTorque(k, V, (P_fw * k.w_s) / (w_fw * w_fw));
  if (s === null) return null;
  const point = solveT(V, f, c, s);
  return { I: point.I_1, P: point.P_in };
}

/**
 * R_2 [ohm] from slip s read by tachometer while line current I flows at V, f.
 *
 * The circuit tells y = R_2/s from the current alone; R_2 = s y. Source: closed form of slipAtCurrent. null when no slip gives that current.
 */
export function rotorResistance(c: Circuit, V: number, f: number, I: number, s: number): number | null {
  const slip = slipAtCurrent(folded(c, f), V, I);
  return slip === null ? null : (s * c.R_2) / slip;
}

/**
 * The circuit that gives exactly the readings of a no-load and a blocked-rotor test, three-phase.
 *
 * R_1 given; X_1 + X_m from noLoadReactance, brought to f_n; X_1, X_2, R_2 such that R_1 + j X_1 + j X_m || (R_2 + j X_2) is the blocked
 * impedance, all reactances in proportion to frequency and X_1 = split (X_1 + X_2). The textbooks' short cut (R_2 = R_LR - R_1,
 * X_1 + X_2 = X_LR) leaves X_m out. null when no leakage fits. Source: T circuit; tests as Chapman, determining circuit parameters.
 */
export function circuitFromTests(x: {
  R_1: number;
  noLoad: TestRun;
  blocked: TestRun;
  split: number;
  f_n: number;
  poles: number;
}): Circuit | null {
  const a = x.blocked.f / x.f_n;
  const Z = x.blocked.V / (Math.sqrt(3) * x.blocked.I);
  const R = x.blocked.P / (3 * x.blocked.I * x.blocked.I);
  const X = Math.sqrt(Z * Z - R * R);
  const whole = (noLoadReactance(x.noLoad) * x.f_n) / x.noLoad.f;
  /** Rotor branch behind stator leakage X_1 (at f_n): (Z - z_1) with j X_m taken from beside it. */
  const rotor = (X_1: number) => {
    const x_m = a * (whole - X_1);
    const r = R - x.R_1;
    const j = X - a * X_1;
    const z = r * r + (x_m - j) * (x_m - j);
    return { R_2: (x_m * x_m * r) / z, X_2: (x_m * (j * (x_m - j) - r * r)) / z / a };
  };
  const X_1 = root((try_1) => x.split * rotor(try_1).X_2 - (1 - x.split) * try_1, 0, Math.min(X / a, whole));
  if (X_1 === null) return null;
  const { R_2, X_2 } = rotor(X_1);
  if (!(R_2 > 0)) return null;
  return { R_1: x.R_1, X_1, R_2, X_2, X_m: whole - X_1, G_c: 0, f: x.f_n, poles: x.poles };
}
