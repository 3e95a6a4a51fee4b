// A plot as SVG text: pad grid, lines, bands, limits and points, with the names on the lines instead of in a legend.
import type { Verdict } from "../kernel/verdict.ts";
import { axisWords } from "./axis.ts";
import { curveOf } from "./curve.ts";
import type { Curve } from "./curve.ts";
import { footGap, laneHeight, plotFrame, tickGap, titleSize } from "./plot-frame.ts";
import type { PanelFrame, PlotFrame } from "./plot-frame.ts";
import { panelWords, shapeReach } from "./plot-labels.ts";
import type { BandArea, Limit, PlotPoint, PlotSpec, Series } from "./plot-spec.ts";
import { fitted } from "./text-width.ts";
import { drawing, el, escaped, hatch, line, lines, short, through } from "./svg.ts";
import type { Attributes, Point } from "./svg.ts";
import { verdictShape } from "./verdict.ts";
import { words } from "./words.ts";
import type { Box } from "./words.ts";

export function plot(spec: PlotSpec): string {
  const frame = plotFrame(spec);
  return drawing(
    spec,
    el("defs", {}, hatch(`${spec.prefix}-hatch`, "ru"), ...frame.panels.map((panel, i) => clip(`${spec.prefix}-clip-${i}`, panel))),
    words(frame.left, titleSize + 2, fitted(spec.title, spec.width - frame.left, titleSize, true), { size: titleSize, bold: true }),
    ...frame.panels.map((panel, i) => panelParts(spec.prefix, frame, panel, i)),
    ...laneParts(spec, frame),
    ...acrossParts(spec, frame),
  );
}

function clip(id: string, { area }: PanelFrame): string {
  return el("clipPath", { id }, el("rect", { ...area }));
}

function panelParts(prefix: string, frame: PlotFrame, panelFrame: PanelFrame, index: number): string {
  const { area, panel, y } = panelFrame;
  const x = frame.x.scale;
  const drawn = (panel.series ?? []).map((series) => ({ series, curve: curveOf(series.x, series.y, x, y.scale) }));
  const at = (place: Point) => ({ x: x.toPixel(place.x), y: y.scale.toPixel(place.y) });
  const titleOf = (point: PlotPoint) => (point.verdict ? `${point.label}: ${point.verdict}` : point.label);
  const fill = { fill: `url(#${prefix}-hatch)` };
  const inside = [
    ...(panel.limits ?? []).map((limit) => forbidden(limit, frame, panelFrame, fill)),
    ...(panel.bands ?? []).map((band) => bandPart(band, frame, panelFrame, fill)),
    // What was found stands over what is asked: base lines are drawn last.
    ...drawn.toSorted((a, b) => order[a.series.role] - order[b.series.role]).map(({ series, curve }) => seriesPart(series, curve)),
  ];
  return lines(
    grid(frame, panelFrame),
    el("g", { "clip-path": `url(#${prefix}-clip-${index})` }, `\n${lines(inside)}\n`),
    ...(panel.limits ?? []).map((limit) => limitPart(limit, frame, panelFrame)),
    el("path", {
      d: `M${short(area.x)} ${short(area.y)}V${short(area.y + area.height)}H${short(frame.right)}`,
      class: "nf i",
      "stroke-width": 1,
    }),
    upParts(frame, panelFrame),
    ...(panel.points ?? []).map((point) => spotPart(at(point), area, point.verdict ?? "reading", titleOf(point))),
    ...(panel.markers ?? []).map((marker) => spotPart(at(marker), area, "ring", marker.words)),
    ...panelWords(panelFrame, x, drawn, frame.size),
  );
}

const order: Readonly<Record<Series["role"], number>> = { quiet: 0, limit: 1, option: 2, base: 3 };

function grid(frame: PlotFrame, { area, y }: PanelFrame): string {
  const across = frame.x.scale;
  const uprights = (values: readonly number[]) =>
    values.map((at) => `M${short(across.toPixel(at))} ${short(area.y)}v${short(area.height)}`).join("");
  const levels = (values: readonly number[]) =>
    values.map((at) => `M${short(area.x)} ${short(y.scale.toPixel(at))}h${short(area.width)}`).join("");
  const major = uprights(frame.x.ticks.map((tick) => tick.at)) + levels(y.ticks.map((tick) => tick.at));
  return lines(
    el("path", { d: uprights(frame.x.minor) + levels(y.minor), class: "gr", "stroke-width": 1 }),
    el("path", { d: major, class: "gm", "stroke-width": 1 }),
  );
}

function upParts(frame: PlotFrame, { area, panel, y }: PanelFrame): string {
  const marks = y.ticks.map((tick) => `M${short(area.x)} ${short(y.scale.toPixel(tick.at))}h-4`).join("");
  const style = { size: frame.size, tone: "q", anchor: "end" } as const;
  return lines(
    el("path", { d: marks, class: "i", "stroke-width": 1 }),
    ...y.ticks.map((tick) => words(area.x - tickGap, y.scale.toPixel(tick.at) + frame.size * 0.33, tick.words, style)),
    words(area.x, area.y - 7, fitted(axisWords(panel.y), area.width, frame.size), { size: frame.size, tone: "q" }),
  );
}

function acrossParts(spec: PlotSpec, frame: PlotFrame): string[] {
  const { size, x, bottom } = frame;
  const marks = x.ticks.map((tick) => `M${short(x.scale.toPixel(tick.at))} ${short(bottom)}v4`).join("");
  const y = bottom + footGap + size * 0.78;
  return [
    el("path", { d: marks, class: "i", "stroke-width": 1 }),
    ...x.ticks.map((tick) => words(x.scale.toPixel(tick.at), y, tick.words, { size, tone: "q", anchor: "middle" })),
    words(frame.right, y + size + 4, fitted(axisWords(spec.x), frame.right - frame.left, size), { size, tone: "q", anchor: "end" }),
  ];
}

function laneParts(spec: PlotSpec, frame: PlotFrame): string[] {
  const x = frame.x.scale;
  return (spec.lanes ?? []).flatMap((lane, i) => {
    const top = frame.lanesTop + i * laneHeight;
    const bars = lane.busy.map(([from, to]) => {
      const left = Math.max(frame.left, x.toPixel(from));
      const right = Math.min(frame.right, x.toPixel(to));
      return right > left ? `M${short(left)} ${short(top + 4)}H${short(right)}v10H${short(left)}Z` : "";
    });
    return [
      words(frame.left - tickGap, top + 9 + frame.size * 0.33, lane.name, { size: frame.size, tone: "q", anchor: "end" }),
      el("path", { d: `M${short(frame.left)} ${short(top + 18)}H${short(frame.right)}`, class: "gm", "stroke-width": 1 }),
      el("path", { d: bars.join(""), class: "fi3" }),
    ];
  });
}

function bandPart(band: BandArea, frame: PlotFrame, { y }: PanelFrame, fill: Attributes): string {
  const high = curveOf(band.x, band.high, frame.x.scale, y.scale).runs.flat();
  const low = curveOf(band.x, band.low, frame.x.scale, y.scale).runs.flat();
  return high.length < 2 || low.length < 2 ? "" : el("path", { d: through([...high, ...low.toReversed()], true), ...fill });
}

function seriesPart(series: Series, curve: Curve): string {
  const accent = series.role === "option";
  const isHeavy = !series.dash && !curve.isThinned && (accent || series.role === "base");
  const weight = series.role === "limit" && !series.dash ? 1.25 : curve.isThinned ? 1.3 : isHeavy ? (accent ? 2 : 2.4) : 1.1;
  const attributes = {
    d: curve.runs.map((run) => through(run)).join(""),
    class: `nf ${accent ? "ac" : series.role === "quiet" ? "i3" : "i"}`,
    "stroke-width": String(weight),
    "stroke-linejoin": "round",
    "stroke-dasharray": series.dash ? "6 3" : undefined,
  };
  return el("path", attributes, el("title", {}, escaped(series.name)));
}

function forbidden(limit: Limit, frame: PlotFrame, { area, y }: PanelFrame, fill: Attributes): string {
  if (limit.forbids === undefined) return "";
  const scale = limit.on === "x" ? frame.x.scale : y.scale;
  const pixel = scale.toPixel(limit.at);
  if (!Number.isFinite(pixel)) return "";
  const isAbove = limit.forbids === "above";
  if (limit.on === "x") {
    const [left, right] = isAbove ? [pixel, area.x + area.width] : [area.x, pixel];
    return el("rect", { x: left, y: area.y, width: Math.max(0, right - left), height: area.height, ...fill });
  }
  const [top, bottom] = isAbove ? [area.y, pixel] : [pixel, area.y + area.height];
  return el("rect", { x: area.x, y: top, width: area.width, height: Math.max(0, bottom - top), ...fill });
}

function limitPart(limit: Limit, frame: PlotFrame, { area, y }: PanelFrame): string {
  const scale = limit.on === "x" ? frame.x.scale : y.scale;
  if (limit.at < scale.min || limit.at > scale.max) return "";
  const pixel = scale.toPixel(limit.at);
  const look: Attributes =
    limit.role === "option"
      ? { class: "ac", "stroke-width": 1 }
      : limit.role === "quiet"
        ? { class: "i2", "stroke-width": 1, "stroke-dasharray": "1 3" }
        : { class: "i", "stroke-width": "1.25" };
  return limit.on === "x"
    ? line({ x: pixel, y: area.y }, { x: pixel, y: area.y + area.height }, look)
    : line({ x: area.x, y: pixel }, { x: area.x + area.width, y: pixel }, look);
}

/** A shape, a dot or a ring; its words are there under a pointer too, should there be no room to write them. */
function spotPart({ x, y }: Point, area: Box, kind: Verdict | "reading" | "ring", title: string): string {
  const isOn = x >= area.x - 1 && x <= area.x + area.width + 1 && y >= area.y - 1 && y <= area.y + area.height + 1;
  if (!isOn) return "";
  return el("g", {}, el("title", {}, escaped(title)), spotShape(kind, x, y));
}

function spotShape(kind: Verdict | "reading" | "ring", x: number, y: number): string {
  if (kind === "ring") return el("circle", { cx: x, cy: y, r: "5.5", class: "nf i", "stroke-width": "1.5" });
  if (kind === "reading") return el("circle", { cx: x, cy: y, r: 3, class: "gcutf i", "stroke-width": "1.5" });
  return verdictShape(kind, x, y, 2 * shapeReach - 2);
}
