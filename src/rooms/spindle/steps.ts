// Bring-up of the spindle, first half: dead tests, then the motor alone, uncoupled.
import { step } from "../../kernel/room.ts";
import { hotParts, lifting, mains, pump, rotatingSpindle, spindle, storedCharge } from "../ground/index.ts";
import { baseFrequencySet, baseVoltageSet, currentLimit, rampUp } from "./drive-inputs.ts";
import { insulationResistance } from "./insulation.ts";
import { plateCircuit } from "./motor-circuit.ts";
import {
  connected,
  leads,
  lines,
  links,
  motorKind,
  noLoadCurrent,
  noLoadFrequency,
  noLoadPower,
  noLoadVoltage,
  plateCurrent,
  plateFrequency,
  platePower,
  plateSpeed,
  plateVoltage,
  resistance,
  resistanceTemperature,
  standstillCurrent,
  standstillFrequency,
  standstillPower,
  standstillVoltage,
  testedAs,
  winding,
} from "./motor-inputs.ts";
import { motorPulley, spindlePulley } from "./spindle-inputs.ts";

export const photograph = step({
  id: "spindle.photograph",
  per: spindle,
  title: "Photograph plate, terminal box and links",
  hazards: [mains, lifting],
  after: [],
  does: [
    "Isolate, lock off and prove dead before the terminal box is opened.",
    "Photograph the plate so that every figure can be read.",
    "Photograph the open terminal box from the front before any joint is moved.",
    "Write down which leads are joined and which go to the lines.",
    "Measure both pulleys over the belt where it lies.",
  ],
  reads: [
    { says: "kind of motor", sets: motorKind },
    { says: "power on the plate", unit: "W", sets: platePower },
    { says: "voltage or voltages on the plate", unit: "V", sets: plateVoltage },
    { says: "current or currents on the plate", unit: "A", sets: plateCurrent },
    { says: "frequency on the plate", unit: "1/s", sets: plateFrequency },
    { says: "speed on the plate", unit: "rad/s", sets: plateSpeed },
    { says: "leads", sets: leads },
    { says: "leads joined with each other", sets: links },
    { says: "leads on the lines", sets: lines },
    { says: "pitch diameter of the motor pulley", unit: "m", sets: motorPulley },
    { says: "pitch diameter of the spindle pulley", unit: "m", sets: spindlePulley },
  ],
  accept: "Every link can be put back from the photographs alone.",
});

export const insulation = step({
  id: "spindle.insulation",
  per: spindle,
  title: "Insulation of the winding",
  hazards: [mains, storedCharge],
  after: ["spindle.photograph"],
  does: [
    "Isolate, lock off, prove dead; wait for the dc bus and measure that it is empty.",
    "Disconnect the drive at both ends: an insulation tester through a drive destroys it.",
    "Take all links off, so that the leads are free.",
    "Apply 500 V dc from each winding to the frame, then from winding to winding, 60 s each.",
    "Discharge the winding through the tester before touching it, and write the temperature of the case.",
    "Where it reads low, dry it with a 40 to 60 W lamp inside or with dc below a quarter of plate current, and repeat.",
  ],
  reads: [{ says: "lowest insulation, brought to 40 degC", unit: "ohm", sets: insulationResistance }],
  accept: "More than 5 Mohm at 40 degC everywhere, or the winding stays off the supply (IEEE 43, seen quoted).",
});

export const identifyWindings = step({
  id: "spindle.identify-windings",
  per: spindle,
  title: "Identify the windings",
  hazards: [mains, storedCharge],
  after: ["spindle.insulation"],
  does: [
    "Leads free and numbered; note which leads have continuity with which.",
    "Nine leads in one group of three and three pairs are star inside, in three groups of three delta; twelve leads are six pairs, six leads three pairs.",
    "Six leads with continuity among all of them are a two-speed winding: do not reconnect it as a single one.",
    "Find the polarity of each coil with a kick of a 1.5 V cell and a moving needle on the others, or with 24 V ac from an isolating transformer.",
    "Compare the resistances of like coils.",
  ],
  reads: [
    { says: "how the inner ends are joined", sets: winding },
    { says: "how the winding is connected now", sets: connected },
  ],
  accept: "Every lead belongs to a group, no coil is reversed, like coils agree within 3 %.",
});

export const motorResistance = step({
  id: "spindle.motor-resistance",
  per: spindle,
  title: "Resistance between lines",
  hazards: [mains, storedCharge],
  after: ["spindle.identify-windings"],
  does: [
    "Drive disconnected, winding connected as written down.",
    "Pass 1 to 5 A from a bench supply through two lines and measure volts at the leads themselves.",
    "All three pairs, once each way; let the current settle, then switch the supply down slowly: a winding kicks.",
    "Write the temperature of the case after a night of rest.",
  ],
  reads: [
    { says: "mean of the three pairs", unit: "ohm", sets: resistance, expect: plateCircuit.R_ll },
    { says: "temperature of the winding", unit: "K", sets: resistanceTemperature },
    { says: "how it was connected", sets: testedAs },
  ],
  accept: "The three pairs agree within 2 to 3 %; the mean lies in the expected band.",
});

export const standstillTest = step({
  id: "spindle.standstill",
  per: spindle,
  title: "Standstill test, single phase",
  hazards: [mains, storedCharge],
  after: ["spindle.motor-resistance"],
  does: [
    "Drive disconnected; an isolating transformer of 12 to 36 V at line frequency, fused, across two line terminals, the third open.",
    "Ten seconds at most; the rotor does not turn.",
    "Read volts, amperes and watts at the terminals together.",
    "Repeat on the other two pairs.",
  ],
  reads: [
    { says: "voltage of the test", unit: "V", sets: standstillVoltage },
    { says: "frequency of the test", unit: "1/s", sets: standstillFrequency },
    { says: "current of the test", unit: "A", sets: standstillCurrent },
    { says: "power of the test", unit: "W", sets: standstillPower },
    { says: "reactance it shows, one phase", unit: "ohm", expect: plateCircuit.X_k },
  ],
  accept: "Three pairs agree within 5 %: then the circuit is known well enough to trust its breakdown torque.",
});

export const firstRotation = step({
  id: "spindle.first-rotation",
  per: spindle,
  title: "First rotation, motor off the belt",
  hazards: [mains, storedCharge, rotatingSpindle],
  after: ["spindle.standstill", "supply.survey"],
  gate: "stop",
  does: [
    "Take the belt off and the key out of the shaft, or tape it in; guard closed.",
    "Connect the winding as decided; another pair of eyes goes over the links.",
    "Set base frequency and base voltage to the rating of the winding as it is connected, current limit 60 % of plate, ramp 5 s, stop by coasting.",
    "Run at 5 Hz and look at the direction, then at 60 Hz.",
    "Write volts and amperes at 10, 20, 30, 50 and 60 Hz and the current of each phase.",
    "Stop at once on overcurrent or growling: a coil is reversed.",
  ],
  reads: [
    { says: "base frequency set", unit: "1/s", sets: baseFrequencySet },
    { says: "base voltage set", unit: "V", sets: baseVoltageSet },
    { says: "current limit set", sets: currentLimit },
    { says: "ramp set", unit: "s", sets: rampUp },
    { says: "voltage without load", unit: "V", sets: noLoadVoltage },
    { says: "frequency of it", unit: "1/s", sets: noLoadFrequency },
    { says: "current without load", unit: "A", sets: noLoadCurrent, expect: plateCircuit.I_0 },
    { says: "power without load", unit: "W", sets: noLoadPower },
  ],
  accept: "Direction right, phase currents equal within 5 %, current without load in the expected band.",
});

export const pumpMotorTests = step({
  id: "spindle.pump-motor",
  per: pump,
  title: "Pump motor: insulation, winding, direction",
  hazards: [mains, hotParts],
  after: ["supply.survey"],
  gate: "power",
  does: [
    "Isolate, lock off, prove dead; leads free; 500 V dc to the frame for a minute, then discharge.",
    "Resistances of like coils; a capacitor on the case means that no drive may feed it.",
    "Put the links back as the plate wants them for this line.",
    "Direction first: a touch of the switch, and look; a pump that runs backwards delivers little and sounds alike.",
    "Current of each line at full flow against the plate.",
  ],
  reads: [{ says: "insulation, brought to 40 degC", unit: "ohm", sets: insulationResistance }],
  accept: "More than 5 Mohm at 40 degC, right direction, current within the plate.",
});
