// What is believed of a motor before anything is measured: the bands behind a bare plate, all stated, one draw at a time.
import { absoluteZero } from "../../kernel/constants.ts";
import { type CodeLetter, lockedCurrent, lockedPower } from "./plate.ts";
import { type Assumed, circuitOfPlate, type PlateCircuit } from "./plate-circuit.ts";

/** Design letters of NEMA and IEC, and a wound rotor. */
export type Design = "A" | "B" | "C" | "D" | "N" | "H" | "wound";

/** One voltage-current pair of a plate that readPlate accepts, with the letters if they are stamped. */
export interface Plate {
  P: number;
  V: number;
  I: number;
  f: number;
  /** Shaft speed [rad/s]. */
  w: number;
  poles: number;
  design: Design | null;
  code: CodeLetter | null;
}

export interface Range {
  low: number;
  high: number;
}

/** Full-load efficiency of 4-pole motors of the 1970s and 80s by shaft power [W]; between rows by the logarithm. Assumption, unchecked. */
const EFFICIENCY: readonly (readonly [number, number, number])[] = [
  [120, 0.46, 0.62],
  [250, 0.54, 0.68],
  [550, 0.63, 0.75],
  [1100, 0.7, 0.8],
  [2200, 0.76, 0.84],
  [3700, 0.8, 0.875],
  [5500, 0.82, 0.885],
  [7500, 0.84, 0.895],
  [11e3, 0.855, 0.905],
  [22e3, 0.88, 0.92],
  [45e3, 0.9, 0.935],
];

/** The other bands, each drawn evenly. Assumptions, unchecked, save where a source is named. */
export const PRIOR = {
  /** Power factor at plate load. */
  powerFactor: { low: 0.65, high: 0.92 },
  /** Friction and windage, and core loss, as shares of all losses. */
  friction: { low: 0.08, high: 0.18 },
  core: { low: 0.15, high: 0.28 },
  /** Stray load loss as a share of shaft power: 1.8 % (IEEE 112 to 125 hp, unchecked) times 0.6 to 1.6. */
  stray: { low: 0.6 * 0.018, high: 1.6 * 0.018 },
  /** Locked-rotor current over plate current where no code letter is stamped. */
  locked: { low: 5, high: 8 },
  /** Leakage while running over leakage at locked-rotor current. */
  saturation: { low: 1.05, high: 1.4 },
  /** Stator's share of the leakage where no design letter is stamped. */
  split: { low: 0.3, high: 0.5 },
  /** Mean winding temperature at plate load [K]: 65 to 95 degC. */
  hot: { low: absoluteZero.value + 65, high: absoluteZero.value + 95 },
  /** Resistance to 50 or 60 Hz over resistance to dc. */
  skin: { low: 1, high: 1.05 },
} as const satisfies Record<string, Range>;

/** Stator's share of the leakage by design letter: IEEE 112; Chapman, table of the blocked-rotor test. H as C, N as B. */
const SPLIT: Readonly<Record<Design, number>> = { A: 0.5, B: 0.4, C: 0.3, D: 0.5, N: 0.4, H: 0.3, wound: 0.5 };

/** Efficiency band at shaft power P [W]; beyond the table its end rows. */
export function efficiencyBand(P: number): Range {
  const above = EFFICIENCY.findIndex(([power]) => power >= P);
  const [P_1, low_1, high_1] = EFFICIENCY[above === -1 ? EFFICIENCY.length - 1 : above] ?? [P, 0, 1];
  const [P_0, low_0, high_0] = EFFICIENCY[above <= 0 ? EFFICIENCY.length - 1 : above - 1] ?? [P, 0, 1];
  if (above <= 0) return { low: low_1, high: high_1 };
  const t = Math.log(P / P_0) / Math.log(P_1 / P_0);
  return { low: low_0 + t * (low_1 - low_0), high: high_0 + t * (high_1 - high_0) };
}

/** A circuit that fits the plate, with what it was drawn from. */
export interface Candidate extends PlateCircuit {
  s: number;
  efficiency: number;
  I_LR: number;
  /** R_1 (hot, ac) over its dc value at temperature `hot` [1]. */
  skin: number;
  hot: number;
}

/**
 * One circuit drawn from all that fit the plate; null when the draw contradicts it (power factor out of band, no loss left for R_1, no
 * leakage that gives both currents).
 *
 * Before the plate, efficiency and power factor are each even over their band; given their product, which the plate tells, efficiency
 * is then even in its logarithm within the power-factor band. Speed and current are even over what rounds to the stamped numbers.
 * Always takes the same count of numbers from u, so that candidate k is the same whatever was measured.
 */
export function candidate(plate: Plate, u: () => number): Candidate | null {
  const w = plate.w + (u() - 0.5) * speedStep(plate.w);
  const I = plate.I + (u() - 0.5) * currentStep(plate.I);
  const band = efficiencyBand(plate.P);
  const efficiency = band.low * (band.high / band.low) ** u();
  const friction = drawn(PRIOR.friction, u);
  const core = drawn(PRIOR.core, u);
  const stray = drawn(PRIOR.stray, u);
  const split = drawn(PRIOR.split, u);
  const locked = u();
  const saturation = drawn(PRIOR.saturation, u);
  const hot = drawn(PRIOR.hot, u);
  const skin = drawn(PRIOR.skin, u);
  const powerFactor = plate.P / (efficiency * Math.sqrt(3) * plate.V * I);
  if (powerFactor < PRIOR.powerFactor.low || powerFactor > PRIOR.powerFactor.high) return null;
  const loss = plate.P / efficiency - plate.P;
  const range = plate.code === null ? null : lockedPower(plate.code);
  const I_LR = range === null ? I * within(PRIOR.locked, locked) : lockedCurrent(within(range, locked), plate.P, plate.V);
  const s = 1 - (w * plate.poles) / (4 * Math.PI * plate.f);
  const assumed: Assumed = {
    efficiency,
    P_fw: friction * loss,
    P_core: core * loss,
    P_stray: stray * plate.P,
    split: plate.design === null ? split : SPLIT[plate.design],
    I_LR,
    saturation,
  };
  const found = s > 0 ? circuitOfPlate({ P: plate.P, V: plate.V, I, f: plate.f, poles: plate.poles, s }, assumed) : null;
  return found === null ? null : { ...found, s, efficiency, I_LR, skin, hot };
}

/** Steps to which makers round a plate speed [rpm]. */
const COARSE_SPEED = 5;
const FINE_SPEED = 1;
/** Nearness at which a number counts as a whole multiple. */
const WHOLE = 1e-6;

/** Step to which a stamped speed w [rad/s] is rounded: 5 rpm when it is a multiple of 5, else 1. [rad/s] */
export function speedStep(w: number): number {
  const n = (w * 30) / Math.PI;
  return ((isWhole(n / COARSE_SPEED) ? COARSE_SPEED : FINE_SPEED) * Math.PI) / 30;
}

/** Step to which a stamped current is rounded: its second digit when the third is nought, else its third. [A] */
export function currentStep(I: number): number {
  const third = 10 ** (Math.floor(Math.log10(I) + WHOLE) - 2);
  return isWhole(I / (10 * third)) ? 10 * third : third;
}

function isWhole(x: number): boolean {
  return Math.abs(x - Math.round(x)) < WHOLE * Math.max(1, Math.abs(x));
}

function drawn(range: Range, u: () => number): number {
  return within(range, u());
}

function within(range: Range, u: number): number {
  return range.low + u * (range.high - range.low);
}
