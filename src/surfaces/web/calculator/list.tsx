// Every figure of every room, found by a few letters; each is a link that holds it.
import type { JSX } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { found } from "../model/match.ts";
import { counted } from "../model/numbers.ts";
import { Symbol_ } from "../parts/symbol.tsx";
import type { FigureHead } from "../worker/working-out.ts";
import { figureLink } from "./typed.ts";
import "../styles/entry.css";

export function FigureList({ figures, chosen }: { figures: readonly FigureHead[]; chosen: string | null }): JSX.Element {
  const [query, setQuery] = useState("");
  const list = useRef<HTMLDivElement>(null);
  // The one that a link chose may stand far down.
  useEffect(() => list.current?.querySelector("[aria-current]")?.scrollIntoView({ block: "nearest" }), []);
  const shown = found(query, figures, figures.length);
  const rooms = [...new Set(shown.map((f) => f.room))];
  /** Arrows walk the links, as in any list that a search narrows. */
  const walk = (event: KeyboardEvent): void => {
    const by = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0;
    if (by === 0) return;
    event.preventDefault();
    const links = [...(list.current?.querySelectorAll<HTMLAnchorElement>("a") ?? [])];
    const at = links.findIndex((link) => link === document.activeElement);
    links[Math.min(Math.max(0, at + by), links.length - 1)]?.focus();
  };
  return (
    <div class={query === "" ? "figure-list" : "figure-list searching"} onKeyDown={walk}>
      <input
        type="search"
        class="entry"
        aria-label="Find a figure by its words, its id or its symbol"
        placeholder="Find a figure"
        autocomplete="off"
        spellcheck={false}
        value={query}
        onInput={(event) => setQuery(event.currentTarget.value)}
      />
      <p class="small q" role="status">
        {query === "" ? counted(figures.length, "figure") : `${shown.length} of ${counted(figures.length, "figure")}`}
      </p>
      <div class="hits" ref={list} tabIndex={-1}>
        {rooms.map((room) => (
          <section key={room} aria-label={room}>
            <h2>{room}</h2>
            <ul>
              {shown
                .filter((f) => f.room === room)
                .map((f) => (
                  <li key={f.id}>
                    <a href={figureLink(f.id)} aria-current={f.id === chosen ? "true" : undefined}>
                      <span class="s">
                        <Symbol_ text={f.symbol} />
                      </span>
                      <span>{f.says}</span>
                    </a>
                  </li>
                ))}
            </ul>
          </section>
        ))}
        {shown.length === 0 ? <p class="q2">No figure has these words. Try fewer, or part of one.</p> : null}
      </div>
    </div>
  );
}
