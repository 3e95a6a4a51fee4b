// What is written of a motor, wherever one is mounted: plate, links, and what was measured on it.
import { input, listsInput, pairInput, textInput, wordInput } from "../../kernel/figure.ts";
import { motor } from "../ground/index.ts";
import { CODE_LETTERS } from "./plate.ts";

export const motorKind = wordInput({
  key: "kind",
  per: motor,
  says: "kind of motor",
  words: ["induction", "two-speed", "dc", "servo", "stepper", "wound-rotor", "capacitor"],
  required: true,
  head: true,
  measure:
    "The plate says it, or the leads: three equal windings and no brushes is induction; a capacitor on the case is a capacitor motor.",
});
export const platePhases = wordInput({
  key: "plate.phases",
  per: motor,
  says: "phases of the motor",
  words: ["1", "3"],
  typical: ["3"],
  source: "motors of machine tools; a motor from the household says 1 on its plate",
  measure: "Photo of the plate; a capacitor on the case means one.",
});
/** Figures of the three-phase circuit exist for such motors only. */
export const induction = {
  when: [
    { word: motorKind, is: ["induction"] },
    { word: platePhases, is: ["3"] },
  ],
} as const;

export const platePower = input({
  key: "plate.power",
  per: motor,
  symbol: "P_n",
  unit: "W",
  says: "power on the plate, at the shaft",
  measure: "Photo of the plate. hp is 745.7 W, PS 735.5 W; kW input is not output.",
});
export const plateVoltage = pairInput({
  key: "plate.voltage",
  per: motor,
  symbol: "V_p",
  unit: "V",
  says: "voltage or voltages on the plate",
  measure: "Photo of the plate; two voltages as 230/460 V.",
});
export const plateCurrent = pairInput({
  key: "plate.current",
  per: motor,
  symbol: "I_p",
  unit: "A",
  says: "current or currents on the plate, in the order of the voltages",
  measure: "Photo of the plate; two currents as 20.4/10.2 A.",
});
export const plateFrequency = input({
  key: "plate.frequency",
  per: motor,
  symbol: "f_n",
  unit: "1/s",
  kind: "frequency",
  says: "frequency on the plate",
  measure: "Photo of the plate.",
});
export const plateSpeed = input({
  key: "plate.speed",
  per: motor,
  symbol: "n_n",
  unit: "rad/s",
  says: "speed on the plate, under load",
  measure: "Photo of the plate; a little below 3600, 1800, 1200 rpm at 60 Hz.",
});
export const plateDesign = wordInput({
  key: "plate.design",
  per: motor,
  says: "design letter",
  words: ["A", "B", "C", "D", "N", "H", "wound"],
  measure: "Photo of the plate; a letter beside 'design'.",
});
export const plateCode = wordInput({
  key: "plate.code",
  per: motor,
  says: "code letter of the locked-rotor current",
  words: CODE_LETTERS,
  measure: "Photo of the plate; a letter beside 'code'.",
});
export const insulationClass = wordInput({
  key: "plate.insulation",
  per: motor,
  says: "insulation class",
  words: ["A", "E", "B", "F", "H"],
  typical: ["B"],
  source: "usual before the 1990s, unchecked",
  measure: "Photo of the plate.",
});
export const plateDuty = textInput({
  key: "plate.duty",
  per: motor,
  says: "duty on the plate",
  measure: "Photo of the plate; continuous, or minutes.",
});

export const leads = input({
  key: "leads",
  per: motor,
  symbol: "n_l",
  unit: "1",
  kind: "count",
  says: "leads in the terminal box",
  measure: "Count them, isolated and proved dead.",
});
export const winding = wordInput({
  key: "winding",
  per: motor,
  says: "how the inner ends are joined",
  words: ["star", "delta"],
  typical: ["star"],
  source: "usual for 9 leads up to about 10 hp, unchecked",
  measure: "Continuity: 9 leads in one group of three and three pairs are star, in three groups of three delta.",
});
export const windingSpeeds = input({
  key: "speeds",
  per: motor,
  symbol: "n_sp",
  unit: "1",
  kind: "count",
  says: "speeds the winding was made for",
  typical: { value: "1", source: "two-speed plates carry two speeds" },
  measure: "Plate; six leads with continuity among all of them are a two-speed winding.",
});
export const connected = wordInput({
  key: "connected",
  per: motor,
  says: "how the winding is connected now",
  words: ["star", "delta", "series", "parallel", "series-star", "parallel-star", "series-delta", "parallel-delta"],
  measure: "Open the terminal box, isolated and proved dead; photograph every joint; write the joined leads as links.",
});
export const links = listsInput({
  key: "links",
  per: motor,
  says: "leads joined with each other",
  measure: "As seen in the terminal box: 4-7, 5-8, 6-9.",
});
export const lines = listsInput({
  key: "lines",
  per: motor,
  says: "leads on each of the three lines",
  measure: "As seen in the terminal box: 1, 2, 3 or 1-7, 2-8, 3-9.",
});
export const inverterRated = wordInput({
  key: "inverter-rated",
  per: motor,
  says: "wound for a drive",
  words: ["yes", "no"],
  typical: ["no"],
  source: "windings before 1995 are not",
  measure: "The plate or papers say so; otherwise no.",
});

export const resistance = input({
  key: "resistance",
  per: motor,
  symbol: "R_ll",
  unit: "ohm",
  says: "dc resistance between two lines",
  none: true,
  measure:
    "Isolated, drive disconnected, leads free: four wires, 1 to 5 A from a bench supply, volts at the leads; all three pairs, with the temperature.",
});
export const resistanceTemperature = input({
  key: "resistance-temperature",
  per: motor,
  symbol: "T_R",
  unit: "K",
  kind: "temperature",
  says: "temperature of the winding during that reading",
  typical: { value: "15 to 25 degC", source: "a shop, the motor cold since yesterday" },
  measure: "Thermometer on the case after a night of rest.",
});
export const testedAs = wordInput({
  key: "tested-as",
  per: motor,
  says: "how it was connected while it was measured",
  words: ["star", "delta", "series", "parallel", "series-star", "parallel-star", "series-delta", "parallel-delta"],
  measure: "Write it with the reading; every ohm changes with the links.",
});
const test = (of: "no-load" | "standstill", how: string) => ({
  voltage: input({
    key: `${of}.voltage`,
    per: motor,
    symbol: "V_t",
    unit: "V",
    says: `voltage of the ${of} test, between lines`,
    measure: how,
  }),
  frequency: input({
    key: `${of}.frequency`,
    per: motor,
    symbol: "f_t",
    unit: "1/s",
    kind: "frequency",
    says: `frequency of the ${of} test`,
    measure: how,
  }),
  current: input({ key: `${of}.current`, per: motor, symbol: "I_t", unit: "A", says: `current of the ${of} test`, measure: how }),
  power: input({ key: `${of}.power`, per: motor, symbol: "P_t", unit: "W", kind: "heat", says: `power of the ${of} test`, measure: how }),
});
const noLoad = test(
  "no-load",
  "Belt off, drive at rated volts and hertz, guard closed: volts, hertz and amperes from the display or a clamp, watts if it shows them.",
);
const standstill = test(
  "standstill",
  "Drive disconnected: 12 to 36 V from an isolating transformer across two line terminals, third open, ten seconds at most; volts, amperes, watts.",
);
export const noLoadVoltage = noLoad.voltage;
export const noLoadFrequency = noLoad.frequency;
export const noLoadCurrent = noLoad.current;
export const noLoadPower = noLoad.power;
export const standstillVoltage = standstill.voltage;
export const standstillFrequency = standstill.frequency;
export const standstillCurrent = standstill.current;
export const standstillPower = standstill.power;
export const loadedSlip = input({
  key: "loaded-slip",
  per: motor,
  symbol: "n_slip",
  unit: "rad/s",
  says: "slip under one known load, below the speed of the field",
  measure: "Tachometer on the shaft in a steady 70 % cut, at rated volts and hertz; write the line current as loaded-current.",
});
export const loadedCurrent = input({
  key: "loaded-current",
  per: motor,
  symbol: "I_slip",
  unit: "A",
  says: "line current while that slip was read",
  measure: "Clamp on one motor lead, or the drive's display.",
});

export const motorInertia = input({
  key: "inertia",
  per: motor,
  symbol: "J_m",
  unit: "kg*m2",
  says: "inertia of the rotor",
  measure: "Data sheet; or coast-down and spin-up together once it turns.",
});
export const motorTopSpeed = input({
  key: "highest-speed",
  per: motor,
  symbol: "n_max",
  unit: "rad/s",
  says: "highest speed the motor's maker allows",
  measure: "Papers; otherwise plate speed and a maker's word for more.",
});
export const fan = wordInput({
  key: "fan",
  per: motor,
  says: "how the motor is cooled",
  words: ["shaft", "separate", "none"],
  typical: ["shaft"],
  source: "enclosed motors of this age carry their fan on the shaft",
  measure: "Look under the cowl, isolated.",
});
export const timeConstant = input({
  key: "time-constant",
  per: motor,
  symbol: "tau",
  unit: "s",
  says: "thermal time constant of the motor",
  typical: { value: "15 to 40 min", source: "totally enclosed, 3 to 8 kW, assumption", unchecked: true },
  measure: "Case temperature during the heat run.",
});
export const copperHeatShare = input({
  key: "copper-heat-share",
  per: motor,
  symbol: "k_cu",
  unit: "1",
  kind: "share",
  says: "share of the heat at plate load that goes with current squared",
  typical: { value: "60 to 75 %", source: "motors of 1 to 10 kW, assumption", unchecked: true },
  measure: "From the circuit once resistance and run without load are measured.",
});
export const standstillCooling = input({
  key: "standstill-cooling",
  per: motor,
  symbol: "g_0",
  unit: "1",
  kind: "share",
  says: "cooling left at standstill",
  typical: { value: "20 to 40 %", source: "fan on the shaft, engineering model", unchecked: true },
  measure: "A heat run at low speed replaces it.",
});
