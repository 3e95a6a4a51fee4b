// Bring-up of the supply: what is read before anything of the machine is connected.
import { machine } from "../../kernel/item.ts";
import { step } from "../../kernel/room.ts";
import { mains } from "../ground/index.ts";
import { idleVoltage, lineVoltages, loadedVoltage, serviceKind, testCurrent, voltage } from "./inputs.ts";
import { voltageToEarth } from "./leakage.ts";

export const survey = step({
  id: "supply.survey",
  per: machine,
  title: "Survey the supply",
  hazards: [mains],
  after: [],
  does: [
    "Leave this to licensed practice wherever the local code says so.",
    "Read the label of the main device and the kind of service.",
    "Measure each line against each other line, then each line against earth.",
    "Read once with nothing running, once within a minute of switching a heater of known current on.",
    "With a phase converter read all three lines while the largest motor works; idle readings say nothing.",
  ],
  reads: [
    { says: "kind of service", sets: serviceKind },
    { says: "voltage between lines", unit: "V", sets: voltage },
    { says: "highest voltage of a line against earth", unit: "V", expect: voltageToEarth },
    { says: "voltage without the test load", unit: "V", sets: idleVoltage },
    { says: "voltage with the test load", unit: "V", sets: loadedVoltage },
    { says: "current of the test load", unit: "A", sets: testCurrent },
    { says: "three line voltages under load", unit: "V", sets: lineVoltages },
  ],
  accept: "All voltages within 10 % of what the label says, and line against earth as the kind of service wants it.",
});
