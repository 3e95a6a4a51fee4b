// Drilling and tapping: tools that turn in their own hole.
import { figure, first, known, via } from "../../kernel/figure.ts";
import { operation, toolOfOperation } from "../ground/index.ts";
import { feed, formingFactor, hole, pitch, point, tapChip, tapFriction, toolKind } from "./cut-inputs.ts";
import { drillCorrection, drilling, tapCorrection, tapping, toolCutDiameter } from "./cut-work.ts";
import { drill, JAMMED_TAP_FACTOR, tap } from "./cutting.ts";
import { kienzle, KIENZLE, lawNeeds } from "./kienzle.ts";

const AT_REST = 0;
const tschaetsch = "Tschaetsch, Applied Machining Technology, drilling";

export const drillThickness = figure({
  id: "spindle.cut.drill-thickness",
  per: operation,
  symbol: "h",
  unit: "m",
  kind: "fine-length",
  says: "chip thickness of each lip of a drill",
  formula: "f / 2 * sin(sigma / 2)",
  source: tschaetsch,
  needs: { f: feed, sigma: via(toolOfOperation, point) },
  when: drilling,
  of: (x) => (x.f / 2) * Math.sin(x.sigma / 2),
  signs: { f: "+" },
});

const drillNeeds = {
  ...lawNeeds,
  K: drillCorrection,
  f: feed,
  sigma: via(toolOfOperation, point),
  D: toolCutDiameter,
  d_0: hole,
} as const;
const fits = (x: { d_0: number; D: number }): string | null => (x.d_0 < x.D ? null : "the hole is as large as the drill");

export const drillTorque = figure({
  id: "spindle.cut.drill-torque",
  per: operation,
  symbol: "T",
  unit: "N*m",
  says: "torque of drilling or opening a hole, drill worn",
  formula: `${kienzle("f / 2 * sin(sigma / 2)")} * f * (D^2 - d_0^2) / 8`,
  source: `${KIENZLE}; ${tschaetsch}`,
  needs: drillNeeds,
  when: drilling,
  of: (x) => drill({ ...x, w: AT_REST }).T,
  valid: fits,
  signs: { K: "+", kc11: "+", f: "+", D: "+", d_0: "-" },
});

export const drillForce = figure({
  id: "spindle.cut.drill-force",
  per: operation,
  symbol: "F_c",
  unit: "N",
  says: "cutting force of both lips of a drill",
  formula: `${kienzle("f / 2 * sin(sigma / 2)")} * f * (D - d_0) / 2`,
  source: `${KIENZLE}; ${tschaetsch}`,
  needs: drillNeeds,
  when: drilling,
  of: (x) => drill({ ...x, w: AT_REST }).F_c,
  valid: fits,
  signs: { K: "+", kc11: "+", f: "+", D: "+", d_0: "-" },
});

const cutting = known("cutting-tap", {
  symbol: "K_form",
  value: 1,
  unit: "1",
  kind: "ratio",
  says: "a tap that cuts, as torque is reckoned here",
  source: "definition",
});
export const formTap = figure({
  id: "spindle.cut.form-tap",
  per: operation,
  symbol: "K_form",
  unit: "1",
  kind: "ratio",
  says: "torque of a forming tap against a cutting one",
  formula: "k",
  source: "practice, unchecked",
  needs: { k: via(toolOfOperation, formingFactor) },
  when: [...tapping, { word: via(toolOfOperation, toolKind), is: ["form-tap"] }],
  of: (x) => x.k,
  signs: { k: "+" },
});

export const tapThickness = figure({
  id: "spindle.cut.tap-thickness",
  per: operation,
  symbol: "h",
  unit: "m",
  kind: "fine-length",
  says: "chip thickness of one tooth of a tap",
  formula: "h_t",
  source: "the tool",
  needs: { h_t: via(toolOfOperation, tapChip) },
  when: tapping,
  of: (x) => x.h_t,
  signs: { h_t: "+" },
});

export const tapTorque = figure({
  id: "spindle.cut.tap-torque",
  per: operation,
  symbol: "T",
  unit: "N*m",
  says: "torque of a running tap, worn",
  formula: `K_form * K_f * ${kienzle("h")} * 35 * sqrt(3) / 256 * p^2 * (D - 65 * sqrt(3) / 168 * p) / 2`,
  source: `profile of ISO 68-1 (5/8 H deep, 3/4 p to p/8 wide) and its centroid; ${KIENZLE}; friction of taps unchecked`,
  needs: {
    ...lawNeeds,
    K: tapCorrection,
    K_f: via(toolOfOperation, tapFriction),
    K_form: first(formTap, cutting),
    h: tapThickness,
    p: pitch,
    D: toolCutDiameter,
  },
  when: tapping,
  of: (x) => x.K_form * tap({ ...x, w: AT_REST }).T,
  valid: (x) => (x.D > x.p ? null : "a thread finer than its diameter is wanted"),
  signs: { K: "+", kc11: "+", K_f: "+", K_form: "+", h: "-", D: "+" },
});

export const tapJammed = figure({
  id: "spindle.cut.tap-jammed",
  per: operation,
  symbol: "T_j",
  unit: "N*m",
  says: "torque a jammed tap asks before it breaks loose or breaks",
  formula: `${JAMMED_TAP_FACTOR.value} * T`,
  source: `${JAMMED_TAP_FACTOR.source}; shown beside the running torque, in no check`,
  needs: { T: tapTorque },
  when: tapping,
  of: (x) => JAMMED_TAP_FACTOR.value * x.T,
  signs: { T: "+" },
});
