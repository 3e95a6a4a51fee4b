// A motor on unequal line voltages, as a converter gives them: the backward field, the heat it makes, the load that is left.
import { check } from "../../kernel/check.ts";
import { figure, input, perhaps } from "../../kernel/figure.ts";
import { motor } from "../ground/index.ts";
import { lineVoltages, supplyNegativeSequence } from "../supply/index.ts";
import { currentAtSlip, folded, slipAtTorque, torqueAtSlip } from "./circuit.ts";
import { driveMode } from "./drive-inputs.ts";
import { circuitFrom, circuitNeeds } from "./motor-circuit.ts";
import { induction, plateFrequency } from "./motor-inputs.ts";
import { plateSlip, ratedVoltage } from "./motor-plate.ts";
import { unbalanced, unbalanceDerating } from "./unbalanced.ts";

const KRAUSE = "symmetrical components; Krause, Wasynczuk, Sudhoff, Analysis of Electric Machinery";

export const backwardShare = figure({
  id: "spindle.motor.negative-sequence",
  per: motor,
  symbol: "u_2",
  unit: "1",
  kind: "share",
  says: "backward share of the voltages the motor sees",
  method: "that of the three line voltages for a motor on the line; none behind a drive, which makes its own three",
  source: "IEC 61000-4-30 for the lines",
  needs: { u_2: supplyNegativeSequence, drive: perhaps(driveMode) },
  ...induction,
  of: (x) => (x.drive === null ? x.u_2 : 0),
});

const needs = {
  V: ratedVoltage,
  f: plateFrequency,
  f_n: perhaps(plateFrequency),
  ...circuitNeeds,
  s: plateSlip,
  u_2: backwardShare,
} as const;
type Point = Parameters<typeof circuitFrom>[0] & { V: number; f: number; f_n: number | null; s: number; u_2: number };
const circuit = (x: Point) => circuitFrom(x, x.f_n ?? x.f);
const both = (x: Point) => unbalanced(folded(circuit(x), x.f), circuit(x), x.V, x.u_2, x.s);

export const backwardCurrent = figure({
  id: "spindle.motor.negative-sequence-current",
  per: motor,
  symbol: "I_neg",
  unit: "A",
  says: "backward current in the lines; the worst line carries up to this and the forward one together",
  method: "u_2 V on the circuit at slip 2 - s",
  source: `${KRAUSE}; comes out near 6 to 10 times the share of voltage`,
  needs,
  ...induction,
  of: (x) => both(x).I_2,
  signs: { u_2: "+" },
});

export const unbalanceLoss = figure({
  id: "spindle.motor.unbalance-loss",
  per: motor,
  symbol: "P_2",
  unit: "W",
  kind: "heat",
  says: "extra copper loss that unequal voltages make in stator and rotor",
  method: "3 I_2^2 R_1 and what the backward field takes from the shaft and turns to heat in the rotor, (2 - s) T_2 w_s",
  source: `${KRAUSE}; bars show more resistance to the backward field, so a low figure`,
  needs,
  ...induction,
  of: (x) => both(x).P_extra,
  signs: { u_2: "+" },
});

export const ownDerating = figure({
  id: "spindle.motor.unbalance-derating",
  per: motor,
  symbol: "k_T",
  unit: "1",
  kind: "share",
  says: "share of rated torque at which unequal voltages leave copper loss as it is at plate load",
  method: "slip found at which the copper loss of both fields is that of plate load on equal voltages; torque there over plate torque",
  source: `${KRAUSE}; the curve of NEMA MG 1 asks for more, for the worst line and warmer bars (supply.unbalance-derating)`,
  needs,
  ...induction,
  of: (x) => unbalanceDerating(circuit(x), x.V, x.f, x.u_2, x.s),
  signs: { u_2: "-" },
});

export const loadShare = input({
  key: "load",
  per: motor,
  symbol: "k_l",
  unit: "1",
  kind: "share",
  says: "load it really carries, as a share of plate torque",
  typical: { value: "60 to 90 %", source: "motors of pumps and compressors as built, assumption", unchecked: true },
  measure: "Clamp on a line under its usual load, against the plate; near no load amperes say little, watts more.",
});

/** Copper loss with both fields at a slip [W]. */
const copperAtPlate = (x: Point) => unbalanced(folded(circuit(x), x.f), circuit(x), x.V, 0, x.s).P_copper;
export const unbalanceHeat = figure({
  id: "spindle.motor.unbalance-heat",
  per: motor,
  symbol: "P_cu",
  unit: "W",
  kind: "heat",
  says: "copper loss at its load on these voltages",
  method: "both fields at the slip that gives k_l of plate torque",
  source: KRAUSE,
  needs: { ...needs, k_l: loadShare },
  ...induction,
  of: (x) => {
    const k = folded(circuit(x), x.f);
    const s = slipAtTorque(k, x.V, x.k_l * torqueAtSlip(k, x.V, x.s));
    if (s === null) return 3 * currentAtSlip(k, x.V, 1) ** 2 * x.R_1;
    return unbalanced(k, circuit(x), x.V, x.u_2, s).P_copper;
  },
  signs: { u_2: "+", k_l: "+" },
});
export const ratedCopperLoss = figure({
  id: "spindle.motor.rated-copper-loss",
  per: motor,
  symbol: "P_cun",
  unit: "W",
  kind: "heat",
  says: "copper loss at plate load on equal voltages",
  method: "3 I_1^2 R_1 + s P_ag of the circuit at plate slip",
  source: "T circuit; Chapman, Electric Machinery Fundamentals",
  needs: { V: ratedVoltage, f: plateFrequency, f_n: perhaps(plateFrequency), ...circuitNeeds, s: plateSlip },
  ...induction,
  of: (x) => copperAtPlate({ ...x, u_2: 0 }),
});
export const unbalanceCheck = check({
  id: "spindle.motor.unbalance-holds",
  per: motor,
  asks: "Does the winding stand the unequal voltages of its lines, at the load it really carries?",
  demand: unbalanceHeat,
  capacity: ratedCopperLoss,
  H: 1.1,
  when: induction.when,
  remedies: [
    {
      does: "balance capacitors on the converter",
      costs: "right for one load only: measure three voltages at load",
      changes: [lineVoltages],
    },
    { does: "a bigger idler", costs: "more idle loss, harder start", changes: [lineVoltages] },
    { does: "a drive for this motor instead", costs: "its price; it makes its own three equal voltages", changes: [lineVoltages] },
    { does: "less load on this motor", costs: "less of what it drives", changes: [loadShare] },
  ],
});
