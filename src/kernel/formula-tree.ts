// A formula as text and as a tree: what may be written in one, and how it is read.

type FormulaErrorCode =
  | "empty"
  | "too-long"
  | "too-deep"
  | "bad-character"
  | "unexpected"
  | "number-range"
  | "reserved-name"
  | "unknown-function"
  | "argument-count"
  | "unknown-name"
  | "not-a-list"
  | "list-left"
  | "list-lengths"
  | "list-empty"
  | "dimension-mismatch"
  | "dimension-of-exponent"
  | "dimension-of-argument";

/** What is wrong with a formula, or with what was put into it, and where: `offset` counts the characters of the text from 0. */
export class FormulaError extends Error {
  readonly code: FormulaErrorCode;
  readonly offset: number;
  constructor(code: FormulaErrorCode, offset: number, says: string) {
    super(says);
    this.name = "FormulaError";
    this.code = code;
    this.offset = offset;
  }
}

export type Operator = "+" | "-" | "*" | "/" | "^";
export type Comparison = "<" | "<=" | ">" | ">=";

/** `at` is where the part starts in the text. The constant pi is a number whose text is `pi`. */
export type FormulaNode = { readonly at: number } & (
  | { readonly kind: "number"; readonly text: string; readonly value: number }
  | { readonly kind: "name"; readonly name: string }
  | { readonly kind: "minus"; readonly of: FormulaNode }
  | { readonly kind: "binary"; readonly op: Operator; readonly left: FormulaNode; readonly right: FormulaNode }
  | { readonly kind: "call"; readonly name: FunctionName; readonly args: readonly FormulaNode[] }
  | {
      readonly kind: "if";
      readonly op: Comparison;
      readonly left: FormulaNode;
      readonly right: FormulaNode;
      readonly ifSo: FormulaNode;
      readonly ifNot: FormulaNode;
    }
);

export interface Formula {
  readonly text: string;
  readonly tree: FormulaNode;
  readonly names: readonly string[];
}

interface FunctionRule {
  /** How many arguments it takes. */
  readonly takes: readonly [least: number, most: number];
  /** Value for numbers; for lists it is taken element by element. */
  readonly of?: (...x: number[]) => number;
  /** Value for one whole list; where both stand, a single argument is the list. */
  readonly fold?: (list: readonly number[]) => number;
  /** Value of the fold for a list without elements; left out where there is none. */
  readonly empty?: number;
  /**
   * What it does to dimensions. pure: of numbers, gives a number. keeps: all arguments share one, which the result has.
   * ratio: all arguments share one, gives a number. root: halves the exponents.
   */
  readonly dimension: "pure" | "keeps" | "ratio" | "root";
}

const total = (list: readonly number[]): number => list.reduce((sum, x) => sum + x, 0);
const pure = (of: (x: number) => number): FunctionRule => ({ takes: [1, 1], of, dimension: "pure" });

const functions = {
  sqrt: { takes: [1, 1], of: Math.sqrt, dimension: "root" },
  abs: { takes: [1, 1], of: Math.abs, dimension: "keeps" },
  exp: pure(Math.exp),
  ln: pure(Math.log),
  log10: pure(Math.log10),
  sin: pure(Math.sin),
  cos: pure(Math.cos),
  tan: pure(Math.tan),
  asin: pure(Math.asin),
  acos: pure(Math.acos),
  atan: pure(Math.atan),
  atan2: { takes: [2, 2], of: Math.atan2, dimension: "ratio" },
  hypot: { takes: [2, Infinity], of: Math.hypot, dimension: "keeps" },
  min: { takes: [1, Infinity], of: Math.min, fold: (list) => list.reduce((a, b) => Math.min(a, b)), dimension: "keeps" },
  max: { takes: [1, Infinity], of: Math.max, fold: (list) => list.reduce((a, b) => Math.max(a, b)), dimension: "keeps" },
  sum: { takes: [1, 1], fold: total, empty: 0, dimension: "keeps" },
  mean: { takes: [1, 1], fold: (list) => total(list) / list.length, dimension: "keeps" },
  count: { takes: [1, 1], fold: (list) => list.length, empty: 0, dimension: "ratio" },
  // Rounding up a length depends on the unit it is told in, so only numbers are rounded.
  ceil: pure(Math.ceil),
  floor: pure(Math.floor),
} as const satisfies Record<string, FunctionRule>;

export type FunctionName = keyof typeof functions;

const isFunction = (name: string): name is FunctionName => Object.hasOwn(functions, name);
export const ruleOf = (name: FunctionName): FunctionRule => functions[name];

/** A formula is one line on a page; the bound also bounds the depth of the tree that the readers walk down. */
const longestText = 2_000;
/** Far beyond what anybody can read, far below what the call stack holds. */
const deepestNesting = 100;
/** Formula texts are written in declarations; the bound only matters where somebody types into a field. */
const mostRemembered = 5_000;

const remembered = new Map<string, Formula>();

/** Reads `V * (p_1 + p_a) / q`; grammar: numbers, names, `pi`, + - * /, ^ (from the right), functions, `if(a < b, x, y)`. */
export function parseFormula(text: string): Formula {
  const known = remembered.get(text);
  if (known !== undefined) return known;
  const tree = parse(text);
  const formula: Formula = { text, tree, names: [...namesBelow(tree)] };
  if (remembered.size >= mostRemembered) remembered.clear();
  remembered.set(text, formula);
  return formula;
}

/** The names that must be given, each once, in the order in which they are read. */
export const namesIn = (formula: Formula): readonly string[] => formula.names;

interface Token {
  readonly kind: "number" | "word" | "sign" | "end";
  readonly text: string;
  readonly at: number;
}

function tokensOf(text: string): Token[] {
  const pattern = /(\d+(?:\.\d+)?(?:[eE][+-]?\d+)?)|([A-Za-z][A-Za-z0-9_]*)|(<=|>=|[-+*/^(),<>])|\s+/y;
  const tokens: Token[] = [];
  while (pattern.lastIndex < text.length) {
    const at = pattern.lastIndex;
    const found = pattern.exec(text);
    if (found === null) {
      const character = String.fromCodePoint(text.codePointAt(at) ?? 0);
      throw new FormulaError("bad-character", at, `'${character}' has no meaning in a formula`);
    }
    const [all, number, word, sign] = found;
    if (number !== undefined) tokens.push({ kind: "number", text: all, at });
    else if (word !== undefined) tokens.push({ kind: "word", text: all, at });
    else if (sign !== undefined) tokens.push({ kind: "sign", text: all, at });
  }
  return tokens;
}

function parse(text: string): FormulaNode {
  if (text.length > longestText) {
    throw new FormulaError("too-long", longestText, `a formula has at most ${longestText} characters; this one has ${text.length}`);
  }
  const tokens = tokensOf(text);
  if (tokens.length === 0) throw new FormulaError("empty", 0, "the formula is empty");
  const end: Token = { kind: "end", text: "", at: text.length };
  let next = 0;
  let nesting = 0;

  const look = (): Token => tokens[next] ?? end;
  const unexpected = (wanted: string): FormulaError => {
    const token = look();
    return new FormulaError(
      "unexpected",
      token.at,
      `${wanted} expected, ${token.kind === "end" ? "the formula ends" : `found '${token.text}'`}`,
    );
  };
  const take = <S extends string>(...signs: S[]): S | null => {
    const token = look();
    const sign = token.kind === "sign" ? signs.find((s) => s === token.text) : undefined;
    if (sign === undefined) return null;
    next++;
    return sign;
  };
  const demand = (sign: string, wanted = `'${sign}'`): void => {
    if (take(sign) === null) throw unexpected(wanted);
  };

  const chain = <O extends Operator>(operand: () => FormulaNode, ...operators: O[]): FormulaNode => {
    const at = look().at;
    let left = operand();
    for (let op = take(...operators); op !== null; op = take(...operators)) left = { kind: "binary", op, left, right: operand(), at };
    return left;
  };
  const sum = (): FormulaNode => chain(product, "+", "-");
  const product = (): FormulaNode => chain(signed, "*", "/");
  // Every way to nest passes here: brackets, arguments, exponents, signs.
  const signed = (): FormulaNode => {
    const at = look().at;
    if (++nesting > deepestNesting)
      throw new FormulaError("too-deep", at, `parts stand more than ${deepestNesting} deep inside each other`);
    const node: FormulaNode = take("-") === null ? raised(at) : { kind: "minus", of: signed(), at };
    nesting--;
    return node;
  };
  const raised = (at: number): FormulaNode => {
    const left = atom();
    return take("^") === null ? left : { kind: "binary", op: "^", left, right: signed(), at };
  };
  const atom = (): FormulaNode => {
    const token = look();
    if (take("(") !== null) {
      const inner = sum();
      demand(")");
      return inner;
    }
    if (token.kind === "number") {
      next++;
      const value = Number(token.text);
      if (!Number.isFinite(value)) throw new FormulaError("number-range", token.at, `${token.text} is too large for a number`);
      return { kind: "number", text: token.text, value, at: token.at };
    }
    if (token.kind !== "word") throw unexpected("a number, a name or '('");
    next++;
    return word(token);
  };
  const word = ({ text: name, at }: Token): FormulaNode => {
    const called = take("(") !== null;
    if (called && name === "if") return condition(at);
    if (called && isFunction(name)) return call(name, at);
    if (called) throw new FormulaError("unknown-function", at, `'${name}' is no function; a product is written with *`);
    if (name === "pi") return { kind: "number", text: name, value: Math.PI, at };
    if (name === "if" || isFunction(name)) throw new FormulaError("reserved-name", at, `'${name}' is a function and needs its '('`);
    return { kind: "name", name, at };
  };
  const call = (name: FunctionName, at: number): FormulaNode => {
    const args = [sum()];
    while (take(",") !== null) args.push(sum());
    demand(")", "',' or ')'");
    const [least, most] = ruleOf(name).takes;
    if (args.length < least || args.length > most) {
      const wanted = least === most ? String(least) : `at least ${least}`;
      throw new FormulaError("argument-count", at, `${name} takes ${wanted} argument${wanted === "1" ? "" : "s"}, not ${args.length}`);
    }
    return { kind: "call", name, args, at };
  };
  const condition = (at: number): FormulaNode => {
    const left = sum();
    const op = take("<", "<=", ">", ">=");
    if (op === null) throw unexpected("a comparison");
    const right = sum();
    demand(",");
    const ifSo = sum();
    demand(",");
    const ifNot = sum();
    demand(")");
    return { kind: "if", op, left, right, ifSo, ifNot, at };
  };

  const tree = sum();
  if (look().kind !== "end") throw unexpected("an operator or the end");
  return tree;
}

export const childrenOf = (node: FormulaNode): readonly FormulaNode[] => {
  switch (node.kind) {
    case "number":
    case "name":
      return [];
    case "minus":
      return [node.of];
    case "binary":
      return [node.left, node.right];
    case "call":
      return node.args;
    case "if":
      return [node.left, node.right, node.ifSo, node.ifNot];
  }
};

/** The names of a part, each once, in the order in which they are read. */
export function namesBelow(node: FormulaNode, into = new Set<string>()): Set<string> {
  if (node.kind === "name") into.add(node.name);
  for (const child of childrenOf(node)) namesBelow(child, into);
  return into;
}

/** What is given for a name of the formula. */
export function lookUp<T>(node: FormulaNode, name: string, given: Readonly<Record<string, T>>): T {
  const found = Object.hasOwn(given, name) ? given[name] : undefined;
  if (found === undefined) throw new FormulaError("unknown-name", node.at, `nothing is given for '${name}'`);
  return found;
}
