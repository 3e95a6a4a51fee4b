// Reader of a formula: the dimension of its result, or the part in which dimensions do not fit.
import { textOf } from "./formula-text.ts";
import { type Formula, FormulaError, type FormulaNode, type FunctionName, lookUp, namesBelow, ruleOf } from "./formula-tree.ts";
import { valueOfPart } from "./formula-value.ts";
import { type Dimension, power, pureNumber, sameDimension, times } from "./unit.ts";

/** The base units in the order of a Dimension. */
const bases = ["m", "kg", "s", "A", "K", "rad", "money"];
const angle = bases.indexOf("rad");

const withoutAngle = (d: Dimension): Dimension => d.map((exponent, k) => (k === angle ? 0 : exponent));

/**
 * Whether two dimensions agree when a radian counts as the number 1, as in the SI (rad = m/m). So a formula's dimension is compared with a
 * figure's unit: rad m = m, N m rad/s = W, and 2 pi f in 1/s serves as rad/s. Revolutions and degrees never get here: inside, angles are in rad.
 */
export const agreesButForAngle = (a: Dimension, b: Dimension): boolean => sameDimension(withoutAngle(a), withoutAngle(b));

/** Dimensions of the names; whether a name holds one number or a list makes no difference. */
type Given = Readonly<Record<string, Dimension>>;

/** null: a written 0, which fits every dimension. */
type Fit = Dimension | null;

/**
 * Dimension of the result; compare it with `agreesButForAngle`. One rule for angle: rad is dropped from every name as it is read and never
 * comes out, so sin takes and asin gives a pure number. The number 0 fits every dimension (a formula that is 0 throughout counts as a pure
 * number); every other written number is pure.
 */
export function dimensionOfFormula(formula: Formula, dims: Given): Dimension {
  return measure(formula.tree, dims) ?? pureNumber;
}

function measure(node: FormulaNode, dims: Given): Fit {
  switch (node.kind) {
    case "number":
      return node.value === 0 ? null : pureNumber;
    case "name":
      return withoutAngle(lookUp(node, node.name, dims));
    case "minus":
      return measure(node.of, dims);
    case "binary":
      if (node.op === "^") return measurePower(node, node.left, node.right, dims);
      return node.op === "*" || node.op === "/"
        ? product(measure(node.left, dims), measure(node.right, dims), node.op === "*" ? 1 : -1)
        : shared(node, [node.left, node.right], dims);
    case "if":
      shared(node, [node.left, node.right], dims);
      return shared(node, [node.ifSo, node.ifNot], dims);
    case "call":
      return measureCall(node, node.name, node.args, dims);
  }
}

const product = (a: Fit, b: Fit, exponentOfB: number): Fit => (a === null || b === null ? null : times(a, power(b, exponentOfB)));

function measurePower(node: FormulaNode, base: FormulaNode, exponent: FormulaNode, dims: Given): Fit {
  const [under, over] = [measure(base, dims) ?? pureNumber, measure(exponent, dims) ?? pureNumber];
  const refuse = (says: string): FormulaError => new FormulaError("dimension-of-exponent", exponent.at, `in '${textOf(node)}' ${says}`);
  if (!sameDimension(over, pureNumber)) throw refuse(`the exponent '${textOf(exponent)}' has the dimension ${inWords(over)}`);
  if (sameDimension(under, pureNumber)) return pureNumber;
  const n = namesBelow(exponent).size === 0 ? valueOfPart(exponent, {}) : NaN;
  if (typeof n === "number" && Number.isFinite(n)) return power(under, n);
  throw refuse(`the base '${textOf(base)}' has the dimension ${inWords(under)}, so the exponent must be a written number`);
}

function measureCall(node: FormulaNode, name: FunctionName, args: readonly FormulaNode[], dims: Given): Fit {
  const common = shared(node, args, dims);
  switch (ruleOf(name).dimension) {
    case "keeps":
      return common;
    case "root":
      return common && power(common, 1 / 2);
    case "ratio":
      return pureNumber;
    case "pure":
      if (common === null || sameDimension(common, pureNumber)) return pureNumber;
      throw new FormulaError("dimension-of-argument", node.at, `'${textOf(node)}' wants a pure number or an angle, not ${inWords(common)}`);
  }
}

/** The one dimension that several parts must have in common. */
function shared(node: FormulaNode, parts: readonly FormulaNode[], dims: Given): Fit {
  let first: { text: string; fit: Dimension } | null = null;
  for (const part of parts) {
    const fit = measure(part, dims);
    if (fit === null) continue;
    first ??= { text: textOf(part), fit };
    if (sameDimension(first.fit, fit)) continue;
    const says = `in '${textOf(node)}' the part '${first.text}' has the dimension ${inWords(first.fit)} but '${textOf(part)}' ${inWords(fit)}`;
    throw new FormulaError("dimension-mismatch", node.at, says);
  }
  return first?.fit ?? null;
}

/** `kg m^-1 s^-2` */
const inWords = (d: Dimension): string => {
  const parts = d.flatMap((exponent, k) =>
    exponent === 0 ? [] : [exponent === 1 ? bases[k] : `${bases[k]}^${Number(exponent.toPrecision(6))}`],
  );
  return parts.length === 0 ? "of a pure number" : parts.join(" ");
};
