// The files of the shop by folder; which are typed into, and in which something is wrong.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import type { Finding } from "../../../kernel/finding.ts";
import { roleOf } from "../../../kernel/model/role.ts";
import { edits, texts, trail } from "../model/desk.ts";
import { textTyped } from "../model/edits.ts";
import { counted } from "../model/numbers.ts";
import { go, linkTo, route } from "../model/place.ts";
import { Modal } from "../parts/modal.tsx";
import { type Folder, treeOf } from "./tree.ts";

interface TreeProps {
  readonly paths: readonly string[];
  readonly chosen: string | null;
  readonly findings: readonly Finding[];
}

export function FileTree({ paths, chosen, findings }: TreeProps): JSX.Element {
  const [isNaming, setNaming] = useState(false);
  const mistakes = new Map<string, number>();
  for (const f of findings) if (f.severity === "error") mistakes.set(f.place.file, (mistakes.get(f.place.file) ?? 0) + 1);
  return (
    <nav class="file-tree" aria-label="Files of the shop">
      <label class="narrow">
        <span class="sr">File</span>
        <select value={chosen ?? ""} onChange={(event) => go({ ...route.value, own: new Map([["file", event.currentTarget.value]]) })}>
          {paths.toSorted().map((path) => (
            <option key={path} value={path}>
              {path}
            </option>
          ))}
        </select>
      </label>
      <Files folder={treeOf(paths)} chosen={chosen} mistakes={mistakes} />
      <p class="acts">
        <button type="button" class="btn" onClick={() => setNaming(true)}>
          New file …
        </button>
      </p>
      {isNaming ? <NewFile close={() => setNaming(false)} /> : null}
    </nav>
  );
}

function Files({
  folder,
  chosen,
  mistakes,
}: {
  folder: Folder;
  chosen: string | null;
  mistakes: ReadonlyMap<string, number>;
}): JSX.Element {
  return (
    <ul>
      {folder.files.map(({ path, name }) => {
        const wrong = mistakes.get(path) ?? 0;
        return (
          <li key={path}>
            <a href={linkTo({ page: "files" }, new Map([["file", path]]))} aria-current={path === chosen ? "page" : undefined}>
              <span>{name}</span>
              {wrong > 0 ? <span class="wrong small">{counted(wrong, "mistake")}</span> : null}
              {edits.value.texts.has(path) ? <span class="small q2">typed</span> : null}
            </a>
          </li>
        );
      })}
      {folder.folders.map((child) => (
        <li key={child.path}>
          <details open>
            <summary>{child.name}/</summary>
            <Files folder={child} chosen={chosen} mistakes={mistakes} />
          </details>
        </li>
      ))}
    </ul>
  );
}

/** A file begins as a text that is not on disk yet: it comes there by being kept, as every edit does. */
function NewFile({ close }: { close: () => void }): JSX.Element {
  const [path, setPath] = useState("");
  const [isSent, setSent] = useState(false);
  const refused = texts.value.has(path)
    ? "There is such a file already."
    : roleOf(path) === null
      ? "No room reads a file of that name."
      : null;
  const send = (event: SubmitEvent): void => {
    event.preventDefault();
    setSent(true);
    if (refused !== null) return;
    trail.value = textTyped(trail.value, path, "");
    close();
    go({ ...route.value, own: new Map([["file", path]]) });
  };
  return (
    <Modal title="New file" close={close}>
      <form class="new-file" onSubmit={send} noValidate>
        <label>
          <span>Path from the shop folder</span>
          <input
            type="text"
            class={`entry${isSent && refused !== null ? " bad" : ""}`}
            value={path}
            placeholder="lathe/work/bracket.yaml"
            spellcheck={false}
            aria-describedby="new-file-says"
            onInput={(event) => setPath(event.currentTarget.value.trim())}
          />
        </label>
        <p
          id="new-file-says"
          class={`small ${isSent && refused !== null ? "wrong" : "q2"}`}
          role={isSent && refused !== null ? "alert" : undefined}
        >
          {isSent && refused !== null
            ? refused
            : "shop.yaml, catalogue/NAME.yaml, MACHINE/machine.yaml, or a file in MACHINE/work, options, records, sequences"}
        </p>
        <p class="acts">
          <button type="submit" class="btn go">
            Begin it
          </button>
          <button type="button" class="btn quiet" onClick={close}>
            Not now
          </button>
        </p>
      </form>
    </Modal>
  );
}
