// What every cut shares: its kind, the diameter where its edge is, the corrections of the specific force.
import { figure, first, via } from "../../kernel/figure.ts";
import { insertOfTool, materialOfPart, operation, toolOfOperation } from "../ground/index.ts";
import { cutDiameter, drillFactor, operationKind, rake, stockSize, tableRake, toolDiameter, toolFactor, wear } from "./cut-inputs.ts";
import { rakeFactor } from "./cutting.ts";

const kinds = (...is: string[]) => [{ word: operationKind, is }];
export const turning = kinds("turn", "bore", "face");
export const grooving = kinds("groove", "part-off");
export const drilling = kinds("drill");
export const tapping = kinds("tap");
export const threading = kinds("thread");
export const milling = kinds("mill");
const turned = kinds("turn", "bore", "face", "groove", "part-off", "thread");
export const edged = kinds("turn", "bore", "face", "groove", "part-off", "thread", "mill");

export const workDiameter = figure({
  id: "spindle.cut.work-diameter",
  per: operation,
  symbol: "d",
  unit: "m",
  says: "diameter of the work where the edge is",
  formula: "d_w",
  source: "the operation, else the outside of the stock",
  needs: { d_w: first(cutDiameter, stockSize) },
  when: turned,
  of: (x) => x.d_w,
  signs: { d_w: "+" },
});
export const toolCutDiameter = figure({
  id: "spindle.cut.tool-diameter",
  per: operation,
  symbol: "D",
  unit: "m",
  says: "diameter of the tool that turns in the cut",
  formula: "D_t",
  source: "the operation, else the tool",
  needs: { D_t: first(cutDiameter, via(toolOfOperation, toolDiameter)) },
  when: kinds("drill", "tap", "mill"),
  of: (x) => x.D_t,
  signs: { D_t: "+" },
});

export const edgeRakeFactor = figure({
  id: "spindle.cut.rake-factor",
  per: operation,
  symbol: "K_g",
  unit: "1",
  kind: "ratio",
  says: "what the rake of the edge changes in the cutting force",
  formula: "1 - 0.015 * 180 / pi * (gamma - gamma_0)",
  source: "1.5 % a degree, handbook rule after Kienzle and Victor, unchecked; within about 15 deg of the table",
  needs: { gamma: via([toolOfOperation, insertOfTool], rake), gamma_0: via(materialOfPart, tableRake) },
  when: edged,
  of: rakeFactor,
});

export const edgeCorrection = figure({
  id: "spindle.cut.correction",
  per: operation,
  symbol: "K",
  unit: "1",
  kind: "ratio",
  says: "all corrections of the cutting force together, tool worn",
  formula: "K_w * K_t * K_g",
  source: "product of the handbook's corrections",
  needs: { K_w: wear, K_t: via(toolOfOperation, toolFactor), K_g: edgeRakeFactor },
  when: edged,
  of: (x) => x.K_w * x.K_t * x.K_g,
  signs: { K_w: "+", K_t: "+", K_g: "+" },
});

export const drillCorrection = figure({
  id: "spindle.cut.drill-correction",
  per: operation,
  symbol: "K",
  unit: "1",
  kind: "ratio",
  says: "all corrections of a drill's cutting force together, tool worn",
  formula: "K_w * K_t * K_d",
  source: "product of the handbook's corrections",
  needs: { K_w: wear, K_t: via(toolOfOperation, toolFactor), K_d: via(toolOfOperation, drillFactor) },
  when: drilling,
  of: (x) => x.K_w * x.K_t * x.K_d,
  signs: { K_w: "+", K_t: "+", K_d: "+" },
});

export const tapCorrection = figure({
  id: "spindle.cut.tap-correction",
  per: operation,
  symbol: "K",
  unit: "1",
  kind: "ratio",
  says: "corrections of a tap's cutting force, its friction apart, tool worn",
  formula: "K_w * K_t",
  source: "product of the handbook's corrections",
  needs: { K_w: wear, K_t: via(toolOfOperation, toolFactor) },
  when: tapping,
  of: (x) => x.K_w * x.K_t,
  signs: { K_w: "+", K_t: "+" },
});
