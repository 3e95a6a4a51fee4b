// The dip of the voltage at the instant a motor is switched straight onto the line.
import { check } from "../../kernel/check.ts";
import { figure, input } from "../../kernel/figure.ts";
import { shop } from "../../kernel/item.ts";
import { sourceReactance } from "./drop.ts";
import { dipLimit, voltage } from "./inputs.ts";
import { lineFactor } from "./service.ts";
import { starts } from "./slots.ts";
import { phases, sourceR } from "./source.ts";

/**
 * Share of the voltage that is missing while a direct-started motor stands still.
 *
 * dip [1] = 1 - |Z_m / (Z_m + R + jX)|, |Z_m| = V_LR / (g I_LR), g = 1 with one phase, sqrt 3 with three; I_LR [A] locked-rotor current at
 * V_LR [V] line to line; pf [1] of the locked rotor, 0.3 to 0.5; R, X [ohm] of source and run: the loop with one phase, one line with
 * three. A motor at rest is an impedance, so its current falls with the voltage; taking I_LR as fixed would exaggerate.
 * Source: voltage divider of phasors, as Chapman, Electric Machinery Fundamentals, treats starting.
 */
export function dipAtStart(x: { V_LR: number; I_LR: number; pf: number; R: number; X: number; phases: number }): number {
  if (x.I_LR === 0) return 0;
  const z = x.V_LR / (lineFactor(x.phases) * x.I_LR);
  const r = z * x.pf;
  const reactance = z * Math.sqrt(1 - x.pf * x.pf);
  return 1 - z / Math.hypot(r + x.R, reactance + x.X);
}

export const startPowerFactor = input({
  key: "supply.start-power-factor",
  per: shop,
  symbol: "pf_s",
  unit: "1",
  kind: "ratio",
  says: "power factor of a motor that stands still",
  typical: { value: "0.3 to 0.5", source: "locked rotors of small motors; Chapman, Electric Machinery Fundamentals" },
  measure: "The standstill test of the motor gives it.",
});

export const supplyDip = figure({
  id: "supply.dip-at-start",
  per: shop,
  symbol: "d",
  unit: "1",
  kind: "share",
  says: "dip at the panel when the largest motor is switched straight onto the line",
  method: "1 - |Z_m / (Z_m + R_s + j X_s)|; a motor at rest is an impedance V / (g I_LR), so its current falls with the voltage",
  source: "voltage divider of phasors; Chapman, Electric Machinery Fundamentals, on starting",
  needs: { V_LR: voltage, I_LR: starts, pf: startPowerFactor, R: sourceR, X: sourceReactance, phases },
  of: dipAtStart,
  signs: { I_LR: "+", R: "+", X: "+" },
});

export const dipCheck = check({
  id: "supply.dip-holds",
  per: shop,
  asks: "Does the light stay calm when the largest motor starts?",
  demand: supplyDip,
  capacity: dipLimit,
  H: 1.2,
  remedies: [
    { does: "a drive or soft starter for that motor", costs: "its price; some motors lose starting torque", changes: [] },
    { does: "a run of its own from the panel", costs: "helps only against drop in a shared run", changes: [] },
  ],
});
