// Finding room for words: candidates are weighed, the cheapest that touches no other words and stays inside wins.
import type { Point } from "./svg.ts";
import { isWithin, overlap } from "./words.ts";
import type { Box } from "./words.ts";

/** Lines are remembered on squares of this side [px]: fine enough for words 12 px high. */
const cell = 3;
/** Words keep this far from other words [px]. */
const air = 3;

export interface Candidate<T> {
  readonly box: Box;
  /** What its place costs by itself: distance from what it names, custom. */
  readonly cost: number;
  readonly what: T;
}

export interface Room {
  /** A line other words should not cover. */
  readonly draw: (points: readonly Point[]) => void;
  /** Something words must not touch: a shape, other words. */
  readonly take: (box: Box) => void;
  /** The cheapest candidate with room, which is then taken; null when every one would touch words or leave the area. */
  readonly place: <T>(candidates: readonly Candidate<T>[]) => T | null;
}

/** Room for words inside an area of a drawing. */
export function newRoom(area: Box): Room {
  const columns = Math.ceil(area.width / cell) + 1;
  const rows = Math.ceil(area.height / cell) + 1;
  const inked = new Uint8Array(columns * rows);
  const taken: Box[] = [];

  const mark = (x: number, y: number) => {
    const column = Math.floor((x - area.x) / cell);
    const row = Math.floor((y - area.y) / cell);
    if (column >= 0 && row >= 0 && column < columns && row < rows) inked[row * columns + column] = 1;
  };

  return {
    draw(points) {
      points.forEach((to, i) => {
        const from = points[i - 1] ?? to;
        // Far outside the area nothing can be covered; a steep line may run a million pixels away.
        const count = Math.min(2000, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / (cell / 2)));
        for (let k = 0; k <= count; k += 1) {
          const part = count === 0 ? 0 : k / count;
          mark(from.x + (to.x - from.x) * part, from.y + (to.y - from.y) * part);
        }
      });
    },
    take(box) {
      taken.push(box);
    },
    place<T>(candidates: readonly Candidate<T>[]) {
      let best: Candidate<T> | null = null;
      let least = Infinity;
      for (const candidate of candidates) {
        if (candidate.cost >= least || !isWithin(candidate.box, area)) continue;
        if (taken.some((box) => overlap(box, candidate.box, air))) continue;
        const cost = candidate.cost + costOfCover * covered(candidate.box);
        if (cost < least) [best, least] = [candidate, cost];
      }
      if (best === null) return null;
      taken.push(best.box);
      return best.what;
    },
  };

  /** Squares with a line in them under the box. */
  function covered(box: Box): number {
    const first = Math.max(0, Math.floor((box.x - area.x) / cell));
    const last = Math.min(columns - 1, Math.floor((box.x + box.width - area.x) / cell));
    const top = Math.max(0, Math.floor((box.y - area.y) / cell));
    const bottom = Math.min(rows - 1, Math.floor((box.y + box.height - area.y) / cell));
    let count = 0;
    for (let row = top; row <= bottom; row += 1)
      for (let column = first; column <= last; column += 1) count += inked[row * columns + column] ?? 0;
    return count;
  }
}

/** Covering 3 px of a line is as bad as standing this far [px] from where the words belong. */
const costOfCover = 6;
