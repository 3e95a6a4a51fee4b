// Rows of the comparison: checks, figures, what it costs. Every number opens its working in its own column's variant.
import type { JSX } from "preact";
import { capital } from "../model/names.ts";
import { marginWord } from "../model/numbers.ts";
import { thingName } from "../model/things.ts";
import { VerdictWord } from "../parts/verdict.tsx";
import type { ColumnReply } from "../worker/comparing.ts";
import { type Column, columnLink } from "./column.ts";
import { type CheckCell, type CheckRow, type FigureRow, isNumber } from "./rows.ts";

export function Section({ title, span, chosen }: { title: string; span: number; chosen: readonly boolean[] }): JSX.Element {
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

export function CheckRows({ title, rows, columns, root }: RowsProps): JSX.Element | null {
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

export function Figures({ row, columns, root }: { row: FigureRow; columns: readonly Column[]; root: string }): JSX.Element {
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

export function Bill({ title, says, columns, of }: BillProps): JSX.Element {
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
