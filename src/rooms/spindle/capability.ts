// What the motor can give at the spindle at any speed: circuit, drive, bus and ratios together.
import { perhaps, value } from "../../kernel/figure.ts";
import { spindle } from "../ground/index.ts";
import { breakdownTorque, type Circuit, solvedAt } from "./circuit.ts";
import { currentLimit, deadTimeFactor, driveCurrent, driveEfficiency, driveMode, overloadShare } from "./drive-inputs.ts";
import { crestEstimate, dcValley, busPowerFull, valleyHalf, valleyOver } from "./drive-bus.ts";
import { type Losses } from "./losses.ts";
import { circuitFrom, circuitNeeds, lossesFrom, lossNeeds, plateCircuit } from "./motor-circuit.ts";
import { copperHeatShare, fan, plateFrequency, standstillCooling, standstillCurrent } from "./motor-inputs.ts";
import { linkShare, ratedCurrent, ratedTorque, ratedVoltage } from "./motor-plate.ts";
import { frictionShare } from "./spindle-inputs.ts";
import { type ValleyCurve, valleyOnCurve } from "./valley.ts";
import { type LimitPoint, plainVoltage, scratch, torqueLimitAtSpeed, type VoltageLaw } from "./voltage-laws.ts";

/** Everything that decides torque at a speed, of one imagined shop. */
export interface Capability {
  readonly circuit: Circuit;
  readonly losses: Losses;
  /** Rated volts of the links, plate frequency. */
  readonly V_n: number;
  readonly f_n: number;
  /** Air-gap volts held by a vector drive; null on plain volts per hertz. */
  readonly E_0: number | null;
  /** Bus power at which the valley curve was simulated [W], and the bus there and at none, half and one and a half of it [V]. */
  readonly P: number;
  readonly valleys: ValleyCurve;
  readonly k_dt: number;
  readonly eta_d: number;
  /** Current for hours, the lower of plate and drive as set; and for the drive's overload time [A]. */
  readonly I_hours: number;
  readonly I_short: number;
  /** Plate torque [N*m], current [A] and speed [rad/s] of the links. */
  readonly T_n: number;
  readonly I_n: number;
  readonly w_n: number;
  /** Friction of spindle and belt as a share of plate torque [1]. */
  readonly k_f: number;
  /** Share of the heat at plate load that goes with current squared, and cooling left at standstill [1]. */
  readonly share: number;
  readonly g_0: number;
  /** Whether the standstill test has been done, so that breakdown torque may be counted on. */
  readonly tested: boolean;
}

export const capability = value({
  id: "spindle.capability",
  per: spindle,
  says: "circuit, drive and bus of the spindle motor together",
  needs: {
    ...circuitNeeds,
    ...lossNeeds,
    V_n: ratedVoltage,
    f_n: plateFrequency,
    E: plateCircuit.E,
    k: linkShare,
    mode: driveMode,
    P: busPowerFull,
    v_0: crestEstimate,
    v_half: valleyHalf,
    v_full: dcValley,
    v_over: valleyOver,
    k_dt: deadTimeFactor,
    eta_d: driveEfficiency,
    I_n: ratedCurrent,
    I_d: perhaps(driveCurrent),
    k_i: currentLimit,
    k_o: overloadShare,
    T_n: ratedTorque,
    k_f: frictionShare,
    share: copperHeatShare,
    g_0: standstillCooling,
    fan,
    tested: perhaps(standstillCurrent),
  },
  of: (x): Capability => ({
    circuit: circuitFrom(x, x.f_n),
    losses: lossesFrom(x),
    V_n: x.V_n,
    f_n: x.f_n,
    E_0: x.mode === "volts-per-hertz" ? null : x.E * x.k,
    P: x.P,
    valleys: [x.v_0, x.v_half, x.v_full, x.v_over],
    k_dt: x.k_dt,
    eta_d: x.eta_d,
    I_hours: Math.min(x.I_n, x.I_d === null ? x.I_n : x.I_d * Math.min(1, x.k_i)),
    I_short: (x.I_d ?? x.I_n) * Math.min(x.k_o, x.k_i),
    T_n: x.T_n,
    I_n: x.I_n,
    w_n: x.w_fw,
    k_f: x.k_f,
    share: x.share,
    g_0: x.fan === "shaft" ? x.g_0 : 1,
    tested: x.tested !== null,
  }),
});

/** The most the drive can give at bus power P [W], volts rms between lines. */
const ceilingAt = (c: Capability, P: number): number => (c.k_dt * valleyOnCurve(c.valleys, P / c.P)) / Math.SQRT2;

export function lawAt(c: Capability, P: number): VoltageLaw {
  return { V_n: c.V_n, f_n: c.f_n, V_max: ceilingAt(c, P), E_0: c.E_0 };
}

export interface MotorPoint {
  /** Torque at the shaft [N*m]. */
  T: number;
  /** Power from the bus [W]. */
  P_bus: number;
  /** Drive frequency [Hz] and volts between lines. */
  f: number;
  V: number;
  s: number;
  I: number;
  by: LimitPoint["by"];
  /** Largest torque of the air gap at this frequency and voltage, no reserve [N*m]. */
  T_bd: number;
}

/** Rounds in which torque and bus valley settle on each other; three or four do. */
const ROUNDS = 12;
/** Change of power below which another round would change nothing that is shown, as a share of the power the curve was simulated for [1]. */
const SETTLED = 1e-4;
const NONE: MotorPoint = { T: 0, P_bus: 0, f: 0, V: 0, s: 0, I: 0, by: "current", T_bd: 0 };

/**
 * The most the motor gives at shaft speed w with line current I, bus and torque settled on each other.
 *
 * Torque of torqueLimitAtSpeed at the ceiling k_dt V_valley(P)/sqrt(2), P = P_in/eta_d; friction and stray loss taken off. w [rad/s] > 0; I [A rms].
 * Between rounds P moves to where P = P_in/eta_d for the slip found, P_in going with V^2 there: exact at pull-out, whose slip no voltage moves.
 * Nothing where no frequency gives that speed.
 */
export function motorLimit(c: Capability, w: number, I: number): MotorPoint {
  // A bus that cannot carry the power of full flux may still carry less.
  let P = ceilingAt(c, c.P) > 0 ? c.P : 0;
  const law = lawAt(c, P);
  let f: number | undefined;
  for (let round = 1; ; round += 1) {
    law.V_max = ceilingAt(c, P);
    const point = torqueLimitAtSpeed(c.circuit, law, w, I, f, on);
    if (point === null || point.V === 0) return NONE;
    f = point.f;
    const at = solvedAt(on.fold, point.V, c.circuit, point.s);
    const P_bus = Math.max(0, at.P_in) / c.eta_d;
    if (Math.abs(P_bus - P) < SETTLED * c.P || round === ROUNDS) {
      // As torque: friction and fan go with speed; stray loss is taken to go with speed and current squared, so its torque stays finite at rest.
      const lost = (c.losses.P_fw * w) / c.losses.w_fw ** 2 + (c.losses.P_stray / c.losses.w_fw) * (at.I_2 / c.losses.I_2n) ** 2;
      const T_bd = breakdownTorque(on.fold, Math.max(point.V, plainVoltage(law, f)));
      return { T: Math.max(0, point.T - lost), P_bus, f, V: point.V, s: point.s, I: at.I_1, by: point.by, T_bd };
    }
    P = point.V < law.V_max ? P_bus : powerOnCeiling(c, P_bus / point.V ** 2, P);
  }
}
/** Written and read within one call. */
const on = scratch();

/** The power at which P = conductance V_max(P)^2, by the secant from P: a load that goes by the square of the volts, on a bus that sags with it. */
function powerOnCeiling(c: Capability, conductance: number, from: number): number {
  let P = from;
  let change = 0;
  let missBefore = 0;
  for (let step = 0; step < ROUNDS; step += 1) {
    const miss = conductance * ceilingAt(c, P) ** 2 - P;
    if (Math.abs(miss) < (SETTLED / 10) * c.P) return P;
    // Volts fall with power: twice as steep a miss as that of a stiff bus is near enough to begin with.
    const slope = step === 0 ? -2 : (miss - missBefore) / change;
    change = Math.max(-P, -miss / slope);
    missBefore = miss;
    P += change;
  }
  return P;
}
