// The inverse of the normal distribution, for readings that scatter as measurements do.

/** Cumulative normal distribution by the complementary error function of W. J. Cody's form: series near 0, continued fraction far out. */
function cumulative(z: number): number {
  const x = Math.abs(z);
  if (x > 38) return z > 0 ? 1 : 0;
  const density = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
  if (x < 3) {
    let term = x;
    let sum = x;
    for (let n = 1; Math.abs(term) > 1e-17 * Math.abs(sum) && n < 200; n += 1) {
      term *= (x * x) / (2 * n + 1);
      sum += term;
    }
    const inner = density * sum;
    return z > 0 ? 0.5 + inner : 0.5 - inner;
  }
  let tail = 0;
  for (let n = 60; n > 0; n -= 1) tail = n / (x + tail);
  const outer = density / (x + tail);
  return z > 0 ? 1 - outer : outer;
}

/**
 * z with P(Z <= z) = p, for 0 < p < 1: a first guess (M. Abramowitz, I. Stegun, *Handbook of Mathematical Functions*, 26.2.23,
 * error below 4.5e-4) polished by two Newton steps to full precision.
 */
export function normalQuantile(p: number): number {
  const q = p < 0.5 ? p : 1 - p;
  const t = Math.sqrt(-2 * Math.log(q));
  let z = t - (2.515517 + 0.802853 * t + 0.010328 * t * t) / (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t ** 3);
  for (let i = 0; i < 2; i += 1) {
    const error = 1 - cumulative(z) - q;
    z += (error * Math.sqrt(2 * Math.PI)) / Math.exp((-z * z) / 2);
  }
  return p < 0.5 ? -z : z;
}
