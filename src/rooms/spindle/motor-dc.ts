// A direct-current spindle motor: the speed its volts give, the volts a speed wants, and what a rippling supply leaves of its torque.
import { check, notice } from "../../kernel/check.ts";
import { figure, input, known } from "../../kernel/figure.ts";
import { drive, motor } from "../ground/index.ts";
import { feedVoltage } from "./drive-bus.ts";
import { motorKind, motorTopSpeed, platePower, plateSpeed } from "./motor-inputs.ts";
import { BRUSH_DROP, bridgeVoltage, dcSpeed, dcVoltage, rippleTorque, weakenedTorque } from "./other-motors.ts";

const dc = { when: [{ word: motorKind, is: ["dc"] }] } as const;
const dcPlate = "Photo of the plate; armature and field stand apart there.";
export const armatureVoltage = input({
  key: "armature.voltage",
  per: motor,
  symbol: "V_an",
  unit: "V",
  says: "armature voltage on the plate",
  measure: dcPlate,
});
export const armatureCurrent = input({
  key: "armature.current",
  per: motor,
  symbol: "I_an",
  unit: "A",
  says: "armature current on the plate",
  measure: dcPlate,
});
export const armatureResistance = input({
  key: "armature.resistance",
  per: motor,
  symbol: "R_a",
  unit: "ohm",
  says: "resistance of the armature, brushes left out",
  measure:
    "Isolated, drive disconnected, shaft held: a few amperes through the brushes, volts between the commutator bars under them, at several places of the rotor.",
});
export const formFactor = input({
  key: "armature.form-factor",
  per: motor,
  symbol: "F",
  unit: "1",
  kind: "ratio",
  says: "form factor of the armature current, rms over mean",
  typical: { value: "1.1 to 1.4", source: "single-phase bridge with and without a choke, unchecked", unchecked: true },
  measure: "Clamp that reads true rms, against a shunt that reads the mean.",
});
export const firingAngle = input({
  key: "firing-angle",
  per: drive,
  symbol: "alpha",
  unit: "rad",
  says: "smallest firing angle of the dc drive",
  typical: { value: "15 to 30 deg", source: "margin such bridges keep to go on controlling, unchecked", unchecked: true },
  measure: "Papers of the drive.",
});
const brushes = known("brush-drop", {
  symbol: "V_b",
  value: BRUSH_DROP,
  unit: "V",
  says: "volts lost at the two brush contacts",
  source: "textbook value for carbon brushes",
});

const CHAPMAN = "V_a = k_phi w + I_a R_a + 2 V at the brushes, T = k_phi I_a; Chapman, Electric Machinery Fundamentals, dc motors";
export const dcConstant = figure({
  id: "spindle.motor.dc-constant",
  per: motor,
  symbol: "k_phi",
  unit: "N*m/A",
  says: "torque per ampere of the armature at full field, from the plate",
  formula: "(V_an - I_an * R_a - V_b) / n_n",
  source: CHAPMAN,
  needs: { V_an: armatureVoltage, I_an: armatureCurrent, R_a: armatureResistance, n_n: plateSpeed, V_b: brushes },
  ...dc,
  of: (x) => (x.V_an - x.I_an * x.R_a - x.V_b) / x.n_n,
});
const driven = (x: { k_phi: number }): string | null =>
  x.k_phi > 0 ? null : "the armature's resistance would eat the whole plate voltage: read volts, amperes and ohms again";
export const dcRatedTorque = figure({
  id: "spindle.motor.dc-rated-torque",
  per: motor,
  symbol: "T_n",
  unit: "N*m",
  says: "torque at plate load of the dc motor",
  formula: "P_n / n_n",
  source: "definition of power",
  needs: { P_n: platePower, n_n: plateSpeed },
  ...dc,
  of: (x) => x.P_n / x.n_n,
});
export const bridgeVolts = figure({
  id: "spindle.motor.dc-bridge-voltage",
  per: motor,
  symbol: "V_br",
  unit: "V",
  says: "most armature volts a single-phase bridge makes of this line",
  formula: "2 * sqrt(2) / pi * V * cos(alpha)",
  source: "Rashid, Power Electronics, ch. 10; current that never ceases",
  needs: { V: feedVoltage, alpha: firingAngle },
  ...dc,
  of: (x) => bridgeVoltage(x.V, x.alpha),
  signs: { V: "+", alpha: "-" },
});
export const dcSpeedFigure = figure({
  id: "spindle.motor.dc-speed",
  per: motor,
  symbol: "n",
  unit: "rad/s",
  says: "speed of the dc motor at armature volts V and torque T, full field",
  formula: "(V - V_b - R_a * T / k_phi) / k_phi",
  source: CHAPMAN,
  needs: { V: bridgeVolts, T: dcRatedTorque, k_phi: dcConstant, R_a: armatureResistance, V_b: brushes },
  ...dc,
  valid: driven,
  of: (x) => dcSpeed({ k_phi: x.k_phi, R_a: x.R_a }, x.V, x.T) + (BRUSH_DROP - x.V_b) / x.k_phi,
  signs: { V: "+", T: "-", R_a: "-" },
});
export const dcVoltageFigure = figure({
  id: "spindle.motor.dc-voltage",
  per: motor,
  symbol: "V_a",
  unit: "V",
  says: "armature volts that speed n at torque T wants, full field",
  formula: "k_phi * n + R_a * T / k_phi + V_b",
  source: CHAPMAN,
  needs: { n: plateSpeed, T: dcRatedTorque, k_phi: dcConstant, R_a: armatureResistance, V_b: brushes },
  ...dc,
  valid: driven,
  of: (x) => dcVoltage({ k_phi: x.k_phi, R_a: x.R_a }, x.n, x.T) + x.V_b - BRUSH_DROP,
  signs: { n: "+", T: "+", R_a: "+" },
});
export const dcContinuousTorque = figure({
  id: "spindle.motor.dc-continuous-torque",
  per: motor,
  symbol: "T_c",
  unit: "N*m",
  says: "torque the dc motor stands for hours on a rippling supply",
  formula: "T_n / F",
  source: "torque goes with the mean of the current, heat with its rms",
  needs: { T_n: dcRatedTorque, F: formFactor },
  ...dc,
  of: (x) => rippleTorque(x.T_n, x.F),
  signs: { T_n: "+", F: "-" },
});
export const dcWeakenedTorque = figure({
  id: "spindle.motor.dc-torque-above-base",
  per: motor,
  symbol: "T_w",
  unit: "N*m",
  says: "torque at speed n with the field weakened above plate speed, to the speed its maker allows and no further",
  formula: "T_n * min(1, n_n / n)",
  source: "constant power: T = k phi I_a with k phi w constant; Chapman",
  needs: { T_n: dcRatedTorque, n_n: plateSpeed, n: motorTopSpeed },
  ...dc,
  of: (x) => weakenedTorque(x.T_n, x.n_n, x.n),
  valid: (x) => (x.n > 0 ? null : "a speed above nothing is wanted"),
  signs: { T_n: "+", n: "-" },
});

export const dcVoltageCheck = check({
  id: "spindle.motor.dc-voltage-reached",
  per: motor,
  asks: "Does the bridge give the armature the volts of its plate speed, loaded?",
  demand: dcVoltageFigure,
  capacity: bridgeVolts,
  H: 1.03,
  when: dc.when,
  remedies: [
    {
      does: "a three-phase bridge, or a transformer before it",
      costs: "its price; a three-phase bridge wants three phases",
      changes: [firingAngle],
    },
    {
      does: "accept a lower base speed and weaken the field above it",
      costs: "torque falls as one over speed from there",
      changes: [motorTopSpeed],
    },
    { does: "a belt ratio that lets the motor run slower", costs: "less torque at the spindle by the same share", changes: [] },
  ],
});
export const dcFieldLoss = notice({
  id: "spindle.motor.dc-field-loss",
  per: motor,
  severity: "warning",
  needs: { kind: motorKind },
  ...dc,
  at: motorKind,
  of: () =>
    "A dc motor that loses its field runs away. A hard-wired trip on field current is for the drive and licensed practice to provide; nothing computed here guards it.",
});
