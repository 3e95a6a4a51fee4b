// A pump motor on another frequency: what the pump asks of it, and what flux its winding keeps.
import { check, notice } from "../../kernel/check.ts";
import { figure, first, input, known, perhaps } from "../../kernel/figure.ts";
import { pump } from "../ground/index.ts";
import { frequency, serviceKind, serviceKinds, voltageOffered } from "../supply/index.ts";
import { driveEfficiency } from "./drive-inputs.ts";
import { plateFrequency, platePhases, plateVoltage } from "./motor-inputs.ts";
import { affinity } from "./pump-motor.ts";
import { fluxShare } from "./voltage-laws.ts";

export const pumpFrequency = input({
  key: "frequency",
  per: pump,
  symbol: "f_2",
  unit: "1/s",
  kind: "frequency",
  says: "frequency the pump motor is run at",
  measure: "A parameter of its drive; on the line that of the line.",
});
const run = { f_1: plateFrequency, f_2: first(pumpFrequency, frequency) } as const;

export const pumpOverload = figure({
  id: "spindle.pump.power-ratio",
  per: pump,
  symbol: "k_P",
  unit: "1",
  kind: "ratio",
  says: "power the pump asks, as a multiple of that at plate frequency",
  formula: "(f_2 / f_1)^3",
  source: "affinity laws, Karassik, Pump Handbook; centrifugal, without static lift",
  needs: run,
  of: (x) => affinity(x).power,
  signs: { f_1: "-", f_2: "+" },
});

/** What a continuous-duty motor bears above its plate without being made for it; NEMA service factor of small motors, seen quoted. */
const servicePower = known("service-factor", {
  symbol: "k_s",
  value: 1.15,
  unit: "1",
  kind: "ratio",
  says: "power a small motor bears above its plate for hours",
  source: "usual service factor, seen quoted; none stands on IEC plates",
});
export const pumpHolds = check({
  id: "spindle.pump.overload-holds",
  per: pump,
  asks: "Does the pump motor bear the frequency it is run at?",
  demand: pumpOverload,
  capacity: servicePower,
  H: 1,
  remedies: [
    { does: "a small drive that gives the plate's frequency", costs: "its price; volts per hertz kept", changes: [pumpFrequency] },
    { does: "throttle the outlet of a centrifugal pump", costs: "less flow than it could give", changes: [] },
    { does: "trim the impeller", costs: "cannot be undone", changes: [] },
  ],
});

const percent = (x: number): string => `${Math.abs(Math.round(100 * x))} %`;
/** A change of flux that heat and torque shrug off. */
const SLIGHT = 0.1;

const misfit = ([plate, on]: readonly [number, number]): number => Math.abs(Math.log(on / plate));

export const pumpFlux = notice({
  id: "spindle.pump.flux",
  per: pump,
  severity: "warning",
  needs: {
    ...run,
    V_1: plateVoltage,
    V_line: voltageOffered,
    kind: serviceKind,
    phases: platePhases,
    behindDrive: perhaps(driveEfficiency),
  },
  at: plateFrequency,
  of: (x) => {
    // A drive keeps volts per hertz itself; below base frequency that is what it is for.
    if (x.behindDrive !== null || x.V_1.length === 0) return null;
    // A motor for one phase may stand between a line and the neutral; of all ways to connect it the one that fits its plate best is taken.
    const stood = x.phases === "1" ? [x.V_line, serviceKinds[x.kind].toNeutral * x.V_line] : [x.V_line];
    const [V_1, V_2] = x.V_1.flatMap((V) => stood.map((on) => [V, on] as const)).reduce((near, pair) =>
      misfit(pair) < misfit(near) ? pair : near,
    );
    const share = fluxShare(V_2, x.f_2, V_1, x.f_1);
    if (Math.abs(share - 1) <= SLIGHT) return null;
    const on = `${Math.round(V_1)} V ${Math.round(x.f_1)} Hz winding on ${Math.round(V_2)} V ${Math.round(x.f_2)} Hz`;
    const asks = x.f_2 > x.f_1 ? ` while the pump asks ${percent(affinity(x).power - 1)} more power` : "";
    return share < 1
      ? `${on}: flux ${percent(1 - share)} down, pull-out torque ${percent(1 - share * share)} down${asks}. Below 300 W the winding's own drop makes it worse.`
      : `${on}: flux ${percent(share - 1)} up; the iron saturates, the motor hums and runs hot even unloaded.`;
  },
});
