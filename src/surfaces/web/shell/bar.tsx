// The phone's bar: four places under the thumb.
import type { JSX } from "preact";
import type { IconName } from "../../../pictures/icons.ts";
import { Icon } from "../parts/icon.tsx";
import { answer } from "../model/desk.ts";
import { openFind } from "../model/find-open.ts";
import { linkTo, machine, place } from "../model/place.ts";
import type { Place } from "../model/route.ts";

export function Bar(): JSX.Element {
  const root = machine.value ?? answer.value?.machines[0]?.root ?? null;
  const { page } = place.value;
  const to = (page: "margins" | "rooms" | "next"): Place => (root === null ? { page: "shop" } : { page, machine: root });
  return (
    <nav class="bar" aria-label="Places">
      <Spot to={to("margins")} icon="margins" says="Margins" here={page === "margins"} />
      <Spot to={to("rooms")} icon="rooms" says="Rooms" here={page === "rooms" || page === "room"} />
      <Spot to={to("next")} icon="next-step" says="Next step" here={page === "next"} />
      <button type="button" onClick={openFind}>
        <Icon name="find" size={22} />
        Find
      </button>
    </nav>
  );
}

function Spot({ to, icon, says, here }: { to: Place; icon: IconName; says: string; here: boolean }): JSX.Element {
  return (
    <a href={linkTo(to)} class={here ? "on" : ""} aria-current={here ? "page" : undefined}>
      <Icon name={icon} size={22} />
      {says}
    </a>
  );
}
