// How much each reading would narrow what is known of the motor's breakdown torque.
import { band } from "../../kernel/band.ts";
import { perhaps, type Values } from "../../kernel/figure.ts";
import { picture, type Sampled } from "../../kernel/room.ts";
import { bandRows } from "../../pictures/band-rows.ts";
import { csv } from "../../pictures/csv.ts";
import { emptyPicture } from "../../pictures/empty.ts";
import { shownIn } from "../../pictures/shown.ts";
import { motor } from "../ground/index.ts";
import { breakdown } from "./motor.ts";
import { plateCircuit } from "./motor-circuit.ts";
import { noLoadCurrent, resistance, standstillCurrent } from "./motor-inputs.ts";
import { ratedTorque } from "./motor-plate.ts";

const needs = {
  T: breakdown,
  T_n: ratedTorque,
  R_ll: plateCircuit.R_ll,
  I_0: plateCircuit.I_0,
  X_k: plateCircuit.X_k,
  R: perhaps(resistance),
  I: perhaps(noLoadCurrent),
  k: perhaps(standstillCurrent),
} as const;
type Known = Values<typeof needs>;

const READINGS: readonly { name: string; what: "R_ll" | "I_0" | "X_k"; taken: (x: Known) => boolean }[] = [
  { name: "dc resistance", what: "R_ll", taken: (x) => x.R !== null },
  { name: "run without load", what: "I_0", taken: (x) => x.I !== null },
  { name: "standstill test", what: "X_k", taken: (x) => x.k !== null },
];

/** Circuits kept by a simulated reading: those nearest to what it is expected to show, enough for an honest 5 and 95 %. */
const NEAREST = 60;
/** Fewer circuits than this in all are no ground to pick neighbours from. */
const LEAST = 4 * NEAREST;

/** The band left by a reading that comes out as the nominal circuit says: the circuits that come nearest to it. */
function after(samples: Sampled<Known>, what: "R_ll" | "I_0" | "X_k") {
  const read = samples.at(0)[what];
  const all = Array.from({ length: samples.count }, (_, k) => samples.at(k));
  const near = all.toSorted((a, b) => Math.abs(a[what] - read) - Math.abs(b[what] - read)).slice(0, NEAREST);
  // The nominal stands in front, as in every column.
  return band({ v: Float64Array.from([samples.at(0), ...near], (x) => x.T), holes: null });
}

const TITLE = "Breakdown torque: what each measurement would leave";
export const narrowingPicture = picture({
  id: "spindle.motor.narrowing-picture",
  per: motor,
  title: TITLE,
  needs,
  draws: (cases, frame) => {
    const found = cases[0];
    if (found === undefined || found.samples.count < LEAST)
      return emptyPicture(TITLE, "the circuit is known as well as these readings would tell it", frame);
    const { samples } = found;
    const x = samples.at(0);
    const torque = shownIn("torque", frame);
    const now = band({ v: Float64Array.from({ length: samples.count }, (_, k) => samples.at(k).T), holes: null });
    const left = READINGS.filter((r) => !r.taken(x)).map((r) => ({ name: r.name, ...after(samples, r.what) }));
    const done = READINGS.filter((r) => r.taken(x)).map((r) => r.name);
    const best = left.toSorted((a, b) => a.high - a.low - (b.high - b.low))[0];
    const width = (b: { low: number; high: number }) => `${torque.text(b.low)} to ${torque.text(b.high)}`;
    const shown = (b: { low: number; high: number; nominal: number }) => ({
      low: torque.of(b.low),
      high: torque.of(b.high),
      nominal: torque.of(b.nominal),
    });
    const rows = [
      { name: done.length === 0 ? "from the plate alone" : `with ${done.join(" and ")}`, ...shown(now) },
      ...left.map((l) => ({ name: `after the ${l.name}`, ...shown(l), planned: true as const })),
    ];
    const label = best
      ? `Now ${width(now)}; the ${best.name} would leave ${width(best)}, most of the three.`.replace(
          "most of the three",
          left.length > 1 ? "less than any other" : "the last one left",
        )
      : `Now ${width(now)}; all three readings are taken.`;
    const svg = bandRows({
      title: TITLE,
      label,
      width: frame.width,
      unit: torque.unit,
      rows,
      limits: [{ at: torque.of(x.T_n), words: "plate torque" }],
    });
    return {
      svg,
      csv: csv(
        ["case", `low [${torque.unit}]`, `nominal [${torque.unit}]`, `high [${torque.unit}]`],
        rows.map((r) => [r.name, r.low, r.nominal, r.high]),
      ),
    };
  },
});
