// Reader of a formula: its text again, with names or with the numbers that stand for them.
import type { Formula, FormulaNode } from "./formula-tree.ts";

/** How tightly a piece of a formula holds together; the brackets of text and of typesetting both follow from it. */
export const holds = {
  /** a shown range: 60 to 240 L/min */
  range: 0,
  sum: 1,
  /** a typeset sum over a list, which reaches as far right as a product does */
  series: 2,
  product: 3,
  /** a shown value with a divided unit: 5 m/s */
  quotientUnit: 4,
  /** a shown value with its unit: 5 mm */
  unit: 5,
  minus: 6,
  power: 7,
  whole: 8,
} as const;

interface Piece {
  readonly text: string;
  readonly hold: number;
}

const plainNumber = /^[-−]?[\d.]+(e[-+]?\d+)?$/i;

/** How tightly a shown value holds together, told by its looks: `5`, `-5 mm`, `5 m/s`, `60 to 240 L/min`. */
export function holdOfShown(shown: string): number {
  if (/ to |±|\+\/-/.test(shown)) return holds.range;
  if (plainNumber.test(shown)) return isNegative(shown) ? holds.minus : holds.whole;
  if (/[*/·×]/.test(shown)) return holds.quotientUnit;
  return /\s/.test(shown) ? holds.unit : holds.whole;
}

export const isNegative = (text: string): boolean => /^[-−]/.test(text);

/** Canonical text: blanks around + - * /, no bracket that the tree does not need. */
export const textOf = (node: FormulaNode): string => write(node, (name) => ({ text: name, hold: holds.whole })).text;

/**
 * The same formula with shown values in place of the names: `100 L * (800 kPa + 101.3 kPa)`. With plain numbers put in, the text is a formula
 * again and has the same value to the last digit.
 */
export function withNumbers(formula: Formula, shown: (name: string) => string): string {
  const put = (name: string): Piece => {
    const text = shown(name);
    return { text, hold: holdOfShown(text) };
  };
  return write(formula.tree, put).text;
}

function write(node: FormulaNode, put: (name: string) => Piece): Piece {
  const inner = (part: FormulaNode): string => write(part, put).text;
  switch (node.kind) {
    case "number":
      return { text: node.text, hold: holds.whole };
    case "name":
      return put(node.name);
    case "minus": {
      const of = write(node.of, put);
      return {
        text: `-${right(of, holds.quotientUnit)}`,
        hold: of.hold < holds.quotientUnit ? holds.minus : Math.min(of.hold, holds.minus),
      };
    }
    case "call":
      return { text: `${node.name}(${node.args.map(inner).join(", ")})`, hold: holds.whole };
    case "if": {
      const test = `${inner(node.left)} ${node.op} ${inner(node.right)}`;
      return { text: `if(${test}, ${inner(node.ifSo)}, ${inner(node.ifNot)})`, hold: holds.whole };
    }
    case "binary": {
      const [a, b] = [write(node.left, put), write(node.right, put)];
      switch (node.op) {
        case "^":
          return { text: `${bracketed(a, holds.whole)}^${bracketed(b, holds.minus)}`, hold: holds.power };
        case "*":
          return { text: `${bracketed(a, holds.product)} * ${right(b, holds.quotientUnit)}`, hold: holds.product };
        case "/":
          return { text: `${bracketed(a, holds.product)} / ${right(b, holds.unit)}`, hold: holds.product };
        case "+":
        case "-":
          return { text: `${bracketed(a, holds.sum)} ${node.op} ${right(b, holds.series)}`, hold: holds.sum };
      }
    }
  }
}

const bracketed = (piece: Piece, least: number): string => (piece.hold < least ? `(${piece.text})` : piece.text);

/** After an operator a leading minus gets brackets too. */
const right = (piece: Piece, least: number): string => (isNegative(piece.text) ? `(${piece.text})` : bracketed(piece, least));
