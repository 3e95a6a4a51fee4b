import fc from "fast-check";
import { expect, test } from "vitest";
import { beltSketch, wrapAngle } from "./belt.ts";
import type { BeltSketch } from "./belt.ts";
import { writtenBoxes } from "./words.ts";

const sketch: BeltSketch = {
  title: "Belt",
  label: "The belt.",
  width: 420,
  unit: "mm",
  driver: { name: "motor", diameter: 140 },
  driven: { name: "spindle", diameter: 112 },
  centre: 410,
  turns: "clockwise",
  tight: "pulls 412 N",
  slack: "slack 130 N",
};

test("equal pulleys are wrapped half a turn, and 140 on 112 mm at 410 mm by 176 degrees", () => {
  expect(wrapAngle(100, 100, 300)).toBeCloseTo(Math.PI, 12);
  // By hand: 180 - 2 asin(28 / 820) = 180 - 2 * 1.9568 = 176.09 degrees.
  expect((wrapAngle(140, 112, 410) * 180) / Math.PI).toBeCloseTo(176.09, 2);
  expect(writtenBoxes(beltSketch(sketch)).map((box) => box.text)).toContain("176°");
});

const strands = (svg: string) =>
  [...svg.matchAll(/<line x1="([\d.-]+)" y1="([\d.-]+)" x2="([\d.-]+)" y2="([\d.-]+)" class="i" stroke-width="([\d.]+)"/g)].map((match) =>
    match.slice(1).map(Number),
  );
const pulleys = (svg: string) =>
  [...svg.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="([\d.]+)" class="fs i"/g)].map((match) => match.slice(1).map(Number));

test("both strands touch both pulleys as tangents, whatever the pulleys", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 40, max: 400 }),
      fc.integer({ min: 40, max: 400 }),
      fc.integer({ min: 1, max: 600 }),
      (d_1, d_2, apart) => {
        const spec = {
          ...sketch,
          driver: { name: "a", diameter: d_1 },
          driven: { name: "b", diameter: d_2 },
          centre: (d_1 + d_2) / 2 + apart,
        };
        const svg = beltSketch(spec);
        const [a, b] = pulleys(svg);
        const drawn = strands(svg);
        expect(drawn).toHaveLength(2);
        const scale = ((b?.[0] ?? 0) - (a?.[0] ?? 0)) / spec.centre;
        for (const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] of drawn) {
          const length = Math.hypot(x2 - x1, y2 - y1);
          for (const [[cx = 0, cy = 0], r] of [
            [a ?? [], d_1 / 2],
            [b ?? [], d_2 / 2],
          ] as const) {
            const distance = Math.abs((x2 - x1) * (cy - y1) - (cx - x1) * (y2 - y1)) / length;
            // Coordinates are written to a tenth; a short strand between close pulleys multiplies that.
            expect(Math.abs(distance - r * scale)).toBeLessThan(0.2 + (0.1 * r * scale) / length);
          }
        }
      },
    ),
    { seed: 3, numRuns: 200 },
  );
});

test("a driver that turns clockwise pulls by the lower strand, one that turns the other way by the upper", () => {
  const tight = (turns: BeltSketch["turns"]) => {
    const svg = beltSketch({ ...sketch, turns });
    const heavy = strands(svg).find((strand) => strand[4] === 3);
    const centre = pulleys(svg)[0]?.[1] ?? 0;
    return (heavy?.[1] ?? 0) > centre ? "lower" : "upper";
  };
  expect([tight("clockwise"), tight("anticlockwise")]).toEqual(["lower", "upper"]);
});

test("pulleys that would touch get no belt but a sentence", () => {
  const svg = beltSketch({ ...sketch, centre: 120 });
  expect(strands(svg)).toEqual([]);
  expect(writtenBoxes(svg).map((box) => box.text)).toContain("120 mm between centres: these pulleys would touch");
});
