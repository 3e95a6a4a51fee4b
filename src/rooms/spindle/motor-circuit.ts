// The circuit of a motor: drawn from its plate, weighed by its readings, and turned to the links of now.
import { figure, joint, perhaps, type Ref } from "../../kernel/figure.ts";
import { motor } from "../ground/index.ts";
import type { Circuit } from "./circuit.ts";
import type { Losses } from "./losses.ts";
import {
  connected,
  induction,
  loadedCurrent,
  loadedSlip,
  noLoadCurrent,
  noLoadFrequency,
  noLoadPower,
  noLoadVoltage,
  plateCode,
  plateDesign,
  plateFrequency,
  platePower,
  plateSpeed,
  plateVoltage,
  resistance,
  resistanceTemperature,
  standstillCurrent,
  standstillFrequency,
  standstillPower,
  standstillVoltage,
  testedAs,
  winding,
} from "./motor-inputs.ts";
import { fieldSpeed, linkFactor, linkShare, poles, referenceCurrent, referenceVoltage } from "./motor-plate.ts";
import { isCodeLetter } from "./plate.ts";
import { drawCircuits } from "./plate-draws.ts";
import type { Measured, Readings } from "./plate-readings.ts";

/** Least standard uncertainty of a shop reading, as a share: a meter, its leads and a hand. */
const LEAST = { ohms: 0.005, amperes: 0.01, watts: 0.02, slip: 0.03 } as const;

const measured = (value: number, half: number | undefined, least: number): Measured => ({
  value,
  u: Math.max((half ?? 0) / 2, least * value),
});

export const plateCircuit = joint({
  id: "spindle.motor.circuit",
  per: motor,
  says: "circuit of the motor at the plate's higher voltage",
  method:
    "circuits drawn from stated bands until 4,000 fit the plate, each solved so that plate load and locked-rotor current come out; weighed by the readings taken, resampled",
  source:
    "T circuit, Chapman, Electric Machinery Fundamentals; leakage split and stray loss IEEE 112 (unchecked); code letters NEMA MG 1; resampling JCGM 101:2008",
  needs: {
    P: platePower,
    V: referenceVoltage,
    I: referenceCurrent,
    f: plateFrequency,
    w: plateSpeed,
    poles,
    plate: plateVoltage,
    design: perhaps(plateDesign),
    code: perhaps(plateCode),
    winding,
    connected: perhaps(connected),
    tested: perhaps(testedAs),
    R: perhaps(resistance),
    T: resistanceTemperature,
    V_0: perhaps(noLoadVoltage),
    f_0: perhaps(noLoadFrequency),
    I_0: perhaps(noLoadCurrent),
    P_0: perhaps(noLoadPower),
    V_k: perhaps(standstillVoltage),
    f_k: perhaps(standstillFrequency),
    I_k: perhaps(standstillCurrent),
    P_k: perhaps(standstillPower),
    slip: perhaps(loadedSlip),
    I_s: perhaps(loadedCurrent),
    w_s: fieldSpeed,
  },
  ...induction,
  gives: {
    R_1: { symbol: "R_1", unit: "ohm", says: "stator resistance, hot, one phase" },
    X_1: { symbol: "X_1", unit: "ohm", says: "stator leakage reactance" },
    R_2: { symbol: "R_2", unit: "ohm", says: "rotor resistance seen from the stator" },
    X_2: { symbol: "X_2", unit: "ohm", says: "rotor leakage reactance seen from the stator" },
    X_m: { symbol: "X_m", unit: "ohm", says: "magnetising reactance" },
    G_c: { symbol: "G_c", unit: "1/ohm", says: "conductance that stands for core loss" },
    P_fw: { symbol: "P_fw", unit: "W", kind: "heat", says: "friction and fan" },
    P_stray: { symbol: "P_st", unit: "W", kind: "heat", says: "stray loss at plate load" },
    I_2n: { symbol: "I_2n", unit: "A", says: "rotor current at plate load, seen from the stator" },
    E: { symbol: "E_n", unit: "V", says: "voltage across the air gap at plate load, one phase" },
    efficiency: { symbol: "eta_n", unit: "1", kind: "share", says: "efficiency at plate load" },
    powerFactor: { symbol: "pf_n", unit: "1", kind: "ratio", says: "power factor at plate load" },
    I_LR: { symbol: "I_LR", unit: "A", says: "locked-rotor current" },
    R_ll: { symbol: "R_ll", unit: "ohm", says: "what a meter would read between two lines at 20 degC" },
    I_0: { symbol: "I_0", unit: "A", says: "what the motor would draw without load" },
    X_k: { symbol: "X_k", unit: "ohm", says: "reactance that the standstill test would show" },
  },
  of: (x, draw) => {
    const k = (as: string | null): number =>
      linkFactor({ connected: x.plate.length === 1 ? null : (as ?? x.connected), winding: x.winding });
    const readings: Readings = {};
    if (x.R !== null) readings.resistance = { R: measured(x.R, draw.half.R, LEAST.ohms), T: x.T, k: k(x.tested) };
    if (x.V_0 !== null && x.f_0 !== null && x.I_0 !== null) {
      const P = x.P_0 === null ? null : measured(x.P_0, draw.half.P_0, LEAST.watts);
      readings.noLoad = { V: x.V_0, f: x.f_0, I: measured(x.I_0, draw.half.I_0, LEAST.amperes), P, k: k(x.connected) };
    }
    if (x.V_k !== null && x.f_k !== null && x.I_k !== null && x.P_k !== null) {
      const [I, P] = [measured(x.I_k, draw.half.I_k, LEAST.amperes), measured(x.P_k, draw.half.P_k, LEAST.watts)];
      readings.standstill = { V: x.V_k, f: x.f_k, I, P, k: k(x.tested) };
    }
    if (x.slip !== null) {
      const share = k(x.connected);
      const s = measured(x.slip / x.w_s, draw.half.slip === undefined ? undefined : draw.half.slip / x.w_s, LEAST.slip);
      readings.loaded = { V: x.V * share, f: x.f, I: x.I_s ?? x.I / share, s, k: share };
    }
    const code = x.code !== null && isCodeLetter(x.code) ? x.code : null;
    const drawn = drawCircuits({ P: x.P, V: x.V, I: x.I, f: x.f, w: x.w, poles: x.poles, design: x.design, code }, readings, draw);
    return "refused" in drawn ? drawn : drawn.columns;
  },
  readings: [
    { part: "R_ll", input: resistance, says: "dc resistance between two lines" },
    { part: "I_0", input: noLoadCurrent, says: "current without load" },
    { part: "X_k", input: standstillCurrent, says: "standstill test, single phase" },
  ],
});

const ohm = (id: string, of: Ref<number>, symbol: string, says: string) =>
  figure({
    id: `spindle.motor.${id}`,
    per: motor,
    symbol,
    unit: "ohm",
    says: `${says}, as connected`,
    formula: "k^2 * Z",
    source: "turns between two lines: every ohm goes with the square of the voltage",
    needs: { k: linkShare, Z: of },
    ...induction,
    of: (x) => x.k * x.k * x.Z,
  });
export const statorR = ohm("r1", plateCircuit.R_1, "R_1", "stator resistance, hot, one phase");
export const statorX = ohm("x1", plateCircuit.X_1, "X_1", "stator leakage reactance");
export const rotorR = ohm("r2", plateCircuit.R_2, "R_2", "rotor resistance seen from the stator");
export const rotorX = ohm("x2", plateCircuit.X_2, "X_2", "rotor leakage reactance seen from the stator");
export const magnetisingX = ohm("xm", plateCircuit.X_m, "X_m", "magnetising reactance");
export const coreG = figure({
  id: "spindle.motor.gc",
  per: motor,
  symbol: "G_c",
  unit: "1/ohm",
  says: "conductance that stands for core loss, as connected",
  formula: "G / k^2",
  source: "turns between two lines",
  needs: { k: linkShare, G: plateCircuit.G_c },
  ...induction,
  of: (x) => x.G / (x.k * x.k),
});

/** The needs of everything that solves the circuit: as connected, reactances at f_n. Core conductance and f_n may be left out. */
export const circuitNeeds = {
  R_1: statorR,
  X_1: statorX,
  R_2: rotorR,
  X_2: rotorX,
  X_m: magnetisingX,
  G_c: perhaps(coreG),
  p: poles,
} as const;

interface CircuitValues {
  readonly R_1: number;
  readonly X_1: number;
  readonly R_2: number;
  readonly X_2: number;
  readonly X_m: number;
  readonly G_c: number | null;
  readonly p: number;
}
/** The circuit of a sample, reactances at f_n [Hz]. */
export function circuitFrom(x: CircuitValues, f_n: number): Circuit {
  return { R_1: x.R_1, X_1: x.X_1, R_2: x.R_2, X_2: x.X_2, X_m: x.X_m, G_c: x.G_c ?? 0, f: f_n, poles: x.p };
}

/** Losses outside the circuit, which do not change with the links but for the current that stray loss is counted at. */
export const lossNeeds = {
  P_fw: plateCircuit.P_fw,
  w_fw: plateSpeed,
  P_st: perhaps(plateCircuit.P_stray),
  I_2n: perhaps(plateCircuit.I_2n),
  k: perhaps(linkShare),
} as const;
/** Without a stray loss or the rotor current it is counted at there is none. */
export function lossesFrom(x: { P_fw: number; w_fw: number; P_st: number | null; I_2n: number | null; k: number | null }): Losses {
  const stray = x.I_2n === null ? 0 : (x.P_st ?? 0);
  return { P_fw: x.P_fw, w_fw: x.w_fw, P_stray: stray, I_2n: (x.I_2n ?? 1) / (x.k ?? 1) };
}
