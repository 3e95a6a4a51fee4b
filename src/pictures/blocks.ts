// The machine drawing: what the machine is made of, each block with its worst verdict and key figures, in fixed lanes.
import { phoneLanes } from "./blocks-phone.ts";
import type { Block, Lanes, MachineDrawing, Place, Wire } from "./blocks-spec.ts";
import { blockWords } from "./blocks-words.ts";
import { wideLanes } from "./blocks-wide.ts";
import * as symbol from "./blocks-symbols.ts";
import { drawing, el, escaped, lines, short, through } from "./svg.ts";
import type { Attributes, Point } from "./svg.ts";
import { fitted, textWidth } from "./text-width.ts";
import { phoneWidth, words } from "./words.ts";

export function machineDrawing(spec: MachineDrawing): string {
  const { width, blocks } = spec;
  const isPhone = width < phoneWidth;
  const lanes = (isPhone ? phoneLanes : wideLanes)(width, blocks, spec.tools);
  const has = (place: Place) => blocks[place] !== undefined;
  const both = (wire: Wire) => has(wire.from) && has(wire.to);
  const air = lanes.air.filter((wire) => both(wire) && blocks[wire.to]?.air === true);
  const signals = lanes.signals.filter((wire) => both(wire) && blocks[wire.to]?.signal === true);
  const chain = lanes.chain.filter(both);
  const power = lanes.power.filter(both);
  const links = Object.values(blocks).some((block) => block.href !== undefined);
  return drawing(
    // Links inside must stay reachable: an image has no reachable parts.
    { label: spec.label, width, height: lanes.height, ...(links ? { role: "group" as const } : {}) },
    symbol.padGround(width, lanes),
    ...titleParts(spec, lanes),
    ...signals.map((wire) => wirePart(wire, { class: "nf ac", "stroke-width": "1.1", "stroke-dasharray": "5 3" }, "fa", 7)),
    ...chain.map((wire) => el("path", { d: through(wire.route), class: "nf i", "stroke-width": "1.25", "stroke-dasharray": "9 3 2 3" })),
    airParts(air, lanes, blocks),
    ...power.map((wire) => wirePart(wire, { class: "nf i", "stroke-width": 3 }, "fi", 8)),
    // From the bar's stop to the tool that parts it off.
    has("cut-off") && has("spindle") ? cutOffPart(lanes) : "",
    has("belt") ? symbol.beltSymbol(lanes.motor, lanes.spindle) : "",
    has("motor") ? symbol.motorSymbol(lanes.motor, lanes.size) : "",
    has("spindle") ? symbol.spindleSymbol(lanes.spindle, has("belt") ? lanes.motor.x : null) : "",
    has("bar-feed") ? symbol.feedSymbol(lanes.spindle) : "",
    has("closer") ? symbol.closerSymbol(lanes.spindle) : "",
    has("bar-feed") ? symbol.barSymbol(lanes.spindle) : "",
    has("turret") ? symbol.toolsSymbol(lanes.turret, spec.tools, lanes.size) : "",
    has("compressor") ? symbol.compressorSymbol(lanes.compressor) : "",
    has("receiver") ? symbol.receiverSymbol(lanes.receiver, isPhone) : "",
    has("regulator") ? symbol.regulatorSymbol(lanes.regulator, isPhone) : "",
    ...places.flatMap((place) => {
      const block = blocks[place];
      return block === undefined ? [] : [blockPart(place, block, lanes)];
    }),
    ...legend(lanes, width, [
      ...(power.length > 0 ? (["power"] as const) : []),
      ...(air.length > 0 ? (["air"] as const) : []),
      ...(signals.length > 0 ? (["signal"] as const) : []),
      ...(chain.length > 0 ? (["moves"] as const) : []),
      ...(has("bar-feed") ? (["bar"] as const) : []),
    ]),
  );
}

/** In reading order: the order a keyboard visits them. */
const places: readonly Place[] = [
  "supply",
  "drive",
  "motor",
  "belt",
  "spindle",
  "bar-feed",
  "closer",
  "turret",
  "cut-off",
  "axes",
  "board",
  "compressor",
  "receiver",
  "regulator",
];

function titleParts({ title, note, width }: MachineDrawing, { size, titleRows }: Lanes): string[] {
  const [left, base] = [10, 20];
  const titleSize = 14;
  const wanted = textWidth(note ?? "", size);
  const room = titleRows === 2 ? width - 2 * left : width - 3 * left - Math.min(wanted, width * 0.4);
  const name = words(left, base, fitted(title, room, titleSize, true), { size: titleSize, bold: true });
  if (note === undefined) return [name];
  return titleRows === 2
    ? [name, words(left, base + size + 4, fitted(note, width - 2 * left, size), { size, tone: "q" })]
    : [name, words(width - left, base, fitted(note, width * 0.4, size), { size, tone: "q", anchor: "end" })];
}

function blockPart(place: Place, block: Block, lanes: Lanes): string {
  const frame = lanes.boxes[place];
  const room = lanes.texts[place];
  const pad = 8;
  const inner = frame ? { x: frame.x + pad, y: frame.y + pad, width: frame.width - 2 * pad, height: frame.height - 2 * pad } : room;
  if (inner === undefined) return "";
  const parts = [
    frame ? el("rect", { ...frame, class: "fs i", "stroke-width": "1.25" }) : "",
    // The whole room of the words answers to a finger.
    block.href !== undefined && !frame ? el("rect", { ...inner, class: "hit" }) : "",
    ...blockWords(block, inner, lanes.size, frame === undefined),
  ];
  const whole = [block.name, ...(block.verdict ? [block.verdict] : []), ...block.figures].join(", ");
  if (block.href === undefined) return el("g", {}, `\n${lines(el("title", {}, escaped(whole)), ...parts)}\n`);
  return el("a", { href: block.href, class: "block", "aria-label": whole }, `\n${lines(...parts)}\n`);
}

function wirePart(wire: Wire, look: Attributes, headClass: string, reach: number): string {
  const end = wire.route.at(-1);
  const before = wire.route.at(-2);
  if (!end || !before) return "";
  const back = backFrom(end, before, reach - 1);
  return el("path", { d: through([...wire.route.slice(0, -1), back]), ...look }) + arrowHead(end, before, headClass, reach);
}

function backFrom(end: Point, before: Point, by: number): Point {
  const length = Math.hypot(end.x - before.x, end.y - before.y) || 1;
  return { x: end.x - ((end.x - before.x) / length) * by, y: end.y - ((end.y - before.y) / length) * by };
}

function arrowHead(end: Point, before: Point, headClass: string, reach: number): string {
  const foot = backFrom(end, before, reach);
  const across = { x: (end.y - foot.y) * 0.55, y: (end.x - foot.x) * 0.55 };
  const corners = [end, { x: foot.x + across.x, y: foot.y - across.y }, { x: foot.x - across.x, y: foot.y + across.y }];
  return el("path", { d: through(corners, true), class: headClass });
}

/** Air as a double line: all outsides first, then all insides, so that branches open into each other. */
function airParts(air: readonly Wire[], lanes: Lanes, blocks: MachineDrawing["blocks"]): string {
  const symbols = (["compressor", "receiver", "regulator"] as const).filter((place) => blocks[place]).map((place) => lanes[place]);
  const supply = symbols.length > 1 ? [through(symbols)] : [];
  const routes = air.map((wire) => {
    const [end, before] = [wire.route.at(-1), wire.route.at(-2)];
    return end && before ? through([...wire.route.slice(0, -1), backFrom(end, before, 7)]) : "";
  });
  const d = [...supply, ...routes].join("");
  if (d === "") return "";
  const heads = air.map((wire) => {
    const [end, before] = [wire.route.at(-1), wire.route.at(-2)];
    return end && before ? arrowHead(end, before, "fi3", 8) : "";
  });
  return lines(
    el("path", { d, class: "nf i3", "stroke-width": 5, "stroke-linejoin": "miter" }),
    el("path", { d, class: "nf sp", "stroke-width": 3, "stroke-linejoin": "miter" }),
    ...heads,
  );
}

function cutOffPart({ boxes, spindle }: Lanes): string {
  const box = boxes["cut-off"];
  if (!box) return "";
  const x = Math.min(Math.max(spindle.barEnd - 4, box.x + 8), box.x + box.width - 8);
  const route = [
    { x, y: box.y },
    { x, y: spindle.y + 9 },
  ];
  return wirePart({ from: "cut-off", to: "spindle", route }, { class: "nf i", "stroke-width": "1.25" }, "fi", 8);
}

type LineKind = "power" | "air" | "signal" | "moves" | "bar";
const kindWords: Readonly<Record<LineKind, string>> = { power: "power, torque", air: "air", signal: "signal", moves: "moves", bar: "bar" };

function legend({ legendTop, size }: Lanes, width: number, kinds: readonly LineKind[]): string[] {
  let x = 10;
  let y = legendTop + size;
  return kinds.flatMap((kind) => {
    const room = 40 + textWidth(kindWords[kind], size);
    if (x + room > width - 10) [x, y] = [10, y + size + 8];
    const [from, middle] = [x, y - size * 0.32];
    const line = `M${short(from)} ${short(middle)}h32`;
    x += room + 18;
    return [sample(kind, line, from, middle), words(from + 40, y, kindWords[kind], { size, tone: "q2" })];
  });
}

function sample(kind: LineKind, d: string, x: number, y: number): string {
  switch (kind) {
    case "power":
      return el("path", { d, class: "nf i", "stroke-width": 3 });
    case "air":
      return el("path", { d, class: "nf i3", "stroke-width": 5 }) + el("path", { d, class: "nf sp", "stroke-width": 3 });
    case "signal":
      return el("path", { d, class: "nf ac", "stroke-width": "1.1", "stroke-dasharray": "5 3" });
    case "moves":
      return el("path", { d, class: "nf i", "stroke-width": "1.25", "stroke-dasharray": "9 3 2 3" });
    case "bar":
      return el("rect", { x, y: y - 3.5, width: 32, height: 7, class: "fw ac", "stroke-width": 1 });
  }
}
