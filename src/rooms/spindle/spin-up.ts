// How long the spindle takes to reach its highest speed: the drive's ramp, or all the torque there is.
import { check } from "../../kernel/check.ts";
import { figure, first, known, perhaps, simulated } from "../../kernel/figure.ts";
import { job, type Json } from "../../kernel/job.ts";
import { spindle } from "../ground/index.ts";
import { capability, type Capability, motorLimit } from "./capability.ts";
import { currentLimit, driveCurrent, overloadShare, overloadTime, rampUp } from "./drive-inputs.ts";
import { frictionAtTop, frictionSteady, motorSpeedAtTop, referredInertia, topEfficiency, topRatio } from "./mass.ts";
import { spinUpEstimate as closedForm, spinUpTime as integral, type TorqueAt } from "./motion.ts";
import { fullFluxSpeed } from "./motor.ts";
import { chuckInertia, motorPulley, spinUpWanted } from "./spindle-inputs.ts";
import { ratedCurrent } from "./motor-plate.ts";
import { root } from "../../solve/root.ts";
import { solveT } from "./circuit.ts";

export const overloadCurrent = figure({
  id: "spindle.overload-current",
  per: spindle,
  symbol: "I_ov",
  unit: "A",
  says: "current the drive lets the motor have for seconds",
  method:
    "rated current of the drive times its overload or the limit set in it, the lower; of a drive not chosen yet the motor's current stands in",
  source: "data sheet of the drive",
  needs: { I_d: perhaps(driveCurrent), I_n: ratedCurrent, k_o: overloadShare, k_i: currentLimit },
  of: (x) => (x.I_d ?? x.I_n) * Math.min(x.k_o, x.k_i),
  signs: { k_o: "+", k_i: "+" },
});

export const overloadTorque = figure({
  id: "spindle.overload-torque",
  per: spindle,
  symbol: "T",
  unit: "N*m",
  says: "torque at the motor for the overload time, below base speed",
  method: "most torque of the circuit at that current and the bus it causes, at half the speed of full flux, never above pull-out over 1.3",
  source: "T circuit; pull-out reserve: own choice",
  needs: { c: capability, I: overloadCurrent, w_b: fullFluxSpeed },
  of: (x) => motorLimit(x.c, x.w_b / 2, x.I).T,
});

const load = { T_0: frictionSteady, T_1: frictionAtTop, i: topRatio, eta: topEfficiency } as const;
/** Friction as the motor feels it: the belt's loss comes on top. */
const atMotor = (T: number, x: { i: number; eta: number }): number => T / (x.i * x.eta);

export const spinUpEstimate = figure({
  id: "spindle.spin-up-estimate",
  per: spindle,
  symbol: "t_e",
  unit: "s",
  says: "time to highest speed with constant torque to base speed and constant power above",
  method:
    "J w_b/(T - T_l) + J (-(w - w_b)/T_l - P/T_l^2 ln((P - T_l w)/(P - T_l w_b))), P = T w_b, T_l = (T_0 + T_1)/(2 i eta); w <= w_b leaves the second part out",
  source: "Newton, integrated; friction at its mean",
  needs: { J: referredInertia, T: overloadTorque, w_b: fullFluxSpeed, w: motorSpeedAtTop, ...load },
  of: (x) => closedForm({ J: x.J, T: x.T, T_l: atMotor((x.T_0 + x.T_1) / 2, x), w_b: x.w_b, w: x.w }),
  signs: { J: "+", T: "-", w_b: "-", w: "+", T_0: "+", T_1: "+" },
});

interface SpinUpBrief {
  readonly [key: string]: Json;
  readonly J: number;
  readonly w: number;
  /** Friction at the motor, near standstill and at highest speed [N*m]. */
  readonly T_0: number;
  readonly T_1: number;
  /** Motor speeds [rad/s] and torques [N*m], straight between. */
  readonly at: readonly number[];
  readonly torque: readonly number[];
}

/** Speeds at which the torque curve is worked out; straight lines between them are within 1e-4 of the time. */
const KNOTS = 64;
/** The slowest of them, as a share of the highest: a motor cannot be asked at standstill itself. */
const SLOWEST = 1e-3;

/** Straight lines between the points of a curve. */
export function between(x: readonly number[], y: readonly number[]): TorqueAt {
  let k = 0;
  return (w) => {
    while (k + 2 < x.length && w > (x[k + 1] ?? 0)) k += 1;
    while (k > 0 && w < (x[k] ?? 0)) k -= 1;
    const [a = 0, b = 0, T_a = 0, T_b = 0] = [x[k], x[k + 1], y[k], y[k + 1]];
    return T_a + ((T_b - T_a) * (Math.max(a, w) - a)) / (b - a || 1);
  };
}

/** Time [s]; null where the speed is never reached. */
const spinUpJob = job<SpinUpBrief, number | null>({
  id: "spindle.spin-up",
  version: 1,
  run: (x) => {
    const time = integral({
      J: x.J,
      w_0: 0,
      w_1: x.w,
      T: between(x.at, x.torque),
      T_l: (w) => x.T_0 + ((x.T_1 - x.T_0) * w) / x.w,
    });
    return time === Infinity ? null : time;
  },
});

/** Below this share of plate frequency a start need not keep clear of pull-out: the ramp only goes up and friction is all that resists. */
const START_TO = 0.25;

/**
 * Torque near standstill on plain volts per hertz: the ramp raises the frequency until the current reaches what the drive allows.
 *
 * T [N m] of the circuit at speed w and the frequency f at which I_1(f) = I, V = V_n f/f_n, even past pull-out. w [rad/s], I [A rms]. Source: T circuit.
 */
function startTorque(c: Capability, w: number, I: number): number {
  const own = (w * c.circuit.poles) / (4 * Math.PI);
  const at = (f: number) => solveT((c.V_n * f) / c.f_n, f, c.circuit, 1 - own / f);
  const top = START_TO * c.f_n;
  const f = at(top).I_1 <= I ? top : root((x) => at(x).I_1 - I, own * (1 + 1e-6), top);
  return f === null ? 0 : at(f).T;
}

/** Torque while speeding up. Near standstill that of the air gap: loss torques are stated for running speeds and friction is taken off elsewhere. */
function torqueOf(c: Capability, w: number, I: number): number {
  const limit = motorLimit(c, w, I);
  if (limit.f === 0 || limit.f >= START_TO * c.f_n) return limit.T;
  const gap = solveT(limit.V, limit.f, c.circuit, limit.s).T;
  return c.E_0 === null ? Math.max(gap, startTorque(c, w, I)) : gap;
}

/** The curve the job reads: of the circuit where there is one, else full torque to base speed and full power above. */
export function overloadCurve(x: { c: Capability | null; I: number | null; T: number; w_b: number; w: number }): {
  at: number[];
  torque: number[];
} {
  const { c, I } = x;
  const even = Array.from({ length: KNOTS }, (_, k) => x.w * (SLOWEST + ((1 - SLOWEST) * k) / (KNOTS - 1)));
  const at = x.w_b < x.w ? [...even, x.w_b].toSorted((a, b) => a - b) : even;
  return { at, torque: at.map((w) => (c !== null && I !== null ? torqueOf(c, w, I) : Math.min(x.T, (x.T * x.w_b) / w))) };
}

export const spinUpRun = simulated({
  id: "spindle.spin-up-run",
  per: spindle,
  symbol: "t_u",
  unit: "s",
  says: "time to highest speed with all the torque the drive allows",
  method: "integral of J/(T(w) - T_l(w)) dw over 400 panels, torque from the circuit at 65 speeds, friction growing with speed",
  source: "Newton",
  needs: {
    c: perhaps(capability),
    I: perhaps(overloadCurrent),
    J: referredInertia,
    T: overloadTorque,
    w_b: fullFluxSpeed,
    w: motorSpeedAtTop,
    ...load,
  },
  job: spinUpJob,
  brief: (x) => ({ J: x.J, w: x.w, T_0: atMotor(x.T_0, x), T_1: atMotor(x.T_1, x), ...overloadCurve(x) }),
  read: (t) => t ?? Infinity,
  estimate: spinUpEstimate,
  tolerance: 1e-3,
});

const noRamp = known("no-ramp", {
  symbol: "t_r",
  value: 0,
  unit: "s",
  says: "no ramp written: all the torque there is",
  source: "own choice",
});
export const spinUpTime = figure({
  id: "spindle.spin-up-time",
  per: spindle,
  symbol: "t_up",
  unit: "s",
  says: "time to highest speed",
  formula: "max(t_r, t_u)",
  source: "the drive's ramp, or torque where the ramp asks more than there is",
  needs: { t_r: first(rampUp, noRamp), t_u: spinUpRun },
  of: (x) => Math.max(x.t_r, x.t_u),
  signs: { t_r: "+", t_u: "+" },
});

export const overloadLasts = check({
  id: "spindle.overload-lasts",
  per: spindle,
  asks: "Does the drive's overload last for the whole spin-up?",
  demand: spinUpTime,
  capacity: overloadTime,
  H: 1.1,
  remedies: [
    { does: "a longer ramp, so that the torque asked stays below rated", costs: "cycle time", changes: [rampUp] },
    { does: "a larger drive", costs: "its price", changes: [driveCurrent] },
  ],
});

export const spinUpHolds = check({
  id: "spindle.spin-up-holds",
  per: spindle,
  asks: "Does the spindle reach its highest speed in the time you allow?",
  demand: spinUpTime,
  capacity: spinUpWanted,
  H: 1.2,
  remedies: [
    { does: "a shorter ramp in the drive, where torque allows it", costs: "more current while it speeds up", changes: [rampUp] },
    {
      does: "more overload: a higher current limit or a larger drive",
      costs: "its price; the motor warms",
      changes: [currentLimit, driveCurrent],
    },
    {
      does: "fewer motor turns a spindle turn for a low top speed, more for a high one",
      costs: "a belt change; torque at the spindle",
      changes: [motorPulley],
    },
    { does: "a lighter chuck or collet nose", costs: "its price", changes: [chuckInertia] },
    { does: "allow more time", costs: "cycle time", changes: [spinUpWanted] },
  ],
});
