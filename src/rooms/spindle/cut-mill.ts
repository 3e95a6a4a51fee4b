// Milling: torque on the mean, and at the angle where most teeth pull together.
import { figure, via } from "../../kernel/figure.ts";
import { insertOfTool, operation, toolOfOperation } from "../ground/index.ts";
import { cutWidth, depth, edgeAngle, engagement, feedPerTooth, teeth } from "./cut-inputs.ts";
import { edgeCorrection, milling, toolCutDiameter } from "./cut-work.ts";
import { specificForce } from "./cutting.ts";
import { kienzle, KIENZLE, lawNeeds } from "./kienzle.ts";
import { centredMill, peripheralMill } from "./milling.ts";

const source = "Klocke, Fertigungsverfahren 1, milling; Tschaetsch, Applied Machining Technology";
const kappa = via([toolOfOperation, insertOfTool], edgeAngle);
const fits = (x: { a_e: number; D: number }): string | null => (x.a_e <= x.D ? null : "the cut is wider than the cutter");
const AT_REST = 0;

export const millArc = figure({
  id: "spindle.cut.mill-arc",
  per: operation,
  symbol: "phi",
  unit: "rad",
  says: "angle through which a tooth cuts",
  method: "cutter beside the work acos(1 - 2 a_e/D), centred over it 2 asin(a_e/D)",
  source,
  needs: { a_e: cutWidth, D: toolCutDiameter, engagement },
  when: milling,
  of: (x) => (x.engagement === "beside" ? Math.acos(1 - (2 * x.a_e) / x.D) : 2 * Math.asin(x.a_e / x.D)),
  valid: fits,
});

const MEAN = "f_z * sin(kappa) * 2 * a_e / (D * phi)";
const meanChip = (x: { f_z: number; kappa: number; a_e: number; D: number; phi: number }): number =>
  (x.f_z * Math.sin(x.kappa) * 2 * x.a_e) / (x.D * x.phi);

export const millThickness = figure({
  id: "spindle.cut.mill-thickness",
  per: operation,
  symbol: "h",
  unit: "m",
  kind: "fine-length",
  says: "mean chip thickness in milling",
  formula: MEAN,
  source,
  needs: { f_z: feedPerTooth, kappa, a_e: cutWidth, D: toolCutDiameter, phi: millArc },
  when: milling,
  of: meanChip,
  signs: { f_z: "+" },
});

export const millTorque = figure({
  id: "spindle.cut.mill-torque",
  per: operation,
  symbol: "T",
  unit: "N*m",
  says: "mean torque of milling, cutter worn",
  formula: `${kienzle(MEAN)} * a_p * a_e * f_z * z / (2 * pi)`,
  source: `${KIENZLE}; ${source}`,
  needs: {
    ...lawNeeds,
    K: edgeCorrection,
    f_z: feedPerTooth,
    kappa,
    a_p: depth,
    a_e: cutWidth,
    D: toolCutDiameter,
    z: via(toolOfOperation, teeth),
    phi: millArc,
  },
  when: milling,
  of: (x) => (specificForce({ ...x, h: meanChip(x) }) * x.a_p * x.a_e * x.f_z * x.z) / (2 * Math.PI),
  valid: fits,
  signs: { K: "+", kc11: "+", f_z: "+", a_p: "+", z: "+" },
});

export const millPeakTorque = figure({
  id: "spindle.cut.mill-peak-torque",
  per: operation,
  symbol: "T_p",
  unit: "N*m",
  says: "highest torque of milling as teeth come and go, cutter worn",
  method:
    "sum over the teeth in the cut of K kc11 h^(1 - m_c) b D/2 with h = f_z sin phi sin kappa, b = a_p/sin kappa, at 3600 angles a turn; straight teeth, a helix only smooths it",
  source: `${KIENZLE}; ${source}`,
  needs: {
    ...lawNeeds,
    K: edgeCorrection,
    f_z: feedPerTooth,
    kappa,
    a_p: depth,
    a_e: cutWidth,
    D: toolCutDiameter,
    z: via(toolOfOperation, teeth),
    engagement,
  },
  when: milling,
  of: (x) => (x.engagement === "beside" ? peripheralMill : centredMill)({ ...x, w: AT_REST }).T_peak,
  valid: fits,
  signs: { K: "+", kc11: "+", f_z: "+", a_p: "+" },
});
