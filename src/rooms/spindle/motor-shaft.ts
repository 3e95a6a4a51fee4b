// What reaches the shaft, and what a line current buys: torque and power of the circuit with its losses taken off.
import { figure, perhaps } from "../../kernel/figure.ts";
import { motor } from "../ground/index.ts";
import { breakdownSlip, currentAtSlip, folded, slipAtCurrent, torqueAtSlip } from "./circuit.ts";
import { outputVoltage } from "./drive-bus.ts";
import { driveMode } from "./drive-inputs.ts";
import { atShaft } from "./losses.ts";
import { windingWindow } from "./motor.ts";
import { circuitFrom, circuitNeeds, lossesFrom, lossNeeds, plateCircuit } from "./motor-circuit.ts";
import { induction, plateFrequency, plateSpeed } from "./motor-inputs.ts";
import { linkShare, plateSlip, ratedCurrent, ratedVoltage } from "./motor-plate.ts";
import { saturated } from "./saturation.ts";
import { baseFrequency, constantPowerEnd, torqueLimit, torqueLimitAtSpeed } from "./voltage-laws.ts";

const CHAPMAN = "T circuit; Chapman, Electric Machinery Fundamentals, power flow of the induction motor";
const point = { V: ratedVoltage, f: plateFrequency, V_n: perhaps(ratedVoltage), f_n: perhaps(plateFrequency), ...circuitNeeds } as const;

const loaded = { ...point, ...lossNeeds, s: plateSlip } as const;
const LOSSES_OFF = "air-gap power less rotor copper, friction with the square of speed, stray loss with current squared";
export const shaftPower = figure({
  id: "spindle.motor.shaft-power",
  per: motor,
  symbol: "P_sh",
  unit: "W",
  says: "power at the shaft at slip s, at plate voltage and frequency",
  method: LOSSES_OFF,
  source: `${CHAPMAN}; stray loss as IEEE 112`,
  needs: loaded,
  ...induction,
  valid: saturated,
  of: (x) => atShaft(x.V, x.f, circuitFrom(x, x.f_n ?? x.f), lossesFrom(x), x.s).P_shaft,
});
export const shaftTorque = figure({
  id: "spindle.motor.shaft-torque",
  per: motor,
  symbol: "T_sh",
  unit: "N*m",
  says: "torque at the shaft at slip s, at plate voltage and frequency",
  method: `${LOSSES_OFF}; over speed`,
  source: `${CHAPMAN}; stray loss as IEEE 112`,
  needs: loaded,
  ...induction,
  valid: saturated,
  of: (x) => atShaft(x.V, x.f, circuitFrom(x, x.f_n ?? x.f), lossesFrom(x), x.s).T_shaft,
});

export const torqueAtCurrent = figure({
  id: "spindle.motor.torque-at-current",
  per: motor,
  symbol: "T_I",
  unit: "N*m",
  says: "air-gap torque that line current I gives, at plate voltage and frequency",
  method: "slip of the circuit at which the line current is I, torque there; nothing where I does not reach the magnetising current",
  source: "quadratic of the T circuit; Novotny, Lipo, Vector Control and Dynamics of AC Drives, on the current limit",
  needs: { ...point, I: ratedCurrent },
  ...induction,
  assumes: [windingWindow],
  valid: (x) => {
    const most = currentAtSlip(folded(circuitFrom(x, x.f_n ?? x.f), x.f), x.V, 1);
    if (x.I > most) return `at this voltage the motor draws at most ${most.toPrecision(3)} A, at standstill`;
    return saturated(x);
  },
  of: (x) => {
    const k = folded(circuitFrom(x, x.f_n ?? x.f), x.f);
    const s = slipAtCurrent(k, x.V, x.I);
    // Past the breakdown the same current gives less torque than before it: the limit of the stable branch counts.
    return s === null ? 0 : torqueAtSlip(k, x.V, Math.min(s, breakdownSlip(k)));
  },
  signs: { I: "+" },
});

/** Held by vector drives only; on plain volts per hertz there is no such thing, and the figures below take the plain law. */
export const airGapVoltage = figure({
  id: "spindle.motor.air-gap-voltage",
  per: motor,
  symbol: "E_0",
  unit: "V",
  says: "voltage a vector drive holds across the air gap at plate frequency, one phase",
  formula: "k * E_n",
  source: "that of plate load; Rashid, Power Electronics, 15.2, constant air-gap flux",
  needs: { k: linkShare, E_n: plateCircuit.E },
  when: [...induction.when, { word: driveMode, is: ["vector", "vector-with-encoder"] }],
  of: (x) => x.k * x.E_n,
});

const law = { ...circuitNeeds, V_n: ratedVoltage, f_n: plateFrequency, V_max: outputVoltage, E_0: perhaps(airGapVoltage) } as const;
export const motorTorqueLimit = figure({
  id: "spindle.motor.torque-limit",
  per: motor,
  symbol: "T_lim",
  unit: "N*m",
  says: "air-gap torque at motor speed n with line current I under the drive's ceiling",
  method:
    "frequency sought that turns the motor at n; the lower of torque at current I and pull-out over 1.3; volts per hertz, or E_0 held",
  source: "current, voltage and pull-out limits; Novotny, Lipo, Vector Control and Dynamics of AC Drives",
  needs: { ...law, n: plateSpeed, I: ratedCurrent },
  ...induction,
  assumes: [windingWindow],
  of: (x) => torqueLimitAtSpeed(circuitFrom(x, x.f_n), x, x.n, x.I)?.T ?? 0,
  signs: { V_max: "+", I: "+" },
});

/** The search for the end of constant power goes this far above plate frequency; no motor of a machine tool is driven there. */
const FARTHEST = 20;
export const constantPowerTo = figure({
  id: "spindle.motor.constant-power-to",
  per: motor,
  symbol: "f_cp",
  unit: "1/s",
  kind: "frequency",
  says: "frequency up to which current I, and above which pull-out decides: the end of constant power",
  method:
    "where pull-out over 1.3, falling as (V/f)^2, meets torque at current I, falling as 1/f; the base frequency where pull-out decides from there on",
  source: "both from the circuit; Novotny, Lipo, Vector Control and Dynamics of AC Drives",
  needs: { ...law, I: ratedCurrent },
  ...induction,
  assumes: [windingWindow],
  of: (x) => {
    const circuit = circuitFrom(x, x.f_n);
    const base = baseFrequency(x);
    const found = constantPowerEnd(circuit, x, x.I, FARTHEST * x.f_n);
    if (found !== null) return found;
    // One sign all the way: pull-out decides already at the base frequency, or nowhere.
    return torqueLimit(circuit, x, base, x.I).by === "pull-out" ? base : Infinity;
  },
  signs: { V_max: "+", I: "-" },
});
