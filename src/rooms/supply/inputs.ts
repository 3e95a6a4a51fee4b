// What the shop and a machine say about their supply.
import { input, listInput, wordInput } from "../../kernel/figure.ts";
import { machine, scope, shop } from "../../kernel/item.ts";
import { serviceKinds } from "./service.ts";

const kinds = Object.keys(serviceKinds) as (keyof typeof serviceKinds)[];

export const serviceKind = wordInput({
  key: "supply.kind",
  per: shop,
  says: "kind of service",
  words: kinds,
  required: true,
  measure: "A licensed person reads it at the main panel: lines, neutral, and each line against earth. Mains can kill.",
});
export const voltage = input({
  key: "supply.voltage",
  per: shop,
  symbol: "V",
  unit: "V",
  says: "voltage between lines",
  required: true,
  measure:
    "Meter at the main switch, idle and under load, with leads rated for it; leave it to licensed practice where the local code says so.",
});
export const rating = input({
  key: "supply.rating",
  per: shop,
  symbol: "I_r",
  unit: "A",
  says: "rating of the service",
  required: true,
  measure: "Plate of the main device that feeds the shop.",
});
export const continuousShare = input({
  key: "supply.continuous-share",
  per: shop,
  symbol: "u",
  unit: "1",
  kind: "share",
  says: "share the local code lets run for hours",
  typical: { value: "80 %", source: "a usual code rule; the local code decides", unchecked: true },
  measure: "Ask whoever answers for the local code.",
});
export const existing = input({
  key: "supply.existing",
  per: shop,
  symbol: "I_ex",
  unit: "A",
  says: "what the house already draws",
  required: true,
  measure: "Hang a clamp logger on the main lines for a week, or add up what really runs at the same time.",
});
export const sourceInductance = input({
  key: "supply.source.inductance",
  per: shop,
  symbol: "L_s",
  unit: "H",
  says: "inductance of the source, at the panel",
  typical: { value: "0.1 to 0.5 mH", source: "engineering assumption", unchecked: true },
  measure: "Hardly to be measured at home; ask the distributor for the fault level.",
});
export const idleVoltage = input({
  key: "supply.load-test.idle",
  per: shop,
  symbol: "V_0",
  unit: "V",
  says: "voltage at the panel without the test load",
  measure: "Meter at the panel, test load off.",
});
export const loadedVoltage = input({
  key: "supply.load-test.loaded",
  per: shop,
  symbol: "V_1",
  unit: "V",
  says: "voltage at the panel with the test load",
  measure: "Meter at the panel, a heater of known current on, within a minute of the idle reading.",
});
export const testCurrent = input({
  key: "supply.load-test.current",
  per: shop,
  symbol: "I_1",
  unit: "A",
  says: "current of the test load",
  measure: "Clamp on one line of the heater.",
});
export const lineVoltages = listInput({
  key: "supply.line-voltages",
  was: ["supply.unbalance"],
  per: shop,
  symbol: "V_i",
  unit: "V",
  says: "three line voltages under load",
  none: true,
  measure: "All three line-to-line voltages while the largest motor cuts; on a converter never idle.",
});
export const residualTrip = input({
  key: "supply.residual-current.trip",
  per: shop,
  symbol: "I_trip",
  unit: "A",
  kind: "small-current",
  says: "trip current of the residual-current device",
  none: true,
  measure: "Printed on the device (30 mA, 300 mA).",
});
export const residualType = wordInput({
  key: "supply.residual-current.type",
  per: shop,
  says: "type of the residual-current device",
  words: ["AC", "A", "F", "B"],
  none: true,
  measure: "Printed on the device beside its symbol.",
});
export const dipLimit = input({
  key: "supply.dip-limit",
  per: shop,
  symbol: "d_max",
  unit: "1",
  kind: "share",
  says: "dip that may be seen when a motor starts",
  typical: { value: "5 %", source: "flicker in a house, assumption; 15 % would do for machines alone", unchecked: true },
  measure: "Your own eyes and the neighbours'.",
});
export const dropLimit = input({
  key: "supply.drop-limit",
  per: shop,
  symbol: "d_lim",
  unit: "1",
  kind: "share",
  says: "drop that the other loads may cause at a machine",
  typical: { value: "5 %", source: "usual limit for motors, assumption", unchecked: true },
  measure: "A decision: what every drive is reckoned with. Lower it when the check on it holds easily.",
});
export const othersDrop = input({
  key: "supply.others-drop",
  per: shop,
  symbol: "s",
  unit: "1",
  kind: "share",
  says: "how much of that drop is there just now",
  typical: { value: "0 to 100 %", source: "anything up to the limit, since nobody knows what else runs" },
  measure: "Log the voltage at the machine for a day while the rest of the shop works.",
});
export const powerFactor = input({
  key: "supply.power-factor",
  per: shop,
  symbol: "pf",
  unit: "1",
  kind: "ratio",
  says: "power factor of the whole load",
  typical: { value: "0.7 to 0.9", source: "rectifiers and small motors together, assumption", unchecked: true },
  measure: "A meter that shows power factor, while everything runs.",
});

/** What a machine draws that no other key describes. */
export const load = scope({ name: "load", says: "a load", mounts: ["supply.loads.*"] });
export const loadPower = input({
  key: "power",
  per: load,
  symbol: "P",
  unit: "W",
  kind: "heat",
  says: "power of the load",
  required: true,
  measure: "Its plate, or a plug-in meter.",
});
export const loadShare = input({
  key: "share",
  per: load,
  symbol: "u",
  unit: "1",
  kind: "share",
  says: "share of the time it runs",
  typical: { value: "20 to 100 %", source: "nobody has counted", unchecked: true },
  measure: "Watch it for an hour.",
});

export const runLength = input({
  key: "supply.run.length",
  per: machine,
  symbol: "L",
  unit: "m",
  kind: "distance",
  says: "length of the run, one way",
  measure: "Tape along the cable from panel to machine.",
});
export const runSize = input({
  key: "supply.run.size",
  per: machine,
  symbol: "A",
  unit: "m2",
  kind: "wire-size",
  says: "section of its conductors",
  measure: "Print on the sheath.",
});
export const runMaterial = wordInput({
  key: "supply.run.material",
  per: machine,
  says: "metal of its conductors",
  words: ["copper", "aluminium"],
  typical: ["copper"],
  source: "wire of this size in houses is copper almost everywhere",
  measure: "Print on the sheath; bare ends are red or grey.",
});
export const runTemperature = input({
  key: "supply.run.temperature",
  per: machine,
  symbol: "T",
  unit: "K",
  kind: "temperature",
  says: "temperature of its conductors at work",
  typical: { value: "50 to 70 degC", source: "PVC insulation is rated for 70 degC" },
  measure: "Contact thermometer on the sheath after an hour of load, some kelvin added.",
});
export const runReactance = input({
  key: "supply.run.reactance",
  per: machine,
  symbol: "x",
  unit: "ohm/m",
  says: "reactance of the run per length",
  typical: { value: "0.08 mohm/m", source: "IEC 60364-5-52 annex G, cables below 70 mm2" },
  measure: "Not worth measuring below 70 mm2.",
});
export const ampacity = input({
  key: "supply.run.ampacity",
  per: machine,
  symbol: "I_z",
  unit: "A",
  says: "current the local code allows on the run",
  required: true,
  measure: "From the local code for this cable, laid as it is; entered by you, never guessed. Ask licensed practice.",
});
export const protection = input({
  key: "supply.run.protection.rating",
  per: machine,
  symbol: "I_n",
  unit: "A",
  says: "rating of the device that protects the run",
  measure: "Printed on breaker or fuse.",
});
export const letThrough = input({
  key: "supply.run.protection.let-through",
  per: machine,
  symbol: "J",
  unit: "A2*s",
  says: "let-through of that device",
  measure: "Data sheet of the breaker or fuse: I2t at the fault current.",
});
export const initialTemperature = input({
  key: "supply.run.before-fault",
  per: machine,
  symbol: "T_i",
  unit: "K",
  kind: "temperature",
  says: "temperature of the conductors before a fault",
  typical: { value: "70 degC", source: "limit of PVC insulation at work, IEC 60364-5-54" },
  measure: "From the insulation: 70 degC PVC, 90 degC cross-linked.",
});
export const finalTemperature = input({
  key: "supply.run.after-fault",
  per: machine,
  symbol: "T_f",
  unit: "K",
  kind: "temperature",
  says: "temperature its insulation stands after a fault",
  typical: { value: "160 degC", source: "PVC up to 300 mm2, IEC 60364-5-54" },
  measure: "From the insulation: 160 degC PVC, 250 degC cross-linked.",
});
export const transformerShare = input({
  key: "supply.transformer.share",
  per: machine,
  symbol: "u_t",
  unit: "1",
  kind: "share",
  says: "share of its plate a transformer may carry for hours",
  typical: { value: "80 to 100 %", source: "dry transformers of this size, assumption", unchecked: true },
  measure: "Its papers.",
});
export const transformerPlate = input({
  key: "supply.transformer.plate",
  per: machine,
  symbol: "S_t",
  unit: "VA",
  says: "plate rating of the transformer",
  none: true,
  measure: "Its plate.",
});
export const lowVoltage = input({
  key: "supply.transformer.low",
  per: machine,
  symbol: "V_low",
  unit: "V",
  says: "lower voltage of an autotransformer",
  measure: "Its plate.",
});
export const highVoltage = input({
  key: "supply.transformer.high",
  per: machine,
  symbol: "V_high",
  unit: "V",
  says: "higher voltage of an autotransformer",
  measure: "Its plate.",
});
export const converterKind = wordInput({
  key: "supply.converter.kind",
  per: machine,
  says: "kind of phase converter",
  words: ["static", "rotary"],
  none: true,
  measure: "A rotary one has a motor that turns without driving anything.",
});
export const converterMotor = input({
  key: "supply.converter.motor",
  per: machine,
  symbol: "P_m",
  unit: "W",
  says: "largest motor that starts on the converter",
  measure: "Its plate.",
});
export const converterIdler = input({
  key: "supply.converter.idler",
  per: machine,
  symbol: "P_i",
  unit: "W",
  says: "plate power of the idler",
  measure: "Plate of the converter's own motor.",
});
export const filterLeakage = input({
  key: "supply.earth-leakage.filter",
  per: machine,
  symbol: "I_f",
  unit: "A",
  kind: "small-current",
  says: "standing leakage of the line filters",
  typical: { value: "0 to 5 mA", source: "filters of drives this size, assumption", unchecked: true },
  measure: "Data sheet, or a leakage clamp around all live conductors together.",
});
export const cableCapacitance = input({
  key: "supply.earth-leakage.cable-capacitance",
  per: machine,
  symbol: "c",
  unit: "F/m",
  says: "capacitance of screened motor cable to its screen, per length",
  typical: { value: "0.1 to 0.3 nF/m", source: "practice", unchecked: true },
  measure: "Capacitance meter on a coil of the cable, all cores against the screen.",
});
