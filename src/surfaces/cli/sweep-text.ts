// A sweep on the terminal: a table, and a plot of characters for each figure.
import { prettyUnit } from "../../kernel/display.ts";
import type { Finding } from "../../kernel/finding.ts";
import { addFindings } from "./findings-text.ts";
import type { Run, Sweep } from "./swept.ts";
import { type Page, pageFor, quantity, type Terminal } from "./terminal.ts";
import { padStart, table } from "./text.ts";

const digits = 4;
const numberText = (x: number): string => (Number.isNaN(x) ? "no value" : x === Infinity ? "never" : String(Number(x.toPrecision(digits))));

export function sweepPage(t: Terminal, s: Sweep, findings: readonly Finding[], svg: string | undefined): Page {
  const page = pageFor(t);
  addFindings(
    page,
    t,
    findings.filter((f) => f.severity === "error"),
  );
  page.gap();
  page.say(`${s.input.address}: ${s.input.says}`, "", "  ");
  s.runs.forEach((r, i) => page.say(`(${i + 1}) ${r.symbol === "" ? "" : `${r.symbol}: `}${r.says} (${r.address})`, "  ", "      "));
  page.gap();
  const heads = [
    { head: inBrackets(t, "input", s.input.unit), right: true },
    ...s.runs.map((r, i) => ({ head: inBrackets(t, `(${i + 1})`, r.unit), right: true })),
  ];
  const rows = s.input.values.map((x, k) => [numberText(x), ...s.runs.map((r) => cellText(r, k))]);
  page.add(...table(heads, rows, t.width, "  "));
  s.runs.forEach((r, i) => {
    page.gap();
    page.add(...textPlot(t, s.input.values, r, `(${i + 1}) ${quantity(t, r.unit)}`.trim()));
  });
  if (svg !== undefined) {
    page.gap();
    page.say(`Drawn into ${svg}.`);
  }
  return page;
}

const inBrackets = (t: Terminal, name: string, unit: string): string =>
  unit === "" ? name : `${name} ${t.unicode ? prettyUnit(unit) : unit}`;

function cellText(r: Run, k: number): string {
  const [n, a, b] = [r.nominal[k], r.low[k], r.high[k]].map((x) => numberText(x ?? Number.NaN));
  return a === b ? `${n}` : `${n} (${a} to ${b})`;
}

/** Lines of a plot: high enough to see a bend, low enough to see the table above. */
const plotHeight = 10;
const plotWidth = 60;

/** A point a column: the nominal value on its band. */
export function textPlot(t: Pick<Terminal, "unicode" | "width">, x: readonly number[], r: Run, title: string): string[] {
  const finite = [...r.nominal, ...r.low, ...r.high].filter((v) => Number.isFinite(v));
  if (finite.length === 0) return [`  ${title}: nothing to draw`];
  const [low, high] = [Math.min(...finite), Math.max(...finite)];
  if (high === low) return [`  ${title}: ${numberText(low)} throughout`];
  const labels = [numberText(high), numberText(low)];
  const margin = Math.max(...labels.map((l) => l.length));
  const width = Math.min(plotWidth, t.width - margin - 5);
  const row = (v: number): number => Math.round(((high - v) / (high - low)) * (plotHeight - 1));
  const [point, shade, bar, corner, line] = t.unicode ? ["\u25cf", "\u2591", "\u2502", "\u2514", "\u2500"] : ["*", ":", "|", "+", "-"];
  const grid = Array.from({ length: plotHeight }, () => Array.from({ length: width }, () => " "));
  const put = (i: number, k: number, sign: string): void => {
    const cells = grid[i];
    if (cells) cells[k] = sign;
  };
  for (let k = 0; k < width; k += 1) {
    // Between two points the band is the straight line between them.
    const at = (k / (width - 1)) * (x.length - 1);
    const [a, b] = [between(r.low, at), between(r.high, at)];
    if (Number.isFinite(a) && Number.isFinite(b) && a !== b) for (let i = row(b); i <= row(a); i += 1) put(i, k, shade ?? "");
  }
  r.nominal.forEach((v, i) => {
    if (Number.isFinite(v)) put(row(v), Math.round((i / Math.max(1, x.length - 1)) * (width - 1)), point ?? "");
  });
  const lines = grid.map((cells, i) =>
    `  ${padStart(i === 0 ? (labels[0] ?? "") : i === plotHeight - 1 ? (labels[1] ?? "") : "", margin)} ${bar}${cells.join("")}`.trimEnd(),
  );
  const [from, to] = [numberText(x[0] ?? Number.NaN), numberText(x.at(-1) ?? Number.NaN)];
  const axis = `  ${" ".repeat(margin)} ${corner}${(line ?? "").repeat(width)}`;
  const ends = `  ${" ".repeat(margin)}  ${from}${padStart(to, width - from.length)}`;
  return [`  ${title}`, ...lines, axis, ends];
}

function between(v: readonly number[], at: number): number {
  const i = Math.min(Math.floor(at), v.length - 2);
  const [a, b] = [v[i] ?? Number.NaN, v[i + 1] ?? Number.NaN];
  return a + (at - i) * (b - a);
}

/** One line a value of the input; each figure with its band. */
export function sweepCsv(s: Sweep): string {
  const unit = (u: string): string => (u === "" ? "" : `/${u}`);
  const head = [
    `${s.input.address}${unit(s.input.unit)}`,
    ...s.runs.flatMap((r) => ["", " low", " high"].map((w) => `${r.address}${w}${unit(r.unit)}`)),
  ];
  const cell = (x: number | undefined): string => (x === undefined || !Number.isFinite(x) ? "" : String(x));
  const rows = s.input.values.map((x, k) => [cell(x), ...s.runs.flatMap((r) => [cell(r.nominal[k]), cell(r.low[k]), cell(r.high[k])])]);
  return `${[head, ...rows].map((r) => r.join(",")).join("\n")}\n`;
}
