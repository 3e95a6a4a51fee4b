// The rooms as a page of their own, for the phone: each with its worst verdict.
import type { JSX } from "preact";
import { VerdictWord } from "../parts/verdict.tsx";
import { Say } from "../parts/say.tsx";
import { answer, banded } from "../model/desk.ts";
import { machineLine, machineName } from "../model/names.ts";
import { linkTo } from "../model/place.ts";
import { checksOf, roomLines } from "../model/rooms.ts";
import { countsOf, verdictSentence } from "../model/sentence.ts";
import { Page } from "../shell/page.tsx";
import "../styles/lists.css";

export function RoomsPage({ machine }: { machine: string }): JSX.Element {
  const said = answer.value;
  const checks = banded.value ? checksOf(banded.value.answer, machine) : [];
  return (
    <Page
      crumb={said ? machineLine(said, machine) : ""}
      title="Rooms"
      sentence={banded.value ? <Say text={verdictSentence(countsOf(checks))} /> : <span class="q">Working it out …</span>}
    >
      <ul class="lines-list">
        {(said ? roomLines(said, checks) : []).map((r) => (
          <li key={r.name}>
            <a href={linkTo({ page: "room", machine, room: r.name })}>
              <span>{r.title}</span>
              {r.worst === null ? <span class="q small">nothing to check yet</span> : <VerdictWord verdict={r.worst} />}
            </a>
          </li>
        ))}
        <li>
          <a href={linkTo({ page: "compare", machine })}>Compare</a>
        </li>
        <li>
          <a href={linkTo({ page: "calculator" })}>Calculator</a>
        </li>
        <li>
          <a href={linkTo({ page: "files" })}>Files</a>
        </li>
        {(said?.machines ?? [])
          .filter((m) => m.root !== machine)
          .map((m) => (
            <li key={m.root}>
              <a href={linkTo({ page: "margins", machine: m.root })}>{machineName(m.root)}</a>
            </li>
          ))}
        <li>
          <a href={linkTo({ page: "shop" })}>Shop</a>
        </li>
      </ul>
    </Page>
  );
}
