// What is written of the spindle itself: belts, inertia, friction, bearings, limits, wishes.
import { input, wordInput } from "../../kernel/figure.ts";
import { bearing, belt, spindle } from "../ground/index.ts";

export const motorPulley = input({
  key: "motor-pulley",
  per: belt,
  symbol: "d_m",
  unit: "m",
  says: "pitch diameter of the motor pulley",
  required: true,
  measure: "Caliper over the belt where it lies, isolated; or turn by hand and count turns of both.",
});
export const spindlePulley = input({
  key: "spindle-pulley",
  per: belt,
  symbol: "d_s",
  unit: "m",
  says: "pitch diameter of the spindle pulley",
  required: true,
  measure: "Caliper over the belt where it lies, isolated.",
});
export const beltKind = wordInput({
  key: "kind",
  per: belt,
  says: "kind of belt",
  words: ["v-belt", "toothed", "flat", "gears"],
  typical: ["v-belt"],
  source: "usual on machines of this age",
  measure: "Look, guard off, isolated.",
});
export const sectionAngle = input({
  key: "section-angle",
  per: belt,
  symbol: "beta",
  unit: "rad",
  says: "included angle of the groove",
  typical: { value: "36 to 38 deg", source: "V-belt pulleys of this size, trade tables, unchecked", unchecked: true },
  measure: "Angle gauge in the groove.",
});
export const beltCount = input({
  key: "count",
  per: belt,
  symbol: "z_b",
  unit: "1",
  kind: "count",
  says: "belts side by side",
  typical: { value: "1 to 3", source: "nobody has counted" },
  measure: "Count them.",
});
export const beltMass = input({
  key: "mass",
  per: belt,
  symbol: "m_1",
  unit: "kg/m",
  says: "mass of one belt per length",
  typical: { value: "0.08 to 0.2 kg/m", source: "V-belts 10 to 17 mm wide, trade tables, unchecked", unchecked: true },
  measure: "Weigh a spare and measure its length.",
});
export const centreDistance = input({
  key: "centre",
  per: belt,
  symbol: "c",
  unit: "m",
  says: "distance between the shafts",
  measure: "Tape, isolated.",
});
export const beltTension = wordInput({
  key: "tension",
  per: belt,
  says: "how the belt is kept tight",
  words: ["fixed", "sprung"],
  typical: ["fixed"],
  source: "motor on a slide, bolted down",
  measure: "Look for a spring or a hanging motor.",
});
export const strandTension = input({
  key: "strand-tension",
  per: belt,
  symbol: "T_0",
  unit: "N",
  says: "static tension of one strand of one belt",
  typical: { value: "100 to 300 N", source: "V-belts of this size as usually set, assumption", unchecked: true },
  measure: "Spring scale at mid span: deflection and force, or the pitch of the strand when tapped; isolated.",
});
export const beltFriction = input({
  key: "friction",
  per: belt,
  symbol: "mu",
  unit: "1",
  kind: "ratio",
  says: "friction of belt on pulley",
  typical: {
    value: "0.3 to 0.5",
    source: "rubber on cast iron; Shigley, Mechanical Engineering Design, ch. 17, unchecked",
    unchecked: true,
  },
  measure: "Not at home.",
});
export const beltEfficiency = input({
  key: "efficiency",
  per: belt,
  symbol: "eta_b",
  unit: "1",
  kind: "share",
  says: "efficiency of the belt",
  typical: { value: "93 to 97 %", source: "V-belts, practice; toothed 97 to 99 %, a gear mesh 98 %", unchecked: true },
  measure: "Not at home.",
});

export const spindleInertia = input({
  key: "inertia.spindle",
  per: spindle,
  symbol: "J_sp",
  unit: "kg*m2",
  says: "inertia of spindle and pulley",
  typical: {
    value: "0.01 to 0.05 kg*m2",
    source: "spindles of 25 to 50 mm bore with their pulley, engineering assumption",
    unchecked: true,
  },
  measure: "Coast-down and spin-up together, once it turns (step inertia).",
});
export const chuckInertia = input({
  key: "inertia.chuck",
  per: spindle,
  symbol: "J_ch",
  unit: "kg*m2",
  says: "inertia of chuck or collet nose, with work",
  typical: { value: "0.005 to 0.03 kg*m2", source: "collet noses and 125 to 160 mm chucks, engineering assumption", unchecked: true },
  measure: "Mass and diameter: half of mass times radius squared.",
});
export const frictionShare = input({
  key: "friction.share",
  per: spindle,
  symbol: "k_f",
  unit: "1",
  kind: "share",
  says: "friction of spindle and belt as a share of rated motor torque",
  typical: { value: "3 to 10 %", source: "engineering assumption", unchecked: true },
  measure: "Coast-down, or drive current of the unloaded spindle.",
});
export const topSpeedWanted = input({
  key: "highest-speed",
  per: spindle,
  symbol: "n_top",
  unit: "rad/s",
  says: "highest speed wanted",
  required: true,
  measure: "Your work decides: smallest diameter and surface speed.",
});
export const spinUpWanted = input({
  key: "wanted.spin-up",
  per: spindle,
  symbol: "t_su",
  unit: "s",
  says: "time allowed to reach highest speed",
  measure: "Your cycle decides.",
});
export const stopWanted = input({
  key: "wanted.stop",
  per: spindle,
  symbol: "t_st",
  unit: "s",
  says: "time allowed to stop from highest speed",
  measure: "Your cycle, and how long a guard keeps hands away.",
});
export const fullTorqueTo = input({
  key: "wanted.full-torque-to",
  per: spindle,
  symbol: "n_ft",
  unit: "rad/s",
  says: "spindle speed up to which full torque is wanted",
  measure: "Your heaviest cut decides.",
});

const limit = (part: string, symbol: string, says: string, measure: string) =>
  input({
    key: `allowed-speed.${part}`,
    per: spindle,
    symbol,
    unit: "rad/s",
    says: `speed allowed to ${says}`,
    required: true,
    none: true,
    measure,
  });
const makersPlate = "The maker's plate or papers; never guessed.";
export const colletSpeed = limit("collet", "n_co", "the collet", makersPlate);
export const closerSpeed = limit("closer", "n_cl", "the collet closer", makersPlate);
export const chuckSpeed = limit("chuck", "n_ch", "the chuck", makersPlate);
export const jawSpeed = limit("jaws", "n_j", "the jaws at their radius", makersPlate);
export const bearingSpeed = limit("bearings", "n_b", "the bearings", "Bearing mark and lubricant, from the bearing maker's list.");
export const motorSpeed = limit("motor", "n_m", "the motor", "Maker of the motor; balance and bearings decide.");
export const pulleySpeed = limit("pulley", "n_p", "the pulley", "Rim speed: plain cast iron 33 m/s unless marked (trade rule, unchecked).");

export const gripForce = input({
  key: "workholding.force",
  per: spindle,
  symbol: "F_0",
  unit: "N",
  says: "grip of all jaws together at standstill",
  none: true,
  measure: "Grip gauge between the jaws, spindle locked off.",
});
export const jawCount = input({
  key: "workholding.jaws",
  per: spindle,
  symbol: "z_j",
  unit: "1",
  kind: "count",
  says: "jaws",
  none: true,
  measure: "Count them.",
});
export const jawMass = input({
  key: "workholding.jaw-mass",
  per: spindle,
  symbol: "m_j",
  unit: "kg",
  says: "mass of one jaw, top and base",
  none: true,
  measure: "Scale.",
});
export const jawRadius = input({
  key: "workholding.jaw-radius",
  per: spindle,
  symbol: "r_j",
  unit: "m",
  says: "radius of the jaw's centre of mass",
  none: true,
  measure: "Balance it on an edge, add where it sits.",
});
export const gripFriction = input({
  key: "workholding.friction",
  per: spindle,
  symbol: "mu_g",
  unit: "1",
  kind: "ratio",
  says: "friction of jaws on work",
  typical: { value: "0.1 to 0.25", source: "smooth to serrated jaws, unchecked", unchecked: true },
  measure: "Pull a gripped bar with a scale, spindle locked off.",
});
export const gripKind = wordInput({
  key: "workholding.kind",
  per: spindle,
  says: "what holds the work",
  words: ["collet", "chuck", "faceplate", "tool-taper"],
  measure: "Look.",
});

export const meanDiameter = input({
  key: "mean-diameter",
  per: bearing,
  symbol: "d_M",
  unit: "m",
  says: "mean diameter of the bearing",
  required: true,
  measure: "Half of bore plus outside diameter, from the mark on the ring.",
});
export const bearingKind = wordInput({
  key: "kind",
  per: bearing,
  says: "kind of bearing",
  words: ["angular-contact", "angular-contact-pair", "taper-roller", "cylindrical-roller", "ball", "plain"],
  typical: ["angular-contact-pair", "taper-roller"],
  source: "usual in lathes of this size",
  measure: "Mark on the ring, or the spares list.",
});
export const lubricant = wordInput({
  key: "lubricant",
  per: bearing,
  says: "how it is lubricated",
  words: ["grease", "oil"],
  typical: ["grease"],
  source: "no oil lines to the spindle",
  measure: "Look for a sight glass or a line.",
});
export const bearingViscosity = input({
  key: "viscosity",
  per: bearing,
  symbol: "nu",
  unit: "m2/s",
  says: "viscosity of the lubricant at working temperature",
  typical: { value: "15 to 30 mm2/s", source: "base oil of spindle grease at 40 to 50 degC, assumption", unchecked: true },
  measure: "Data sheet of the grease.",
});
