// The motor on its own: torque, current and heat from the circuit, at any voltage and frequency.
import { notice } from "../../kernel/check.ts";
import { contract } from "../../kernel/contract.ts";
import { figure, known, perhaps } from "../../kernel/figure.ts";
import { motor } from "../ground/index.ts";
import { breakdownSlip, breakdownTorque, emptyFold, type Folded, folded, torqueAtSlip } from "./circuit.ts";
import { baseFrequencySet, baseVoltageSet } from "./drive-inputs.ts";
import { outputVoltage } from "./drive-bus.ts";
import { atShaft } from "./losses.ts";
import { circuitFrom, circuitNeeds, lossesFrom, lossNeeds, plateCircuit } from "./motor-circuit.ts";
import { induction, insulationClass, plateFrequency, plateSpeed } from "./motor-inputs.ts";
import { saturated } from "./saturation.ts";
import { linkShare, plateSlip, ratedTorque, ratedVoltage } from "./motor-plate.ts";
import { baseFrequency, fluxShare } from "./voltage-laws.ts";
import { CLASS_RISE } from "./thermal.ts";

/** R_1 of the circuit is that of a winding at its class limit: torque is reckoned with it hot. */
export const windingWindow = contract({
  id: "spindle.winding-window",
  per: motor,
  says: "a winding no hotter than its insulation class allows",
});

const CHAPMAN = "T circuit; Chapman, Electric Machinery Fundamentals, induction motors; exact, closed form";
const point = { V: ratedVoltage, f: plateFrequency, V_n: perhaps(ratedVoltage), f_n: perhaps(plateFrequency), ...circuitNeeds } as const;
interface Point {
  readonly V: number;
  readonly f: number;
  readonly V_n: number | null;
  readonly f_n: number | null;
  readonly R_1: number;
  readonly X_1: number;
  readonly R_2: number;
  readonly X_2: number;
  readonly X_m: number;
  readonly G_c: number | null;
  readonly p: number;
}
const scratch = emptyFold();
/** The circuit folded at its frequency; reactances belong to f_n, or to f itself when f_n is not said. */
const fold = (x: Point): Folded => folded(circuitFrom(x, x.f_n ?? x.f), x.f, scratch);

export const breakdown = figure({
  id: "spindle.motor.breakdown-torque",
  per: motor,
  symbol: "T_bd",
  unit: "N*m",
  says: "breakdown torque of the motor at plate frequency, as connected",
  method: "3 V_th^2 / (2 w_s (R_th + hypot(R_th, X_th + X_2))), stator and magnetising branch as one source behind R_th + j X_th",
  source: "exact; Fitzgerald, Kingsley, Umans, Electric Machinery, 6.5 (books round V_th and X_th and read 1 % low)",
  needs: point,
  when: induction.when,
  assumes: [windingWindow],
  valid: saturated,
  of: (x) => breakdownTorque(fold(x), x.V),
  signs: { V: "+", X_1: "-", X_2: "-", R_1: "-" },
});

export const slipAtBreakdown = figure({
  id: "spindle.motor.breakdown-slip",
  per: motor,
  symbol: "s_bd",
  unit: "1",
  kind: "share",
  says: "slip at which the motor gives its most",
  method: "R_2 / hypot(R_th, X_th + X_2)",
  source: "Fitzgerald, Kingsley, Umans, Electric Machinery, 6.5",
  needs: point,
  when: induction.when,
  valid: saturated,
  of: (x) => breakdownSlip(fold(x)),
});

export const torqueAtSpeed = figure({
  id: "spindle.motor.torque-at-speed",
  per: motor,
  symbol: "T",
  unit: "N*m",
  says: "air-gap torque at plate speed, voltage and frequency",
  method: "3 I_2^2 R_2 / (s w_s) with s = 1 - n / w_s; motoring, generating (n above w_s) and braking (n below 0)",
  source: CHAPMAN,
  needs: { ...point, n: plateSpeed },
  when: induction.when,
  valid: saturated,
  of: (x) => {
    const k = fold(x);
    return torqueAtSlip(k, x.V, 1 - x.n / k.w_s);
  },
});

const atPlate = { ...point, s: plateSlip, ...lossNeeds } as const;
const shaft = (x: Point & { s: number } & Parameters<typeof lossesFrom>[0]) =>
  atShaft(x.V, x.f, circuitFrom(x, x.f_n ?? x.f), lossesFrom(x), x.s);
export const motorCurrent = figure({
  id: "spindle.motor.current",
  per: motor,
  symbol: "I_1",
  unit: "A",
  says: "line current at slip s, at plate voltage and frequency",
  method: "V / (sqrt(3) |Z(s)|)",
  source: CHAPMAN,
  needs: { ...point, s: plateSlip },
  when: induction.when,
  valid: saturated,
  of: (x) => atShaft(x.V, x.f, circuitFrom(x, x.f_n ?? x.f), NO_LOSSES, x.s).I_1,
});
const NO_LOSSES = { P_fw: 0, w_fw: 1, P_stray: 0, I_2n: 1 } as const;
export const motorPowerFactor = figure({
  id: "spindle.motor.power-factor",
  per: motor,
  symbol: "pf",
  unit: "1",
  kind: "ratio",
  says: "power factor at slip s, at plate voltage and frequency",
  method: "cosine of the angle of Z(s)",
  source: CHAPMAN,
  needs: { ...point, s: plateSlip },
  when: induction.when,
  valid: saturated,
  of: (x) => atShaft(x.V, x.f, circuitFrom(x, x.f_n ?? x.f), NO_LOSSES, x.s).powerFactor,
});
export const motorEfficiency = figure({
  id: "spindle.motor.efficiency",
  per: motor,
  symbol: "eta",
  unit: "1",
  kind: "share",
  says: "efficiency at slip s, at plate voltage and frequency",
  method:
    "shaft power over line power: copper and core from the circuit, friction with the square of speed, stray loss with current squared",
  source: `${CHAPMAN}; stray loss as IEEE 112`,
  needs: atPlate,
  when: induction.when,
  valid: saturated,
  of: (x) => shaft(x).efficiency,
});
export const startingTorque = figure({
  id: "spindle.motor.starting-torque",
  per: motor,
  symbol: "T_st",
  unit: "N*m",
  says: "torque at standstill on the line",
  method: "the circuit at slip 1; deep bars give more, so a low figure",
  source: CHAPMAN,
  needs: point,
  when: induction.when,
  valid: saturated,
  of: (x) => torqueAtSlip(fold(x), x.V, 1),
});

export const lockedRotorCurrent = figure({
  id: "spindle.motor.locked-rotor-current",
  per: motor,
  symbol: "I_LR",
  unit: "A",
  says: "current at standstill on the line, as connected",
  formula: "I / k",
  source: "code letter (NEMA MG 1), else 5 to 8 times plate current, unchecked",
  needs: { I: plateCircuit.I_LR, k: linkShare },
  when: induction.when,
  of: (x) => x.I / x.k,
});

export const fullFluxTo = figure({
  id: "spindle.motor.base-frequency",
  per: motor,
  symbol: "f_b",
  unit: "1/s",
  kind: "frequency",
  says: "highest frequency with full flux",
  formula: "f_n * min(1, V / V_n)",
  source: "definition: flux goes with volts per hertz",
  needs: { f_n: plateFrequency, V: outputVoltage, V_n: ratedVoltage },
  when: induction.when,
  of: (x) => baseFrequency({ V_n: x.V_n, f_n: x.f_n, V_max: x.V, E_0: null }),
  signs: { V: "+", V_n: "-" },
});
export const fullFluxSpeed = figure({
  id: "spindle.motor.base-speed",
  per: motor,
  symbol: "w_b",
  unit: "rad/s",
  says: "motor speed up to which it has full flux",
  formula: "n_n * f_b / f_n",
  source: "plate slip kept in proportion",
  needs: { n_n: plateSpeed, f_b: fullFluxTo, f_n: plateFrequency },
  when: induction.when,
  of: (x) => (x.n_n * x.f_b) / x.f_n,
  signs: { f_b: "+" },
});

/** Frequency at which low-speed torque is looked at: a twelfth of 60 Hz, where R_1 eats the volts. */
const LOW_FREQUENCY = known("low-frequency", {
  symbol: "f_low",
  value: 5,
  unit: "1/s",
  kind: "frequency",
  says: "low frequency at which torque is looked at",
  source: "own choice",
});
export const lowSpeedTorque = figure({
  id: "spindle.motor.low-speed-torque",
  per: motor,
  symbol: "T_low",
  unit: "N*m",
  says: "pull-out torque at 5 Hz on plain volts per hertz",
  method: "breakdown torque of the circuit at V_n f / f_n: the stator resistance eats most of the volts",
  source: CHAPMAN,
  needs: { ...circuitNeeds, V_n: ratedVoltage, f_n: plateFrequency, f: LOW_FREQUENCY },
  when: induction.when,
  assumes: [windingWindow],
  of: (x) => breakdownTorque(folded(circuitFrom(x, x.f_n), x.f, scratch), (x.V_n * x.f) / x.f_n),
  signs: { R_1: "-" },
});
export const breakdownShare = figure({
  id: "spindle.motor.breakdown-share",
  per: motor,
  symbol: "k_bd",
  unit: "1",
  kind: "ratio",
  says: "breakdown torque as a multiple of rated torque",
  formula: "T_bd / T_n",
  source: "definition; test sheets of such motors show 2.3 to 3.2, unchecked",
  needs: { T_bd: breakdown, T_n: ratedTorque },
  when: induction.when,
  of: (x) => x.T_bd / x.T_n,
});

export const classRise = figure({
  id: "spindle.motor.class-rise",
  per: motor,
  symbol: "Th_max",
  unit: "K",
  kind: "temperature-difference",
  says: "rise above 40 degC its insulation class allows, by resistance",
  method: "A 60 K, E 75 K, B 80 K, F 105 K, H 125 K",
  source: "IEC 60034-1 (class E unchecked)",
  needs: { c: insulationClass },
  when: induction.when,
  of: (x) => CLASS_RISE[x.c],
});

/** What is set in the drive against what the winding wants. */
export const fluxSet = notice({
  id: "spindle.motor.flux-set",
  per: motor,
  severity: "error",
  needs: { V: baseVoltageSet, f: baseFrequencySet, V_n: ratedVoltage, f_n: plateFrequency },
  when: induction.when,
  at: baseVoltageSet,
  of: (x) => {
    const share = fluxShare(x.V, x.f, x.V_n, x.f_n);
    if (share <= 1.1) return null;
    const set = `Base voltage ${Math.round(x.V)} V at ${Math.round(x.f)} Hz on a winding linked for ${Math.round(x.V_n)} V at ${Math.round(x.f_n)} Hz`;
    return share > 1.2
      ? `${set}: flux ${share.toFixed(2)} times rated, the winding burns. Enter the rating of the winding as it is connected.`
      : `${set}: flux ${share.toFixed(2)} times rated, the iron is near saturation and runs hot.`;
  },
});
