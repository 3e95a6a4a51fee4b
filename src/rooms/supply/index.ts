// Supply: from the meter to the machine's terminals.
import { room } from "../../kernel/room.ts";
import * as conductor from "./conductor.ts";
import * as demand from "./demand.ts";
import * as dip from "./dip.ts";
import * as drop from "./drop.ts";
import * as inputs from "./inputs.ts";
import * as leakage from "./leakage.ts";
import * as pictures from "./pictures.ts";
import * as slots from "./slots.ts";
import * as source from "./source.ts";
import * as steps from "./steps.ts";
import * as transformer from "./transformer.ts";
import * as unbalance from "./unbalance.ts";

export { inductanceToMachine, resistanceToMachine } from "./conductor.ts";
export { voltageOffered } from "./drop.ts";
export { lineVoltages, serviceKind } from "./inputs.ts";
export { screenedCable } from "./leakage.ts";
export { lineFactor, serviceKinds } from "./service.ts";
export { draws, eachDraw, eachShare, ownDrive, peaks, shopDraws, starts } from "./slots.ts";
export { frequency, phases } from "./source.ts";
export { supplyNegativeSequence } from "./unbalance.ts";

export const supply = room({
  name: "supply",
  title: "Supply",
  answers: "Can this service carry the machine, and what voltage is left where it stands?",
  brings: [slots, inputs, source, conductor, demand, drop, dip, unbalance, leakage, transformer, steps, pictures],
});
