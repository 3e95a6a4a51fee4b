// What the user changed and did not keep yet, with the way back: pure steps over unchanging snapshots.
import type { PatchValue } from "../../../kernel/model/plain.ts";

/** Values typed into fields by address, and whole texts typed in the file view by path; a text lies under the values. */
export interface Edits {
  readonly values: ReadonlyMap<string, PatchValue>;
  readonly texts: ReadonlyMap<string, string>;
}

export interface Trail {
  readonly past: readonly Edits[];
  readonly now: Edits;
  readonly future: readonly Edits[];
  /** What is being typed into: letters of one visit to a field are one step back. */
  readonly typing: string | null;
}

const none: Edits = { values: new Map(), texts: new Map() };
export const noTrail: Trail = { past: [], now: none, future: [], typing: null };

/** More steps back than this nobody remembers. */
const longest = 200;

function step(trail: Trail, next: Edits, typing: string | null): Trail {
  const same = typing !== null && trail.typing === typing;
  const past = same ? trail.past : [...trail.past, trail.now].slice(-longest);
  return { past, now: next, future: [], typing };
}

/** A value typed into the field of an address. `typing` joins the letters of one visit to one step. */
export function typed(trail: Trail, address: string, value: PatchValue, typing: string | null = null): Trail {
  return step(trail, { ...trail.now, values: new Map(trail.now.values).set(address, value) }, typing);
}

/** Several values at once, as one step: a remedy, an option taken apart. */
export function typedAll(trail: Trail, values: ReadonlyMap<string, PatchValue>): Trail {
  return step(trail, { ...trail.now, values: new Map([...trail.now.values, ...values]) }, null);
}

/** The value goes back to what the file says. */
export function restored(trail: Trail, address: string, typing: string | null = null): Trail {
  if (!trail.now.values.has(address)) return trail;
  const values = new Map(trail.now.values);
  values.delete(address);
  return step(trail, { ...trail.now, values }, typing);
}

/** A whole text typed in the file view; null goes back to what is on disk. Values that the text holds already are given by `absorbed`. */
export function textTyped(
  trail: Trail,
  file: string,
  text: string | null,
  absorbed: readonly string[] = [],
  typing: string | null = null,
): Trail {
  const texts = new Map(trail.now.texts);
  if (text === null) texts.delete(file);
  else texts.set(file, text);
  const values = new Map(trail.now.values);
  for (const address of absorbed) values.delete(address);
  return step(trail, { values, texts }, typing);
}

/** The field was left: what is typed next is a step of its own. */
export function left(trail: Trail): Trail {
  return trail.typing === null ? trail : { ...trail, typing: null };
}

export function undone(trail: Trail): Trail {
  const before = trail.past.at(-1);
  return before ? { past: trail.past.slice(0, -1), now: before, future: [trail.now, ...trail.future], typing: null } : trail;
}

export function redone(trail: Trail): Trail {
  const [next, ...future] = trail.future;
  return next ? { past: [...trail.past, trail.now], now: next, future, typing: null } : trail;
}

/** Kept, or dropped: these values and texts are no edits any more, and no step leads back to them. */
export function settled(trail: Trail, values: readonly string[], files: readonly string[]): Trail {
  const gone = ({ values: v, texts: t }: Edits): Edits => ({
    values: new Map([...v].filter(([address]) => !values.includes(address))),
    texts: new Map([...t].filter(([file]) => !files.includes(file))),
  });
  return { past: [], now: gone(trail.now), future: [], typing: null };
}

export function countOf(edits: Edits): number {
  return edits.values.size + edits.texts.size;
}
