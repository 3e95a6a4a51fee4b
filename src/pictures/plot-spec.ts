// What a plot is made of, as plain data in the units it is shown in.
import type { Verdict } from "../kernel/verdict.ts";

export interface PlotSpec extends Panel {
  /** Goes before every id, so that several drawings share a page. */
  readonly prefix: string;
  readonly title: string;
  /** States the finding: "the cut stays below the pull-out torque up to 2100 rpm". */
  readonly label: string;
  /** The plot is laid out for this width [px]. */
  readonly width: number;
  readonly height: number;
  readonly x: Axis;
  /** A second plot under the first, on the same x. */
  readonly below?: Panel;
  /** Who is busy when: bars under the plot, on the same x. */
  readonly lanes?: readonly Lane[];
}

export interface Panel {
  readonly y: Axis;
  readonly series?: readonly Series[];
  readonly bands?: readonly BandArea[];
  readonly points?: readonly PlotPoint[];
  readonly limits?: readonly Limit[];
  readonly markers?: readonly Marker[];
}

export interface Axis {
  readonly label: string;
  readonly unit: string;
  /** `clock` is linear in seconds of the day and written as hours and minutes. */
  readonly scale?: "linear" | "log" | "clock";
  readonly min?: number;
  readonly max?: number;
  /** Named places instead of numbers. */
  readonly ticks?: readonly { readonly at: number; readonly words: string }[];
}

/**
 * A line. Where x turns back it is drawn as a path, point by point (a cut that wanders over the torque plane).
 * A y that is not a number is a gap.
 */
export interface Series {
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** As found, the option, a limit, or a quiet companion. */
  readonly role: "base" | "option" | "limit" | "quiet";
  /** Thin and dashed: a short-time limit or an estimate in the colour of its role. */
  readonly dash?: boolean;
  /** The x where the name should stand; else where there is most room. */
  readonly labelAt?: number;
}

/** Where the truth may lie: hatched. */
export interface BandArea {
  readonly x: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly words?: string;
}

export interface PlotPoint {
  readonly x: number;
  readonly y: number;
  readonly label: string;
  /** Without one the point is a reading, not an answer. */
  readonly verdict?: Verdict;
  /** One of many: its label stands under a pointer and in the table, not beside it. */
  readonly quiet?: true;
}

export interface Limit {
  /** The axis the value is on: a limit in y is a horizontal line. */
  readonly on: "x" | "y";
  readonly at: number;
  readonly words: string;
  /** The hatched side. */
  readonly forbids?: "above" | "below";
  /** `quiet` is a thin dotted line or an event, `option` is drawn in the accent. */
  readonly role?: "limit" | "quiet" | "option";
}

/** The one point that decides: a ring with value, time and cause in words. */
export interface Marker {
  readonly x: number;
  readonly y: number;
  readonly words: string;
}

interface Lane {
  readonly name: string;
  readonly busy: readonly (readonly [from: number, to: number])[];
}
