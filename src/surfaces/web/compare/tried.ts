// Values being tried out on the compare page: kept in its address a moment after the last move, so that every state is a link.
import { signal } from "@preact/signals";
import { laidTries } from "../model/desk.ts";
import { route } from "../model/place.ts";
import { dropOwn, isWaiting, ownSoon } from "../model/soon.ts";
import { partsOf, type Tried } from "../worker/view.ts";
import { readTried, type TriedValue, writtenTried } from "./tried-address.ts";

export const triedValues = signal<readonly TriedValue[]>([]);

export function triesOf(values: readonly TriedValue[]): Tried[] {
  return values.map(({ address, text }) => ({ ...partsOf(address), text }));
}

/** Other values, laid over at once where the column of values tried out is the one looked at. */
export function setTried(values: readonly TriedValue[]): void {
  triedValues.value = values;
  layTried();
  ownSoon((own) => writtenTried(own, triedValues.peek()));
}

/** The address says other values: a link, or a step back. What is being moved just now goes on. */
export function followAddress(): void {
  if (isWaiting()) return;
  const now = readTried(route.value.own);
  if (JSON.stringify(now) !== JSON.stringify(triedValues.peek())) triedValues.value = now;
  layTried();
}

export const isTriedChosen = (): boolean => route.value.own.get("at") === "tried" && triedValues.value.length > 0;

function layTried(): void {
  const next = isTriedChosen() ? triesOf(triedValues.value) : [];
  if (JSON.stringify(next) !== JSON.stringify(laidTries.peek())) laidTries.value = next;
}

/** The page is left: nothing of it goes with the user. */
export function leaveTried(): void {
  dropOwn();
  laidTries.value = [];
}
