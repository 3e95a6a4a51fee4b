// Margins, where a machine opens: every check on one scale, sorted by the low end of its band, beside the machine drawing.
import type { JSX } from "preact";
import { useEffect } from "preact/hooks";
import type { Verdict } from "../../../kernel/verdict.ts";
import { CheckList } from "../parts/checks.tsx";
import { MachineDrawing } from "../parts/drawing.tsx";
import { MeasureNext } from "../parts/measure.tsx";
import { Say } from "../parts/say.tsx";
import { VerdictWord } from "../parts/verdict.tsx";
import { answer, banded, household, isStale, nominal } from "../model/desk.ts";
import { machineLine } from "../model/names.ts";
import { nextOf } from "../model/next.ts";
import { linkTo, route, setOwn } from "../model/place.ts";
import { checksOf, roomLines, titleOfRoom } from "../model/rooms.ts";
import { countsOf, marginsSentence } from "../model/sentence.ts";
import { rowsOf } from "../model/shown.ts";
import { areTrialsDone, optionTrials, wantTrials } from "../model/trials.ts";
import { Page } from "../shell/page.tsx";
import { LostPage } from "./lost.tsx";
import "../styles/margins.css";

const verdicts: readonly Verdict[] = ["fails", "open", "tight", "holds"];

export function MarginsPage({ machine }: { machine: string }): JSX.Element {
  useEffect(() => wantTrials(), [machine]);
  const said = answer.value;
  if (said && !said.machines.some((m) => m.root === machine)) return <LostPage />;
  const isMine = (root: string): boolean => root === machine || root === "shop";
  const rows = rowsOf(nominal.value?.answer ?? null, banded.value?.answer ?? null, !isStale.value).filter((r) => isMine(r.check.root));
  const verdict = route.value.own.get("verdict");
  const room = route.value.own.get("room");
  const shown = rows.filter((r) => (verdict === undefined || r.check.verdict === verdict) && (room === undefined || r.check.room === room));
  return (
    <Page crumb={said ? machineLine(said, machine) : ""} title="Margins" sentence={<Sentence machine={machine} />} class="margins">
      <section aria-label="Checks">
        <Filters machine={machine} />
        <CheckList
          rows={shown}
          roomOf={(name) => (said ? titleOfRoom(said, name).toLowerCase() : name)}
          head={
            <>
              <span class="hv">verdict</span>
              <span class="nm">demand against capacity</span>
            </>
          }
        />
        {rows.length > 0 && shown.length === 0 ? <p class="empty">No check is of this kind. Take a filter off.</p> : null}
        <p class="read small q">
          Shape: nominal margin. Bar: where it may lie, hatched where it falls short of 1.{" "}
          <svg width="8" height="8" role="img" aria-label="Caret" class="caret">
            <path d="M.8 7.4H7.2L4 1Z" class="fi2" />
          </svg>{" "}
          Reserve asked for. Sorted by the low end.
        </p>
      </section>
      <div class="side">
        <MachineDrawing root={machine} />
        {said ? (
          <MeasureNext
            list={nextOf((banded.value ?? { answer: said }).answer, household.value, machine)}
            most={6}
            all={linkTo({ page: "next", machine })}
          />
        ) : null}
      </div>
    </Page>
  );
}

function Sentence({ machine }: { machine: string }): JSX.Element {
  const said = banded.value?.answer;
  if (!said) return <span class="q">Working out the margins …</span>;
  const checks = checksOf(said, machine);
  const failing = checks.filter((c) => c.verdict === "fails").map((c) => c.address);
  const cures = areTrialsDone.value
    ? [...optionTrials.value].map(([name, outcomes]) => ({
        name: name.split("/").at(-1) ?? name,
        cures: failing.filter((address) => ["holds", "tight"].includes(outcomes[address]?.verdict ?? "")).length,
      }))
    : null;
  return <Say text={marginsSentence({ checks, cures, measureNext: nextOf(said, household.value, machine) })} />;
}

/** Verdicts and rooms to look at alone. Chosen ones stand in the address. */
function Filters({ machine }: { machine: string }): JSX.Element {
  const said = banded.value?.answer;
  const checks = said ? checksOf(said, machine) : [];
  const counts = countsOf(checks);
  const chosen = route.value.own.get("verdict");
  const room = route.value.own.get("room") ?? "";
  return (
    <div class="filters">
      <div class="chips" role="group" aria-label="Show one verdict">
        {verdicts.map((v) => (
          <button key={v} type="button" aria-pressed={chosen === v} onClick={() => setOwn("verdict", chosen === v ? null : v)}>
            <VerdictWord verdict={v} /> {said ? counts[v] : "–"}
          </button>
        ))}
      </div>
      <label class="of-room">
        <span class="sr">Room</span>
        <select value={room} onChange={(event) => setOwn("room", event.currentTarget.value)}>
          <option value="">all rooms</option>
          {said
            ? roomLines(said, checks).map((r) => (
                <option key={r.name} value={r.name}>
                  {r.title.toLowerCase()}
                </option>
              ))
            : null}
        </select>
      </label>
    </div>
  );
}
