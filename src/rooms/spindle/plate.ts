// Reading a motor plate: poles, slip, torque, and whether its numbers can belong together.
import { synchronousSpeed } from "./circuit.ts";
import type { Refusal } from "./refusal.ts";

/** One horsepower [W], 550 ft*lbf/s as motor plates mean it (NIST SP 811 B.8). */
const HORSEPOWER = 745.69987;

/**
 * What is stamped: shaft power P [W], voltage-current pairs in one order V [V], I [A], f [Hz], speed w [rad/s].
 */
export interface Stamped {
  P: number;
  V: readonly number[];
  I: readonly number[];
  f: number;
  w: number;
}

export interface PlateReading {
  poles: number;
  /** Speed of the field [rad/s]. */
  w_s: number;
  /** Slip at plate load [1]. */
  s: number;
  /** Torque at plate load [N*m]. */
  T_n: number;
  /** Efficiency times power factor of each pair [1]. */
  x: readonly number[];
  /** What looks odd without being impossible. */
  notes: readonly { code: string; says: string }[];
}

/** No motor of a machine tool has efficiency times power factor above this; below the other the plate is doubtful. */
const MOST_X = 0.93;
const LEAST_X = 0.45;
/** Slips above which the count of poles is a guess, and above which the plate is odd. */
const MOST_SLIP = 0.2;
const ODD_SLIP = 0.1;
/** Ratios of rated voltage between two ways of linking one winding. */
const LINK_RATIOS = [2, Math.sqrt(3), 2 * Math.sqrt(3)];

/**
 * Poles, slip, torque and consistency of a plate.
 *
 * p [1] = 2 floor(2 pi f/w) (120 f/n rounded down to even); s = 1 - w/w_s; T_n [N*m] = P/w; x [1] = P/(sqrt3 V I) = efficiency times
 * power factor, between 0.45 and 0.93. Source: definitions; bounds are engineering judgement. Valid for three-phase induction motors.
 */
export function readPlate(plate: Stamped): PlateReading | Refusal {
  const { P, V, I, f, w } = plate;
  if (![P, f, w, ...V, ...I].every((x) => x > 0 && Number.isFinite(x)) || V.length === 0) {
    return { code: "plate-incomplete", refused: "power, voltage, current, frequency and speed of the plate are wanted, all above zero" };
  }
  if (V.length !== I.length) {
    return {
      code: "plate-pairs",
      refused: `${V.length} voltages against ${I.length} currents: each voltage has its own current, in one order`,
    };
  }
  const pairs = Math.floor((2 * Math.PI * f) / w);
  const poles = 2 * pairs;
  const w_s = synchronousSpeed(f, poles);
  const s = 1 - w / w_s;
  const rpm = `${number((w * 30) / Math.PI)} rpm`;
  if (pairs === 0) return { code: "plate-speed", refused: `${rpm} is above the field of a 2-pole motor at ${number(f)} Hz` };
  if (s < 1e-9) {
    return {
      code: "plate-slip",
      refused: `${rpm} is the field's own speed at ${number(f)} Hz: an induction motor runs below it; is it the speed without load?`,
    };
  }
  if (s > MOST_SLIP)
    return {
      code: "plate-slip",
      refused: `${rpm} would be ${number(100 * s)} % slip with ${poles} poles: speed and frequency do not belong together`,
    };
  const x = V.map((volts, j) => P / (Math.sqrt(3) * volts * (I[j] ?? 0)));
  const high = x.findIndex((share) => share > MOST_X);
  if (high >= 0) return contradiction(P, V[high] ?? 0, I[high] ?? 0, x[high] ?? 0);
  const notes = [];
  for (const [j, share] of x.entries()) {
    if (share < LEAST_X) {
      const says = `${pair(V[j] ?? 0, I[j] ?? 0)} gives efficiency times power factor ${number(share)}: low for an induction motor; input power taken for output, or a service-factor current?`;
      notes.push({ code: "plate-low-x", says });
    }
  }
  if (s > ODD_SLIP)
    notes.push({ code: "plate-high-slip", says: `${number(100 * s)} % slip: a high-slip design, or another frequency's speed` });
  return { poles, w_s, s, T_n: P / w, x, notes };
}

function contradiction(P: number, V: number, I: number, x: number): Refusal {
  const belongs = LINK_RATIOS.map((k) => k * V).find(
    (volts) => P / (Math.sqrt(3) * volts * I) < MOST_X && P / (Math.sqrt(3) * volts * I) > LEAST_X,
  );
  const hint = belongs === undefined ? "" : `; ${number(I)} A fits ${number(belongs)} V`;
  return {
    code: "plate-contradiction",
    refused: `${number(P / 1000)} kW from ${pair(V, I)} would need efficiency times power factor ${number(x)}${hint}`,
  };
}

/** Locked-rotor code letters and the kVA per horsepower where each begins. NEMA MG 1, 10.37.2 (seen in several secondary tables). */
const LETTERS = [
  ["A", 0],
  ["B", 3.15],
  ["C", 3.55],
  ["D", 4],
  ["E", 4.5],
  ["F", 5],
  ["G", 5.6],
  ["H", 6.3],
  ["J", 7.1],
  ["K", 8],
  ["L", 9],
  ["M", 10],
  ["N", 11.2],
  ["P", 12.5],
  ["R", 14],
  ["S", 16],
  ["T", 18],
  ["U", 20],
  ["V", 22.4],
] as const;
/** V is open upwards; one more step of the same series closes it. */
const ABOVE_V = 25;

export type CodeLetter = (typeof LETTERS)[number][0];

/** The letters, in order. */
export const CODE_LETTERS: readonly CodeLetter[] = LETTERS.map(([letter]) => letter);

export function isCodeLetter(text: string): text is CodeLetter {
  return LETTERS.some(([letter]) => letter === text);
}

/**
 * Locked-rotor apparent power of a code letter, as a range [VA per W of shaft power].
 *
 * The lower bound belongs to the letter, the upper one to the next. V ends at 25 kVA/hp here (it is open in the standard).
 * Source: NEMA MG 1, 10.37.2.
 */
export function lockedPower(letter: CodeLetter): { low: number; high: number } {
  const k = CODE_LETTERS.indexOf(letter);
  const low = LETTERS[k]?.[1] ?? 0;
  const high = LETTERS[k + 1]?.[1] ?? ABOVE_V;
  return { low: (1000 * low) / HORSEPOWER, high: (1000 * high) / HORSEPOWER };
}

/** Letter of a locked-rotor apparent power [VA per W]. Source: as lockedPower. */
export function codeLetter(share: number): CodeLetter {
  return LETTERS.findLast(([, from]) => share * HORSEPOWER >= 1000 * from)?.[0] ?? "A";
}

/** Line current with the rotor locked, I_LR [A] = share P/(sqrt3 V), share [VA/W] of lockedPower. Source: definition. */
export function lockedCurrent(share: number, P: number, V: number): number {
  return (share * P) / (Math.sqrt(3) * V);
}

function pair(V: number, I: number): string {
  return `${number(V)} V and ${number(I)} A`;
}

function number(x: number): string {
  return String(Number(x.toPrecision(x >= 1000 ? 4 : 3)));
}
