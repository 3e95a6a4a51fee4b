// What the spindle and the small motors draw from the line, offered to the supply.
import { figure, input, perhaps } from "../../kernel/figure.ts";
import { offer, slot } from "../../kernel/slot.ts";
import { compressor, motor, pump, spindle } from "../ground/index.ts";
import { draws, eachDraw, eachShare, ownDrive, peaks, phases, shopDraws, starts, voltageOffered } from "../supply/index.ts";
import { fedPhases, lineCurrentAt } from "./drive-bus.ts";
import { driveEfficiency, inputPhases } from "./drive-inputs.ts";
import { plateCircuit } from "./motor-circuit.ts";
import { plateCurrent, platePower, plateVoltage } from "./motor-inputs.ts";
import { cutBusPower } from "./reach.ts";

export const busPowers = slot({
  id: "spindle.bus-powers",
  per: spindle,
  says: "greatest power from the bus in any cut or ramp",
  combine: "max",
  empty: "zero",
  unit: "W",
});
export const cutOffer = offer(busPowers, cutBusPower);

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

export const spindleDraw = figure({
  id: "spindle.draw",
  per: spindle,
  symbol: "S_sp",
  unit: "VA",
  says: "largest draw of the spindle drive",
  formula: "if(n_f >= 3, sqrt(3), 1) * V * I",
  source: "definition of apparent power",
  needs: { V: voltageOffered, I: peakCurrent, n_f: fedPhases },
  of: (x) => (x.n_f >= 3 ? Math.sqrt(3) : 1) * x.V * x.I,
  signs: { I: "+" },
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
const plateDraw = (x: { V: readonly number[]; I: readonly number[]; n_in: number | null; n_ph: number }): number => {
  const [V = 0, I = 0] = [x.V[0], x.I[0]];
  if (x.n_in !== null) return RECTIFIER * Math.sqrt(3) * V * I;
  return (x.n_ph >= 3 ? Math.sqrt(3) : 1) * V * I;
};
const PLATE_DRAW =
  "plate volts times amperes, with the root of three on three phases; behind a drive sqrt(3) V I times 1.3 for its rectifier";

export const pumpDraw = figure({
  id: "spindle.pump-draw",
  per: pump,
  symbol: "S_p",
  unit: "VA",
  says: "largest draw of the pump motor",
  method: PLATE_DRAW,
  source: "plate; the factor of a small rectifier is an assumption",
  needs: { V: plateVoltage, I: plateCurrent, n_in: perhaps(inputPhases), n_ph: phases },
  of: plateDraw,
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
  method: "plate volts times amperes, with the root of three on three phases; without a plate its input power over 0.85",
  source: "plate; power factor of small motors: practice, unchecked",
  needs: { V: perhaps(plateVoltage), I: perhaps(plateCurrent), P_in: perhaps(compressorInput), n_ph: phases },
  of: (x) =>
    x.V !== null && x.I !== null ? plateDraw({ V: x.V, I: x.I, n_in: null, n_ph: x.n_ph }) : (x.P_in ?? Number.NaN) / SMALL_MOTOR_FACTOR,
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
