// Lines in pixels: gaps at what is not a number, and dense lines thinned to what the screen can show.
import type { Point } from "./svg.ts";
import type { Scale } from "./scale.ts";

/** More samples a pixel than this are drawn as the lowest and highest of each pixel column. */
const samplesPerPixel = 4;

export interface Curve {
  /** Unbroken stretches, in pixels. */
  readonly runs: readonly (readonly Point[])[];
  readonly isThinned: boolean;
}

/** The pixels of a line; a dense one keeps the lowest and the highest sample of every pixel column, in their order. */
export function curveOf(x: readonly number[], y: readonly number[], xScale: Scale, yScale: Scale): Curve {
  const runs: Point[][] = [];
  let run: Point[] = [];
  x.forEach((value, i) => {
    const point = { x: xScale.toPixel(value), y: yScale.toPixel(y[i] ?? Number.NaN) };
    if (Number.isFinite(point.x) && Number.isFinite(point.y)) run.push(point);
    else if (run.length > 0) {
      runs.push(run);
      run = [];
    }
  });
  if (run.length > 0) runs.push(run);
  const thinned = runs.map((points) => (isDense(points) ? thin(points) : points));
  return { runs: thinned, isThinned: thinned.some((points, i) => points !== runs[i]) };
}

function isDense(points: readonly Point[]): boolean {
  const first = points[0];
  const last = points.at(-1);
  if (first === undefined || last === undefined) return false;
  // A path that turns back has no columns to thin by.
  const isForward = points.every((point, i) => point.x >= (points[i - 1]?.x ?? point.x));
  return isForward && points.length > samplesPerPixel * Math.max(1, last.x - first.x);
}

function thin(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  let start = 0;
  while (start < points.length) {
    const column = Math.floor(points[start]?.x ?? 0);
    let end = start;
    let low = start;
    let high = start;
    const y = (i: number) => points[i]?.y ?? 0;
    while (end < points.length && Math.floor(points[end]?.x ?? 0) === column) {
      if (y(end) < y(low)) low = end;
      if (y(end) > y(high)) high = end;
      end += 1;
    }
    for (const i of low === high ? [low] : [Math.min(low, high), Math.max(low, high)]) kept.push({ x: column + 0.5, y: y(i) });
    start = end;
  }
  return kept;
}
