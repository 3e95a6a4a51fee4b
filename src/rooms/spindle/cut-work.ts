// What every cut shares: the material of its part, and the corrections of the specific force.
import { figure, known, via } from "../../kernel/figure.ts";
import { insertOfTool, materialOfPart, operation, toolOfOperation } from "../ground/index.ts";
import { drillFactor, operationKind, rake, specificForceFall, specificForceMain, tableRake, toolFactor, wear } from "./cut-inputs.ts";
import { rakeFactor } from "./cutting.ts";

/** The chip thickness at which the main value of the specific force is stated; not exported from the room: it is a unit, not a finding. */
export const unitChip = known("unit-chip", {
  symbol: "h_1",
  value: 1e-3,
  unit: "m",
  says: "chip thickness at which the main value holds",
  source: "definition of the main value",
});

export const KIENZLE = "O. Kienzle, VDI-Z 94 (1952); Klocke, Fertigungsverfahren 1, ch. 3";

/** Kienzle's law as it stands in every formula, with the thickness written in. */
export const kienzle = (h: string): string => `K * kc11 * ((${h}) / h_1)^(-m_c)`;

/** The needs of that law but for the correction and the thickness. */
export const lawNeeds = { kc11: via(materialOfPart, specificForceMain), m_c: via(materialOfPart, specificForceFall), h_1: unitChip } as const;

const kinds = (...is: string[]) => [{ word: operationKind, is }];
export const turning = kinds("turn", "bore", "face");
export const grooving = kinds("groove", "part-off");
export const drilling = kinds("drill");
export const tapping = kinds("tap");
export const threading = kinds("thread");
export const milling = kinds("mill");
const edged = kinds("turn", "bore", "face", "groove", "part-off", "thread", "mill");

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
