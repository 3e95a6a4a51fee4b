// The lanes of the machine drawing on a desk: power from above, the spindle line across, air from below, signals from the top right.
import { airSource, clear, edge, across, down, margin, motorRadius, pulleyReach, turretRadius, turretReach } from "./blocks-geometry.ts";
import type { Blocks } from "./blocks-geometry.ts";
import { wordsHeight } from "./blocks-words.ts";
import type { Lanes, MachineDrawing, Place, Wire } from "./blocks-spec.ts";
import type { Point } from "./svg.ts";
import { noteSize } from "./words.ts";
import type { Box } from "./words.ts";

export function wideLanes(width: number, blocks: Blocks, tools: MachineDrawing["tools"]): Lanes {
  const size = noteSize(width);
  const tall = wordsHeight(size);
  const boxHeight = tall + 16;
  const boxWidth = Math.min(190, (width - 2 * edge - 28 - 76) / 3);
  const box = (x: number, y: number): Box => ({ x, y, width: boxWidth, height: boxHeight });
  const top = 32;
  const driveX = edge + boxWidth + 28;
  const boardX = width - edge - boxWidth;
  const signalX = boardX - clear;
  const boxBottom = top + boxHeight;
  const motor = { x: driveX + 42, y: boxBottom + 28 + motorRadius };
  const axesTop = boxBottom + 28;
  const y = axesTop + boxHeight + 118;
  const turret = { x: width - edge - 50, y };
  const textX = motor.x + motorRadius + clear;
  const text = (x: number, at: number, right: number): Box => ({ x, y: at, width: right - x, height: tall });

  const nose = signalX - 22;
  const barEnd = turret.x - turretRadius - 22;
  const under = y + 46;
  const cutOff = { x: barEnd - boxWidth * 0.75, y: under + 30, width: boxWidth, height: boxHeight };
  cutOff.x = Math.min(cutOff.x, turret.x - clear - boxWidth);
  const closerTop = under + tall + 10;
  const header = cutOff.y + boxHeight + 24;
  const main = header + 42;
  const airTexts = main + 30;
  const third = (turret.x - edge) / 3;
  const column = (i: number) => edge + i * third;
  const regulator = { x: column(2) + 26, y: main };
  const riser = regulator.x + 34;
  const branch = Math.max(riser + 20, cutOff.x + boxWidth / 2);
  const ends = [y + pulleyReach, under + (blocks.spindle ? tall : 0)];
  if (blocks["cut-off"]) ends.push(cutOff.y + boxHeight);
  if (blocks.closer) ends.push(closerTop + tall);
  const source = airSource(blocks);
  const legendTop = source ? airTexts + tall + 10 : Math.max(...ends) + 16;
  const compressor = { x: edge + 26, y: main };
  const receiver = { x: column(1) + 46, y: main };
  const start = { compressor, receiver, regulator }[source ?? "regulator"];
  const fed = (to: Place, ...route: Point[]): Wire => ({ from: source ?? "regulator", to, route: [start, ...route] });
  return {
    size,
    height: legendTop + size + 20,
    legendTop,
    titleRows: 1,
    boxes: { supply: box(edge, top), drive: box(driveX, top), board: box(boardX, top), axes: box(boardX, axesTop), "cut-off": cutOff },
    texts: {
      motor: text(textX, boxBottom + 20, signalX - clear),
      belt: text(textX, boxBottom + 20 + tall + 30, signalX - clear),
      "bar-feed": text(edge, y - 30 - tall, motor.x - motorRadius - clear),
      turret: text(boardX, y - turretRadius - 12 - tall, width - edge - 16),
      spindle: text(136, under, cutOff.x - clear),
      closer: text(136, closerTop, cutOff.x - clear),
      compressor: text(column(0), airTexts, column(1) - clear),
      receiver: text(column(1), airTexts, column(2) - clear),
      regulator: text(column(2), airTexts, turret.x + 50),
    },
    motor,
    spindle: { y, feed: [edge, edge + 92], closer: [edge + 98, edge + 122], head: [136, nose], barEnd },
    turret,
    compressor,
    receiver,
    regulator,
    power: [
      { from: "supply", to: "drive", route: across(edge + boxWidth, driveX, top + boxHeight / 2) },
      { from: "drive", to: "motor", route: down(motor.x, boxBottom, motor.y - motorRadius) },
    ],
    signals: [
      { from: "board", to: "drive", route: across(boardX, driveX + boxWidth, boxBottom - 14) },
      { from: "board", to: "axes", route: down(boardX + boxWidth / 2, boxBottom, axesTop) },
      {
        from: "board",
        to: "spindle",
        route: [
          { x: boardX, y: boxBottom - 6 },
          { x: signalX, y: boxBottom - 6 },
          { x: signalX, y: y - 18 },
        ],
      },
      {
        from: "board",
        to: "turret",
        route: [
          { x: width - edge, y: boxBottom - 14 },
          { x: width - margin, y: boxBottom - 14 },
          { x: width - margin, y: y + 12 },
          { x: turret.x + turretReach(tools, 12), y: y + 12 },
        ],
      },
    ],
    chain: [
      {
        from: "axes",
        to: "turret",
        route: [
          { x: width - edge - 8, y: axesTop + boxHeight },
          { x: width - edge - 8, y: y - 10 },
          { x: turret.x + turretReach(tools, -10), y: y - 10 },
        ],
      },
    ],
    air: source
      ? [
          fed("bar-feed", { x: riser, y: main }, { x: riser, y: header }, { x: edge + 20, y: header }, { x: edge + 20, y: y + 14 }),
          fed("closer", { x: riser, y: main }, { x: riser, y: header }, { x: edge + 110, y: header }, { x: edge + 110, y: y + 18 }),
          fed("cut-off", { x: branch, y: main }, { x: branch, y: cutOff.y + boxHeight }),
          fed("turret", { x: turret.x, y: main }, { x: turret.x, y: y + turretRadius }),
        ]
      : [],
  };
}
