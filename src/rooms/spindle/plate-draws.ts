// All circuits that fit a plate and its readings, as columns of joint samples.
import { type Circuit, folded, slipAtCurrent } from "./circuit.ts";
import type { Losses } from "./losses.ts";
import { lineResistance, noLoadReading, standstillReading, standstillImpedance } from "./motor-tests.ts";
import { type Candidate, candidate, type Plate } from "./plate-prior.ts";
import type { Refusal } from "./refusal.ts";
import { fluxGuard, fluxShare } from "./voltage-laws.ts";
import { uniforms } from "../../solve/random.ts";

/** A reading and its standard uncertainty (half of a stated +/- with k = 2), same unit. */
export interface Measured {
  value: number;
  u: number;
}

/** What was measured; k [1] is the rated voltage of the links at the time over the voltage of the plate pair used. */
export interface Readings {
  /** Dc resistance between two lines [ohm] at winding temperature T [K]. */
  resistance?: { R: Measured; T: number; k: number };
  /** Uncoupled, line volts V [V] and f [Hz] as read, current [A] and power [W]. */
  noLoad?: { V: number; f: number; I: Measured; P: Measured | null; k: number };
  /** Single phase on two lines, rotor at rest. */
  standstill?: { V: number; f: number; I: Measured; P: Measured; k: number };
  /** Slip [1] by tachometer while line current I [A] flows at V [V], f [Hz]. */
  loaded?: { V: number; f: number; I: number; s: Measured; k: number };
}

/** What a sample says: the circuit at the plate pair's voltage [ohm, S], losses [W], the plate load, and what meters would read. */
export const COLUMNS = [
  "R_1",
  "X_1",
  "R_2",
  "X_2",
  "X_m",
  "G_c",
  "P_core",
  "P_fw",
  "w_fw",
  "P_stray",
  "I_2n",
  "E",
  "s",
  "efficiency",
  "powerFactor",
  "I_LR",
  "R_ll",
  "I_0",
  "X_k",
] as const;
export type ColumnName = (typeof COLUMNS)[number];
export type Columns = Readonly<Record<ColumnName, Float64Array>>;

export interface CircuitDraws {
  readonly columns: Columns;
  /** Candidates tried and how many independent draws their weights are worth. */
  readonly candidates: number;
  readonly effective: number;
}

/** First set of candidates, largest set, and effective draws below which the readings are called contradictory. */
const FIRST = 4_000;
const MOST = 100_000;
const LEAST_EFFECTIVE = 50;
/** Draws that contradict the plate are thrown away; beyond this many for each wanted the plate itself is in doubt. */
const MOST_TRIES = 20;
/** Temperature at which the column R_ll is stated [K]: 20 degC, IEC 60028. */
const METER_TEMPERATURE = 293.15;
/** Flux without load, as a share of rated, at which the magnetising reactance is still the rated one. */
const LEAST_FLUX = 0.85;

/**
 * `count` joint samples of the circuit, its losses and what meters would read.
 *
 * Candidates are drawn from the bands of plate-prior.ts, weighed by the Gaussian likelihood of each reading and resampled; sample 0 is
 * the candidate nearest the weighted mean of logarithms of R_1, X_1 + X_2, R_2, X_m. 4,000 candidates to begin with, doubled up to
 * 100,000 while they are worth fewer independent draws than half of `count`; below 50 the readings contradict the plate. The same seed
 * gives the same candidates whatever was read. Source: importance resampling (Rubin 1988); JCGM 101:2008 for propagation.
 * The breakdown torque of these samples runs high against test sheets (2.3 to 3.2 times rated, unchecked): checks should take at most
 * 2.25 times rated until a standstill test says otherwise.
 */
export function drawCircuits(plate: Plate, readings: Readings, draw: { seed: string; count: number }): CircuitDraws | Refusal {
  const unfit = unfitReading(plate, readings);
  if (unfit !== null) return unfit;
  const stream = candidates(plate, draw.seed);
  const kept: Candidate[] = [];
  const logs: number[] = [];
  for (let wanted = FIRST; ; wanted = Math.min(2 * wanted, MOST)) {
    for (let tries = MOST_TRIES * (wanted - kept.length); kept.length < wanted && tries > 0; tries--) {
      const next = stream();
      if (next === null) continue;
      kept.push(next);
      logs.push(logLikelihood(next, readings));
    }
    if (kept.length < LEAST_EFFECTIVE) {
      return { code: "no-circuit", refused: "no circuit fits this plate: read it again, power and current belong to which voltage?" };
    }
    const highest = logs.reduce((most, x) => Math.max(most, x), -Infinity);
    const weights = Float64Array.from(logs, (x) => (highest === -Infinity ? 0 : Math.exp(x - highest)));
    const effective = effectiveDraws(weights);
    if (effective < draw.count / 2 && wanted < MOST && kept.length === wanted) continue;
    if (effective < LEAST_EFFECTIVE) {
      return {
        code: "readings-contradict-plate",
        refused: `of ${kept.length} circuits that fit the plate the readings leave ${Math.floor(effective)}: a reading, the links it was taken with, or the plate is wrong`,
      };
    }
    const picked = [nearestMean(kept, weights), ...resampled(weights, draw.count - 1, uniforms(`${draw.seed}/resample`))];
    return { columns: columnsOf(kept, picked, plate.V), candidates: kept.length, effective };
  }
}

/** Candidates one after another, null where a draw contradicts the plate. */
export function candidates(plate: Plate, seed: string): () => Candidate | null {
  const u = uniforms(seed);
  return () => candidate(plate, u);
}

/** Sample k as a circuit with its losses. */
export function circuitOf(columns: Columns, k: number, f: number, poles: number): Circuit & Losses {
  const at = (name: ColumnName) => columns[name][k] ?? NaN;
  return {
    R_1: at("R_1"),
    X_1: at("X_1"),
    R_2: at("R_2"),
    X_2: at("X_2"),
    X_m: at("X_m"),
    G_c: at("G_c"),
    f,
    poles,
    P_fw: at("P_fw"),
    w_fw: at("w_fw"),
    P_stray: at("P_stray"),
    I_2n: at("I_2n"),
  };
}

/** A reading that cannot be weighed at all. */
function unfitReading(plate: Plate, readings: Readings): Refusal | null {
  const { noLoad, standstill } = readings;
  if (noLoad !== undefined) {
    const flux = fluxShare(noLoad.V, noLoad.f, noLoad.k * plate.V, plate.f);
    if (fluxGuard(flux) !== null || flux < LEAST_FLUX) {
      const percent = Math.round(100 * flux);
      return {
        code: "no-load-flux",
        refused: `run without load at ${percent} % of rated volts per hertz: 85 to 110 % is wanted, or the iron is another`,
      };
    }
  }
  if (standstill !== undefined) {
    const { R, X } = standstillImpedance({ V: standstill.V, f: standstill.f, I: standstill.I.value, P: standstill.P.value });
    if (!(X > 0) || !(R > 0)) {
      return { code: "standstill-power", refused: "standstill test: more watts than volts times amperes, or none" };
    }
    if (standstill.I.value * standstill.k > plate.I) {
      return {
        code: "standstill-current",
        refused: "standstill test above plate current: leakage is then saturated and not the running one",
      };
    }
  }
  return null;
}

/** Logarithm of the likelihood of all readings, up to a constant. Readings are carried to the plate pair's links: volts/k, amperes k, ohms/k^2. */
function logLikelihood(x: Candidate, readings: Readings): number {
  const { resistance, noLoad, standstill, loaded } = readings;
  let sum = 0;
  if (resistance !== undefined) {
    sum += gaussian(resistance.R, lineResistance(x.R_1, resistance.T, x.hot, x.skin) * resistance.k ** 2);
  }
  if (noLoad !== undefined) {
    const read = noLoadReading(x, noLoad.V / noLoad.k, noLoad.f, x.P_fw, x.w_fw);
    if (read === null) return -Infinity;
    sum += gaussian(noLoad.I, read.I / noLoad.k);
    if (noLoad.P !== null) sum += gaussian(noLoad.P, read.P);
  }
  if (standstill !== undefined) {
    sum += gaussian(standstillReactance(standstill), standstillReading(x, standstill.V / standstill.k, standstill.f).X * standstill.k ** 2);
  }
  if (loaded !== undefined) {
    const s = slipAtCurrent(folded(x, loaded.f), loaded.V / loaded.k, loaded.I * loaded.k);
    if (s === null) return -Infinity;
    sum += gaussian(loaded.s, s);
  }
  return sum;
}

/** The reactance of a standstill test with its uncertainty; its resistance is not used, for bars show more of it at rest than when running. */
function standstillReactance(x: { V: number; f: number; I: Measured; P: Measured }): Measured {
  const I = x.I.value;
  const { R, X } = standstillImpedance({ V: x.V, f: x.f, I, P: x.P.value });
  const Z_2 = R * R + X * X;
  const byCurrent = (2 * R * R - Z_2) / (I * X);
  const byPower = R / (2 * I * I * X);
  return { value: X, u: Math.hypot(byCurrent * x.I.u, byPower * x.P.u) };
}

function gaussian(read: Measured, expected: number): number {
  return -0.5 * ((read.value - expected) / read.u) ** 2;
}

/** Kish's effective size, (sum w)^2/sum w^2. */
function effectiveDraws(weights: Float64Array): number {
  let sum = 0;
  let squares = 0;
  for (const w of weights) {
    sum += w;
    squares += w * w;
  }
  return squares === 0 ? 0 : (sum * sum) / squares;
}

/** Indices by systematic resampling (one uniform for all, Kitagawa 1996), in random order so that any first few are a fair sample. */
function resampled(weights: Float64Array, count: number, u: () => number): number[] {
  const sum = weights.reduce((a, b) => a + b, 0);
  const offset = u();
  const picked: number[] = [];
  let below = 0;
  for (let j = 0; j < weights.length && picked.length < count; j++) {
    below += (weights[j] ?? 0) / sum;
    while (picked.length < count && (picked.length + offset) / count < below) picked.push(j);
  }
  // Rounding can leave the last share of the sum uncovered.
  while (picked.length < count) picked.push(picked.at(-1) ?? 0);
  for (let j = count - 1; j > 0; j--) {
    const other = Math.floor(u() * (j + 1));
    [picked[j], picked[other]] = [picked[other] ?? 0, picked[j] ?? 0];
  }
  return picked;
}

/** The candidate of more than mean weight nearest the weighted mean of logarithms, each in units of its own spread. */
function nearestMean(kept: readonly Candidate[], weights: Float64Array): number {
  const keys = [(x: Candidate) => x.R_1, (x: Candidate) => x.X_1 + x.X_2, (x: Candidate) => x.R_2, (x: Candidate) => x.X_m];
  const sum = weights.reduce((a, b) => a + b, 0);
  const distance = new Float64Array(kept.length);
  for (const key of keys) {
    const logs = kept.map((x) => Math.log(key(x)));
    const mean = logs.reduce((total, x, j) => total + x * (weights[j] ?? 0), 0) / sum;
    const spread = logs.reduce((total, x, j) => total + (x - mean) ** 2 * (weights[j] ?? 0), 0) / sum;
    for (const [j, x] of logs.entries()) distance[j] = (distance[j] ?? 0) + (spread > 0 ? (x - mean) ** 2 / spread : 0);
  }
  let best = -1;
  for (const [j, d] of distance.entries()) {
    if ((weights[j] ?? 0) * kept.length >= sum && (best < 0 || d < (distance[best] ?? Infinity))) best = j;
  }
  return best;
}

function columnsOf(kept: readonly Candidate[], picked: readonly number[], V: number): Columns {
  const rows = picked.map((j) => row(kept[j], V));
  return Object.fromEntries(COLUMNS.map((name) => [name, Float64Array.from(rows, (x) => x[name])])) as Record<ColumnName, Float64Array>; // the keys are COLUMNS
}

function row(x: Candidate | undefined, V: number): Record<ColumnName, number> {
  if (x === undefined) throw new Error("resampling picked a candidate that does not exist");
  return {
    ...x,
    R_ll: lineResistance(x.R_1, METER_TEMPERATURE, x.hot, x.skin),
    I_0: noLoadReading(x, V, x.f, x.P_fw, x.w_fw)?.I ?? NaN,
    X_k: standstillReading(x, V, x.f).X,
  };
}
