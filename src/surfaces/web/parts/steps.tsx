// The bring-up steps that a room offers, as lines: what each reads, and what may hurt.
import type { JSX } from "preact";
import { household } from "../model/desk.ts";
import { hazardsOf } from "../model/next.ts";
import { linkTo } from "../model/place.ts";
import { Icon } from "./icon.tsx";

export function RoomSteps({ machine, room }: { machine: string; room: string }): JSX.Element | null {
  const steps = (household.value?.steps ?? []).filter((s) => s.room === room);
  if (steps.length === 0) return null;
  return (
    <section class="room-steps" aria-labelledby="steps">
      <h2 id="steps">Steps that measure here</h2>
      <ul>
        {steps.map((s) => (
          <li key={s.id}>
            <a href={linkTo({ page: "next", machine }, new Map([["step", s.id]]))}>{s.title}</a>
            <span class="warns small">
              {hazardsOf(household.value, s).map((h) => (
                <span key={h.id}>
                  <Icon name="caution" size={13} />
                  {h.name.toLowerCase()}
                </span>
              ))}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
