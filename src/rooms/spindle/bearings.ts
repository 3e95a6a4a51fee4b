// Spindle bearings: the heat their friction makes, and the temperature a run-in is heading for.
import { figure, input, listInput } from "../../kernel/figure.ts";
import { bearing, spindle } from "../ground/index.ts";
import { bearingHeat, churningTorque as churning, loadTorque as byLoad, plateau } from "./bearing.ts";
import { bearingKind, bearingViscosity, lubricant, meanDiameter, topSpeedWanted } from "./spindle-inputs.ts";

const HARRIS = "Palmgren, in Harris, Rolling Bearing Analysis, ch. 14";

/** Palmgren's factors by kind, lubricated by grease or in an oil bath, level shaft. Harris' table, from memory, unchecked; middle of a range where he gives one. */
const FACTORS = {
  ball: { grease: 1.35, oil: 2, load: 0.0007 },
  "angular-contact": { grease: 2, oil: 3.3, load: 0.001 },
  "angular-contact-pair": { grease: 4, oil: 6.6, load: 0.001 },
  "taper-roller": { grease: 6, oil: 6, load: 0.0004 },
  "cylindrical-roller": { grease: 0.8, oil: 3.1, load: 0.0003 },
} as const;
type Rolling = keyof typeof FACTORS;
const isRolling = (kind: string): kind is Rolling => Object.hasOwn(FACTORS, kind);
const rolling = (x: { kind: string }): string | null =>
  isRolling(x.kind) ? null : "a plain bearing is warmed by its oil film; these factors are for rolling ones";

export const churningFactor = figure({
  id: "spindle.bearing.churning-factor",
  per: bearing,
  symbol: "f_0",
  unit: "1",
  kind: "ratio",
  says: "factor of a bearing's friction without load",
  method:
    "by kind and lubricant: ball 1.35 (grease), 2 (oil bath); angular contact 2, 3.3, a pair twice that; taper roller 6; cylindrical roller 0.8, 3.1",
  source: `${HARRIS}, table from memory, unchecked`,
  needs: { kind: bearingKind, lubricant },
  of: (x) => (isRolling(x.kind) ? FACTORS[x.kind][x.lubricant] : Number.NaN),
  valid: rolling,
});
export const loadFactor = figure({
  id: "spindle.bearing.load-factor",
  per: bearing,
  symbol: "f_1",
  unit: "1",
  kind: "ratio",
  says: "factor of a bearing's friction by its load",
  method: "by kind: ball 0.0007, angular contact 0.001, taper roller 0.0004, cylindrical roller 0.0003",
  source: `${HARRIS}, table from memory, unchecked`,
  needs: { kind: bearingKind },
  of: (x) => (isRolling(x.kind) ? FACTORS[x.kind].load : Number.NaN),
  valid: rolling,
});
export const bearingLoad = input({
  key: "load",
  per: bearing,
  symbol: "F",
  unit: "N",
  says: "load of the bearing, preload included",
  typical: {
    value: "300 to 1500 N",
    source: "light preload and belt pull on spindles of this size, engineering assumption",
    unchecked: true,
  },
  measure: "Not at home; the maker's preload class, and belt tension.",
});

export const churningTorque = figure({
  id: "spindle.bearing.churning-torque",
  per: bearing,
  symbol: "M_0",
  unit: "N*m",
  says: "friction of a bearing without load, at highest speed",
  method: "1e-7 f_0 (nu n)^(2/3) d_M^3 N mm for nu n >= 2000 cSt rpm, else 160e-7 f_0 d_M^3; d_M in mm",
  source: HARRIS,
  needs: { f_0: churningFactor, nu: bearingViscosity, w: topSpeedWanted, d_M: meanDiameter },
  of: (x) => churning({ f_0: x.f_0, nu: x.nu, w: x.w, d_m: x.d_M }),
  signs: { f_0: "+", nu: "+", w: "+", d_M: "+" },
});
export const loadTorque = figure({
  id: "spindle.bearing.load-torque",
  per: bearing,
  symbol: "M_1",
  unit: "N*m",
  says: "friction of a bearing by its load",
  formula: "f_1 * F * d_M",
  source: HARRIS,
  needs: { f_1: loadFactor, F: bearingLoad, d_M: meanDiameter },
  of: (x) => byLoad({ f_1: x.f_1, F: x.F, d_m: x.d_M }),
  signs: { f_1: "+", F: "+", d_M: "+" },
});
export const heat = figure({
  id: "spindle.bearing.heat",
  per: bearing,
  symbol: "H",
  unit: "W",
  kind: "heat",
  says: "heat a bearing makes at highest speed",
  formula: "(M_0 + M_1) * w",
  source: "definition",
  needs: { M_0: churningTorque, M_1: loadTorque, w: topSpeedWanted },
  of: (x) => bearingHeat({ M: x.M_0 + x.M_1, w: x.w }),
  signs: { M_0: "+", M_1: "+", w: "+" },
});

export const runInTime = listInput({
  key: "run-in.time",
  per: spindle,
  symbol: "t",
  unit: "s",
  says: "times of the run-in readings",
  measure: "Every two minutes from the start of a stage.",
});
export const runInTemperature = listInput({
  key: "run-in.temperature",
  per: spindle,
  symbol: "T",
  unit: "K",
  kind: "temperature",
  says: "temperatures of the run-in readings",
  measure: "Hottest of the probes at nose and rear housing, the same place each time.",
});
export const bearingPlateau = figure({
  id: "spindle.bearing-plateau",
  per: spindle,
  symbol: "T_p",
  unit: "K",
  kind: "temperature",
  says: "temperature the warming bearing is heading for",
  method:
    "least squares of T_p - (T_p - T_0) exp(-t/tau) through the readings, started from the means of three equal stretches; a rise that does not slow down has no plateau",
  source: "first-order heating",
  needs: { t: runInTime, T: runInTemperature },
  of: (x) => {
    const p = plateau(x.t, x.T);
    return p.kind === "settling" || p.kind === "settled" ? p.T_p : Number.NaN;
  },
  valid: (x) => {
    const p = plateau(x.t, x.T);
    if (p.kind === "accelerating") return "still accelerating: stop the spindle and look";
    return p.kind === "too-few" ? "at least six readings in order of time are wanted, a temperature for each" : null;
  },
});
