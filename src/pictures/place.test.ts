import fc from "fast-check";
import { expect, test } from "vitest";
import { newRoom } from "./place.ts";
import type { Candidate } from "./place.ts";
import { isWithin, overlap } from "./words.ts";
import type { Box } from "./words.ts";

const area: Box = { x: 0, y: 0, width: 300, height: 200 };
const at = (x: number, y: number, cost = 0): Candidate<Box> => {
  const box = { x, y, width: 60, height: 12 };
  return { box, cost, what: box };
};

test("the cheapest place wins while it is free, then the next", () => {
  const room = newRoom(area);
  expect(room.place([at(10, 10, 2), at(100, 10, 1)])?.x).toBe(100);
  expect(room.place([at(10, 10, 2), at(100, 10, 1)])?.x).toBe(10);
  expect(room.place([at(10, 10, 2), at(100, 10, 1)])).toBeNull();
});

test("words would rather stand a little off than on a line", () => {
  const room = newRoom(area);
  room.draw([
    { x: 0, y: 16 },
    { x: 300, y: 16 },
  ]);
  expect(room.place([at(10, 10, 0), at(10, 40, 20)])?.y).toBe(40);
});

test("no two words ever touch and none leaves the area, wherever they are tried", () => {
  const spot = fc.record({ x: fc.integer({ min: -50, max: 320 }), y: fc.integer({ min: -20, max: 210 }) });
  fc.assert(
    fc.property(fc.array(fc.array(spot, { minLength: 1, maxLength: 8 }), { maxLength: 25 }), (labels) => {
      const room = newRoom(area);
      const placed = labels.map((spots) => room.place(spots.map((p, i) => at(p.x, p.y, i)))).filter((box) => box !== null);
      expect(placed.every((box) => isWithin(box, area))).toBe(true);
      expect(placed.some((box, i) => placed.slice(i + 1).some((other) => overlap(box, other)))).toBe(false);
    }),
  );
});
