// Text of a quantity, as people write it in the files, read into SI; every slip becomes an issue with its place, never a guess.
import { type Amount, amountOf, atReference, example, type Field, fitUnit, type Issue, issue } from "./amount.ts";
import { type QuantityOptions, readSide, type Side, type Span, subject, takesPairs } from "./amount.ts";
import { referenceTemperature, standardAtmosphere } from "./constants.ts";
import { show, showBand } from "./display.ts";
import { type BaseWord, isFreeAir, type Kind, kindInfo, toSI, withoutBase } from "./unit.ts";

export type { Issue, QuantityOptions } from "./amount.ts";

export interface Read extends Span {
  readonly ok: true;
  readonly spread: "exact" | "range" | "plus-minus" | "relative";
  /** The unit as typed, without the number; empty for pure numbers; `AWG`, `Cv`, `Kv` where such a word says what the number is. */
  readonly unit: string;
  /** How the field took it: `7.6 bar gauge` for `7.6 bar`. */
  readonly readAs: string;
  readonly air?: Air;
  readonly notes: readonly Issue[];
}

/** Free air as typed, so that a room that knows the site's weather can convert it better than the loader could. */
interface Air {
  /** Absent when the text does not say which air; it is then read as air at the inlet. */
  readonly basis?: BaseWord;
  /** At its own state, SI. */
  readonly typed: Span;
  /** What it would be as ANR if compressed air was meant: no basis said, delivery pressure known. */
  readonly ifCompressed?: Span;
}

interface Unread {
  readonly ok: false;
  readonly issues: readonly [Issue, ...Issue[]];
}

export type Reading = Read | Unread;

/** Longer text is no quantity; what a field holds fits on a line. */
const longestText = 200;

/** Ends that miss a physical limit by no more than the noise of binary numbers are on it. */
const hair = 1e-9;

/** No count of a shop comes near it: the life of a seal in cycles stays below. */
const mostCounted = 1e12;

const tolerance = /\s*(?:\+\s*\/\s*[-\u2212]|\+[-\u2212]|\u00b1)\s*/;
const range = /\s+to\s+|\s*(?:\.{2,3}|[\u2026\u2013\u2014])\s*/;
const hyphenRange = /^([-+]?\d[\d.]*)(\s*-\s*)(?=\d[\d.]*(?![\d.]|\s*\/\s*\d))/;

/**
 * Reads a quantity for a field of this kind. Never throws, and takes bounded time on any text.
 *
 * The ends of a range and of a tolerance are kept as they are; a range has its nominal in the middle. The kind settles what the unit leaves
 * open (psi is gauge, lb a force where one is wanted) and `readAs` says so.
 */
export function readQuantity(text: string, kind: Kind, options: QuantityOptions = {}): Reading {
  const { ambient, intake, delivery, currency = "" } = options;
  const known = `${kind} ${kind.startsWith("money") ? currency : ""} ${text}`;
  const atSite = ambient !== undefined || intake !== undefined || delivery !== undefined;
  const reading = (atSite ? undefined : kept.get(known)) ?? readAnew({ text, kind, options });
  // A refusal names the field, so it is not kept.
  if (!reading.ok || atSite) return reading;
  if (kept.size >= mostKept) kept.clear();
  kept.set(known, reading);
  return reading;
}

/** Values read: one text is read by the loader, again for the samples, and a typical value at every thing that it stands for. */
const kept = new Map<string, Read>();
const mostKept = 5000;

function readAnew(field: Field): Reading {
  const { text } = field;
  if (text.length > longestText) {
    return unread(issue("number-bad", `${subject(field)} is too long for a quantity (${text.length} letters)`, 0, text.length));
  }
  const start = text.length - text.trimStart().length;
  const body = text.trim();
  const plusMinus = tolerance.exec(body);
  const to = range.exec(body) ?? hyphen(body);
  if (plusMinus && to) {
    const says = "a range and a tolerance together: write either the two ends or a middle with +/-";
    return unread(issue("number-bad", says, start, body.length));
  }
  const split = plusMinus ?? to;
  if (!split) {
    const side = readSide(body, start, field);
    return side.ok ? single(side, field) : unread(side.issue);
  }
  const rightAt = split.index + split[0].length;
  const left = readSide(body.slice(0, split.index), start, field);
  const right = readSide(body.slice(rightAt), start + rightAt, field);
  if (!left.ok) return unread(left.issue, ...(right.ok ? [] : [right.issue]));
  if (!right.ok) return unread(right.issue);
  return plusMinus ? withTolerance(left, right, field) : fromTo(left, right, field);
}

function hyphen(text: string): { readonly index: number; readonly 0: string } | null {
  const found = hyphenRange.exec(text);
  return found ? { index: found[1]?.length ?? 0, 0: found[2] ?? "" } : null;
}

/** What the parts of a text add up to. */
interface Sum {
  readonly span: Span;
  /** As `span`, but of free air at its own state. */
  readonly typed: Span;
  readonly spread: Read["spread"];
  /** The part that carries the unit of the whole. */
  readonly amount: Amount;
  readonly unit: string;
  /** The text as the files want it, and as the field takes it. */
  readonly tidy: string;
  readonly taken: string;
}

function single(side: Side, field: Field): Reading {
  const a = amountOf(side, field);
  if (!a.ok) return unread(a.issue);
  const spread = a.low === a.high ? "exact" : "range";
  const text = (as: "plain" | "taken"): string => write(side, a[as]);
  return finish(
    { span: a, typed: point(a.typed), spread, amount: a, unit: unitOfSide(side), tidy: text("plain"), taken: text("taken") },
    field,
  );
}

function fromTo(left: Side, right: Side, field: Field): Reading {
  const a = amountOf(borrowing(left, right), field);
  const b = amountOf(borrowing(right, left), field);
  if (!a.ok) return unread(a.issue, ...(b.ok || b.issue.at === a.issue.at ? [] : [b.issue]));
  if (!b.ok) return unread(b.issue);
  const each = left.unit !== "" && right.unit !== "";
  const text = (as: "plain" | "taken", swap = false): string => {
    const ends = swap ? ([right, b, left, a] as const) : ([left, a, right, b] as const);
    const [first, u, last, v] = ends;
    return `${write(first, each ? u[as] : "")} to ${write(last, v[as])}`;
  };
  if (a.nominal > b.nominal) {
    const rewrite = text("plain", true);
    const length = right.at + right.length - left.at;
    return unread(issue("range-backwards", `range runs backwards; \`${rewrite}\`?`, left.at, length, { expected: rewrite, rewrite }));
  }
  const span = { nominal: (a.nominal + b.nominal) / 2, low: a.low, high: b.high };
  const typed = { nominal: (a.typed + b.typed) / 2, low: a.typed, high: b.typed };
  return finish(
    { span, typed, spread: "range", amount: b, unit: unitOfSide(right) || unitOfSide(left), tidy: text("plain"), taken: text("taken") },
    field,
  );
}

function withTolerance(left: Side, right: Side, field: Field): Reading {
  // `80 % +/- 5 %` may mean 76 to 84 or 75 to 85; it is read as points, and said.
  const isPoints = field.kind === "share" && left.unit === "%";
  const isRelative = right.unit === "%" && !isPoints;
  const a = amountOf(isRelative ? left : borrowing(left, right), field);
  if (!a.ok) return unread(a.issue);
  if (right.value < 0) return unread(issue("number-range", "a tolerance has no sign of its own", right.at, right.length));
  if (isRelative ? field.kind === "temperature" : left.word !== "" || right.word !== "") {
    const says = isRelative
      ? "a percentage of a temperature says nothing; say how many K"
      : "here a tolerance is a share, such as `+/- 10 %`";
    return unread(issue("unit-mismatch", says, right.at, right.length, { expected: isRelative ? "+/- 2 K" : "+/- 10 %" }));
  }
  const tail = `+/- ${right.number}`;
  if (isRelative) {
    const share = right.value / 100;
    const text = (as: "plain" | "taken"): string => `${write(left, a[as])} ${tail} %`;
    const [span, typed] = [widened(a, share), widened(point(a.typed), share)];
    return finish({ span, typed, spread: "relative", amount: a, unit: unitOfSide(left), tidy: text("plain"), taken: text("taken") }, field);
  }
  const b = differenceOf(borrowing(right, left), field);
  if (!b.ok) return unread(b.issue);
  const scale = a.typed === 0 || !isFreeAir(field.kind) ? 1 : a.nominal / a.typed;
  const own = b.unit === "" ? "" : ` ${b.unit}`;
  const text = (as: "plain" | "taken"): string =>
    left.unit === "" ? write({ ...left, number: `${left.number} ${tail}` }, a[as]) : `${write(left, a[as])} ${tail}${own}`;
  const [span, typed] = [around(a.nominal, b.si * scale), around(a.typed, b.si)];
  const sum = { span, typed, spread: "plus-minus" as const, amount: a, unit: unitOfSide(left) || unitOfSide(right), tidy: text("plain") };
  const points = `${Number((span.low * 100).toPrecision(12))} to ${Number((span.high * 100).toPrecision(12))} %`;
  return finish({ ...sum, taken: isPoints ? points : text("taken") }, field, isPoints ? points : undefined);
}

/** A difference has neither the zero of a scale nor a base. */
function differenceOf(side: Side, field: Field): { ok: true; si: number; unit: string } | { ok: false; issue: Issue } {
  const kinds: Partial<Record<Kind, Kind>> = {
    temperature: "temperature-difference",
    "gauge-pressure": "pressure-difference",
    "absolute-pressure": "pressure-difference",
    "free-air-flow": "flow",
    "free-air-volume": "volume",
  };
  const fit = fitUnit({ ...side, unit: withoutBase(side.unit) }, { ...field, kind: kinds[field.kind] ?? field.kind });
  if (!fit.ok) return fit;
  return { ok: true, si: fit.unit ? toSI(side.value, fit.unit, true) : side.value, unit: fit.unit?.text ?? "" };
}

/** A side without a unit takes the other's. */
function borrowing(side: Side, other: Side): Side {
  return side.unit === "" && side.word === "" ? { ...side, unit: other.unit, unitAt: other.unitAt } : side;
}

function write(side: Side, unit: string): string {
  return [side.word, side.number, unit].filter(Boolean).join(" ");
}

function unitOfSide(side: Side): string {
  return side.word || side.unit;
}

function point(value: number): Span {
  return { nominal: value, low: value, high: value };
}

function around(nominal: number, by: number): Span {
  return { nominal, low: nominal - by, high: nominal + by };
}

function widened(span: Span, share: number): Span {
  return { nominal: span.nominal, low: span.low - Math.abs(span.low) * share, high: span.high + Math.abs(span.high) * share };
}

/** Physical limits, notes, and how the whole was taken. */
function finish(sum: Sum, field: Field, rewrite?: string): Reading {
  const { span, amount } = sum;
  const info = kindInfo(field.kind);
  const at = field.text.length - field.text.trimStart().length;
  const length = field.text.trim().length;
  if (![span.nominal, span.low, span.high].every(Number.isFinite)) {
    return unread(issue("number-bad", `${subject(field)} is too large to be reckoned with`, at, length));
  }
  const least = info.lowest ?? -Infinity;
  if (span.low < least - hair * Math.abs(least)) {
    const limit = least === 0 ? "negative" : `below ${show(least, field.kind, { units: "metric" }).text}`;
    const zero = field.kind === "temperature" ? "below absolute zero" : limit;
    return unread(
      issue("number-range", `${subject(field)} is ${info.says} and cannot be ${zero}`, at, length, { expected: example(field.kind) }),
    );
  }
  if (info.whole && sum.spread !== "relative" && !(Number.isInteger(span.low) && Number.isInteger(span.high))) {
    return unread(issue("number-range", `${subject(field)} is ${info.says}; a whole number is wanted`, at, length));
  }
  if (info.whole && span.high > mostCounted) {
    return unread(issue("number-range", `${subject(field)} is ${info.says}; nobody counts as far as that`, at, length));
  }
  const air = isFreeAir(field.kind) ? airOf(sum, field) : undefined;
  const typed = field.text.trim().replace(/\s+/g, " ");
  const wanted = rewrite ?? (typed === sum.tidy ? undefined : sum.tidy);
  const notes = [
    ...(wanted === undefined
      ? []
      : [issue("quantity", `read as \`${wanted}\`; rewrite?`, at, length, { expected: wanted, rewrite: wanted })]),
    ...(air && !air.basis ? [basisNote(sum, air, field, at, length)] : []),
  ];
  const value =
    amount.converted === undefined ? "" : ` = ${showBand(span.low, span.high, field.kind, { units: "metric" }).text}${amount.converted}`;
  const { nominal, low, high } = span;
  return { ok: true, nominal, low, high, spread: sum.spread, unit: sum.unit, readAs: sum.taken + value, ...(air && { air }), notes };
}

function airOf(sum: Sum, field: Field): Air {
  const { basis } = sum.amount;
  const { ambient = standardAtmosphere.value, intake = referenceTemperature.value, delivery } = field.options;
  if (basis) return { basis, typed: sum.typed };
  if (delivery === undefined) return { typed: sum.typed };
  const factor = atReference(ambient + delivery, intake);
  const { nominal, low, high } = sum.typed;
  return { typed: sum.typed, ifCompressed: { nominal: nominal * factor, low: low * factor, high: high * factor } };
}

function basisNote(sum: Sum, air: Air, field: Field, at: number, length: number): Issue {
  const text = (v: Span): string => showBand(v.low, v.high, field.kind, { units: "metric" }).text;
  const much = air.ifCompressed ? ` would be ${text(air.ifCompressed)}` : " would be the delivery pressure's ratio more";
  const says = `${sum.tidy} of which air? \`${sum.tidy} inlet\` (free air) = ${text(sum.span)} here; \`${sum.tidy} compressed\`${much}.`;
  return issue("air-basis-missing", says, at, length, { expected: `${sum.tidy} inlet` });
}

function unread(first: Issue, ...more: Issue[]): Unread {
  return { ok: false, issues: [first, ...more] };
}

/** Values of a plate: one, or two of two connections in the order of the plate (`230/460 V`, `20.4/10.2 A`). */
export type PairReading = { readonly ok: true; readonly values: readonly [Read] | readonly [Read, Read] } | Unread;

const plateNumber = "\\d+(?:\\.\\d+)?";
const platePair = new RegExp(`^(${plateNumber})\\s*/\\s*(${plateNumber})\\s*([^\\d/\\s].*)$`);
const plateTriple = new RegExp(`^${plateNumber}\\s*[-/]\\s*(${plateNumber}\\s*/\\s*${plateNumber}.*)$`);

/** Reads what stands on a plate: a pair, or one value. `1/2 hp` stays a fraction; volts and amps never are one. */
export function readPair(text: string, kind: Kind, options: QuantityOptions = {}): PairReading {
  const body = text.trim();
  if (text.length <= longestText) {
    const all = (what: Issue): Issue => ({ ...what, at: text.length - text.trimStart().length, length: body.length });
    const [, lastTwo] = plateTriple.exec(body) ?? [];
    if (lastTwo !== undefined && takesPairs(kind)) {
      const says = `"${body}" has three values; give one for each connection, such as \`${lastTwo}\``;
      return unread(all(issue("number-bad", says, 0, 0, { expected: lastTwo, rewrite: lastTwo })));
    }
    const [whole, first = "", second = "", unit = ""] = platePair.exec(body) ?? [];
    if (whole !== undefined && (takesPairs(kind) || !readQuantity(body, kind, options).ok)) {
      const [a, b] = [readQuantity(`${first} ${unit}`, kind, options), readQuantity(`${second} ${unit}`, kind, options)];
      if (a.ok && b.ok) return { ok: true, values: [a, b] };
      const [what, ...rest] = a.ok ? (b.ok ? [] : b.issues) : a.issues;
      if (what) return unread(all(what), ...rest.map(all));
    }
  }
  const reading = readQuantity(text, kind, options);
  return reading.ok ? { ok: true, values: [reading] } : reading;
}
