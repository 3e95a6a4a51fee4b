// The way of a cut that runs towards the centre: speed rises to its cap, torque falls with the diameter.
import { perhaps, value } from "../../kernel/figure.ts";
import { operation } from "../ground/index.ts";
import { operationKind, surfaceSpeed } from "./cut-inputs.ts";
import { workDiameter } from "./cut-work.ts";
import { spindleSpeed } from "./cutting.ts";
import { cutCap, cutSpeed, cutTorque } from "./cuts.ts";

/** Points from the outside to the centre, for a picture. */
const POINTS = 12;

/** Spindle speeds [rad/s] and torques [N*m] from the outside inwards. */
export interface CutPath {
  readonly w: readonly number[];
  readonly T: readonly number[];
}

export const cutPath = value({
  id: "spindle.cut.path",
  per: operation,
  says: "speed and torque of a cut on its way from the outside to the centre",
  needs: { d: workDiameter, v_c: perhaps(surfaceSpeed), w: cutSpeed, w_cap: cutCap, T: cutTorque },
  when: [{ word: operationKind, is: ["face", "groove", "part-off"] }],
  of: (x): CutPath => {
    const left = Array.from({ length: POINTS + 1 }, (_, k) => 1 - k / POINTS);
    const { v_c } = x;
    return {
      w: left.map((u) => (v_c === null ? x.w : spindleSpeed({ v_c, d: u * x.d, w_max: x.w_cap }))),
      T: left.map((u) => u * x.T),
    };
  },
});
