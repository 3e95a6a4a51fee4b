// What a plate says at once: poles, slip, torque, and the rating of the winding as it is linked now.
import { check, notice } from "../../kernel/check.ts";
import { figure, known, perhaps } from "../../kernel/figure.ts";
import { motor } from "../ground/index.ts";
import { synchronousSpeed } from "./circuit.ts";
import {
  connected,
  induction,
  leads,
  motorKind,
  plateCurrent,
  plateFrequency,
  platePower,
  plateSpeed,
  plateVoltage,
  winding,
} from "./motor-inputs.ts";
import { readPlate } from "./plate.ts";
import { WINDINGS } from "./windings.ts";

export const poles = figure({
  id: "spindle.motor.poles",
  per: motor,
  symbol: "p",
  unit: "1",
  kind: "count",
  says: "poles of the motor",
  method: "the even count whose field turns just faster than the plate speed: 2 floor(2 pi f_n / n_n)",
  source: "definition of slip; an induction motor runs below its field",
  needs: { f_n: plateFrequency, n_n: plateSpeed },
  ...induction,
  of: (x) => 2 * Math.floor((2 * Math.PI * x.f_n) / x.n_n),
  valid: (x) => ((2 * Math.PI * x.f_n) / x.n_n >= 1 ? null : "plate speed above the field of a two-pole motor: is the frequency another?"),
});

export const fieldSpeed = figure({
  id: "spindle.motor.synchronous-speed",
  per: motor,
  symbol: "w_s",
  unit: "rad/s",
  says: "speed of the field at plate frequency",
  formula: "4 * pi * f_n / p",
  source: "definition",
  needs: { f_n: plateFrequency, p: poles },
  ...induction,
  of: (x) => synchronousSpeed(x.f_n, x.p),
});

export const plateSlip = figure({
  id: "spindle.motor.slip",
  per: motor,
  symbol: "s_n",
  unit: "1",
  kind: "share",
  says: "slip at plate load",
  formula: "1 - n_n / w_s",
  source: "definition",
  needs: { n_n: plateSpeed, w_s: fieldSpeed },
  ...induction,
  of: (x) => 1 - x.n_n / x.w_s,
});

export const ratedTorque = figure({
  id: "spindle.motor.rated-torque",
  per: motor,
  symbol: "T_n",
  unit: "N*m",
  says: "torque at plate load",
  formula: "P_n / n_n",
  source: "definition of power",
  needs: { P_n: platePower, n_n: plateSpeed },
  ...induction,
  of: (x) => x.P_n / x.n_n,
  signs: { P_n: "+", n_n: "-" },
});

export const plateProduct = figure({
  id: "spindle.motor.plate-product",
  per: motor,
  symbol: "x",
  unit: "1",
  kind: "ratio",
  says: "efficiency times power factor that the plate claims, the higher of its pairs",
  formula: "max(P_n / (sqrt(3) * V * I))",
  source: "definition of three-phase power",
  needs: { P_n: platePower, V: plateVoltage, I: plateCurrent },
  ...induction,
  of: (x) => Math.max(...x.V.map((V, k) => x.P_n / (Math.sqrt(3) * V * (x.I[k] ?? 0)))),
  valid: (x) => (x.V.length === x.I.length && x.V.length > 0 ? null : "each plate voltage has its own current, in one order"),
});

const believable = known("plate-product", {
  symbol: "x_max",
  value: 0.93,
  unit: "1",
  kind: "ratio",
  says: "highest efficiency times power factor of motors below 10 kW",
  source: "engineering judgement",
});

export const plateConsistent = check({
  id: "spindle.motor.plate-consistent",
  per: motor,
  asks: "Can the numbers on the plate belong together?",
  demand: plateProduct,
  capacity: believable,
  H: 1,
  when: induction.when,
  remedies: [{ does: "read volts and amperes of the plate again, as pairs", costs: "a photo", changes: [plateVoltage, plateCurrent] }],
});

/** What the plate's numbers say against each other, worded. */
export const plateContradiction = notice({
  id: "spindle.motor.plate-contradiction",
  per: motor,
  severity: "error",
  code: "plate-contradiction",
  needs: { P: platePower, V: plateVoltage, I: plateCurrent, f: plateFrequency, w: plateSpeed },
  when: induction.when,
  at: plateCurrent,
  of: (x) => {
    const read = readPlate(x);
    return "refused" in read && read.code !== "plate-slip" && read.code !== "plate-speed" ? read.refused : null;
  },
});
export const plateSpeedOdd = notice({
  id: "spindle.motor.plate-slip",
  per: motor,
  severity: "error",
  code: "plate-slip",
  needs: { P: platePower, V: plateVoltage, I: plateCurrent, f: plateFrequency, w: plateSpeed },
  when: induction.when,
  at: plateSpeed,
  of: (x) => {
    const read = readPlate(x);
    return "refused" in read && (read.code === "plate-slip" || read.code === "plate-speed") ? read.refused : null;
  },
});
export const plateDoubtful = notice({
  id: "spindle.motor.plate-doubtful",
  per: motor,
  severity: "warning",
  needs: { P: platePower, V: plateVoltage, I: plateCurrent, f: plateFrequency, w: plateSpeed },
  when: induction.when,
  at: platePower,
  of: (x) => {
    const read = readPlate(x);
    return "refused" in read ? null : (read.notes[0]?.says ?? null);
  },
});

/** Rated voltage of each connection as a share of the highest its winding can be linked for: same turns, same flux. */
const LINKED: Readonly<Record<string, number>> = Object.fromEntries(
  Object.values(WINDINGS).flatMap((w) => w.links.map((link) => [link.name, link.volts])),
);

/**
 * Rated voltage of a connection as a share of the higher voltage on the plate.
 *
 * A twelve-lead winding run in delta carries its series-delta voltage as the higher one; all others the star or series voltage.
 * Source: number of turns between two lines; NEMA MG 1 lead tables.
 */
export function linkFactor(x: { connected: string | null; winding: string }): number {
  if (x.connected === null) return 1;
  const twelveInDelta = x.winding === "delta" && x.connected.endsWith("-delta");
  return (LINKED[x.connected] ?? 1) / (twelveInDelta ? (LINKED["series-delta"] ?? 1) : 1);
}

export const referenceVoltage = figure({
  id: "spindle.motor.reference-voltage",
  per: motor,
  symbol: "V_ref",
  unit: "V",
  says: "higher voltage on the plate",
  formula: "max(V)",
  source: "plate",
  needs: { V: plateVoltage },
  ...induction,
  of: (x) => Math.max(...x.V),
});

export const linkShare = figure({
  id: "spindle.motor.link-factor",
  per: motor,
  symbol: "k",
  unit: "1",
  kind: "ratio",
  says: "rated voltage of the links as found, as a share of the plate's higher voltage",
  method: "star or series 1, parallel 1/2, delta 1/sqrt(3), and their products",
  source: "turns between two lines; NEMA MG 1 lead tables",
  needs: { V: plateVoltage, connected: perhaps(connected), winding, n_l: perhaps(leads) },
  ...induction,
  of: linkFactor,
  valid: (x) => {
    if (x.V.length > 1) {
      return x.connected !== null || x.n_l === 3 ? null : "two voltages on the plate: how the winding is connected now is not known";
    }
    return linkFactor(x) === 1
      ? null
      : "one voltage on the plate, and links for a lower one: which of the two it is that of is not known; write both, as 230/400 V, with both currents";
  },
});

export const ratedVoltage = figure({
  id: "spindle.motor.rated-voltage",
  per: motor,
  symbol: "V_n",
  unit: "V",
  says: "rated voltage of the winding as it is connected",
  formula: "k * V_ref",
  source: "same turns, same flux",
  needs: { k: linkShare, V_ref: referenceVoltage },
  ...induction,
  of: (x) => x.k * x.V_ref,
});

export const referenceCurrent = figure({
  id: "spindle.motor.reference-current",
  per: motor,
  symbol: "I_ref",
  unit: "A",
  says: "plate current at the plate's higher voltage",
  formula: "min(I)",
  source: "plate",
  needs: { I: plateCurrent },
  ...induction,
  of: (x) => Math.min(...x.I),
});

export const ratedCurrent = figure({
  id: "spindle.motor.rated-current",
  per: motor,
  symbol: "I_n",
  unit: "A",
  says: "plate current of the winding as it is connected",
  formula: "I_ref / k",
  source: "same turns, same ampere turns: power stays, current goes as one over voltage",
  needs: { I_ref: referenceCurrent, k: linkShare },
  ...induction,
  of: (x) => x.I_ref / x.k,
});

export const capacitorOnDrive = notice({
  id: "spindle.motor.capacitor-motor",
  per: motor,
  severity: "error",
  needs: { kind: motorKind },
  when: [{ word: motorKind, is: ["capacitor"] }],
  at: motorKind,
  of: () =>
    "A motor with a run or start capacitor must not be fed from a drive: the capacitor shorts its edges and both may burn. Another motor is wanted.",
});
