// All figures of a room, by thing: symbol, what it is, value, band.
import type { JSX } from "preact";
import { useState } from "preact/hooks";
import type { FigureAnswer } from "../../../kernel/answer.ts";
import { isStale } from "../model/desk.ts";
import { capital } from "../model/names.ts";
import { counted } from "../model/numbers.ts";
import { thingName } from "../model/things.ts";
import { bandWords } from "./amount-words.ts";
import { WorkingLink } from "./amount.tsx";
import { Symbol_ } from "./symbol.tsx";

export function Figures({ figures }: { figures: readonly FigureAnswer[] }): JSX.Element | null {
  const byItem = new Map<string, FigureAnswer[]>();
  for (const f of figures) byItem.set(f.item, [...(byItem.get(f.item) ?? []), f]);
  if (byItem.size === 0) return null;
  return (
    <section class="figures" aria-labelledby="figures">
      <h2 id="figures">Figures</h2>
      {[...byItem].map(([item, list]) => (
        <ItemFigures key={item} item={item} figures={list} />
      ))}
    </section>
  );
}

function ItemFigures({ item, figures }: { item: string; figures: readonly FigureAnswer[] }): JSX.Element {
  const [open, setOpen] = useState(false);
  const name = thingName(item);
  return (
    <details class="fold" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <h3>{capital(name === "" ? item : name)}</h3>
        <span class="small q">{counted(figures.length, "figure")}</span>
      </summary>
      {open ? (
        <table class={isStale.value ? "fig stale" : "fig"}>
          <caption class="sr">Figures of {name}</caption>
          <tbody>
            {figures.map((f) => (
              <tr key={f.address}>
                <th scope="row">
                  <Symbol_ text={f.symbol} />
                </th>
                <td>{f.says}</td>
                <td class="num">
                  <WorkingLink address={f.address} text={f.amount.text} />
                </td>
                <td class="bd">{bandWords(f.amount)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
    </details>
  );
}
