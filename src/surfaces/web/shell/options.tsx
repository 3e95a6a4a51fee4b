// Which options of the machine are laid over it: as found, or any of those in its folder.
import type { JSX } from "preact";
import { useRef } from "preact/hooks";
import { answer } from "../model/desk.ts";
import { chooseOptions, machine, route } from "../model/place.ts";

/** Laid options stand beside "as found"; the rest waits in a list. */
export function OptionSwitch(): JSX.Element | null {
  const list = useRef<HTMLDivElement>(null);
  const root = machine.value;
  const all = (answer.value?.options ?? []).filter((o) => root === null || o.machine === root);
  if (all.length === 0) return null;
  const chosen = route.value.options;
  const nameOf = (o: { machine: string; name: string }): string => `${o.machine}/${o.name}`;
  const laid = all.filter((o) => chosen.includes(nameOf(o)));
  const flip = (name: string): void => chooseOptions(chosen.includes(name) ? chosen.filter((other) => other !== name) : [...chosen, name]);
  return (
    <div class="seg options" role="group" aria-label="Options laid over">
      <button type="button" aria-pressed={laid.length === 0} onClick={() => chooseOptions([])}>
        as found
      </button>
      {laid.map((o) => (
        <button key={nameOf(o)} type="button" aria-pressed title={`${o.title}: take it off again`} onClick={() => flip(nameOf(o))}>
          {o.name}
        </button>
      ))}
      <button type="button" popovertarget="option-list" class="more">
        + option
      </button>
      <div id="option-list" popover="auto" class="pop" ref={list}>
        <h2>Options of {root ?? "the shop"}</h2>
        <ul>
          {all.map((o) => (
            <li key={nameOf(o)}>
              <label>
                <input type="checkbox" checked={chosen.includes(nameOf(o))} onChange={() => flip(nameOf(o))} />
                <span>
                  {root === null ? `${o.machine}: ` : ""}
                  {o.title}
                </span>
                <span class="q num">{[o.cost, o.hours].filter(Boolean).join(", ")}</span>
              </label>
            </li>
          ))}
        </ul>
      </div>
    </div>
  );
}
