// How fast the spindle turns in a cut: by surface speed or as given, and never above its cap.
import { figure, first, via } from "../../kernel/figure.ts";
import { operation, toolOfOperation } from "../ground/index.ts";
import { cutDiameter, givenSpeed, speedCap, stockSize, surfaceSpeed, toolDiameter } from "./cut-inputs.ts";
import { spindleSpeed } from "./cutting.ts";
import { topSpeedWanted } from "./spindle-inputs.ts";

/** Where the edge is: as the operation says, else the tool's own diameter, else the outside of the stock. */
export const edgeDiameter = first(cutDiameter, via(toolOfOperation, toolDiameter), stockSize);

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
  needs: { v_c: surfaceSpeed, d: edgeDiameter, w_cap: cutCap },
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
