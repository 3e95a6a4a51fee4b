// What was changed and not kept: how much, back and forward, and the one way to keep it.
import type { JSX } from "preact";
import { Icon } from "../parts/icon.tsx";
import { edits, trail } from "../model/desk.ts";
import { countOf, redone, undone } from "../model/edits.ts";
import { conflicts } from "../model/keep.ts";
import { isKeepOpen } from "../model/keep-open.ts";
import { counted } from "../model/numbers.ts";
import { KeepDialog } from "./keep-dialog.tsx";

export function KeepBar(): JSX.Element | null {
  const n = countOf(edits.value);
  const met = [...conflicts.value.keys()];
  const { past, future } = trail.value;
  if (n === 0 && met.length === 0 && future.length === 0) return null;
  return (
    <>
      <section class="keep-bar" aria-label="Edits not kept">
        <button
          type="button"
          class="btn square"
          disabled={past.length === 0}
          aria-label="Undo"
          title="Undo (Ctrl Z)"
          onClick={() => (trail.value = undone(trail.value))}
        >
          <Icon name="undo" />
        </button>
        <button
          type="button"
          class="btn square"
          disabled={future.length === 0}
          aria-label="Redo"
          title="Redo (Ctrl Shift Z)"
          onClick={() => (trail.value = redone(trail.value))}
        >
          <Icon name="redo" />
        </button>
        <p role="status">
          {met.length > 0 ? (
            <>
              <b>{met.join(", ")}</b> changed on disk in the same lines
            </>
          ) : (
            <>
              <b>{counted(n, "edit")}</b> not kept
            </>
          )}
        </p>
        <button type="button" class="btn go" disabled={n === 0 && met.length === 0} onClick={() => (isKeepOpen.value = true)}>
          {met.length > 0 ? "Show both" : "Show and keep"}
        </button>
      </section>
      {isKeepOpen.value ? <KeepDialog close={() => (isKeepOpen.value = false)} /> : null}
    </>
  );
}
