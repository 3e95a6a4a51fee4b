// Reader of a formula: typeset as MathML Core, with symbols or with the numbers that stand for them.
import { holdOfShown, holds, isNegative } from "./formula-text.ts";
import type { Comparison, Formula, FormulaNode, FunctionName, Operator } from "./formula-tree.ts";

/** A typeset part, always exactly one element, and what its neighbours must know of it. */
interface Typeset {
  readonly markup: string;
  /** One of `holds`. */
  readonly hold: number;
  /** Begins with a minus sign: an operator before it needs brackets. */
  readonly minusFirst?: boolean;
  /** Begins with a figure: a factor before it needs a dot. */
  readonly figureFirst?: boolean;
  /** Ends in a shown value: a factor after it needs a dot. */
  readonly shownLast?: boolean;
  /** A symbol with a subscript, apart, for an exponent to stand above the subscript. */
  readonly indexed?: { readonly letter: string; readonly index: string };
}

type Put = (name: string) => Typeset;

/**
 * The formula as a `math` element: italic symbols, upright subscripts, functions and units, fractions, no bracket that is not needed.
 * With `numbers`, shown values such as `100 L` stand for the names.
 */
export function toMathML(formula: Formula, options: { readonly numbers?: (name: string) => string } = {}): string {
  const { numbers } = options;
  const put: Put = numbers === undefined ? symbol : (name) => shownValue(numbers(name));
  return `<math displaystyle="true">${typeset(formula.tree, put).markup}</math>`;
}

// --- elements ---

const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

const element = (name: string, ...children: string[]): string => `<${name}>${children.join("")}</${name}>`;
const row = (...children: string[]): string => element("mrow", ...children);
const sign = (text: string): string => element("mo", escaped(text));
const figure = (text: string): string => element("mn", escaped(text));
const plain = (text: string): string => element("mtext", escaped(text));
/** A letter that stands upright; without the attribute a single letter is slanted. */
const upright = (text: string): string => `<mi mathvariant="normal">${escaped(text)}</mi>`;
const fenced = (open: string, markup: string, close: string): string => row(sign(open), markup, sign(close));

const minus = sign("−");
const dot = sign("⋅");
const applied = sign("\u2061");
const invisibleTimes = sign("\u2062");
const thinSpace = '<mspace width="0.167em"></mspace>';

const inBrackets = (part: Typeset): string => fenced("(", part.markup, ")");
const isBare = (part: Typeset, least: number): boolean => part.hold >= least;
const isBareRight = (part: Typeset, least: number): boolean => isBare(part, least) && part.minusFirst !== true;
const left = (part: Typeset, least: number): string => (isBare(part, least) ? part.markup : inBrackets(part));
const right = (part: Typeset, least: number): string => (isBareRight(part, least) ? part.markup : inBrackets(part));

// --- tree ---

const relations: Record<Comparison, string> = { "<": "<", "<=": "≤", ">": ">", ">=": "≥" };

function typeset(node: FormulaNode, put: Put): Typeset {
  switch (node.kind) {
    case "number":
      return node.text === "pi" ? { markup: upright("π"), hold: holds.whole } : writtenNumber(node.text);
    case "name":
      return put(node.name);
    case "minus": {
      const of = typeset(node.of, put);
      const hold = isBareRight(of, holds.product) ? Math.min(of.hold, holds.minus) : holds.minus;
      return { ...ends(of, of), markup: row(minus, right(of, holds.product)), hold, minusFirst: true };
    }
    case "binary":
      return node.op === "^"
        ? raised(typeset(node.left, put), exponent(node.right, put))
        : joined(node.op, typeset(node.left, put), typeset(node.right, put));
    case "call":
      return called(
        node.name,
        node.args.map((arg) => typeset(arg, put)),
      );
    case "if": {
      const part = (of: FormulaNode): string => typeset(of, put).markup;
      const line = (value: FormulaNode, when: string): string => element("mtr", element("mtd", part(value)), element("mtd", when));
      const test = row(plain("if\u00a0"), part(node.left), sign(relations[node.op]), part(node.right));
      const lines = element("mtable", line(node.ifSo, test), line(node.ifNot, plain("otherwise")));
      return { markup: row('<mo form="prefix" stretchy="true">{</mo>', lines), hold: holds.range };
    }
  }
}

/** What a row that begins with one part and ends with another looks like from outside. */
const ends = (first: Typeset, last: Typeset): Pick<Typeset, "minusFirst" | "figureFirst" | "shownLast"> => ({
  minusFirst: first.minusFirst === true,
  figureFirst: first.figureFirst === true,
  shownLast: last.shownLast === true,
});

function joined(op: Exclude<Operator, "^">, a: Typeset, b: Typeset): Typeset {
  switch (op) {
    case "+":
      return { ...ends(a, b), markup: row(left(a, holds.sum), sign("+"), right(b, holds.sum)), hold: holds.sum };
    case "-":
      return { ...ends(a, b), markup: row(left(a, holds.sum), minus, right(b, holds.series)), hold: holds.sum };
    case "*": {
      const markup = row(left(a, holds.product), ...between(a, b), right(b, holds.product));
      const first = isBare(a, holds.product) ? a : bracket;
      const last = isBareRight(b, holds.product) ? b : bracket;
      return { ...ends(first, last), markup, hold: holds.product };
    }
    case "/":
      // A figure first in the numerator counts: 2 · 1/3 must not read as a mixed number.
      return { markup: element("mfrac", a.markup, b.markup), hold: holds.power, figureFirst: a.figureFirst === true };
  }
}

const bracket: Typeset = { markup: "", hold: holds.whole };

/** A dot where figures would run together, a little room between symbols, nothing before a bracket. */
function between(a: Typeset, b: Typeset): string[] {
  const [bareA, bareB] = [isBare(a, holds.product), isBareRight(b, holds.product)];
  if ((bareA && a.shownLast === true) || (bareB && b.figureFirst === true)) return [dot];
  return bareA && bareB ? [invisibleTimes, thinSpace] : [invisibleTimes];
}

function raised(base: Typeset, above: string): Typeset {
  const edges = isBare(base, holds.whole) ? ends(base, base) : {};
  const markup = base.indexed
    ? element("msubsup", base.indexed.letter, base.indexed.index, above)
    : element("msup", left(base, holds.whole), above);
  return { ...edges, markup, hold: holds.power };
}

/** Small quotients stand on one line above a base: 1/n. */
function exponent(node: FormulaNode, put: Put): string {
  if (node.kind !== "binary" || node.op !== "/") return typeset(node, put).markup;
  const [a, b] = [typeset(node.left, put), typeset(node.right, put)];
  const isSmall = (a.hold === holds.whole || a.hold === holds.minus) && b.hold === holds.whole;
  return isSmall ? row(a.markup, sign("/"), b.markup) : joined("/", a, b).markup;
}

/** Functions that have a sign or a name of their own on paper. */
const paperNames: Partial<Record<FunctionName, string>> = { asin: "arcsin", acos: "arccos", atan: "arctan", atan2: "arctan2" };

const notation: Partial<Record<FunctionName, (list: string, args: readonly Typeset[]) => Typeset>> = {
  sqrt: (list) => ({ markup: element("msqrt", list), hold: holds.whole }),
  hypot: (_, args) => {
    const squares = args.map((arg) => raised(arg, figure("2")).markup);
    return { markup: element("msqrt", row(...parted(squares, sign("+")))), hold: holds.whole };
  },
  abs: (list) => ({ markup: fenced("|", list, "|"), hold: holds.whole }),
  ceil: (list) => ({ markup: fenced("⌈", list, "⌉"), hold: holds.whole }),
  floor: (list) => ({ markup: fenced("⌊", list, "⌋"), hold: holds.whole }),
  sum: (_, args) => ({ markup: row(sign("∑"), ...args.map((arg) => right(arg, holds.product))), hold: holds.series }),
};

const parted = (items: readonly string[], between: string): string[] => items.flatMap((item, k) => (k === 0 ? [item] : [between, item]));

function called(name: FunctionName, args: readonly Typeset[]): Typeset {
  const list = row(
    ...parted(
      args.map((arg) => arg.markup),
      sign(","),
    ),
  );
  const special = notation[name];
  if (special !== undefined) return special(list, args);
  const title = name === "log10" ? element("msub", upright("log"), figure("10")) : upright(paperNames[name] ?? name);
  return { markup: row(title, applied, fenced("(", list, ")")), hold: holds.power };
}

// --- leaves ---

/** In the order of the code points, capitals alike; the hyphen keeps the letter that ends Greek words out of reach. */
const greekAlphabet =
  "alpha beta gamma delta epsilon zeta eta theta iota kappa lambda mu nu xi omicron pi rho final-sigma sigma tau upsilon phi chi psi omega".split(
    " ",
  );
const smallAlpha = 0x3b1;
const capitalAlpha = 0x391;

function letters(spelled: string): string {
  const small = spelled.toLowerCase();
  const k = greekAlphabet.indexOf(small);
  if (k < 0) return spelled;
  if (spelled === small) return String.fromCodePoint(smallAlpha + k);
  return spelled.slice(1) === small.slice(1) ? String.fromCodePoint(capitalAlpha + k) : spelled;
}

/** `T_bd`, `R_1`, `eta_b`, `p_1_max`: a slanted letter (several letters stay upright, so as not to read as a product), upright index. */
function symbol(name: string): Typeset {
  const [first = "", ...indices] = name.split("_").filter((part) => part !== "");
  const letter = element("mi", letters(first));
  const [index, ...more] = indices.map((part) => (/^\d+$/.test(part) ? figure(part) : upright(letters(part))));
  if (index === undefined) return { markup: letter, hold: holds.whole };
  const below = more.length === 0 ? index : row(...parted([index, ...more], sign(",")));
  return { markup: element("msub", letter, below), hold: holds.whole, indexed: { letter, index: below } };
}

/** `1e-7` as a power of ten. */
function writtenNumber(text: string): Typeset {
  const [mantissa = "", tens] = text.toLowerCase().split("e");
  if (tens === undefined) return { markup: figure(mantissa), hold: holds.whole, figureFirst: true };
  const power = element("msup", figure("10"), isNegative(tens) ? row(minus, figure(tens.slice(1))) : figure(tens.replace("+", "")));
  return { markup: Number(mantissa) === 1 ? power : row(figure(mantissa), sign("×"), power), hold: holds.unit, figureFirst: true };
}

/** `-5 mm`, `68.02 s`, `never`: figures, then the unit upright behind a thin space. */
function shownValue(shown: string): Typeset {
  const edges = { minusFirst: isNegative(shown), figureFirst: true, shownLast: true };
  const found = /^[-−]?(\d+(?:\.\d+)?(?:e[-+]?\d+)?)(?:\s+(\S.*))?$/i.exec(shown);
  if (found === null) return { ...edges, markup: plain(shown), hold: holdOfShown(shown) };
  const [, digits = "", unit] = found;
  const number = writtenNumber(digits);
  const parts = [...(edges.minusFirst ? [minus] : []), number.markup, ...(unit === undefined ? [] : [thinSpace, plain(unitOnPaper(unit))])];
  return { ...edges, markup: parts.length === 1 ? number.markup : row(...parts), hold: Math.min(number.hold, holdOfShown(shown)) };
}

/** `kg*m2` as kg⋅m²; figures inside a word stay as they are. */
const unitOnPaper = (unit: string): string =>
  unit.replaceAll("*", "⋅").replace(/(?<=[A-Za-z])[234](?![A-Za-z0-9])/g, (digit) => "²³⁴"[Number(digit) - 2] ?? digit);
