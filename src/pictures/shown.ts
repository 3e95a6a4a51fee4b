// Numbers of a picture in the units the reader wants.
import { prettyUnit, show } from "../kernel/display.ts";
import type { Frame } from "../kernel/room.ts";
import { fromSI, type Kind, kinds, unitOf } from "../kernel/unit.ts";

export interface ShownIn {
  /** As an axis says it. */
  readonly unit: string;
  readonly of: (si: number) => number;
  /** A value with its unit, in three figures, for a sentence or a name on the drawing. */
  readonly text: (si: number) => string;
}

/** How a kind of quantity is shown in this frame. */
export function shownIn(kind: Kind, frame: Pick<Frame, "units">): ShownIn {
  const unit = unitOf(kinds[kind][frame.units]);
  const text = (si: number): string => {
    const s = show(si, kind, { units: frame.units }, 3);
    return s.unit === "" ? s.number : `${s.number} ${prettyUnit(s.unit)}`;
  };
  return { unit: prettyUnit(kinds[kind][frame.units]), of: (si) => fromSI(si, unit, kind !== "temperature"), text };
}
