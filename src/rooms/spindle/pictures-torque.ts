// Torque and power of the spindle against its speed, with every cut on it.
import type { Verdict } from "../../kernel/check.ts";
import { bandAlong } from "../../kernel/draw.ts";
import { perhaps, value, type Values } from "../../kernel/figure.ts";
import { type Case, picture } from "../../kernel/room.ts";
import { listSlot, offer, type Share } from "../../kernel/slot.ts";
import { emptyPicture } from "../../pictures/empty.ts";
import { plot } from "../../pictures/plot.ts";
import { plotCsv } from "../../pictures/plot-read.ts";
import type { Limit, PlotPoint, PlotSpec, Series } from "../../pictures/plot-spec.ts";
import { type ShownIn, shownIn } from "../../pictures/shown.ts";
import { phoneWidth } from "../../pictures/words.ts";
import { operation, spindle } from "../ground/index.ts";
import { surfaceSpeed } from "./cut-inputs.ts";
import { cutCap, cutSpeed, cutTorque, operationKind } from "./cuts.ts";
import { capability, lawAt } from "./capability.ts";
import { overloadTime } from "./drive-inputs.ts";
import { speedLimit } from "./limits.ts";
import { fullFluxSpeed } from "./motor.ts";
import { type Ratio, ratios } from "./ratios.ts";
import { type Reach, reachAt } from "./reach.ts";
import { topSpeedWanted } from "./spindle-inputs.ts";
import { continuousTorque } from "./thermal.ts";

/** A cut on the torque plane. */
interface CutSpot {
  readonly kind: string;
  readonly w: number;
  readonly T: number;
  /** Fastest it is let turn [rad/s]; the speed rises towards it where the surface speed is held and the diameter falls. */
  readonly cap: number;
  readonly held: boolean;
}
export const cutSpot = value({
  id: "spindle.cut.spot",
  per: operation,
  says: "speed and torque of this cut",
  needs: { kind: operationKind, w: cutSpeed, T: cutTorque, cap: cutCap, v: perhaps(surfaceSpeed) },
  of: (x): CutSpot => ({ kind: x.kind, w: x.w, T: x.T, cap: x.cap, held: x.v !== null }),
});
export const cutSpots = listSlot<CutSpot>({ id: "spindle.cut-spots", per: spindle, says: "every cut on the torque plane", empty: "zero" });
export const cutSpotOffer = offer(cutSpots, cutSpot);

const needs = {
  c: capability,
  ratios,
  n_top: topSpeedWanted,
  w_b: fullFluxSpeed,
  n_lim: perhaps(speedLimit),
  cuts: perhaps(cutSpots),
  t_o: overloadTime,
} as const;
type Torque = Values<typeof needs>;

/** Speeds at which a line is worked out, and a band; the slowest as a share of the highest, for a motor cannot be asked at standstill. */
const POINTS = 49;
const BAND_POINTS = 17;
const SLOWEST = 0.02;
/** Drawn as far above the highest speed wanted [1]. */
const BEYOND = 1.12;
const RPM = 30 / Math.PI;

const speeds = (top: number, count: number): number[] =>
  Array.from({ length: count }, (_, k) => top * (SLOWEST + ((1 - SLOWEST) * k) / (count - 1)));
const ways = (x: Torque): Ratio[] => x.ratios.map((r: Share<Ratio>) => r.value);
const reachOf = (x: Torque, w: number, I: number): Reach => reachAt(x.c, ways(x), w, I);

/** What the winding stands for hours at that speed, by its heat alone, at the spindle [N*m]. */
function byHeat(x: Torque, w: number): number {
  const { motor, ratio, T_f } = reachOf(x, w, x.c.I_hours);
  if (motor.f === 0) return 0;
  const { c } = x;
  const body = { rise: 1, tau: 1, share: c.share, g_0: c.g_0 };
  const { T } = continuousTorque(c.circuit, lawAt(c, motor.P_bus), { I_n: c.I_n, f_n: c.f_n, w_n: c.w_n }, body, motor.f);
  return Math.max(0, ratio.eta * ratio.i * T - T_f);
}

/** Where a parting or facing cut wanders at constant surface speed: torque falls with the diameter, speed rises to its cap. */
function path(cut: CutSpot): { w: number[]; T: number[] } | null {
  if (!cut.held || (cut.kind !== "part-off" && cut.kind !== "face")) return null;
  // By the share of the diameter that is left; from the cap on the speed stands and torque falls straight down.
  const left = [1, 0.85, 0.7, 0.55, 0.4, 0.25, 0.1];
  const turning = cut.w / cut.cap;
  const at = [...left.filter((u) => u > turning), Math.min(1, turning), 0.05];
  return { w: at.map((u) => Math.min(cut.w / u, cut.cap)), T: at.map((u) => cut.T * u) };
}

const nameOf = (item: string): string => item.replace(/^.*work\//, "").replace(".operations.", " ");
const rank: Readonly<Record<Verdict, number>> = { fails: 0, open: 1, tight: 2, holds: 3 };

interface Spot {
  readonly name: string;
  readonly cut: CutSpot;
  readonly verdict: Verdict;
}
function spots(c: Case<Torque>): Spot[] {
  const cuts = c.samples.at(0).cuts ?? [];
  return cuts.map((s: Share<CutSpot>) => ({
    name: nameOf(s.item),
    cut: s.value,
    verdict: c.verdict("spindle.cut.torque-holds", s.item) ?? c.verdict("spindle.cut.tap-holds", s.item) ?? "open",
  }));
}

function found(c: Case<Torque>, all: readonly Spot[], torque: ShownIn): string {
  const x = c.samples.at(0);
  const at = (w: number) => `${torque.text(reachOf(x, w, x.c.I_hours).T)} at ${Math.round(w * RPM)} rpm`;
  const base = x.w_b / Math.min(...ways(x).map((r) => r.i));
  const reach = base < x.n_top ? `${at(base)}, where full flux ends, and ${at(x.n_top)}` : at(x.n_top);
  const bad = all.filter((s) => s.verdict === "fails").map((s) => s.name);
  const open = all.filter((s) => s.verdict === "open").length;
  const cuts =
    all.length === 0
      ? "no cuts entered"
      : bad.length > 0
        ? `it does not turn ${bad.join(", ")}`
        : open > 0
          ? `${open} of ${all.length} cuts stay open`
          : `it turns all ${all.length} cuts`;
  return `${c.name}: ${reach}; ${cuts}.`;
}

export const torquePicture = picture({
  id: "spindle.torque-picture",
  per: spindle,
  title: "Torque and power against spindle speed",
  needs,
  draws: (cases, frame) => {
    const [first, ...options] = cases;
    if (first === undefined) return emptyPicture("Torque and power against spindle speed", "nothing to draw", frame);
    const x = first.samples.at(0);
    const torque = shownIn("torque", frame);
    const power = shownIn("power", frame);
    const top = BEYOND * Math.max(...cases.map((c) => c.samples.at(0).n_top));
    const at = speeds(top, POINTS);
    const rpm = at.map((w) => w * RPM);
    const line = (c: Case<Torque>, I: (s: Torque) => number) => at.map((w) => reachOf(c.samples.at(0), w, I(c.samples.at(0))).T);
    const drawn = cases.map((c, k) => ({
      name: k === 0 && options.length === 0 ? "at rated current" : `${c.name}, at rated current`,
      role: k === 0 ? ("base" as const) : ("option" as const),
      hours: line(c, (s) => s.c.I_hours),
      short: line(c, (s) => s.c.I_short),
    }));
    const heat = at.map((w) => byHeat(x, w));
    const hot = heat.map((T, i) => (T < (drawn[0]?.hours[i] ?? 0) ? torque.of(T) : Number.NaN));
    const wide = speeds(top, BAND_POINTS);
    const band = bandAlong(first.samples, wide, (s, w) => reachOf(s, w, s.c.I_hours).T);
    const all = spots(first);
    const sorted = all.toSorted((a, b) => rank[a.verdict] - rank[b.verdict] || b.cut.T - a.cut.T);
    const named = new Set(sorted.slice(0, frame.width < phoneWidth ? 3 : 6));
    const points: PlotPoint[] = all.map((s) => ({
      x: s.cut.w * RPM,
      y: torque.of(s.cut.T),
      label: s.name,
      verdict: s.verdict,
      ...(named.has(s) ? {} : { quiet: true as const }),
    }));
    const series: Series[] = [
      ...drawn.map((d) => ({ name: d.name, x: rpm, y: d.hours.map(torque.of), role: d.role })),
      ...drawn.map((d, k) => ({
        name: k === 0 ? `for ${Math.round(x.t_o)} s` : "",
        x: rpm,
        y: d.short.map(torque.of),
        role: d.role,
        dash: true,
      })),
      ...(hot.some((T) => !Number.isNaN(T)) ? [{ name: "for hours, by heat", x: rpm, y: hot, role: "quiet" as const }] : []),
      ...all.flatMap((s) => {
        const p = path(s.cut);
        return p === null ? [] : [{ name: "", x: p.w.map((w) => w * RPM), y: p.T.map(torque.of), role: "quiet" as const }];
      }),
    ];
    const kW = (T: readonly number[]) => T.map((t, i) => power.of(t * (at[i] ?? 0)));
    const limits: Limit[] = ways(x).map((r) => ({ on: "x", at: (x.w_b / r.i) * RPM, words: "full flux to here", role: "quiet" }));
    limits.push({ on: "x", at: x.n_top * RPM, words: "wanted", role: "quiet" });
    if (x.n_lim !== null && Number.isFinite(x.n_lim))
      limits.push({ on: "x", at: x.n_lim * RPM, words: "allowed to here", forbids: "above" });
    const spec: PlotSpec = {
      prefix: `${frame.prefix}-torque`,
      title: "Torque and power against spindle speed",
      label: [found(first, all, torque), ...options.map((c) => found(c, spots(c), torque))].join(" "),
      width: frame.width,
      height: 480,
      x: { label: "spindle", unit: "rpm", min: 0, max: top * RPM },
      y: { label: "torque at the spindle", unit: torque.unit, min: 0 },
      series,
      bands: [{ x: wide.map((w) => w * RPM), low: band.low.map(torque.of), high: band.high.map(torque.of), words: "90 of 100 cases" }],
      points,
      limits: limits.filter((l) => l.at < top * RPM),
      below: {
        y: { label: "power", unit: power.unit, min: 0 },
        series: drawn.flatMap((d) => [
          { name: "", x: rpm, y: kW(d.hours), role: d.role },
          { name: "", x: rpm, y: kW(d.short), role: d.role, dash: true },
        ]),
        points: all.map((s) => ({
          x: s.cut.w * RPM,
          y: power.of(s.cut.T * s.cut.w),
          label: s.name,
          verdict: s.verdict,
          quiet: true as const,
        })),
      },
    };
    return { svg: plot(spec), csv: plotCsv(spec), plot: spec };
  },
});
