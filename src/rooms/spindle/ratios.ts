// The ratios that can be set between motor and spindle.
import { figure, value } from "../../kernel/figure.ts";
import { listSlot, offer } from "../../kernel/slot.ts";
import { belt, spindle } from "../ground/index.ts";
import { beltRatio } from "./belt.ts";
import { beltEfficiency, motorPulley, spindlePulley } from "./spindle-inputs.ts";

export const ratio = figure({
  id: "spindle.belt.ratio",
  per: belt,
  symbol: "i",
  unit: "1",
  kind: "ratio",
  says: "motor turns per spindle turn",
  formula: "d_s / d_m",
  source: "definition",
  needs: { d_m: motorPulley, d_s: spindlePulley },
  of: beltRatio,
});

/** One way of turning the spindle: motor turns per spindle turn, efficiency. */
export interface Ratio {
  readonly i: number;
  readonly eta: number;
}
export const oneRatio = value({
  id: "spindle.belt.one-ratio",
  per: belt,
  says: "ratio and efficiency of this belt",
  needs: { i: ratio, eta: beltEfficiency },
  of: (x): Ratio => ({ i: x.i, eta: x.eta }),
});

/** Every ratio of a spindle; with none entered, what turns the spindle is not known. */
export const ratios = listSlot<Ratio>({
  id: "spindle.ratios",
  per: spindle,
  says: "ratios between motor and spindle",
  empty: "refuse",
  enter: {
    key: "belts",
    measure: "Caliper over both pulleys, isolated: pitch diameters of motor and spindle pulley; or turn by hand and count turns of both.",
  },
});
export const ratioOffer = offer(ratios, oneRatio);
