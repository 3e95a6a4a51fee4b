// What tests of a motor would read, and the circuit that tests alone give: expected figures of the steps, and the textbook's three tests done exactly.
import { figure, first, input, joint, known, perhaps } from "../../kernel/figure.ts";
import { normalQuantile } from "../../kernel/normal.ts";
import { uniforms } from "../../kernel/random.ts";
import { motor } from "../ground/index.ts";
import { circuitFrom, circuitNeeds, plateCircuit } from "./motor-circuit.ts";
import {
  induction,
  noLoadCurrent,
  noLoadFrequency,
  noLoadPower,
  noLoadVoltage,
  plateDesign,
  plateFrequency,
  plateSpeed,
  resistance,
  standstillFrequency,
  standstillVoltage,
} from "./motor-inputs.ts";
import { ratedVoltage } from "./motor-plate.ts";
import { circuitFromTests, noLoadReading, rotationalLoss, standstillReading, type TestRun } from "./motor-tests.ts";
import { PRIOR, SPLIT } from "./plate-prior.ts";
import { saturated } from "./saturation.ts";

/** Volts of a common isolating transformer: enough to read, far below plate current on motors of some kilowatts. */
const testVolts = known("standstill-volts", {
  symbol: "V_t",
  value: 24,
  unit: "V",
  says: "voltage of the isolating transformer of the standstill test",
  source: "own choice",
});
const standstill = {
  ...circuitNeeds,
  V: first(standstillVoltage, testVolts),
  f: first(standstillFrequency, plateFrequency),
  f_n: perhaps(plateFrequency),
} as const;
const STANDSTILL =
  "two phases in series at slip 1: V / (2 |Z|); a cold winding shows up to a fifth less resistance than the hot one this circuit holds";
const SERIES = "the pulsating field of a rotor at rest is two equal turning ones, each at slip 1; valid while the rotor rests";
export const expectedStandstillCurrent = figure({
  id: "spindle.motor.standstill-current",
  per: motor,
  symbol: "I_k",
  unit: "A",
  says: "current that the standstill test would read, single phase on two leads, as connected",
  method: STANDSTILL,
  source: SERIES,
  needs: standstill,
  ...induction,
  of: (x) => standstillReading(circuitFrom(x, x.f_n ?? x.f), x.V, x.f).I,
  signs: { V: "+" },
});
export const expectedStandstillPower = figure({
  id: "spindle.motor.standstill-power",
  per: motor,
  symbol: "P_k",
  unit: "W",
  kind: "heat",
  says: "power that the standstill test would read, single phase on two leads, as connected",
  method: STANDSTILL,
  source: SERIES,
  needs: standstill,
  ...induction,
  of: (x) => standstillReading(circuitFrom(x, x.f_n ?? x.f), x.V, x.f).P,
  signs: { V: "+" },
});

export const expectedNoLoadCurrent = figure({
  id: "spindle.motor.no-load-current",
  per: motor,
  symbol: "I_0",
  unit: "A",
  says: "current the uncoupled motor would draw, at the volts and hertz of the test (else those of its plate), as connected",
  method: "the circuit at the slip that carries friction and fan",
  source: "T circuit; IEEE 112, running without load",
  needs: {
    ...circuitNeeds,
    V: first(noLoadVoltage, ratedVoltage),
    f: first(noLoadFrequency, plateFrequency),
    V_n: perhaps(ratedVoltage),
    f_n: perhaps(plateFrequency),
    P_fw: plateCircuit.P_fw,
    w_fw: plateSpeed,
  },
  ...induction,
  valid: (x) => {
    const read = noLoadReading(circuitFrom(x, x.f_n ?? x.f), x.V, x.f, x.P_fw, x.w_fw);
    return read === null ? "at this voltage the motor does not carry its own friction" : saturated(x);
  },
  of: (x) => noLoadReading(circuitFrom(x, x.f_n ?? x.f), x.V, x.f, x.P_fw, x.w_fw)?.I ?? Number.NaN,
  signs: { V: "+" },
});

const blockedHow =
  "Three-phase with the rotor held, low volts, best at a quarter of plate frequency so that bars and teeth are as when running; seconds, plate current at most.";
export const blockedVoltage = input({
  key: "blocked.voltage",
  per: motor,
  symbol: "V_b",
  unit: "V",
  says: "voltage of the blocked-rotor test, between lines",
  measure: blockedHow,
});
export const blockedFrequency = input({
  key: "blocked.frequency",
  per: motor,
  symbol: "f_b",
  unit: "1/s",
  kind: "frequency",
  says: "frequency of the blocked-rotor test",
  measure: blockedHow,
});
export const blockedCurrent = input({
  key: "blocked.current",
  per: motor,
  symbol: "I_b",
  unit: "A",
  says: "line current of the blocked-rotor test",
  measure: blockedHow,
});
export const blockedPower = input({
  key: "blocked.power",
  per: motor,
  symbol: "P_b",
  unit: "W",
  kind: "heat",
  says: "power of the blocked-rotor test",
  measure: blockedHow,
});

/** The impedances of a circuit know nothing of its poles; the solver's type does. */
const ANY_POLES = 2;
export const circuitOfTests = joint({
  id: "spindle.motor.circuit-from-tests",
  per: motor,
  says: "circuit of the motor from its tests alone, as it was connected and as warm as it was",
  method:
    "R_1 half of the dc resistance; X_1 + X_m from the run without load; R_2, X_1, X_2 such that R_1 + j X_1 + j X_m || (R_2 + j X_2) is the blocked impedance, exactly; readings spread by their own uncertainty, independent of each other",
  source:
    "T circuit; tests as Chapman, Electric Machinery Fundamentals, determining circuit parameters (whose short cut leaves X_m out and reads R_2 a tenth low); leakage split IEEE 112, unchecked",
  needs: {
    R: resistance,
    V_0: noLoadVoltage,
    f_0: noLoadFrequency,
    I_0: noLoadCurrent,
    P_0: noLoadPower,
    V_b: blockedVoltage,
    f_b: blockedFrequency,
    I_b: blockedCurrent,
    P_b: blockedPower,
    f_n: plateFrequency,
    design: perhaps(plateDesign),
  },
  ...induction,
  gives: {
    R_1: { symbol: "R_1", unit: "ohm", says: "stator resistance, from tests" },
    X_1: { symbol: "X_1", unit: "ohm", says: "stator leakage reactance, from tests" },
    R_2: { symbol: "R_2", unit: "ohm", says: "rotor resistance seen from the stator, from tests" },
    X_2: { symbol: "X_2", unit: "ohm", says: "rotor leakage reactance seen from the stator, from tests" },
    X_m: { symbol: "X_m", unit: "ohm", says: "magnetising reactance, from tests" },
    P_rot: { symbol: "P_rot", unit: "W", kind: "heat", says: "friction, fan and core together, from tests" },
  },
  of: (x, draw) => {
    const solve = (split: number, spread: (name: SpreadName, value: number) => number) => {
      const R_1 = spread("R", x.R) / 2;
      const noLoad: TestRun = { V: spread("V_0", x.V_0), f: x.f_0, I: spread("I_0", x.I_0), P: spread("P_0", x.P_0) };
      const blocked: TestRun = { V: spread("V_b", x.V_b), f: x.f_b, I: spread("I_b", x.I_b), P: spread("P_b", x.P_b) };
      const c = circuitFromTests({ R_1, noLoad, blocked, split, f_n: x.f_n, poles: ANY_POLES });
      return c && { ...c, P_rot: rotationalLoss(noLoad, R_1) };
    };
    const known = x.design === null ? null : SPLIT[x.design];
    const nominal = solve(known ?? SPLIT.B, (_, value) => value);
    if (nominal === null)
      return { refused: "no circuit shows these readings: were all taken with the same links, and the blocked test on three phases?" };
    const u = uniforms(draw.seed);
    // Half of what is stated is one standard deviation; a draw that no circuit shows falls back on the nominal one.
    const spread = (name: SpreadName, value: number) => value + ((draw.half[name] ?? 0) / 2) * normalQuantile(u());
    const samples = Array.from({ length: draw.count }, (_, k) => (k === 0 ? nominal : (solve(known ?? within(u()), spread) ?? nominal)));
    const column = (of: (s: NonNullable<ReturnType<typeof solve>>) => number) => Float64Array.from(samples, of);
    return {
      R_1: column((s) => s.R_1),
      X_1: column((s) => s.X_1),
      R_2: column((s) => s.R_2),
      X_2: column((s) => s.X_2),
      X_m: column((s) => s.X_m),
      P_rot: column((s) => s.P_rot),
    };
  },
  readings: [],
});
const within = (u: number): number => PRIOR.split.low + u * (PRIOR.split.high - PRIOR.split.low);
type SpreadName = "R" | "V_0" | "I_0" | "P_0" | "V_b" | "I_b" | "P_b";
