// What each operation asks of the spindle, whatever its kind: speed, chip, force, torque and power.
import { figure, first } from "../../kernel/figure.ts";
import { operation } from "../ground/index.ts";
import { drillForce, drillThickness, drillTorque, tapThickness, tapTorque } from "./cut-drill.ts";
import { givenSpeed, speedCap, surfaceSpeed, thrustShare } from "./cut-inputs.ts";
import { millPeakTorque, millThickness, millTorque } from "./cut-mill.ts";
import { grooveThickness, grooveTorque, threadThickness, threadTorque, turnThickness, turnTorque } from "./cut-turn.ts";
import { drillCorrection, edgeCorrection, edged, tapCorrection, toolCutDiameter, workDiameter } from "./cut-work.ts";
import { motorPower, specificForce, spindleSpeed } from "./cutting.ts";
import { kienzle, KIENZLE, lawNeeds } from "./kienzle.ts";
import { frictionSteady, topEfficiency } from "./mass.ts";
import { topSpeedWanted } from "./spindle-inputs.ts";

export { operationKind } from "./cut-inputs.ts";

export const cutCap = figure({
  id: "spindle.cut.cap",
  per: operation,
  symbol: "w_cap",
  unit: "rad/s",
  says: "speed the operation cannot pass",
  formula: "min(n_lim, n_top)",
  source: "limit of the program, highest speed wanted of the spindle",
  needs: { n_lim: speedCap, n_top: topSpeedWanted },
  of: (x) => Math.min(x.n_lim, x.n_top),
  signs: { n_lim: "+", n_top: "+" },
});

export const speedBySurface = figure({
  id: "spindle.cut.speed-by-surface",
  per: operation,
  symbol: "w",
  unit: "rad/s",
  says: "spindle speed that keeps the surface speed, as far as the cap lets it",
  formula: "min(2 * v_c / d, w_cap)",
  source: "geometry; at the centre the cap alone holds",
  needs: { v_c: surfaceSpeed, d: first(workDiameter, toolCutDiameter), w_cap: cutCap },
  of: (x) => spindleSpeed({ v_c: x.v_c, d: x.d, w_max: x.w_cap }),
  signs: { v_c: "+", d: "-", w_cap: "+" },
});

export const speedAsGiven = figure({
  id: "spindle.cut.speed-as-given",
  per: operation,
  symbol: "w",
  unit: "rad/s",
  says: "spindle speed as the operation gives it, as far as the cap lets it",
  formula: "min(n, w_cap)",
  source: "the operation",
  needs: { n: givenSpeed, w_cap: cutCap },
  of: (x) => Math.min(x.n, x.w_cap),
  signs: { n: "+", w_cap: "+" },
});

export const cutSpeed = figure({
  id: "spindle.cut.speed",
  per: operation,
  symbol: "w",
  unit: "rad/s",
  says: "spindle speed of the cut",
  formula: "n_c",
  source: "surface speed where one is written, else the speed given",
  needs: { n_c: first(speedBySurface, speedAsGiven) },
  of: (x) => x.n_c,
  signs: { n_c: "+" },
});

export const cutThickness = figure({
  id: "spindle.cut.thickness",
  per: operation,
  symbol: "h",
  unit: "m",
  kind: "fine-length",
  says: "chip thickness of the cut, mean in milling, thinnest in threading",
  formula: "h_k",
  source: "the kind of operation",
  needs: { h_k: first(turnThickness, grooveThickness, drillThickness, threadThickness, millThickness, tapThickness) },
  of: (x) => x.h_k,
  signs: { h_k: "+" },
});

export const cutSpecificForce = figure({
  id: "spindle.cut.specific-force",
  per: operation,
  symbol: "k_c",
  unit: "Pa",
  kind: "stress",
  says: "specific cutting force at that chip, tool worn",
  formula: kienzle("h"),
  source: `${KIENZLE}; chips of 0.05 to 2 mm, thinner ones are rubbed rather than cut`,
  needs: { ...lawNeeds, K: first(edgeCorrection, drillCorrection, tapCorrection), h: cutThickness },
  of: specificForce,
  signs: { K: "+", kc11: "+", h: "-" },
});

/** On the mean: power is this times speed, for milling too. */
const meanTorque = first(turnTorque, grooveTorque, drillTorque, tapTorque, threadTorque, millTorque);

/** What the spindle must give: with the tool worn, at the outside of a parting cut, at the worst angle of a milling cutter. */
export const cutTorque = figure({
  id: "spindle.cut.torque",
  per: operation,
  symbol: "T",
  unit: "N*m",
  says: "torque the cut asks of the spindle, tool worn, teeth at their worst",
  formula: "T_k",
  source: "the kind of operation",
  needs: { T_k: first(turnTorque, grooveTorque, drillTorque, tapTorque, threadTorque, millPeakTorque) },
  of: (x) => x.T_k,
  signs: { T_k: "+" },
});

export const cutPower = figure({
  id: "spindle.cut.power",
  per: operation,
  symbol: "P",
  unit: "W",
  says: "power at the cut, tool worn",
  formula: "T_m * w",
  source: "definition; mean torque in milling",
  needs: { T_m: meanTorque, w: cutSpeed },
  of: (x) => x.T_m * x.w,
  signs: { T_m: "+", w: "+" },
});

export const cutMotorPower = figure({
  id: "spindle.cut.motor-power",
  per: operation,
  symbol: "P_m",
  unit: "W",
  says: "power at the motor shaft for this cut, idle spindle included",
  formula: "P / eta_b + T_0 * w",
  source: "energy balance; belt of the fastest ratio",
  needs: { P: cutPower, eta_b: topEfficiency, T_0: frictionSteady, w: cutSpeed },
  of: (x) => motorPower({ P: x.P, eta_b: x.eta_b, eta_m: 1, P_idle: x.T_0 * x.w }),
  signs: { P: "+", eta_b: "-", T_0: "+", w: "+" },
});

export const edgeForce = figure({
  id: "spindle.cut.edge-force",
  per: operation,
  symbol: "F_c",
  unit: "N",
  says: "cutting force at the edge, mean in milling",
  formula: "2 * T / d",
  source: "lever of the force",
  needs: { T: first(turnTorque, grooveTorque, threadTorque, millTorque), d: first(workDiameter, toolCutDiameter) },
  when: edged,
  of: (x) => (2 * x.T) / x.d,
});

export const cutForce = figure({
  id: "spindle.cut.force",
  per: operation,
  symbol: "F_c",
  unit: "N",
  says: "cutting force",
  formula: "F",
  source: "the kind of operation; a tap has none outside itself",
  needs: { F: first(edgeForce, drillForce) },
  of: (x) => x.F,
  signs: { F: "+" },
});

export const cutThrust = figure({
  id: "spindle.cut.thrust",
  per: operation,
  symbol: "F_a",
  unit: "N",
  says: "force of the cut along the spindle",
  formula: "k_a * F_c",
  source: "share of the cutting force, handbook after Klocke, unchecked",
  needs: { k_a: thrustShare, F_c: cutForce },
  of: (x) => x.k_a * x.F_c,
  signs: { k_a: "+", F_c: "+" },
});
