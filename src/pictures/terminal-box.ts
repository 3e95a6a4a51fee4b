// The terminal box of a motor: its leads as numbered studs, links as bars, the three lines from below; before and after.
import { drawing, el, line, lines, short } from "./svg.ts";
import type { Point } from "./svg.ts";
import { fitted } from "./text-width.ts";
import { titleSize } from "./plot-frame.ts";
import { noteSize, phoneWidth, words } from "./words.ts";

export interface TerminalBox {
  readonly title: string;
  /** Leads are numbered from 1. */
  readonly leads: number;
  /** Groups of leads that are joined: [[4, 7], [5, 8], [6, 9]]. */
  readonly joined: readonly (readonly number[])[];
  /** The leads on L1, L2, L3; several on one line are joined by it. */
  readonly lines: readonly (readonly number[])[];
}

export interface TerminalBoxes {
  readonly label: string;
  readonly width: number;
  /** As found, and after: links the first box lacks are drawn in the accent. */
  readonly boxes: readonly [TerminalBox] | readonly [TerminalBox, TerminalBox];
}

const columns = 3;
const pitch = 56;
const rowPitch = 50;
const studRadius = 13;
const edge = 24;

/** Three studs a row, the bottom row first, as [lead, lead, lead][]. */
type Arrangement = readonly (readonly number[])[];

/** A bar between two studs is straight where they are neighbours in a row or a column. */
interface Link {
  readonly from: number;
  readonly to: number;
}

export function terminalBoxes(spec: TerminalBoxes): string {
  const [before] = spec.boxes;
  const size = noteSize(spec.width);
  const stacked = spec.width < phoneWidth;
  const boxWidth = stacked || spec.boxes.length === 1 ? spec.width : (spec.width - edge) / 2;
  const rows = Math.max(...spec.boxes.map((box) => Math.ceil(box.leads / columns)));
  const boxHeight = titleSize + rows * rowPitch + size * 3 + 66;
  const parts = spec.boxes.map((box, i) => {
    const corner = { x: stacked ? 0 : i * (boxWidth + edge), y: stacked ? i * boxHeight : 0 };
    return boxPart(box, i === 0 ? null : before, corner, boxWidth, rows, size);
  });
  const height = stacked ? spec.boxes.length * boxHeight : boxHeight;
  return drawing({ label: spec.label, width: spec.width, height }, ...parts);
}

function boxPart(box: TerminalBox, before: TerminalBox | null, corner: Point, width: number, rows: number, size: number): string {
  const arrangement = arranged(box);
  const left = corner.x + Math.max(edge, (width - (columns - 1) * pitch) / 2);
  const bottom = corner.y + titleSize + 26 + (rows - 1) * rowPitch + studRadius + 10;
  const studs = new Map<number, Point>();
  arrangement.forEach((row, r) => row.forEach((lead, c) => studs.set(lead, { x: left + c * pitch, y: bottom - r * rowPitch })));
  const at = (lead: number) => studs.get(lead) ?? { x: left, y: bottom };

  const frameTop = corner.y + titleSize + 10;
  const frameBottom = bottom + studRadius + 14;
  const frameLeft = left - studRadius - 20;
  const frameWidth = (columns - 1) * pitch + 2 * (studRadius + 20);
  const bars = groupsOf(box).flatMap((group) => linksOf(group, arrangement));
  const isNew = (link: Link) => before !== null && !groupsOf(before).some((group) => group.includes(link.from) && group.includes(link.to));
  const wired = box.lines.flatMap((leads, i) => {
    const first = [...leads].sort((a, b) => at(b).y - at(a).y)[0];
    return first === undefined || !studs.has(first) ? [] : [linePart(at(first), `L${i + 1}`, frameBottom, size, bottom)];
  });
  const joins = box.joined.filter((group) => group.length > 1).map((group) => group.join("-"));
  const feeds = box.lines.map((leads, i) => `L${i + 1} to ${leads.join(", ")}`).join("; ");
  const text = frameBottom + size * 2 + 24;
  const middle = corner.x + width / 2;
  return lines(
    words(middle, corner.y + titleSize, fitted(box.title, width, titleSize, true), { size: titleSize, bold: true, anchor: "middle" }),
    el("rect", { x: frameLeft, y: frameTop, width: frameWidth, height: frameBottom - frameTop, class: "fs i", "stroke-width": "1.25" }),
    ...wired,
    ...bars.map((link) => barPart(at(link.from), at(link.to), isNew(link))),
    ...[...studs].map(([lead, stud]) =>
      lines(
        el("circle", { cx: stud.x, cy: stud.y, r: studRadius, class: "fs i", "stroke-width": "1.5" }),
        words(stud.x, stud.y + (size + 1) * 0.35, String(lead), { size: size + 1, bold: true, anchor: "middle" }),
      ),
    ),
    words(middle, text, fitted(joins.length === 0 ? "nothing joined" : `joined ${joins.join(", ")}`, width, size), {
      size,
      anchor: "middle",
    }),
    words(middle, text + size + 5, fitted(feeds, width, size), { size, tone: "q2", anchor: "middle" }),
  );
}

function linePart(stud: Point, name: string, frameBottom: number, size: number, bottomRow: number): string {
  const end = frameBottom + 12;
  // A line to a stud above the bottom row passes beside the studs below it.
  const aside = stud.x - pitch / 2 + 6;
  const route = stud.y >= bottomRow ? `V${short(stud.y)}` : `V${short(frameBottom - 7)}H${short(aside)}V${short(stud.y)}H${short(stud.x)}`;
  return lines(
    el("path", { d: `M${short(stud.x)} ${short(end)}${route}`, class: "nf i", "stroke-width": "2.5" }),
    words(stud.x, end + size + 1, name, { size, bold: true, anchor: "middle" }),
  );
}

function barPart(from: Point, to: Point, isNew: boolean): string {
  const tone = isNew ? "ac" : "i";
  const isFar = Math.abs(from.x - to.x) > pitch * 1.5 || Math.abs(from.y - to.y) > rowPitch * 1.5;
  if (!isFar) return line(from, to, { class: tone, "stroke-width": 7, "stroke-linecap": "round" });
  // Around the studs between: bowed to the side.
  const bow = 0.3;
  const middle = { x: (from.x + to.x) / 2 + (to.y - from.y) * bow, y: (from.y + to.y) / 2 - (to.x - from.x) * bow };
  const d = `M${short(from.x)} ${short(from.y)}Q${short(middle.x)} ${short(middle.y)} ${short(to.x)} ${short(to.y)}`;
  return el("path", { d, class: `nf ${tone}`, "stroke-width": 7, "stroke-linecap": "round" });
}

/** Leads that are one point: joined groups, and leads that share a line. */
function groupsOf(box: TerminalBox): number[][] {
  const groups: number[][] = [];
  for (const group of [...box.joined, ...box.lines.filter((leads) => leads.length > 1)]) {
    const touching = groups.filter((other) => other.some((lead) => group.includes(lead)));
    const merged = [...new Set([...touching.flat(), ...group])].sort((a, b) => a - b);
    for (const other of touching) groups.splice(groups.indexOf(other), 1);
    groups.push(merged);
  }
  return groups;
}

/** The bars that join a group with the least detour (a minimum spanning tree). */
function linksOf(group: readonly number[], arrangement: Arrangement): Link[] {
  const place = places(arrangement);
  const known = group.filter((lead) => place.has(lead));
  const reached = known.slice(0, 1);
  const links: Link[] = [];
  while (reached.length < known.length) {
    let best: Link | null = null;
    for (const from of reached) {
      for (const to of known) {
        if (!reached.includes(to) && (best === null || detour(place, { from, to }) < detour(place, best))) best = { from, to };
      }
    }
    if (best === null) break;
    links.push(best);
    reached.push(best.to);
  }
  return links;
}

function places(arrangement: Arrangement): Map<number, Point> {
  return new Map(arrangement.flatMap((row, y) => row.map((lead, x): [number, Point] => [lead, { x, y }])));
}

/** 1 between neighbours; aslant or over another stud counts as much as several straight bars. */
function detour(place: ReadonlyMap<number, Point>, { from, to }: Link): number {
  const [a, b] = [place.get(from), place.get(to)];
  if (!a || !b) return 0;
  const [across, up] = [Math.abs(a.x - b.x), Math.abs(a.y - b.y)];
  return across + up === 1 ? 1 : 4 * (across + up);
}

/**
 * Studs as a plate draws them: three a row, the line leads below; the rows above stand in the order, and turned round, that
 * lets most links be straight bars.
 */
function arranged(box: TerminalBox): Arrangement {
  const all = Array.from({ length: Math.ceil(box.leads / columns) }, (_, r) =>
    Array.from({ length: Math.min(columns, box.leads - r * columns) }, (_, c) => r * columns + c + 1),
  );
  const [bottom = [], ...upper] = all;
  const groups = groupsOf(box);
  const cost = (arrangement: Arrangement) => {
    const place = places(arrangement);
    const links = groups.flatMap((group) => linksOf(group, arrangement));
    const up = box.lines.reduce((sum, leads) => sum + Math.min(...leads.map((lead) => place.get(lead)?.y ?? 0), 9), 0);
    return links.reduce((sum, link) => sum + detour(place, link), 0) + up;
  };
  let best: Arrangement = all;
  let least = cost(best);
  for (const order of orders(upper)) {
    for (const turned of turns(order)) {
      const tried = [bottom, ...turned];
      const price = cost(tried);
      if (price < least) [best, least] = [tried, price];
    }
  }
  return best;
}

/** Every order of the rows; more than three rows above the lines are left as they are, no motor has them. */
function orders<T>(items: readonly T[]): T[][] {
  if (items.length > 3) return [[...items]];
  if (items.length === 0) return [[]];
  return items.flatMap((first, i) => orders(items.filter((_, k) => k !== i)).map((rest) => [first, ...rest]));
}

/** Every way to turn each row round by whole studs. */
function turns(rows: readonly (readonly number[])[]): number[][][] {
  const [first, ...rest] = rows;
  if (first === undefined) return [[]];
  const turned = first.map((_, by) => [...first.slice(by), ...first.slice(0, by)]);
  return turned.flatMap((row) => turns(rest).map((others) => [row, ...others]));
}
