// Reading a plot: the scales for a cursor, the values under it, and the table behind the picture.
import { csv } from "./csv.ts";
import type { Cell } from "./csv.ts";
import { plotFrame } from "./plot-frame.ts";
import type { Axis, Panel, PlotSpec, Series } from "./plot-spec.ts";
import type { Scale } from "./scale.ts";
import type { Box } from "./words.ts";

export interface PlotData {
  readonly x: Scale;
  readonly panels: readonly { readonly area: Box; readonly y: Scale }[];
  /** The values under a cursor at this x [px of the drawing]. */
  readonly at: (pixel: number) => Reading;
}

interface Reading {
  readonly x: number;
  readonly values: readonly { readonly name: string; readonly unit: string; readonly value: number; readonly pixel: number }[];
}

export function plotData(spec: PlotSpec): PlotData {
  const frame = plotFrame(spec);
  const panels = frame.panels.map(({ area, y }) => ({ area, y: y.scale }));
  const at = (pixel: number): Reading => {
    const x = frame.x.scale.toValue(Math.min(frame.right, Math.max(frame.left, pixel)));
    const values = frame.panels.flatMap(({ panel, y }) =>
      (panel.series ?? []).flatMap((series) => {
        const value = valueAt(series, x);
        return value === null ? [] : [{ name: series.name, unit: panel.y.unit, value, pixel: y.scale.toPixel(value) }];
      }),
    );
    return { x, values };
  };
  return { x: frame.x.scale, panels, at };
}

/**
 * The value of a line at x, straight between its samples; null outside it, in a gap, and on a path that turns back.
 *
 * y = y_i + (x - x_i) (y_k - y_i) / (x_k - x_i), k = i + 1.
 */
function valueAt({ x, y }: Series, at: number): number | null {
  if (x.some((value, i) => value < (x[i - 1] ?? value))) return null;
  const next = x.findIndex((value) => value >= at);
  const [x_k, y_k] = [x[next], y[next]];
  if (x_k === undefined || y_k === undefined || !Number.isFinite(y_k)) return null;
  if (x_k === at) return y_k;
  const [x_i, y_i] = [x[next - 1], y[next - 1]];
  if (x_i === undefined || y_i === undefined || !Number.isFinite(y_i)) return null;
  return y_i + ((at - x_i) * (y_k - y_i)) / (x_k - x_i);
}

interface Column {
  readonly head: string;
  readonly cells: readonly Cell[];
}

/**
 * The plot as a table: one x column for each set of lines that share their x, then bands and points; units in the head row.
 */
export function plotCsv(spec: PlotSpec): string {
  const columns = [spec, ...(spec.below ? [spec.below] : [])].flatMap((panel) => panelColumns(spec.x, panel));
  const length = Math.max(0, ...columns.map((column) => column.cells.length));
  const rows = Array.from({ length }, (_, i) => columns.map((column) => column.cells[i] ?? null));
  return csv(
    columns.map((column) => column.head),
    rows,
  );
}

function panelColumns(xAxis: Axis, panel: Panel): Column[] {
  const xHead = head(xAxis.label, xAxis.scale === "clock" ? "s of day" : xAxis.unit);
  const columns: Column[] = [];
  let shared: readonly number[] | undefined;
  const across = (x: readonly number[]) => {
    if (shared && isSame(shared, x)) return;
    shared = x;
    columns.push({ head: xHead, cells: x });
  };
  for (const series of panel.series ?? []) {
    across(series.x);
    columns.push({ head: head(series.name, panel.y.unit), cells: series.y });
  }
  for (const band of panel.bands ?? []) {
    across(band.x);
    const name = band.words ?? panel.y.label;
    columns.push({ head: head(`${name}, low`, panel.y.unit), cells: band.low });
    columns.push({ head: head(`${name}, high`, panel.y.unit), cells: band.high });
  }
  const points = panel.points ?? [];
  if (points.length > 0) {
    columns.push({ head: "point", cells: points.map((point) => point.label) });
    columns.push({ head: xHead, cells: points.map((point) => point.x) });
    columns.push({ head: head(panel.y.label, panel.y.unit), cells: points.map((point) => point.y) });
    columns.push({ head: "verdict", cells: points.map((point) => point.verdict ?? null) });
  }
  return columns;
}

function isSame(a: readonly number[], b: readonly number[]): boolean {
  return a === b || (a.length === b.length && a.every((value, i) => value === b[i]));
}

function head(name: string, unit: string): string {
  return unit === "" ? name : `${name} [${unit}]`;
}
