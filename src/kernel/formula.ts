// Formulas: one text, one tree, four readers of it (value, dimension, numbers put in, typesetting).
export { agreesButForAngle, dimensionOfFormula } from "./formula-dimension.ts";
export { toMathML } from "./formula-mathml.ts";
export { withNumbers } from "./formula-text.ts";
export { FormulaError, namesIn, parseFormula } from "./formula-tree.ts";
export { type FormulaValue, valueOf } from "./formula-value.ts";
