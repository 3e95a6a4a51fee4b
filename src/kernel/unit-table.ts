// The table of units: what each is exactly, what it is called on labels, and the words that say which pressure or which air is meant.
import { absoluteZero, standardGravity } from "./constants.ts";

/** What a pressure is counted from, or in which state a volume of air is counted. */
export type BaseWord = "gauge" | "abs" | "ANR" | "inlet" | "compressed" | "normal" | "standard-60" | "standard-68";

export const currencies = ["USD", "EUR", "GBP", "CHF", "CAD", "AUD", "JPY"];

/**
 * Names, what they are, prefixes they take. Exact by definition: SI brochure; NIST SP 811 (2008) appendix B for the inch, the pound, the
 * US gallon and what follows from them; a year has 365 days there, a month is its twelfth part.
 */
export const table: readonly (readonly [names: string, is: string, prefixes?: string])[] = [
  ["m", "", "n u m c d k"],
  ["kg", ""],
  ["s", "", "n u m"],
  ["A", "", "u m k"],
  ["K", "", "m"],
  ["rad", "", "u m"],
  [currencies.join(" "), ""],
  ["g", "0.001*kg", "m"],
  ["t", "1000*kg"],
  ["in", "0.0254*m", "u"],
  ["ft", "12*in", "k"],
  ["thou mil", "0.001*in"],
  ["tenths tenth", "0.0001*in"],
  ["lb", "0.45359237*kg"],
  ["oz", "lb/16"],
  ["min minute minutes", "60*s"],
  ["h hour hours", "60*min"],
  ["d day days", "24*h"],
  ["week weeks", "7*d"],
  ["yr year years", "365*d"],
  ["month months", "yr/12"],
  ["rev", "2*pi*rad"],
  ["deg", "pi/180*rad"],
  ["arcmin", "deg/60"],
  ["arcsec", "arcmin/60"],
  ["rpm", "rev/min"],
  ["Hz", "1/s", "k M"],
  ["sfm", "ft/min"],
  ["gn", `${standardGravity.value}*m/s2`],
  ["N", "kg*m/s2", "m k"],
  ["lbf", "lb*gn"],
  ["ozf", "oz*gn"],
  ["kgf", "kg*gn"],
  ["Pa", "N/m2", "h k M G"],
  ["bar", "100000*Pa", "m"],
  ["psi", "lbf/in2", "k"],
  ["J", "N*m", "m k M"],
  ["W", "J/s", "m k"],
  ["VA var", "W", "k"],
  ["hp", "550*ft*lbf/s"],
  ["PS", "75*kgf*m/s"],
  ["Wh", "W*h", "k"],
  ["V", "W/A", "u m k"],
  ["ohm", "V/A", "u m k M"],
  ["S", "A/V", "u m"],
  ["F", "A*s/V", "p n u"],
  ["H", "V*s/A", "u m"],
  ["degC", "K"],
  ["degF", "5/9*K"],
  ["L l", "0.001*m3", "m"],
  ["cc", "cm3"],
  ["gal", "231*in3"],
  ["gpm", "gal/min"],
  ["cfm", "ft3/min"],
  ["St", "cm2/s", "c"],
  ["cP", "0.001*Pa*s"],
  ["kcmil", "250*pi*thou2"],
  ["money", ""],
  ["%", "1/100"],
  ["ppm", "1/1000000"],
  ["cycles cycle parts part each blocks counts", "1"],
];

/** degF: 459.67 below its zero, exact (NIST SP 811 B.8). */
export const zeros: Readonly<Record<string, number>> = { degC: absoluteZero.value, degF: 459.67 };

export const prefixes: Readonly<Record<string, string>> = {
  p: "1/1000000000000",
  n: "1/1000000000",
  u: "1/1000000",
  m: "1/1000",
  c: "1/100",
  d: "1/10",
  h: "100",
  k: "1000",
  M: "1000000",
  G: "1000000000",
};

/** Units with the base inside the word. */
export const based: Readonly<Record<string, string>> = { psig: "psi gauge", psia: "psi abs", barg: "bar gauge", bara: "bar abs" };

export const baseWords: ReadonlyMap<string, BaseWord> = new Map([
  ["gauge", "gauge"],
  ["abs", "abs"],
  ["absolute", "abs"],
  ["ANR", "ANR"],
  ["inlet", "inlet"],
  ["FAD", "inlet"],
  ["compressed", "compressed"],
  ["normal", "normal"],
  ["standard-60", "standard-60"],
  ["standard-68", "standard-68"],
]);

/** What people write on labels and what the files write for it. */
export const spoken: ReadonlyMap<string, string> = new Map(
  Object.entries({
    '"': "in",
    inch: "in",
    inches: "in",
    Nm: "N*m",
    "N m": "N*m",
    kgm2: "kg*m2",
    kgcm2: "kg*cm2",
    VDC: "V",
    VAC: "V",
    Vdc: "V",
    Vac: "V",
    sec: "s",
    hr: "h",
    hrs: "h",
    lbs: "lb",
    lpm: "L/min",
    ipm: "in/min",
    "bar(g)": "bar gauge",
    "bar(a)": "bar abs",
    "ft-lb": "ft*lb",
    "ft-lbs": "ft*lb",
    "lb-ft": "lb*ft",
    "lbs-ft": "lb*ft",
    "in-lb": "in*lb",
    "in-lbs": "in*lb",
    "lb-in": "lb*in",
    "oz-in": "oz*in",
    "in-oz": "oz*in",
    "ft-lbf": "ft*lbf",
    "lbf-ft": "lbf*ft",
    "lbf-in": "lbf*in",
  }),
);
