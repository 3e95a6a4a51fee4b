// A run of conductor: its resistance, and the heat it stands in a fault.
import {
  absoluteZero,
  aluminiumResistivity,
  aluminiumTemperatureCoefficient,
  copperInverseCoefficient,
  copperResistivity,
  copperTemperatureCoefficient,
  copperVolumetricHeat,
} from "../../kernel/constants.ts";
import { check } from "../../kernel/check.ts";
import { figure, perhaps } from "../../kernel/figure.ts";
import { machine } from "../../kernel/item.ts";
import {
  finalTemperature,
  initialTemperature,
  letThrough,
  runLength,
  runMaterial,
  runReactance,
  runSize,
  runTemperature,
  sourceInductance,
  voltage,
} from "./inputs.ts";
import { lineFactor } from "./service.ts";
import { frequency, phases, sourceR } from "./source.ts";

/** What a conductor metal is, for resistance and for adiabatic heating. */
export interface ConductorMetal {
  /** Resistivity at 20 degC [ohm m]. */
  readonly rho_20: number;
  /** Temperature coefficient of resistance at 20 degC [1/K]. */
  readonly alpha: number;
  /** Heat capacity by volume at 20 degC [J/(m3 K)]. */
  readonly Q_c: number;
  /** Temperature at which the straight line of resistance meets zero [K]; beta = 273.15 K - T_z in the standards. */
  readonly T_z: number;
  readonly source: string;
}

const FROM_ANNEX = "IEC 60364-5-54 annex A for heat capacity and beta";

export const conductorMetals = {
  copper: {
    rho_20: copperResistivity.value,
    alpha: copperTemperatureCoefficient.value,
    Q_c: copperVolumetricHeat.value,
    T_z: absoluteZero.value - copperInverseCoefficient.value,
    source: `${copperResistivity.source}; ${FROM_ANNEX}`,
  },
  aluminium: {
    rho_20: aluminiumResistivity.value,
    alpha: aluminiumTemperatureCoefficient.value,
    Q_c: 2.5e6,
    T_z: absoluteZero.value - 228,
    source: `${aluminiumResistivity.source}; ${FROM_ANNEX}`,
  },
} as const satisfies Record<string, ConductorMetal>;

/** The temperature at which resistivities are stated, 20 degC [K]. IEC 60028. */
export const REFERENCE_TEMPERATURE = 293.15;

/** Reactance of a cable below 70 mm2 when nothing better is known, 0.08 mohm/m [ohm/m]. IEC 60364-5-52 annex G. */
export const TYPICAL_REACTANCE = 0.08e-3;

/**
 * Resistivity of a conductor at its temperature.
 *
 * rho [ohm m] = rho_20 (1 + alpha (T - 293.15 K)); rho_20 [ohm m] at 20 degC; alpha [1/K]; T [K] of the metal itself.
 * Source: IEC 60028. Valid from about -50 to 200 degC, where the line is straight.
 */
export function resistivity(x: { rho_20: number; alpha: number; T: number }): number {
  return x.rho_20 * (1 + x.alpha * (x.T - REFERENCE_TEMPERATURE));
}

/**
 * Resistance of a run.
 *
 * R [ohm] = b rho L / A; b [1] conductors the current passes one after the other: 2 for single phase (there and back),
 * 1 for each phase of three; rho [ohm m]; L [m] one way; A [m2]. Also serves control wiring. Source: IEC 60364-5-52 annex G.
 */
export function loopResistance(x: { b: number; rho: number; L: number; A: number }): number {
  return (x.b * x.rho * x.L) / x.A;
}

/**
 * Current that flows into a fault at the end of the run.
 *
 * I_k [A] = V / sqrt(R^2 + X^2); V [V] driving the loop (line to earth for an earth fault, line to line / sqrt 3 for three phases);
 * R, X [ohm] of source and run together: cold for the largest current, hot for the smallest. Source: the idea of IEC 60909,
 * without its voltage factors. No impedance: Infinity.
 */
export function faultCurrent(x: { V: number; R: number; X: number }): number {
  return x.V / Math.hypot(x.R, x.X);
}

/**
 * Adiabatic constant k of a conductor with its insulation.
 *
 * k [A s^0.5/m2] = sqrt(Q_c (293.15 K - T_z) / rho_20 ln((T_f - T_z)/(T_i - T_z))); Q_c [J/(m3 K)]; T_z [K]; rho_20 [ohm m]; T_i [K] before,
 * T_f [K] allowed after the fault. 1 A s^0.5/mm2 is 1e6 of these. Source: IEC 60364-5-54 annex A. Valid below 5 s, when no heat
 * leaves the metal.
 */
export function adiabaticConstant(x: { Q_c: number; T_z: number; rho_20: number; T_i: number; T_f: number }): number {
  const warming = Math.log((x.T_f - x.T_z) / (x.T_i - x.T_z));
  return Math.sqrt(((x.Q_c * (REFERENCE_TEMPERATURE - x.T_z)) / x.rho_20) * warming);
}

/**
 * Heat integral a conductor stands, to be set against the let-through of its protective device.
 *
 * J [A2 s] = (k A)^2; k [A s^0.5/m2]; A [m2]. Source: IEC 60364-4-43. Valid below 5 s.
 */
export function withstandIntegral(x: { k: number; A: number }): number {
  return (x.k * x.A) ** 2;
}

/**
 * Time a conductor stands a fault current.
 *
 * t [s] = (k A / I_k)^2; k [A s^0.5/m2]; A [m2]; I_k [A]. Source: IEC 60364-4-43. Valid below 5 s; without current: never, Infinity.
 */
export function withstandTime(x: { k: number; A: number; I_k: number }): number {
  return ((x.k * x.A) / x.I_k) ** 2;
}

export const resistivityOfRun = figure({
  id: "supply.resistivity",
  per: machine,
  symbol: "rho",
  unit: "ohm*m",
  says: "resistivity of the run at its temperature",
  method: "rho_20 (1 + alpha (T - 20 degC)) with rho_20 and alpha of the metal",
  source: "IEC 60028 for copper, IEC 60889 for aluminium",
  needs: { metal: runMaterial, T: runTemperature },
  of: (x) => resistivity({ ...conductorMetals[x.metal], T: x.T }),
});

export const supplyLoopResistance = figure({
  id: "supply.loop-resistance",
  per: machine,
  symbol: "R_l",
  unit: "ohm",
  kind: "small-resistance",
  says: "resistance of the run: there and back, or one line of three",
  formula: "if(n_ph >= 3, 1, 2) * rho * L / A",
  source: "IEC 60028; IEC 60364-5-52 annex G",
  needs: { n_ph: phases, rho: resistivityOfRun, L: runLength, A: runSize },
  of: (x) => loopResistance({ ...x, b: x.n_ph >= 3 ? 1 : 2 }),
  signs: { rho: "+", L: "+", A: "-" },
});

export const loopReactance = figure({
  id: "supply.loop-reactance",
  per: machine,
  symbol: "X_l",
  unit: "ohm",
  kind: "small-resistance",
  says: "reactance of the run",
  formula: "if(n_ph >= 3, 1, 2) * x * L",
  source: "IEC 60364-5-52 annex G",
  needs: { n_ph: phases, x: runReactance, L: runLength },
  of: (x) => (x.n_ph >= 3 ? 1 : 2) * x.x * x.L,
});

/** Source and run together; without a run entered the source stands for both. */
export const resistanceToMachine = figure({
  id: "supply.resistance-to-machine",
  per: machine,
  symbol: "R",
  unit: "ohm",
  kind: "small-resistance",
  says: "resistance of source and run together",
  method: "source resistance plus that of the run, where a run is entered",
  source: "series circuit",
  needs: { R_s: sourceR, R_l: perhaps(supplyLoopResistance) },
  of: (x) => x.R_s + (x.R_l ?? 0),
  signs: { R_s: "+", R_l: "+" },
});

export const inductanceToMachine = figure({
  id: "supply.inductance-to-machine",
  per: machine,
  symbol: "L_m",
  unit: "H",
  says: "inductance of source and run together",
  method: "source inductance plus the reactance of the run over 2 pi f, where a run is entered",
  source: "series circuit",
  needs: { L_s: sourceInductance, X_l: perhaps(loopReactance), f: frequency },
  of: (x) => x.L_s + (x.X_l ?? 0) / (2 * Math.PI * x.f),
  signs: { L_s: "+", X_l: "+", f: "-" },
});

export const supplyFaultCurrent = figure({
  id: "supply.fault-current",
  per: machine,
  symbol: "I_k",
  unit: "A",
  says: "current into a fault of all lines together at the machine, conductors hot",
  formula: "V / (if(n_ph >= 3, sqrt(3), 1) * sqrt(R^2 + (2 * pi * f * L_m)^2))",
  source:
    "the idea of IEC 60909, without its voltage factors: on three phases line to line over sqrt(3) drives one line; cold conductors give more",
  needs: { V: voltage, R: resistanceToMachine, f: frequency, L_m: inductanceToMachine, n_ph: phases },
  of: (x) => faultCurrent({ V: x.V / lineFactor(x.n_ph), R: x.R, X: 2 * Math.PI * x.f * x.L_m }),
});

export const conductorK = figure({
  id: "supply.conductor-k",
  per: machine,
  symbol: "k",
  unit: "A*s^0.5/m2",
  says: "what a conductor with its insulation stands for a moment",
  method: "sqrt(Q_c (beta + 20) / rho_20 ln((beta + T_f) / (beta + T_i))) with Q_c, beta and rho_20 of the metal",
  source: "IEC 60364-5-54 annex A; below 5 s, when no heat leaves the metal",
  needs: { metal: runMaterial, T_i: initialTemperature, T_f: finalTemperature },
  of: (x) => adiabaticConstant({ ...conductorMetals[x.metal], T_i: x.T_i, T_f: x.T_f }),
  valid: (x) => (x.T_f > x.T_i ? null : "the conductor may not be hotter before the fault than after it"),
});

export const conductorWithstand = figure({
  id: "supply.conductor-withstand",
  per: machine,
  symbol: "J_z",
  unit: "A2*s",
  says: "let-through the conductors of the run stand",
  formula: "(k * A)^2",
  source: "IEC 60364-4-43",
  needs: { k: conductorK, A: runSize },
  of: withstandIntegral,
});

export const conductorWithstandTime = figure({
  id: "supply.conductor-withstand-time",
  per: machine,
  symbol: "t_z",
  unit: "s",
  says: "time the conductors stand the fault current",
  formula: "(k * A / I_k)^2",
  source: "IEC 60364-4-43; below 5 s",
  needs: { k: conductorK, A: runSize, I_k: supplyFaultCurrent },
  of: withstandTime,
});

export const conductorFaultHeating = check({
  id: "supply.conductor-fault-heating",
  per: machine,
  asks: "Do the conductors of the run stand what the protective device lets through in a fault?",
  demand: letThrough,
  capacity: conductorWithstand,
  H: 1.1,
  remedies: [
    { does: "smaller protective device", costs: "trips earlier when motors start", changes: [letThrough] },
    { does: "thicker conductors", costs: "a new cable; less loss and drop as well", changes: [runSize] },
  ],
});
