// One number with its unit, as a field of a kind takes it: which unit fits, from which base, of which air, and what to say when none does.
import {
  airStates,
  conductancePerBore,
  conductancePerCv,
  kvPerCv,
  referencePressure,
  referenceTemperature,
  standardAtmosphere,
  wireGauge,
} from "./constants.ts";
import { show } from "./display.ts";
import type { FindingCode } from "./finding.ts";
import { readNumber } from "./number.ts";
import { baseShift, type BaseWord, dimensionOf, isFreeAir, type Kind, kindInfo, kindNames, kinds } from "./unit.ts";
import { pureNumber, readUnit, sameDimension, toSI, type Unit, unitFor, unitOf, type UnitTrouble } from "./unit.ts";

/** A mistake, or a note, at a stretch of the text: letters from `at`, as many as `length`. */
export interface Issue {
  readonly code: FindingCode;
  readonly says: string;
  readonly at: number;
  readonly length: number;
  readonly expected?: string;
  readonly nearest?: string;
  /** The whole text as the files want it. */
  readonly rewrite?: string;
}

export interface QuantityOptions {
  /** Name of the field, for the sentences. */
  readonly key?: string;
  /** Air pressure at the site, absolute [Pa]; the standard atmosphere when left out. */
  readonly ambient?: number;
  /** Temperature of the air a compressor takes in [K]; 20 degC when left out. */
  readonly intake?: number;
  /** Gauge pressure at which compressed air is counted [Pa]. */
  readonly delivery?: number;
  /** The currency of the shop: another one is refused, since nothing is converted. */
  readonly currency?: string;
}

export interface Field {
  readonly text: string;
  readonly kind: Kind;
  readonly options: QuantityOptions;
}

export interface Span {
  readonly nominal: number;
  readonly low: number;
  readonly high: number;
}

export interface Refused {
  readonly ok: false;
  readonly issue: Issue;
}

/** A number and the text of its unit, not yet understood. */
export interface Side {
  readonly ok: true;
  readonly value: number;
  /** As the files write it. */
  readonly number: string;
  /** A word before the number that says what it is: `AWG 18`, `Cv 0.35`. */
  readonly word: string;
  readonly unit: string;
  readonly at: number;
  readonly length: number;
  readonly unitAt: number;
}

/** A side understood. */
export interface Amount extends Span {
  readonly ok: true;
  readonly unit: Unit | undefined;
  /** Unit as the files write it, and as the field takes it: `bar`, taken as `bar gauge`. */
  readonly plain: string;
  readonly taken: string;
  /** How the value was converted where more than a factor was needed: what follows the converted value. */
  readonly converted?: string;
  readonly basis?: BaseWord;
  /** Free air at its own state [SI]. */
  readonly typed: number;
}

const words = ["AWG", "Cv", "Kv", "bore"];
const wordBefore = /^(AWG|Cv|Kv|bore)(?![A-Za-z])\s*/i;
const gaugeNumber = /^(?:([1-4])\/0|(0{1,4})|([1-9]\d?))(?![\d./])/;

/** Splits a side into word, number and unit. */
export function readSide(text: string, at: number, field: Field): Side | Refused {
  const [lead = "", typedWord = ""] = wordBefore.exec(text) ?? [];
  const word = words.find((w) => w.toLowerCase() === typedWord.toLowerCase()) ?? "";
  const rest = text.slice(lead.length);
  const gauge = word === "AWG" || /^\S+\s*AWG$/.test(rest) ? gaugeNumber.exec(rest) : null;
  if (gauge) {
    const [number, aught, zeros, plain] = gauge;
    const value = plain === undefined ? 1 - Number(aught ?? zeros?.length ?? 1) : Number(plain);
    const unit = rest.slice(number.length).trim();
    return { ok: true, value, number, word: "AWG", unit: unit === "AWG" ? "" : unit, at, length: text.length, unitAt: at };
  }
  const read = readNumber(rest, takesPairs(field.kind));
  const numberAt = at + lead.length;
  if (read.ok) {
    const after = rest.slice(read.length);
    const unit = after.trim();
    const unitAt = numberAt + read.length + (after.length - after.trimStart().length);
    return { ok: true, value: read.value, number: read.tidy, word, unit, at, length: text.length, unitAt };
  }
  const whole = (number: string): string => field.text.replace(rest.slice(0, read.length), number).trim();
  const [rewrite, other] = (read.meant ?? []).map(whole);
  const says = rewrite === undefined ? `${read.says}.` : `${read.says}: \`${rewrite}\`${other === undefined ? "." : ` or \`${other}\`?`}`;
  // Of two meanings none is offered for rewriting: that would be a guess.
  const more = { expected: rewrite ?? example(field.kind), ...(rewrite !== undefined && other === undefined && { rewrite }) };
  return refuse(issue(read.code, says, numberAt, read.length, more));
}

/** Volts and amps are never fractions: 230/460 is two connections of one motor. */
export function takesPairs(kind: Kind): boolean {
  return kind === "voltage" || kind === "current";
}

/** The side as the field takes it, in SI. */
export function amountOf(side: Side, field: Field): Amount | Refused {
  if (side.word) return wordAmount(side, field);
  const fit = fitUnit(side, field);
  if (!fit.ok) return fit;
  const { unit } = fit;
  if (!unit) return exact(side.value, { unit, plain: "", taken: "" });
  const plain = unit.text;
  if (isFreeAir(field.kind)) return freeAir(side, unit, field);
  const { ambient = standardAtmosphere.value } = field.options;
  const shift = baseShift(unit, field.kind, ambient);
  const si = toSI(side.value, unit, field.kind === "temperature-difference") + shift;
  return exact(si, {
    unit,
    plain,
    taken: takenAs(unit, field.kind),
    ...(shift !== 0 && { converted: ` at ${pressureText(ambient)} ambient` }),
  });
}

function exact(si: number, rest: Omit<Amount, "ok" | "nominal" | "low" | "high" | "typed"> & { typed?: number }): Amount {
  return { typed: si, ...rest, ok: true, nominal: si, low: si, high: si };
}

/** What is left unsaid in the unit and settled by the field. */
function takenAs(unit: Unit, kind: Kind): string {
  if (kind === "gauge-pressure" && !unit.base) return `${unit.text} gauge`;
  if (kind === "temperature-difference" && unit.zero !== 0) return `${unit.text} difference`;
  const asMass = readUnit(unit.text);
  const isForce = asMass.ok && !sameDimension(asMass.unit.dimension, unit.dimension);
  return isForce ? unit.text.replace(/\b(lb|oz)\b/g, "$1f") : unit.text;
}

/** The unit of a side, if the field can take it. */
export function fitUnit(side: Side, field: Field): { ok: true; unit: Unit | undefined } | Refused {
  const { kind, options } = field;
  if (side.unit === "")
    return isPure(kind) && (kind !== "share" || side.value <= 1) ? { ok: true, unit: undefined } : unitMissing(side, field);
  const reading = readUnit(side.unit);
  if (!reading.ok) return unitUnknown(reading, side, field);
  const unit = unitFor(side.unit, kind);
  if (!unit) return unitMismatch(saidOf(reading.unit), side, field);
  if (options.currency && unit.currency && unit.currency !== options.currency) {
    return unitMismatch(`in ${unit.currency}, and the shop reckons in ${options.currency}; currencies are not converted`, side, field);
  }
  if (kind === "absolute-pressure" && !unit.base) {
    const text = `${side.number} ${unit.text}`;
    const says = `${subject(field)} is an absolute pressure; is "${text}" \`${text} abs\` or \`${text} gauge\`?`;
    return refuse(issue("base-missing", says, side.unitAt, side.unit.length, { expected: `${text} abs` }));
  }
  if (unit.base && !basesOf(kind).includes(unit.base)) return unitMismatch(`counted as ${unit.base}`, side, field);
  return { ok: true, unit };
}

function isPure(kind: Kind): boolean {
  return sameDimension(dimensionOf(kindInfo(kind).unit), pureNumber) && kinds[kind].unit === "1";
}

function basesOf(kind: Kind): readonly BaseWord[] {
  if (kind === "gauge-pressure" || kind === "absolute-pressure") return ["gauge", "abs"];
  return isFreeAir(kind) ? ["ANR", "inlet", "compressed", "normal", "standard-60", "standard-68"] : [];
}

function wordAmount(side: Side, field: Field): Amount | Refused {
  const { word, value } = side;
  const isWire = word === "AWG";
  if (field.kind !== (isWire ? "wire-size" : "flow-coefficient"))
    return unitMismatch(isWire ? "a wire size" : "a flow coefficient", side, field);
  if (word !== "bore" && side.unit !== "") {
    return refuse(issue("unit-mismatch", `${word} has no unit: \`${word} ${side.number}\`.`, side.unitAt, side.unit.length));
  }
  if (isWire) return exact(gaugeArea(value), { unit: undefined, plain: "", taken: "", converted: "" });
  if (word !== "bore") return conductance(conductancePerCv, word === "Kv" ? value / kvPerCv : value, undefined);
  const unit = unitFor(side.unit, "length");
  if (!unit) return refuse(issue("unit-missing", "a bore is a length: `bore 7 mm`.", side.at, side.length, { expected: "bore 7 mm" }));
  return conductance(conductancePerBore, (toSI(value, unit) * 1e3) ** 2, unit);
}

function conductance(per: Span, times: number, unit: Unit | undefined): Amount {
  const c = unitOf("dm3/(s*bar)");
  const [nominal, low, high] = [per.nominal, per.low, per.high].map((k) => toSI(k * times, c));
  const text = unit?.text ?? "";
  return {
    ok: true,
    nominal: nominal ?? NaN,
    low: low ?? NaN,
    high: high ?? NaN,
    unit,
    plain: text,
    taken: text,
    converted: "",
    typed: times,
  };
}

/** Cross-section of AWG n [m2]: pi/4 (0.127 mm * 92^((36 - n)/39))^2 (ASTM B258); 4/0 is n = -3. */
function gaugeArea(n: number): number {
  return (Math.PI / 4) * (wireGauge.finest * wireGauge.ratio ** ((wireGauge.finestNumber - n) / wireGauge.steps)) ** 2;
}

function freeAir(side: Side, unit: Unit, field: Field): Amount | Refused {
  const { ambient = standardAtmosphere.value, intake = referenceTemperature.value, delivery } = field.options;
  const typed = toSI(side.value, unit);
  if (unit.base === "compressed" && delivery === undefined) {
    return refuse(issue("base-missing", `${subject(field)} is compressed air, but to which pressure?`, side.unitAt, side.unit.length));
  }
  const site = { pressure: ambient, temperature: intake };
  const state =
    unit.base === "compressed"
      ? { ...site, pressure: ambient + (delivery ?? 0) }
      : unit.base && unit.base in airStates
        ? airStates[unit.base as keyof typeof airStates] // `in` has just shown it
        : site;
  const converted = ` (${pressureText(state.pressure)} and ${show(state.temperature, "temperature", { units: "metric" }).text})`;
  const taken = unit.base ? unit.text : `${unit.text} inlet`;
  const said = { unit, plain: unit.text, taken, typed, ...(unit.base && { basis: unit.base }), ...(unit.base !== "ANR" && { converted }) };
  return exact(typed * atReference(state.pressure, state.temperature), said);
}

/** ANR volume a volume of air at an absolute pressure [Pa] and a temperature [K]: p/p_ref * T_ref/T (ideal gas, ISO 8778). */
export function atReference(pressure: number, temperature: number): number {
  return (pressure / referencePressure.value) * (referenceTemperature.value / temperature);
}

function pressureText(pressure: number): string {
  return `${show(pressure, "pressure-difference", { units: "metric", pressure: "kPa" }).text}`;
}

/** What a unit measures, in words. */
function saidOf(unit: Unit): string {
  if (sameDimension(unit.dimension, dimensionOf("Pa"))) return "a pressure";
  if (sameDimension(unit.dimension, pureNumber)) return unit.text === "%" ? "a share" : "a pure number";
  const kind = kindNames.find((k) => sameDimension(dimensionOf(kindInfo(k).unit), unit.dimension) && !kindInfo(k).not?.test(unit.text));
  return kind ? kindInfo(kind).says : "something else";
}

function unitMissing(side: Side, field: Field): Refused {
  const info = kindInfo(field.kind);
  const units = info.examples.filter((e) => /^[-\d]/.test(e)).map((e) => e.replace(/^\S+\s*/, ""));
  const typed = units.filter(Boolean).map((u) => `${side.number} ${u}`);
  const such = typed.map((t) => `\`${t}\``).join(" or ");
  const says = info.caution
    ? `${info.says} needs its unit: ${units.join(", ")} (${info.caution}).`
    : `${subject(field)} is ${info.says}; ${side.number} what? For example ${such}. Nothing is assumed.`;
  return refuse(issue("unit-missing", says, side.at, side.length, { expected: typed[0] ?? example(field.kind) }));
}

/** Words that are near no unit, but are written all the same. */
const hints: ReadonlyMap<string, { says: string; nearest: string }> = new Map([
  ["C", { says: "degrees are written degC", nearest: "degC" }],
  [
    "scfm",
    { says: "standard air has several bases: `cfm ANR`, `cfm standard-60` (14.7 psi, 60 degF) or `cfm standard-68`", nearest: "cfm ANR" },
  ],
  [
    "SCFM",
    { says: "standard air has several bases: `cfm ANR`, `cfm standard-60` (14.7 psi, 60 degF) or `cfm standard-68`", nearest: "cfm ANR" },
  ],
  ["$", { says: "which dollars? Write USD, CAD or AUD behind the number", nearest: "USD" }],
]);

/** Units that people spell out, singular. */
const spelt: ReadonlyMap<string, string> = new Map(
  Object.entries({
    amp: "A",
    ampere: "A",
    volt: "V",
    watt: "W",
    hertz: "Hz",
    inch: "in",
    foot: "ft",
    feet: "ft",
    pound: "lb",
    metre: "m",
    meter: "m",
    newton: "N",
    second: "s",
    minute: "min",
    henry: "H",
    farad: "F",
  }),
);

function speltOut(word: string): { says: string; nearest: string } | undefined {
  const short =
    spelt.get(word.toLowerCase()) ?? spelt.get(word.toLowerCase().replace(/e?s$/, "")) ?? spelt.get(word.toLowerCase().replace(/s$/, ""));
  return short === undefined ? undefined : { says: `units are written short: \`${short}\``, nearest: short };
}

function unitUnknown(trouble: UnitTrouble, side: Side, field: Field): Refused {
  const hint = hints.get(side.unit) ?? speltOut(side.unit);
  const near = hint?.nearest ?? trouble.nearest;
  const help = hint?.says ?? (trouble.either ? `${trouble.either.join(" or ")}?` : near === undefined ? undefined : `\`${near}\`?`);
  const says = `"${trouble.word}" is no unit${help === undefined ? "" : `; ${help}`}`;
  const more = { expected: example(field.kind), ...(near !== undefined && { nearest: near }) };
  return refuse(issue("unit-unknown", says, side.unitAt, side.unit.length, more));
}

function unitMismatch(what: string, side: Side, field: Field): Refused {
  const typed = field.text.slice(side.at, side.at + side.length);
  const expected = example(field.kind);
  const farad = side.unit === "F" && field.kind === "temperature";
  const says = `${subject(field)} is "${typed}", ${what}; expected ${kindInfo(field.kind).says} such as ${examples(field.kind)}.`;
  return refuse(issue("unit-mismatch", says, side.at, side.length, { expected, ...(farad && { nearest: "degF" }) }));
}

export function subject(field: Field): string {
  return field.options.key === undefined ? "this" : `\`${field.options.key}\``;
}

/** One text that the kind accepts. */
export function example(kind: Kind): string {
  return kindInfo(kind).examples[0];
}

function examples(kind: Kind): string {
  return kindInfo(kind)
    .examples.map((e) => `\`${e}\``)
    .join(" or ");
}

export function issue(code: FindingCode, says: string, at: number, length: number, more: Partial<Issue> = {}): Issue {
  return { code, says: /[.?]$/.test(says) ? says : `${says}.`, at, length, ...more };
}

function refuse(what: Issue): Refused {
  return { ok: false, issue: what };
}
