// How warm the winding gets over a shift: the duty as written, or the hottest cut for its share of the day.
import { bandAlong } from "../../kernel/draw.ts";
import { perhaps, value, type Values } from "../../kernel/figure.ts";
import { type Case, picture } from "../../kernel/room.ts";
import { listSlot, offer } from "../../kernel/slot.ts";
import { emptyPicture } from "../../pictures/empty.ts";
import { plot } from "../../pictures/plot.ts";
import { plotCsv } from "../../pictures/plot-read.ts";
import type { PlotSpec, Series } from "../../pictures/plot-spec.ts";
import { shownIn } from "../../pictures/shown.ts";
import { operation, spindle } from "../ground/index.ts";
import { type Capability, capability, lawAt } from "./capability.ts";
import { breakdownSlip, currentAtSlip, folded, slipAtTorque } from "./circuit.ts";
import { cuttingShare } from "./loads.ts";
import { classRise } from "./motor.ts";
import { dutyTimes, dutyTorques } from "./motor-heat.ts";
import { timeConstant } from "./motor-inputs.ts";
import { motorTorqueOfCut, reach } from "./reach.ts";
import { type Body, cooling, heat, riseAfter, settledCycle, type Stretch, timeToRise } from "./thermal.ts";
import { plainVoltage } from "./voltage-laws.ts";

/** Heat and cooling of the motor at shaft torque T and drive frequency f, as shares of those at plate load; its stall where T is beyond pull-out. */
function warmed(c: Capability, P: number, f: number, T: number): Omit<Stretch, "t"> {
  const law = lawAt(c, P);
  const V = plainVoltage(law, f);
  const k = folded(c.circuit, f);
  const s = slipAtTorque(k, V, T) ?? breakdownSlip(k);
  const flux = V / f / (c.V_n / c.f_n);
  return { h: heat(c.share, currentAtSlip(k, V, s) / c.I_n, f / c.f_n, flux), g: cooling(c.g_0, k.w_s * (1 - s), c.w_n) };
}

/** A cut's heat, and that of turning at its speed without load. */
interface CutHeat {
  readonly on: Omit<Stretch, "t">;
  readonly idle: Omit<Stretch, "t">;
}
export const cutHeat = value({
  id: "spindle.cut.heat",
  per: operation,
  says: "heat and cooling of the motor in this cut",
  needs: { c: capability, reach, T: motorTorqueOfCut },
  of: (x): CutHeat | null => {
    const { f, P_bus } = x.reach.motor;
    // No frequency turns the spindle at that speed: then there is no heat to speak of either.
    if (f === 0) return null;
    return { on: warmed(x.c, P_bus, f, x.T), idle: warmed(x.c, P_bus, f, 0) };
  },
});
export const cutHeats = listSlot<CutHeat | null>({ id: "spindle.cut-heats", per: spindle, says: "heat of every cut", empty: "zero" });
export const cutHeatOffer = offer(cutHeats, cutHeat);

const needs = {
  c: capability,
  cuts: perhaps(cutHeats),
  u: cuttingShare,
  tau: timeConstant,
  rise: classRise,
  T: perhaps(dutyTorques),
  t: perhaps(dutyTimes),
} as const;
type Warm = Values<typeof needs>;

/** Cycle in which the hottest cut comes and goes where no duty is written [s]; far below the time constant, so only its mean counts. */
const CYCLE = 120;
const SHIFT = 8 * 3600;
/** Points of the line, and of the band. */
const POINTS = 97;
const BAND_POINTS = 25;

/** Plate load settles at the class rise: what a motor is built to, hence an upper figure. */
const bodyOf = (x: Warm): Body => ({ rise: x.rise, tau: x.tau, share: x.c.share, g_0: x.c.g_0 });
const hottestOf = (x: Warm): { name: string; cut: CutHeat } | null => {
  const all = (x.cuts ?? []).flatMap(({ item, value: cut }) =>
    cut === null ? [] : [{ name: item.replace(/^.*work\//, "").replace(".operations.", " "), cut }],
  );
  return all.toSorted((a, b) => b.cut.on.h / b.cut.on.g - a.cut.on.h / a.cut.on.g)[0] ?? null;
};

/** One cycle: the duty as written, at plate speed; else the hottest cut for its share of the time, turning unloaded between. */
function cycleOf(x: Warm): { says: string; cycle: Stretch[] } | null {
  const { T, t } = x;
  if (T !== null && t !== null && T.length > 0 && T.length === t.length)
    return { says: "the duty as written", cycle: T.map((load, k) => ({ ...warmed(x.c, x.c.P, x.c.f_n, load), t: t[k] ?? 0 })) };
  const hottest = hottestOf(x);
  if (hottest === null) return null;
  const { on, idle } = hottest.cut;
  return {
    says: `${hottest.name} for ${Math.round(100 * x.u)} % of the time`,
    cycle: [
      { ...on, t: x.u * CYCLE },
      { ...idle, t: (1 - x.u) * CYCLE },
    ],
  };
}

/** Rise after so many seconds of cycles, begun cold [K]. */
function riseAt(body: Body, cycle: readonly Stretch[], time: number): number {
  const whole = cycle.reduce((sum, s) => sum + s.t, 0);
  if (!(whole > 0)) return 0;
  // Cold start and settled cycle differ by what decays with every cycle.
  const settled = settledCycle(body, cycle)[0] ?? 0;
  const kept = Math.exp(-cycle.reduce((sum, s) => sum + (s.g * s.t) / body.tau, 0));
  let th = settled * (1 - kept ** Math.floor(time / whole));
  let left = time % whole;
  for (const s of cycle) {
    th = riseAfter(body, th, { ...s, t: Math.min(s.t, left) });
    left = Math.max(0, left - s.t);
  }
  return th;
}

const TITLE = "Winding over a shift";
export const shiftPicture = picture({
  id: "spindle.heat-picture",
  per: spindle,
  title: TITLE,
  needs,
  draws: (cases, frame) => {
    const found = cases[0];
    if (found === undefined) return emptyPicture(TITLE, "nothing to draw", frame);
    const x = found.samples.at(0);
    const own = cycleOf(x);
    if (own === null) return emptyPicture(TITLE, "neither a duty of the motor nor any cut is entered", frame);
    const kelvin = shownIn("temperature-difference", frame);
    const grid = (count: number) => Array.from({ length: count }, (_, k) => (SHIFT * k) / (count - 1));
    // At the end of a cycle, so that the line does not beat with the grid.
    const whole = own.cycle.reduce((sum, s) => sum + s.t, 0);
    const at = grid(POINTS).map((t) => Math.round(t / whole) * whole);
    const hours = at.map((t) => t / 3600);
    const line = (c: Case<Warm>) => {
      const s = c.samples.at(0);
      const run = cycleOf(s);
      return at.map((t) => (run === null ? Number.NaN : kelvin.of(riseAt(bodyOf(s), run.cycle, t))));
    };
    const wide = grid(BAND_POINTS).map((t) => Math.round(t / whole) * whole);
    const band = bandAlong(found.samples, wide, (s, t) => riseAt(bodyOf(s), cycleOf(s)?.cycle ?? [], t));
    const hot = hottestOf(x);
    const nonStop: Series[] =
      hot && x.T === null
        ? [
            {
              name: `${hot.name} without a pause`,
              x: hours,
              y: at.map((t) => kelvin.of(riseAfter(bodyOf(x), 0, { ...hot.cut.on, t }))),
              role: "quiet",
              dash: true,
            },
          ]
        : [];
    const last = riseAt(bodyOf(x), own.cycle, at.at(-1) ?? SHIFT);
    const passes = hot ? timeToRise(bodyOf(x), 0, hot.cut.on.h, hot.cut.on.g, x.rise) : Infinity;
    const warn =
      x.T !== null || !Number.isFinite(passes)
        ? ""
        : passes === 0
          ? ` Without a pause ${hot?.name ?? ""} passes the class limit at once.`
          : ` Without a pause ${hot?.name ?? ""} passes the class limit after ${Math.round(passes / 60)} min.`;
    // A line far above the limit would press all else flat.
    const most = 1.6 * kelvin.of(x.rise);
    const spec: PlotSpec = {
      prefix: `${frame.prefix}-heat`,
      title: TITLE,
      label: `After a shift of ${own.says} the winding stands ${kelvin.text(last)} above the air, its class allows ${kelvin.text(x.rise)}.${warn}`,
      width: frame.width,
      height: 380,
      x: { label: "time", unit: "h", min: 0, max: SHIFT / 3600 },
      y: { label: "winding above the air around it", unit: kelvin.unit, min: 0, max: most },
      series: [
        { name: cases.length > 1 ? found.name : own.says, x: hours, y: line(found), role: "base" },
        ...cases.slice(1).map((c): Series => ({ name: c.name, x: hours, y: line(c), role: "option" })),
        ...nonStop,
      ],
      bands: [{ x: wide.map((t) => t / 3600), low: band.low.map(kelvin.of), high: band.high.map(kelvin.of), words: "90 of 100 cases" }],
      limits: [{ on: "y", at: kelvin.of(x.rise), words: "class limit" }],
    };
    return { svg: plot(spec), csv: plotCsv(spec), plot: spec };
  },
});
