// The symbols of the machine drawing: motor, belt, spindle line, turret, and the air symbols in the shapes of ISO 1219.
import { isRound, motorRadius, pulleyReach, stationsOf, turretCorner, turretRadius } from "./blocks-geometry.ts";
import type { Lanes, MachineDrawing, SpindleLane } from "./blocks-spec.ts";
import { el, lines, short, through } from "./svg.ts";
import type { Attributes, Point } from "./svg.ts";
import { words } from "./words.ts";

const drawn: Attributes = { class: "fs i", "stroke-width": "1.25" };
const thin: Attributes = { class: "nf i2", "stroke-width": "0.75" };

function rect(x: number, y: number, width: number, height: number, look: Attributes = drawn): string {
  return el("rect", { x, y, width, height, ...look });
}

export function motorSymbol(at: Point, size: number): string {
  const circle = el("circle", { cx: at.x, cy: at.y, r: motorRadius, class: "fs i", "stroke-width": "1.5" });
  return circle + words(at.x, at.y + size * 0.38, "M", { size: size + 1, bold: true, anchor: "middle" });
}

const pulleyHalf = { width: 24, height: pulleyReach };

export function beltSymbol(motor: Point, spindle: SpindleLane): string {
  const end = spindle.y - pulleyHalf.height;
  // The outer strands seen from the side: from the motor's pulley, narrower than the motor, to the spindle's.
  const half = motorRadius * 0.6;
  const from = motor.y + Math.sqrt(motorRadius ** 2 - half ** 2);
  const d = [-1, 1]
    .map((side) => `M${short(motor.x + side * half)} ${short(from)}L${short(motor.x + side * pulleyHalf.width)} ${short(end)}`)
    .join("");
  return el("path", { d, class: "nf i", "stroke-width": "1.5" });
}

/** Headstock with bearings, spindle with its pulley, collet. */
export function spindleSymbol(lane: SpindleLane, pulleyX: number | null): string {
  const { y, head } = lane;
  const [left, right] = head;
  const bearing = (x: number, top: number) =>
    rect(x, top, 26, 11) + el("path", { d: `M${short(x)} ${short(top)}l26 11m0 -11l-26 11`, ...thin });
  const bearings = [left + 5, right - 34].flatMap((x) => [bearing(x, y - 22), bearing(x, y + 11)]);
  const nose = through(
    [
      { x: right, y: y - 17 },
      { x: right + 12, y: y - 17 },
      { x: right + 24, y: y - 7 },
      { x: right + 24, y: y + 7 },
      { x: right + 12, y: y + 17 },
      { x: right, y: y + 17 },
    ],
    true,
  );
  return lines(
    rect(left, y - 25, right - left, 50),
    ...bearings,
    rect(left - 4, y - 11, right - left + 4, 22),
    pulleyX === null ? "" : pulleySymbol(pulleyX, y),
    el("path", { d: nose, ...drawn }),
    rect(left - 4, y - 6, right - left + 28, 12),
  );
}

function pulleySymbol(x: number, y: number): string {
  const { width, height } = pulleyHalf;
  const grooves = [0.78, 0.6, 0.42].map(
    (part) => `M${short(x - width)} ${short(y - height * part)}h${2 * width}m0 ${short(2 * height * part)}h${-2 * width}`,
  );
  return rect(x - width, y - height, 2 * width, 2 * height) + el("path", { d: grooves.join(""), ...thin });
}

export function barSymbol({ y, feed, barEnd }: SpindleLane): string {
  return rect(feed[0] + 16, y - 3.5, barEnd - feed[0] - 16, 7, { class: "fw ac", "stroke-width": 1 });
}

export function feedSymbol({ y, feed }: SpindleLane): string {
  const [left, right] = feed;
  return rect(left, y - 14, right - left, 28) + rect(left + 5, y - 9, 9, 18, { class: "fi2" });
}

export function closerSymbol({ y, closer }: SpindleLane): string {
  const [left, right] = closer;
  const slant = el("path", { d: `M${short(left)} ${short(y - 18)}L${short(right)} ${short(y + 18)}`, ...thin });
  return rect(left, y - 18, right - left, 36) + slant;
}

export function toolsSymbol(at: Point, tools: MachineDrawing["tools"], size: number): string {
  const stations = stationsOf(tools);
  const on = (radius: number, i: number) => {
    const corner = turretCorner(stations, i, radius);
    return { x: at.x + corner.x, y: at.y + corner.y };
  };
  const all = Array.from({ length: stations }, (_, i) => i);
  const hub = el("circle", { cx: at.x, cy: at.y, r: 7, class: "nf i", "stroke-width": "1.25" });
  if (isRound(tools)) {
    const pocket = Math.min(7, (Math.PI * turretRadius * 0.75) / stations - 1);
    const pockets = all.map((i) => on(turretRadius * 0.76, i)).map((spot) => el("circle", { cx: spot.x, cy: spot.y, r: pocket, ...thin }));
    return lines(el("circle", { cx: at.x, cy: at.y, r: turretRadius, ...drawn }), ...pockets, hub);
  }
  const outline = el("path", {
    d: through(
      all.map((i) => on(turretRadius, i)),
      true,
    ),
    ...drawn,
  });
  // Station numbers stand on the flats; more than eight would touch.
  const isRoomy = stations <= 8;
  const numbers = all.map((i) => {
    const spot = on(turretRadius * 0.6, i + 0.5);
    return words(spot.x, spot.y + size * 0.35, String(i + 1), { size, tone: "q2", anchor: "middle" });
  });
  return lines(outline, hub, ...(isRoomy ? numbers : []));
}

export function compressorSymbol({ x, y }: Point): string {
  const arrow = el("path", {
    d: `M${short(x + 10)} ${short(y - 6)}L${short(x + 21)} ${short(y)}L${short(x + 10)} ${short(y + 6)}Z`,
    class: "fi",
  });
  return el("circle", { cx: x, cy: y, r: 21, class: "fs i", "stroke-width": "1.5" }) + arrow;
}

export function receiverSymbol({ x, y }: Point, isPhone: boolean): string {
  const half = isPhone ? 30 : 42;
  return el("rect", { x: x - half, y: y - 15, width: 2 * half, height: 30, rx: 15, class: "fs i", "stroke-width": "1.5" });
}

export function regulatorSymbol({ x, y }: Point, isPhone: boolean): string {
  const arrow = isPhone ? `M${short(x)} ${short(y + 9)}v-18m-4 6l4 -6l4 6` : `M${short(x - 15)} ${short(y)}h30m-6 -4l6 4l-6 4`;
  const spring = `M${short(x)} ${short(y - 16)}v-4l-5 -2l10 -4l-10 -4`;
  return (
    rect(x - 20, y - 16, 40, 32) +
    el("path", { d: arrow, class: "nf i", "stroke-width": "1.25" }) +
    (isPhone ? "" : el("path", { d: spring, class: "nf i", "stroke-width": 1 }))
  );
}

/** The pad under the drawing. */
export function padGround(width: number, lanes: Lanes): string {
  const pitch = 18;
  const steps = (length: number) => Array.from({ length: Math.floor(length / pitch) }, (_, i) => (i + 1) * pitch);
  const uprights = steps(width - 1).map((x) => `M${x} 0V${short(lanes.height)}`);
  const levels = steps(lanes.height - 1).map((y) => `M0 ${y}H${short(width)}`);
  const frame = { x: 0.5, y: 0.5, width: width - 1, height: lanes.height - 1, class: "nf gm", "stroke-width": 1 };
  return el("path", { d: [...uprights, ...levels].join(""), class: "gr", "stroke-width": 1 }) + el("rect", frame);
}
