// Places of the workbench and their addresses. What is open, chosen and looked at stands in the address, so that every state is a link.

export type Place =
  | { readonly page: "shop" | "files" | "calculator" }
  | { readonly page: "margins" | "compare" | "rooms" | "next"; readonly machine: string }
  | { readonly page: "room"; readonly machine: string; readonly room: string };

export interface Route {
  readonly place: Place;
  /** The address whose working is open in the drawer. */
  readonly working: string | null;
  /** Options laid over, each as `machine/name`. */
  readonly options: readonly string[];
  /** What only one page reads: the file shown, the figure calculated, filters. */
  readonly own: ReadonlyMap<string, string>;
}

/** Places below the shop; no machine is called `shop`, so they are in nobody's way. */
const ofShop = ["files", "calculator"] as const;
/** Places below a machine; every other word there is a room. */
const ofMachine = ["compare", "rooms", "next"] as const;

const isIn = <T extends string>(words: readonly T[], word: string): word is T => (words as readonly string[]).includes(word); // widened: includes() of literals takes only its own words

/** Reads an address of the page: path and query. A path that leads nowhere is null. */
export function routeOf(path: string, query: string): Route | null {
  const place = placeOf(path);
  if (place === null) return null;
  const all = new URLSearchParams(query);
  const own = new Map([...all].filter(([key]) => key !== "working" && key !== "with"));
  const options = (all.get("with") ?? "").split(",").filter((name) => name !== "");
  return { place, working: all.get("working"), options, own };
}

function placeOf(path: string): Place | null {
  const [first = "shop", second, ...rest] = path.split("/").filter((key) => key !== "");
  if (rest.length > 0) return null;
  if (first === "shop") {
    if (second === undefined) return { page: "shop" };
    return isIn(ofShop, second) ? { page: second } : null;
  }
  if (second === undefined) return { page: "margins", machine: first };
  return isIn(ofMachine, second) ? { page: second, machine: first } : { page: "room", machine: first, room: second };
}

/** The address of a place, without what is chosen there. */
export function pathOf(place: Place): string {
  switch (place.page) {
    case "shop":
      return "/shop";
    case "files":
    case "calculator":
      return `/shop/${place.page}`;
    case "margins":
      return `/${place.machine}`;
    case "compare":
    case "rooms":
    case "next":
      return `/${place.machine}/${place.page}`;
    case "room":
      return `/${place.machine}/${place.room}`;
  }
}

/** The whole address; `routeOf` reads it back. Slashes and dots stay as they are, so that a person can read it too. */
export function hrefOf(route: Route): string {
  const part = (text: string): string => encodeURIComponent(text).replaceAll("%2F", "/").replaceAll("%2C", ",").replaceAll("%3A", ":");
  const query = [
    ...(route.working === null ? [] : [["working", route.working] as const]),
    ...(route.options.length === 0 ? [] : [["with", route.options.join(",")] as const]),
    ...route.own,
  ];
  const text = query.map(([key, value]) => `${part(key)}=${part(value)}`).join("&");
  return pathOf(route.place) + (text === "" ? "" : `?${text}`);
}

/** The machine a place belongs to. */
export function machineOf(place: Place): string | null {
  return "machine" in place ? place.machine : null;
}
