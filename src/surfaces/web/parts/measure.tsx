// What to find out next: the unknowns that decide open checks, each with how and with the step that measures it.
import type { JSX } from "preact";
import { counted, percent } from "../model/numbers.ts";
import { type Next } from "../model/next.ts";
import { workingLink } from "../model/place.ts";
import { Icon } from "./icon.tsx";

/** `all` leads to every step. */
export function MeasureNext({ list, most, all }: { list: readonly Next[]; most?: number; all?: string }): JSX.Element {
  const shown = most === undefined ? list : list.slice(0, most);
  return (
    <section class="next" aria-labelledby="measure-next">
      <div class="next-head">
        <h2 id="measure-next">Measure next</h2>
        {all === undefined ? null : (
          <a class="small" href={all}>
            all steps
          </a>
        )}
      </div>
      {list.length === 0 ? <p class="q2 small">Nothing that is not known decides a check.</p> : null}
      <ol>
        {shown.map((n, i) => (
          <li key={n.input}>
            <span class="q no">{i + 1}</span>
            <a href={workingLink(n.opens)}>{n.says}</a>
            <span class="num q2 small">{counted(n.checks.length, "check")}</span>
            <span class="why small q2">
              {n.thing === "" ? "" : `${n.thing}: `}
              {n.share >= 1 ? "nothing can be said without it" : `makes ${percent(n.share)} of the spread`}
              {n.hazards.length === 0 ? null : (
                <span class="warns">
                  <Icon name="caution" size={13} />
                  {n.hazards.map((h) => h.name.toLowerCase()).join(", ")}
                </span>
              )}
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}
