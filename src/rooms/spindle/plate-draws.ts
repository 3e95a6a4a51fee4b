// All circuits that fit a plate and its readings, as columns of joint samples.
import type { Circuit } from "./circuit.ts";
import type { Losses } from "./losses.ts";
import { lineResistance, noLoadReading, standstillReading } from "./motor-tests.ts";
import { type Candidate, candidatesOf, DIMENSIONS, type Plate } from "./plate-prior.ts";
import { misses, READING_NAMES, type Readings, unfitReading } from "./plate-readings.ts";
import type { Refusal } from "./refusal.ts";
import { uniforms } from "../../solve/random.ts";
import { type CubePoint, effectiveDraws, resampled, tempered, weightsOf } from "../../solve/temper.ts";

/** What a sample says: the circuit at the plate pair's voltage [ohm, S], losses [W], the plate load, and what meters would read. */
const OF_CIRCUIT = ["R_1", "X_1", "R_2", "X_2", "X_m", "G_c", "P_core", "P_fw", "w_fw", "P_stray", "I_2n", "E", "powerFactor"] as const;
const OF_SAMPLE = ["s", "efficiency", "I_LR", "R_ll", "I_0", "X_k"] as const;
export const COLUMNS = [...OF_CIRCUIT, ...OF_SAMPLE] as const;
type ColumnName = (typeof COLUMNS)[number];
export type Columns = Readonly<Record<ColumnName, Float64Array>>;

export interface CircuitDraws {
  readonly columns: Columns;
  /** Independent draws that the samples are worth. */
  readonly effective: number;
}

/** Candidates drawn from the plate alone. */
const CANDIDATES = 4_000;
/** Candidates that contradict the plate are thrown away; after so many tries for each wanted the plate is taken as it is. */
const TRIES = 20;
/** Fewer circuits than this are no band. */
const LEAST = 50;
/** Squared misses of the best circuit, by count of readings, that chance passes once in a thousand: the 0.999 quantile of chi-square. */
const CHANCE = [0, 10.83, 13.82, 16.27, 18.47, 20.52];
/** Temperature at which the column R_ll is stated [K]: 20 degC, IEC 60028. */
const METER_TEMPERATURE = 293.15;

/**
 * `count` joint samples of the circuit, its losses and what meters would read.
 *
 * 4,000 candidates are drawn from the bands of plate-prior.ts (the same for a seed, whatever was read) and weighed by the Gaussian
 * likelihood of the readings. While these weights are worth half of `count` independent draws the candidates are resampled as they
 * are; sharper readings are laid on by steps (temper.ts). Sample 0 is the one nearest the mean of the logarithms of R_1, X_1 + X_2, R_2, X_m.
 * Refuses when no circuit fits the plate, and when even the best misses the readings by more than chance allows.
 * Source: importance resampling (D. Rubin 1988); JCGM 101:2008 for the use of the columns.
 * The breakdown torque of these samples runs high against test sheets (2.3 to 3.2 times rated, unchecked): checks should take at most
 * 2.25 times rated until a standstill test says otherwise.
 */
export function drawCircuits(plate: Plate, readings: Readings, draw: { seed: string; count: number }): CircuitDraws | Refusal {
  const unfit = unfitReading(plate, readings);
  if (unfit !== null) return unfit;
  const missesOf = misses(readings);
  const logLikelihood = (x: Candidate | null) =>
    x === null ? -Infinity : missesOf(x).reduce((sum, { miss }) => sum - (miss * miss) / 2, 0);
  const { points, candidates } = candidatesFitting(plate, draw.seed);
  if (points.length < LEAST) {
    return { code: "no-circuit", refused: "no circuit fits this plate: read it again; power and current belong to which voltage?" };
  }
  const logs = candidates.map(logLikelihood);
  const weights = weightsOf(logs, 1);
  const u = uniforms(`${draw.seed}/resample`);
  const effective = effectiveDraws(weights);
  const sharp = effective < draw.count / 2;
  const candidate = candidatesOf(plate);
  const samples = sharp
    ? tempered({ points, logs }, (point) => logLikelihood(candidate(point)), draw.count, u).points.flatMap(
        (point) => candidate(point) ?? [],
      )
    : resampled(weights, draw.count, u).flatMap((j) => candidates[j] ?? []);
  const refusal = contradiction(samples, missesOf);
  if (refusal !== null) return refusal;
  const distinct = sharp ? new Set(samples.map((x) => x.c.R_1)).size : effective;
  return { columns: columnsOf(nearestFirst(samples), plate.V), effective: distinct };
}

/** The first 4,000 candidates that fit the plate, with their points of the unit cube. */
export function candidatesFitting(plate: Plate, seed: string): { points: CubePoint[]; candidates: Candidate[] } {
  const u = uniforms(seed);
  const candidate = candidatesOf(plate);
  const points: CubePoint[] = [];
  const candidates: Candidate[] = [];
  for (let tries = TRIES * CANDIDATES; points.length < CANDIDATES && tries > 0; tries--) {
    const point = Array.from({ length: DIMENSIONS }, u);
    const found = candidate(point);
    if (found === null) continue;
    points.push(point);
    candidates.push(found);
  }
  return { points, candidates };
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

/** Readings that no circuit of the plate comes near, by name of the one missed furthest. */
function contradiction(samples: readonly Candidate[], missesOf: ReturnType<typeof misses>): Refusal | null {
  const missed = samples.map(missesOf);
  const squares = missed.map((all) => all.reduce((sum, { miss }) => sum + miss * miss, 0));
  const least = squares.reduce((a, b) => Math.min(a, b), Infinity);
  const best = missed[squares.indexOf(least)];
  if (best !== undefined && least <= (CHANCE[best.length] ?? 0)) return null;
  const worst = best?.toSorted((a, b) => Math.abs(b.miss) - Math.abs(a.miss))[0];
  const what = worst === undefined ? "a reading" : READING_NAMES[worst.name];
  return {
    code: "readings-contradict-plate",
    refused: `no circuit that fits the plate shows these readings; furthest off is ${what}: the reading, the links it was taken with, or the plate is wrong`,
  };
}

/** The samples with the one nearest the mean of logarithms in front, each quantity in units of its own spread. */
function nearestFirst(samples: readonly Candidate[]): Candidate[] {
  const keys = [(x: Candidate) => x.c.R_1, (x: Candidate) => x.c.X_1 + x.c.X_2, (x: Candidate) => x.c.R_2, (x: Candidate) => x.c.X_m];
  const distance = new Float64Array(samples.length);
  for (const key of keys) {
    const logs = samples.map((x) => Math.log(key(x)));
    const mean = logs.reduce((sum, x) => sum + x, 0) / logs.length;
    const spread = logs.reduce((sum, x) => sum + (x - mean) ** 2, 0) / logs.length;
    for (const [j, x] of logs.entries()) distance[j] = (distance[j] ?? 0) + (spread > 0 ? (x - mean) ** 2 / spread : 0);
  }
  const best = distance.indexOf(distance.reduce((a, b) => Math.min(a, b), Infinity));
  return samples.toSpliced(best, 1).toSpliced(0, 0, ...samples.slice(best, best + 1));
}

function columnsOf(samples: readonly Candidate[], V: number): Columns {
  const columns = Object.fromEntries(COLUMNS.map((name) => [name, new Float64Array(samples.length)])) as Record<ColumnName, Float64Array>; // the keys are COLUMNS
  for (const [k, { c, s, efficiency, I_LR, hot, skin }] of samples.entries()) {
    const known = {
      s,
      efficiency,
      I_LR,
      R_ll: lineResistance(c.R_1, METER_TEMPERATURE, hot, skin),
      I_0: noLoadReading(c, V, c.f, c.P_fw, c.w_fw)?.I ?? NaN,
      X_k: standstillReading(c, V, c.f).X,
    };
    for (const name of OF_CIRCUIT) columns[name][k] = c[name];
    for (const name of OF_SAMPLE) columns[name][k] = known[name];
  }
  return columns;
}
