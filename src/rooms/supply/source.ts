// The service itself: what it may carry and what stands behind its terminals.
import { notice } from "../../kernel/check.ts";
import { show } from "../../kernel/display.ts";
import { figure, input } from "../../kernel/figure.ts";
import { shop } from "../../kernel/item.ts";
import { continuousShare, idleVoltage, loadedVoltage, rating, serviceKind, testCurrent, voltage } from "./inputs.ts";
import { lineFactor, serviceKinds } from "./service.ts";

/**
 * What the service may carry.
 *
 * S [VA] = u g V I; g = 1 for single and split phase, sqrt 3 for three; V [V] between lines; I [A] rating of the service; u [1] share that the
 * local code lets run for hours. Source: definition of apparent power.
 */
export function capacity(x: { V: number; I: number; u: number; phases: number }): number {
  return x.u * lineFactor(x.phases) * x.V * x.I;
}

/**
 * Resistance of the source from two readings at two known loads.
 *
 * R [ohm] = (V_0 - V_1)/(I_1 - I_0), divided by g (1 with one phase, sqrt 3 with three, where it is that of one line);
 * V_0, V_1 [V] between lines; I_0, I_1 [A] of a load like a heater. Source: Ohm's law. The reactance of a small service hardly
 * shows at unity power factor, so this is its resistance. Valid for I_1 > I_0 and V_1 < V_0.
 */
export function sourceResistance(x: { V_0: number; V_1: number; I_0: number; I_1: number; phases: number }): number {
  return (x.V_0 - x.V_1) / ((x.I_1 - x.I_0) * lineFactor(x.phases));
}

export const phases = figure({
  id: "supply.phases",
  per: shop,
  symbol: "n_ph",
  unit: "1",
  kind: "count",
  says: "phases a load of the shop can use",
  method: "single and split phase give one phase, the others three",
  source: "definition of the services",
  needs: { kind: serviceKind },
  of: (x) => serviceKinds[x.kind].phases,
});

export const supplyCapacity = figure({
  id: "supply.capacity",
  per: shop,
  symbol: "S_c",
  unit: "VA",
  says: "what the service may carry for hours",
  formula: "u * if(phases >= 3, sqrt(3), 1) * V * I",
  source: "definition of apparent power",
  needs: { V: voltage, I: rating, u: continuousShare, phases },
  of: capacity,
  signs: { V: "+", I: "+", u: "+" },
});

export const loadTestResistance = figure({
  id: "supply.load-test-resistance",
  per: shop,
  symbol: "R_t",
  unit: "ohm",
  kind: "small-resistance",
  says: "source resistance from the load test",
  formula: "(V_0 - V_1) / (I_1 * if(phases >= 3, sqrt(3), 1))",
  source: "Ohm's law; at unity power factor the reactance of a small service hardly shows",
  needs: { V_0: idleVoltage, V_1: loadedVoltage, I_1: testCurrent, phases },
  of: (x) => sourceResistance({ ...x, I_0: 0 }),
  valid: (x) => (x.I_1 > 0 && x.V_1 < x.V_0 ? null : "the loaded voltage must be below the idle one, with a load that draws current"),
});

/** A load can only lower the voltage: readings the other way round are swapped, or the mains moved between them. */
export const loadTestBackwards = notice({
  id: "supply.load-test-backwards",
  per: shop,
  severity: "error",
  code: "contradiction",
  needs: { V_0: idleVoltage, V_1: loadedVoltage },
  at: loadedVoltage,
  of: (x) =>
    x.V_1 < x.V_0
      ? null
      : `${show(x.V_1, "voltage", { units: "metric" }).text} with the test load is not below ${show(x.V_0, "voltage", { units: "metric" }).text} without it: swapped, or did the mains move between the readings?`,
});

/** Voltages that stand for 60 Hz where the kind of service does not say it [V]. */
const SIXTY_HERTZ = [110, 115, 120, 208, 240, 277, 480, 575, 600];
/** How far a reading may lie from such a nominal voltage [1]. */
const NEAR = 0.03;

export const usualFrequency = figure({
  id: "supply.usual-frequency",
  per: shop,
  symbol: "f_u",
  unit: "1/s",
  kind: "frequency",
  says: "frequency that goes with such a service",
  method: "60 Hz for split phase, high leg and corner earthed, and for nominal voltages of 60 Hz countries; else 50 Hz",
  source: "IEC 60038; ANSI C84.1 nominal voltages",
  needs: { kind: serviceKind, V: voltage },
  of: (x) => {
    const american = x.kind === "split-phase" || x.kind === "three-phase-high-leg" || x.kind === "three-phase-corner-earthed";
    return american || SIXTY_HERTZ.some((n) => Math.abs(x.V / n - 1) < NEAR) ? 60 : 50;
  },
});

export const frequency = input({
  key: "supply.frequency",
  per: shop,
  symbol: "f",
  unit: "1/s",
  kind: "frequency",
  says: "frequency of the supply",
  typical: { of: usualFrequency, source: "kind and voltage of the service (IEC 60038; ANSI C84.1)" },
  measure: "On every plate of the house.",
});

export const sourceR = input({
  key: "supply.source.resistance",
  per: shop,
  symbol: "R_s",
  unit: "ohm",
  kind: "small-resistance",
  says: "resistance of the source, at the panel",
  typical: {
    of: loadTestResistance,
    value: "0.15 to 0.6 ohm",
    source: "two voltages at two loads where written, else an engineering assumption",
    unchecked: true,
  },
  measure: "Two voltages at the panel at two known loads, a big heater for the second: (V_0 - V_1) / (I_1 - I_0). Write them as load-test.",
});
