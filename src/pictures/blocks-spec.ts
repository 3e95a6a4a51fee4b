// What the machine drawing is made of: blocks at the places that a retrofit has, each there only when the machine has it.
import type { Verdict } from "../kernel/verdict.ts";
import type { Box } from "./words.ts";
import type { Point } from "./svg.ts";

export type Place =
  | "supply"
  | "drive"
  | "motor"
  | "belt"
  | "spindle"
  | "bar-feed"
  | "closer"
  | "turret"
  | "cut-off"
  | "axes"
  | "board"
  | "compressor"
  | "receiver"
  | "regulator";

export interface Block {
  readonly name: string;
  /** The worst of its checks. */
  readonly verdict?: Verdict;
  /** Key figures, two lines at most. */
  readonly figures: readonly [] | readonly [string] | readonly [string, string];
  readonly href?: string;
  /** Fed by air. */
  readonly air?: boolean;
  /** Speaks to the board. */
  readonly signal?: boolean;
}

export interface MachineDrawing {
  readonly title: string;
  /** At the right of the title: "9 records, 11 typical values". */
  readonly note?: string;
  readonly label: string;
  readonly width: number;
  readonly blocks: Readonly<Partial<Record<Place, Block>>>;
  /** What stands at the turret's place. */
  readonly tools?: { readonly kind: "turret" | "carousel"; readonly stations: number };
}

/** Where everything stands for one width: lanes are fixed, so that a reader finds each thing at its place on every machine. */
export interface Lanes {
  readonly size: number;
  readonly height: number;
  readonly legendTop: number;
  readonly titleRows: 1 | 2;
  /** Blocks drawn as boxes with their words inside. */
  readonly boxes: Readonly<Partial<Record<Place, Box>>>;
  /** Room for the words of blocks that are drawn as symbols. */
  readonly texts: Readonly<Partial<Record<Place, Box>>>;
  readonly motor: Point;
  readonly spindle: SpindleLane;
  readonly turret: Point;
  readonly compressor: Point;
  readonly receiver: Point;
  readonly regulator: Point;
  readonly power: readonly Wire[];
  readonly signals: readonly Wire[];
  readonly chain: readonly Wire[];
  /** From the air sources to each thing they feed. */
  readonly air: readonly Wire[];
}

export interface Wire {
  /** Both must be there for the line to be drawn. */
  readonly from: Place;
  readonly to: Place;
  readonly route: readonly Point[];
}

export interface SpindleLane {
  readonly y: number;
  readonly feed: readonly [number, number];
  readonly closer: readonly [number, number];
  readonly head: readonly [number, number];
  readonly barEnd: number;
}
