// How the spindle stops: the ramp, what its energy does to the bus, the resistor, and coasting.
import { check } from "../../kernel/check.ts";
import { figure, first, input, known } from "../../kernel/figure.ts";
import { drive, spindle } from "../ground/index.ts";
import {
  brakeEnergy as energyOf,
  brakeMeanPower as meanOf,
  brakePeakPower as peakOf,
  brakeResistanceMax as largest,
  busReserve as reserveOf,
  stopTimeWithoutResistor as withoutResistor,
} from "./braking.ts";
import { busCapacitance, crestEstimate, feedVoltage } from "./drive-bus.ts";
import { brakeResistor, brakeResistorPower, busTrip, driveEfficiency, rampDown, resistorOn, smallestResistor } from "./drive-inputs.ts";
import {
  frictionAtMotor,
  frictionAtTop,
  frictionSteady,
  inertiaAtSpindle,
  motorSpeedAtTop,
  referredInertiaBraking,
  rotorInertia,
  topRatio,
} from "./mass.ts";
import { coastTime as coasting, spinUpEstimate as closedForm } from "./motion.ts";
import { plateCircuit } from "./motor-circuit.ts";
import { fullFluxSpeed } from "./motor.ts";
import { overloadTorque } from "./spin-up.ts";
import { stopWanted, topSpeedWanted } from "./spindle-inputs.ts";

export const tripRatio = input({
  key: "bus.trip-ratio",
  per: drive,
  symbol: "k_tr",
  unit: "1",
  kind: "ratio",
  says: "trip of the bus against the crest of the line",
  typical: { value: "1.15 to 1.25", source: "drives at large, unchecked", unchecked: true },
  measure: "Write the trip voltage itself: data sheet, or the limit shown among the drive's parameters.",
});
export const tripEstimate = figure({
  id: "spindle.trip-estimate",
  per: spindle,
  symbol: "V_te",
  unit: "V",
  says: "bus voltage at which such drives trip",
  formula: "k_tr * sqrt(2) * V",
  source: "drives at large, unchecked",
  needs: { k_tr: tripRatio, V: feedVoltage },
  of: (x) => x.k_tr * Math.SQRT2 * x.V,
  signs: { k_tr: "+", V: "+" },
});
const trip = first(busTrip, tripEstimate);
/** A chopper switches on below the trip; where its voltage is not said. */
const CHOPPER_SHARE = 0.95;
export const chopperEstimate = figure({
  id: "spindle.chopper-estimate",
  per: spindle,
  symbol: "V_ce",
  unit: "V",
  says: "bus voltage at which such choppers switch on",
  formula: `${CHOPPER_SHARE} * V_trip`,
  source: "engineering assumption",
  needs: { V_trip: trip },
  of: (x) => CHOPPER_SHARE * x.V_trip,
  signs: { V_trip: "+" },
});
const chopperOn = first(resistorOn, chopperEstimate);

export const standingLoss = input({
  key: "standing-loss",
  per: drive,
  symbol: "P_l",
  unit: "W",
  kind: "heat",
  says: "power the drive itself takes from its bus",
  typical: { value: "20 to 60 W", source: "fan and electronics of drives of this size, engineering assumption", unchecked: true },
  measure: "Data sheet; or line power of the drive, enabled, motor at standstill.",
});
export const stopEvery = input({
  key: "wanted.stop-every",
  per: spindle,
  symbol: "t_c",
  unit: "s",
  says: "time from one stop to the next",
  typical: { value: "20 to 120 s", source: "bar work with a stop or two a part, assumption until a time line knows", unchecked: true },
  measure: "Stopwatch over ten parts, stops counted.",
});

const ramp = {
  J: referredInertiaBraking,
  w: motorSpeedAtTop,
  T_f: frictionAtMotor,
  eta_m: plateCircuit.efficiency,
  eta_d: driveEfficiency,
} as const;
const rampTime = first(rampDown, stopWanted);
const PEAK = "max(0, J * w / t - T_f) * w * eta_m * eta_d";
const BALANCE = "energy balance of a straight ramp";

export const brakePeakPower = figure({
  id: "spindle.brake.peak-power",
  per: spindle,
  symbol: "P_pk",
  unit: "W",
  says: "greatest power a stop from highest speed sends to the bus",
  formula: PEAK,
  source: `${BALANCE}; efficiency of the motor as at plate load`,
  needs: { ...ramp, t: rampTime },
  of: peakOf,
  signs: { J: "+", w: "+", t: "-", T_f: "-", eta_m: "+", eta_d: "+" },
});
export const brakeEnergy = figure({
  id: "spindle.brake.energy",
  per: spindle,
  symbol: "E_b",
  unit: "J",
  says: "energy a stop from highest speed sends to the bus",
  formula: `${PEAK} * t / 2`,
  source: "area under a power that falls straight to nothing",
  needs: { ...ramp, t: rampTime },
  of: energyOf,
  signs: { J: "+", w: "+", T_f: "-", eta_m: "+", eta_d: "+" },
});
export const brakeResistanceMax = figure({
  id: "spindle.brake.resistance-max",
  per: spindle,
  symbol: "R_max",
  unit: "ohm",
  says: "largest braking resistor that takes the peak",
  formula: "V_on^2 / P_pk",
  source: "Ohm's law at the voltage the chopper switches on; the trip would leave nothing in hand",
  needs: { V_on: chopperOn, P_pk: brakePeakPower },
  of: (x) => largest({ V: x.V_on, P: x.P_pk }),
  signs: { V_on: "+", P_pk: "-" },
});
export const brakeResistanceMin = figure({
  id: "spindle.brake.resistance-min",
  per: spindle,
  symbol: "R_lo",
  unit: "ohm",
  says: "smallest braking resistor the chopper allows",
  formula: "R_min",
  source: "data sheet of the drive",
  needs: { R_min: smallestResistor },
  of: (x) => x.R_min,
  signs: { R_min: "+" },
});
export const brakeMeanPower = figure({
  id: "spindle.brake.mean-power",
  per: spindle,
  symbol: "P_mean",
  unit: "W",
  kind: "heat",
  says: "mean power in the braking resistor",
  formula: "E_b / t_c",
  source: "definition",
  needs: { E_b: brakeEnergy, t_c: stopEvery },
  of: (x) => meanOf({ E: x.E_b, t_c: x.t_c }),
  signs: { E_b: "+", t_c: "-" },
});

export const busReserve = figure({
  id: "spindle.brake.bus-reserve",
  per: spindle,
  symbol: "E_C",
  unit: "J",
  says: "energy the bus takes up before it trips",
  formula: "max(0, C * (V_trip^2 - V_0^2) / 2)",
  source: "energy of a capacitor",
  needs: { C: busCapacitance, V_trip: trip, V_0: crestEstimate },
  of: reserveOf,
  signs: { C: "+", V_trip: "+", V_0: "-" },
});
export const stopTimeWithoutResistor = figure({
  id: "spindle.brake.stop-time-without-resistor",
  per: spindle,
  symbol: "t_0",
  unit: "s",
  says: "shortest stop from highest speed that the bus bears without a resistor",
  method:
    "the ramp whose power above the drive's own loss just fills the bus: t = a (a - 2 E)/(a c - E b + sqrt(E (2 a c P_l + E b^2))), a = J w^2 eta_m eta_d, b = T_f w eta_m eta_d, c = b + P_l; 0 where the bus takes it all",
  source: "energy balance of the bus, closed form; often near the time to coast",
  needs: { ...ramp, E: busReserve, P_l: standingLoss },
  of: withoutResistor,
  signs: { J: "+", w: "+", T_f: "-", eta_m: "+", eta_d: "+", E: "-", P_l: "-" },
});
export const stopTimeWithResistor = figure({
  id: "spindle.brake.stop-time-with-resistor",
  per: spindle,
  symbol: "t_R",
  unit: "s",
  says: "shortest stop from highest speed whose peak the braking resistor takes",
  formula: "J * w / (V_on^2 / (R_br * w * eta_m * eta_d) + T_f)",
  source: BALANCE,
  needs: { ...ramp, V_on: chopperOn, R_br: brakeResistor },
  of: (x) => (x.J * x.w) / (x.V_on ** 2 / (x.R_br * x.w * x.eta_m * x.eta_d) + x.T_f),
  signs: { J: "+", w: "+", T_f: "-", eta_m: "+", eta_d: "+", V_on: "-", R_br: "+" },
});
export const busStop = figure({
  id: "spindle.brake.shortest-stop",
  per: spindle,
  symbol: "t_bus",
  unit: "s",
  says: "shortest stop from highest speed that the bus bears",
  formula: "t_b",
  source: "with the resistor where one is fitted, else without",
  needs: { t_b: first(stopTimeWithResistor, stopTimeWithoutResistor) },
  of: (x) => x.t_b,
  signs: { t_b: "+" },
});
export const torqueStop = figure({
  id: "spindle.brake.torque-stop",
  per: spindle,
  symbol: "t_T",
  unit: "s",
  says: "shortest stop from highest speed that the motor's torque allows",
  method: "J w_b/T + J (w^2 - w_b^2)/(2 T w_b): full torque below base speed, full power above; friction's help left out",
  source: "Newton, integrated",
  needs: { J: referredInertiaBraking, w: motorSpeedAtTop, T: overloadTorque, w_b: fullFluxSpeed },
  of: (x) => closedForm({ ...x, T_l: 0 }),
  signs: { J: "+", w: "+", T: "-", w_b: "-" },
});

const noRamp = known("no-stop-ramp", { symbol: "t_r", value: 0, unit: "s", says: "no ramp written", source: "own choice" });
export const drivenStop = figure({
  id: "spindle.driven-stop-time",
  per: spindle,
  symbol: "t_d",
  unit: "s",
  says: "time to stop from highest speed on the drive's ramp",
  formula: "max(t_r, t_T, t_bus)",
  source: "the ramp set, or what torque and bus allow where it asks more",
  needs: { t_r: first(rampDown, noRamp), t_T: torqueStop, t_bus: busStop },
  of: (x) => Math.max(x.t_r, x.t_T, x.t_bus),
  signs: { t_r: "+", t_T: "+", t_bus: "+" },
});
export const coastTime = figure({
  id: "spindle.coast-time",
  per: spindle,
  symbol: "t_co",
  unit: "s",
  says: "time to coast from highest speed to standstill",
  method: "J/b ln(1 + b n/T_0), b = (T_1 - T_0)/n, J = i^2 J_m + J_s; J n/T_0 where friction does not grow",
  source: "Newton, integrated; friction in a straight line with speed",
  needs: { J_m: rotorInertia, J_s: inertiaAtSpindle, i: topRatio, n: topSpeedWanted, T_0: frictionSteady, T_1: frictionAtTop },
  of: (x) => coasting({ J: x.i * x.i * x.J_m + x.J_s, w: x.n, T_0: x.T_0, T_1: x.T_1, w_1: x.n }),
  signs: { J_m: "+", J_s: "+", i: "+", T_0: "-", T_1: "-" },
});
export const stopTime = figure({
  id: "spindle.stop-time",
  per: spindle,
  symbol: "t_s",
  unit: "s",
  says: "time to stop from highest speed",
  formula: "t",
  source: "under the drive, or coasting where there is none; without power it always coasts",
  needs: { t: first(drivenStop, coastTime) },
  of: (x) => x.t,
  signs: { t: "+" },
});

const longer = { does: "a longer ramp down", costs: "cycle time; the guard stays shut longer", changes: [rampDown] };
const resistor = {
  does: "a braking resistor, or one of fewer ohms and more watts",
  costs: "its price, a hot part at bus voltage, a place with air",
  changes: [brakeResistor, brakeResistorPower],
};

export const stopHolds = check({
  id: "spindle.stop-holds",
  per: spindle,
  asks: "Does the spindle stop in the time you allow?",
  demand: stopTime,
  capacity: stopWanted,
  H: 1.2,
  remedies: [
    { does: "a shorter ramp down, where the bus bears it", costs: "more power back to the bus", changes: [rampDown] },
    resistor,
    { does: "allow more time", costs: "cycle time; the guard stays shut longer", changes: [stopWanted] },
  ],
});
export const brakeHolds = check({
  id: "spindle.brake.peak-holds",
  per: spindle,
  asks: "Does the bus bear the ramp down without tripping?",
  demand: busStop,
  capacity: rampDown,
  H: 1.25,
  remedies: [longer, resistor],
});
export const brakeMeanHolds = check({
  id: "spindle.brake.mean-holds",
  per: spindle,
  asks: "Does the braking resistor stand one stop after another?",
  demand: brakeMeanPower,
  capacity: brakeResistorPower,
  H: 1.25,
  remedies: [longer, resistor, { does: "fewer stops", costs: "cycle order", changes: [stopEvery] }],
});
export const brakeResistorAllowed = check({
  id: "spindle.brake.resistor-allowed",
  per: spindle,
  asks: "Is the braking resistor large enough in ohms for the chopper?",
  demand: brakeResistanceMin,
  capacity: brakeResistor,
  H: 1,
  remedies: [{ does: "a resistor of more ohms", costs: "less peak: a longer ramp", changes: [brakeResistor] }],
});
