// The voltages of a drive's bus against each other: it gives up below, brakes above, and trips last.
import { notice } from "../../kernel/check.ts";
import { show } from "../../kernel/display.ts";
import { drive } from "../ground/index.ts";
import { busTrip, resistorOn, underVoltage } from "./drive-inputs.ts";

const volts = (V: number): string => show(V, "voltage", { units: "metric" }).text;

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
      : `the chopper switches on at ${volts(x.V_on)} and the drive trips at ${volts(x.V_trip)}: its resistor would never carry current. Swapped?`,
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
      : `the drive gives up below ${volts(x.V_uv)} and trips at ${volts(x.V_trip)}: no voltage is left at which it runs. Swapped?`,
});
