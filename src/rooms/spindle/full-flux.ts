// Whether the drive's volts reach: what full torque up to the wanted speed asks of the winding, and what the drive and its output give.
import { check, notice } from "../../kernel/check.ts";
import { figure, first, perhaps } from "../../kernel/figure.ts";
import { drive, spindle } from "../ground/index.ts";
import { outputVoltage } from "./drive-bus.ts";
import { connected, inverterRated, plateFrequency, plateSpeed } from "./motor-inputs.ts";
import { ratedCurrent, ratedVoltage, referenceVoltage } from "./motor-plate.ts";
import { busTrip, carrier, choke, currentLimit, driveCurrent, motorCableLength, outputFilter, riseTime } from "./drive-inputs.ts";
import { CABLE_WAVE_SPEED, criticalCableLength, GENERAL_WINDING_LIMIT, insulationStress, inverterWindingLimit } from "./drive.ts";
import { ratios } from "./ratios.ts";
import { fullTorqueTo, motorPulley, topSpeedWanted } from "./spindle-inputs.ts";

export const fullTorqueFrequency = figure({
  id: "spindle.full-torque-frequency",
  per: spindle,
  symbol: "f_t",
  unit: "1/s",
  kind: "frequency",
  says: "motor frequency at the spindle speed up to which full torque is wanted",
  method: "f_n i n / n_n with the ratio that turns the motor slowest, plate slip kept in proportion; f_n while no ratio is entered",
  source: "definition",
  needs: { n: first(fullTorqueTo, topSpeedWanted), ratios: perhaps(ratios), f_n: plateFrequency, n_n: plateSpeed },
  of: (x) => (x.ratios === null ? x.f_n : (x.f_n * x.n * Math.min(...x.ratios.map((r) => r.value.i))) / x.n_n),
});

export const windingVoltage = figure({
  id: "spindle.winding-voltage",
  per: spindle,
  symbol: "V_w",
  unit: "V",
  says: "volts the winding wants for full flux there (without a ratio entered: at plate frequency)",
  formula: "V_n * f_t / f_n",
  source: "constant flux",
  needs: { V_n: ratedVoltage, f_t: first(fullTorqueFrequency, plateFrequency), f_n: plateFrequency },
  of: (x) => (x.V_n * x.f_t) / x.f_n,
  signs: { V_n: "+", f_t: "+" },
});

const relink = (from: string, to: string, says: string) => ({
  does: `${says}, printed as links in the terminal box drawing`,
  costs: "current goes up as the voltage goes down: drive, cable and contactor for it",
  changes: [connected],
  when: [{ word: connected, is: [from] }],
  lay: { "motor.connected": to },
});

export const windingVoltageCheck = check({
  id: "spindle.winding-voltage-reached",
  per: spindle,
  asks: "Does the drive give full flux up to the speed where full torque is wanted?",
  demand: windingVoltage,
  capacity: outputVoltage,
  H: 1.03,
  remedies: [
    relink("series", "parallel", "reconnect the motor in parallel for the lower voltage"),
    relink("star", "delta", "reconnect the motor from star to delta"),
    relink("series-star", "parallel-star", "reconnect the motor in parallel star"),
    relink("series-delta", "parallel-delta", "reconnect the motor in parallel delta"),
    { does: "accept constant power above the base frequency", costs: "torque falls as one over speed there", changes: [fullTorqueTo] },
    {
      does: "another belt ratio, so that the motor turns slower",
      costs: "less torque at the spindle by the same share",
      changes: [motorPulley],
    },
    { does: "more bus capacitance or no choke", costs: "sharper current pulses on the line", changes: [choke] },
  ],
});

export const outputCurrent = figure({
  id: "spindle.drive.output-current",
  per: drive,
  symbol: "I_out",
  unit: "A",
  says: "current of the motor at plate load, as it is connected",
  formula: "I_n",
  source: "plate",
  needs: { I_n: ratedCurrent },
  of: (x) => x.I_n,
});
export const outputCurrentSet = figure({
  id: "spindle.drive.output-current-set",
  per: drive,
  symbol: "I_set",
  unit: "A",
  says: "output current the drive may give for hours, as it is set",
  formula: "I_d * min(1, k_i)",
  source: "data sheet and setting",
  needs: { I_d: driveCurrent, k_i: currentLimit },
  of: (x) => x.I_d * Math.min(1, x.k_i),
});
export const outputCurrentCheck = check({
  id: "spindle.drive.output-current-holds",
  per: drive,
  asks: "Does the drive give the motor its plate current for hours?",
  demand: outputCurrent,
  capacity: outputCurrentSet,
  H: 1.1,
  remedies: [
    { does: "a bigger drive", costs: "its price", changes: [driveCurrent] },
    { does: "reconnect the motor for its higher voltage", costs: "full torque only to a lower speed", changes: [connected] },
    { does: "another belt ratio", costs: "speed for torque", changes: [motorPulley] },
  ],
});

export const cableCriticalLength = figure({
  id: "spindle.drive.cable-critical-length",
  per: drive,
  symbol: "l_c",
  unit: "m",
  kind: "distance",
  says: "motor cable from which the winding sees the whole reflected edge",
  method: "half the way a wave runs in the rise time, at 150 m/us",
  source: "reflection on a line, waves at about 150 m/us; Mohan, Undeland, Robbins, Power Electronics",
  needs: { t_r: riseTime },
  of: (x) => criticalCableLength({ v: CABLE_WAVE_SPEED, t_r: x.t_r }),
});

/** Peak behind an edge filter as a multiple of the bus [1]; practice, unchecked. */
const EDGE_FILTERED = 1.5;
export const windingStress = figure({
  id: "spindle.motor.insulation-stress",
  per: drive,
  symbol: "V_pk",
  unit: "V",
  says: "peak between the terminals of the winding, braking up to the trip of the drive",
  method:
    "V_dc (1 + min(1, l / l_c)): edges are thrown back at the motor; an edge filter holds them to 1.5 V_dc, behind a sine filter V_dc stays",
  source: "lossless line, open at the motor; an upper bound; what edge filters hold: practice, unchecked, their papers say",
  needs: { V_dc: busTrip, l: motorCableLength, l_c: cableCriticalLength, filter: perhaps(outputFilter) },
  of: (x) => (x.filter === "sine" ? x.V_dc : Math.min(insulationStress(x), x.filter === "edge" ? EDGE_FILTERED * x.V_dc : Infinity)),
});
export const windingStands = figure({
  id: "spindle.motor.insulation-limit",
  per: drive,
  symbol: "V_lim",
  unit: "V",
  says: "peak the winding stands",
  method: "1000 V for a general-purpose winding; 3.1 times its highest rated voltage where it is wound for a drive",
  source: "NEMA MG 1 parts 30 and 31 (seen quoted; older editions say 1600 V for 460 V)",
  needs: { rated: inverterRated, V: referenceVoltage },
  of: (x) => (x.rated === "yes" ? inverterWindingLimit({ V: x.V }) : GENERAL_WINDING_LIMIT),
});
export const insulationCheck = check({
  id: "spindle.motor.insulation-holds",
  per: drive,
  asks: "Does the winding stand the edges of the drive?",
  demand: windingStress,
  capacity: windingStands,
  H: 1.2,
  remedies: [
    { does: "reconnect low and use a 240 V class drive", costs: "twice the current", changes: [connected] },
    { does: "an edge or sine filter", costs: "its price and a few volts", changes: [outputFilter] },
    { does: "a shorter motor cable", costs: "moves the drive", changes: [motorCableLength] },
    { does: "rewind for a drive", costs: "a winder's bill", changes: [inverterRated] },
  ],
});

/** Carrier above which leakage, edges and bearing currents are bought for nothing but quiet; practice [Hz]. */
const QUIET_ENOUGH = 8e3;
export const carrierHigh = notice({
  id: "spindle.drive.carrier-high",
  per: drive,
  severity: "note",
  needs: { f_c: carrier },
  at: carrier,
  of: (x) =>
    x.f_c > QUIET_ENOUGH
      ? `A carrier of ${Math.round(x.f_c / 1e3)} kHz is quieter, and pays with leakage to earth, warmer transistors and bearing currents: no higher than the noise demands.`
      : null,
});
