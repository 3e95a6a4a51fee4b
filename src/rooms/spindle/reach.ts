// Each cut against what the spindle can give at that speed: torque, reserve before stalling, heat.
import { check } from "../../kernel/check.ts";
import { figure, known, value } from "../../kernel/figure.ts";
import { offer, slot } from "../../kernel/slot.ts";
import { operation, spindle } from "../ground/index.ts";
import { capability, type Capability, lawAt, motorLimit, type MotorPoint } from "./capability.ts";
import { cutSpeed, cutTorque, operationKind } from "./cuts.ts";
import { windingWindow } from "./motor.ts";
import { fan, standstillCurrent } from "./motor-inputs.ts";
import { type Ratio, ratios } from "./ratios.ts";
import { motorPulley } from "./spindle-inputs.ts";
import { continuousTorque } from "./thermal.ts";

/** What the spindle gives at one speed through its best ratio. */
export interface Reach {
  /** Torque at the spindle [N*m]. */
  readonly T: number;
  readonly ratio: Ratio;
  /** Friction of the spindle, seen at the spindle [N*m]. */
  readonly T_f: number;
  readonly motor: MotorPoint;
}

/**
 * Torque at the spindle at speed w with motor current I: the best of the ratios.
 *
 * T = eta i T_m(i w) - T_f; T_f = i T_n max(0, k_f - (1 - eta)), the part of all friction that is not the belt's own. w [rad/s]; I [A rms].
 */
export function reachAt(c: Capability, among: readonly Ratio[], w: number, I: number): Reach {
  let best: Reach | null = null;
  for (const ratio of among) {
    const motor = motorLimit(c, ratio.i * w, I);
    const T_f = ratio.i * c.T_n * Math.max(0, c.k_f - (1 - ratio.eta));
    const T = Math.max(0, ratio.eta * ratio.i * motor.T - T_f);
    if (best === null || T > best.T) best = { T, ratio, T_f, motor };
  }
  if (best === null) throw new Error("no ratio to turn the spindle with");
  return best;
}

export const reach = value({
  id: "spindle.cut.reach",
  per: operation,
  says: "what the spindle gives at the speed of this cut",
  needs: { c: capability, ratios, w: cutSpeed },
  of: (x): Reach =>
    reachAt(
      x.c,
      x.ratios.map((r) => r.value),
      x.w,
      x.c.I_hours,
    ),
});

const ENVELOPE =
  "lowest of torque at plate current or the drive's, and pull-out / 1.3, from the circuit at the bus valley that this very power causes; best ratio; belt and friction off";
export const availableTorque = figure({
  id: "spindle.cut.available-torque",
  per: operation,
  symbol: "T_a",
  unit: "N*m",
  says: "torque the spindle gives for hours at the speed of this cut",
  method: ENVELOPE,
  source: "T circuit; Novotny, Lipo, Vector Control and Dynamics of AC Drives, for the limits",
  needs: { reach },
  assumes: [windingWindow],
  of: (x) => x.reach.T,
});

export const motorTorqueOfCut = figure({
  id: "spindle.cut.motor-torque",
  per: operation,
  symbol: "T_m",
  unit: "N*m",
  says: "torque this cut asks of the motor",
  method: "(T_cut + T_f) / (eta i) at the ratio that gives most",
  source: "energy balance",
  needs: { reach, T: cutTorque },
  of: (x) => (x.T + x.reach.T_f) / (x.reach.ratio.eta * x.reach.ratio.i),
});

export const cutBusPower = figure({
  id: "spindle.cut.bus-power",
  per: operation,
  symbol: "P_cut",
  unit: "W",
  says: "power this cut takes from the bus, at most what the motor can turn into torque",
  method: "bus power at the motor's limit there, in proportion to the torque asked",
  source: "circuit at that point; losses taken in proportion",
  needs: { reach, T: motorTorqueOfCut },
  of: (x) => (x.reach.motor.T > 0 ? x.reach.motor.P_bus * Math.min(1, x.T / x.reach.motor.T) : 0),
});

/** Breakdown that may be counted on until a standstill test says more, as a multiple of rated torque at rated flux. */
const TRUSTED = known("trusted-breakdown", {
  symbol: "k_t",
  value: 2.25,
  unit: "1",
  kind: "ratio",
  says: "breakdown torque counted on until the standstill test is done, times rated",
  source: "plates alone read high; test sheets begin at 2.3, unchecked",
});
export const pullOut = figure({
  id: "spindle.cut.pull-out-torque",
  per: operation,
  symbol: "T_po",
  unit: "N*m",
  says: "motor torque kept clear of stalling at the speed of this cut",
  method:
    "breakdown at that frequency and voltage, not counted above 2.25 T_n at rated flux until a standstill test is done, over 1.3 for dips and rough cuts",
  source: "circuit; reserve: own choice",
  needs: { reach, c: capability, k_t: TRUSTED },
  assumes: [windingWindow],
  of: (x) => {
    const { motor } = x.reach;
    if (motor.f === 0) return 0;
    const flux = lawAt(x.c, motor.P_bus).V_max / motor.f / (x.c.V_n / x.c.f_n);
    const counted = x.c.tested ? Infinity : x.k_t * x.c.T_n * Math.min(1, flux) ** 2;
    return Math.min(motor.T_bd, counted) / 1.3;
  },
});

const easier = [
  { does: "less feed", costs: "longer cut", changes: [] },
  { does: "less depth, one more pass", costs: "longer cut", changes: [] },
  { does: "another speed", costs: "tool life or finish", changes: [] },
  { does: "a second belt ratio", costs: "a belt change between jobs", changes: [motorPulley] },
  { does: "another tool: sharper, more rake, smaller lead", costs: "its price", changes: [] },
];
const cuts = ["turn", "bore", "face", "groove", "part-off", "drill", "thread", "mill"] as const;
export const cutHolds = check({
  id: "spindle.cut.torque-holds",
  per: operation,
  asks: "Does the spindle turn this cut, worn edge?",
  demand: cutTorque,
  capacity: availableTorque,
  H: 1.2,
  when: [{ word: operationKind, is: cuts }],
  remedies: easier,
});
export const tapHolds = check({
  id: "spindle.cut.tap-holds",
  per: operation,
  asks: "Does the spindle turn this tap?",
  demand: cutTorque,
  capacity: availableTorque,
  H: 1.5,
  when: [{ word: operationKind, is: ["tap"] }],
  remedies: easier,
});
export const reserveHolds = check({
  id: "spindle.cut.reserve-holds",
  per: operation,
  asks: "Is the motor far enough from stalling in this cut?",
  demand: motorTorqueOfCut,
  capacity: pullOut,
  H: 1.2,
  remedies: [
    { does: "a lower ratio or top speed", costs: "speed", changes: [motorPulley] },
    { does: "do the standstill test", costs: "an hour; more breakdown torque may then be counted on", changes: [standstillCurrent] },
  ],
});

export const continuousAtCut = figure({
  id: "spindle.cut.continuous-torque",
  per: operation,
  symbol: "T_c",
  unit: "N*m",
  says: "motor torque its winding stands for hours at the speed of this cut",
  method:
    "current whose copper heat, with core and friction heat, the fan at that speed carries off at the class rise; torque of the circuit at that current",
  source: "one warm body; cooling g0 + (1 - g0)(n/n_n)^0.7, engineering model in the direction of IEC TS 60034-25; a heat run replaces it",
  needs: { reach, c: capability },
  of: (x) => {
    const { c } = x;
    const { f, P_bus } = x.reach.motor;
    if (f === 0) return 0;
    const at = continuousTorque(
      c.circuit,
      lawAt(c, P_bus),
      { I_n: c.I_n, f_n: c.f_n, w_n: c.w_n },
      { rise: 1, tau: 1, share: c.share, g_0: c.g_0 },
      f,
    );
    const w = (4 * Math.PI * f * (1 - at.s)) / c.circuit.poles;
    const lost = c.losses.P_fw * (w / c.losses.w_fw) ** 2;
    return w > 0 ? Math.max(0, at.T - lost / w) : 0;
  },
});
export const heatShare = figure({
  id: "spindle.cut.heat-share",
  per: operation,
  symbol: "k_h",
  unit: "1",
  kind: "ratio",
  says: "torque of this cut as a share of what the winding stands for hours at its speed",
  formula: "T_m / T_c",
  source: "own; until a time line knows the pauses, as if the cut went on for hours",
  needs: { T_m: motorTorqueOfCut, T_c: continuousAtCut },
  of: (x) => x.T_m / x.T_c,
});
export const hottest = slot({
  id: "spindle.heat-share",
  per: spindle,
  says: "hottest cut: its torque as a share of what the winding stands for hours",
  combine: "max",
  empty: "refuse",
  unit: "1",
  kind: "ratio",
});
export const heatOffer = offer(hottest, heatShare);
export const thermal = check({
  id: "spindle.thermal",
  per: spindle,
  asks: "Does the motor stay below its class limit in the hottest cut, even if it went on for hours?",
  demand: hottest,
  capacity: known("one-ratio", { symbol: "1", value: 1, unit: "1", kind: "ratio", says: "all of it", source: "definition" }),
  H: 1.1,
  guarantees: windingWindow,
  remedies: [
    { does: "a blower for the motor", costs: "its price, a cable, air", changes: [fan], lay: { "motor.fan": "separate" } },
    { does: "a ratio that lets the motor run faster", costs: "a belt", changes: [motorPulley] },
    { does: "pauses, or the cut shared with others in the cycle", costs: "cycle time", changes: [] },
  ],
});
