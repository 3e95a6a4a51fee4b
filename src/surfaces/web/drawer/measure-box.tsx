// The one thing to measure next: how, with what caution, in which step; and where to write what is known already.
import type { JSX } from "preact";
import { Cautions } from "../parts/caution.tsx";
import { answer, household } from "../model/desk.ts";
import { hazardsOf, stepFor } from "../model/next.ts";
import { linkTo, machine } from "../model/place.ts";
import { partsOf } from "../worker/view.ts";

interface Wanted {
  /** Address of the input that would be filled in. */
  readonly input: string;
  readonly says: string;
  readonly measure: string;
}

export function MeasureBox({ wanted }: { wanted: Wanted }): JSX.Element {
  const input = answer.value?.inputs[wanted.input];
  const step = stepFor(household.value, input?.id ?? null, wanted.input);
  const field = fieldLink(wanted.input, input?.room ?? null);
  return (
    <section class="mnext">
      <h3>Measure next: {wanted.says.replace(/ is not known$/, "")}</h3>
      {wanted.measure === "" ? null : <p>{wanted.measure}</p>}
      {step ? <Cautions hazards={hazardsOf(household.value, step)} /> : null}
      <p class="acts">
        {step ? (
          <a class="btn go" href={stepLink(step.id)}>
            Open the step
          </a>
        ) : null}
        {field === null ? null : (
          <a class="btn quiet" href={field}>
            I already know it
          </a>
        )}
      </p>
    </section>
  );
}

/** The page of next steps, with the step opened. */
export function stepLink(id: string): string {
  const root = machine.value ?? answer.value?.machines[0]?.root ?? "shop";
  return root === "shop" ? linkTo({ page: "shop" }) : linkTo({ page: "next", machine: root }, new Map([["step", id]]));
}

/** The field of an input on the page of its room. */
export function fieldLink(address: string, room: string | null): string | null {
  const { root } = partsOf(address);
  const on = root === "shop" ? (machine.value ?? answer.value?.machines[0]?.root ?? null) : root;
  const name = room ?? answer.value?.rooms.find((r) => partsOf(address).path.startsWith(r.name))?.name ?? null;
  return on === null || name === null ? null : linkTo({ page: "room", machine: on, room: name }, new Map([["field", address]]));
}
