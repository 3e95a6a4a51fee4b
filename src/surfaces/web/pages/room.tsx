// A room of a machine: what is known of it at the left, what follows from it in pictures, checks and figures.
import type { JSX } from "preact";
import { useEffect } from "preact/hooks";
import { CheckList } from "../parts/checks.tsx";
import { Fields } from "../parts/fields.tsx";
import { Fold } from "../parts/fold.tsx";
import { Figures } from "../parts/figures.tsx";
import { Notices } from "../parts/notices.tsx";
import { Picture } from "../parts/picture.tsx";
import { Remedies } from "../parts/remedies.tsx";
import { Say } from "../parts/say.tsx";
import { RoomSteps } from "../parts/steps.tsx";
import { useAsk } from "../model/asking.ts";
import { answer, banded, isStale, nominal } from "../model/desk.ts";
import { machineName, variantWords } from "../model/names.ts";
import { counted } from "../model/numbers.ts";
import { route } from "../model/place.ts";
import { titleOfRoom } from "../model/rooms.ts";
import { countsOf, verdictSentence } from "../model/sentence.ts";
import { rowsOf } from "../model/shown.ts";
import { wantTrials } from "../model/trials.ts";
import { Page } from "../shell/page.tsx";
import type { PictureHead } from "../worker/pictures.ts";
import { partsOf } from "../worker/view.ts";
import { LostPage } from "./lost.tsx";
import "../styles/margins.css";
import "../styles/room.css";

export function RoomPage({ machine, room }: { machine: string; room: string }): JSX.Element {
  useEffect(() => wantTrials(), [machine, room]);
  const of = { machine, room };
  const groups = useAsk("fields", of);
  const pictures = useAsk("pictures", of);
  const said = answer.value;
  if (said && !(said.rooms.some((r) => r.name === room) && said.machines.some((m) => m.root === machine))) return <LostPage />;
  const isMine = (c: { readonly room: string; readonly root: string }): boolean =>
    c.room === room && (c.root === machine || c.root === "shop");
  const rows = rowsOf(nominal.value?.answer ?? null, banded.value?.answer ?? null, !isStale.value).filter((r) => isMine(r.check));
  const crumb = said ? `${machineName(machine)} · ${variantWords(route.value.options)}` : "";
  return (
    <Page crumb={crumb} title={said ? titleOfRoom(said, room) : ""} class="room">
      <form class="inputs" aria-label="Inputs" onSubmit={(event) => event.preventDefault()}>
        {groups.reply === null ? <p class="q">…</p> : <Fields groups={groups.reply} lit={route.value.own.get("field") ?? null} />}
      </form>
      <div class="mid-col">
        <p class="say">
          <RoomSentence machine={machine} room={room} />
        </p>
        {said ? <Notices notices={said.notices.filter(isMine)} /> : null}
        <Pictures heads={pictures.reply ?? []} room={room} />
        <section aria-label="Checks" class="room-checks">
          <CheckList
            rows={rows}
            head={
              <>
                <h2 class="hv">Checks</h2>
                <span class="nm">{rows.length === 0 ? "" : `${counted(rows.length, "check")}, worst first`}</span>
              </>
            }
            below={({ check, isNew }) => (isNew || check.verdict === "holds" ? null : <Remedies check={check} most={3} />)}
          />
        </section>
        <RoomSteps machine={machine} room={room} />
        {said ? (
          <Figures
            figures={Object.values(said.figures).filter(
              (f) => f.room === room && (f.item.startsWith(`${machine}/`) || f.item === machine || f.item === "shop"),
            )}
          />
        ) : null}
      </div>
    </Page>
  );
}

/** Those of the room's own things; those of other things when they are wanted. */
function Pictures({ heads, room }: { heads: readonly PictureHead[]; room: string }): JSX.Element {
  const isOwn = ({ item }: PictureHead): boolean => {
    const { path } = partsOf(item);
    return path === "" || path === room || path.startsWith(`${room}.`);
  };
  const own = heads.filter(isOwn);
  const others = heads.filter((h) => !isOwn(h));
  const draw = (list: readonly PictureHead[]): JSX.Element[] =>
    list.map((head) => <Picture key={`${head.id} ${head.item}`} head={head} isOne={list.filter((p) => p.id === head.id).length === 1} />);
  return (
    <>
      {draw(own)}
      {others.length === 0 ? null : (
        <Fold title="Pictures of other things" note={counted(others.length, "picture")} isOpen={false}>
          {() => draw(others)}
        </Fold>
      )}
    </>
  );
}

function RoomSentence({ machine, room }: { machine: string; room: string }): JSX.Element {
  const said = banded.value?.answer;
  if (!said) return <span class="q">Working it out …</span>;
  const asks = said.rooms.find((r) => r.name === room)?.answers ?? "";
  const counts = countsOf(said.checks.filter((c) => c.room === room && (c.root === machine || c.root === "shop")));
  return (
    <>
      <Say text={verdictSentence(counts)} /> <span class="q asks">{asks}</span>
    </>
  );
}
