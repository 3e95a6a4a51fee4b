// The root of one equation in one unknown, between two points that enclose it.

/** Step at which a bracket is called as narrow as doubles allow: two units in the last place of the root. */
const EPSILON = 2 * Number.EPSILON;
/** Bisection alone closes any bracket of doubles in about 1,100 halvings; Brent's bound on the method is far below this. */
const MOST_STEPS = 2000;

/**
 * Root of f between lo and hi, found by inverse quadratic steps with bisection as the fallback.
 *
 * Returns null when f has one sign at both ends or is not a number where the search goes. tolerance [unit of x] is the half width of
 * the last bracket, beside rounding.
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973), ch. 4. Valid for any continuous f.
 */
export function root(f: (x: number) => number, lo: number, hi: number, tolerance = 0): number | null {
  let a = lo;
  let b = hi;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0)) return null;
  let c = a;
  let fc = fa;
  let step = b - a;
  let before = step;
  for (let k = 0; k < MOST_STEPS; k++) {
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b;
      b = c;
      c = a;
      fa = fb;
      fb = fc;
      fc = fa;
    }
    const smallest = EPSILON * Math.abs(b) + tolerance / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= smallest || fb === 0) return b;
    const tried = Math.abs(before) >= smallest && Math.abs(fa) > Math.abs(fb) ? interpolated(a, b, c, fa, fb, fc) : null;
    // A step is believed when it stays well inside the bracket and shrinks at least as fast as halving every second time.
    const believed = tried !== null && tried * half > 0 && Math.abs(tried) < Math.min(1.5 * Math.abs(half), Math.abs(before) / 2);
    before = believed ? step : half;
    step = believed ? tried : half;
    a = b;
    fa = fb;
    b += Math.abs(step) > smallest ? step : Math.sign(half) * smallest;
    fb = f(b);
    if (Number.isNaN(fb)) return null;
    if (fb * fc > 0) {
      c = a;
      fc = fa;
      step = b - a;
      before = step;
    }
  }
  return b;
}

/** The step from b to where the parabola in f through the three points (or the secant through two) crosses zero. */
function interpolated(a: number, b: number, c: number, fa: number, fb: number, fc: number): number | null {
  const s = fb / fa;
  const step =
    a === c
      ? ((b - c) * s) / (1 - s)
      : (s * ((c - b) * (fa / fc) * (fa / fc - fb / fc) - (b - a) * (fb / fc - 1))) / -((fa / fc - 1) * (fb / fc - 1) * (s - 1));
  return Number.isFinite(step) ? step : null;
}
