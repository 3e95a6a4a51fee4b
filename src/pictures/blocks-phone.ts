// The lanes of the machine drawing on a phone: the same order from top to bottom, words beside or under what they name.
import { airSource, clear, edge, down, margin, motorRadius, turretRadius, turretReach } from "./blocks-geometry.ts";
import type { Blocks } from "./blocks-geometry.ts";
import { blockWidth, wordsHeight } from "./blocks-words.ts";
import type { Block, Lanes, MachineDrawing, Place, Wire } from "./blocks-spec.ts";
import type { Point } from "./svg.ts";
import { noteSize } from "./words.ts";
import type { Box } from "./words.ts";

export function phoneLanes(width: number, blocks: Blocks, tools: MachineDrawing["tools"]): Lanes {
  const size = noteSize(width);
  const tall = wordsHeight(size);
  const boxHeight = tall + 16;
  const boxWidth = (width - 2 * edge - 16) / 2;
  const box = (x: number, y: number): Box => ({ x, y, width: boxWidth, height: boxHeight });
  const text = (x: number, at: number, right: number): Box => ({ x, y: at, width: right - x, height: tall });
  const right = width - edge - boxWidth;
  const top = 48;
  const second = top + boxHeight + 22;
  const secondBottom = second + boxHeight;
  const motor = { x: edge + boxWidth / 2, y: secondBottom + 22 + motorRadius };
  const textX = motor.x + motorRadius + clear;
  const textRight = width - edge - 16;
  const motorTop = secondBottom + 16;
  const beltTop = motorTop + tall + 16;
  const y = beltTop + tall + 64;
  const turret = { x: width - edge - 44, y };
  const beltRight = textX + shareOf(blocks.belt, blocks.turret, textRight - textX - clear, size);
  const signalLane = y - turretRadius - 10;

  // Words under the spindle line, one block below the other; what is absent leaves no hole.
  let under = y + 50;
  const stacked = (place: Place): Box => {
    const at = text(74, under, turret.x - 58);
    if (blocks[place]) under += tall + 10;
    return at;
  };
  const [spindle, feed, closer] = [stacked("spindle"), stacked("bar-feed"), stacked("closer")];
  const barEnd = turret.x - turretRadius - 12;
  const cutOff = { x: turret.x - 14 - boxWidth, y: under + 6, width: boxWidth, height: boxHeight };
  const header = (blocks["cut-off"] ? cutOff.y + boxHeight : under) + 20;
  const pitch = tall + 16;
  const airX = edge + 34;
  const row = (i: number) => ({ x: airX, y: header + 26 + tall / 2 + i * pitch });
  const airText = (i: number) => text(airX + 52, row(i).y - tall / 2, width - edge);
  const rows = [blocks.regulator, blocks.receiver, blocks.compressor].map((block) => block !== undefined);
  const rowOf = (i: number) => rows.slice(0, i).filter(Boolean).length;
  const source = airSource(blocks);
  const bottom = row(Math.max(0, rows.filter(Boolean).length - 1));
  const legendTop = source ? bottom.y + tall / 2 + 22 : header;
  const fed = (to: Place, ...route: Point[]): Wire => ({
    from: source ?? "regulator",
    to,
    route: [bottom, { x: airX, y: header }, ...route],
  });
  return {
    size,
    height: legendTop + 2 * size + 30,
    legendTop,
    titleRows: 2,
    boxes: { supply: box(edge, top), board: box(right, top), drive: box(edge, second), axes: box(right, second), "cut-off": cutOff },
    texts: {
      motor: text(textX, motorTop, textRight),
      belt: text(textX, beltTop, beltRight),
      turret: text(beltRight + clear, beltTop, textRight),
      spindle,
      "bar-feed": feed,
      closer,
      regulator: airText(rowOf(0)),
      receiver: airText(rowOf(1)),
      compressor: airText(rowOf(2)),
    },
    motor,
    spindle: { y, feed: [edge, edge + 34], closer: [edge + 38, edge + 52], head: [edge + 56, turret.x - 84], barEnd },
    turret,
    regulator: row(rowOf(0)),
    receiver: row(rowOf(1)),
    compressor: row(rowOf(2)),
    power: [
      { from: "supply", to: "drive", route: down(motor.x, top + boxHeight, second) },
      { from: "drive", to: "motor", route: down(motor.x, secondBottom, motor.y - motorRadius) },
    ],
    signals: [
      { from: "board", to: "axes", route: down(right + boxWidth / 2, top + boxHeight, second) },
      {
        from: "board",
        to: "drive",
        route: [
          { x: right, y: top + boxHeight - 12 },
          { x: right - 8, y: top + boxHeight - 12 },
          { x: right - 8, y: second + 14 },
          { x: edge + boxWidth, y: second + 14 },
        ],
      },
      {
        from: "board",
        to: "spindle",
        route: [
          { x: width - edge, y: top + boxHeight - 14 },
          { x: width - margin, y: top + boxHeight - 14 },
          { x: width - margin, y: signalLane },
          { x: turret.x - 72, y: signalLane },
          { x: turret.x - 72, y: y - 18 },
        ],
      },
      {
        from: "board",
        to: "turret",
        route: [
          { x: width - edge, y: top + boxHeight - 14 },
          { x: width - margin, y: top + boxHeight - 14 },
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
          { x: width - edge - 7, y: secondBottom },
          { x: width - edge - 7, y: y - 10 },
          { x: turret.x + turretReach(tools, -10), y: y - 10 },
        ],
      },
    ],
    air: source
      ? [
          fed("bar-feed", { x: edge + 12, y: header }, { x: edge + 12, y: y + 14 }),
          fed("closer", { x: edge + 45, y: header }, { x: edge + 45, y: y + 18 }),
          fed("cut-off", { x: cutOff.x + boxWidth / 2, y: header }, { x: cutOff.x + boxWidth / 2, y: cutOff.y + boxHeight }),
          fed("turret", { x: turret.x, y: header }, { x: turret.x, y: y + turretRadius }),
        ]
      : [],
  };
}

/** Two blocks side by side: each gets what it needs while both fit, else in proportion. */
function shareOf(left: Block | undefined, right: Block | undefined, room: number, size: number): number {
  const [needLeft, needRight] = [left, right].map((block) => (block ? blockWidth(block, size) : 0));
  if (needLeft === undefined || needRight === undefined || needLeft + needRight === 0) return room / 2;
  return (room * needLeft) / (needLeft + needRight);
}
