// The voltage a run eats under load, and the current a load draws at what is left.
import { check } from "../../kernel/check.ts";
import { contract } from "../../kernel/contract.ts";
import { figure, perhaps } from "../../kernel/figure.ts";
import { machine, shop } from "../../kernel/item.ts";
import { loopReactance, resistanceToMachine, supplyLoopResistance } from "./conductor.ts";
import {
  ampacity,
  continuousShare,
  dropLimit,
  existing,
  othersDrop,
  powerFactor,
  protection,
  rating,
  runLength,
  runSize,
  sourceInductance,
  voltage,
} from "./inputs.ts";
import { lineFactor } from "./service.ts";
import { draws, ownDrive, shopDraws } from "./slots.ts";
import { frequency, phases, sourceR } from "./source.ts";

/**
 * Voltage left at a load that takes its power whatever the voltage is, as drives do.
 *
 * U [V] = larger root of U^4 + (2 (P R + Q X) - V^2) U^2 + (P^2 + Q^2)(R^2 + X^2) = 0; V [V] at the source; P [W], Q [var] of the
 * load; R, X [ohm] of the loop (single phase) or of one line (three phase, where V and U are line to line and P, Q are for all
 * three). No real root: no voltage can carry the power, the supply collapses, U = 0.
 * Source: the phasor equation V = U + (R + jX)(P - jQ)/U, squared. Valid for sine waves, P >= 0, Q >= 0.
 */
export function voltageAtLoad(x: { V: number; P: number; Q: number; R: number; X: number }): number {
  const half = (x.V * x.V) / 2 - (x.P * x.R + x.Q * x.X);
  const discriminant = half * half - (x.P * x.P + x.Q * x.Q) * (x.R * x.R + x.X * x.X);
  if (half <= 0 || discriminant < 0) return 0;
  return Math.sqrt(half + Math.sqrt(discriminant));
}

/**
 * Voltage left at a load that draws a known current.
 *
 * U [V] = sqrt(V^2 - (g I (X cos - R sin))^2) - g I (R cos + X sin); g = 1 with one phase, sqrt 3 with three; V [V] at the source,
 * line to line; I [A]; pf [1] lagging, as seen at the load; R, X [ohm] of the loop or of one line. When the current is more
 * than the source can push through, U = 0. Source: the phasor equation V = U + g I (R + jX)(cos - j sin).
 */
export function voltageAtCurrent(x: { V: number; I: number; pf: number; R: number; X: number; phases: number }): number {
  const drive = lineFactor(x.phases) * x.I;
  const sine = Math.sqrt(1 - x.pf * x.pf);
  const across = drive * (x.X * x.pf - x.R * sine);
  if (Math.abs(across) > x.V) return 0;
  return Math.max(0, Math.sqrt(x.V * x.V - across * across) - drive * (x.R * x.pf + x.X * sine));
}

/**
 * Drop by the short form that installers use, shown beside the exact one.
 *
 * dU [V] = g I (R pf + X sqrt(1 - pf^2)); g = 1 with one phase, sqrt 3 with three; I [A]; pf [1] lagging; R, X [ohm] of the loop or
 * of one line. Source: IEC 60364-5-52 annex G. Valid while the drop is a few percent: it leaves out the turning of the phasor.
 */
export function shortDrop(x: { I: number; pf: number; R: number; X: number; phases: number }): number {
  return lineFactor(x.phases) * x.I * (x.R * x.pf + x.X * Math.sqrt(1 - x.pf * x.pf));
}

/**
 * Current of a load at the voltage it really gets.
 *
 * I [A] = S / (g U); g = 1 with one phase, sqrt 3 with three; S [VA] of the load; U [V] line to line at the load. At U = 0 a load that wants
 * power asks for current without end: Infinity. Source: definition of apparent power.
 */
export function currentAtLoad(x: { S: number; U: number; phases: number }): number {
  if (x.S === 0) return 0;
  return x.S / (lineFactor(x.phases) * x.U);
}

/** The exact drop in one line: 0 where the supply collapses. */
const LEFT =
  "if((V^2 / 2 - S * (pf * R + sqrt(1 - pf^2) * X))^2 < S^2 * (R^2 + X^2), 0, if(V^2 / 2 < S * (pf * R + sqrt(1 - pf^2) * X), 0, " +
  "sqrt(V^2 / 2 - S * (pf * R + sqrt(1 - pf^2) * X) + sqrt((V^2 / 2 - S * (pf * R + sqrt(1 - pf^2) * X))^2 - S^2 * (R^2 + X^2)))))";
const left = (x: { V: number; S: number; pf: number; R: number; X: number }): number =>
  voltageAtLoad({ V: x.V, P: x.S * x.pf, Q: x.S * Math.sqrt(1 - x.pf * x.pf), R: x.R, X: x.X });
const DERIVED = "phasor equation of a constant-power load, squared; no real root means that the supply collapses";

export const sourceReactance = figure({
  id: "supply.source-reactance",
  per: shop,
  symbol: "X_s",
  unit: "ohm",
  kind: "small-resistance",
  says: "reactance of the source",
  formula: "2 * pi * f * L_s",
  source: "definition",
  needs: { f: frequency, L_s: sourceInductance },
  of: (x) => 2 * Math.PI * x.f * x.L_s,
});

export const voltageAtPanel = figure({
  id: "supply.voltage-at-panel",
  per: shop,
  symbol: "U_p",
  unit: "V",
  says: "voltage at the panel with everything running",
  formula: LEFT,
  source: DERIVED,
  needs: { V: voltage, S: shopDraws, pf: powerFactor, R: sourceR, X: sourceReactance },
  of: left,
  signs: { V: "+", S: "-", R: "-", X: "-" },
});

export const supplyCurrent = figure({
  id: "supply.current",
  per: shop,
  symbol: "I",
  unit: "A",
  says: "current of the shop with everything running, at the voltage that is then left",
  formula: "S / (if(n_ph >= 3, sqrt(3), 1) * U)",
  source: "definition of apparent power; sums of currents of unlike shape are at most this",
  needs: { S: shopDraws, U: voltageAtPanel, n_ph: phases },
  of: (x) => currentAtLoad({ S: x.S, U: x.U, phases: x.n_ph }),
  signs: { S: "+", U: "-" },
});

export const currentLeft = figure({
  id: "supply.current-left",
  per: shop,
  symbol: "I_left",
  unit: "A",
  says: "current the service has left for the shop, house running",
  formula: "u * I_r - I_ex",
  source: "definition; the local code says how much of the rating may run for hours",
  needs: { u: continuousShare, I_r: rating, I_ex: existing },
  of: (x) => x.u * x.I_r - x.I_ex,
  signs: { u: "+", I_r: "+", I_ex: "-" },
});

const lessDraw = [
  { does: "stagger the starts by an interlock in the sequences", costs: "a few seconds a cycle", changes: [] },
  { does: "a choke before the spindle drive", costs: "current 15 to 25 % less, bus valley 11 to 26 V lower", changes: [] },
  { does: "a slower spindle ramp", costs: "longer spin-up", changes: [] },
  { does: "a smaller compressor motor", costs: "less air", changes: [] },
];

export const supplyCurrentCheck = check({
  id: "supply.current-holds",
  per: shop,
  asks: "Does the service carry everything at once, with the house on it?",
  demand: supplyCurrent,
  capacity: currentLeft,
  H: 1.15,
  remedies: [...lessDraw, { does: "a bigger service", costs: "licensed practice and the distributor", changes: [rating] }],
});

export const runDrop = figure({
  id: "supply.drop",
  per: machine,
  symbol: "dU",
  unit: "V",
  says: "drop in the run, everything on the machine at its most",
  formula: `V - ${LEFT}`,
  source: DERIVED,
  needs: { V: voltageAtPanel, S: draws, pf: powerFactor, R: supplyLoopResistance, X: loopReactance },
  of: (x) => x.V - left(x),
  signs: { V: "-", S: "+", pf: "+", R: "+", X: "+" },
});

export const runCurrent = figure({
  id: "supply.run-current",
  per: machine,
  symbol: "I_run",
  unit: "A",
  says: "current in the run, everything on the machine at its most",
  formula: "S / (if(n_ph >= 3, sqrt(3), 1) * (V - dU))",
  source: "definition of apparent power",
  needs: { S: draws, V: voltageAtPanel, dU: runDrop, n_ph: phases },
  of: (x) => currentAtLoad({ S: x.S, U: x.V - x.dU, phases: x.n_ph }),
  signs: { S: "+", V: "-", dU: "+" },
});

export const shortFormDrop = figure({
  id: "supply.drop-short-form",
  per: machine,
  symbol: "dU_s",
  unit: "V",
  says: "drop in the run by the short form installers use",
  formula: "if(n_ph >= 3, sqrt(3), 1) * I * (R * pf + X * sqrt(1 - pf^2))",
  source: "IEC 60364-5-52 annex G; leaves out the turning of the phasor",
  needs: { I: runCurrent, pf: powerFactor, R: supplyLoopResistance, X: loopReactance, n_ph: phases },
  of: (x) => shortDrop({ ...x, phases: x.n_ph }),
});

export const runCurrentCheck = check({
  id: "supply.run-carries",
  per: machine,
  asks: "Does the run carry everything on the machine at once?",
  demand: runCurrent,
  capacity: ampacity,
  H: 1.15,
  remedies: [
    ...lessDraw,
    { does: "a thicker run", costs: "a new cable and its device, by licensed practice", changes: [runSize, ampacity] },
  ],
});

export const protectionCheck = check({
  id: "supply.protection-fits",
  per: machine,
  asks: "Does the protective device keep the run within what the local code allows it?",
  demand: protection,
  capacity: ampacity,
  H: 1,
  remedies: [
    { does: "a smaller protective device", costs: "trips earlier", changes: [protection] },
    { does: "a thicker run", costs: "a new cable, by licensed practice", changes: [runSize, ampacity] },
  ],
});

/** The window every drive reckons with, so that what drives draw never comes back to what they are given. */
export const voltageWindow = contract({
  id: "supply.voltage-window",
  per: machine,
  says: "a voltage at the machine no lower than the low end of the supply less the drop allowed to the other loads",
});

export const voltageOffered = figure({
  id: "supply.voltage-offered",
  per: machine,
  symbol: "V_m",
  unit: "V",
  says: "voltage a drive on this machine finds before it draws anything",
  formula: "V * (1 - d_lim * s)",
  source: "own: a window that the check on the voltage at the machine guards",
  needs: { V: voltage, d_lim: dropLimit, s: othersDrop },
  of: (x) => x.V * (1 - x.d_lim * x.s),
  assumes: [voltageWindow],
  signs: { V: "+", d_lim: "-", s: "-" },
});

export const voltageAtMachine = figure({
  id: "supply.voltage-at-machine",
  per: machine,
  symbol: "U_m",
  unit: "V",
  says: "voltage at the machine with all other loads running, before its main drive draws",
  method: "exact drop of everything but the main drive: first in the source, then, for what hangs on the machine, in the run",
  source: DERIVED,
  needs: {
    V: voltage,
    S: shopDraws,
    S_m: draws,
    S_d: ownDrive,
    pf: powerFactor,
    R_s: sourceR,
    X_s: sourceReactance,
    R: resistanceToMachine,
    X_l: perhaps(loopReactance),
  },
  of: (x) => {
    const panel = left({ V: x.V, S: Math.max(0, x.S - x.S_d), pf: x.pf, R: x.R_s, X: x.X_s });
    return left({ V: panel, S: Math.max(0, x.S_m - x.S_d), pf: x.pf, R: x.R - x.R_s, X: x.X_l ?? 0 });
  },
  signs: { V: "+", S: "-", S_m: "-", S_d: "+" },
});

export const lowEndOfWindow = figure({
  id: "supply.low-end",
  per: machine,
  symbol: "V_low",
  unit: "V",
  says: "lowest voltage the window allows for this voltage of the supply",
  formula: "V * (1 - d_lim)",
  source: "the window itself",
  needs: { V: voltage, d_lim: dropLimit },
  of: (x) => x.V * (1 - x.d_lim),
});

export const voltageAtMachineCheck = check({
  id: "supply.voltage-at-machine-held",
  per: machine,
  asks: "Do the other loads leave the machine the voltage its drives are reckoned with?",
  demand: lowEndOfWindow,
  capacity: voltageAtMachine,
  H: 1.03,
  guarantees: voltageWindow,
  remedies: [
    { does: "a thicker run", costs: "a new cable", changes: [runSize] },
    { does: "a shorter run", costs: "moves the machine or the panel", changes: [runLength] },
    { does: "move the compressor to another circuit", costs: "a new run", changes: [] },
    { does: "allow more drop", costs: "every drive is then reckoned with less voltage", changes: [dropLimit] },
  ],
});
