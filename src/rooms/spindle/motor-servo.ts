// A permanent-magnet servo as spindle motor: the speed its bus allows at a torque, the torque at a speed, and the constants people mix up.
import { notice } from "../../kernel/check.ts";
import { figure, first, input } from "../../kernel/figure.ts";
import { motor } from "../ground/index.ts";
import { frequency } from "../supply/index.ts";
import { busCapacitance, fedPhases, feedVoltage } from "./drive-bus.ts";
import { deadTimeFactor, driveEfficiency } from "./drive-inputs.ts";
import { motorKind, motorTopSpeed, resistance } from "./motor-inputs.ts";
import { fluxLinkage, phasePeak, type Servo, servoTopSpeed, servoTorque } from "./other-motors.ts";
import { idealValley } from "./valley.ts";

const servo = { when: [{ word: motorKind, is: ["servo"] }] } as const;
const sheet = "Data sheet of the motor.";
export const servoLoad = input({
  key: "torque",
  per: motor,
  symbol: "T",
  unit: "N*m",
  says: "torque the servo gives for hours",
  measure: sheet,
});
export const servoPeak = input({
  key: "peak-torque",
  per: motor,
  symbol: "T_pk",
  unit: "N*m",
  says: "torque the servo gives for seconds",
  measure: sheet,
});
export const torqueConstant = input({
  key: "torque-constant",
  per: motor,
  symbol: "k_T",
  unit: "N*m/A",
  says: "torque per ampere rms of a line",
  measure: "Data sheet; where it is per ampere peak, times 1.414. Or torque over the rms current of a line, both from the same row.",
});
export const voltageConstant = input({
  key: "voltage-constant",
  per: motor,
  symbol: "k_E",
  unit: "V*s/rad",
  says: "rms volts between two lines per speed, driven and open",
  measure:
    "Data sheet; or turn the shaft at a known speed, drive disconnected, and read rms volts between two lines. Sheets that mean one phase show it 1.732 too low.",
});
export const polePairs = input({
  key: "pole-pairs",
  per: motor,
  symbol: "z_p",
  unit: "1",
  kind: "count",
  says: "pole pairs, half of the poles",
  measure: sheet,
});
export const lineInductance = input({
  key: "inductance",
  per: motor,
  symbol: "L_ll",
  unit: "H",
  says: "inductance between two lines",
  measure: "Data sheet; where it is of one phase, twice that. Or a meter between two leads, shaft turned slowly, mean of the readings.",
});

export const servoFlux = figure({
  id: "spindle.motor.servo-flux-linkage",
  per: motor,
  symbol: "lambda",
  unit: "V*s/rad",
  says: "peak flux linkage of one phase of the servo",
  formula: "k_T / (1.5 * z_p * sqrt(2))",
  source: "T = 1.5 z_p lambda i_q with i_q in ampere peak; Krause, Wasynczuk, Sudhoff, Analysis of Electric Machinery",
  needs: { k_T: torqueConstant, z_p: polePairs },
  ...servo,
  of: (x) => fluxLinkage(x.k_T, x.z_p),
});

export const servoBus = figure({
  id: "spindle.motor.servo-bus-voltage",
  per: motor,
  symbol: "V_dc",
  unit: "V",
  says: "lowest bus voltage with the servo at its torque and highest speed, line without impedance",
  method: "valley of the bus at the power T n over drive efficiency, the motor's own copper loss left out",
  source: "energy balance of the capacitor; own",
  needs: { T: servoLoad, n: motorTopSpeed, eta_d: driveEfficiency, V: feedVoltage, f: frequency, C: busCapacitance, phases: fedPhases },
  ...servo,
  of: (x) => idealValley({ V: x.V, f: x.f, P: (x.T * x.n) / x.eta_d, C: x.C, phases: x.phases }),
  signs: { V: "+", C: "+", T: "-", n: "-" },
});

const needs = {
  V_dc: servoBus,
  k_dt: deadTimeFactor,
  R_ll: resistance,
  L_ll: lineInductance,
  lambda: servoFlux,
  z_p: polePairs,
} as const;
interface Servoed {
  readonly V_dc: number;
  readonly k_dt: number;
  readonly R_ll: number;
  readonly L_ll: number;
  readonly lambda: number;
  readonly z_p: number;
}
/** One phase is half of what a meter sees between two lines. */
const phase = (x: Servoed): Servo => ({ R: x.R_ll / 2, L: x.L_ll / 2, lambda: x.lambda, pairs: x.z_p });
/** Dead time and switches are in k_dt, so nothing more is taken off. */
const peakOf = (x: Servoed): number => phasePeak(x.V_dc, x.k_dt, 0);
const KRAUSE =
  "v_q = R i_q + z_p w lambda, v_d = -z_p w L i_q, peak of one phase at most k_dt V_dc / sqrt(3); R and L half of what stands between two lines; no field weakening";
export const servoTopSpeedFigure = figure({
  id: "spindle.motor.servo-top-speed",
  per: motor,
  symbol: "n_top",
  unit: "rad/s",
  says: "highest speed of the servo at torque T on this bus",
  method: `the speed at which hypot(v_q, v_d) meets the bus; ${KRAUSE}`,
  source: "Krause, Wasynczuk, Sudhoff, Analysis of Electric Machinery",
  needs: { ...needs, T: servoLoad },
  ...servo,
  of: (x) => servoTopSpeed(phase(x), peakOf(x), x.T),
  signs: { V_dc: "+", k_dt: "+", R_ll: "-", L_ll: "-", T: "-" },
});
export const servoTorqueFigure = figure({
  id: "spindle.motor.servo-torque-at-speed",
  per: motor,
  symbol: "T_n",
  unit: "N*m",
  says: "torque the bus leaves the servo at speed n, at most its peak torque; peak torque is a matter of seconds",
  method: `i_q at which hypot(v_q, v_d) meets the bus at n; ${KRAUSE}`,
  source: "Krause, Wasynczuk, Sudhoff, Analysis of Electric Machinery",
  needs: { ...needs, n: motorTopSpeed, T_pk: first(servoPeak, servoLoad) },
  ...servo,
  of: (x) => servoTorque(phase(x), peakOf(x), x.n, x.T_pk),
  signs: { V_dc: "+", k_dt: "+", R_ll: "-", L_ll: "-", n: "-" },
});

/** What k_T / (sqrt(3) k_E) comes to, 1 for a sine motor, when one of the two was read as something else. */
const MIXED = [
  {
    ratio: 1 / Math.SQRT2,
    says: "either the torque constant is per ampere peak (times 1.414 it is per ampere rms) or the voltage constant is a peak",
  },
  { ratio: Math.sqrt(3), says: "the voltage constant looks like that of one phase: times 1.732 it is between two lines" },
  { ratio: Math.sqrt(3 / 2), says: "the voltage constant looks like the peak of one phase: times 1.225 it is rms between two lines" },
] as const;
/** Constants of one motor agree within this share; sheets round and magnets differ. */
const AGREE = 0.08;
export const servoConstants = notice({
  id: "spindle.motor.servo-constants",
  per: motor,
  severity: "warning",
  needs: { k_T: torqueConstant, k_E: voltageConstant },
  ...servo,
  at: torqueConstant,
  of: (x) => {
    const ratio = x.k_T / (Math.sqrt(3) * x.k_E);
    if (Math.abs(ratio - 1) <= AGREE) return null;
    const mixed = MIXED.find((m) => Math.abs(ratio / m.ratio - 1) <= AGREE);
    return `Torque constant over 1.732 times voltage constant is ${ratio.toFixed(2)}, and is 1 for one motor: ${mixed?.says ?? "one of the two is not what its key says, or not of this motor"}.`;
  },
});
