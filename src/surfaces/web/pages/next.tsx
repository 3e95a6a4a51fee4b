// What to do next on a machine: answers that decide open checks, and the steps of the bring-up in their order, each with its cautions.
import type { JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { Cautions } from "../parts/caution.tsx";
import { MeasureNext } from "../parts/measure.tsx";
import { answer, banded, household } from "../model/desk.ts";
import { machineLine } from "../model/names.ts";
import { hazardsOf, nextOf } from "../model/next.ts";
import { counted, spelled } from "../model/numbers.ts";
import { route, setOwn } from "../model/place.ts";
import { inOrder } from "../model/steps.ts";
import { Page } from "../shell/page.tsx";
import type { StepInfo } from "../worker/household.ts";
import "../styles/lists.css";
import "../styles/margins.css";

export function NextPage({ machine }: { machine: string }): JSX.Element {
  const said = banded.value?.answer ?? answer.value;
  const list = said ? nextOf(said, household.value, machine) : [];
  const steps = inOrder(household.value?.steps ?? []);
  const open = route.value.own.get("step") ?? null;
  return (
    <Page
      crumb={said ? machineLine(said, machine) : ""}
      title="Next step"
      sentence={said ? sentence(list.length, steps.length) : undefined}
      class="next-page"
    >
      <MeasureNext list={list} />
      <section class="steps" aria-labelledby="steps-head">
        <h2 id="steps-head">Steps of the bring-up</h2>
        <ol>
          {steps.map((s) => (
            <Step key={s.id} step={s} isOpen={s.id === open} titles={new Map(steps.map((t) => [t.id, t.title]))} />
          ))}
        </ol>
      </section>
    </Page>
  );
}

function sentence(answers: number, steps: number): string {
  const first =
    answers === 0
      ? "No open check hangs on something not known."
      : `${spelled(answers)} ${answers === 1 ? "answer" : "answers"} would decide what is open.`;
  return `${first} ${counted(steps, "step")} of the bring-up ${steps === 1 ? "is" : "are"} described, in the order in which they may be done.`;
}

function Step({ step, isOpen, titles }: { step: StepInfo; isOpen: boolean; titles: ReadonlyMap<string, string> }): JSX.Element {
  const item = useRef<HTMLLIElement>(null);
  useEffect(() => {
    if (isOpen) item.current?.scrollIntoView({ block: "start" });
  }, [isOpen]);
  const hazards = hazardsOf(household.value, step);
  return (
    <li ref={item} class={isOpen ? "sel" : ""}>
      <details
        open={isOpen}
        onToggle={(event) => {
          if (event.currentTarget.open) setOwn("step", step.id);
          else if (isOpen) setOwn("step", null);
        }}
      >
        <summary>
          <span>{step.title}</span>
          <span class="small q">{hazards.map((h) => h.name.toLowerCase()).join(", ")}</span>
        </summary>
        <Cautions hazards={hazards} />
        {step.after.length === 0 ? null : <p class="small q2">After: {step.after.map((id) => titles.get(id) ?? id).join(", ")}.</p>}
        <ol class="does">
          {step.does.map((does) => (
            <li key={does}>{does}</li>
          ))}
        </ol>
        {step.reads.length === 0 ? null : (
          <>
            <h3>Read</h3>
            <ul class="does">
              {step.reads.map((r) => (
                <li key={r.says}>{r.says}</li>
              ))}
            </ul>
          </>
        )}
        {step.accept === "" ? null : (
          <p>
            <span class="q">Accepted when: </span>
            {step.accept}
          </p>
        )}
      </details>
    </li>
  );
}
