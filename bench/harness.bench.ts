// The harness against itself: how far from 1 two equal things come out says how much of any other ratio is noise.
import type { Pair } from "./pair.ts";

const readings = Array.from({ length: 1_000 }, (_, k) => Math.sin(k));
const sum = (): number => readings.reduce((total, reading) => total + reading ** 2, 0);

export const benches: readonly Pair[] = [{ says: "the same against the same: 1 but for noise", base: sum, subject: sum }];
