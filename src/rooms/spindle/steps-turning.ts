// Bring-up of the spindle, second half: turning, from run-in to run-out.
import { step } from "../../kernel/room.ts";
import { burningChips, hotParts, mains, rotatingSpindle, spindle, storedCharge } from "../ground/index.ts";
import { bearingPlateau, runInTemperature, runInTime } from "./bearings.ts";
import { rampDown, resistorOn } from "./drive-inputs.ts";
import { speedLimit } from "./limits.ts";
import { energyDropHeight, frictionAtTop, frictionSteady, storedEnergy } from "./mass.ts";
import { coastDownSpeed, coastDownTime, spinUpRecordSpeed, spinUpRecordTime, spinUpRecordTorque } from "./measured-mass.ts";
import { loadedCurrent, loadedSlip, motorInertia } from "./motor-inputs.ts";
import { spinUpTime } from "./spin-up.ts";
import { busStop, coastTime, stopTime } from "./stopping.ts";
import { testDepth, testFeed, testIdle, testPower, testSpeed } from "./test-cuts.ts";

export const runIn = step({
  id: "spindle.run-in",
  per: spindle,
  title: "Run-in of the bearings",
  hazards: [rotatingSpindle, hotParts],
  after: ["spindle.first-rotation"],
  gate: "spindle",
  does: [
    "Belt on; turn the spindle by hand and feel for grit before any power.",
    "Never exceed the lowest speed that anything fitted allows.",
    "Run at 10, 20, 35, 50, 65, 80 and 100 % of the highest speed, each at least 20 min and until the rise is below 1 K in 10 min.",
    "Write time and temperature every two minutes, probes at the nose and at the rear housing.",
    "Stop when the outer case passes 60 degC, or 40 K above the room, or when the curve still accelerates.",
    "With grease the temperature rises at first by churning; back off one stage and wait, and never grease again while it is hot.",
  ],
  reads: [
    { says: "times", unit: "s", sets: runInTime },
    { says: "temperatures", unit: "K", sets: runInTemperature, expect: bearingPlateau },
  ],
  accept: "At full speed the temperature has settled below 60 degC and 40 K above the room (defaults; be stricter if you like).",
});

export const speedProof = step({
  id: "spindle.speed-proof",
  per: spindle,
  title: "Proof of speed",
  hazards: [rotatingSpindle],
  after: ["spindle.run-in"],
  gate: "spindle",
  does: [
    "Set the highest speed as a limit in the drive and in the control; a limit in software guards nobody, the drive's own comes on top.",
    "An optical tachometer against command at five speeds, both directions, guard closed.",
  ],
  reads: [{ says: "highest speed the tachometer read", unit: "rad/s", expect: speedLimit }],
  accept: "Every reading within 1 % of command, none above the lowest permitted speed.",
});

export const inertia = step({
  id: "spindle.inertia",
  per: spindle,
  title: "Inertia and friction",
  hazards: [rotatingSpindle],
  after: ["spindle.speed-proof"],
  gate: "spindle",
  does: [
    "Drive set to coast: let the spindle run down from highest speed three times and log speed against time.",
    "Set a torque limit low enough to be the limit all the way; spin up below base speed and log again.",
    "Enter both curves; inertia and friction come out of them together.",
  ],
  reads: [
    { says: "times of the coast-down", unit: "s", sets: coastDownTime, expect: coastTime },
    { says: "spindle speeds of the coast-down", unit: "rad/s", sets: coastDownSpeed },
    { says: "times of the spin-up", unit: "s", sets: spinUpRecordTime, expect: spinUpTime },
    { says: "spindle speeds of the spin-up", unit: "rad/s", sets: spinUpRecordSpeed },
    { says: "motor torque of the spin-up", unit: "N*m", sets: spinUpRecordTorque },
    { says: "inertia of the rotor, what the spindle adds taken off", unit: "kg*m2", sets: motorInertia },
    { says: "friction near standstill", unit: "N*m", sets: frictionSteady },
    { says: "friction at highest speed", unit: "N*m", sets: frictionAtTop },
  ],
  accept: "Three coast-downs within 10 % of each other; inertia and friction inside their bands.",
});

export const braking = step({
  id: "spindle.braking",
  per: spindle,
  title: "Braking",
  hazards: [rotatingSpindle, storedCharge, hotParts],
  after: ["spindle.inertia"],
  gate: "spindle",
  does: [
    "Begin with the longest ramp you can live with and watch the bus volts on the drive's display.",
    "Shorten it step by step until the bus stays just below 85 % of the way to its trip.",
    "Try the stop by the emergency stop as decided elsewhere: without power the spindle coasts.",
    "Write the bus peak and the temperature of the resistor after ten stops in a row.",
  ],
  reads: [
    { says: "ramp down", unit: "s", sets: rampDown, expect: busStop },
    { says: "time to stop from highest speed", unit: "s", expect: stopTime },
    { says: "voltage at which the chopper switches on", unit: "V", sets: resistorOn },
    { says: "energy that is stopped", unit: "J", expect: storedEnergy },
    { says: "height from which a weight of 1 kg would bring it", unit: "m", expect: energyDropHeight },
  ],
  accept: "Ten stops in a row without a trip; resistor below what its maker allows.",
});

export const cutTest = step({
  id: "spindle.cut-test",
  per: spindle,
  title: "Test cuts",
  hazards: [rotatingSpindle, burningChips, hotParts],
  after: ["spindle.braking"],
  gate: "cutting",
  does: [
    "Brass or free-cutting steel, one tool, one depth, one surface speed, three feeds; log drive power in the cut and clear of the work.",
    "Enter feeds and powers; specific force and its fall come out, and replace the row of the table.",
    "Then three minutes at 70 % load: slip by tachometer and line current together.",
  ],
  reads: [
    { says: "feeds", unit: "m", sets: testFeed },
    { says: "drive power in each cut", unit: "W", sets: testPower },
    { says: "drive power clear of the work", unit: "W", sets: testIdle },
    { says: "depth", unit: "m", sets: testDepth },
    { says: "surface speed", unit: "m/s", sets: testSpeed },
    { says: "slip at 70 % load", unit: "rad/s", sets: loadedSlip },
    { says: "line current at it", unit: "A", sets: loadedCurrent },
  ],
  accept: "The three points lie on one line within a tenth; the force is not twice the table's.",
});

export const heatRun = step({
  id: "spindle.heat-run",
  per: spindle,
  title: "Heat run",
  hazards: [mains, storedCharge, rotatingSpindle, hotParts],
  after: ["spindle.cut-test"],
  gate: "cutting",
  does: [
    "The real duty for 60 to 90 minutes, case temperature every five.",
    "Stop, isolate, prove the bus empty, and read the resistance between two lines within minutes; read on and follow it back to the instant of the stop.",
    "Winding temperature from hot and cold resistance: (R_hot/R_cold)(234.5 + T_cold) - 234.5 in degC.",
  ],
  reads: [
    { says: "case temperature at the end", unit: "K" },
    { says: "winding temperature at the stop", unit: "K" },
  ],
  accept: "Winding below the limit of its class and no longer rising; before that nothing runs unattended.",
});

export const runOut = step({
  id: "spindle.run-out",
  per: spindle,
  title: "Run-out and stiffness of the nose",
  hazards: [rotatingSpindle],
  after: ["spindle.run-in"],
  does: [
    "Locked off, turned by hand: an indicator of 0.001 mm on taper and face, cold, then again warm after an hour.",
    "Push and pull the nose with 200 to 500 N across and along, indicator on the housing.",
  ],
  reads: [
    { says: "radial run-out of the taper, warm", unit: "m" },
    { says: "axial run-out of the face, warm", unit: "m" },
    { says: "deflection under the push", unit: "m" },
  ],
  accept:
    "5 um radial and axial for a collet lathe of this class; above 20 um find the cause before more money is spent; above 10 um of deflection preload is lost (defaults; the test standard of the machine kind where you have it).",
});
