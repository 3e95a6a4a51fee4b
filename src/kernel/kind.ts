// Kinds of quantity: what a field expects, how it is said, in which unit it is shown and what it can never be.
import { standardAtmosphere } from "./constants.ts";

interface KindInfo {
  /** SI unit text; inside the program every value of the kind is in it. */
  readonly unit: string;
  /** As it stands in a sentence. */
  readonly says: string;
  /** Display units, fixed: a number does not change its unit while a slider moves. */
  readonly metric: string;
  readonly inch: string;
  readonly examples: readonly [string, ...string[]];
  /** Physical limit [SI], no matter of taste. */
  readonly lowest?: number;
  /** The kind meant when several share a unit and none is named. */
  readonly usual?: true;
  readonly whole?: true;
  /** Units of the right dimension that nobody writes for this kind: J is no torque, VA no power. */
  readonly not?: RegExp;
  /** Said when the unit is missing and a guess would be far off. */
  readonly caution?: string;
}

/** Every kind of quantity the files and the figures know. */
export const kinds = {
  length: { unit: "m", says: "a length", metric: "mm", inch: "in", examples: ["5.08 mm", "1/2 in"], lowest: 0, usual: true },
  "fine-length": { unit: "m", says: "a fine length", metric: "um", inch: "thou", examples: ["3 um", "0.1 thou"], lowest: 0 },
  distance: { unit: "m", says: "a distance", metric: "m", inch: "ft", examples: ["18 m", "60 ft"], lowest: 0 },
  position: { unit: "m", says: "a position", metric: "mm", inch: "in", examples: ["-12.5 mm", "3 in"] },
  deviation: { unit: "m", says: "a deviation", metric: "um", inch: "thou", examples: ["-3 um", "0.2 thou"] },
  slope: { unit: "m/m", says: "a length per length", metric: "um/m", inch: "thou/ft", examples: ["20 um/m", "0.5 mm/m", "0.2 thou/ft"] },
  "travel-per-turn": { unit: "m/rad", says: "a travel per turn", metric: "mm/rev", inch: "in/rev", examples: ["5 mm/rev"] },
  area: { unit: "m2", says: "an area", metric: "cm2", inch: "in2", examples: ["120 cm2", "18 in2"], lowest: 0, usual: true },
  "wire-size": { unit: "m2", says: "a wire size", metric: "mm2", inch: "mm2", examples: ["6 mm2", "AWG 10"], lowest: 0 },
  volume: { unit: "m3", says: "a volume", metric: "L", inch: "gal", examples: ["50 L", "13 gal"], lowest: 0, usual: true },
  "small-volume": { unit: "m3", says: "a volume", metric: "cm3", inch: "in3", examples: ["1750 mm3", "0.1 in3"], lowest: 0 },
  "free-air-volume": { unit: "m3", says: "a volume of free air", metric: "L ANR", inch: "ft3 ANR", examples: ["9.5 L ANR"], lowest: 0 },
  mass: { unit: "kg", says: "a mass", metric: "kg", inch: "lb", examples: ["85 kg", "190 lb"], lowest: 0 },
  "mass-per-length": { unit: "kg/m", says: "a mass per length", metric: "kg/m", inch: "lb/ft", examples: ["0.12 kg/m"], lowest: 0 },
  "volume-per-mass": { unit: "m3/kg", says: "a volume per mass", metric: "L/kg", inch: "gal/lb", examples: ["0.1 L/kg"], lowest: 0 },
  density: { unit: "kg/m3", says: "a density", metric: "kg/m3", inch: "lb/ft3", examples: ["7900 kg/m3", "490 lb/ft3"], lowest: 0 },
  inertia: {
    unit: "kg*m2",
    says: "an inertia",
    metric: "kg*cm2",
    inch: "lb*in2",
    examples: ["2.6 kg*cm2", "0.02 kg*m2", "0.9 lb*in2", "0.0023 lb*in*s2"],
    lowest: 0,
    caution: "lb*in2 and lb*in*s2 differ by a factor of 386",
  },
  time: { unit: "s", says: "a time", metric: "s", inch: "s", examples: ["4 ms", "1.5 s", "10 min"], lowest: 0, usual: true },
  "short-time": { unit: "s", says: "a time", metric: "ms", inch: "ms", examples: ["4 ms", "250 us"], lowest: 0 },
  "long-time": { unit: "s", says: "a time", metric: "h", inch: "h", examples: ["10000 h", "6 months"], lowest: 0 },
  frequency: { unit: "1/s", says: "a frequency", metric: "Hz", inch: "Hz", examples: ["60 Hz", "4 kHz"], lowest: 0 },
  "pulse-rate": { unit: "1/s", says: "a pulse rate", metric: "kHz", inch: "kHz", examples: ["100 kHz", "800 Hz"], lowest: 0 },
  "per-time": { unit: "1/s", says: "a number per time", metric: "1/s", inch: "1/s", examples: ["25 1/s", "10 /h"], lowest: 0 },
  "per-hour": { unit: "1/s", says: "a number per time", metric: "/h", inch: "/h", examples: ["10 /h"], lowest: 0 },
  "per-month": { unit: "1/s", says: "a number per time", metric: "/month", inch: "/month", examples: ["900 /month"], lowest: 0 },
  "share-per-year": { unit: "1/s", says: "a share per year", metric: "%/yr", inch: "%/yr", examples: ["6 %/yr"], lowest: 0 },
  rotation: { unit: "rad/s", says: "a speed of rotation", metric: "rpm", inch: "rpm", examples: ["1745 rpm"] },
  "rotation-per-time": { unit: "rad/s2", says: "an angular acceleration", metric: "rpm/s", inch: "rpm/s", examples: ["900 rpm/s"] },
  angle: { unit: "rad", says: "an angle", metric: "deg", inch: "deg", examples: ["38 deg", "20 arcsec"], usual: true },
  "fine-angle": { unit: "rad", says: "an angle", metric: "arcsec", inch: "arcsec", examples: ["20 arcsec"] },
  speed: { unit: "m/s", says: "a speed", metric: "m/min", inch: "in/min", examples: ["5 m/min", "200 in/min"], usual: true },
  "cutting-speed": { unit: "m/s", says: "a cutting speed", metric: "m/min", inch: "ft/min", examples: ["75 m/min", "250 sfm"], lowest: 0 },
  "flow-speed": { unit: "m/s", says: "a speed", metric: "m/s", inch: "ft/s", examples: ["12 m/s", "40 ft/s"] },
  acceleration: { unit: "m/s2", says: "an acceleration", metric: "m/s2", inch: "in/s2", examples: ["1.2 m/s2", "0.1 gn"] },
  jerk: { unit: "m/s3", says: "a jerk", metric: "m/s3", inch: "in/s3", examples: ["50 m/s3"] },
  force: { unit: "N", says: "a force", metric: "N", inch: "lbf", examples: ["420 N", "95 lbf"] },
  torque: {
    unit: "N*m",
    says: "a torque",
    metric: "N*m",
    inch: "lbf*ft",
    examples: ["2.4 N*m", "20 lbf*in", "340 ozf*in"],
    not: /^[mkM]?J$|^k?Wh$/,
  },
  "torque-constant": { unit: "N*m/A", says: "a torque per current", metric: "N*m/A", inch: "lbf*in/A", examples: ["0.6 N*m/A"], lowest: 0 },
  "torque-per-rotation": {
    unit: "N*m*s/rad",
    says: "a torque per speed of rotation",
    metric: "N*m/rpm",
    inch: "lbf*ft/rpm",
    examples: ["0.5 N*m/rpm"],
  },
  "twist-stiffness": {
    unit: "N*m/rad",
    says: "a stiffness in twist",
    metric: "N*m/rad",
    inch: "lbf*in/rad",
    examples: ["5000 N*m/rad"],
    lowest: 0,
  },
  stiffness: {
    unit: "N/m",
    says: "a stiffness",
    metric: "N/um",
    inch: "lbf/thou",
    examples: ["48 N/um", "5 N/mm", "270 lbf/thou"],
    lowest: 0,
  },
  "stiffness-per-width": {
    unit: "N/m2",
    says: "a stiffness per width",
    metric: "N/mm/mm",
    inch: "lbf/in/in",
    examples: ["12 N/mm/mm"],
    lowest: 0,
  },
  "viscous-damping": { unit: "N*s/m", says: "a viscous damping", metric: "N*s/mm", inch: "lbf*s/in", examples: ["2 N*s/mm"], lowest: 0 },
  energy: { unit: "J", says: "an energy", metric: "J", inch: "J", examples: ["120 J", "1.5 kWh"], usual: true, not: /^[mk]?N\*m$/ },
  "billed-energy": { unit: "J", says: "an energy", metric: "kWh", inch: "kWh", examples: ["1.5 kWh"] },
  power: {
    unit: "W",
    says: "a power",
    metric: "kW",
    inch: "hp",
    examples: ["5.5 kW", "7.5 hp", "180 W"],
    lowest: 0,
    usual: true,
    not: /^k?(?:VA|var)$/,
  },
  heat: { unit: "W", says: "a power", metric: "W", inch: "W", examples: ["180 W"], lowest: 0, not: /^k?(?:VA|var)$/ },
  "apparent-power": {
    unit: "VA",
    says: "an apparent power",
    metric: "kVA",
    inch: "kVA",
    examples: ["12 kVA"],
    lowest: 0,
    not: /^(?:[mk]?W|hp|PS|k?var)$/,
  },
  voltage: { unit: "V", says: "a voltage", metric: "V", inch: "V", examples: ["230 V"] },
  "voltage-constant": { unit: "V*s/rad", says: "a voltage per speed", metric: "V/rpm", inch: "V/rpm", examples: ["0.04 V/rpm"], lowest: 0 },
  current: { unit: "A", says: "a current", metric: "A", inch: "A", examples: ["10.2 A"], usual: true, lowest: 0 },
  "small-current": { unit: "A", says: "a current", metric: "mA", inch: "mA", examples: ["15 mA"], lowest: 0 },
  resistance: { unit: "ohm", says: "a resistance", metric: "ohm", inch: "ohm", examples: ["1.71 ohm", "30 kohm"], lowest: 0, usual: true },
  "small-resistance": { unit: "ohm", says: "a resistance", metric: "mohm", inch: "mohm", examples: ["85 mohm"], lowest: 0 },
  insulation: { unit: "ohm", says: "an insulation resistance", metric: "Mohm", inch: "Mohm", examples: ["5 Mohm"], lowest: 0 },
  "resistance-per-length": {
    unit: "ohm/m",
    says: "a resistance per length",
    metric: "mohm/m",
    inch: "mohm/ft",
    examples: ["2.1 mohm/m", "0.64 ohm/kft"],
    lowest: 0,
  },
  resistivity: { unit: "ohm*m", says: "a resistivity", metric: "ohm*mm2/m", inch: "ohm*mm2/m", examples: ["0.0172 ohm*mm2/m"], lowest: 0 },
  conductance: { unit: "1/ohm", says: "a conductance", metric: "mS", inch: "mS", examples: ["2 mS"], lowest: 0 },
  inductance: { unit: "H", says: "an inductance", metric: "mH", inch: "mH", examples: ["8 mH"], lowest: 0 },
  capacitance: { unit: "F", says: "a capacitance", metric: "uF", inch: "uF", examples: ["680 uF"], lowest: 0 },
  "capacitance-per-length": {
    unit: "F/m",
    says: "a capacitance per length",
    metric: "nF/m",
    inch: "nF/ft",
    examples: ["0.3 nF/m"],
    lowest: 0,
  },
  "capacitance-per-power": {
    unit: "F/W",
    says: "a capacitance per power",
    metric: "uF/kW",
    inch: "uF/kW",
    examples: ["250 uF/kW"],
    lowest: 0,
  },
  "charge-square": {
    unit: "A2*s",
    says: "a let-through (current squared times time)",
    metric: "A2*s",
    inch: "A2*s",
    examples: ["5000 A2*s"],
    lowest: 0,
  },
  "conductor-k": {
    unit: "A*s^0.5/m2",
    says: "a conductor constant k",
    metric: "A*s^0.5/mm2",
    inch: "A*s^0.5/mm2",
    examples: ["115 A*s^0.5/mm2"],
    lowest: 0,
  },
  "current-density": { unit: "A/m2", says: "a current density", metric: "A/mm2", inch: "A/mm2", examples: ["6 A/mm2"] },
  temperature: { unit: "K", says: "a temperature", metric: "degC", inch: "degF", examples: ["20 degC", "68 degF"], lowest: 0 },
  "temperature-difference": { unit: "K", says: "a temperature difference", metric: "K", inch: "degF", examples: ["5 K", "9 degF"] },
  "heat-loss": { unit: "W/K", says: "a heat loss per kelvin", metric: "W/K", inch: "W/degF", examples: ["35 W/K"], lowest: 0 },
  "heat-store": { unit: "J/K", says: "a heat stored per kelvin", metric: "kJ/K", inch: "kJ/degF", examples: ["12 kJ/K"], lowest: 0 },
  "heat-resistance": { unit: "K/W", says: "a warming per power", metric: "K/W", inch: "degF/W", examples: ["0.4 K/W"], lowest: 0 },
  "heat-capacity": {
    unit: "J/(kg*K)",
    says: "a heat capacity",
    metric: "J/(kg*K)",
    inch: "J/(lb*degF)",
    examples: ["1900 J/(kg*K)"],
    lowest: 0,
  },
  "heat-per-volume": {
    unit: "J/(m3*K)",
    says: "a heat capacity per volume",
    metric: "kJ/(L*K)",
    inch: "kJ/(gal*degF)",
    examples: ["1.6 kJ/(L*K)"],
    lowest: 0,
  },
  expansion: { unit: "1/K", says: "an expansion", metric: "um/(m*K)", inch: "um/(m*degF)", examples: ["11.5 um/(m*K)"] },
  "gauge-pressure": {
    unit: "Pa",
    says: "a gauge pressure",
    metric: "bar gauge",
    inch: "psi gauge",
    examples: ["110 psi", "7.6 bar"],
    lowest: -standardAtmosphere.value,
  },
  "absolute-pressure": {
    unit: "Pa",
    says: "an absolute pressure",
    metric: "bar abs",
    inch: "psi abs",
    examples: ["1.01 bar abs", "14.7 psia"],
    lowest: 0,
  },
  "pressure-difference": { unit: "Pa", says: "a pressure difference", metric: "bar", inch: "psi", examples: ["0.3 bar", "5 psi"] },
  stress: { unit: "Pa", says: "a stress", metric: "N/mm2", inch: "psi", examples: ["1800 N/mm2", "250 MPa"] },
  "elastic-modulus": { unit: "Pa", says: "an elastic modulus", metric: "GPa", inch: "kpsi", examples: ["193 GPa"], lowest: 0 },
  viscosity: { unit: "m2/s", says: "a viscosity", metric: "mm2/s", inch: "cSt", examples: ["68 mm2/s", "68 cSt"], lowest: 0 },
  "dynamic-viscosity": {
    unit: "Pa*s",
    says: "a dynamic viscosity",
    metric: "cP",
    inch: "cP",
    examples: ["18 cP", "0.018 Pa*s"],
    lowest: 0,
  },
  flow: { unit: "m3/s", says: "a flow", metric: "L/min", inch: "gpm", examples: ["6 L/min", "1.6 gpm"], lowest: 0 },
  "free-air-flow": {
    unit: "m3/s",
    says: "a flow of free air",
    metric: "L/min ANR",
    inch: "cfm ANR",
    examples: ["95 L/min ANR", "5.1 cfm inlet"],
    lowest: 0,
  },
  "flow-coefficient": {
    unit: "m3/(s*Pa)",
    says: "a flow coefficient C",
    metric: "dm3/(s*bar)",
    inch: "dm3/(s*bar)",
    examples: ["2.6 dm3/(s*bar)", "Cv 0.35", "Kv 0.3", "bore 7 mm"],
    lowest: 0,
  },
  "energy-per-volume": { unit: "J/m3", says: "an energy per volume", metric: "kWh/m3", inch: "kWh/ft3", examples: ["0.12 kWh/m3"] },
  share: { unit: "1", says: "a share", metric: "%", inch: "%", examples: ["80 %", "0.8"], lowest: 0 },
  ratio: { unit: "1", says: "a pure number", metric: "", inch: "", examples: ["1.5"] },
  count: { unit: "1", says: "a count", metric: "", inch: "", examples: ["6"], lowest: 0, whole: true },
  money: { unit: "money", says: "an amount of money", metric: "USD", inch: "USD", examples: ["9.60 USD"] },
  "money-per-time": { unit: "money/s", says: "money per time", metric: "USD/h", inch: "USD/h", examples: ["28 USD/h"] },
  "money-per-energy": { unit: "money/J", says: "money per energy", metric: "USD/kWh", inch: "USD/kWh", examples: ["0.17 USD/kWh"] },
  "money-per-length": { unit: "money/m", says: "money per length", metric: "USD/m", inch: "USD/ft", examples: ["4.10 USD/m"] },
  "money-per-volume": { unit: "money/m3", says: "money per volume", metric: "USD/L", inch: "USD/gal", examples: ["6.5 USD/L"] },
  "money-per-mass": { unit: "money/kg", says: "money per mass", metric: "USD/kg", inch: "USD/lb", examples: ["5 USD/kg"] },
} as const satisfies Record<string, KindInfo>;

export type Kind = keyof typeof kinds;
type SiUnit = (typeof kinds)[Kind]["unit"];

type KindsOf<U> = { [K in Kind]: (typeof kinds)[K]["unit"] extends U ? K : never }[Kind];
type UsualOf<U> = { [K in KindsOf<U>]: (typeof kinds)[K] extends { usual: true } ? K : never }[KindsOf<U>];
type IsOne<T, Whole = T> = [T] extends [never] ? false : T extends unknown ? ([Whole] extends [T] ? true : false) : never;

/** An SI unit, and the kind where the unit alone leaves it open: Pa, K, m3/s, 1/s and 1 ask for it; m, s, W take the usual one. */
export type Measure = {
  [U in SiUnit]: IsOne<KindsOf<U>> extends true
    ? { unit: U; kind?: never }
    : [UsualOf<U>] extends [never]
      ? { unit: U; kind: KindsOf<U> }
      : { unit: U; kind?: KindsOf<U> };
}[SiUnit];

/** The table as a plain record, for readers that take any kind. */
export function kindInfo(kind: Kind): KindInfo {
  return kinds[kind];
}

export const kindNames = Object.keys(kinds) as Kind[]; // the keys of a literal are its kinds

const kindByUnit = new Map<string, Kind>();
for (const kind of kindNames) if (!kindByUnit.has(kinds[kind].unit) || kindInfo(kind).usual) kindByUnit.set(kinds[kind].unit, kind);

/** Kind of a declared measure. */
export function kindOf(measure: Measure): Kind {
  const kind = measure.kind ?? kindByUnit.get(measure.unit);
  if (kind === undefined) throw new Error(`unit-unknown: no kind of quantity has the unit "${measure.unit}"`);
  return kind;
}
