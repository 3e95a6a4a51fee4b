// The comparison itself: what changes in any column, row by row; the chosen column stands between two lines.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import { marginRug } from "../../../pictures/margin-rug.ts";
import { hrefOf } from "../model/route.ts";
import { counted, marginWord } from "../model/numbers.ts";
import { route } from "../model/place.ts";
import { capital } from "../model/names.ts";
import { thingName } from "../model/things.ts";
import { Icon } from "../parts/icon.tsx";
import { Svg } from "../parts/svg.tsx";
import { VerdictWord } from "../parts/verdict.tsx";
import type { ColumnReply } from "../worker/comparing.ts";
import { type Column, isMine, type Names } from "./columns.ts";
import { ChangesDialog } from "./changes.tsx";
import { type CheckCell, type CheckRow, checkRows, type FigureRow, figureRows, isNumber } from "./rows.ts";
import { useLive } from "./live.ts";

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

/** The address of a column, with the working of something in it or without. */
function columnLink(root: string, { names, isTried }: Column, working: string | null): string {
  const own = new Map(route.value.own);
  if (isTried) own.set("at", "tried");
  else own.delete("at");
  return hrefOf({ ...route.value, own, options: names.map((name) => `${root}/${name}`), working });
}

const faceWidth = 98; // px

function Head({ root, column, drop }: { root: string; column: Column; drop: (names: Names) => void }): JSX.Element {
  const { reply, isChosen, name, names, title, isTried } = column;
  return (
    <th scope="col" class={isChosen ? "chosen" : ""}>
      <a href={columnLink(root, column, null)} class="name" aria-current={isChosen ? "true" : undefined}>
        {name}
      </a>
      {names.length > 1 && !isTried ? (
        <button type="button" class="x" aria-label={`Take the column ${name} away`} onClick={() => drop(names)}>
          <Icon name="close" size={12} />
        </button>
      ) : null}
      <span class="title small q2">{title}</span>
      {reply?.mistakes.map((says) => (
        <span class="title small wrong" key={says}>
          {says}
        </span>
      ))}
    </th>
  );
}

/** All margins of a column in one small picture. */
function Face({ root, column: { reply, isChosen } }: { root: string; column: Column }): JSX.Element {
  const marks = (reply?.checks ?? []).flatMap(({ address, now }) => {
    const nominal = now?.margin.nominal;
    return isMine(address, root) && now && !now.yesNo && typeof nominal === "number" ? [{ verdict: now.verdict, nominal }] : [];
  });
  return (
    <td class={`face${isChosen ? " chosen" : ""}`}>
      {reply === null ? <span class="small q">worked out …</span> : <Svg text={marginRug(marks, faceWidth)} />}
    </td>
  );
}

function Section({ title, span, chosen }: { title: string; span: number; chosen: readonly boolean[] }): JSX.Element {
  return (
    <tr class="section">
      <th scope="rowgroup">{title}</th>
      {Array.from({ length: span }, (_, i) => (
        <td key={i} class={chosen[i] ? "chosen" : ""} />
      ))}
    </tr>
  );
}

interface RowsProps {
  readonly title: string;
  readonly rows: readonly CheckRow[];
  readonly columns: readonly Column[];
  readonly root: string;
}

function CheckRows({ title, rows, columns, root }: RowsProps): JSX.Element | null {
  if (rows.length === 0) return null;
  return (
    <tbody>
      <Section title={title} span={columns.length} chosen={columns.map((c) => c.isChosen)} />
      {rows.map((row) => {
        const thing = thingName(row.item);
        return (
          <tr key={row.address}>
            <th scope="row">
              {row.asks} <span class="q">{thing}</span>
            </th>
            {columns.map((column, i) => (
              <td key={column.key} class={cellClass(column)}>
                <Check
                  cell={i === 0 ? { outcome: row.found, isChanged: true, betterIn: null } : (row.cells[i - 1] ?? null)}
                  href={columnLink(root, column, row.address)}
                />
              </td>
            ))}
          </tr>
        );
      })}
    </tbody>
  );
}

const cellClass = (c: Column): string => [c.isChosen ? "chosen" : "", c.isStale ? "stale" : ""].filter((word) => word !== "").join(" ");

function Check({ cell, href }: { cell: CheckCell | null; href: string }): JSX.Element {
  if (cell === null) return <span class="q">…</span>;
  const { outcome, isChanged, betterIn } = cell;
  if (outcome === null) return <span class="q small">not asked</span>;
  return (
    <>
      <a href={href} class={`number outcome${isChanged ? "" : " same"}`} data-opens="working">
        <span class="m">{marginWord(outcome)}</span>
        <VerdictWord verdict={outcome.verdict} />
      </a>
      {betterIn === null || outcome.yesNo ? null : <Paired share={betterIn} />}
    </>
  );
}

/** Which imagined shops are better off: the same thousand in every column. */
function Paired({ share }: { share: number }): JSX.Element {
  return (
    <span class="paired small q" title={`better than as found in ${share} of 100 imagined shops`}>
      {share} of 100 better
    </span>
  );
}

function Figures({ row, columns, root }: { row: FigureRow; columns: readonly Column[]; root: string }): JSX.Element {
  const thing = thingName(row.address.replace(/\.[^./]*$/, ""));
  return (
    <tr>
      <th scope="row">
        {capital(row.says)}
        <span class="unit small q">{[row.unit, thing].filter((text) => text !== "").join(", ")}</span>
      </th>
      {columns.map((column, i) => {
        const text = i === 0 ? row.found : row.cells[i - 1];
        return (
          <td key={column.key} class={cellClass(column)}>
            {text === undefined ? (
              <span class="q">…</span>
            ) : (
              <a href={columnLink(root, column, row.address)} class={`number${text === null ? " same" : ""}`} data-opens="working">
                <Words text={text ?? row.found} />
              </a>
            )}
          </td>
        );
      })}
    </tr>
  );
}

/** Of a figure that has no value its working says why. */
function Words({ text }: { text: string }): JSX.Element {
  return isNumber(text) || text.length <= 8 ? <>{text}</> : <span title={text}>no value</span>;
}

interface BillProps {
  readonly title: string;
  readonly says: string;
  readonly columns: readonly Column[];
  readonly of: (reply: ColumnReply) => string | null;
}

function Bill({ title, says, columns, of }: BillProps): JSX.Element {
  return (
    <tr class="bill">
      <th scope="row">
        {title} <span class="q">{says}</span>
      </th>
      {columns.map((column) => (
        <td key={column.key} class={cellClass(column)}>
          {column.reply === null ? (
            <span class="q">…</span>
          ) : (
            (of(column.reply) ?? <span class="q">{column.names.length === 0 ? "–" : "not said"}</span>)
          )}
        </td>
      ))}
    </tr>
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
