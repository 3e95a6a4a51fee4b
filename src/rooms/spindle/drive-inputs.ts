// What is written of a drive, wherever one is mounted.
import { input, wordInput } from "../../kernel/figure.ts";
import { drive } from "../ground/index.ts";

export const driveCurrent = input({
  key: "rated-current",
  per: drive,
  symbol: "I_d",
  unit: "A",
  says: "rated output current",
  measure: "Data sheet or plate of the drive.",
});
export const driveInputCurrent = input({
  key: "rated-input-current",
  per: drive,
  symbol: "I_di",
  unit: "A",
  says: "rated input current, on three phases",
  measure: "Data sheet or plate of the drive.",
});
export const inputPhases = input({
  key: "input-phases",
  per: drive,
  symbol: "n_in",
  unit: "1",
  kind: "count",
  says: "phases the drive was made to be fed with",
  measure: "Data sheet or plate of the drive.",
});
export const fedFrom = wordInput({
  key: "fed",
  per: drive,
  says: "what a drive on one phase stands between",
  words: ["line-to-line", "line-to-neutral"],
  measure: "Its papers and the terminals it is wired to, by a licensed person: two lines, or a line and the neutral.",
});
export const singlePhase = wordInput({
  key: "single-phase",
  per: drive,
  says: "papers allow one phase in",
  words: ["yes", "no"],
  typical: ["yes", "no"],
  source: "nobody has looked; some drives trip on a lost phase",
  measure: "Its papers: single-phase input allowed, and with what derating. A drive that watches its phases trips.",
});
export const overloadShare = input({
  key: "overload.share",
  per: drive,
  symbol: "k_o",
  unit: "1",
  kind: "share",
  says: "overload for a short time",
  typical: { value: "150 %", source: "usual for 60 s, unchecked", unchecked: true },
  measure: "Data sheet of the drive.",
});
export const overloadTime = input({
  key: "overload.time",
  per: drive,
  symbol: "t_o",
  unit: "s",
  says: "how long that overload may last",
  typical: { value: "60 s", source: "usual, unchecked", unchecked: true },
  measure: "Data sheet of the drive.",
});
export const capacitancePerPower = input({
  key: "bus.capacitance-per-power",
  per: drive,
  symbol: "c_b",
  unit: "F/W",
  says: "bus capacitance per rated power",
  typical: { value: "150 to 600 uF/kW", source: "drives at large", unchecked: true },
  measure: "Data sheet; write the capacitance itself.",
});
export const busTrip = input({
  key: "bus.trip",
  per: drive,
  symbol: "V_trip",
  unit: "V",
  says: "bus voltage at which the drive trips",
  measure: "Data sheet, or the limit shown among its parameters.",
});
export const resistorOn = input({
  key: "bus.resistor-on",
  per: drive,
  symbol: "V_on",
  unit: "V",
  says: "bus voltage at which the chopper switches on",
  measure: "Data sheet.",
});
export const underVoltage = input({
  key: "bus.under-voltage",
  per: drive,
  symbol: "V_uv",
  unit: "V",
  says: "bus voltage below which the drive gives up",
  measure: "Data sheet.",
});
export const busBleed = input({
  key: "bus.bleed",
  per: drive,
  symbol: "R_b",
  unit: "ohm",
  says: "resistor that empties the bus after isolation",
  measure: "Data sheet; otherwise time the bus down with a meter rated for it.",
});
export const smallestResistor = input({
  key: "chopper.smallest-resistor",
  per: drive,
  symbol: "R_min",
  unit: "ohm",
  says: "smallest braking resistor the chopper allows",
  measure: "Data sheet.",
});
export const brakeResistor = input({
  key: "resistor.resistance",
  per: drive,
  symbol: "R_br",
  unit: "ohm",
  says: "braking resistor fitted",
  none: true,
  measure: "Its plate; cold, isolated, bus proved empty.",
});
export const brakeResistorPower = input({
  key: "resistor.power",
  per: drive,
  symbol: "P_br",
  unit: "W",
  kind: "heat",
  says: "power the braking resistor stands for hours",
  none: true,
  measure: "Its plate.",
});
export const driveMode = wordInput({
  key: "mode",
  per: drive,
  says: "how volts follow hertz",
  words: ["volts-per-hertz", "vector", "vector-with-encoder"],
  typical: ["volts-per-hertz"],
  source: "as drives leave their box",
  measure: "A parameter of the drive.",
});
export const baseFrequencySet = input({
  key: "base.frequency",
  per: drive,
  symbol: "f_set",
  unit: "1/s",
  kind: "frequency",
  says: "base frequency set in the drive",
  measure: "A parameter of the drive.",
});
export const baseVoltageSet = input({
  key: "base.voltage",
  per: drive,
  symbol: "V_set",
  unit: "V",
  says: "base voltage set in the drive",
  measure: "A parameter of the drive: the rating of the winding as it is connected.",
});
export const currentLimit = input({
  key: "current-limit",
  per: drive,
  symbol: "k_i",
  unit: "1",
  kind: "share",
  says: "current limit set, as a share of rated",
  typical: { value: "100 %", source: "as drives leave their box", unchecked: true },
  measure: "A parameter of the drive.",
});
export const choke = input({
  key: "choke",
  per: drive,
  symbol: "x_c",
  unit: "1",
  kind: "share",
  says: "line choke before the drive",
  none: true,
  measure: "Its plate: 3 % or 5 %, or millihenries and amperes.",
});
export const rampUp = input({
  key: "ramp.up",
  per: drive,
  symbol: "t_up",
  unit: "s",
  says: "ramp to highest speed",
  measure: "A parameter of the drive.",
});
export const rampDown = input({
  key: "ramp.down",
  per: drive,
  symbol: "t_dn",
  unit: "s",
  says: "ramp from highest speed to standstill",
  measure: "A parameter of the drive.",
});
export const carrier = input({
  key: "carrier",
  per: drive,
  symbol: "f_c",
  unit: "1/s",
  kind: "pulse-rate",
  says: "carrier frequency",
  measure: "A parameter of the drive.",
});
export const motorCableLength = input({
  key: "cable.length",
  per: drive,
  symbol: "l",
  unit: "m",
  kind: "distance",
  says: "cable from drive to motor",
  measure: "Tape.",
});
export const cableScreened = wordInput({
  key: "cable.screened",
  per: drive,
  says: "motor cable screened",
  words: ["yes", "no"],
  typical: ["yes", "no"],
  source: "nobody has looked",
  measure: "Braid under the sheath.",
});
export const riseTime = input({
  key: "cable.rise-time",
  per: drive,
  symbol: "t_r",
  unit: "s",
  kind: "short-time",
  says: "rise time of the drive's edges",
  typical: { value: "0.1 to 0.4 us", source: "transistors of such drives", unchecked: true },
  measure: "Data sheet.",
});
export const outputFilter = wordInput({
  key: "filter",
  per: drive,
  says: "filter between drive and motor",
  words: ["edge", "sine"],
  none: true,
  measure: "A box with three leads in and three out; its plate says edge (dv/dt) or sine.",
});
export const deadTimeFactor = input({
  key: "dead-time-factor",
  per: drive,
  symbol: "k_dt",
  unit: "1",
  kind: "ratio",
  says: "what dead time leaves of the output voltage",
  typical: { value: "0.95 to 0.98", source: "Rashid, Power Electronics, ch. 6; practice", unchecked: true },
  measure: "Volts between two outputs at full speed against the bus, with a meter for such wave shapes.",
});
export const driveEfficiency = input({
  key: "efficiency",
  per: drive,
  symbol: "eta_d",
  unit: "1",
  kind: "share",
  says: "efficiency of the drive",
  typical: { value: "95 to 98 %", source: "practice", unchecked: true },
  measure: "Not at home.",
});
