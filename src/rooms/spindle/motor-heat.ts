// Heat of the winding: its temperature by resistance, the load that heats like the duty, the heat of a start, and what it stands for hours.
import { absoluteZero, copperInverseCoefficient } from "../../kernel/constants.ts";
import { figure, input, known, listInput, perhaps, wordInput } from "../../kernel/figure.ts";
import { motor } from "../ground/index.ts";
import { outputVoltage } from "./drive-bus.ts";
import { circuitFrom, circuitNeeds, plateCircuit } from "./motor-circuit.ts";
import {
  copperHeatShare,
  fan,
  induction,
  motorInertia,
  plateFrequency,
  plateSpeed,
  resistance,
  resistanceTemperature,
  standstillCooling,
} from "./motor-inputs.ts";
import { windingWindow } from "./motor.ts";
import { fieldSpeed, ratedCurrent, ratedVoltage } from "./motor-plate.ts";
import { type Body, continuousTorque, rmsTorque, startHeat, windingTemperature } from "./thermal.ts";

export const hotResistance = input({
  key: "hot-resistance",
  per: motor,
  symbol: "R_hot",
  unit: "ohm",
  says: "dc resistance between two lines right after the heat run",
  measure:
    "Isolated, drive disconnected, the same two leads and links as cold, within 30 s of standstill; a few readings, carried back to the moment of the stop.",
});
export const leadResistance = input({
  key: "lead-resistance",
  per: motor,
  symbol: "R_lead",
  unit: "ohm",
  kind: "small-resistance",
  says: "resistance of the test leads",
  typical: { value: "0 ohm", source: "four wires, as the measurement asks" },
  measure: "Short the tips; nothing with four wires.",
});
const copperZero = known("copper-zero", {
  symbol: "T_z",
  value: absoluteZero.value - copperInverseCoefficient.value,
  unit: "K",
  kind: "temperature",
  says: "temperature at which the straight line of copper's resistance meets nothing, -234.5 degC",
  source: copperInverseCoefficient.source,
});
export const windingTemperatureFigure = figure({
  id: "spindle.motor.winding-temperature",
  per: motor,
  symbol: "T_hot",
  unit: "K",
  kind: "temperature",
  says: "mean temperature of the winding after the heat run",
  formula: "(R_hot - R_lead) / (R_cold - R_lead) * (T_cold - T_z) + T_z",
  source: "IEC 60034-1, rise by resistance (it says 235 for 234.5: 0.1 K at a rise of 80 K)",
  needs: { R_hot: hotResistance, R_cold: resistance, T_cold: resistanceTemperature, R_lead: leadResistance, T_z: copperZero },
  of: (x) => windingTemperature(x.R_hot, x.R_cold, x.T_cold, x.R_lead),
  valid: (x) => (x.R_cold > x.R_lead && x.R_hot > x.R_lead ? null : "the winding must show more resistance than the test leads"),
  signs: { R_hot: "+", R_cold: "-" },
});

const sheet = "From the process sheet, spin-up counted in; the drive's torque or current display against a stopwatch.";
export const dutyTorques = listInput({
  key: "duty.torque",
  per: motor,
  symbol: "T_i",
  unit: "N*m",
  says: "torques at the motor through one cycle, in order",
  measure: sheet,
});
export const dutyTimes = listInput({
  key: "duty.time",
  per: motor,
  symbol: "t_i",
  unit: "s",
  says: "how long each of these torques lasts",
  measure: sheet,
});
export const rmsLoad = figure({
  id: "spindle.motor.rms-load",
  per: motor,
  symbol: "T_rms",
  unit: "N*m",
  says: "steady torque that heats like the duty",
  formula: "sqrt(sum(T^2 * t) / sum(t))",
  source: "definition; while current goes with torque (not near no load) and a cycle is much shorter than the time constant",
  needs: { T: dutyTorques, t: dutyTimes },
  of: (x) => rmsTorque(x.T.map((T, k) => ({ T, t: x.t[k] ?? 0 }))),
  valid: (x) =>
    x.T.length !== x.t.length
      ? "each torque of the duty wants a time"
      : x.t.every((t) => t >= 0) && x.t.some((t) => t > 0)
        ? null
        : "the duty lasts no time",
});

export const startKind = wordInput({
  key: "start",
  per: motor,
  says: "how it is brought to speed or stopped",
  words: ["direct-start", "dc-injection", "plug-to-stop", "plug-reversal"],
  typical: ["direct-start"],
  source: "a contactor on the line; on a drive's ramp only about the slip share of this heat is made",
  measure: "Look what switches it: a contactor starts it direct, two contactors plug it.",
});
const heatOf = { J: motorInertia, w_s: fieldSpeed, how: startKind } as const;
export const rotorHeat = figure({
  id: "spindle.motor.rotor-heat-of-start",
  per: motor,
  symbol: "E_r",
  unit: "J",
  kind: "energy",
  says: "heat left in the rotor by one such start or stop straight from the line, without load",
  method: "J w_s^2 / 2 for a direct start or a dc-injection stop, 3 times that for plugging to standstill, 4 times for a full reversal",
  source: "Chapman, Electric Machinery Fundamentals; Alger, Induction Machines; the inertia is all that turns, seen at the motor",
  needs: heatOf,
  ...induction,
  of: (x) => startHeat(x.how, x.J, x.w_s, 0, 1).rotor,
  signs: { J: "+", w_s: "+" },
});
export const windingHeat = figure({
  id: "spindle.motor.winding-heat-of-start",
  per: motor,
  symbol: "E_s",
  unit: "J",
  kind: "energy",
  says: "heat left in the stator winding by the same start or stop",
  method: "that of the rotor times R_1 / R_2; with dc injection the stator's heat is that of the dc and is not counted",
  source: "Chapman; Alger; magnetising current left out",
  needs: { ...heatOf, R_1: circuitNeeds.R_1, R_2: circuitNeeds.R_2 },
  ...induction,
  of: (x) => startHeat(x.how, x.J, x.w_s, x.R_1, x.R_2).stator,
  signs: { J: "+", w_s: "+" },
});

/** Of the one warm body only shares matter to what it stands for hours: rise and time constant cancel. */
const restingBody = (x: { share: number; g_0: number; fan: string }): Body => ({
  rise: 1,
  tau: 1,
  share: x.share,
  // A fan of its own, or a rating without one, cools alike at every speed.
  g_0: x.fan === "shaft" ? x.g_0 : 1,
});
export const continuousMotorTorque = figure({
  id: "spindle.motor.continuous-torque",
  per: motor,
  symbol: "T_c",
  unit: "N*m",
  says: "shaft torque its winding stands for hours at motor speed n, by its heat alone",
  method:
    "current whose copper heat, with core and friction heat, the fan at that speed carries off at the class rise; torque of the circuit at that current on volts per hertz, friction off; frequency from the plate's slip",
  source: "one warm body; cooling g0 + (1 - g0)(n/n_n)^0.7, engineering model in the direction of IEC TS 60034-25; a heat run replaces it",
  needs: {
    ...circuitNeeds,
    V_n: ratedVoltage,
    f_n: plateFrequency,
    n_n: plateSpeed,
    n: plateSpeed,
    I_n: ratedCurrent,
    V_max: outputVoltage,
    P_fw: perhaps(plateCircuit.P_fw),
    share: copperHeatShare,
    g_0: standstillCooling,
    fan,
  },
  ...induction,
  assumes: [windingWindow],
  valid: (x) => (x.n > 0 ? null : "a speed above nothing is wanted; at standstill a motor stands no torque that can be told from here"),
  of: (x) => {
    const f = (x.f_n * x.n) / x.n_n;
    const law = { V_n: x.V_n, f_n: x.f_n, V_max: x.V_max, E_0: null };
    const at = continuousTorque(circuitFrom(x, x.f_n), law, { I_n: x.I_n, f_n: x.f_n, w_n: x.n_n }, restingBody(x), f);
    return Math.max(0, at.T - ((x.P_fw ?? 0) * (x.n / x.n_n) ** 2) / x.n);
  },
});
