// Which options stand beside the machine as found, alone or laid on together.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import type { OptionFile } from "../../../kernel/model/node.ts";
import { isSame, type Names } from "./columns.ts";

interface PickerProps {
  readonly files: readonly OptionFile[];
  readonly columns: readonly Names[];
  /** Whether a room reads anything that the option changes. */
  readonly isRead: (name: string) => boolean;
  readonly flip: (names: Names) => void;
}

export function Picker({ files, columns, isRead, flip }: PickerProps): JSX.Element {
  const [together, setTogether] = useState<Names>([]);
  const isShown = (name: string): boolean => columns.some((c) => isSame(c, [name]));
  const join = (name: string): void => setTogether(together.includes(name) ? together.filter((n) => n !== name) : [...together, name]);
  const isThere = columns.some((c) => isSame(c, together));
  return (
    <>
      <button type="button" class="btn" popovertarget="columns">
        Columns: {columns.length} of {files.length}
      </button>
      <div id="columns" popover="auto" class="pop picker">
        <table>
          <caption>Options of this machine</caption>
          <thead>
            <tr>
              <th scope="col">option</th>
              <th scope="col" class="num">
                cost
              </th>
              <th scope="col">alone</th>
              <th scope="col">together</th>
            </tr>
          </thead>
          <tbody>
            {files.map((f) => (
              <tr key={f.name}>
                <th scope="row">
                  <b>{f.name}</b>
                  <span class="small q2">
                    {f.title}
                    {isRead(f.name) ? "" : " (no room reads yet what it changes)"}
                  </span>
                </th>
                <td class="num small">{[f.cost, f.hours].filter((text) => text !== null).join(", ")}</td>
                <td class="tick">
                  <input type="checkbox" aria-label={`${f.name} as a column`} checked={isShown(f.name)} onChange={() => flip([f.name])} />
                </td>
                <td class="tick">
                  <input
                    type="checkbox"
                    aria-label={`${f.name} together with others`}
                    checked={together.includes(f.name)}
                    onChange={() => join(f.name)}
                  />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
        <p class="acts">
          <button
            type="button"
            class="btn"
            disabled={together.length < 2 || isThere}
            onClick={() => {
              flip(together);
              setTogether([]);
            }}
          >
            Add a column of {together.length < 2 ? "two or more together" : together.join(" + ")}
          </button>
          {isThere && together.length > 1 ? <span class="small q2">This column is there.</span> : null}
        </p>
      </div>
    </>
  );
}
