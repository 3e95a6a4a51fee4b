// The index: places of the machine looked at, its rooms with their worst verdict, the other machines and the shop.
import type { JSX } from "preact";
import { VerdictWord } from "../parts/verdict.tsx";
import { Svg } from "../parts/svg.tsx";
import { answer, banded } from "../model/desk.ts";
import { linkTo, machine, place } from "../model/place.ts";
import { pathOf, type Place } from "../model/route.ts";
import { checksOf, roomLines } from "../model/rooms.ts";
import { machineName } from "../model/names.ts";

const mark = `<svg width="26" height="14" viewBox="0 0 26 14" aria-hidden="true"><path d="M1 12.2H7L13 2.2 19 12.2H25" class="nf ac" stroke-width="1.8"/><path d="M1 5.2H6M20 5.2H25" class="nf i" stroke-width="1"/></svg>`;

export function Contents(): JSX.Element {
  const said = answer.value;
  const machines = said?.machines.map((m) => m.root) ?? [];
  const root = machine.value ?? machines[0] ?? null;
  const at = machines.indexOf(root ?? "") + 1;
  const verdicts = banded.value?.answer;
  const lines = said && root !== null ? roomLines(said, verdicts ? checksOf(verdicts, root) : []) : [];
  return (
    <nav class="index" aria-label="Contents">
      <a class="mark" href={linkTo({ page: "shop" })}>
        <Svg text={mark} />
        Waywright
      </a>
      <p class="shop">
        <b>{said?.shop ?? "\u00a0"}</b>
        {machine.value === null || at === 0 ? "The shop" : `${machineName(machine.value)}, machine ${at} of ${machines.length}`}
      </p>
      <ul>
        {root === null ? null : (
          <>
            <Line to={{ page: "margins", machine: root }} says="Margins" />
            <Line to={{ page: "compare", machine: root }} says="Compare" />
          </>
        )}
        <Line to={{ page: "files" }} says="Files" />
        <Line to={{ page: "calculator" }} says="Calculator" />
      </ul>
      <hr />
      <ul>
        {root === null
          ? null
          : lines.map((line) => (
              <Line key={line.name} to={{ page: "room", machine: root, room: line.name }} says={line.title}>
                {line.worst === null ? null : <VerdictWord verdict={line.worst} size={11} />}
              </Line>
            ))}
      </ul>
      {lines.length === 0 ? null : <hr />}
      <ul>
        {machines
          .filter((m) => m !== root)
          .map((m) => (
            <Line key={m} to={{ page: "margins", machine: m }} says={machineName(m)} />
          ))}
        <Line to={{ page: "shop" }} says="Shop" />
      </ul>
    </nav>
  );
}

function Line({ to, says, children }: { to: Place; says: string; children?: JSX.Element | null }): JSX.Element {
  const isHere = pathOf(place.value) === pathOf(to);
  return (
    <li class={isHere ? "here" : ""}>
      <a href={linkTo(to)} aria-current={isHere ? "page" : undefined}>
        <span>{says}</span>
        {children}
      </a>
    </li>
  );
}
