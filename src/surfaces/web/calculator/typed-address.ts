// What is typed into the calculator as its address holds it.

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
    values: new Map(
      [...own].flatMap(([key, text]): [string, string][] => (key.startsWith(value) ? [[key.slice(value.length), text]] : [])),
    ),
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
