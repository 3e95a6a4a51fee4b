// What the spindle and the small motors draw from the line, offered to the supply.
import { figure, first, input, perhaps } from "../../kernel/figure.ts";
import { offer, slot } from "../../kernel/slot.ts";
import { compressor, motor, pump, spindle } from "../ground/index.ts";
import { draws, eachDraw, eachShare, lineFactor, ownDrive, peaks, phases, shopDraws, starts, voltageOffered } from "../supply/index.ts";
import { fedPhases, feedVoltage, lineCurrentAt, USUAL_FACTOR } from "./drive-bus.ts";
import { driveEfficiency, rampUp } from "./drive-inputs.ts";
import { frictionAtMotor, motorSpeedAtTop, referredInertia } from "./mass.ts";
import { fullFluxSpeed } from "./motor.ts";
import { overloadTorque } from "./spin-up.ts";
import { plateCircuit } from "./motor-circuit.ts";
import { armatureCurrent, formFactor } from "./motor-dc.ts";
import { motorKind, motorTopSpeed, plateCurrent, platePhases, platePower, plateVoltage } from "./motor-inputs.ts";
import { servoLoad } from "./motor-servo.ts";
import { cutBusPower } from "./reach.ts";

export const busPowers = slot({
  id: "spindle.bus-powers",
  per: spindle,
  says: "greatest power from the bus in any cut",
  combine: "max",
  empty: "zero",
  unit: "W",
});
export const cutOffer = offer(busPowers, cutBusPower);

export const rampBusPower = figure({
  id: "spindle.ramp-bus-power",
  per: spindle,
  symbol: "P_up",
  unit: "W",
  says: "greatest power from the bus while the spindle speeds up on the ramp written in the drive",
  method: "(J w/t + T_f) w / (eta_m eta_d) at the end of the drive's ramp, at most what overload torque gives at the speed with full flux",
  source: "energy balance; above full flux a motor gives power rather than torque; efficiency as at plate load",
  needs: {
    T: overloadTorque,
    w_b: fullFluxSpeed,
    w: motorSpeedAtTop,
    J: referredInertia,
    T_f: frictionAtMotor,
    t: rampUp,
    eta_m: plateCircuit.efficiency,
    eta_d: driveEfficiency,
  },
  of: (x) => {
    const most = x.T * Math.min(x.w_b, x.w);
    const ramp = x.t > 0 ? ((x.J * x.w) / x.t + x.T_f) * x.w : Infinity;
    return Math.min(most, ramp) / (x.eta_m * x.eta_d);
  },
  signs: { T: "+", w_b: "+", w: "+", J: "+", T_f: "+", t: "-", eta_m: "-", eta_d: "-" },
});
// Not offered: a ramp lasts seconds, and the checks on service and run ask what may flow for hours.

export const peakBusPower = figure({
  id: "spindle.peak-bus-power",
  per: spindle,
  symbol: "P_pk",
  unit: "W",
  says: "greatest power from the bus; without any work entered, that of plate load",
  formula: "if(P_s > 0, P_s, P_n / (eta_m * eta_d))",
  source: "energy balance",
  needs: { P_s: busPowers, P_n: platePower, eta_m: plateCircuit.efficiency, eta_d: driveEfficiency },
  of: (x) => (x.P_s > 0 ? x.P_s : x.P_n / (x.eta_m * x.eta_d)),
  signs: { P_s: "+", P_n: "+" },
});

const peak = lineCurrentAt("spindle.peak-line-current", spindle, peakBusPower, "line current at the greatest power from the bus");
export const peakCurrentEstimate = peak.estimate;
export const peakCurrent = peak.current;

/** A supply is filled by its most loaded line: on three phases that line's current counts as if all three carried it. */
const MOST_LOADED = "definition of apparent power; on three phases that of the most loaded line, three times";
export const drawByBus = figure({
  id: "spindle.draw-by-bus",
  per: spindle,
  symbol: "S_b",
  unit: "VA",
  says: "largest draw of the spindle drive, by its bus",
  formula: "if(n_ph >= 3, sqrt(3), 1) * V * I",
  source: MOST_LOADED,
  needs: { V: voltageOffered, I: peakCurrent, n_ph: phases },
  of: (x) => lineFactor(x.n_ph) * x.V * x.I,
  signs: { I: "+" },
});
export const drawOfDc = figure({
  id: "spindle.draw-of-dc",
  per: spindle,
  symbol: "S_dc",
  unit: "VA",
  says: "largest draw of a dc spindle drive, at the plate current of its armature",
  formula: "if(n_ph >= 3, sqrt(3), 1) * V * F * I_an",
  source: `a single-phase bridge hands its line the whole armature current; ${MOST_LOADED}`,
  needs: { V: voltageOffered, F: formFactor, I_an: armatureCurrent, n_ph: phases },
  when: [{ word: motorKind, is: ["dc"] }],
  of: (x) => lineFactor(x.n_ph) * x.V * x.F * x.I_an,
  signs: { V: "+", F: "+", I_an: "+" },
});
export const drawOfServo = figure({
  id: "spindle.draw-of-servo",
  per: spindle,
  symbol: "S_sv",
  unit: "VA",
  says: "largest draw of a servo spindle drive, at its torque for hours and its highest speed",
  formula: "if(n_ph >= 3, sqrt(3) * V, V) * T * n / (eta_d * if(n_f >= 3, sqrt(3), 1) * V_f * 0.63)",
  source: `definition with the usual power factor of a rectifier without choke, copper loss left out; ${MOST_LOADED}`,
  needs: { V: voltageOffered, V_f: feedVoltage, T: servoLoad, n: motorTopSpeed, eta_d: driveEfficiency, n_ph: phases, n_f: fedPhases },
  when: [{ word: motorKind, is: ["servo"] }],
  of: (x) => (lineFactor(x.n_ph) * x.V * x.T * x.n) / (x.eta_d * lineFactor(x.n_f) * x.V_f * USUAL_FACTOR),
  signs: { T: "+", n: "+", eta_d: "-" },
});
export const spindleDraw = figure({
  id: "spindle.draw",
  per: spindle,
  symbol: "S_sp",
  unit: "VA",
  says: "largest draw of the spindle drive",
  formula: "S",
  source: "by the kind of motor",
  needs: { S: first(drawByBus, drawOfDc, drawOfServo) },
  of: (x) => x.S,
  signs: { S: "+" },
});
export const spindleOffer = offer(draws, spindleDraw);
export const spindleOwn = offer(ownDrive, spindleDraw);
export const spindleInList = offer(eachDraw, spindleDraw);

export const cuttingShare = input({
  key: "cutting-share",
  per: spindle,
  symbol: "u_c",
  unit: "1",
  kind: "share",
  says: "share of the day the spindle cuts at its most",
  typical: { value: "10 to 50 %", source: "nobody has counted; a time line will", unchecked: true },
  measure: "Stopwatch over ten parts.",
});
export const cuttingShareInList = offer(eachShare, cuttingShare);

/** What a rectifier adds to the volt-amperes of a small motor behind a drive; between 1.2 and 1.6 by the power factors of bus simulations, assumption. */
const RECTIFIER = 1.3;
/** Plate volt-amperes of a motor; one phase of three fills one line, and that line counts. */
const plateDraw = (x: { V: readonly number[]; I: readonly number[]; phases: string; kind: string | null; n_ph: number }): number => {
  const [V = 0, I = 0] = [x.V[0], x.I[0]];
  const one = x.phases === "1" || x.kind === "capacitor";
  return (one && x.n_ph < 3 ? 1 : Math.sqrt(3)) * V * I;
};
const PLATE_DRAW = "plate volts times amperes, times sqrt(3) unless its plate says one phase and so does the service";

export const pumpDraw = figure({
  id: "spindle.pump-draw",
  per: pump,
  symbol: "S_p",
  unit: "VA",
  says: "largest draw of the pump motor",
  method: `${PLATE_DRAW}; behind a drive times 1.3 for its rectifier, and counted at its most loaded line where one phase of three feeds it`,
  source: "plate; the factor of a small rectifier is an assumption",
  needs: {
    V: plateVoltage,
    I: plateCurrent,
    phases: platePhases,
    kind: perhaps(motorKind),
    n_ph: phases,
    n_f: perhaps(fedPhases),
    V_m: voltageOffered,
    V_f: perhaps(feedVoltage),
  },
  of: (x) => {
    const S = plateDraw(x);
    if (x.n_f === null || x.V_f === null) return S;
    return (RECTIFIER * S * lineFactor(x.n_ph) * x.V_m) / (lineFactor(x.n_f) * x.V_f);
  },
});
export const pumpOffer = offer(draws, pumpDraw);

/** Power the compressor takes from the line, where its plate says nothing of volts and amperes. */
export const compressorInput = input({
  key: "motor.input",
  per: compressor,
  symbol: "P_in",
  unit: "W",
  says: "power the compressor takes from the line",
  measure: "Plate, or a plug-in meter while it pumps near cut-out.",
});
/** Power factor of a small motor at full load, practice, unchecked. */
const SMALL_MOTOR_FACTOR = 0.85;
export const compressorDraw = figure({
  id: "spindle.compressor-draw",
  per: compressor,
  symbol: "S_c",
  unit: "VA",
  says: "largest draw of the compressor motor, running",
  method: `${PLATE_DRAW}; without a plate its input power over 0.85`,
  source: "plate; power factor of small motors: practice, unchecked",
  needs: {
    V: perhaps(plateVoltage),
    I: perhaps(plateCurrent),
    P_in: perhaps(compressorInput),
    phases: platePhases,
    kind: perhaps(motorKind),
    n_ph: phases,
  },
  of: (x) =>
    x.V !== null && x.I !== null
      ? plateDraw({ V: x.V, I: x.I, phases: x.phases, kind: x.kind, n_ph: x.n_ph })
      : (x.P_in ?? Number.NaN) / SMALL_MOTOR_FACTOR,
  valid: (x) =>
    (x.V !== null && x.I !== null) || x.P_in !== null ? null : "neither plate nor input power of the compressor motor is entered",
});
export const compressorOffer = offer(shopDraws, compressorDraw);
export const compressorPeak = offer(peaks, compressorDraw);

/** A motor switched straight onto the line, at the instant it stands still. */
export const startMultiple = input({
  key: "start-multiple",
  per: motor,
  symbol: "k_s",
  unit: "1",
  kind: "ratio",
  says: "current at standstill on the line, as a multiple of plate current",
  typical: { value: "5 to 8", source: "small motors; the code letter says more", unchecked: true },
  measure: "Clamp meter that holds the peak, while it starts.",
});
export const compressorStart = figure({
  id: "spindle.compressor-start",
  per: compressor,
  symbol: "I_st",
  unit: "A",
  says: "current of the compressor motor at the instant it is switched on",
  formula: "k_s * max(I)",
  source: "locked rotor on the line",
  needs: { k_s: startMultiple, I: plateCurrent },
  of: (x) => x.k_s * Math.max(...x.I),
});
export const compressorStartOffer = offer(starts, compressorStart);
