// Words in a line that would touch are put on further rows.
import { overlap } from "./words.ts";
import type { Box } from "./words.ts";

/** The row of each box so that no two of a row touch; a box that leaves the width [px] is moved inside. */
export function stagger<T>(items: readonly T[], boxOf: (item: T) => Box, width: number): { boxes: Box[]; rows: number[]; count: number } {
  const boxes: Box[] = [];
  const rows: number[] = [];
  for (const item of items) {
    const free = boxOf(item);
    const box = { ...free, x: Math.max(0, Math.min(free.x, width - free.width)) };
    let row = 0;
    while (boxes.some((other, i) => rows[i] === row && overlap(other, box, 6))) row += 1;
    boxes.push(box);
    rows.push(row);
  }
  return { boxes, rows, count: Math.max(0, ...rows.map((row) => row + 1)) };
}
