// A part that is drawn only when it is opened.
import type { ComponentChildren, JSX } from "preact";
import { useState } from "preact/hooks";

interface FoldProps {
  /** Empty for a fold inside another. */
  readonly title: string;
  /** What is in it, in a few words. */
  readonly note: string;
  readonly isOpen: boolean;
  readonly children: () => ComponentChildren;
}

export function Fold({ title, note, isOpen, children }: FoldProps): JSX.Element {
  const [open, setOpen] = useState(isOpen);
  return (
    <details class={title === "" ? "fold more" : "fold"} open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {title === "" ? null : <h2>{title}</h2>}
        <span class="small q">{note}</span>
      </summary>
      {open ? children() : null}
    </details>
  );
}
