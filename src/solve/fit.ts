// Least squares: straight-line models by orthogonal reduction, curved ones by repeated straight-line steps.

export interface LinearFit {
  /** Coefficients, in the order of the columns. */
  readonly of: readonly number[];
  /** The constant term. */
  readonly constant: number;
  /** Sum of squared residuals [unit of y squared]. */
  readonly residual: number;
}

/** A column whose part not explained by the earlier columns is smaller than this share of it says nothing of its own. */
const DEPENDENT = 1e-13;

/**
 * Coefficients b and constant b_0 that make sum (y - b_0 - sum b_j x_j)^2 least.
 *
 * columns[j][i] is x_j at reading i. Columns and y are centred (which takes the constant out) and columns scaled to length 1 before
 * Householder reflections; null when there are fewer readings than unknowns or a column repeats the others.
 * Source: G. Golub, C. Van Loan, Matrix Computations, sec. 5.2 and 5.3.
 */
export function linearFit(columns: readonly (readonly number[])[], y: readonly number[]): LinearFit | null {
  if (y.length <= columns.length) return null;
  const centres = columns.map(centre);
  const y_m = centre(y);
  const centred = columns.map((column, j) => column.map((x) => x - at(centres, j)));
  const fitted = leastSquares(
    centred,
    y.map((value) => value - y_m),
  );
  if (fitted === null) return null;
  return {
    of: fitted.of,
    constant: y_m - fitted.of.reduce((sum, b, j) => sum + b * at(centres, j), 0),
    residual: fitted.residual,
  };
}

/**
 * Parameters p that make sum (y_i - f(p, i))^2 least, from a start near them.
 *
 * Gauss-Newton with halved steps while the sum would grow, Jacobian by central differences; null when no step helps any more far from
 * a minimum or the Jacobian loses rank. Source: J. Nocedal, S. Wright, Numerical Optimization, sec. 10.3.
 */
export function curveFit(f: (p: readonly number[], i: number) => number, y: readonly number[], start: readonly number[]): number[] | null {
  /** Central differences are best near the cube root of the rounding error. */
  const nudge = Math.cbrt(Number.EPSILON);
  const converged = 1e-10;
  const mostSteps = 100;
  const mostHalvings = 40;
  const misses = (p: readonly number[]) => y.map((value, i) => value - f(p, i));
  const square = (r: readonly number[]) => r.reduce((sum, x) => sum + x * x, 0);
  let p = [...start];
  let r = misses(p);
  for (let k = 0; k < mostSteps; k++) {
    const jacobian = p.map((value, j) => {
      const h = nudge * (Math.abs(value) || 1);
      const up = p.map((x, m) => (m === j ? x + h : x));
      const down = p.map((x, m) => (m === j ? x - h : x));
      return y.map((_, i) => (f(up, i) - f(down, i)) / (2 * h));
    });
    const step = leastSquares(jacobian, r);
    if (step === null) return null;
    const now = square(r);
    let share = 1;
    let next = p;
    let halvings = 0;
    for (; halvings < mostHalvings; halvings++, share /= 2) {
      next = p.map((value, j) => value + share * at(step.of, j));
      if (square(misses(next)) <= now) break;
    }
    const moved = Math.max(...step.of.map((d, j) => Math.abs(d) / (Math.abs(at(p, j)) || 1)));
    if (halvings === mostHalvings) return moved < Math.sqrt(converged) ? p : null;
    p = next;
    r = misses(p);
    if (share * moved < converged) return p;
  }
  return null;
}

/** Least squares without a constant: columns scaled to length 1, reduced to a triangle by reflections, solved backwards. */
function leastSquares(columns: readonly (readonly number[])[], y: readonly number[]): { of: number[]; residual: number } | null {
  const scales = columns.map((column) => Math.hypot(...column));
  if (scales.some((scale) => !(scale > 0)) || y.length < columns.length) return null;
  const q = columns.map((column, j) => column.map((x) => x / at(scales, j)));
  const rest = [...y];
  const diagonal: number[] = [];
  for (const [k, pivot] of q.entries()) {
    const length = Math.hypot(...pivot.slice(k));
    if (length < DEPENDENT) return null;
    const head = at(pivot, k) > 0 ? -length : length;
    diagonal.push(head);
    pivot[k] = at(pivot, k) - head;
    const norm = head * at(pivot, k);
    for (const target of [...q.slice(k + 1), rest]) {
      let dot = 0;
      for (let i = k; i < pivot.length; i++) dot += at(pivot, i) * at(target, i);
      for (let i = k; i < pivot.length; i++) target[i] = at(target, i) + (dot / norm) * at(pivot, i);
    }
  }
  const of = columns.map(() => 0);
  for (let k = columns.length - 1; k >= 0; k--) {
    let sum = at(rest, k);
    for (let j = k + 1; j < columns.length; j++) sum -= at(at(q, j), k) * at(of, j);
    of[k] = sum / at(diagonal, k);
  }
  return { of: of.map((b, j) => b / at(scales, j)), residual: rest.slice(columns.length).reduce((sum, x) => sum + x * x, 0) };
}

function centre(values: readonly number[]): number {
  const first = values.reduce((sum, x) => sum + x, 0) / values.length;
  // A second pass takes out what rounding left in the first.
  return first + values.reduce((sum, x) => sum + (x - first), 0) / values.length;
}

function at<T>(list: readonly T[], k: number): T {
  const value = list[k];
  if (value === undefined) throw new Error(`no entry ${k} in a list of ${list.length}`);
  return value;
}
