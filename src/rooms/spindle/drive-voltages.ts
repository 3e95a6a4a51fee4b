// The voltages of a drive's bus against each other: it gives up below, brakes above, and trips last.
import { notice } from "../../kernel/check.ts";
import { drive } from "../ground/index.ts";
import { busTrip, resistorOn, underVoltage } from "./drive-inputs.ts";

export const chopperAfterTrip = notice({
  id: "spindle.drive.chopper-after-trip",
  per: drive,
  severity: "error",
  code: "contradiction",
  needs: { V_on: resistorOn, V_trip: busTrip },
  at: resistorOn,
  of: (x) =>
    x.V_on < x.V_trip
      ? null
      : `the chopper switches on at ${x.V_on} V and the drive trips at ${x.V_trip} V: its resistor would never carry current. Swapped?`,
});

export const givesUpAboveTrip = notice({
  id: "spindle.drive.gives-up-above-trip",
  per: drive,
  severity: "error",
  code: "contradiction",
  needs: { V_uv: underVoltage, V_trip: busTrip },
  at: underVoltage,
  of: (x) =>
    x.V_uv < x.V_trip
      ? null
      : `the drive gives up below ${x.V_uv} V and trips at ${x.V_trip} V: no voltage is left at which it runs. Swapped?`,
});
