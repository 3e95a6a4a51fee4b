// What is typed into the calculator: values by the names of the formula, and the one that a plot runs along. All of it stands in the address.
import { signal } from "@preact/signals";
import { go, route } from "../model/place.ts";
import { dropOwn, isWaiting, ownSoon } from "../model/soon.ts";
import { hrefOf } from "../model/route.ts";

export interface Typed {
  readonly figure: string | null;
  readonly values: ReadonlyMap<string, string>;
  /** Name of the value along which the figure is plotted. */
  readonly along: string;
  /** As typed: `5 to 60 m`. */
  readonly range: string;
  readonly steps: string;
  readonly scale: "linear" | "log";
}

export const nothing: Typed = { figure: null, values: new Map(), along: "", range: "", steps: "", scale: "linear" };

const value = "v.";

export function readTyped(own: ReadonlyMap<string, string>): Typed {
  return {
    figure: own.get("figure") ?? null,
    values: new Map([...own].flatMap(([key, text]): [string, string][] => (key.startsWith(value) ? [[key.slice(value.length), text]] : []))),
    along: own.get("along") ?? "",
    range: own.get("range") ?? "",
    steps: own.get("steps") ?? "",
    scale: own.get("scale") === "log" ? "log" : "linear",
  };
}

export function ownOf({ figure, values, along, range, steps, scale }: Typed): Map<string, string> {
  const words: [string, string][] = [
    ["figure", figure ?? ""],
    ...[...values].map(([name, text]): [string, string] => [value + name, text]),
    ["along", along],
    ["range", range],
    ["steps", steps],
    ["scale", scale === "log" ? "log" : ""],
  ];
  return new Map(words.filter(([, text]) => text !== ""));
}

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
