// How well a circuit agrees with what was measured on the motor.
import { folded, slipAtCurrent } from "./circuit.ts";
import { lineResistance, noLoadReading, standstillReading } from "./motor-tests.ts";
import type { Candidate, Plate } from "./plate-prior.ts";
import type { Refusal } from "./refusal.ts";
import { fluxGuard, fluxShare } from "./voltage-laws.ts";

/** A reading and its standard uncertainty (half of a stated +/- with k = 2), same unit. */
export interface Measured {
  value: number;
  u: number;
}

/** What was measured; k [1] is the rated voltage of the links at the time over the voltage of the plate pair used. */
export interface Readings {
  /** Dc resistance between two lines [ohm] at winding temperature T [K]. */
  resistance?: { R: Measured; T: number; k: number };
  /** Uncoupled, line volts V [V] and f [Hz] as read, current [A] and power [W]. */
  noLoad?: { V: number; f: number; I: Measured; P: Measured | null; k: number };
  /** Single phase on two lines, rotor at rest. */
  standstill?: { V: number; f: number; I: Measured; P: Measured; k: number };
  /** Slip [1] by tachometer while line current I [A] flows at V [V], f [Hz]. */
  loaded?: { V: number; f: number; I: number; s: Measured; k: number };
}

/** Flux without load, as a share of rated, at which the magnetising reactance is still the rated one. */
const LEAST_FLUX = 0.85;
/** Standard uncertainties by which error alone does not explain a reading. */
const BEYOND_ERROR = 3;

/** A reading that cannot be weighed at all. */
export function unfitReading(plate: Plate, readings: Readings): Refusal | null {
  const { noLoad, standstill } = readings;
  if (noLoad !== undefined) {
    const flux = fluxShare(noLoad.V, noLoad.f, noLoad.k * plate.V, plate.f);
    if (fluxGuard(flux) !== null || flux < LEAST_FLUX) {
      const percent = Math.round(100 * flux);
      return {
        code: "no-load-flux",
        refused: `run without load at ${percent} % of rated volts per hertz: 85 to 110 % is wanted, or the iron is in another state`,
      };
    }
  }
  if (standstill !== undefined) {
    const { value, u } = squaredReactance(standstill);
    if (value + BEYOND_ERROR * u < 0) return { code: "standstill-power", refused: "standstill test: more watts than volts times amperes" };
    if (standstill.I.value * standstill.k > plate.I) {
      return {
        code: "standstill-current",
        refused: "standstill test above plate current: the leakage is then saturated and not the running one",
      };
    }
  }
  return null;
}

/**
 * By how many standard uncertainties each reading misses what circuit x would show; Infinity where it shows nothing of the kind.
 *
 * Readings are carried to the links of the plate pair: volts/k, amperes times k, ohms/k^2. Source: motor-tests.ts.
 */
export function misses(readings: Readings): (x: Candidate) => { name: keyof Readings; miss: number }[] {
  const { resistance, noLoad, standstill, loaded } = readings;
  const reactance = standstill === undefined ? null : squaredReactance(standstill);
  return (x) => {
    const found: { name: keyof Readings; miss: number }[] = [];
    const add = (name: keyof Readings, read: Measured, expected: number | undefined) =>
      found.push({ name, miss: expected === undefined ? Infinity : (read.value - expected) / read.u });
    if (resistance !== undefined) add("resistance", resistance.R, lineResistance(x.c.R_1, resistance.T, x.hot, x.skin) * resistance.k ** 2);
    if (noLoad !== undefined) {
      const shown = noLoadReading(x.c, noLoad.V / noLoad.k, noLoad.f, x.c.P_fw, x.c.w_fw);
      add("noLoad", noLoad.I, shown === null ? undefined : shown.I / noLoad.k);
      if (noLoad.P !== null) add("noLoad", noLoad.P, shown?.P);
    }
    if (standstill !== undefined && reactance !== null) {
      add("standstill", reactance, (standstillReading(x.c, standstill.V / standstill.k, standstill.f).X * standstill.k ** 2) ** 2);
    }
    if (loaded !== undefined) {
      add("loaded", loaded.s, slipAtCurrent(folded(x.c, loaded.f), loaded.V / loaded.k, loaded.I * loaded.k) ?? undefined);
    }
    return found;
  };
}

/**
 * Reactance squared of a standstill test, X^2 [ohm2] = (V/2I)^2 - (P/2I^2)^2, with its uncertainty.
 *
 * Squared, because errors of watts and amperes can make it negative where resistance outweighs reactance. The resistance itself is not
 * used: bars show more of it at rest than when running.
 */
function squaredReactance(x: { V: number; f: number; I: Measured; P: Measured }): Measured {
  const I = x.I.value;
  const Z_2 = (x.V / (2 * I)) ** 2;
  const R = x.P.value / (2 * I * I);
  const value = Z_2 - R * R;
  return { value, u: Math.hypot(((2 * (R * R - value)) / I) * x.I.u, (R / (I * I)) * x.P.u) };
}

/** What a refusal calls each reading. */
export const READING_NAMES: Readonly<Record<keyof Readings, string>> = {
  resistance: "the dc resistance",
  noLoad: "the run without load",
  standstill: "the standstill test",
  loaded: "the slip under load",
};
