// Find: every check, figure, input and step by its words; arrows choose, Enter opens.
import type { JSX, TargetedKeyboardEvent } from "preact";
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import { prettyUnit } from "../../../kernel/display.ts";
import { answer, household } from "../model/desk.ts";
import { isFindOpen } from "../model/find-open.ts";
import { machineName } from "../model/names.ts";
import { linkTo, machine, openWorking, place, route } from "../model/place.ts";
import { go } from "../model/place.ts";
import { routeOf } from "../model/route.ts";
import { found, type Hit, hitsOf, type PlaceName } from "../model/search.ts";
import { stepLink } from "../drawer/measure-box.tsx";
import "../styles/find.css";

export function Finder(): JSX.Element | null {
  return isFindOpen.value ? <Open /> : null;
}

function Open(): JSX.Element {
  const dialog = useRef<HTMLDialogElement>(null);
  const list = useRef<HTMLUListElement>(null);
  const [typed, setTyped] = useState("");
  const [at, setAt] = useState(0);
  const said = answer.value;
  const hits = useMemo(() => (said ? hitsOf(said, household.value, placesOf(), machine.value) : []), [said, household.value]);
  const shown = found(hits, typed);
  const close = (): void => {
    isFindOpen.value = false;
  };
  useEffect(() => {
    const element = dialog.current;
    element?.showModal();
    return () => element?.close();
  }, []);
  useEffect(() => {
    list.current?.children[at]?.scrollIntoView({ block: "nearest" });
  }, [at]);
  const take = (hit: Hit | undefined): void => {
    if (!hit) return;
    close();
    // The dialog gives the focus back to what had it; what was found takes it after that.
    queueMicrotask(() => openHit(hit));
  };
  const keys = (event: TargetedKeyboardEvent<HTMLInputElement>): void => {
    const by = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0;
    if (event.key === "Enter") {
      event.preventDefault();
      take(shown[at]);
    }
    if (by === 0) return;
    event.preventDefault();
    setAt((i) => Math.min(Math.max(0, i + by), Math.max(0, shown.length - 1)));
  };
  return (
    <dialog
      ref={dialog}
      class="finder"
      aria-label="Find"
      onClose={close}
      onCancel={close}
      onClick={(event) => event.target === dialog.current && close()}
    >
      <input
        type="text"
        role="combobox"
        aria-label="Find a figure, check, input or step"
        aria-expanded="true"
        aria-controls="found"
        aria-autocomplete="list"
        aria-activedescendant={shown.length > 0 ? `found-${at}` : undefined}
        placeholder="Find figure, check, step"
        autocomplete="off"
        spellcheck={false}
        value={typed}
        onInput={(event) => {
          setTyped(event.currentTarget.value);
          setAt(0);
        }}
        onKeyDown={keys}
      />
      <ul id="found" role="listbox" aria-label="Found" ref={list}>
        {shown.map((h, i) => (
          <li
            key={`${h.is} ${"working" in h.opens ? h.opens.working : h.says}`}
            id={`found-${i}`}
            role="option"
            aria-selected={i === at}
            onClick={() => take(h)}
          >
            <span class="is q small">{h.is === "place" ? "" : h.is}</span>
            <span>
              {h.says} <span class="q">{h.of}</span>
            </span>
            <span class="now q2">{prettyUnit(h.now)}</span>
          </li>
        ))}
      </ul>
      {shown.length === 0 ? <p class="q nothing">Nothing has these words. Try fewer, or part of one.</p> : null}
    </dialog>
  );
}

function placesOf(): PlaceName[] {
  const said = answer.value;
  const machines = said?.machines ?? [];
  return [
    { says: "Shop", href: linkTo({ page: "shop" }) },
    ...machines.flatMap(({ root }) => [
      { says: `${machineName(root)}: margins`, href: linkTo({ page: "margins", machine: root }) },
      ...(said?.rooms ?? []).map((r) => ({
        says: `${machineName(root)}: ${r.title.toLowerCase()}`,
        href: linkTo({ page: "room", machine: root, room: r.name }),
      })),
      { says: `${machineName(root)}: compare`, href: linkTo({ page: "compare", machine: root }) },
      { says: `${machineName(root)}: next step`, href: linkTo({ page: "next", machine: root }) },
    ]),
    { says: "Files", href: linkTo({ page: "files" }) },
    { says: "Calculator", href: linkTo({ page: "calculator" }) },
  ];
}

function openHit({ opens }: Hit): void {
  if ("working" in opens) return openWorking(opens.working);
  const url = new URL("href" in opens ? opens.href : stepLink(opens.step), location.href);
  go(routeOf(url.pathname, url.search) ?? { ...route.value, place: place.value });
}
