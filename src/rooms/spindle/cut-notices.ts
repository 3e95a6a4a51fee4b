// What people overlook in an operation, said at the operation.
import { notice } from "../../kernel/check.ts";
import { figure, first, perhaps } from "../../kernel/figure.ts";
import { operation } from "../ground/index.ts";
import { cutDiameter, cutWidth, depth, feed, feedPerTooth, givenSpeed, operationKind, pitch, surfaceSpeed } from "./cut-inputs.ts";
import { tapping, toolCutDiameter, workDiameter } from "./cut-work.ts";
import { cutPower, cutSpeed, cutThickness, speedAsGiven, speedBySurface } from "./cuts.ts";
import { referredInertia, topRatio } from "./mass.ts";
import { overloadTorque } from "./spin-up.ts";

/** What each kind of operation must say before its torque can be worked out. */
const wanted = {
  turn: { feed: "feed", depth: "depth" },
  bore: { feed: "feed", depth: "depth" },
  face: { feed: "feed", depth: "depth" },
  groove: { feed: "feed" },
  "part-off": { feed: "feed" },
  drill: { feed: "feed" },
  tap: { pitch: "pitch" },
  thread: {},
  mill: { feedPerTooth: "feed-per-tooth", depth: "depth", width: "width" },
} as const satisfies Record<string, Readonly<Record<string, string>>>;

export const cutIncomplete = notice({
  id: "spindle.cut.incomplete",
  per: operation,
  severity: "warning",
  needs: {
    kind: operationKind,
    power: perhaps(cutPower),
    feed: perhaps(feed),
    depth: perhaps(depth),
    width: perhaps(cutWidth),
    pitch: perhaps(pitch),
    feedPerTooth: perhaps(feedPerTooth),
    v_c: perhaps(surfaceSpeed),
    n: perhaps(givenSpeed),
    d: perhaps(first(workDiameter, toolCutDiameter)),
  },
  at: operationKind,
  of: (x) => {
    if (x.power !== null) return null;
    const values: Readonly<Record<string, number | null>> = x as unknown as Readonly<Record<string, number | null>>; // the needs by name
    const lacks: string[] = Object.entries(wanted[x.kind]).flatMap(([name, key]) => (values[name] === null ? [key] : []));
    if (x.v_c === null && x.n === null) lacks.push("surface-speed or speed");
    if (x.d === null) lacks.push("diameter, here or of tool or stock");
    if (lacks.length === 0) lacks.push("teeth or diameter of the tool, or the width of its blade");
    return `No torque can be worked out for this operation; it may lack ${lacks.join(", ")}.`;
  },
});

/** Chips thinner than this are rubbed rather than cut. */
const RUBBED = 0.02e-3;
export const chipThin = notice({
  id: "spindle.cut.thin-chip",
  per: operation,
  severity: "note",
  needs: { h: cutThickness },
  when: [{ word: operationKind, is: ["turn", "bore", "face", "groove", "part-off", "drill", "mill"] }],
  at: feed,
  of: (x) =>
    x.h < RUBBED
      ? `Chips of ${(x.h * 1e3).toFixed(3)} mm are thinner than most edges are sharp: it rubs, work-hardens, and the force is uncertain. More feed is often easier on the tool.`
      : null,
});

const rpm = (w: number): string => `${Math.round((w * 30) / Math.PI)} rpm`;
export const speedCapped = notice({
  id: "spindle.cut.speed-capped",
  per: operation,
  severity: "note",
  needs: { w: speedBySurface, v_c: surfaceSpeed, d: cutDiameter },
  at: surfaceSpeed,
  of: (x) => {
    const asked = (2 * x.v_c) / x.d;
    return asked > x.w * 1.001
      ? `Surface speed asks for ${rpm(asked)} at this diameter; the cap holds it at ${rpm(x.w)}, ${Math.round(100 * (x.w / asked))} % of the surface speed.`
      : null;
  },
});
export const speedBoth = notice({
  id: "spindle.cut.speed-twice",
  per: operation,
  severity: "note",
  needs: { v_c: surfaceSpeed, n: givenSpeed, w: speedAsGiven },
  at: givenSpeed,
  of: () => "Surface speed and spindle speed are both written; the surface speed counts.",
});

export const tapOverrun = figure({
  id: "spindle.cut.tap-overrun",
  per: operation,
  symbol: "z_o",
  unit: "m",
  says: "how far a tap runs on while the spindle is brought to a stop, all torque the drive allows",
  formula: "p * J * i * w^2 / (4 * pi * T)",
  source: "Newton at constant torque; a drive on a longer ramp runs on further",
  needs: { p: pitch, J: referredInertia, i: topRatio, w: cutSpeed, T: overloadTorque },
  when: tapping,
  of: (x) => (x.p * x.J * x.i * x.w ** 2) / (4 * Math.PI * x.T),
  signs: { p: "+", J: "+", i: "+", w: "+", T: "-" },
});
