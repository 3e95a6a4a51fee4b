// Units as data: what each unit of the trade is exactly, and unit text read into a factor and a dimension.
import { type Kind, kindInfo } from "./kind.ts";
import { nearest } from "./nearest.ts";
import { based, type BaseWord, baseWords, currencies, prefixes, spoken, table, zeros } from "./unit-table.ts";

export type { BaseWord } from "./unit-table.ts";
export { type Kind, kindInfo, kindNames, kindOf, kinds, type Measure } from "./kind.ts";

/** Exponents of metre, kilogram, second, ampere, kelvin, radian and money: an angle counts, so rpm is no Hz. */
export type Dimension = readonly number[];

const baseUnits = ["m", "kg", "s", "A", "K", "rad", "money"] as const;

export const pureNumber: Dimension = baseUnits.map(() => 0);

/** Whether two dimensions are the same; roots leave exponents such as 0.1 + 0.2, hence the hair of tolerance. */
export function sameDimension(a: Dimension, b: Dimension): boolean {
  return baseUnits.every((_, i) => Math.abs((a[i] ?? 0) - (b[i] ?? 0)) < 1e-9);
}

/** Dimension of a product. */
export function times(a: Dimension, b: Dimension): Dimension {
  return baseUnits.map((_, i) => (a[i] ?? 0) + (b[i] ?? 0));
}

/** Dimension of a power; n = -1 is the reciprocal. */
export function power(a: Dimension, n: number): Dimension {
  return baseUnits.map((_, i) => (a[i] ?? 0) * n + 0); // + 0: no minus zero
}

export interface Unit {
  /** As the files write it. */
  readonly text: string;
  /** SI = (value + zero) * up / down. Two whole numbers where possible, so that 5.08 mm is 0.00508 m to the last digit. */
  readonly up: number;
  readonly down: number;
  /** What the scale is off by: degC and degF alone, never inside a product. */
  readonly zero: number;
  readonly dimension: Dimension;
  readonly base?: BaseWord;
  /** Currencies share a dimension and are never converted. */
  readonly currency?: string;
  /** Understood, but the files write it as `text`. */
  readonly spoken?: true;
}

/** Value in SI; a difference leaves the zero of its scale out. */
export function toSI(value: number, unit: Unit, difference = false): number {
  return ((difference ? value : value + unit.zero) * unit.up) / unit.down;
}

/** Value in the unit, of a value in SI. */
export function fromSI(value: number, unit: Unit, difference = false): number {
  return (value * unit.down) / unit.up - (difference ? 0 : unit.zero);
}

const definitions: ReadonlyMap<string, string> = new Map(
  table.flatMap(([names, is, ps = ""]) =>
    names.split(" ").flatMap((name): [string, string][] => [
      [name, is],
      ...ps
        .split(" ")
        .filter(Boolean)
        .map((p): [string, string] => [p + name, `${prefixes[p] ?? ""}*${name}`]),
    ]),
  ),
);

/** Every unit by name, for completion and for the nearest word. */
export const unitNames: readonly string[] = [...definitions.keys(), ...Object.keys(based)];

/** How `lb` and `oz` are meant: `9 lb*ft` on a torque plate is a force, `lb*in2` an inertia a mass. The field decides. */
export type Pound = "mass" | "force";

export type UnitReading = { readonly ok: true; readonly unit: Unit } | UnitTrouble;

export interface UnitTrouble {
  readonly ok: false;
  /** The word that is no unit. */
  readonly word: string;
  readonly nearest?: string;
  /** Several units that differ from the word in case only. */
  readonly either?: readonly string[];
}

/** Longer unit text is none, whatever it says. */
const longestUnit = 60;

/** Files use a few dozen spellings; a fuzzer must not fill the memory. */
const mostKept = 1000;
const kept = new Map<string, Unit>();

/** Reads unit text: products, quotients, powers, brackets, and after a blank the base of a pressure or of an amount of air. */
export function readUnit(text: string, pound: Pound = "mass"): UnitReading {
  const key = `${pound} ${text}`;
  const found = kept.get(key);
  if (found) return { ok: true, unit: found };
  if (text.length > longestUnit) return { ok: false, word: `${text.slice(0, 20)}...` };
  const reading = parse(text, pound);
  if (!reading.ok) return reading;
  if (kept.size >= mostKept) kept.clear();
  kept.set(key, reading.unit);
  return reading;
}

/** Dimension of unit text written by a programmer; throws on a word that is no unit. */
export function dimensionOf(unitText: string): Dimension {
  return unitOf(unitText).dimension;
}

/** Unit written by a programmer; throws on a word that is no unit. */
export function unitOf(unitText: string): Unit {
  const reading = readUnit(unitText);
  if (!reading.ok) throw new Error(`unit-unknown: "${reading.word}" in "${unitText}"`);
  return reading.unit;
}

/** The unit as a field of this kind means it, or undefined when it measures something else: `lb` is a force where one is wanted. */
export function unitFor(text: string, kind: Kind): Unit | undefined {
  const { unit: si, not } = kindInfo(kind);
  const wanted = dimensionOf(si);
  for (const pound of ["mass", "force"] as const) {
    const reading = readUnit(text, pound);
    if (reading.ok && sameDimension(reading.unit.dimension, wanted) && !not?.test(reading.unit.text)) return reading.unit;
  }
  return undefined;
}

/** What is added to a pressure, read with its own base, to count it from the base of the field [Pa]; ambient is absolute [Pa]. */
export function baseShift(unit: Unit, kind: Kind, ambient: number): number {
  if (kind === "gauge-pressure" && unit.base === "abs") return -ambient;
  if (kind === "absolute-pressure" && unit.base === "gauge") return ambient;
  return 0;
}

/** Unit text without what it is counted from: a tolerance has no base. */
export function withoutBase(text: string): string {
  const reading = readUnit(text);
  return reading.ok && reading.unit.base ? reading.unit.text.replace(/\s+\S+$/, "").replace(/^(psi|bar)[ag]$/, "$1") : text;
}

/** Kinds whose values are reckoned at the reference state ANR. */
export function isFreeAir(kind: Kind): boolean {
  return kind === "free-air-flow" || kind === "free-air-volume";
}

function parse(typed: string, pound: Pound): UnitReading {
  const trimmed = typed.trim();
  const files = spoken.get(trimmed);
  const plain = plainSigns(files ?? trimmed);
  const withBase = Object.hasOwn(based, plain) ? (based[plain] ?? plain) : plain;
  const [, body = withBase, word = ""] = /^(.*\S)\s+(\S+)$/.exec(withBase) ?? [];
  const base = baseWords.get(word);
  const product = parseProduct(base ? body : withBase, pound);
  if ("word" in product) return product;
  const zero = zeros[plain] ?? 0;
  const text = files ?? trimmed;
  return { ok: true, unit: { text, ...product, zero, ...(base && { base }), ...(files !== undefined && { spoken: true as const }) } };
}

/** Signs of print and their ASCII spelling. */
function plainSigns(text: string): string {
  return text
    .replace(/[\u00b5\u03bc]/g, "u")
    .replace(/[\u03a9\u2126]/g, "ohm")
    .replace(/\u00b0(?=[CF])/g, "deg")
    .replace(/\u00b0/g, "deg")
    .replace(/[\u00b7\u22c5\u00d7]/g, "*")
    .replace(/\u00b9/g, "1")
    .replace(/\u00b2/g, "2")
    .replace(/\u00b3/g, "3")
    .replace(/[\u207b\u2212]/g, "-");
}

interface Product {
  readonly up: number;
  readonly down: number;
  readonly dimension: Dimension;
  readonly currency?: string;
}

const one: Product = { up: 1, down: 1, dimension: pureNumber };

function multiply(a: Product, b: Product, n: number): Product {
  const currency = a.currency ?? b.currency;
  const [up, down] = n < 0 ? [b.down ** -n, b.up ** -n] : [b.up ** n, b.down ** n];
  return { up: a.up * up, down: a.down * down, dimension: times(a.dimension, power(b.dimension, n)), ...(currency && { currency }) };
}

const token = /\s*(?:(?<number>\d+(?:\.\d+)?)|(?<name>[A-Za-z%]+)(?<power>(?:\^?-?\d+(?:\.\d+)?)?)|(?<sign>[*/()]))\s*/y;

/** Recursive descent over `a*b/c`, left to right, `(...)` with an optional power, `1/s` and `/h`. */
function parseProduct(text: string, pound: Pound): Product | UnitTrouble {
  const tokens: Readonly<Record<string, string | undefined>>[] = [];
  token.lastIndex = 0;
  for (let at = 0; at < text.length; at = token.lastIndex) {
    const groups = token.exec(text)?.groups;
    if (!groups) return trouble(text, text.slice(at));
    tokens.push(groups);
  }
  let next = 0;
  let failed: UnitTrouble | undefined;
  const fail = (word: string): Product => ((failed ??= trouble(text, word)), one);

  function product(): Product {
    let result = tokens[next]?.["sign"] === "/" ? one : factor();
    for (let sign = tokens[next]?.["sign"]; !failed && (sign === "*" || sign === "/"); sign = tokens[next]?.["sign"]) {
      next++;
      result = multiply(result, factor(), sign === "/" ? -1 : 1);
    }
    return result;
  }

  function factor(): Product {
    const t = tokens[next++];
    if (t?.["name"]) return multiply(one, named(t["name"], pound) ?? fail(t["name"]), Number(t["power"]?.replace("^", "") || 1));
    if (t?.["number"]) return amount(t["number"]);
    if (t?.["sign"] !== "(") return fail(text);
    const inner = product();
    if (tokens[next++]?.["sign"] !== ")") return fail(text);
    return inner;
  }

  const result = product();
  if (next < tokens.length) fail(text);
  return failed ?? result;
}

function amount(digits: string): Product {
  const places = digits.split(".")[1]?.length ?? 0;
  return { up: Number(digits.replace(".", "")), down: 10 ** places, dimension: pureNumber };
}

function named(name: string, pound: Pound): Product | undefined {
  if (name === "pi") return { ...one, up: Math.PI };
  if (currencies.includes(name)) return { ...one, dimension: axis("money"), currency: name };
  if (pound === "force" && (name === "lb" || name === "oz")) return named(`${name}f`, "mass");
  const is = definitions.get(name);
  if (is === undefined) return undefined;
  if (is === "") return { ...one, dimension: axis(name) };
  const product = parseProduct(is, "mass");
  return "word" in product ? undefined : product;
}

function axis(base: string): Dimension {
  return baseUnits.map((b) => (b === base ? 1 : 0));
}

function trouble(text: string, word: string): UnitTrouble {
  const either = unitNames.filter((name) => name.toLowerCase() === word.toLowerCase());
  if (either.length > 1) return { ok: false, word, either };
  const near = either[0] ?? nearest(word, unitNames);
  return { ok: false, word, ...(near !== undefined && { nearest: text.replace(word, near) }) };
}
