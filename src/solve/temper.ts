// From samples of what was believed to samples of what is believed after a measurement, by small steps.

/** A point of the unit cube; a plain array, for typed ones of this size cost many times as much to make and to clear away. */
export type CubePoint = readonly number[];

/** Points of the unit cube with the logarithm of the likelihood of each (-Infinity: impossible). */
export interface Population {
  points: readonly CubePoint[];
  logs: readonly number[];
}

/** Independent draws kept, as a share of the population, when likelihood is laid on one step further. */
const KEPT = 0.5;
/** Rounds of moves after each step, and after the last. */
const ROUNDS = 3;
const LAST_ROUNDS = 10;
/** One move in so many is a full leap between two points, which carries over from one hump to another. */
const LEAP_SHARE = 0.1;
/** Width of the small random part of a move, which keeps a population from lying in a plane. */
const JITTER = 1e-5;
const MOST_STEPS = 200;

/**
 * `count` equally weighted samples of the density likelihood * uniform on the unit cube.
 *
 * The likelihood is laid on as its power b, b rising from 0 to 1 by steps that keep half of the effective draws; after each the
 * population is resampled and every point moved by differences of two others (Metropolis; a point leaving through a wall comes in by the opposite one).
 * Source: Del Moral, Doucet, Jasra, Sequential Monte Carlo samplers (JRSS B 68, 2006); moves: ter Braak, differential evolution Markov
 * chain (Stat. Comput. 16, 2006). start must be even over the possible part of the cube.
 */
export function tempered(start: Population, logLikelihood: (point: CubePoint) => number, count: number, u: () => number): Population {
  let { points, logs } = start;
  for (let b = 0, k = 0; b < 1 && k < MOST_STEPS; k++) {
    const step = furthest(logs, 1 - b);
    const picked = resampled(weightsOf(logs, step), count, u);
    // A move replaces a point and never writes into one, so points may be shared.
    const next = { points: picked.map((j) => pointOf(points, j)), logs: picked.map((j) => logs[j] ?? -Infinity) };
    b = step >= 1 - b ? 1 : b + step;
    for (let round = b === 1 ? LAST_ROUNDS : ROUNDS; round > 0; round--) moveAll(next, logLikelihood, b, u);
    ({ points, logs } = next);
  }
  return { points, logs };
}

/** Weights exp(b log), the greatest of them 1; all 0 when nothing is possible. */
export function weightsOf(logs: readonly number[], b: number): Float64Array {
  const highest = logs.reduce((most, x) => Math.max(most, x), -Infinity);
  const weights = new Float64Array(logs.length);
  for (let j = 0; j < logs.length; j++) {
    const x = logs[j] ?? -Infinity;
    weights[j] = x === -Infinity ? 0 : Math.exp(b * (x - highest));
  }
  return weights;
}

/** Independent draws that weighted ones are worth, (sum w)^2/sum w^2. Source: L. Kish, Survey Sampling (1965). */
export function effectiveDraws(weights: Float64Array): number {
  let sum = 0;
  let squares = 0;
  for (const w of weights) {
    sum += w;
    squares += w * w;
  }
  return squares === 0 ? 0 : (sum * sum) / squares;
}

/**
 * `count` indices, each as often as its weight asks to within one, in random order so that any first few are a fair sample.
 *
 * Source: systematic resampling, one uniform for all (G. Kitagawa, J. Comput. Graph. Stat. 5, 1996).
 */
export function resampled(weights: Float64Array, count: number, u: () => number): number[] {
  const sum = weights.reduce((a, b) => a + b, 0);
  const offset = u();
  const picked: number[] = [];
  let below = 0;
  for (let j = 0; j < weights.length; j++) {
    below += (weights[j] ?? 0) / sum;
    while (picked.length < count && (picked.length + offset) / count < below) picked.push(j);
  }
  // Rounding can leave the last share of the sum uncovered.
  while (picked.length < count) picked.push(picked.at(-1) ?? 0);
  for (let j = count - 1; j > 0; j--) {
    const other = Math.floor(u() * (j + 1));
    const held = picked[j] ?? 0;
    picked[j] = picked[other] ?? 0;
    picked[other] = held;
  }
  return picked;
}

/** The longest step of the power, at most `left`, that keeps its share of the draws; halving finds it in the logarithm. */
function furthest(logs: readonly number[], left: number): number {
  const possible = logs.filter((x) => x > -Infinity).length;
  const keeps = (step: number) => effectiveDraws(weightsOf(logs, step)) >= KEPT * possible;
  if (keeps(left)) return left;
  let [low, high] = [-40, Math.log(left)];
  while (high - low > 0.01) {
    const middle = (low + high) / 2;
    if (keeps(Math.exp(middle))) low = middle;
    else high = middle;
  }
  return Math.exp(low);
}

/** One try for every point: itself plus a share of the difference of two others. */
function moveAll(
  all: { points: CubePoint[]; logs: number[] },
  logLikelihood: (point: CubePoint) => number,
  b: number,
  u: () => number,
): void {
  const n = all.points.length;
  for (let j = 0; j < n; j++) {
    const here = pointOf(all.points, j).slice();
    const one = pointOf(all.points, (j + 1 + Math.floor(u() * (n - 1))) % n);
    const two = pointOf(all.points, (j + 1 + Math.floor(u() * (n - 1))) % n);
    // 2.38/sqrt(2 d) is the best length for a Gaussian (ter Braak).
    const share = u() < LEAP_SHARE ? 1 : (2.38 / Math.sqrt(2 * here.length)) * (0.5 + u());
    for (let k = 0; k < here.length; k++)
      here[k] = wrapped((here[k] ?? 0) + share * ((one[k] ?? 0) - (two[k] ?? 0)) + JITTER * (u() - 0.5));
    const log = logLikelihood(here);
    if (Math.log(u()) < b * (log - (all.logs[j] ?? 0))) {
      all.points[j] = here;
      all.logs[j] = log;
    }
  }
}

/** Carried round into 0..1. (Reflecting at the walls instead would favour one direction: steps along a slanted ridge have no mirror image.) */
function wrapped(x: number): number {
  return x - Math.floor(x);
}

function pointOf(points: readonly CubePoint[], j: number): CubePoint {
  const point = points[j];
  if (point === undefined) throw new Error("a point that is not in the population");
  return point;
}
