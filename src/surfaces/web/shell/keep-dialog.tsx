// Shows what keeping would write, line by line, and what somebody else wrote meanwhile; then writes it.
import type { JSX } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { Ticked } from "../parts/ticked.tsx";
import { edits } from "../model/desk.ts";
import { type Conflict, conflicts, type Draft, drafts, type Drafts, dropEdits, keep, settleConflict } from "../model/keep.ts";
import { hunks, linesIn } from "../model/lines.ts";
import { counted } from "../model/numbers.ts";
import "../styles/keep.css";

export function KeepDialog({ close }: { close: () => void }): JSX.Element {
  const dialog = useRef<HTMLDialogElement>(null);
  const [found, setFound] = useState<Drafts | null>(null);
  const [says, setSays] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const now = edits.value;
  const met = conflicts.value;
  useEffect(() => {
    const element = dialog.current;
    element?.showModal();
    return () => element?.close();
  }, []);
  useEffect(() => {
    let isCurrent = true;
    drafts().then(
      (d) => isCurrent && setFound(d),
      (error: unknown) => isCurrent && setSays(error instanceof Error ? error.message : String(error)),
    );
    return () => {
      isCurrent = false;
    };
  }, [now, met]);

  const files = (found?.files ?? []).filter((f) => !met.has(f.path));
  const write = async (): Promise<void> => {
    setBusy(true);
    const done = await keep(
      files,
      (found?.refused ?? []).map((r) => r.address),
    );
    setBusy(false);
    const left = done.filter((f) => f.says !== null);
    if (left.length === 0 && conflicts.value.size === 0) close();
    else setSays(left.map((f) => `${f.path}: ${f.says ?? ""}`).join(" "));
  };
  return (
    <dialog ref={dialog} class="keep" aria-labelledby="keep-title" onClose={close} onCancel={close}>
      <h2 id="keep-title" class="ft">
        {met.size > 0 ? "Changed here and on disk" : "What keeping would write"}
      </h2>
      {[...met.values()].map((c) => (
        <Meeting key={c.path} conflict={c} />
      ))}
      {found === null ? <p class="q">…</p> : null}
      {files.map((f) => (
        <FileChange key={f.path} draft={f} />
      ))}
      {found !== null && files.length === 0 && met.size === 0 ? <p>Nothing would change: the files say all of this already.</p> : null}
      {(found?.refused ?? []).map((r) => (
        <p key={r.address} class="refused">
          <b>{r.address}</b> is not written: <Ticked text={r.says} />
        </p>
      ))}
      <p role="alert" class="refused">
        {says}
      </p>
      <div class="keep-acts">
        <button type="button" class="btn go" disabled={busy || files.length === 0 || met.size > 0} onClick={() => void write()}>
          Keep {counted(files.length, "file")}
        </button>
        <button type="button" class="btn" onClick={close}>
          Not yet
        </button>
        <button
          type="button"
          class="btn quiet"
          onClick={() => {
            dropEdits();
            close();
          }}
        >
          Drop all edits
        </button>
        {met.size > 0 ? <span class="small q2">Say first which lines stand.</span> : null}
      </div>
    </dialog>
  );
}

/** Lines around a change that show where it is. */
const around = 2;

function FileChange({ draft }: { draft: Draft }): JSX.Element {
  const before = linesIn(draft.before ?? "");
  const after = linesIn(draft.after);
  return (
    <section class="change" aria-label={`Change to ${draft.path}`}>
      <h3>
        {draft.path} {draft.before === null ? <span class="q">new</span> : null}
      </h3>
      {hunks(before, after).map((h) => {
        const from = Math.max(0, h.from - around);
        return (
          <ol key={h.from} class="lines" tabIndex={0} aria-label={`from line ${from + 1}`}>
            {before.slice(from, h.from).map((text, i) => (
              <Line key={`a${i}`} no={from + i + 1} text={text} />
            ))}
            {before.slice(h.from, h.to).map((text, i) => (
              <Line key={`-${i}`} no={h.from + i + 1} text={text} mark="−" />
            ))}
            {after.slice(h.newFrom, h.newTo).map((text, i) => (
              <Line key={`+${i}`} no={h.newFrom + i + 1} text={text} mark="+" />
            ))}
            {before.slice(h.to, h.to + around).map((text, i) => (
              <Line key={`b${i}`} no={h.to + i + 1} text={text} />
            ))}
          </ol>
        );
      })}
    </section>
  );
}

function Line({ no, text, mark = "" }: { no: number; text: string; mark?: "" | "+" | "−" }): JSX.Element {
  const kind = mark === "+" ? "new" : mark === "−" ? "old" : "";
  return (
    <li class={kind}>
      <span class="no">{no}</span>
      <span class="mark">{mark === "" ? "" : <span aria-label={mark === "+" ? "new" : "old"}>{mark}</span>}</span>
      <code>{text.replace(/\r?\n$/, "")}</code>
    </li>
  );
}

/** Two texts made from one: of every place where they meet, one is chosen. */
function Meeting({ conflict }: { conflict: Conflict }): JSX.Element {
  const places = conflict.pieces.filter((p) => p.is === "conflict");
  const [chosen, choose] = useState<readonly ("theirs" | "ours" | null)[]>(places.map(() => null));
  const isDone = chosen.every((c) => c !== null);
  return (
    <section class="change" aria-label={`Both changes to ${conflict.path}`}>
      <h3>{conflict.path}</h3>
      <p class="small q2">Somebody changed this file while you did, in the same lines. Your other changes are not touched.</p>
      {places.map((p, i) => (
        <fieldset key={i} class="meeting">
          <legend class="sr">Place {i + 1}</legend>
          {(["theirs", "ours"] as const).map((side) => (
            <label key={side} class={chosen[i] === side ? "on" : ""}>
              <span>
                <input
                  type="radio"
                  name={`${conflict.path}-${i}`}
                  checked={chosen[i] === side}
                  onChange={() => choose(chosen.with(i, side))}
                />{" "}
                {side === "theirs" ? "on disk now" : "yours"}
              </span>
              <span class="lines">
                {p[side].length === 0 ? (
                  <span class="q">these lines are gone</span>
                ) : (
                  p[side].map((text, k) => <code key={k}>{text.replace(/\r?\n$/, "") || " "}</code>)
                )}
              </span>
            </label>
          ))}
        </fieldset>
      ))}
      <button type="button" class="btn" disabled={!isDone} onClick={() => void settleConflict(conflict.path, (n) => chosen[n] ?? "theirs")}>
        Take these lines
      </button>
    </section>
  );
}
