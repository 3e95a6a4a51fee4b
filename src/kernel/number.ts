// The number at the start of a quantity: decimals, inch fractions, and the slips that people make while typing one.
import type { FindingCode } from "./finding.ts";

export type NumberReading = GoodNumber | BadNumber;

interface GoodNumber {
  readonly ok: true;
  readonly value: number;
  /** As the files write it. */
  readonly tidy: string;
  /** Letters of the text that the number took. */
  readonly length: number;
}

interface BadNumber {
  readonly ok: false;
  readonly code: FindingCode;
  readonly says: string;
  readonly length: number;
  /** What the number was meant to be, when that is clear; two when it is one of two. */
  readonly meant?: readonly string[];
}

const sign = "[-+\\u2212]?";
const decimal = new RegExp(`^${sign}(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][-+\\u2212]?\\d+)?`);
const mixedFraction = new RegExp(`^(${sign})(\\d+)(?:-|\\s+)(\\d+)/(\\d+)(?![\\d.,])`);
const fraction = new RegExp(`^(${sign})(\\d+)/(\\d+)(?![\\d.,])`);
const pair = /^\d+(?:\.\d+)?\s*\/\s*\d+(?:\.\d+)?/;
const thousands = new RegExp(`^${sign}[1-9]\\d{0,2}(?:[,'_\\u2019 \\u00a0\\u202f]\\d{3})+(?:\\.\\d+)?(?![\\d,/])`);
const comma = new RegExp(`^${sign}\\d[\\d.]*,\\d+`);
const letters = new RegExp(`^${sign}[.\\dOoIl]*(?:[Oo]|[Il](?=[.\\dOoIl]*\\d))[.\\dOoIl]*(?=\\s|%|$)`);
const noNumber = /^[-+.]*(?:nan|inf(?:inity)?|\u221e|0x[\da-f]*)/i;

/** The largest denominator that a scale or a label carries as a fraction; anything else is two values. */
const finestFraction = 128;

/** Reads the number at the start of the text; `pairs` where a/b are two values of a plate, never a fraction (volts, amps). */
export function readNumber(text: string, pairs: boolean): NumberReading {
  return slip(text) ?? (pairs ? undefined : readFraction(text)) ?? pairHere(text) ?? readDecimal(text);
}

function slip(text: string): BadNumber | undefined {
  const grouped = thousands.exec(text)?.[0];
  if (grouped !== undefined) {
    const meant = [grouped.replace(/[,'_\u2019\s]/g, "")];
    // 1,500 is fifteen hundred to some and one and a half to others.
    if (/^[^,]*,\d{3}$/.test(grouped)) meant.push(grouped.replace(",", "."));
    return { ok: false, code: "thousands-sign", says: `"${grouped}": no sign between thousands`, length: grouped.length, meant };
  }
  const withComma = comma.exec(text)?.[0];
  if (withComma !== undefined) {
    const meant = [withComma.replaceAll(".", "").replace(",", ".")];
    return { ok: false, code: "decimal-comma", says: `"${withComma}": decimal point wanted`, length: withComma.length, meant };
  }
  const lettered = letters.exec(text)?.[0];
  if (lettered !== undefined && /\d/.test(lettered)) {
    const meant = [lettered.replace(/[Oo]/g, "0").replace(/[Il]/g, "1")];
    const which = /[Oo]/.test(lettered) ? "letter O instead of zero" : "letter l or I instead of one";
    return { ok: false, code: "letter-in-number", says: `"${lettered}": ${which}`, length: lettered.length, meant };
  }
  const none = noNumber.exec(text)?.[0];
  return none === undefined ? undefined : bad(`"${none}" is not a number the files know`, none.length);
}

function readFraction(text: string): NumberReading | undefined {
  const mixed = mixedFraction.exec(text);
  const plain = mixed ? null : fraction.exec(text);
  const [whole, minus, ints, top, bottom] = mixed ?? (plain ? [plain[0], plain[1], "0", plain[2], plain[3]] : []);
  if (whole === undefined) return undefined;
  const [n, d] = [Number(top), Number(bottom)];
  const binary = d <= finestFraction && Number.isInteger(Math.log2(d));
  if (d === 0) return bad(`"${whole}" divides by zero`, whole.length);
  if (!(binary || (n < d && d <= 10)) || (mixed && n >= d)) return mixed ? bad(`"${whole}" is not a fraction`, whole.length) : undefined;
  const value = Number(ints) + n / d;
  const tidy = mixed ? `${minus}${ints}-${top}/${bottom}` : whole;
  return { ok: true, value: minus === "" || minus === "+" ? value : -value, tidy, length: whole.length };
}

function pairHere(text: string): BadNumber | undefined {
  const both = pair.exec(text)?.[0];
  if (both === undefined) return undefined;
  return { ok: false, code: "pair-here", says: `"${both}" is a pair of plate values; one value is wanted here`, length: both.length };
}

function readDecimal(text: string): NumberReading {
  const digits = decimal.exec(text)?.[0];
  if (digits === undefined) return bad(text === "" ? "a number is missing" : `a number is wanted, not "${short(text)}"`, text.length);
  if (/^[.\d,]/.test(text.slice(digits.length))) return bad(`"${short(text)}" is not one number`, text.length);
  const tidy = digits.replaceAll("\u2212", "-");
  const value = Number(tidy);
  if (!Number.isFinite(value)) return bad(`${short(digits)} is too large to be reckoned with`, digits.length);
  if (value === 0 && /[1-9]/.test(digits.split(/[eE]/)[0] ?? ""))
    return bad(`${short(digits)} is too small to be reckoned with`, digits.length);
  return { ok: true, value, tidy, length: digits.length };
}

function bad(says: string, length: number): BadNumber {
  return { ok: false, code: "number-bad", says, length };
}

function short(text: string): string {
  return text.length > 24 ? `${text.slice(0, 24)}...` : text;
}
