// One run of the drive's bus against a bare loop of as many steps over the same circuit, without diodes that commutate, sums or bounds.
import { BUS_STEP, type Bus, busState } from "../src/rooms/spindle/bus.ts";
import type { Pair } from "./pair.ts";

const onePhase: Bus = { V: 238, f: 60, P: 4600, C: 1.5e-3, R: 0.35, L: 6e-4, phases: 1 };
const threePhases: Bus = { ...onePhase, phases: 3 };

/** As the simulation marches: cycles, and whole steps in each of six humps. */
const CYCLES = 12;
const steps = CYCLES * 6 * Math.ceil(1 / (6 * onePhase.f * BUS_STEP));

/** Source, choke, ideal diode, capacitor and load by the simplest march there is: what the arithmetic alone costs. */
function bare({ V, f, P, C, R, L }: Bus): number {
  const h = BUS_STEP;
  const w = 2 * Math.PI * f;
  let [i, v, lowest] = [0, Math.SQRT2 * V * 0.93, Infinity];
  for (let k = 0; k < steps; k++) {
    i = Math.max(0, i + (h * (Math.abs(Math.SQRT2 * V * Math.sin(w * k * h)) - R * i - v)) / L);
    v += (h * (i - P / v)) / C;
    if (v < lowest) lowest = v;
  }
  return lowest;
}

/** A little other power each time, as the samples of a brief have. */
let turn = 0;
const moved = (bus: Bus): Bus => ({ ...bus, P: bus.P * (1 + (turn++ % 64) / 640) });

export const benches: readonly Pair[] = [
  {
    says: `one run of ${steps} steps on one phase, against a bare loop (bar 0.2 ms)`,
    base: () => bare(moved(onePhase)),
    subject: () => busState(moved(onePhase)),
  },
  { says: "the same on three phases, against that loop", base: () => bare(moved(onePhase)), subject: () => busState(moved(threePhases)) },
];
