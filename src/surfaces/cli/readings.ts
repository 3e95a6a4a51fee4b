// Readings from a table of a user: one column of a CSV file as text with its unit, every bad line with its number.
import { Misuse } from "./misuse.ts";

/** The column of that name, else the first one of numbers. A head like `pressure/bar` carries the unit. */
export function readingsOf(csv: string, file: string, column?: string): string {
  const rows = csv
    .replace(/^\uFEFF/, "")
    .split(/\r?\n/)
    .map((line, i) => ({ line: i + 1, cells: cellsOf(line) }))
    .filter(({ cells }) => cells.some((c) => c !== ""));
  const first = rows[0];
  if (!first) throw new Misuse("file-bad", `${file} is empty`);
  const hasHead = !first.cells.some(isNumber);
  const heads = hasHead ? first.cells : first.cells.map((_, i) => String(i + 1));
  const data = hasHead ? rows.slice(1) : rows;
  const at =
    column === undefined
      ? heads.findIndex((_, i) => data.length > 0 && data.every(({ cells }) => isNumber(cells[i] ?? "")))
      : columnNamed(heads, column);
  if (at < 0) {
    const names = heads.map(nameOf).join(", ");
    throw new Misuse(
      "file-bad",
      column === undefined
        ? `${file} has no column of numbers only; name one: ${names}`
        : `${file} has no column ${column}; it has ${names}`,
      heads.map(nameOf),
    );
  }
  const bad = data.find(({ cells }) => !isNumber(cells[at] ?? ""));
  if (bad) throw new Misuse("file-bad", `${file}:${bad.line} has no number under ${nameOf(heads[at] ?? "")}: "${bad.cells[at] ?? ""}"`);
  if (data.length === 0) throw new Misuse("file-bad", `${file} has a head and no readings`);
  const unit = /\/(.+)$/.exec(heads[at] ?? "")?.[1]?.trim() ?? "";
  return data.map(({ cells }) => `${cells[at] ?? ""} ${unit}`.trim()).join(", ");
}

const isNumber = (text: string): boolean => /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(text);
const nameOf = (head: string): string => head.replace(/\/.*$/, "").trim();
const columnNamed = (heads: readonly string[], name: string): number => {
  const whole = heads.indexOf(name);
  return whole >= 0 ? whole : heads.findIndex((h) => nameOf(h) === name);
};

/** Cells of a line, parted by commas (semicolons where there is no comma), quotes around those that hold one. */
function cellsOf(line: string): string[] {
  const part = line.includes(",") ? "," : ";";
  const cells: string[] = [];
  let cell = "";
  let inside = false;
  for (let i = 0; i < line.length; i += 1) {
    const c = line[i] ?? "";
    if (c === '"') {
      if (inside && line[i + 1] === '"') cell += line[(i += 1)] ?? "";
      else inside = !inside;
    } else if (c === part && !inside) {
      cells.push(cell.trim());
      cell = "";
    } else cell += c;
  }
  return [...cells, cell.trim()];
}
