// The words inside a plot: each tries the places a person would try, the most constrained first.
import type { Curve } from "./curve.ts";
import type { PanelFrame } from "./plot-frame.ts";
import type { BandArea, Limit, Marker, PlotPoint, Series } from "./plot-spec.ts";
import { newRoom } from "./place.ts";
import type { Candidate, Room } from "./place.ts";
import type { Scale } from "./scale.ts";
import { line } from "./svg.ts";
import type { Point } from "./svg.ts";
import { wordBox, words, wordsWidth } from "./words.ts";
import type { Anchor, Box, Part, Tone, WordStyle } from "./words.ts";

/** Half the side of the square a shape, a dot or a ring takes [px]. */
export const shapeReach = 8;
const gap = 5;

export interface DrawnSeries {
  readonly series: Series;
  readonly curve: Curve;
}

/** All words of one panel, as fragments. */
export function panelWords(frame: PanelFrame, x: Scale, drawn: readonly DrawnSeries[], size: number): string[] {
  const { area, panel } = frame;
  const at = (place: { readonly x: number; readonly y: number }) => ({ x: x.toPixel(place.x), y: frame.y.scale.toPixel(place.y) });
  const room = newRoom(area);
  for (const { curve } of drawn) curve.runs.forEach(room.draw);
  for (const limit of panel.limits ?? []) {
    const pixel = (limit.on === "x" ? x : frame.y.scale).toPixel(limit.at);
    room.draw(
      limit.on === "x"
        ? [
            { x: pixel, y: area.y },
            { x: pixel, y: area.y + area.height },
          ]
        : [
            { x: area.x, y: pixel },
            { x: area.x + area.width, y: pixel },
          ],
    );
  }
  for (const spot of [...(panel.points ?? []), ...(panel.markers ?? [])].map(at)) room.take(square(spot));

  return [
    ...(panel.points ?? []).map((point) => pointWords(room, point, at(point), area, size)),
    ...(panel.limits ?? []).map((limit) => limitWords(room, limit, (limit.on === "x" ? x : frame.y.scale).toPixel(limit.at), area, size)),
    ...(panel.markers ?? []).map((marker) => markerWords(room, marker, at(marker), area, size)),
    ...drawn.map(({ series, curve }) => seriesWords(room, series, curve, x, area, size)),
    ...(panel.bands ?? []).map((band) => bandWords(room, band, x, frame.y.scale, size)),
  ];
}

interface Writing {
  readonly x: number;
  readonly y: number;
  readonly anchor: Anchor;
  /** From what is named to the words, where they had to stand apart. */
  readonly leader?: readonly [Point, Point];
}

type Text = string | readonly Part[];

/** A candidate with the middle of its box height at y. */
function candidate(text: Text, style: WordStyle, x: number, middle: number, anchor: Anchor, cost: number): Candidate<Writing> {
  const size = style.size ?? 0;
  const y = middle + size * 0.28; // The box reaches 0.78 above and 0.22 below the base line.
  return { box: wordBox(x, y, text, { ...style, anchor }), cost, what: { x, y, anchor } };
}

/** Takes the best candidate; where none has room, the nearest free place of the whole area, tied by a thin leader. */
function settle(room: Room, candidates: readonly Candidate<Writing>[], text: Text, style: WordStyle, spot: Point, area: Box): string {
  const found = room.place(candidates) ?? room.place(anywhere(text, style, spot, area));
  if (found === null) return "";
  const leader = found.leader ? line(found.leader[0], found.leader[1], { class: "i3", "stroke-width": 0.75 }) : "";
  return leader + words(found.x, found.y, text, { ...style, anchor: found.anchor, halo: true });
}

function anywhere(text: Text, style: WordStyle, spot: Point, area: Box): Candidate<Writing>[] {
  const found: Candidate<Writing>[] = [];
  const pitch = style.size ?? 12;
  for (let y = area.y + pitch; y < area.y + area.height; y += pitch) {
    for (let x = area.x + pitch; x < area.x + area.width; x += pitch * 2) {
      found.push(tied(candidate(text, style, x, y, "start", Math.hypot(x - spot.x, y - spot.y)), spot));
    }
  }
  return found;
}

function square(spot: Point): Box {
  return { x: spot.x - shapeReach, y: spot.y - shapeReach, width: 2 * shapeReach, height: 2 * shapeReach };
}

/** Right, left, above, below, then the corners; then the same further out, tied by a leader. */
function around(text: Text, style: WordStyle, spot: Point): Candidate<Writing>[] {
  const side = shapeReach + gap - 2;
  const up = shapeReach + (style.size ?? 0) / 2 + 3;
  return [0, 8, 18].flatMap((out) => {
    const tries = [
      candidate(text, style, spot.x + side + out, spot.y, "start", out),
      candidate(text, style, spot.x - side - out, spot.y, "end", 2 + out),
      candidate(text, style, spot.x, spot.y - up - out, "middle", 4 + out),
      candidate(text, style, spot.x, spot.y + up + out, "middle", 4 + out),
      candidate(text, style, spot.x + 4, spot.y - up - out, "start", 6 + out),
      candidate(text, style, spot.x - 4, spot.y - up - out, "end", 6 + out),
      candidate(text, style, spot.x + 4, spot.y + up + out, "start", 6 + out),
      candidate(text, style, spot.x - 4, spot.y + up + out, "end", 6 + out),
    ];
    return out === 0 ? tries : tries.map((tried) => tied(tried, spot));
  });
}

/** The candidate with a leader from what it names to the nearest point of its box. */
function tied(tried: Candidate<Writing>, spot: Point): Candidate<Writing> {
  const { box } = tried;
  const end = {
    x: Math.min(Math.max(spot.x, box.x), box.x + box.width),
    y: Math.min(Math.max(spot.y, box.y), box.y + box.height),
  };
  const length = Math.hypot(end.x - spot.x, end.y - spot.y);
  const start = { x: spot.x + ((end.x - spot.x) * shapeReach) / length, y: spot.y + ((end.y - spot.y) * shapeReach) / length };
  return length <= shapeReach ? tried : { ...tried, what: { ...tried.what, leader: [start, end] } };
}

function pointWords(room: Room, point: PlotPoint, spot: Point, area: Box, size: number): string {
  if (point.quiet) return "";
  const text: Part[] = point.verdict ? [{ text: `${point.verdict} `, bold: true, tone: point.verdict }] : [];
  text.push({ text: point.label });
  return settle(room, around(text, { size }, spot), text, { size }, spot, area);
}

function markerWords(room: Room, marker: Marker, spot: Point, area: Box, size: number): string {
  const style = { size, bold: true };
  const rows = [0, 1, 2].flatMap((row) =>
    [1, -1].flatMap((down) => {
      const middle = spot.y + down * (shapeReach + 12 + size / 2 + row * (size + 4));
      return (["middle", "start", "end"] as const).map((anchor, i) => {
        const shift = anchor === "start" ? -6 : anchor === "end" ? 6 : 0;
        const cost = i + row * 4 + (down === 1 ? 0 : 2);
        return tied(candidate(marker.words, style, spot.x + shift, middle, anchor, cost), spot);
      });
    }),
  );
  return settle(room, [...rows, ...around(marker.words, style, spot)], marker.words, style, spot, area);
}

function limitWords(room: Room, limit: Limit, pixel: number, area: Box, size: number): string {
  const tone: Tone = limit.role === "option" ? "accent" : limit.role === "quiet" ? "q2" : "ink";
  const style = { size, tone, bold: limit.role === undefined || limit.role === "limit" };
  const candidates: Candidate<Writing>[] = [];
  if (limit.on === "y") {
    const sides = limit.forbids === "below" ? [1, -1] : [-1, 1]; // On the hatched side, where nothing else should be.
    for (const [k, side] of sides.entries()) {
      const middle = pixel + side * (size / 2 + 3);
      candidates.push(candidate(limit.words, style, area.x + 6, middle, "start", k * 4));
      candidates.push(candidate(limit.words, style, area.x + area.width - 6, middle, "end", 2 + k * 4));
      for (const part of [0.25, 0.5, 0.75])
        candidates.push(candidate(limit.words, style, area.x + area.width * part, middle, "middle", 4 + k * 4));
    }
    return settle(room, candidates, limit.words, style, { x: area.x + area.width / 2, y: pixel }, area);
  }
  const right = limit.forbids === "below" ? 2 : 0;
  for (let middle = area.y + size; middle < area.y + area.height; middle += size) {
    const depth = (middle - area.y) * 0.1;
    candidates.push(candidate(limit.words, style, pixel - gap, middle, "end", depth + 1));
    candidates.push(candidate(limit.words, style, pixel + gap, middle, "start", depth + right));
  }
  return settle(room, candidates, limit.words, style, { x: pixel, y: area.y + size }, area);
}

/** Places along a line where its name is tried. */
const triesAlong = 40;

function seriesWords(room: Room, series: Series, curve: Curve, x: Scale, area: Box, size: number): string {
  if (series.name === "") return "";
  const isInside = (point: Point) =>
    point.x >= area.x && point.x <= area.x + area.width && point.y >= area.y && point.y <= area.y + area.height;
  const visible = curve.runs.flatMap((run) => densified(run)).filter(isInside);
  const middle = visible[Math.floor(visible.length / 2)];
  if (middle === undefined) return "";
  const tone: Tone = series.role === "option" ? "accent" : series.role === "quiet" ? "q" : "ink";
  const style: WordStyle = { size, tone, bold: series.role === "base" && series.dash !== true };
  const wished = series.labelAt === undefined ? undefined : x.toPixel(series.labelAt);
  const candidates: Candidate<Writing>[] = [];
  const half = wordsWidth(series.name, style) / 2;
  for (let k = 0; k <= triesAlong; k += 1) {
    const spot = visible[Math.round((k / triesAlong) * (visible.length - 1))];
    if (spot === undefined) continue;
    // The middle third reads best, the very ends worst.
    const away = wished === undefined ? Math.abs(k / triesAlong - 0.55) * 8 : Math.abs(spot.x - wished);
    let top = spot.y;
    let bottom = spot.y;
    for (const point of visible) {
      if (Math.abs(point.x - spot.x) > half) continue;
      top = Math.min(top, point.y);
      bottom = Math.max(bottom, point.y);
    }
    const lift = size / 2 + 3;
    // Over a steep stretch the name would hang far from the line it names: that costs.
    candidates.push(candidate(series.name, style, spot.x, top - lift, "middle", away + (spot.y - top) * 0.4));
    candidates.push(candidate(series.name, style, spot.x, bottom + lift, "middle", away + 1 + (bottom - spot.y) * 0.4));
    candidates.push(candidate(series.name, style, spot.x + gap + 3, spot.y - lift / 2, "start", away + 3));
    candidates.push(candidate(series.name, style, spot.x - gap - 3, spot.y - lift / 2, "end", away + 3));
    candidates.push(candidate(series.name, style, spot.x + gap + 3, spot.y + lift / 2, "start", away + 3));
    candidates.push(candidate(series.name, style, spot.x - gap - 3, spot.y + lift / 2, "end", away + 3));
  }
  return settle(room, candidates, series.name, style, middle, area);
}

/** Points no further apart than a few pixels, so that a straight line offers places too. */
function densified(run: readonly Point[]): Point[] {
  const pitch = 6;
  return run.flatMap((to, i) => {
    const from = run[i - 1];
    if (from === undefined) return [to];
    const count = Math.max(1, Math.min(400, Math.floor(Math.hypot(to.x - from.x, to.y - from.y) / pitch)));
    return Array.from({ length: count }, (_, k) => {
      const part = (k + 1) / count;
      return { x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part };
    });
  });
}

function bandWords(room: Room, band: BandArea, x: Scale, y: Scale, size: number): string {
  const text = band.words;
  if (text === undefined) return "";
  const style: WordStyle = { size, tone: "q" };
  const candidates = band.x.map((value, i) => {
    const low = y.toPixel(band.low[i] ?? Number.NaN);
    const high = y.toPixel(band.high[i] ?? Number.NaN);
    // The wider the band, the better the place; words taller than the band stand half outside it.
    return candidate(text, style, x.toPixel(value), (low + high) / 2, "middle", Math.max(0, 60 - (low - high)));
  });
  const found = room.place(candidates);
  return found === null ? "" : words(found.x, found.y, text, { ...style, anchor: found.anchor, halo: true });
}
