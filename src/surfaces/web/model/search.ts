// Everything that can be found by its words: pages, checks, figures, inputs, steps.
import type { Answer } from "../../../kernel/answer.ts";
import type { Household } from "../worker/household.ts";
import { partsOf } from "../worker/view.ts";
import { thingOf } from "./things.ts";

export interface Hit {
  readonly is: "place" | "check" | "figure" | "input" | "step";
  readonly says: string;
  /** Where it belongs: machine and thing. */
  readonly of: string;
  /** What it is now: a value, a verdict. */
  readonly now: string;
  /** What it is found by, in lower case. */
  readonly words: string;
  /** A working to open, a step to go to, or a place. */
  readonly opens: { readonly working: string } | { readonly step: string } | { readonly href: string };
}

export interface PlaceName {
  readonly says: string;
  readonly href: string;
}

/** What stands in the index of things to be found, those of the machine looked at first. */
export function hitsOf(answer: Answer, household: Household | null, places: readonly PlaceName[], machine: string | null): Hit[] {
  const hit = (h: Omit<Hit, "words">, more: string): Hit => ({ ...h, words: `${h.says} ${h.of} ${more}`.toLowerCase() });
  const all = [
    ...places.map((p) => hit({ is: "place", says: p.says, of: "", now: "", opens: { href: p.href } }, "")),
    ...answer.checks.map((c) =>
      hit({ is: "check", says: c.asks, of: thingOf(c.item), now: c.verdict, opens: { working: c.address } }, `${c.address} ${c.verdict}`),
    ),
    ...Object.values(answer.figures).map((f) =>
      hit(
        { is: "figure", says: f.says, of: thingOf(f.item), now: f.amount.text, opens: { working: f.address } },
        `${f.address} ${f.symbol}`,
      ),
    ),
    ...Object.values(answer.inputs).map((i) =>
      hit({ is: "input", says: i.says, of: thingOf(i.item), now: i.text, opens: { working: i.address } }, i.address),
    ),
    ...(household?.steps ?? []).map((s) => hit({ is: "step", says: s.title, of: "", now: "", opens: { step: s.id } }, s.id)),
  ];
  const isNear = (h: Hit): boolean => "working" in h.opens && machine !== null && partsOf(h.opens.working).root === machine;
  return [...all.filter((h) => !("working" in h.opens)), ...all.filter(isNear), ...all.filter((h) => "working" in h.opens && !isNear(h))];
}

/** More than this nobody reads. */
const most = 60;

/** Hits that have all the words, in any order; those whose own sentence starts with the first of them come first. */
export function found(hits: readonly Hit[], typed: string): Hit[] {
  const words = typed
    .toLowerCase()
    .split(/\s+/)
    .filter((w) => w !== "");
  const [first] = words;
  if (first === undefined) return hits.filter((h) => h.is === "place");
  const fits = hits.filter((h) => words.every((w) => h.words.includes(w)));
  const rank = (h: Hit): number => {
    const says = h.says.toLowerCase();
    return says.startsWith(first) ? 0 : words.every((w) => says.includes(w)) ? 1 : 2;
  };
  return fits
    .map((h, i) => ({ h, key: rank(h) * hits.length + i }))
    .sort((a, b) => a.key - b.key)
    .slice(0, most)
    .map(({ h }) => h);
}
