// A belt on two pulleys, to scale: wrap, centre distance, and which strand pulls.
import { titleSize } from "./plot-frame.ts";
import { drawing, el, line, short } from "./svg.ts";
import type { Point } from "./svg.ts";
import { fitted, textWidth } from "./text-width.ts";
import { noteSize, words } from "./words.ts";

export interface BeltSketch {
  readonly title: string;
  readonly label: string;
  readonly width: number;
  /** Unit of every length, in words. */
  readonly unit: string;
  readonly driver: Pulley;
  readonly driven: Pulley;
  readonly centre: number;
  /** Which way the pulleys turn, seen as drawn: it decides which strand pulls. */
  readonly turns: "clockwise" | "anticlockwise";
  /** What to say at the strands: "pulls 412 N", "slack 130 N". */
  readonly tight: string;
  readonly slack: string;
}

interface Pulley {
  readonly name: string;
  readonly diameter: number;
}

const edge = 12;
const mostHeight = 190;

/**
 * Angle of belt on the smaller pulley.
 *
 * th [rad] = pi - 2 asin((D - d) / 2C); D, d [m] pitch diameters, C [m] centre distance. Plane geometry; needs (D - d) / 2 < C.
 */
export function wrapAngle(D: number, d: number, C: number): number {
  return Math.PI - 2 * Math.asin((D - d) / (2 * C));
}

export function beltSketch(spec: BeltSketch): string {
  const { width, driver, driven, centre, unit } = spec;
  const size = noteSize(width);
  const top = titleSize + 14 + size + 6;
  const [r_1, r_2] = [driver.diameter / 2, driven.diameter / 2];
  const isApart = centre > r_1 + r_2;
  const span = isApart ? centre : r_1 + r_2;
  const scale = Math.min((width - 2 * edge) / (span + r_1 + r_2), mostHeight / Math.max(2 * r_1, 2 * r_2));
  const used = (span + r_1 + r_2) * scale;
  const radius = Math.max(r_1, r_2) * scale;
  const y = top + radius;
  const a = { x: (width - used) / 2 + r_1 * scale, y };
  const b = { x: a.x + span * scale, y };
  const bottom = y + radius;
  const title = words(0, titleSize, fitted(spec.title, width, titleSize, true), { size: titleSize, bold: true });
  const pulleys = [pulley(a, r_1 * scale, size), pulley(b, r_2 * scale, size)];
  const names = nameParts(spec, a, b, bottom + size * 3 + 26, size);
  const height = bottom + size * 4 + 40;
  if (!isApart) {
    const sorry = `${centre} ${unit} between centres: these pulleys would touch`;
    return drawing(
      { label: spec.label, width, height },
      title,
      words(0, titleSize + size + 8, fitted(sorry, width, size), { size }),
      ...pulleys,
      ...names,
    );
  }

  // The outer tangents leave both circles at the same angle from the line of centres.
  const lean = Math.asin((r_1 - r_2) / centre);
  const tangent = (at: Point, r: number, side: 1 | -1) => ({
    x: at.x + r * scale * Math.sin(lean),
    y: at.y - side * r * scale * Math.cos(lean),
  });
  const strands = ([1, -1] as const).map((side) => ({ side, from: tangent(a, r_1, side), to: tangent(b, r_2, side) }));
  // A driver turning clockwise drags in its lower strand when the driven pulley stands to its right.
  const tightSide = spec.turns === "clockwise" ? -1 : 1;
  const wraps = [arc(a, r_1 * scale, strands, "from", 1), arc(b, r_2 * scale, strands, "to", 0)];
  const small = Math.min(driver.diameter, driven.diameter);
  const wrap = wrapAngle(Math.max(driver.diameter, driven.diameter), small, centre);
  const wrapped = small === driver.diameter ? a : b;
  const onSmall = `${Math.round((wrap * 180) / Math.PI)}°`;
  const strandWords = strands.map(({ side, from, to }) => {
    const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    const text = side === tightSide ? spec.tight : spec.slack;
    return words(middle.x, middle.y + (side === 1 ? -7 : size + 5), fitted(text, to.x - from.x, size, side === tightSide), {
      size,
      anchor: "middle",
      bold: side === tightSide,
    });
  });
  const dimension = bottom + size * 2 + 16;
  return drawing(
    { label: spec.label, width, height },
    title,
    ...strands.map(({ side, from, to }) => line(from, to, { class: "i", "stroke-width": side === tightSide ? 3 : "1.5" })),
    ...wraps,
    ...pulleys,
    words(wrapped.x, y - Math.min(r_1, r_2) * scale * 0.35, onSmall, { size, anchor: "middle", tone: "accent" }),
    turning(a, r_1 * scale, spec.turns),
    ...strandWords,
    el("path", {
      d: `M${short(a.x)} ${short(y)}V${short(dimension + 4)}M${short(b.x)} ${short(y)}V${short(dimension + 4)}`,
      class: "i3",
      "stroke-width": "0.75",
    }),
    el("path", { d: `M${short(a.x)} ${short(dimension)}H${short(b.x)}`, class: "i3", "stroke-width": "0.75" }),
    arrow({ x: a.x, y: dimension }, 1),
    arrow({ x: b.x, y: dimension }, -1),
    words((a.x + b.x) / 2, dimension - 4, `${centre} ${unit}`, { size, anchor: "middle", halo: true }),
    ...names,
  );
}

function pulley(at: Point, r: number, size: number): string {
  const cross = Math.min(4, r / 2);
  return (
    el("circle", { cx: at.x, cy: at.y, r: Math.max(1, r - 3), class: "fs i", "stroke-width": "1.25" }) +
    el("path", {
      d: `M${short(at.x - cross)} ${short(at.y)}h${short(2 * cross)}M${short(at.x)} ${short(at.y - cross)}v${short(2 * cross)}`,
      class: "i",
      "stroke-width": 1,
    }) +
    (r > size * 3 ? el("circle", { cx: at.x, cy: at.y, r: r * 0.18, class: "nf i", "stroke-width": 1 }) : "")
  );
}

/** The belt on a pulley, on the side away from the other one. */
function arc(
  at: Point,
  r: number,
  strands: readonly { readonly from: Point; readonly to: Point }[],
  end: "from" | "to",
  outer: 0 | 1,
): string {
  const [upper, lower] = strands;
  if (!upper || !lower) return "";
  const [start, stop] = [lower[end], upper[end]];
  // More than half a turn on the pulley whose tangent points lie towards the other one.
  const isLarge = outer === 1 ? start.x > at.x : start.x < at.x;
  const d = `M${short(start.x)} ${short(start.y)}A${short(r)} ${short(r)} 0 ${isLarge ? 1 : 0} ${outer} ${short(stop.x)} ${short(stop.y)}`;
  return el("path", { d, class: "nf i", "stroke-width": "2.25" });
}

/** A bent arrow inside the driver. */
function turning(at: Point, r: number, turns: BeltSketch["turns"]): string {
  const reach = r * 0.62;
  const sweep = turns === "clockwise" ? 1 : 0;
  const side = turns === "clockwise" ? 1 : -1;
  const [start, end] = [-0.6, 0.6].map((angle) => ({ x: at.x - side * reach * Math.cos(angle), y: at.y - reach * Math.sin(angle) }));
  if (!start || !end) return "";
  const from = `M${short(start.x)} ${short(start.y)}`;
  const head = `M${short(end.x - side * 1)} ${short(end.y + 8)}L${short(end.x)} ${short(end.y)}L${short(end.x - side * 7.5)} ${short(end.y + 1)}`;
  return el("path", {
    d: `${from}A${short(reach)} ${short(reach)} 0 0 ${sweep} ${short(end.x)} ${short(end.y)}${head}`,
    class: "nf i2",
    "stroke-width": "1.25",
  });
}

function arrow(at: Point, direction: 1 | -1): string {
  return el("path", { d: `M${short(at.x)} ${short(at.y)}l${short(direction * 7)} -3v6Z`, class: "fi3" });
}

/** Name and diameter under each pulley, kept apart where the pulleys stand close. */
function nameParts({ driver, driven, unit, width }: BeltSketch, a: Point, b: Point, y: number, size: number): string[] {
  const room = (width - 12) / 2;
  return [
    { of: driver, x: a.x, isRight: false },
    { of: driven, x: b.x, isRight: true },
  ].flatMap(({ of, x, isRight }) => {
    const name = fitted(of.name, room, size, true);
    const length = `${of.diameter} ${unit}`;
    const half = Math.max(textWidth(name, size, true), textWidth(length, size)) / 2;
    const [least, most] = isRight ? [width - room + half, width - half] : [half, room - half];
    const middle = Math.min(most, Math.max(least, x));
    return [
      words(middle, y, name, { size, bold: true, anchor: "middle" }),
      words(middle, y + size + 4, length, { size, tone: "q2", anchor: "middle" }),
    ];
  });
}
