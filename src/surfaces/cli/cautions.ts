// Dangers of a reading: those of the bring-up steps in which it is taken.
import type { House } from "../../kernel/house.ts";
import type { Hazard } from "../../kernel/room.ts";

/** Hazards by the id of the input that a step's reading is written to. */
export function cautionsOf(house: House): (inputId: string) => readonly Hazard[] {
  const by = new Map<string, Set<Hazard>>();
  for (const step of house.rooms.flatMap((r) => r.steps)) {
    for (const { sets } of step.reads) {
      if (!sets) continue;
      const had = by.get(sets.id) ?? new Set();
      for (const h of step.hazards) had.add(h);
      by.set(sets.id, had);
    }
  }
  return (id) => [...(by.get(id) ?? [])];
}
