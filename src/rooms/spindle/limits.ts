// How fast the spindle may turn, and how firmly the work is held when it does: both guard people.
import { check } from "../../kernel/check.ts";
import { figure, first, known, wordInput } from "../../kernel/figure.ts";
import { offer, slot } from "../../kernel/slot.ts";
import { operation, spindle } from "../ground/index.ts";
import { gripInside as insideGrip, gripOutside as outsideGrip, slipGrip } from "./chuck.ts";
import { operationKind, stockSize } from "./cut-inputs.ts";
import { workDiameter } from "./cut-work.ts";
import { cutCap, cutSpeed, cutThrust, cutTorque } from "./cuts.ts";
import { topRatio } from "./mass.ts";
import { motorTopSpeed } from "./motor-inputs.ts";
import {
  bearingSpeed,
  chuckSpeed,
  closerSpeed,
  colletSpeed,
  gripForce,
  gripFriction,
  gripKind,
  jawCount,
  jawMass,
  jawRadius,
  jawSpeed,
  motorSpeed,
  pulleySpeed,
  topSpeedWanted,
} from "./spindle-inputs.ts";

export const allowedSpeeds = slot({
  id: "spindle.allowed-speeds",
  per: spindle,
  says: "speeds that what is fitted allows",
  combine: "min",
  empty: "refuse",
  unit: "rad/s",
});
export const allowedByMotor = figure({
  id: "spindle.motor-speed-limit",
  per: spindle,
  symbol: "n_mo",
  unit: "rad/s",
  says: "spindle speed at the speed allowed to the motor, on the fastest ratio",
  formula: "n_m / i",
  source: "ratio",
  needs: { n_m: first(motorSpeed, motorTopSpeed), i: topRatio },
  of: (x) => x.n_m / x.i,
  signs: { n_m: "+", i: "-" },
});
export const speedOffers = [colletSpeed, closerSpeed, chuckSpeed, jawSpeed, bearingSpeed, pulleySpeed, allowedByMotor].map((from) =>
  offer(allowedSpeeds, from),
);

export const speedLimit = figure({
  id: "spindle.speed-limit",
  per: spindle,
  symbol: "n_max",
  unit: "rad/s",
  says: "speed the spindle may turn: the smallest that anything fitted allows",
  formula: "n_a",
  source: "makers' plates and papers, as entered; what is not entered is not guessed",
  needs: { n_a: allowedSpeeds },
  of: (x) => x.n_a,
  signs: { n_a: "+" },
});

export const speedHolds = check({
  id: "spindle.speed-holds",
  per: spindle,
  asks: "May the spindle turn as fast as you want?",
  demand: topSpeedWanted,
  capacity: speedLimit,
  H: 1,
  guards: "people",
  remedies: [
    {
      does: "a lower highest speed, clamped in control and drive and proved with a tachometer",
      costs: "surface speed on small diameters",
      changes: [topSpeedWanted],
    },
    { does: "a chuck, collet or closer made for the speed", costs: "its price", changes: [chuckSpeed, colletSpeed, closerSpeed] },
    {
      does: "ask the makers for what is not entered",
      costs: "a letter; until then the answer stays open",
      changes: [bearingSpeed, pulleySpeed],
    },
  ],
});

const holding = (...is: string[]) => [{ word: gripKind, is }];
export const gripDirection = wordInput({
  key: "workholding.grips",
  per: spindle,
  says: "where the jaws hold the work",
  words: ["outside", "inside"],
  typical: ["outside"],
  source: "usual; inside, speed adds grip",
  measure: "Look.",
});
const jaws = (is: string) => [...holding("chuck", "faceplate"), { word: gripDirection, is: [is] }];

/** Facing, grooving and parting run up to the cap as the diameter falls. */
export const gripSpeedRising = figure({
  id: "spindle.chuck.speed-rising",
  per: operation,
  symbol: "w",
  unit: "rad/s",
  says: "highest speed of a cut that runs towards the centre",
  formula: "w_cap",
  source: "at constant surface speed the spindle runs up to its cap",
  needs: { w_cap: cutCap },
  when: [{ word: operationKind, is: ["face", "groove", "part-off"] }],
  of: (x) => x.w_cap,
  signs: { w_cap: "+" },
});
const pull = { z_j: jawCount, m_j: jawMass, r_j: jawRadius, w: first(gripSpeedRising, cutSpeed) } as const;
const LOST = "z_j * m_j * r_j * w^2";
const turning = (x: { z_j: number; m_j: number; r_j: number; w: number }) => ({ z: x.z_j, m: x.m_j, r: x.r_j, w: x.w });
const ROTATING = "statics of a rotating mass; ISO 16156 (clause unchecked)";
export const gripLost = figure({
  id: "spindle.chuck.grip-lost",
  per: operation,
  symbol: "F_l",
  unit: "N",
  says: "pull of the turning jaws on themselves",
  formula: LOST,
  source: ROTATING,
  needs: pull,
  when: holding("chuck", "faceplate"),
  of: (x) => insideGrip({ F_0: 0, ...turning(x) }),
  signs: { z_j: "+", m_j: "+", r_j: "+", w: "+" },
});
export const gripOutside = figure({
  id: "spindle.chuck.grip-outside",
  per: operation,
  symbol: "F",
  unit: "N",
  says: "grip at speed of jaws that hold from outside",
  formula: `max(0, F_0 - ${LOST})`,
  source: ROTATING,
  needs: { F_0: gripForce, ...pull },
  when: jaws("outside"),
  of: (x) => outsideGrip({ F_0: x.F_0, ...turning(x) }),
  signs: { F_0: "+", z_j: "-", m_j: "-", r_j: "-", w: "-" },
});
export const gripInside = figure({
  id: "spindle.chuck.grip-inside",
  per: operation,
  symbol: "F",
  unit: "N",
  says: "grip at speed of jaws that hold a bore from inside",
  formula: `F_0 + ${LOST}`,
  source: ROTATING,
  needs: { F_0: gripForce, ...pull },
  when: jaws("inside"),
  of: (x) => insideGrip({ F_0: x.F_0, ...turning(x) }),
  signs: { F_0: "+", z_j: "+", m_j: "+", r_j: "+", w: "+" },
});
export const gripCollet = figure({
  id: "spindle.chuck.grip-collet",
  per: operation,
  symbol: "F",
  unit: "N",
  says: "grip of a collet, which hardly changes with speed",
  formula: "F_0",
  source: "the segments are light and sit at the work",
  needs: { F_0: gripForce },
  when: holding("collet"),
  of: (x) => x.F_0,
  signs: { F_0: "+" },
});
export const grip = figure({
  id: "spindle.chuck.grip",
  per: operation,
  symbol: "F_g",
  unit: "N",
  says: "grip on the work at the speed of the cut",
  formula: "F",
  source: "by what holds it",
  needs: { F: first(gripOutside, gripInside, gripCollet) },
  when: holding("collet", "chuck", "faceplate"),
  of: (x) => x.F,
  signs: { F: "+" },
});

const noThrust = known("no-thrust", { symbol: "F_a", value: 0, unit: "N", says: "a tap pulls itself along", source: "geometry" });
export const gripNeeded = figure({
  id: "spindle.chuck.grip-needed",
  per: operation,
  symbol: "F_n",
  unit: "N",
  says: "grip at which the work just slips under the cut, tool worn",
  formula: "hypot(2 * T / d, F_a) / mu_g",
  source: "friction at the jaws, turning and pushing added as vectors; textbook statics",
  needs: { T: cutTorque, d: first(stockSize, workDiameter), F_a: first(cutThrust, noThrust), mu_g: gripFriction },
  when: holding("collet", "chuck", "faceplate"),
  of: (x) => slipGrip({ T: x.T, d: x.d, F_a: x.F_a, mu: x.mu_g }),
  signs: { T: "+", d: "-", F_a: "+", mu_g: "-" },
});
export const gripShare = figure({
  id: "spindle.chuck.grip-share",
  per: operation,
  symbol: "k_g",
  unit: "1",
  kind: "ratio",
  says: "grip this cut needs as a share of the grip there is at its speed",
  formula: "F_n / F_g",
  source: "definition",
  needs: { F_n: gripNeeded, F_g: grip },
  when: holding("collet", "chuck", "faceplate"),
  of: (x) => (x.F_g > 0 ? x.F_n / x.F_g : Infinity),
  signs: { F_n: "+", F_g: "-" },
});
export const gripShares = slot({
  id: "spindle.grip-share",
  per: spindle,
  says: "most grip any cut needs, as a share of the grip there is at its speed",
  combine: "max",
  empty: "refuse",
  unit: "1",
  kind: "ratio",
});
export const gripOffer = offer(gripShares, gripShare);
export const gripHolds = check({
  id: "spindle.chuck.grip-holds",
  per: spindle,
  asks: "Is the work held firmly enough in every cut, at its speed?",
  demand: gripShares,
  capacity: known("all-grip", { symbol: "1", value: 1, unit: "1", kind: "ratio", says: "all the grip there is", source: "definition" }),
  H: 2,
  guards: "people",
  when: holding("collet", "chuck", "faceplate"),
  remedies: [
    { does: "a lower speed", costs: "cycle time", changes: [topSpeedWanted] },
    { does: "less feed or depth", costs: "cycle time", changes: [] },
    { does: "lighter jaws", costs: "their price", changes: [jawMass] },
    { does: "more closing force", costs: "thin walls deform; pull on the spindle bearings", changes: [gripForce] },
    { does: "serrated or bored jaws", costs: "marks on the work", changes: [gripFriction] },
  ],
});
