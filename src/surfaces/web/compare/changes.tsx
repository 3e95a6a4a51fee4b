// What keeping an option means: the values it changes, file by file, to be written there once the work on the machine is done.
import type { JSX } from "preact";
import { prettyUnit } from "../../../kernel/display.ts";
import { useAsk } from "../model/asking.ts";
import { linkTo } from "../model/place.ts";
import { Modal } from "../parts/modal.tsx";
import type { Names } from "./columns.ts";

interface ChangesProps {
  readonly root: string;
  readonly names: Names;
  readonly name: string;
  readonly close: () => void;
}

export function ChangesDialog({ root, names, name, close }: ChangesProps): JSX.Element {
  const { reply } = useAsk("changes", { options: names.map((option) => ({ machine: root, name: option })) });
  const files = [...new Set((reply ?? []).map((c) => c.file))];
  return (
    <Modal title={`What “${name}” changes`} close={close}>
      <p>
        An option is kept by carrying it out. Until then it stays a file in <code>{root}/options/</code>, to be laid over at will. Once it
        is done, these values belong into the files below; write them there, and the option is no longer needed.
      </p>
      {reply === null ? <p class="q">…</p> : null}
      {files.map((file) => (
        <table key={file} class="changes">
          <caption>
            <a href={linkTo({ page: "files" }, new Map([["file", file]]))}>{file}</a>
          </caption>
          <thead>
            <tr>
              <th scope="col">value</th>
              <th scope="col">as found</th>
              <th scope="col">then</th>
            </tr>
          </thead>
          <tbody>
            {(reply ?? [])
              .filter((c) => c.file === file)
              .map((c) => (
                <tr key={`${c.option} ${c.path}`}>
                  <th scope="row">{c.path}</th>
                  <td class="q2">{c.from === null ? "not written" : prettyUnit(c.from)}</td>
                  <td>{c.to === null ? "taken away" : prettyUnit(c.to)}</td>
                </tr>
              ))}
          </tbody>
        </table>
      ))}
    </Modal>
  );
}
