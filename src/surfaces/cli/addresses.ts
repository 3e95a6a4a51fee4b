// What a word on the command line means: an address, an id that fits one thing or several, or a slip of the finger.
import type { Graph } from "../../kernel/graph.ts";
import { nearest } from "../../kernel/nearest.ts";
import { Misuse } from "./misuse.ts";
import { listed } from "./text.ts";

export interface Named {
  readonly address: string;
  readonly id: string;
  readonly root: string;
}

/** Everything that has an address: quantities and checks. */
export function namesOf(graph: Graph): Named[] {
  const one = (c: { address: string; decl: { id: string }; item: { root: string } }): Named => ({
    address: c.address,
    id: c.decl.id,
    root: c.item.root,
  });
  return [...[...graph.cells.values()].map(one), ...graph.checks.map(one)];
}

/** More than this many addresses help nobody to choose. */
const mostShown = 12;

/**
 * The one thing a word means: its address, its address below the only root that has it, its id, the last words of its address, or some of
 * them in their order, the last one among them: `drag-knob rough torque-holds`.
 * `machine` narrows what is not said by an address of its own.
 */
export function oneNamed(word: string, names: readonly Named[], machine: string | null): Named {
  const exact = names.find((n) => n.address === word);
  if (exact) return exact;
  const near = machine === null ? names : names.filter((n) => n.root === machine || n.root === "shop");
  const ways: readonly ((n: Named) => boolean)[] = [
    (n) => n.address === `${n.root}/${word}`,
    (n) => n.id === word,
    (n) => n.address.endsWith(`.${word}`) || n.address.endsWith(`/${word}`),
    (n) => hasWords(n.address, word),
  ];
  for (const way of ways) {
    const fits = near.filter(way);
    if (fits.length === 1 && fits[0]) return fits[0];
    if (fits.length > 1) {
      const shown = fits.map((f) => f.address).toSorted();
      const more = shown.length > mostShown ? ` and ${shown.length - mostShown} more` : "";
      throw new Misuse(
        "name-ambiguous",
        `${word} fits ${shown.length} things; say which: ${shown.slice(0, mostShown).join(", ")}${more}`,
        shown,
      );
    }
  }
  throw unknown(word, near);
}

function hasWords(address: string, words: string): boolean {
  const [wanted, parts] = [words, address].map((text) => text.split(/[./ ]/));
  if (!wanted || !parts || wanted.length < 2 || wanted.at(-1) !== parts.at(-1)) return false;
  let from = 0;
  return wanted.every((w) => (from = parts.indexOf(w, from) + 1) > 0);
}

function unknown(word: string, names: readonly Named[]): Misuse {
  const all = new Set(names.flatMap((n) => [n.id, n.address, n.address.slice(n.root.length + 1)]));
  const one = nearest(word, all);
  const parts = word.toLowerCase().split(/[./]/);
  const last = parts.at(-1) ?? "";
  const alike =
    one === undefined && last.length > 2 ? [...new Set(names.map((n) => n.id))].filter((id) => id.includes(last)).toSorted() : [];
  const found = one === undefined ? alike.slice(0, 5) : [one];
  const hint = found.length === 0 ? "; waywright work --list names all figures" : `; nearest: ${listed(found, "or")}`;
  return new Misuse("name-unknown", `there is no figure, input or check ${word}${hint}`, found);
}
