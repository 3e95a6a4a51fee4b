// Turning, parting and threading: one edge at a diameter.
import { figure, first, via } from "../../kernel/figure.ts";
import { insertOfTool, operation, toolOfOperation } from "../ground/index.ts";
import { cutWidth, depth, edgeAngle, feed, firstCut, infeed, insertWidth, passes, toolWidth } from "./cut-inputs.ts";
import { edgeCorrection, grooving, threading, turning, workDiameter } from "./cut-work.ts";
import { groove, threadPass, turn } from "./cutting.ts";
import { kienzle, KIENZLE, lawNeeds } from "./kienzle.ts";

const kappa = via([toolOfOperation, insertOfTool], edgeAngle);
const whole = { ...lawNeeds, K: edgeCorrection, d: workDiameter } as const;
/** Torque asks for no speed: the physics is called at rest and its power left alone. */
const AT_REST = 0;

export const turnThickness = figure({
  id: "spindle.cut.turn-thickness",
  per: operation,
  symbol: "h",
  unit: "m",
  kind: "fine-length",
  says: "chip thickness in turning",
  formula: "f * sin(kappa)",
  source: "geometry; depth larger than the nose radius",
  needs: { f: feed, kappa },
  when: turning,
  of: (x) => x.f * Math.sin(x.kappa),
  signs: { f: "+" },
});

export const turnTorque = figure({
  id: "spindle.cut.turn-torque",
  per: operation,
  symbol: "T",
  unit: "N*m",
  says: "torque of turning, boring or facing, tool worn",
  formula: `${kienzle("f * sin(kappa)")} * a_p * f * d / 2`,
  source: `${KIENZLE}; depth larger than the nose radius, chips of 0.05 to 2 mm`,
  needs: { ...whole, f: feed, a_p: depth, kappa },
  when: turning,
  of: (x) => turn({ ...x, w: AT_REST }).T,
  signs: { K: "+", kc11: "+", f: "+", a_p: "+", d: "+" },
});

export const grooveThickness = figure({
  id: "spindle.cut.groove-thickness",
  per: operation,
  symbol: "h",
  unit: "m",
  kind: "fine-length",
  says: "chip thickness in grooving and parting",
  formula: "f",
  source: "the edge stands square to the feed",
  needs: { f: feed },
  when: grooving,
  of: (x) => x.f,
  signs: { f: "+" },
});

const blade = first(cutWidth, via(toolOfOperation, toolWidth), via([toolOfOperation, insertOfTool], insertWidth));

export const grooveTorque = figure({
  id: "spindle.cut.groove-torque",
  per: operation,
  symbol: "T",
  unit: "N*m",
  says: "torque of grooving or parting at the outside, where it is greatest, tool worn",
  formula: `${kienzle("f")} * b * f * d / 2`,
  source: `${KIENZLE}; edge square to the feed`,
  needs: { ...whole, f: feed, b: blade },
  when: grooving,
  of: (x) => groove({ ...x, w: AT_REST }).T,
  signs: { K: "+", kc11: "+", f: "+", b: "+", d: "+" },
});

/** The whole depth is the first pass times the root of their number; the last chip lies along one flank or both and is the thinnest. */
const lastPass = "60 deg profile, passes of equal area; the last one is the thinnest and asks the most";
export const threadThicknessFlank = figure({
  id: "spindle.cut.thread-thickness-flank",
  per: operation,
  symbol: "h",
  unit: "m",
  kind: "fine-length",
  says: "chip thickness of the last thread pass, fed along the flank",
  formula: "a_1 / (2 * sqrt(N))",
  source: lastPass,
  needs: { a_1: firstCut, N: passes },
  when: [...threading, { word: infeed, is: ["flank"] }],
  of: (x) => x.a_1 / (2 * Math.sqrt(x.N)),
  signs: { a_1: "+", N: "-" },
});
export const threadThicknessRadial = figure({
  id: "spindle.cut.thread-thickness-radial",
  per: operation,
  symbol: "h",
  unit: "m",
  kind: "fine-length",
  says: "chip thickness of the last thread pass, fed straight in",
  formula: "a_1 / (4 * sqrt(N))",
  source: lastPass,
  needs: { a_1: firstCut, N: passes },
  when: [...threading, { word: infeed, is: ["radial"] }],
  of: (x) => x.a_1 / (4 * Math.sqrt(x.N)),
  signs: { a_1: "+", N: "-" },
});
export const threadThickness = first(threadThicknessFlank, threadThicknessRadial);

export const threadTorque = figure({
  id: "spindle.cut.thread-torque",
  per: operation,
  symbol: "T",
  unit: "N*m",
  says: "torque of the heaviest pass of a single-point thread, tool worn",
  formula: `${kienzle("h")} * a_1^2 / sqrt(3) * d / 2`,
  source: `${KIENZLE}; 60 deg profile, passes of equal area a_1^2 / sqrt(3), tip of the tool taken as sharp`,
  needs: { ...whole, a_1: firstCut, h: threadThickness },
  when: threading,
  of: (x) => threadPass({ ...x, A: x.a_1 ** 2 / Math.sqrt(3), w: AT_REST }).T,
  signs: { K: "+", kc11: "+", h: "-", d: "+" },
});
