// Values that were tried out become a file in options/, by the same way as every other edit: shown first, then kept.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { trail } from "../model/desk.ts";
import { textTyped } from "../model/edits.ts";
import { askToKeep } from "../model/keep-open.ts";
import { Modal } from "../parts/modal.tsx";
import type { Names } from "./columns.ts";
import { optionFile, optionText, refusedName } from "./option-text.ts";
import { triesOf } from "./tried.ts";
import type { TriedValue } from "./tried-address.ts";

interface KeepProps {
  readonly root: string;
  readonly needs: Names;
  readonly values: readonly TriedValue[];
  readonly taken: ReadonlySet<string>;
  readonly close: () => void;
}

export function KeepOption({ root, needs, values, taken, close }: KeepProps): JSX.Element {
  const [words, setWords] = useState({ name: "", title: "", cost: "", hours: "" });
  const [isSent, setSent] = useState(false);
  const refused = refusedName(words.name, root, taken);
  const text = optionText({ machine: root, ...words, needs, values: triesOf(values) });
  const send = (event: SubmitEvent): void => {
    event.preventDefault();
    setSent(true);
    if (refused !== null) return;
    trail.value = textTyped(trail.value, optionFile(root, words.name), text);
    close();
    askToKeep();
  };
  const field = (key: keyof typeof words, says: string, hint: string): JSX.Element => (
    <label>
      <span>{says}</span>
      <input
        type="text"
        class={`entry${key === "name" && isSent && refused !== null ? " bad" : ""}`}
        value={words[key]}
        placeholder={hint}
        aria-describedby={key === "name" ? "option-name" : undefined}
        onInput={(event) => setWords({ ...words, [key]: event.currentTarget.value })}
      />
      {key === "name" ? (
        <span
          id="option-name"
          class={`small ${isSent && refused !== null ? "wrong" : "q2"}`}
          role={isSent && refused !== null ? "alert" : undefined}
        >
          {isSent && refused !== null ? refused : `${root}/options/${words.name === "" ? "NAME" : words.name}.yaml`}
        </span>
      ) : null}
    </label>
  );
  return (
    <Modal title="Keep as an option" close={close}>
      <form class="new-option" onSubmit={send} noValidate>
        {field("name", "Name", "longer-run")}
        {field("title", "What would be done", "one line")}
        {field("cost", "Cost", "120 USD")}
        {field("hours", "Own work", "3 h")}
        <pre class="small">{text}</pre>
        <p class="acts">
          <button type="submit" class="btn go">
            Show and keep
          </button>
          <button type="button" class="btn quiet" onClick={close}>
            Not now
          </button>
        </p>
      </form>
    </Modal>
  );
}
