// The belt as drawn and as it grips: wrap, length, slip, what it brings to the spindle, where its constant power lies.
import { check, notice } from "../../kernel/check.ts";
import { figure, first, value } from "../../kernel/figure.ts";
import { belt, spindle } from "../ground/index.ts";
import { beltLength, beltWrap, slipTorqueFixed, slipTorqueSprung, spindleTorque as throughBelt } from "./belt.ts";
import { motorSpeedAtTop, topRatio } from "./mass.ts";
import { fullFluxSpeed } from "./motor.ts";
import { motorTopSpeed } from "./motor-inputs.ts";
import { ratedTorque } from "./motor-plate.ts";
import { ratio, ratios } from "./ratios.ts";
import { overloadTorque } from "./spin-up.ts";
import {
  beltCount,
  beltEfficiency,
  beltFriction,
  beltKind,
  beltMass,
  beltTension,
  centreDistance,
  frictionShare,
  motorPulley,
  motorSpeed,
  sectionAngle,
  spindlePulley,
  strandTension,
} from "./spindle-inputs.ts";

const SHIGLEY = "Shigley, Mechanical Engineering Design, ch. 17";
const looped = [{ word: beltKind, is: ["v-belt", "flat", "toothed"] }];
const gripping = (...tension: string[]) => [
  { word: beltKind, is: ["v-belt", "flat"] },
  { word: beltTension, is: tension },
];
const pulleys = { d_m: motorPulley, d_s: spindlePulley, c: centreDistance } as const;
const apart = (x: { d_m: number; d_s: number; c: number }): string | null =>
  2 * x.c > x.d_m + x.d_s ? null : "these pulleys would touch: is the distance that between the shafts?";

export const wrap = figure({
  id: "spindle.belt.wrap",
  per: belt,
  symbol: "theta",
  unit: "rad",
  says: "wrap on the smaller pulley",
  formula: "pi - 2 * asin(abs(d_s - d_m) / (2 * c))",
  source: `${SHIGLEY}, open belt`,
  needs: pulleys,
  when: looped,
  of: beltWrap,
  valid: apart,
  signs: { c: "+" },
});
export const length = figure({
  id: "spindle.belt.length",
  per: belt,
  symbol: "L",
  unit: "m",
  says: "pitch length of the belt",
  formula:
    "2 * sqrt(c^2 - ((d_s - d_m) / 2)^2) + min(d_m, d_s) / 2 * (pi - 2 * asin(abs(d_s - d_m) / (2 * c))) + max(d_m, d_s) / 2 * (pi + 2 * asin(abs(d_s - d_m) / (2 * c)))",
  source: `${SHIGLEY}, open belt, exact`,
  needs: pulleys,
  when: looped,
  of: beltLength,
  valid: apart,
  signs: { c: "+" },
});

export const vGroove = figure({
  id: "spindle.belt.v-groove",
  per: belt,
  symbol: "beta",
  unit: "rad",
  says: "included angle in which the belt wedges",
  formula: "beta_v",
  source: "the pulley",
  needs: { beta_v: sectionAngle },
  when: [{ word: beltKind, is: ["v-belt"] }],
  of: (x) => x.beta_v,
  signs: { beta_v: "+" },
});
export const flatFace = figure({
  id: "spindle.belt.flat-face",
  per: belt,
  symbol: "beta",
  unit: "rad",
  says: "included angle of a flat pulley: none to wedge in",
  formula: "pi",
  source: "definition",
  needs: {},
  when: [{ word: beltKind, is: ["flat"] }],
  of: () => Math.PI,
});

export const beltSpeed = figure({
  id: "spindle.belt.speed",
  per: belt,
  symbol: "v",
  unit: "m/s",
  kind: "flow-speed",
  says: "speed of the belt at the motor's base speed",
  formula: "w_b * d_m / 2",
  source: "definition",
  needs: { w_b: fullFluxSpeed, d_m: motorPulley },
  of: (x) => (x.w_b * x.d_m) / 2,
  signs: { w_b: "+", d_m: "+" },
});

export const beltOverBase = figure({
  id: "spindle.belt.over-base",
  per: belt,
  symbol: "k_v",
  unit: "1",
  kind: "ratio",
  says: "highest motor speed wanted as a multiple of its base speed, at least 1",
  formula: "max(1, w_m / w_b)",
  source: "definition",
  needs: { w_m: motorSpeedAtTop, w_b: fullFluxSpeed },
  of: (x) => Math.max(1, x.w_m / x.w_b),
  signs: { w_m: "+", w_b: "-" },
});
const gripNeeds = {
  T_0: strandTension,
  z_b: beltCount,
  m_1: beltMass,
  v: beltSpeed,
  k_v: beltOverBase,
  mu: beltFriction,
  theta: wrap,
  beta: first(vGroove, flatFace),
  d_m: motorPulley,
} as const;
const E = "exp(mu * theta / sin(beta / 2))";
const set = (x: { T_0: number; z_b: number; m_1: number; v: number; mu: number; theta: number; beta: number; d_m: number }) => ({
  T_0: x.z_b * x.T_0,
  m: x.z_b * x.m_1,
  v: x.v,
  mu: x.mu,
  theta: x.theta,
  beta: x.beta,
  d: x.d_m,
});
export const slipFixed = figure({
  id: "spindle.belt.slip-torque-fixed",
  per: belt,
  symbol: "T_sl",
  unit: "N*m",
  says: "motor torque below base speed at which the belt slips between fixed shafts, or would by the torque left at highest speed",
  formula: `z_b * min(max(0, T_0 - m_1 * v^2), k_v * max(0, T_0 - m_1 * (k_v * v)^2)) * d_m * (${E} - 1) / (${E} + 1)`,
  source: `${SHIGLEY}, with T_1 + T_2 = 2 T_0: the belt's own centrifugal pull eats grip; above base speed torque falls as 1/v, so the worse of both ends counts; the smaller pulley slips first`,
  needs: gripNeeds,
  when: gripping("fixed"),
  // Grip over torque, T_0 - m v^2 over 1/v, has its least at one end of the speeds above base.
  of: (x) => Math.min(slipTorqueFixed(set(x)), x.k_v * slipTorqueFixed(set({ ...x, v: x.k_v * x.v }))),
  signs: { T_0: "+", z_b: "+", m_1: "-", mu: "+", theta: "+" },
});
export const slipSprung = figure({
  id: "spindle.belt.slip-torque-sprung",
  per: belt,
  symbol: "T_sl",
  unit: "N*m",
  says: "motor torque at which the belt slips under a sprung tensioner",
  formula: `z_b * T_0 * d_m * (${E} - 1) / (${E} + 1)`,
  source: `${SHIGLEY}; the tensioner takes up the centrifugal pull, the smaller pulley slips first`,
  needs: { T_0: strandTension, z_b: beltCount, mu: beltFriction, theta: wrap, beta: gripNeeds.beta, d_m: motorPulley },
  when: gripping("sprung"),
  of: (x) => slipTorqueSprung(set({ ...x, m_1: 0, v: 0 })),
  signs: { T_0: "+", z_b: "+", mu: "+", theta: "+" },
});
export const slipTorque = figure({
  id: "spindle.belt.torque-at-slip",
  per: belt,
  symbol: "T_slip",
  unit: "N*m",
  says: "motor torque at which the belt slips",
  formula: "T_sl",
  source: "by the way it is kept tight",
  needs: { T_sl: first(slipFixed, slipSprung) },
  of: (x) => x.T_sl,
  signs: { T_sl: "+" },
});

export const beltHolds = check({
  id: "spindle.belt.grip-holds",
  per: belt,
  asks: "Does the belt carry the most torque the drive lets the motor give?",
  demand: overloadTorque,
  capacity: slipTorque,
  H: 1.3,
  remedies: [
    { does: "more tension", costs: "bearing load: check the temperature afterwards", changes: [strandTension] },
    { does: "another belt beside the others", costs: "pulleys with one groove more", changes: [beltCount] },
    {
      does: "a toothed belt",
      costs: "pulleys, noise; nothing slips, so a jam breaks something else",
      changes: [beltKind],
      lay: { kind: "toothed" },
    },
  ],
});

export const frictionAtBelt = figure({
  id: "spindle.belt.spindle-friction",
  per: belt,
  symbol: "T_f",
  unit: "N*m",
  says: "friction of the spindle on this ratio, the belt's own loss apart",
  formula: "i * T_n * max(0, k_f - (1 - eta_b))",
  source: "share of rated motor torque, engineering assumption",
  needs: { i: ratio, T_n: ratedTorque, k_f: frictionShare, eta_b: beltEfficiency },
  of: (x) => x.i * x.T_n * Math.max(0, x.k_f - (1 - x.eta_b)),
  signs: { i: "+", T_n: "+", k_f: "+" },
});
export const spindleTorque = figure({
  id: "spindle.torque",
  per: belt,
  symbol: "T_s",
  unit: "N*m",
  says: "torque at the spindle on this ratio, motor at its rated torque",
  formula: "eta_b * i * T_m - T_f",
  source: "energy balance",
  needs: { eta_b: beltEfficiency, i: ratio, T_m: ratedTorque, T_f: frictionAtBelt },
  of: throughBelt,
  signs: { eta_b: "+", T_m: "+", T_f: "-" },
});
export const ratioFullTorqueTo = figure({
  id: "spindle.belt.full-torque-to",
  per: belt,
  symbol: "n_b",
  unit: "rad/s",
  says: "spindle speed on this ratio up to which torque is full and above which power is",
  formula: "w_b / i",
  source: "ratio",
  needs: { w_b: fullFluxSpeed, i: ratio },
  of: (x) => x.w_b / x.i,
  signs: { w_b: "+", i: "-" },
});
const motorLimit = first(motorSpeed, motorTopSpeed);
export const beltTopSpeed = figure({
  id: "spindle.belt.top-speed",
  per: belt,
  symbol: "n_i",
  unit: "rad/s",
  says: "spindle speed on this ratio at the highest speed of the motor",
  formula: "n_m / i",
  source: "ratio",
  needs: { n_m: motorLimit, i: ratio },
  of: (x) => x.n_m / x.i,
  signs: { n_m: "+", i: "-" },
});

/** For the pair of lists and the notice on gaps. */
export const ranges = value({
  id: "spindle.ranges",
  per: spindle,
  says: "motor turns per spindle turn, one for each ratio, slowest spindle last",
  each: { unit: "1", kind: "ratio" },
  needs: { ratios },
  of: (x): readonly number[] => x.ratios.map((r) => r.value.i).toSorted((a, b) => a - b),
});
const rpm = (w: number): string => `${Math.round((w * 30) / Math.PI)} rpm`;
export const rangeGap = notice({
  id: "spindle.range-gap",
  per: spindle,
  severity: "note",
  needs: { ranges, w_b: fullFluxSpeed, n_m: motorLimit, i: topRatio },
  at: motorPulley,
  of: (x) => {
    const gaps = x.ranges.flatMap((slow, k) => {
      const fast = x.ranges[k - 1];
      return fast !== undefined && x.w_b / fast > x.n_m / slow ? [`${rpm(x.n_m / slow)} to ${rpm(x.w_b / fast)}`] : [];
    });
    return gaps.length === 0 ? null : `Between the ratios no one gives full power at ${gaps.join(" and ")} of the spindle.`;
  },
});
