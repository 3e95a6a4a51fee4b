// The comparison itself: what changes in any column, row by row; the chosen column stands between two lines.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { counted } from "../model/numbers.ts";
import { thingName } from "../model/things.ts";
import { VerdictWord } from "../parts/verdict.tsx";
import { ChangesDialog } from "./changes.tsx";
import type { Column } from "./column.ts";
import { Face, Head } from "./column-head.tsx";
import { isMine, type Names } from "./columns.ts";
import { useLive } from "./live.ts";
import { type CheckRow, checkRows, figureRows } from "./rows.ts";
import { Bill, CheckRows, Figures, Section } from "./table-rows.tsx";

interface ComparisonProps {
  readonly root: string;
  readonly columns: readonly Column[];
  readonly drop: (names: Names) => void;
}

/** As many figures are shown before one asks for all. */
const mostFigures = 10;

export function Comparison({ root, columns: given, drop }: ComparisonProps): JSX.Element {
  const columns = useLive(given);
  const [all, setAll] = useState(false);
  const [found, ...beside] = columns;
  if (!found?.reply) return <p class="q waits">The machine as found is being worked out.</p>;
  const replies = beside.map((c) => c.reply);
  const checks = checkRows(found.reply, replies).filter((r) => isMine(r.address, root));
  const [verdicts, margins, same] = (["verdict", "margin", "nothing"] as const).map((kind) => checks.filter((r) => r.changes === kind));
  const figures = figureRows(replies).filter((r) => isMine(r.address, root));
  const shown = all ? figures : figures.slice(0, mostFigures);
  const isDone = replies.every((r) => r !== null);
  return (
    <>
      <div class="scroll" tabIndex={0} role="region" aria-label="Options side by side, scrolls sideways">
        <table class="sbs">
          <caption class="sr">What each column changes. The chosen column is looked at on every page.</caption>
          <colgroup>
            <col class="first" />
            {columns.map((c) => (
              <col key={c.key} class="other" />
            ))}
          </colgroup>
          <thead>
            <tr>
              <td class="corner" />
              {columns.map((c) => (
                <Head key={c.key} root={root} column={c} drop={drop} />
              ))}
            </tr>
            <tr>
              <td class="corner small q">margins on one scale, the line at 1</td>
              {columns.map((c) => (
                <Face key={c.key} root={root} column={c} />
              ))}
            </tr>
          </thead>
          <CheckRows title="Verdicts that change" rows={verdicts ?? []} columns={columns} root={root} />
          <CheckRows title="Margins that change" rows={margins ?? []} columns={columns} root={root} />
          {shown.length === 0 ? null : (
            <tbody>
              <Section title="Figures that change most" span={columns.length} chosen={columns.map((c) => c.isChosen)} />
              {shown.map((row) => (
                <Figures key={row.address} row={row} columns={columns} root={root} />
              ))}
            </tbody>
          )}
          <tbody>
            <Bill title="Cost" says="one time" columns={columns} of={(r) => r.cost} />
            <Bill title="Own work" says="hours" columns={columns} of={(r) => r.hours} />
          </tbody>
        </table>
      </div>
      {figures.length > mostFigures ? (
        <p class="more">
          <button type="button" class="link" onClick={() => setAll(!all)} aria-expanded={all}>
            {all ? `Only the ${mostFigures} figures that change most` : `All ${counted(figures.length, "figure")} that change`}
          </button>
        </p>
      ) : null}
      {isDone && verdicts?.length === 0 && margins?.length === 0 && beside.length > 0 ? (
        <p class="q2">No verdict and no margin changes.</p>
      ) : null}
      <Same rows={same ?? []} />
      <Chosen root={root} column={columns.find((c) => c.isChosen)} />
    </>
  );
}

/** What stays, summed up. */
function Same({ rows }: { rows: readonly CheckRow[] }): JSX.Element | null {
  if (rows.length === 0) return null;
  return (
    <details class="same-rows">
      <summary class="q">
        {counted(rows.length, "check")} {rows.length === 1 ? "stays" : "stay"} as found in every column
      </summary>
      <ul>
        {rows.map((r) => (
          <li key={r.address} class="q">
            {r.found ? <VerdictWord verdict={r.found.verdict} size={12} /> : null} {r.asks} <span class="small">{thingName(r.item)}</span>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** Keeping an option is work on the machine: what is written afterwards is told, not done. */
function Chosen({ root, column }: { root: string; column: Column | undefined }): JSX.Element | null {
  const [isOpen, setOpen] = useState(false);
  if (!column || column.isTried || column.names.length === 0)
    return <p class="keep small q2">Choose a column to look at the machine with it. Nothing is written.</p>;
  return (
    <p class="keep">
      <button type="button" class="btn go" onClick={() => setOpen(true)}>
        Keep “{column.name}”
      </button>
      <span class="small q2">says which files would change; nothing is written</span>
      {isOpen ? <ChangesDialog root={root} names={column.names} name={column.name} close={() => setOpen(false)} /> : null}
    </p>
  );
}
