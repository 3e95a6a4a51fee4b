// Columns of a comparison: options alone or together, as the address names them.

/** Options of one column, in the order in which they are laid on; none of them is the machine as found. */
export type Names = readonly string[];

/** `a+b`: how a column is written in an address. */
export function keyOf(names: Names): string {
  return names.join("+");
}

export function namesOf(key: string): Names {
  return key.split("+").filter((name) => name !== "");
}

/** Stands in the address where as found is the only column: an empty word would mean the usual ones. */
const onlyFound = "found";

/** The columns beside as found: those the address names, else the usual ones; what is laid on now always has one. */
export function columnsOf(text: string | undefined, usual: readonly string[], laid: Names): Names[] {
  const keys = text === undefined ? [...usual] : text.split(",").filter((key) => key !== "" && key !== onlyFound);
  const columns = keys.map(namesOf);
  return laid.length === 0 || columns.some((names) => isSame(names, laid)) ? columns : [...columns, laid];
}

export function columnsText(columns: readonly Names[]): string {
  return columns.length === 0 ? onlyFound : columns.map(keyOf).join(",");
}

/** The same options, in whatever order. */
export function isSame(a: Names, b: Names): boolean {
  return a.length === b.length && a.every((name) => b.includes(name));
}

/** One column more, or one less. */
export function flipped(columns: readonly Names[], names: Names): Names[] {
  return columns.some((c) => isSame(c, names)) ? columns.filter((c) => !isSame(c, names)) : [...columns, names];
}

/** What concerns a machine: its own, and the shop's that carries it. */
export function isMine(address: string, root: string): boolean {
  return address.startsWith(`${root}/`) || address.startsWith("shop/");
}
