// Where everything of a plot stands: the areas of its panels and lanes, and their scales.
import { ruled, ruledAcross } from "./axis.ts";
import type { Ruled } from "./axis.ts";
import type { Panel, PlotSpec } from "./plot-spec.ts";
import { textWidth } from "./text-width.ts";
import { noteSize } from "./words.ts";
import type { Box } from "./words.ts";

export interface PlotFrame {
  readonly size: number;
  readonly left: number;
  readonly right: number;
  readonly x: Ruled;
  readonly panels: readonly PanelFrame[];
  /** Top of the first lane. */
  readonly lanesTop: number;
  /** Where the numbers of the x axis hang from. */
  readonly bottom: number;
}

export interface PanelFrame {
  readonly panel: Panel;
  readonly area: Box;
  readonly y: Ruled;
}

export const titleSize = 14;
const titleHeight = 24;
export const laneHeight = 22;
/** From the axis to its numbers [px]. */
export const tickGap = 7;
/** A little more below: the lowest number of the y axis hangs half under the corner. */
export const footGap = 9;
/** A panel lower than this [px] shows nothing. */
const leastHeight = 34;
const tickPitch = 28;
const mostTicks = 7;
const rightEdge = 12;
/** The second plot gets this share of the height. */
const shareBelow = 0.34;

export function plotFrame(spec: PlotSpec): PlotFrame {
  const size = noteSize(spec.width);
  const headHeight = size + 6; // The words of the y axis stand above its panel.
  const lanes = spec.lanes ?? [];
  const lanesHeight = lanes.length === 0 ? 0 : lanes.length * laneHeight + 6;
  const footHeight = footGap + size + (spec.x.label === "" && spec.x.unit === "" ? 4 : size + 8);
  const panels = spec.below ? [spec, spec.below] : [spec];
  const gap = spec.below ? headHeight + 10 : 0;
  const free = spec.height - titleHeight - headHeight - gap - lanesHeight - footHeight;
  const heights = spec.below ? [free * (1 - shareBelow), free * shareBelow] : [free];

  let top = titleHeight + headHeight;
  const stacked = panels.map((panel, i) => {
    const height = Math.max(leastHeight, Math.round(heights[i] ?? 0));
    const place = { panel, top, height };
    top += height + (i === panels.length - 1 ? 0 : gap);
    return place;
  });
  const rows = stacked.map((place) => {
    const count = Math.min(mostTicks, Math.max(2, Math.round(place.height / tickPitch)));
    return { ...place, y: ruled(place.panel.y, valuesUp(place.panel), place.top + place.height, place.top, count, true) };
  });

  const widest = Math.max(
    ...rows.flatMap((row) => row.y.ticks.map((tick) => textWidth(tick.words, size))),
    ...lanes.map((lane) => textWidth(lane.name, size)),
  );
  const left = Math.ceil(widest) + tickGap + 3;
  const across = panels.flatMap(valuesAcross);
  const first = ruledAcross(spec.x, across, left, spec.width - rightEdge, size);
  // The last number may stand under the very end of the axis: half of it must still fit.
  const last = first.ticks.at(-1);
  const right = spec.width - Math.max(rightEdge, last ? Math.ceil(textWidth(last.words, size) / 2) + 1 : 0);
  const x = ruledAcross(spec.x, across, left, right, size);
  return {
    size,
    left,
    right,
    x,
    panels: rows.map((row) => ({ panel: row.panel, y: row.y, area: { x: left, y: row.top, width: right - left, height: row.height } })),
    lanesTop: top + 6,
    bottom: top + lanesHeight,
  };
}

function valuesAcross(panel: Panel): number[] {
  return [
    ...(panel.series ?? []).flatMap((series) => series.x),
    ...(panel.bands ?? []).flatMap((band) => band.x),
    ...(panel.points ?? []).map((point) => point.x),
    ...(panel.markers ?? []).map((marker) => marker.x),
    ...(panel.limits ?? []).filter((limit) => limit.on === "x" && limit.role !== "quiet").map((limit) => limit.at),
  ];
}

function valuesUp(panel: Panel): number[] {
  return [
    ...(panel.series ?? []).flatMap((series) => series.y),
    ...(panel.bands ?? []).flatMap((band) => [...band.low, ...band.high]),
    ...(panel.points ?? []).map((point) => point.y),
    ...(panel.markers ?? []).map((marker) => marker.y),
    ...(panel.limits ?? []).filter((limit) => limit.on === "y").map((limit) => limit.at),
  ];
}
