// Spindle: from the drive to the cutting edge.
import { room } from "../../kernel/room.ts";
import * as capability from "./capability.ts";
import * as cutDrill from "./cut-drill.ts";
import * as cutInputs from "./cut-inputs.ts";
import * as cutMill from "./cut-mill.ts";
import * as cutTurn from "./cut-turn.ts";
import * as cutWork from "./cut-work.ts";
import * as cuts from "./cuts.ts";
import * as driveBus from "./drive-bus.ts";
import * as driveInputs from "./drive-inputs.ts";
import * as inputs from "./spindle-inputs.ts";
import * as motorCircuit from "./motor-circuit.ts";
import * as motorInputs from "./motor-inputs.ts";
import * as motorPlate from "./motor-plate.ts";
import * as ratios from "./ratios.ts";

export const spindle = room({
  name: "spindle",
  title: "Spindle",
  answers: "Can this motor, on this drive and supply, turn this spindle hard enough for these cuts, and for how long?",
  brings: [
    inputs,
    motorInputs,
    driveInputs,
    cutInputs,
    ratios,
    motorPlate,
    motorCircuit,
    driveBus,
    capability,
    cutWork,
    cutTurn,
    cutDrill,
    cutMill,
    cuts,
  ],
});
