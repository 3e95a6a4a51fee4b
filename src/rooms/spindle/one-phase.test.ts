import { describe, expect, test } from "vitest";
import { busState } from "./bus.ts";
import { chokeInductance } from "./drive.ts";
import { onePhaseShare, ratedBusState, STIFF_LINE } from "./one-phase.ts";

const supplies = (P: number): [string, number, number][] => [
  ["stiff", STIFF_LINE.R, STIFF_LINE.L],
  ["house", 0.35, 0.35e-3],
  ["3 % choke", 0.4, chokeInductance({ x_c: 0.03, V: 240, f: 60, P })],
  ["5 % choke", 0.45, chokeInductance({ x_c: 0.05, V: 240, f: 60, P })],
];

describe("the share of a three-phase drive's rating that one phase may draw", () => {
  // Reference: the second sizing table of the design, line and capacitor apart, simulated apart from this code.
  const table: [number, number, [number, number][]][] = [
    [
      2400,
      250,
      [
        [0.43, 0.43],
        [0.5, 0.51],
        [0.62, 0.69],
        [0.66, 0.75],
      ],
    ],
    [
      4800,
      250,
      [
        [0.44, 0.39],
        [0.5, 0.47],
        [0.56, 0.55],
        [0.59, 0.6],
      ],
    ],
    [
      4800,
      450,
      [
        [0.45, 0.39],
        [0.5, 0.46],
        [0.56, 0.53],
        [0.58, 0.58],
      ],
    ],
    [
      9000,
      350,
      [
        [0.45, 0.34],
        [0.5, 0.4],
        [0.51, 0.42],
        [0.53, 0.45],
      ],
    ],
  ];
  for (const [P, perKilowatt, shares] of table) {
    const drive = { V: 240, f: 60, P, C: (perKilowatt * 1e-6 * P) / 1000 };
    const rated = ratedBusState(drive);
    for (const [k, [name, R, L]] of supplies(P).entries()) {
      const [line, capacitor] = shares[k] ?? [NaN, NaN];
      test(`${P / 1000} kW with ${perKilowatt} uF a kilowatt, ${name}: ${line} by the line, ${capacitor} by the capacitors`, () => {
        const limits = { ...drive, R, L };
        expect(Math.abs(onePhaseShare({ ...limits, I_line: rated.I_line, I_C: Infinity }) - line)).toBeLessThan(0.0075);
        expect(Math.abs(onePhaseShare({ ...limits, I_line: Infinity, I_C: rated.I_C }) - capacitor)).toBeLessThan(0.0075);
        expect(onePhaseShare({ ...limits, I_line: rated.I_line, I_C: rated.I_C })).toBeCloseTo(Math.min(line, capacitor), 1);
      });
    }
  }
});

test("at the share found, the tighter of the two currents is just its limit", () => {
  const drive = { V: 240, f: 60, P: 4800, C: 1200e-6, R: 0.35, L: 0.35e-3 };
  const limits = { I_line: 16, I_C: 13 };
  const share = onePhaseShare({ ...drive, ...limits });
  const now = busState({ ...drive, P: share * drive.P, phases: 1 });
  expect(Math.max(now.I_line / limits.I_line, now.I_C / limits.I_C)).toBeCloseTo(1, 3);
});

test("a drive with current to spare may give all of its rating and no more", () => {
  expect(onePhaseShare({ V: 240, f: 60, P: 2400, C: 1e-3, R: 0.35, L: 0.35e-3, I_line: 100, I_C: 100 })).toBe(1);
});
