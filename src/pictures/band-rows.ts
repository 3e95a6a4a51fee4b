// Bands of one quantity one under the other on one scale: how each of several measurements would narrow it.
import { ruledAcross } from "./axis.ts";
import { titleSize } from "./plot-frame.ts";
import { stagger } from "./stagger.ts";
import { drawing, el, line, short } from "./svg.ts";
import { fitted, textWidth } from "./text-width.ts";
import { noteSize, phoneWidth, wordBox, words } from "./words.ts";

export interface BandRows {
  readonly title: string;
  readonly label: string;
  readonly width: number;
  readonly unit: string;
  /** As it is now first; `planned` bands are drawn as promises, not as findings. */
  readonly rows: readonly {
    readonly name: string;
    readonly low: number;
    readonly high: number;
    readonly nominal: number;
    readonly planned?: true;
  }[];
  readonly limits: readonly { readonly at: number; readonly words: string }[];
}

const barHeight = 12;
/** Half of the longest number under the left end of the scale stands here [px]. */
const leastLeft = 24;

export function bandRows(spec: BandRows): string {
  const { width, rows, limits } = spec;
  const size = noteSize(width);
  const isPhone = width < phoneWidth;
  const nameRoom = isPhone ? 0 : Math.min(width * 0.36, Math.max(0, ...rows.map((row) => textWidth(row.name, size))) + 14);
  const ends = [...rows.flatMap((row) => [row.low, row.high]), ...limits.map((limit) => limit.at)];
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  // Ends that differ by the noise of numbers alone are one place.
  const air = most - least > 1e-9 * Math.max(1, Math.abs(most)) ? (most - least) * 0.06 : Math.abs(most) * 0.1 || 1;
  const left = Math.max(nameRoom, leastLeft);
  const right = width - textWidth(spec.unit, size) - 18;
  const x = ruledAcross({ label: "", unit: spec.unit, min: least - air, max: most + air }, [], left, right, size);
  const to = x.scale.toPixel;
  const placed = stagger(limits, (limit) => wordBox(to(limit.at), 0, limit.words, { size, bold: true, anchor: "middle" }), width);
  const limitsTop = titleSize + 10;
  const top = limitsTop + placed.count * (size + 4) + 8;
  const rowHeight = isPhone ? barHeight + size + 14 : barHeight + 14;
  const bottom = top + rows.length * rowHeight;

  const grid = x.ticks.map((tick) => `M${short(to(tick.at))} ${short(top)}V${short(bottom)}`).join("");
  const bars = rows.flatMap((row, i) => {
    const rowTop = top + i * rowHeight;
    const barTop = isPhone ? rowTop + size + 6 : rowTop + 7;
    const bar = { x: to(row.low), y: barTop, width: Math.max(1, to(row.high) - to(row.low)), height: barHeight };
    const base = isPhone ? rowTop + size : barTop + barHeight / 2 + size * 0.33;
    const look = row.planned
      ? { class: "nf ac", "stroke-width": "1.5", "stroke-dasharray": "3 2" }
      : { class: "fi3", "fill-opacity": "0.4" };
    return [
      el("rect", { ...bar, ...look }),
      el("circle", { cx: to(row.nominal), cy: barTop + barHeight / 2, r: 4, class: row.planned ? "acf" : "fi" }),
      words(isPhone ? 10 : 0, base, fitted(row.name, isPhone ? width - 20 : nameRoom - 12, size), {
        size,
        tone: row.planned ? "accent" : "ink",
      }),
    ];
  });
  const marks = limits.flatMap((limit, i) => {
    const box = placed.boxes[i];
    const base = limitsTop + ((placed.rows[i] ?? 0) + 1) * (size + 4);
    // On a phone the names stand between the bars: there the line crosses the bars only.
    const strokes = isPhone
      ? rows.map((_, k) => `M${short(to(limit.at))} ${short(top + k * rowHeight + size + 4)}v${barHeight + 4}`).join("")
      : "";
    return [
      isPhone
        ? el("path", { d: strokes, class: "i", "stroke-width": "1.25" })
        : line({ x: to(limit.at), y: base + 3 }, { x: to(limit.at), y: bottom }, { class: "i", "stroke-width": "1.25" }),
      box ? words(box.x, base, limit.words, { size, bold: true, halo: true }) : "",
    ];
  });
  return drawing(
    { label: spec.label, width, height: bottom + size + 14 },
    words(0, titleSize + 2, fitted(spec.title, width, titleSize, true), { size: titleSize, bold: true }),
    el("path", { d: grid, class: "gm", "stroke-width": 1 }),
    ...bars,
    el("path", { d: `M${short(left)} ${short(bottom)}H${short(right)}`, class: "i", "stroke-width": 1 }),
    ...x.ticks.map((tick) => words(to(tick.at), bottom + size + 5, tick.words, { size, tone: "q", anchor: "middle" })),
    words(width, bottom + size + 5, spec.unit, { size, tone: "q", anchor: "end" }),
    ...marks,
  );
}
