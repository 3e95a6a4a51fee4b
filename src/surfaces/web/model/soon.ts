// What only one page reads, written into the address a moment after the last change: browsers slow pages down that write with every letter.
import { go, route } from "./place.ts";

const moment = 300; // ms
let waiting: ReturnType<typeof setTimeout> | undefined;
let next: ((own: ReadonlyMap<string, string>) => ReadonlyMap<string, string>) | null = null;

/** Whether something waits to be written: the address is older than what is on the page. */
export const isWaiting = (): boolean => next !== null;

/** The last change within a moment is the one that counts. */
export function ownSoon(change: (own: ReadonlyMap<string, string>) => ReadonlyMap<string, string>): void {
  next = change;
  clearTimeout(waiting);
  waiting = setTimeout(ownNow, moment);
}

/** Writes what waits. */
export function ownNow(): void {
  clearTimeout(waiting);
  const change = next;
  next = null;
  if (change !== null) go({ ...route.value, own: change(route.value.own) }, "replace");
}

/** Forgets what waits: the page is left. */
export function dropOwn(): void {
  clearTimeout(waiting);
  next = null;
}
