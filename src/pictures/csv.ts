// Tables as CSV for a spreadsheet: byte-order mark, CRLF, quotes only where needed (RFC 4180); units belong in the head row.

export type Cell = string | number | null;

/** A text that a spreadsheet would run as a formula is kept a text by the apostrophe that spreadsheets hide. */
const looksLikeFormula = /^[=+\-@\t\r]/;

export function csv(head: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return `\uFEFF${[head, ...rows].map((row) => row.map(cell).join(",")).join("\r\n")}\r\n`;
}

function cell(value: Cell): string {
  if (value === null) return "";
  if (typeof value === "number") return Number.isFinite(value) ? String(value) : "";
  const text = looksLikeFormula.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
