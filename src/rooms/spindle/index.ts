// Spindle: from the drive to the cutting edge.
import { room } from "../../kernel/room.ts";
import * as capability from "./capability.ts";
import * as cutDrill from "./cut-drill.ts";
import * as cutInputs from "./cut-inputs.ts";
import * as cutMill from "./cut-mill.ts";
import * as cutPath from "./cut-path.ts";
import * as cutTurn from "./cut-turn.ts";
import * as cutWork from "./cut-work.ts";
import * as cuts from "./cuts.ts";
import * as driveBus from "./drive-bus.ts";
import * as driveVoltages from "./drive-voltages.ts";
import * as driveInputs from "./drive-inputs.ts";
import * as fullFlux from "./full-flux.ts";
import * as loads from "./loads.ts";
import * as motor from "./motor.ts";
import * as reach from "./reach.ts";
import * as inputs from "./spindle-inputs.ts";
import * as motorCircuit from "./motor-circuit.ts";
import * as motorInputs from "./motor-inputs.ts";
import * as motorPlate from "./motor-plate.ts";
import * as driveDischarge from "./drive-discharge.ts";
import * as motorDc from "./motor-dc.ts";
import * as motorHeat from "./motor-heat.ts";
import * as motorKinds from "./motor-kinds.ts";
import * as motorLinks from "./motor-links.ts";
import * as motorServo from "./motor-servo.ts";
import * as motorShaft from "./motor-shaft.ts";
import * as motorTestFigures from "./motor-test-figures.ts";
import * as motorUnbalance from "./motor-unbalance.ts";
import * as bearings from "./bearings.ts";
import * as belts from "./belts.ts";
import * as cutNotices from "./cut-notices.ts";
import * as insulation from "./insulation.ts";
import * as limits from "./limits.ts";
import * as mass from "./mass.ts";
import * as measuredMass from "./measured-mass.ts";
import * as pictures from "./pictures.ts";
import * as picturesDrive from "./pictures-drive.ts";
import * as picturesMotor from "./pictures-motor.ts";
import * as picturesHeat from "./pictures-heat.ts";
import * as picturesNarrowing from "./pictures-narrowing.ts";
import * as picturesTorque from "./pictures-torque.ts";
import * as pumpMotors from "./pump-motors.ts";
import * as spinUp from "./spin-up.ts";
import * as steps from "./steps.ts";
import * as stepsTurning from "./steps-turning.ts";
import * as stopping from "./stopping.ts";
import * as testCuts from "./test-cuts.ts";
import * as ratios from "./ratios.ts";

import { shippedCatalogue } from "./shipped.ts";

export const spindle = room({
  name: "spindle",
  title: "Spindle",
  answers: "Can this motor, on this drive and supply, turn this spindle hard enough for these cuts, and for how long?",
  catalogue: shippedCatalogue,
  brings: [
    inputs,
    motorInputs,
    driveInputs,
    cutInputs,
    ratios,
    motorPlate,
    motorCircuit,
    driveBus,
    motor,
    driveDischarge,
    driveVoltages,
    motorDc,
    motorHeat,
    motorKinds,
    motorLinks,
    motorServo,
    motorShaft,
    motorTestFigures,
    motorUnbalance,
    fullFlux,
    capability,
    cutWork,
    cutTurn,
    cutDrill,
    cutMill,
    cuts,
    cutPath,
    reach,
    loads,
    mass,
    spinUp,
    stopping,
    belts,
    limits,
    bearings,
    testCuts,
    measuredMass,
    cutNotices,
    pumpMotors,
    insulation,
    steps,
    stepsTurning,
    picturesTorque,
    picturesMotor,
    picturesDrive,
    pictures,
    picturesNarrowing,
    picturesHeat,
  ],
});
