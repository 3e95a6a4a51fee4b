// The bus of a drive on this supply: what it draws in pulses, how low it falls, what volts it leaves, and whether it was built for that.
import { check } from "../../kernel/check.ts";
import { figure, first, input, known, perhaps, type Ref, simulated } from "../../kernel/figure.ts";
import { job } from "../../kernel/job.ts";
import type { Scope } from "../../kernel/item.ts";
import { offer } from "../../kernel/slot.ts";
import { drive } from "../ground/index.ts";
import {
  frequency,
  inductanceToMachine,
  phases,
  resistanceToMachine,
  screenedCable,
  serviceKind,
  serviceKinds,
  voltageOffered,
} from "../supply/index.ts";
import { type Bus, type BusState, busState } from "./bus.ts";
import { chokeInductance, outputVoltageMax } from "./drive.ts";
import {
  cableScreened,
  capacitancePerPower,
  choke,
  deadTimeFactor,
  driveCurrent,
  driveEfficiency,
  driveInputCurrent,
  fedFrom,
  inputPhases,
  motorCableLength,
  singlePhase,
} from "./drive-inputs.ts";
import { plateCircuit } from "./motor-circuit.ts";
import { platePower, plateSpeed } from "./motor-inputs.ts";
import { ratedTorque, ratedVoltage } from "./motor-plate.ts";
import { onePhaseShare, ratedBusState } from "./one-phase.ts";
import { idealValley, type ValleyCurve, valleyOnCurve } from "./valley.ts";

const busJob = job<Record<keyof Bus, number>, Record<keyof BusState, number>>({
  id: "spindle.bus",
  version: 1,
  run: (brief) => ({ ...busState(brief) }),
});
const SIMULATED =
  "series R-L source, ideal diodes, capacitor, constant-power load; implicit midpoint, 20 us steps, the twelfth cycle kept; sine source";
const RASHID = "circuit as in Rashid, Power Electronics, ch. 3; own march, halving the step moves it by less than 0.1 %";

export const fedPhases = figure({
  id: "spindle.drive.fed-phases",
  per: drive,
  symbol: "n_f",
  unit: "1",
  kind: "count",
  says: "phases the drive is really fed with",
  formula: "if(min(n_s, n_in) >= 3, 3, 1)",
  source: "supply and drive together",
  needs: { n_s: phases, n_in: first(inputPhases, phases) },
  of: (x) => (Math.min(x.n_s, x.n_in) >= 3 ? 3 : 1),
});

/** Drives for one phase are made for 200 to 240 V: a star service whose neutral gives that feeds them from there [V]. */
const ONE_PHASE_CLASS = 200;
export const feedVoltage = figure({
  id: "spindle.drive.feed-voltage",
  per: drive,
  symbol: "V_f",
  unit: "V",
  says: "voltage between the terminals that feed the drive, before it draws anything",
  method:
    "that between lines; for a drive fed with one phase that from line to neutral where so written, or where nothing is written and a star service gives 200 V or more there",
  source: "geometry of the service; drives made for one phase want 200 to 240 V",
  needs: { V: voltageOffered, kind: serviceKind, n_f: fedPhases, fed: perhaps(fedFrom) },
  of: (x) => {
    const neutral = serviceKinds[x.kind].toNeutral * x.V;
    const usual = x.kind === "three-phase-star" && neutral >= ONE_PHASE_CLASS ? "line-to-neutral" : "line-to-line";
    return x.n_f < 3 && (x.fed ?? usual) === "line-to-neutral" ? neutral : x.V;
  },
  signs: { V: "+" },
});
/** One phase of a three-phase service goes out by one conductor and comes back by another; on one phase the run is counted there and back already. */
const conductors = (x: { n_s: number; n_f: number }): number => (x.n_s >= 3 && x.n_f < 3 ? 2 : 1);
export const feedResistance = figure({
  id: "spindle.drive.feed-resistance",
  per: drive,
  symbol: "R",
  unit: "ohm",
  kind: "small-resistance",
  says: "resistance before the rectifier: the whole loop of one phase, or each line of three",
  formula: "if(n_s >= 3, if(n_f >= 3, 1, 2), 1) * R_m",
  source: "series circuit",
  needs: { n_s: phases, n_f: fedPhases, R_m: resistanceToMachine },
  of: (x) => conductors(x) * x.R_m,
  signs: { R_m: "+" },
});

export const feedInductance = figure({
  id: "spindle.drive.feed-inductance",
  per: drive,
  symbol: "L_f",
  unit: "H",
  says: "inductance of source and run as the drive is fed: the whole loop of one phase, or each line of three",
  formula: "if(n_s >= 3, if(n_f >= 3, 1, 2), 1) * L_m",
  source: "series circuit",
  needs: { n_s: phases, n_f: fedPhases, L_m: inductanceToMachine },
  of: (x) => conductors(x) * x.L_m,
  signs: { L_m: "+" },
});

export const capacitanceEstimate = figure({
  id: "spindle.drive.capacitance-estimate",
  per: drive,
  symbol: "C_e",
  unit: "F",
  says: "bus capacitance that a drive for this motor usually has",
  formula: "c_b * P_n",
  source: "drives at large, unchecked",
  needs: { c_b: capacitancePerPower, P_n: platePower },
  of: (x) => x.c_b * x.P_n,
});
export const busCapacitance = input({
  key: "bus.capacitance",
  per: drive,
  symbol: "C",
  unit: "F",
  says: "bus capacitance",
  typical: { of: capacitanceEstimate, source: "150 to 600 uF/kW of motor, unchecked" },
  measure: "Data sheet; or the label of the capacitors, bus proved empty.",
});

/** Volts between lines that a loaded one-phase bus turns into, as a share of the line's: only to say at what power the bus is looked at. */
const BUS_SHARE = 0.85;

export const busPowerFull = figure({
  id: "spindle.drive.bus-power",
  per: drive,
  symbol: "P_bus",
  unit: "W",
  says: "power from the bus at rated torque, at the highest speed with full flux",
  formula: "T * w * min(1, 0.85 * V_m / V_n) / (eta_m * eta_d)",
  source: "energy balance; 0.85 of the line's volts is what a loaded bus gives, good enough to name a power",
  needs: { T: ratedTorque, w: plateSpeed, V_m: feedVoltage, V_n: ratedVoltage, eta_m: plateCircuit.efficiency, eta_d: driveEfficiency },
  of: (x) => (x.T * x.w * Math.min(1, (BUS_SHARE * x.V_m) / x.V_n)) / (x.eta_m * x.eta_d),
  signs: { T: "+", w: "+" },
});

export const chokeL = figure({
  id: "spindle.drive.choke-inductance",
  per: drive,
  symbol: "L_c",
  unit: "H",
  says: "inductance of the line choke",
  formula: "x_c * V^2 / (2 * pi * f * P)",
  source: "definition of the percentage, named for the bus power at full flux; its own resistance is left out",
  needs: { x_c: choke, V: feedVoltage, f: frequency, P: busPowerFull },
  of: chokeInductance,
});

export const sourceL = figure({
  id: "spindle.drive.source-inductance",
  per: drive,
  symbol: "L",
  unit: "H",
  says: "inductance before the rectifier",
  method: "source and run, plus the choke where one is fitted",
  source: "series circuit",
  needs: { L_m: feedInductance, L_c: perhaps(chokeL) },
  of: (x) => x.L_m + (x.L_c ?? 0),
});

const busNeeds = (P: Ref<number>) =>
  ({ V: feedVoltage, f: frequency, P, C: busCapacitance, R: feedResistance, L: sourceL, phases: fedPhases }) as const;
const brief = (x: Bus) => ({ V: x.V, f: x.f, P: x.P, C: x.C, R: x.R, L: x.L, phases: x.phases });

/** Valley of an ideal source: the closed form that carries the simulated one to all samples. */
const quickValley = (id: string, P: Ref<number>, says: string) =>
  figure({
    id: `spindle.drive.${id}`,
    per: drive,
    symbol: "V_q",
    unit: "V",
    says,
    method: "where the discharge sqrt(V_p^2 - 2 P t / C) meets the next half-wave; a line without impedance",
    source: "energy balance of the capacitor",
    needs: { V: feedVoltage, f: frequency, P, C: busCapacitance, phases: fedPhases },
    of: idealValley,
    signs: { V: "+", P: "-", C: "+" },
  });
const valley = (id: string, P: Ref<number>, estimate: Ref<number>, says: string) =>
  simulated({
    id: `spindle.drive.${id}`,
    per: drive,
    symbol: "V_v",
    unit: "V",
    says,
    method: SIMULATED,
    source: RASHID,
    needs: busNeeds(P),
    job: busJob,
    brief,
    read: (r) => r.V_valley,
    estimate,
    tolerance: 1e-3,
    // Resistance has no sign here: it lowers the crest and lets the line feed the bus longer, and now and then the valley rises by a hair.
    signs: { V: "+", P: "-", C: "+" },
  });
const power = (id: string, share: number, says: string) =>
  figure({
    id: `spindle.drive.${id}`,
    per: drive,
    symbol: "P",
    unit: "W",
    says,
    formula: `${share} * P_bus`,
    source: "a point of the valley curve",
    needs: { P_bus: busPowerFull },
    of: (x) => share * x.P_bus,
    signs: { P_bus: "+" },
  });

export const powerHalf = power("bus-power-half", 0.5, "half of that power");
export const powerOver = power("bus-power-over", 1.5, "one and a half times that power");
export const quickValleyHalf = quickValley("valley-half-estimate", powerHalf, "lowest bus voltage at half power, line without impedance");
export const quickValleyFull = quickValley("valley-estimate", busPowerFull, "lowest bus voltage, line without impedance");
export const quickValleyOver = quickValley(
  "valley-over-estimate",
  powerOver,
  "lowest bus voltage at one and a half times the power, line without impedance",
);
export const valleyHalf = valley("valley-half", powerHalf, quickValleyHalf, "lowest bus voltage at half that power");
export const dcValley = valley("dc-valley", busPowerFull, quickValleyFull, "lowest bus voltage at full flux and rated torque");
export const valleyOver = valley("valley-over", powerOver, quickValleyOver, "lowest bus voltage at one and a half times that power");

export const crestEstimate = figure({
  id: "spindle.drive.crest-estimate",
  per: drive,
  symbol: "V_p",
  unit: "V",
  says: "crest of the line",
  formula: "sqrt(2) * V",
  source: "definition",
  needs: { V: feedVoltage },
  of: (x) => Math.SQRT2 * x.V,
  signs: { V: "+" },
});
export const dcCrest = simulated({
  id: "spindle.drive.dc-crest",
  per: drive,
  symbol: "V_c",
  unit: "V",
  says: "highest bus voltage at that load",
  method: SIMULATED,
  source: RASHID,
  needs: busNeeds(busPowerFull),
  job: busJob,
  brief,
  read: (r) => r.V_crest,
  estimate: crestEstimate,
  tolerance: 1e-3,
});

/** True power factor of a one-phase rectifier without choke, middle of its usual band: only carries the simulation to all samples. */
export const USUAL_FACTOR = 0.63;
const currentEstimate = (id: string, per: Scope, P: Ref<number>, says: string) =>
  figure({
    id,
    per,
    symbol: "I_q",
    unit: "A",
    says,
    formula: "P / (if(n_f >= 3, sqrt(3), 1) * V * 0.63)",
    source: "definition with the usual power factor of a one-phase rectifier",
    needs: { P, V: feedVoltage, n_f: fedPhases },
    of: (x) => x.P / ((x.n_f >= 3 ? Math.sqrt(3) : 1) * x.V * USUAL_FACTOR),
    signs: { P: "+", V: "-" },
  });
/** Line current at some bus power, simulated; also for other powers than the full one. */
export const lineCurrentAt = (id: string, per: Scope, P: Ref<number>, says: string) => {
  const estimate = currentEstimate(`${id}-estimate`, per, P, `${says}, by the usual power factor`);
  const current = simulated({
    id,
    per,
    symbol: "I_line",
    unit: "A",
    says,
    method: SIMULATED,
    source: RASHID,
    needs: busNeeds(P),
    job: busJob,
    brief,
    read: (r) => r.I_line,
    estimate,
    tolerance: 1e-3,
    signs: { P: "+" },
  });
  return { estimate, current };
};
const full = lineCurrentAt("spindle.drive.input-current", drive, busPowerFull, "line current at full flux and rated torque");
export const inputCurrentEstimate = full.estimate;
export const inputCurrent = full.current;

export const inputPowerFactor = figure({
  id: "spindle.drive.input-power-factor",
  per: drive,
  symbol: "pf",
  unit: "1",
  kind: "ratio",
  says: "true power factor at the line",
  formula: "P / (if(n_f >= 3, sqrt(3), 1) * V * I)",
  source: "definition; losses before the bus left out (below 2 %)",
  needs: { P: busPowerFull, V: feedVoltage, I: inputCurrent, n_f: fedPhases },
  of: (x) => x.P / ((x.n_f >= 3 ? Math.sqrt(3) : 1) * x.V * x.I),
});

export const capacitorCurrent = simulated({
  id: "spindle.drive.capacitor-current",
  per: drive,
  symbol: "I_C",
  unit: "A",
  says: "current through the bus capacitors at that load",
  method: SIMULATED,
  source: RASHID,
  needs: busNeeds(busPowerFull),
  job: busJob,
  brief,
  read: (r) => r.I_C,
  estimate: inputCurrentEstimate,
  tolerance: 1e-3,
});

/** Rounds in which volts, power and valley settle; each leaves less than a third of the difference. */
const ROUNDS = 12;
export const settledValley = figure({
  id: "spindle.drive.settled-valley",
  per: drive,
  symbol: "V_dc",
  unit: "V",
  says: "lowest bus voltage at rated torque, at the highest speed these very volts give full flux",
  method:
    "the speed with full flux goes with the volts, the power with that speed, the valley with the power: repeated on the simulated valley curve until it stands",
  source: "own simulation of the bus at four powers",
  needs: {
    v_0: crestEstimate,
    v_half: valleyHalf,
    v_full: dcValley,
    v_over: valleyOver,
    V_m: feedVoltage,
    V_n: ratedVoltage,
    k_dt: deadTimeFactor,
  },
  of: (x) => {
    const named = Math.min(1, (BUS_SHARE * x.V_m) / x.V_n);
    const curve: ValleyCurve = [x.v_0, x.v_half, x.v_full, x.v_over];
    let V = x.v_full;
    for (let k = 0; k < ROUNDS; k += 1) {
      V = (V + valleyOnCurve(curve, Math.min(1, outputVoltageMax({ V_dc: V, k: x.k_dt }) / x.V_n) / named)) / 2;
    }
    return V;
  },
  // A cubic leans away from the points beside the one looked at: only the nearest has a sign of its own.
  signs: { v_full: "+" },
});

export const outputVoltage = figure({
  id: "spindle.drive.output-voltage-max",
  per: drive,
  symbol: "V_out",
  unit: "V",
  says: "highest voltage the drive can give the motor, at the valley of its bus",
  formula: "k_dt * V_dc / sqrt(2)",
  source: "Rashid, Power Electronics, ch. 6, space-vector modulation in its linear range",
  needs: { V_dc: settledValley, k_dt: deadTimeFactor },
  of: (x) => outputVoltageMax({ V_dc: x.V_dc, k: x.k_dt }),
  signs: { V_dc: "+", k_dt: "+" },
});

/** Only a drive made for three phases is asked what one phase does to it. */
const threePhaseDrive = [{ word: inputPhases, is: ["3"] }] as const;

const motorFactor = known("drive-power-factor", {
  symbol: "pf_m",
  value: 0.8,
  unit: "1",
  kind: "ratio",
  says: "power factor of the motors a drive is rated for",
  source: "four-pole motors of 2 to 8 kW, practice, unchecked",
});

export const ratedBusPower = figure({
  id: "spindle.drive.rated-bus-power",
  per: drive,
  symbol: "P_r",
  unit: "W",
  says: "power from the bus at the drive's own rated current",
  formula: "sqrt(3) * V * I_d * pf_m / eta_d",
  source: "definition",
  needs: { V: feedVoltage, I_d: driveCurrent, pf_m: motorFactor, eta_d: driveEfficiency },
  of: (x) => (Math.sqrt(3) * x.V * x.I_d * x.pf_m) / x.eta_d,
});

const ratedJob = job<{ V: number; f: number; P: number; C: number }, Record<keyof BusState, number>>({
  id: "spindle.rated-bus",
  version: 1,
  run: (brief_) => ({ ...ratedBusState(brief_) }),
});
const ratedNeeds = { V: feedVoltage, f: frequency, P: ratedBusPower, C: busCapacitance } as const;
const ON_THREE = "the same simulation on three stiff phases at the drive's rated current: what it was built to stand";
export const ratedLineCurrent = simulated({
  id: "spindle.drive.rated-line-current",
  per: drive,
  when: threePhaseDrive,
  symbol: "I_3",
  unit: "A",
  says: "line current the drive was built for, simulated on three phases",
  method: ON_THREE,
  source: RASHID,
  needs: ratedNeeds,
  job: ratedJob,
  brief: (x) => ({ V: x.V, f: x.f, P: x.P, C: x.C }),
  read: (r) => r.I_line,
  tolerance: 1e-3,
});
export const ratedCapacitorCurrent = simulated({
  id: "spindle.drive.rated-capacitor-current",
  per: drive,
  when: threePhaseDrive,
  symbol: "I_C3",
  unit: "A",
  says: "capacitor current the drive was built for, simulated on three phases",
  method: ON_THREE,
  source: RASHID,
  needs: ratedNeeds,
  job: ratedJob,
  brief: (x) => ({ V: x.V, f: x.f, P: x.P, C: x.C }),
  read: (r) => r.I_C,
  tolerance: 1e-3,
});
export const lineCurrentBuiltFor = figure({
  id: "spindle.drive.line-current-built-for",
  per: drive,
  when: threePhaseDrive,
  symbol: "I_b",
  unit: "A",
  says: "input current the drive was built for",
  method: "rated input current where the papers give it, else the one simulated on three phases",
  source: "data sheet, or own simulation",
  needs: { I_3: first(driveInputCurrent, ratedLineCurrent) },
  of: (x) => x.I_3,
});
const shareJob = job<{ V: number; f: number; P: number; C: number; R: number; L: number; I_line: number; I_C: number }, { share: number }>({
  id: "spindle.one-phase-share",
  version: 1,
  run: (brief_) => ({ share: onePhaseShare(brief_) }),
});
export const onePhaseRating = simulated({
  id: "spindle.drive.one-phase-share",
  per: drive,
  when: threePhaseDrive,
  symbol: "k_1",
  unit: "1",
  kind: "share",
  says: "share of its rated power that this three-phase drive may carry on one phase here",
  method: "largest share at which neither line nor capacitor current passes what the drive was built for",
  source: "own simulation on this supply; valid only where the drive's papers allow one phase",
  needs: {
    V: feedVoltage,
    f: frequency,
    P: ratedBusPower,
    C: busCapacitance,
    R: feedResistance,
    L: sourceL,
    I_line: lineCurrentBuiltFor,
    I_C: ratedCapacitorCurrent,
  },
  job: shareJob,
  brief: (x) => ({ V: x.V, f: x.f, P: x.P, C: x.C, R: x.R, L: x.L, I_line: x.I_line, I_C: x.I_C }),
  read: (r) => r.share,
  tolerance: 5e-3,
});
export const ratingSinglePhase = figure({
  id: "spindle.drive.rating-single-phase",
  per: drive,
  when: threePhaseDrive,
  symbol: "I_1ph",
  unit: "A",
  says: "rated output current a three-phase drive of this make-up needs to carry this motor on one phase",
  formula: "I_d * P_bus / (k_1 * P_r)",
  source: "own simulation; a number for this supply, never a rule",
  needs: { I_d: driveCurrent, P_bus: busPowerFull, k_1: onePhaseRating, P_r: ratedBusPower },
  of: (x) => (x.I_d * x.P_bus) / (x.k_1 * x.P_r),
});

const onePhaseRemedies = [
  { does: "a bigger frame", costs: "its price; more bus capacitance, so sharper pulses", changes: [driveCurrent] },
  {
    does: "a line choke before the drive",
    costs: "line current 15 to 25 % less, valley 11 to 26 V lower",
    changes: [choke],
    lay: { choke: "3 %" },
  },
  { does: "a drive made for one phase", costs: "its price", changes: [inputPhases] },
];
/** Only a three-phase drive on one phase is asked. */
export const threeOnOne = figure({
  id: "spindle.drive.needs-permission",
  per: drive,
  when: threePhaseDrive,
  symbol: "n_p",
  unit: "1",
  kind: "count",
  says: "1 where a drive made for three phases is fed with one",
  formula: "if(n_in > n_f, 1, 0)",
  source: "definition",
  needs: { n_in: inputPhases, n_f: fedPhases },
  of: (x) => (x.n_in > x.n_f ? 1 : 0),
});
export const permission = figure({
  id: "spindle.drive.permission",
  per: drive,
  when: threePhaseDrive,
  symbol: "n_ok",
  unit: "1",
  kind: "count",
  says: "1 where its papers allow that, or nothing is asked",
  method: "1 when the papers allow one phase or the drive is fed as it was made for, else 0",
  source: "papers of the drive",
  needs: { word: singlePhase, n_p: threeOnOne },
  of: (x) => (x.n_p === 0 || x.word === "yes" ? 1 : 0),
});
export const onePhaseAllowed = check({
  id: "spindle.drive.one-phase-allowed",
  per: drive,
  when: threePhaseDrive,
  asks: "Do the drive's papers allow what feeds it?",
  demand: known("one", { symbol: "1", value: 1, unit: "1", kind: "count", says: "yes", source: "definition" }),
  capacity: permission,
  H: 1,
  yesNo: true,
  remedies: [{ does: "a drive whose papers allow one phase", costs: "its price", changes: [singlePhase, inputPhases] }],
});
export const onePhaseLine = check({
  id: "spindle.drive.one-phase-line",
  per: drive,
  when: threePhaseDrive,
  asks: "Does the drive's input stand the line current of one phase?",
  demand: inputCurrent,
  capacity: lineCurrentBuiltFor,
  H: 1.1,
  remedies: onePhaseRemedies,
});
export const onePhaseCapacitor = check({
  id: "spindle.drive.one-phase-capacitor",
  per: drive,
  when: threePhaseDrive,
  asks: "Do the bus capacitors stand the current of one phase?",
  demand: capacitorCurrent,
  capacity: ratedCapacitorCurrent,
  H: 1.1,
  remedies: onePhaseRemedies,
});

/** Only a screened cable leaks to earth along its length. */
export const screenedLength = figure({
  id: "spindle.drive.screened-length",
  per: drive,
  symbol: "l_s",
  unit: "m",
  kind: "distance",
  says: "screened length of its motor cable",
  method: "its length where it is screened, else nothing",
  source: "definition",
  needs: { l: motorCableLength, screened: cableScreened },
  of: (x) => (x.screened === "yes" ? x.l : 0),
});
export const screenedOffer = offer(screenedCable, screenedLength);
