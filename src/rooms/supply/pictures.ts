// Pictures of the supply: what it carries state by state, and where the voltage is lost on the way to a machine.
import { band } from "../../kernel/band.ts";
import type { Verdict } from "../../kernel/check.ts";
import { bandAlong } from "../../kernel/draw.ts";
import { perhaps, type Values } from "../../kernel/figure.ts";
import { machine, shop } from "../../kernel/item.ts";
import { type Case, picture, type Sampled } from "../../kernel/room.ts";
import type { Share } from "../../kernel/slot.ts";
import { word } from "../../kernel/verdict.ts";
import { stackedBars } from "../../pictures/bars.ts";
import { csv } from "../../pictures/csv.ts";
import { emptyPicture } from "../../pictures/empty.ts";
import { plot } from "../../pictures/plot.ts";
import { plotCsv } from "../../pictures/plot-read.ts";
import { shownIn } from "../../pictures/shown.ts";
import { voltageRunPlot } from "../../pictures/voltage-run.ts";
import { runDrop, supplyCurrentCheck, voltageAtPanel, voltageOffered } from "./drop.ts";
import { existing, rating, voltage } from "./inputs.ts";
import { lineFactor } from "./service.ts";
import { peaks } from "./slots.ts";
import { phases, supplyCapacity } from "./source.ts";

const stateNeeds = { S_c: supplyCapacity, V: voltage, I_r: rating, I_ex: existing, n_ph: phases, peaks } as const;
type State = Values<typeof stateNeeds>;
const houseOf = (x: State): number => lineFactor(x.n_ph) * x.V * x.I_ex;
const ratingOf = (x: State): number => lineFactor(x.n_ph) * x.V * x.I_r;
/** Things of the shop itself are named by what they are and their name. */
const nameOf = (s: Share<number>): string => (s.item.includes("compressors") ? `compressor ${s.from}` : s.from);

/** Verdict of one state over all samples, with the reserve of the check on everything at once. */
function verdictOf(samples: Sampled<State>, total: (x: State) => number): Verdict {
  const margins = Float64Array.from({ length: samples.count }, (_, k) => samples.at(k).S_c / total(samples.at(k)));
  return word(band({ v: margins, holes: null }), supplyCurrentCheck.H, false);
}

const BARS = "What the service carries, state by state";
export const supplyBars = picture({
  id: "supply.states-picture",
  per: shop,
  title: BARS,
  needs: stateNeeds,
  draws: (cases, frame) => {
    const found = cases[0];
    const x = found?.samples.at(0);
    if (found === undefined || x === undefined) return emptyPicture(BARS, "nothing to draw", frame);
    const kVA = shownIn("apparent-power", frame);
    const parts = ["house", ...x.peaks.map(nameOf)];
    const running = (k: number | "all" | "none") => (s: State) =>
      houseOf(s) + s.peaks.reduce((sum, p, i) => sum + (k === "all" || k === i ? p.value : 0), 0);
    const amounts = (k: number | "all" | "none") => [houseOf(x), ...x.peaks.map((p, i) => (k === "all" || k === i ? p.value : 0))];
    const whole = found.verdict(supplyCurrentCheck.id, "shop");
    const states = [
      { name: "house alone", key: "none" as const },
      ...(x.peaks.length > 1 ? x.peaks.map((p, i) => ({ name: `with ${nameOf(p)}`, key: i })) : []),
      { name: "everything at once", key: "all" as const },
    ].map(({ name, key }) => ({
      name,
      amounts: amounts(key).map(kVA.of),
      verdict: key === "all" && whole !== null ? whole : verdictOf(found.samples, running(key)),
    }));
    const all = running("all")(x);
    const share = Math.round((100 * all) / x.S_c);
    const options = cases.slice(1).map((c) => {
      const there = c.samples.at(0);
      return ` ${c.name}: ${kVA.text(houseOf(there) + there.peaks.reduce((sum, p) => sum + p.value, 0))}.`;
    });
    const svg = stackedBars({
      prefix: `${frame.prefix}-states`,
      title: BARS,
      label: `Everything at once draws ${kVA.text(all)}, ${share} % of the ${kVA.text(x.S_c)} the service may carry for hours: ${states.at(-1)?.verdict ?? "open"}.${options.join("")}`,
      width: frame.width,
      unit: kVA.unit,
      parts,
      states,
      limits: [
        { at: kVA.of(x.S_c), words: "for hours" },
        { at: kVA.of(ratingOf(x)), words: "rating" },
      ],
    });
    const rows = states.map((s) => [s.name, ...s.amounts, s.verdict]);
    return { svg, csv: csv(["state", ...parts.map((p) => `${p} [${kVA.unit}]`), "verdict"], rows) };
  },
});

const runNeeds = { V: voltage, U_p: voltageAtPanel, dU: perhaps(runDrop), V_m: voltageOffered } as const;
type Run = Values<typeof runNeeds>;
const PLACES = ["source", "panel", "machine"];
/** Volts at source, panel and machine with everything running. */
const peakAt = (x: Run, place: number): number => [x.V, x.U_p, x.U_p - (x.dU ?? 0)][place] ?? Number.NaN;

const ALONG = "Voltage on the way to the machine";
export const voltagePicture = picture({
  id: "supply.voltage-picture",
  per: machine,
  title: ALONG,
  needs: runNeeds,
  draws: (cases, frame) => {
    const found = cases[0];
    const x = found?.samples.at(0);
    if (found === undefined || x === undefined) return emptyPicture(ALONG, "nothing to draw", frame);
    if (x.U_p === 0) return emptyPicture(ALONG, "the supply collapses: no voltage can carry what is asked", frame);
    // Without a run entered the machine hangs on the panel itself.
    const places = x.dU === null ? PLACES.slice(0, 2) : PLACES;
    const at = places.map((_, i) => i);
    const along = (c: Case<Run>) => bandAlong(c.samples, at, peakAt);
    const peak = along(found);
    const last = places.length - 1;
    const lost = x.V - peakAt(x, last);
    const end = peakAt(x, last);
    const spec = voltageRunPlot({
      prefix: `${frame.prefix}-run`,
      title: ALONG,
      label: `With everything running ${end.toFixed(1)} V of ${x.V.toFixed(1)} V reach the ${places[last] ?? ""}: ${lost.toFixed(1)} V or ${((100 * lost) / x.V).toFixed(1)} % are lost, most of it ${x.V - x.U_p > lost / 2 ? "before the panel" : "in the run"}.`,
      width: frame.width,
      height: 320,
      places,
      cases: [
        { name: "idle", role: "quiet", volts: at.map(() => x.V) },
        { name: "everything running", role: "base", volts: peak.nominal, low: peak.low, high: peak.high },
        ...cases.slice(1).map((c) => ({ name: c.name, role: "option" as const, volts: along(c).nominal })),
      ],
      limits: [{ at: x.V_m, words: "what drives here are reckoned with", role: "quiet" as const }],
    });
    return { svg: plot(spec), csv: plotCsv(spec), plot: spec };
  },
});
