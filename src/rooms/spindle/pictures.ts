// Pictures of the turning spindle: speed and torque from start to stop, the run-in, the belt to scale.
import { perhaps, type Values } from "../../kernel/figure.ts";
import { type Drawn, type Frame, picture, type Sampled } from "../../kernel/room.ts";
import { prettyUnit } from "../../kernel/display.ts";
import { fromSI, type Kind, kinds, unitOf } from "../../kernel/unit.ts";
import { beltSketch } from "../../pictures/belt.ts";
import { plot } from "../../pictures/plot.ts";
import { plotCsv } from "../../pictures/plot-read.ts";
import type { PlotSpec, Series } from "../../pictures/plot-spec.ts";
import { drawing } from "../../pictures/svg.ts";
import { noteSize, words } from "../../pictures/words.ts";
import { fitted } from "../../pictures/text-width.ts";
import { belt, spindle } from "../ground/index.ts";
import { plateau } from "./bearing.ts";
import { runInTemperature, runInTime } from "./bearings.ts";
import { wrap } from "./belts.ts";
import { capability } from "./capability.ts";
import {
  frictionAtTop,
  frictionSteady,
  motorSpeedAtTop,
  referredInertia,
  referredInertiaBraking,
  topEfficiency,
  topRatio,
} from "./mass.ts";
import { fullFluxSpeed } from "./motor.ts";
import { ratedTorque } from "./motor-plate.ts";
import { spinUpCurve } from "./motion.ts";
import { between, overloadCurrent, overloadCurve, overloadTorque, spinUpRun, spinUpTime } from "./spin-up.ts";
import { beltCount, centreDistance, motorPulley, spindlePulley, spinUpWanted, stopWanted, strandTension } from "./spindle-inputs.ts";
import { stopTime } from "./stopping.ts";

const HEIGHT = 420;
const RPM = 30 / Math.PI;

/** What stands where a picture has nothing to show yet. */
function empty(says: string, frame: Frame): Drawn {
  const size = noteSize(frame.width);
  return {
    svg: drawing({ label: says, width: frame.width, height: 3 * size }, words(0, 2 * size, fitted(says, frame.width, size), { size })),
  };
}
const drawn = (spec: PlotSpec): Drawn => ({ svg: plot(spec), csv: plotCsv(spec), plot: spec });

/** The unit a kind is shown in, and numbers in it. */
function inUnits(kind: Kind, frame: Frame): { unit: string; of: (x: number) => number } {
  const text: string = kinds[kind][frame.units];
  const unit = unitOf(text);
  return { unit: prettyUnit(text), of: (x) => fromSI(x, unit) };
}

/** The 5 and 95 % ends of one value over the samples. */
function ends<X>(samples: Sampled<X>, of: (x: X) => number): [number, number] {
  const all = Array.from({ length: samples.count }, (_, k) => of(samples.at(k))).toSorted((a, b) => a - b);
  const at = (q: number): number => all[Math.min(all.length - 1, Math.floor(q * all.length))] ?? Number.NaN;
  return [at(0.05), at(0.95)];
}

const spinNeeds = {
  c: perhaps(capability),
  I: perhaps(overloadCurrent),
  T: overloadTorque,
  w_b: fullFluxSpeed,
  J: referredInertia,
  J_b: referredInertiaBraking,
  w: motorSpeedAtTop,
  i: topRatio,
  eta: topEfficiency,
  T_0: frictionSteady,
  T_1: frictionAtTop,
  t_u: spinUpRun,
  t_up: spinUpTime,
  t_s: stopTime,
} as const;
type Spin = Values<typeof spinNeeds>;

/** Points at which a start and a stop are drawn. */
const POINTS = 60;
/** Time at highest speed between start and stop, as a share of both. */
const HOLD = 0.08;
const steps = (to: number): number[] => Array.from({ length: POINTS + 1 }, (_, k) => (to * k) / POINTS);

interface StartStop {
  readonly t: number[];
  /** Spindle speed [rad/s]. */
  readonly n: number[];
  /** Motor torque [N*m]. */
  readonly T: number[];
}

/** Speed and motor torque from standstill to highest speed and back. */
function startStop(x: Spin): StartStop {
  const friction = (w: number): number => (x.T_0 + ((x.T_1 - x.T_0) * w) / x.w) / (x.i * x.eta);
  const ramped = x.t_up > x.t_u;
  const start = steps(x.t_up);
  let w: number[];
  let T: number[];
  if (ramped) {
    w = start.map((t) => (x.w * t) / x.t_up);
    T = w.map((now) => (x.J * x.w) / x.t_up + friction(now));
  } else {
    const { at, torque } = overloadCurve(x);
    const curve = between(at, torque);
    const marched = spinUpCurve({ J: x.J, w_0: 0, w_1: x.w, T: curve, T_l: friction });
    const speed = between(Array.from(marched.t), Array.from(marched.w));
    w = start.map((t) => Math.min(x.w, speed(t)));
    T = w.map(curve);
  }
  const begin = x.t_up + HOLD * (x.t_up + x.t_s);
  const stop = steps(x.t_s);
  const down = stop.map((t) => x.w * (1 - t / x.t_s));
  return {
    t: [...start, x.t_up, begin, ...stop.map((t) => begin + t)],
    n: [...w, x.w, x.w, ...down].map((v) => v / x.i),
    T: [...T, friction(x.w), friction(x.w), ...down.map((v) => friction(v) - (x.J_b * x.w) / x.t_s)],
  };
}

export const spinUpPicture = picture({
  id: "spindle.spin-up-picture",
  per: spindle,
  title: "From standstill to highest speed and back",
  needs: { ...spinNeeds, wanted: perhaps(spinUpWanted), stop: perhaps(stopWanted) },
  draws: (cases, frame) => {
    const found = cases[0];
    if (found === undefined) return empty("Nothing to draw.", frame);
    const x = found.samples.at(0);
    if (!cases.every((c) => Number.isFinite(c.samples.at(0).t_up))) {
      return empty("The highest speed is never reached: friction takes all the torque there is.", frame);
    }
    if (!cases.every((c) => Number.isFinite(c.samples.at(0).t_s)))
      return empty("Without friction or a drive it would turn for ever.", frame);
    const runs = cases.map((c, k) => ({
      name: c.name,
      role: k === 0 ? ("base" as const) : ("option" as const),
      ...startStop(c.samples.at(0)),
    }));
    const series = (of: (r: StartStop) => number[]): Series[] => runs.map((r) => ({ name: r.name, x: r.t, y: of(r), role: r.role }));
    const [low, high] = ends(found.samples, (s) => s.t_up);
    const seconds = (t: number): string => (Number.isFinite(t) ? `${Number(t.toPrecision(2))} s` : "never");
    const torque = inUnits("torque", frame);
    const spread = high > low ? ` (${seconds(low)} to ${seconds(high)})` : "";
    const label = `Highest speed after ${seconds(x.t_up)}${spread}; ${seconds(x.t_s)} to stop.`;
    return drawn({
      prefix: `${frame.prefix}-spin`,
      title: "Speed and motor torque from start to stop",
      label,
      width: frame.width,
      height: HEIGHT,
      x: { label: "time", unit: "s", min: 0 },
      y: { label: "spindle", unit: "rpm", min: 0 },
      series: series((r) => r.n.map((n) => n * RPM)),
      limits: x.wanted === null ? [] : [{ on: "x", at: x.wanted, words: `wanted ${seconds(x.wanted)}`, role: "quiet" }],
      below: { y: { label: "motor", unit: torque.unit }, series: series((r) => r.T.map(torque.of)) },
    });
  },
});

/** How far past the last reading the fitted curve is drawn, as a share of the time read. */
const AHEAD = 0.5;
/** Outer case at which a run-in is broken off [K]; the user may be stricter. */
const TOO_WARM = 273.15 + 60;

export const runInPicture = picture({
  id: "spindle.run-in-picture",
  per: spindle,
  title: "Run-in: where the temperature is heading",
  needs: { t: perhaps(runInTime), T: perhaps(runInTemperature) },
  draws: (cases, frame) => {
    const x = cases[0]?.samples.at(0);
    const { t, T } = x ?? { t: null, T: null };
    if (t === null || T === null || t.length === 0) return empty("No run-in readings yet: the step run-in brings them.", frame);
    if (t.length !== T.length) return empty("A temperature is wanted for each time of the run-in.", frame);
    const found = plateau(t, T);
    const shown = inUnits("temperature", frame);
    const minutes = (s: readonly number[]): number[] => s.map((v) => v / 60);
    const first = t[0] ?? 0;
    const last = t.at(-1) ?? first;
    const fit: Series[] = [];
    let label = "Too few readings to say where it is heading: six at least.";
    if (found.kind === "accelerating") label = "The rise does not slow down: stop the spindle and look.";
    if (found.kind === "settled") label = `Settled at ${Math.round(shown.of(found.T_p))} ${shown.unit}.`;
    if (found.kind === "settling") {
      const at = steps(last + AHEAD * (last - first) - first).map((s) => first + s);
      const y = at.map((now) => shown.of(found.T_p - (found.T_p - found.T_0) * Math.exp(-(now - first) / found.tau)));
      fit.push({ name: "fitted", x: minutes(at), y, role: "base" });
      label = `Heading for ${Math.round(shown.of(found.T_p))} ${shown.unit}, time constant ${Math.round(found.tau / 60)} min.`;
    }
    const limits = [
      {
        on: "y" as const,
        at: shown.of(TOO_WARM),
        words: `break off at ${Math.round(shown.of(TOO_WARM))} ${shown.unit}`,
        forbids: "above" as const,
      },
      ...(found.kind === "settling" || found.kind === "settled"
        ? [{ on: "y" as const, at: shown.of(found.T_p), words: "plateau", role: "quiet" as const }]
        : []),
    ];
    return drawn({
      prefix: `${frame.prefix}-run-in`,
      title: "Temperature of the hottest bearing during run-in",
      label,
      width: frame.width,
      height: HEIGHT,
      x: { label: "time", unit: "min" },
      y: { label: "outer case", unit: shown.unit, max: shown.of(Math.max(TOO_WARM + 10, ...T)) },
      series: [{ name: "read", x: minutes(t), y: T.map(shown.of), role: "quiet" }, ...fit],
      limits,
    });
  },
});

export const beltPicture = picture({
  id: "spindle.belt-picture",
  per: belt,
  title: "The belt, to scale",
  needs: {
    d_m: motorPulley,
    d_s: spindlePulley,
    c: perhaps(centreDistance),
    theta: perhaps(wrap),
    T_0: perhaps(strandTension),
    z_b: perhaps(beltCount),
    T: perhaps(ratedTorque),
  },
  draws: (cases, frame) => {
    const x = cases[0]?.samples.at(0);
    if (x === undefined || x.c === null) return empty("The distance between the shafts is not written: nothing to draw to scale.", frame);
    const length = inUnits("length", frame);
    const force = inUnits("force", frame);
    const rounded = (v: number): number => Number(length.of(v).toPrecision(4));
    const turns = Number((x.d_s / x.d_m).toPrecision(3));
    const ratio = `motor ${turns} turns : spindle 1`;
    const static_ = x.T_0 !== null && x.z_b !== null ? x.T_0 * x.z_b : null;
    const pull = x.T !== null ? x.T / x.d_m : null;
    const says = (what: string, F: number): string => `${what} ${Math.round(force.of(F))} ${force.unit}`;
    const tight = static_ !== null && pull !== null ? says("pulls", static_ + pull) : "pulls";
    const slack = static_ !== null && pull !== null ? says("slack", Math.max(0, static_ - pull)) : "slack";
    const wrapped = x.theta === null ? "" : `, wrap ${Math.round((x.theta * 180) / Math.PI)} deg`;
    return {
      svg: beltSketch({
        title: ratio,
        label: `Belt: ${ratio}${wrapped}.`,
        width: frame.width,
        unit: length.unit,
        driver: { name: "motor", diameter: rounded(x.d_m) },
        driven: { name: "spindle", diameter: rounded(x.d_s) },
        centre: rounded(x.c),
        turns: "clockwise",
        tight,
        slack,
      }),
    };
  },
});
