// What both layouts of the machine drawing share: sizes of the symbols, the outline of the turret, straight wires.
import type { MachineDrawing } from "./blocks-spec.ts";
import type { Point } from "./svg.ts";

export const motorRadius = 24;
export const turretRadius = 38;
/** Half the height of the spindle's pulley as drawn. */
export const pulleyReach = 40;
export const edge = 14;
/** Signals to the far side run down between the blocks and the edge of the pad. */
export const margin = 6;
/** From the last wire to the words beside it. */
export const clear = 10;

export type Blocks = MachineDrawing["blocks"];
type Tools = MachineDrawing["tools"];

const usualStations = 6;

export function stationsOf(tools: Tools): number {
  return tools?.stations ?? usualStations;
}

/** A carousel, and anything with too few stations to have corners. */
export function isRound(tools: Tools): boolean {
  return tools?.kind === "carousel" || stationsOf(tools) < 3;
}

/** Corner i of a turret of n stations, one corner up, from its centre [px]. */
export function turretCorner(stations: number, i: number, radius = turretRadius): Point {
  const angle = (i / stations) * 2 * Math.PI - Math.PI / 2;
  return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
}

/** How far the turret reaches to the right of its centre at the height y from it [px]. */
export function turretReach(tools: Tools, y: number): number {
  if (isRound(tools)) return Math.sqrt(turretRadius ** 2 - y ** 2);
  const stations = stationsOf(tools);
  for (let i = 0; i < stations; i += 1) {
    const [a, b] = [turretCorner(stations, i), turretCorner(stations, i + 1)];
    if (a.y <= y && b.y > y) return a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y);
  }
  return 0;
}

/** The first air source in the order of the flow: lines to what it feeds start there; null without any. */
export function airSource(blocks: Blocks): "compressor" | "receiver" | "regulator" | null {
  return (["compressor", "receiver", "regulator"] as const).find((place) => blocks[place] !== undefined) ?? null;
}

export function across(from: number, to: number, y: number): Point[] {
  return [
    { x: from, y },
    { x: to, y },
  ];
}

export function down(x: number, from: number, to: number): Point[] {
  return [
    { x, y: from },
    { x, y: to },
  ];
}
