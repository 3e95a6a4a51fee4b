// Insulation of a winding before anything is connected to it.
import { notice } from "../../kernel/check.ts";
import { input } from "../../kernel/figure.ts";
import { motor } from "../ground/index.ts";

/** Least insulation of random-wound windings and those below 1 kV, at 40 degC [ohm]. IEEE 43, seen quoted. */
const LEAST = 5e6;

export const insulationResistance = input({
  key: "insulation-resistance",
  per: motor,
  symbol: "R_ins",
  unit: "ohm",
  kind: "insulation",
  says: "insulation of the winding, 500 V dc for a minute, at 40 degC",
  measure: "Step insulation: leads free, drive disconnected. Every 10 K colder reads about twice as much: halve it for each.",
});
export const insulationLow = notice({
  id: "spindle.motor.insulation-low",
  per: motor,
  severity: "error",
  needs: { R: insulationResistance },
  at: insulationResistance,
  of: (x) =>
    x.R < LEAST
      ? `${(x.R / 1e6).toPrecision(2)} Mohm to frame; 5 Mohm at 40 degC is the least for such windings (IEEE 43, seen quoted). Dry it with a 40 to 60 W lamp inside, or dc below a quarter of plate current, and read again; do not power it before.`
      : null,
});
