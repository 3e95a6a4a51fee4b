// What is believed of a motor before anything is measured: the bands behind a bare plate, all stated, one draw at a time.
import { absoluteZero } from "../../kernel/constants.ts";
import { synchronousSpeed } from "./circuit.ts";
import { type CodeLetter, lockedCurrent, lockedPower } from "./plate.ts";
import { type Assumed, circuitOfPlate, type PlateCircuit } from "./plate-circuit.ts";
import type { CubePoint } from "../../solve/temper.ts";

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
export const SPLIT: Readonly<Record<Design, number>> = { A: 0.5, B: 0.4, C: 0.3, D: 0.5, N: 0.4, H: 0.3, wound: 0.5 };

/** Locked-rotor over plate current where no code letter is stamped: 5 to 8 from 1.5 kW up, less for the high resistance of small motors. Assumption, unchecked. */
const LOCKED = { small: { P: 120, low: 3, high: 5.5 }, large: { P: 1500, low: 5, high: 8 } };

/** Locked-rotor current over plate current [1] at shaft power P [W]; between the ends of LOCKED by the logarithm of power. */
export function lockedBand(P: number): Range {
  const { small, large } = LOCKED;
  const t = Math.min(1, Math.max(0, Math.log(P / small.P) / Math.log(large.P / small.P)));
  return { low: small.low + t * (large.low - small.low), high: small.high + t * (large.high - small.high) };
}

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
export interface Candidate {
  c: PlateCircuit;
  s: number;
  efficiency: number;
  I_LR: number;
  /** R_1 (hot, ac) over its dc value at temperature `hot` [1]. */
  skin: number;
  /** Mean winding temperature at plate load [K]. */
  hot: number;
}

/** How many numbers between 0 and 1 make one candidate. */
export const DIMENSIONS = 11;

/**
 * The circuit that belongs to a point of the unit cube; null where the point contradicts the plate (power factor out of band, no loss
 * left for R_1, no leakage that gives both currents). Points even over the cube are circuits drawn from all that fit the plate.
 *
 * Before the plate, efficiency and power factor are each even over their band; given their product, which the plate tells, efficiency
 * is then even in its logarithm within the power-factor band. Speed and current are even over what rounds to the stamped numbers.
 */
export function candidatesOf(plate: Plate): (point: CubePoint) => Candidate | null {
  const { P, V, f, poles } = plate;
  const [dw, dI] = [speedStep(plate.w), currentStep(plate.I)];
  const band = efficiencyBand(P);
  const spread = Math.log(band.high / band.low);
  const locked = lockedBand(P);
  const letter = plate.code === null ? null : lockedPower(plate.code);
  const w_s = synchronousSpeed(f, poles);
  return (point) => {
    const at = (k: number) => point[k] ?? 0;
    const s = 1 - (plate.w + (at(0) - 0.5) * dw) / w_s;
    const I = plate.I + (at(1) - 0.5) * dI;
    const efficiency = band.low * Math.exp(spread * at(2));
    const powerFactor = P / (efficiency * Math.sqrt(3) * V * I);
    if (!(s > 0) || powerFactor < PRIOR.powerFactor.low || powerFactor > PRIOR.powerFactor.high) return null;
    const loss = P / efficiency - P;
    const I_LR = letter === null ? I * within(locked, at(7)) : lockedCurrent(within(letter, at(7)), P, V);
    const assumed: Assumed = {
      efficiency,
      P_fw: within(PRIOR.friction, at(3)) * loss,
      P_core: within(PRIOR.core, at(4)) * loss,
      P_stray: within(PRIOR.stray, at(5)) * P,
      split: plate.design === null ? within(PRIOR.split, at(6)) : SPLIT[plate.design],
      I_LR,
      saturation: within(PRIOR.saturation, at(8)),
    };
    const c = circuitOfPlate({ P, V, I, f, poles, s }, assumed);
    return c === null ? null : { c, s, efficiency, I_LR, skin: within(PRIOR.skin, at(10)), hot: within(PRIOR.hot, at(9)) };
  };
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

function within(range: Range, u: number): number {
  return range.low + u * (range.high - range.low);
}
