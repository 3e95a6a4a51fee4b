// How long the bus of a drive stays dangerous after isolation.
import { figure, first, known } from "../../kernel/figure.ts";
import { drive } from "../ground/index.ts";
import { busCapacitance, crestEstimate } from "./drive-bus.ts";
import { busBleed, busTrip } from "./drive-inputs.ts";

const touchable = known("bus-limit", {
  symbol: "V_60",
  value: 60,
  unit: "V",
  says: "dc voltage below which a bus counts as empty",
  source: "IEC 61800-5-1, unchecked",
});
export const dischargeTime = figure({
  id: "spindle.drive.discharge-time",
  per: drive,
  symbol: "t_60",
  unit: "s",
  says: "time the bus takes to fall to 60 V through its own resistor, from the trip voltage; what counts is the meter at its terminals, never this number",
  formula: "R_b * C * ln(max(V, V_60) / V_60)",
  source: "discharge of a capacitor; a broken resistor leaves the charge for hours",
  needs: { R_b: busBleed, C: busCapacitance, V: first(busTrip, crestEstimate), V_60: touchable },
  of: (x) => x.R_b * x.C * Math.log(Math.max(x.V, x.V_60) / x.V_60),
  signs: { R_b: "+", C: "+", V: "+" },
});
