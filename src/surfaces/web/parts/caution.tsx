// A danger where the work is: its name, and the text from its one home.
import type { JSX } from "preact";
import type { Hazard } from "../model/next.ts";
import { Icon } from "./icon.tsx";

export function Cautions({ hazards }: { hazards: readonly Hazard[] }): JSX.Element | null {
  if (hazards.length === 0) return null;
  return (
    <ul class="cautions">
      {hazards.map((h) => (
        <li key={h.id}>
          <Icon name="caution" size={18} />
          <span>
            <b>{h.name}.</b> {h.says}
          </span>
        </li>
      ))}
    </ul>
  );
}
