// What is typed into the calculator: values by the names of the formula, and the one that a plot runs along. All of it stands in the address.
import { signal } from "@preact/signals";
import { go, route } from "../model/place.ts";
import { dropOwn, isWaiting, ownSoon } from "../model/soon.ts";
import { hrefOf } from "../model/route.ts";
import { nothing, ownOf, readTyped, type Typed } from "./typed-address.ts";

export const typed = signal<Typed>(nothing);

export function type(change: Partial<Typed>): void {
  typed.value = { ...typed.value, ...change };
  ownSoon(() => ownOf(typed.peek()));
}

export function typeValue(name: string, text: string): void {
  const values = new Map(typed.value.values);
  if (text === "") values.delete(name);
  else values.set(name, text);
  type({ values });
}

/** The address of a figure, with nothing typed. */
export function figureLink(figure: string): string {
  return hrefOf({ ...route.value, working: null, own: new Map([["figure", figure]]) });
}

/** Begins the figure anew. */
export function clearTyped(): void {
  dropOwn();
  go({ ...route.value, own: ownOf({ ...nothing, figure: typed.value.figure }) }, "replace");
}

/** The address says something else: a link, or a step back. */
export function followAddress(): void {
  const now = readTyped(route.value.own);
  if (isWaiting() && now.figure === typed.peek().figure) return;
  dropOwn();
  typed.value = now;
}
