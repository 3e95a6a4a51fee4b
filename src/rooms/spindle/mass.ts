// What turns: inertia of rotor, belt and spindle, friction that holds it back, energy it stores.
import { standardGravity } from "../../kernel/constants.ts";
import { figure, first, input, known } from "../../kernel/figure.ts";
import { motor, spindle } from "../ground/index.ts";
import { dcRatedTorque } from "./motor-dc.ts";
import { motorInertia, platePower } from "./motor-inputs.ts";
import { ratedTorque } from "./motor-plate.ts";
import { servoLoad } from "./motor-servo.ts";
import { dropHeight, inertiaSlowingDown, inertiaSpeedingUp, storedEnergy as energyOf } from "./motion.ts";
import { ratios } from "./ratios.ts";
import { chuckInertia, frictionShare, spindleInertia, topSpeedWanted } from "./spindle-inputs.ts";

/** Rotors of 4 poles: 0.010 to 0.020 kg m2 at 3.7 kW, 0.018 to 0.035 at 5.5 kW; the power law through their middles. */
const ROTOR = { J: 0.0265, P: 5500, exponent: 1.43 } as const;
const rotorReference = known("rotor-inertia", {
  symbol: "J_ref",
  value: ROTOR.J,
  unit: "kg*m2",
  says: "inertia of a usual 4-pole rotor of 5.5 kW",
  source: "engineering assumption, unchecked",
});
const powerReference = known("rotor-power", {
  symbol: "P_ref",
  value: ROTOR.P,
  unit: "W",
  says: "power of that motor",
  source: "its name",
});

export const inertiaFactor = input({
  key: "inertia-factor",
  per: motor,
  symbol: "k_J",
  unit: "1",
  kind: "ratio",
  says: "rotor against a usual one of its power",
  typical: { value: "0.67 to 1.33", source: "spread of 4-pole rotors from 3.7 to 5.5 kW, engineering assumption", unchecked: true },
  measure: "Write the inertia of the motor itself: data sheet, or coast-down and spin-up together once it turns (step inertia).",
});
export const rotorEstimate = figure({
  id: "spindle.motor.rotor-estimate",
  per: motor,
  symbol: "J_e",
  unit: "kg*m2",
  says: "inertia of the rotor, guessed from its power",
  formula: `k_J * J_ref * (P_n / P_ref)^${ROTOR.exponent}`,
  source: "power law through two sizes of 4-pole motors, engineering assumption, unchecked",
  needs: { k_J: inertiaFactor, J_ref: rotorReference, P_n: platePower, P_ref: powerReference },
  of: (x) => x.k_J * x.J_ref * (x.P_n / x.P_ref) ** ROTOR.exponent,
  signs: { k_J: "+", P_n: "+" },
});
export const rotorInertia = first(motorInertia, rotorEstimate);

/** Highest speed is reached on the ratio with the fewest motor turns; that is the one spin-up and stop are judged on. */
const fastest = "of several ratios the one with the fewest motor turns a spindle turn, on which the highest speed is reached";
export const topRatio = figure({
  id: "spindle.top-ratio",
  per: spindle,
  symbol: "i",
  unit: "1",
  kind: "ratio",
  says: "motor turns per spindle turn at highest speed",
  method: fastest,
  source: "definition",
  needs: { ratios },
  of: (x) => x.ratios.reduce((least, r) => Math.min(least, r.value.i), Infinity),
});
export const topEfficiency = figure({
  id: "spindle.top-efficiency",
  per: spindle,
  symbol: "eta_b",
  unit: "1",
  kind: "share",
  says: "efficiency of the belt at highest speed",
  method: fastest,
  source: "definition",
  needs: { ratios },
  of: (x) => x.ratios.reduce((best, r) => (r.value.i < best.i ? r.value : best), { i: Infinity, eta: Number.NaN }).eta,
});

export const motorSpeedAtTop = figure({
  id: "spindle.motor-speed-at-top",
  per: spindle,
  symbol: "w_m",
  unit: "rad/s",
  says: "motor speed at the highest spindle speed wanted",
  formula: "i * n_top",
  source: "ratio",
  needs: { i: topRatio, n_top: topSpeedWanted },
  of: (x) => x.i * x.n_top,
  signs: { i: "+", n_top: "+" },
});

export const inertiaAtSpindle = figure({
  id: "spindle.inertia-at-spindle",
  per: spindle,
  symbol: "J_s",
  unit: "kg*m2",
  says: "inertia of everything that turns with the spindle",
  formula: "J_sp + J_ch",
  source: "sum; a slender bar hardly adds",
  needs: { J_sp: spindleInertia, J_ch: chuckInertia },
  of: (x) => x.J_sp + x.J_ch,
  signs: { J_sp: "+", J_ch: "+" },
});

const shafts = { J_m: rotorInertia, J_s: inertiaAtSpindle, i: topRatio, eta: topEfficiency } as const;
export const referredInertia = figure({
  id: "spindle.referred-inertia",
  per: spindle,
  symbol: "J",
  unit: "kg*m2",
  says: "inertia the motor feels while it speeds the spindle up",
  formula: "J_m + J_s / (i^2 * eta)",
  source: "energy balance; the motor makes up the loss of the belt",
  needs: shafts,
  of: inertiaSpeedingUp,
  signs: { J_m: "+", J_s: "+", i: "-", eta: "-" },
});
export const referredInertiaBraking = figure({
  id: "spindle.referred-inertia-braking",
  per: spindle,
  symbol: "J_b",
  unit: "kg*m2",
  says: "inertia the motor feels while it brakes",
  formula: "J_m + J_s * eta / i^2",
  source: "energy balance; the loss of the belt helps",
  needs: shafts,
  of: inertiaSlowingDown,
  signs: { J_m: "+", J_s: "+", i: "-", eta: "+" },
});

export const frictionEstimate = figure({
  id: "spindle.friction-estimate",
  per: spindle,
  symbol: "T_fe",
  unit: "N*m",
  says: "friction of spindle and belt near standstill, guessed",
  formula: "i * k_f * T_n",
  source: "share of rated motor torque, engineering assumption",
  needs: { i: topRatio, k_f: frictionShare, T_n: first(ratedTorque, dcRatedTorque, servoLoad) },
  of: (x) => x.i * x.k_f * x.T_n,
  signs: { i: "+", k_f: "+", T_n: "+" },
});
export const frictionSteady = input({
  key: "friction.steady",
  per: spindle,
  symbol: "T_0",
  unit: "N*m",
  says: "friction of spindle and belt near standstill, seen at the spindle",
  typical: { of: frictionEstimate, source: "3 to 10 % of rated motor torque, engineering assumption", unchecked: true },
  measure: "Coast-down and spin-up together, once it turns (step inertia).",
});
export const frictionGrowth = input({
  key: "friction.growth",
  per: spindle,
  symbol: "g_f",
  unit: "1",
  kind: "ratio",
  says: "friction at highest speed against that near standstill",
  typical: { value: "1 to 2.5", source: "churned grease and belt windage, engineering assumption", unchecked: true },
  measure: "Coast-down: slope at the start over slope at the end.",
});
export const frictionTopEstimate = figure({
  id: "spindle.friction-top-estimate",
  per: spindle,
  symbol: "T_1e",
  unit: "N*m",
  says: "friction of spindle and belt at highest speed, guessed",
  formula: "g_f * T_0",
  source: "engineering assumption",
  needs: { g_f: frictionGrowth, T_0: frictionSteady },
  of: (x) => x.g_f * x.T_0,
  signs: { g_f: "+", T_0: "+" },
});
export const frictionAtTop = input({
  key: "friction.at-top",
  per: spindle,
  symbol: "T_1",
  unit: "N*m",
  says: "friction of spindle and belt at highest speed, seen at the spindle",
  typical: { of: frictionTopEstimate, source: "1 to 2.5 times that near standstill, engineering assumption", unchecked: true },
  measure: "Coast-down: slope just after the drive lets go, times inertia.",
});
export const frictionAtMotor = figure({
  id: "spindle.friction-at-motor",
  per: spindle,
  symbol: "T_f",
  unit: "N*m",
  says: "friction at highest speed, seen at the motor",
  formula: "T_1 / i",
  source: "ratio",
  needs: { T_1: frictionAtTop, i: topRatio },
  of: (x) => x.T_1 / x.i,
  signs: { T_1: "+", i: "-" },
});

export const storedEnergy = figure({
  id: "spindle.stored-energy",
  per: spindle,
  symbol: "E",
  unit: "J",
  says: "energy in everything that turns, at highest speed",
  formula: "(J_m * (i * n_top)^2 + J_s * n_top^2) / 2",
  source: "mechanics",
  needs: { J_m: rotorInertia, J_s: inertiaAtSpindle, i: topRatio, n_top: topSpeedWanted },
  of: (x) => energyOf({ J_m: x.J_m, J_s: x.J_s, i: x.i, w: x.n_top }),
  signs: { J_m: "+", J_s: "+", i: "+", n_top: "+" },
});
export const energyDropHeight = figure({
  id: "spindle.drop-height",
  per: spindle,
  symbol: "h",
  unit: "m",
  kind: "distance",
  says: "height from which a weight of 1 kg would bring the same energy",
  formula: "E / (m * g_n)",
  source: "mechanics: what it means to stand in the way",
  needs: {
    E: storedEnergy,
    m: known("kilogram", { symbol: "m", value: 1, unit: "kg", says: "a weight to imagine", source: "own choice" }),
    g_n: known("gravity", standardGravity),
  },
  of: dropHeight,
  signs: { E: "+" },
});
