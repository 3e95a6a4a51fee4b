// Two variants over the same imagined shops: sample k of both is one shop, so they are compared shop by shop.
import { type Column, isColumn } from "./band.ts";
import type { Evaluation } from "./evaluate.ts";
import { isMissing } from "./graph.ts";
import { type Judged, marginColumn } from "./verdict.ts";

/** Margin of a check over the imagined shops; null while a side of it is missing. */
function marginsOf(e: Evaluation, { cell }: Judged): Column | null {
  const side = (c: typeof cell.demand): Column | null => {
    const f = isMissing(c) ? undefined : e.filled.get(c);
    return f && isColumn(f) ? f : null;
  };
  const [demand, capacity] = [side(cell.demand), side(cell.capacity)];
  return demand && capacity ? marginColumn(demand, capacity) : null;
}

/** Differences below the noise of binary numbers are none. */
const hair = 1e-9;

/** In how many of 100 imagined shops the second margin is the larger; shops in which either has no value are left out. */
export function betterIn(a: Evaluation, was: Judged, b: Evaluation, now: Judged): number | null {
  const [x, y] = [marginsOf(a, was), marginsOf(b, now)];
  return x && y ? shareOfLarger(x.v, y.v) : null;
}

/** Columns of length 1 are the same in all shops; sample 0 is the nominal case and no draw. */
export function shareOfLarger(x: Float64Array, y: Float64Array): number | null {
  const at = (v: Float64Array, k: number): number => v[v.length === 1 ? 0 : k] ?? Number.NaN;
  const n = Math.max(x.length === 1 ? 2 : x.length, y.length === 1 ? 2 : y.length);
  let better = 0;
  let seen = 0;
  for (let k = 1; k < n; k += 1) {
    const [p, q] = [at(x, k), at(y, k)];
    if (Number.isNaN(p) || Number.isNaN(q)) continue;
    seen += 1;
    if (q > p && (p === 0 || !(Math.abs(q / p - 1) < hair))) better += 1;
  }
  return seen === 0 ? null : Math.round((100 * better) / seen);
}
