// Where the user is: the address as a signal, and moves that keep what is chosen.
import { computed, signal } from "@preact/signals";
import { hrefOf, machineOf, pathOf, type Place, type Route, routeOf } from "./route.ts";

const shopRoute: Route = { place: { page: "shop" }, working: null, options: [], own: new Map() };

function here(): Route | null {
  return routeOf(location.pathname, location.search);
}

const shown = signal<Route | null>(here());

/** The address as read; the shop where it leads nowhere. */
export const route = computed<Route>(() => shown.value ?? shopRoute);
export const isLost = computed(() => shown.value === null);
export const place = computed<Place>(() => route.value.place);
/** The machine that is looked at. */
export const machine = computed(() => machineOf(place.value));

addEventListener("popstate", () => {
  shown.value = here();
});

/** Moves on. `replace` leaves no step back: for filters and letters typed. */
export function go(next: Route, how: "push" | "replace" = "push"): void {
  const href = hrefOf(next);
  const isElsewhere = pathOf(next.place) !== location.pathname;
  if (href !== location.pathname + location.search) history[how === "push" ? "pushState" : "replaceState"](null, "", href);
  shown.value = next;
  if (!isElsewhere) return;
  // Another page begins at its title, for the eye and for who listens.
  scrollTo(0, 0);
  requestAnimationFrame(() => document.querySelector<HTMLElement>("h1")?.focus({ preventScroll: true }));
}

/** The address of a place with the options that are chosen now. */
export function linkTo(to: Place, own: ReadonlyMap<string, string> = new Map()): string {
  return hrefOf({ place: to, working: null, options: route.value.options, own });
}

/** The address of this place with the working of a number open. */
export function workingLink(address: string): string {
  return hrefOf({ ...route.value, working: address });
}

export function openWorking(address: string | null): void {
  go({ ...route.value, working: address });
}

/** Lays other options over; each is `machine/name`. */
export function chooseOptions(options: readonly string[]): void {
  go({ ...route.value, options });
}

/** What only this page reads: null takes a word away. */
export function setOwn(key: string, value: string | null): void {
  const own = new Map(route.value.own);
  if (value === null || value === "") own.delete(key);
  else own.set(key, value);
  go({ ...route.value, own }, "replace");
}

/** Follows links of the page itself without loading it again; everything else is the browser's. */
export function followLinks(root: HTMLElement): void {
  root.addEventListener("click", (event) => {
    if (event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    const link = event.target instanceof Element ? event.target.closest("a[href]") : null;
    const href = link?.getAttribute("href") ?? null;
    if (link === null || href === null || link.hasAttribute("download") || !href.startsWith("/")) return;
    const url = new URL(href, location.href);
    const next = routeOf(url.pathname, url.search);
    if (next === null) return;
    event.preventDefault();
    go(next);
  });
}
