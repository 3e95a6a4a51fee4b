// The inverse of the normal distribution, for readings that scatter as measurements do.

const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** Where the continued fraction takes over from the series. */
const SPLIT = 3;
/** Steps of the fraction that reach full precision from there on. */
const STEPS = 60;

/** P(Z > z), with no digit lost far out: series near 0 (M. Abramowitz, I. Stegun, 26.2.11), continued fraction beyond (26.2.14). */
function tail(z: number): number {
  if (z < SPLIT) {
    let term = z;
    let sum = z;
    for (let n = 1; Math.abs(term) > 1e-17 * Math.abs(sum); n += 1) {
      term *= (z * z) / (2 * n + 1);
      sum += term;
    }
    return 0.5 - density(z) * sum;
  }
  let fraction = 0;
  for (let n = STEPS; n > 0; n -= 1) fraction = n / (z + fraction);
  return density(z) / (z + fraction);
}

/**
 * z with P(Z <= z) = p, for 0 < p < 1: a first guess (M. Abramowitz, I. Stegun, *Handbook of Mathematical Functions*, 26.2.23,
 * error below 4.5e-4) polished by two steps of Halley's rule, each of which cubes the error.
 */
export function normalQuantile(p: number): number {
  const q = p < 0.5 ? p : 1 - p;
  const t = Math.sqrt(-2 * Math.log(q));
  let z = t - (2.515517 + 0.802853 * t + 0.010328 * t * t) / (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t ** 3);
  for (let i = 0; i < 2; i += 1) {
    const step = (tail(z) - q) / density(z);
    z += step / (1 - (z * step) / 2);
  }
  return p < 0.5 ? -z : z;
}
