// Reader of a formula: its value for given numbers and lists.
import { textOf } from "./formula-text.ts";
import {
  childrenOf,
  type Comparison,
  type Formula,
  FormulaError,
  type FormulaNode,
  lookUp,
  type Operator,
  ruleOf,
} from "./formula-tree.ts";

export type FormulaValue = number | readonly number[];

/** What the names stand for. */
type Given = Readonly<Record<string, FormulaValue>>;

const operators: Record<Operator, (a: number, b: number) => number> = {
  "+": (a, b) => a + b,
  "-": (a, b) => a - b,
  "*": (a, b) => a * b,
  "/": (a, b) => a / b,
  "^": (a, b) => a ** b,
};

const comparisons: Record<Comparison, (a: number, b: number) => boolean> = {
  "<": (a, b) => a < b,
  "<=": (a, b) => a <= b,
  ">": (a, b) => a > b,
  ">=": (a, b) => a >= b,
};

/**
 * Value for given SI numbers and lists. Lists go through operators and functions element by element until sum, mean, count, min or max
 * makes one number of them. Infinity (never) and NaN pass through as in plain arithmetic.
 */
export function valueOf(formula: Formula, values: Given): number {
  const value = valueOfPart(formula.tree, values);
  if (typeof value === "number") return value;
  throw new FormulaError("list-left", 0, `'${formula.text}' gives a list of ${value.length}, not one number`);
}

export function valueOfPart(node: FormulaNode, values: Given): FormulaValue {
  switch (node.kind) {
    case "number":
      return node.value;
    case "name":
      return lookUp(node, node.name, values);
    case "minus":
      return elementwise(node, (a: number) => -a, [valueOfPart(node.of, values)]);
    case "binary":
      return elementwise(node, operators[node.op], [valueOfPart(node.left, values), valueOfPart(node.right, values)]);
    case "if": {
      const holds = comparisons[node.op];
      const choose = (a: number, b: number, ifSo: number, ifNot: number): number => (holds(a, b) ? ifSo : ifNot);
      return elementwise(
        node,
        choose,
        childrenOf(node).map((part) => valueOfPart(part, values)),
      );
    }
    case "call": {
      const { of, fold, empty } = ruleOf(node.name);
      const args = node.args.map((arg) => valueOfPart(arg, values));
      const [list] = args;
      if (of !== undefined && (fold === undefined || args.length > 1)) return elementwise(node, of, args);
      if (fold === undefined || typeof list !== "object") throw new FormulaError("not-a-list", node.at, `'${textOf(node)}' wants a list`);
      if (list.length > 0) return fold(list);
      if (empty !== undefined) return empty;
      throw new FormulaError("list-empty", node.at, `'${textOf(node)}' has no value for an empty list`);
    }
  }
}

function elementwise(node: FormulaNode, of: (...x: number[]) => number, args: readonly FormulaValue[]): FormulaValue {
  const lists = args.filter((arg) => typeof arg === "object");
  const [first] = lists;
  if (first === undefined) return of(...args.filter((arg) => typeof arg === "number"));
  const other = lists.find((list) => list.length !== first.length);
  if (other !== undefined) {
    throw new FormulaError("list-lengths", node.at, `'${textOf(node)}' joins lists of ${first.length} and ${other.length}`);
  }
  return first.map((_, k) => of(...args.map((arg) => (typeof arg === "number" ? arg : (arg[k] ?? NaN)))));
}
