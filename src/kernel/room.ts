// A room: what one discipline brings. The registry is a list of rooms in import order; the kernel knows none by name.
import type { Check, Notice, Verdict } from "./check.ts";
import type { Contract } from "./contract.ts";
import type { Figure, Input, Joint, JointPart, Link, Ref, Simulated, Value, Values } from "./figure.ts";
import type { Scope } from "./item.ts";
import type { Offer, Slot } from "./slot.ts";

/** A danger to people: one text, shown at the step, on the page and on paper. */
export interface Hazard {
  readonly decl: "hazard";
  readonly id: string;
  readonly name: string;
  /** At most two sentences; defers to the local code and licensed practice. */
  readonly says: string;
}
export function hazard(d: Omit<Hazard, "decl">): Hazard {
  return { ...d, decl: "hazard" };
}

/** One bring-up task, as data. */
export interface Step {
  readonly decl: "step";
  readonly id: string;
  readonly per: Scope;
  readonly title: string;
  readonly hazards: readonly Hazard[];
  /** Ids of steps that come first. */
  readonly after: readonly string[];
  /** What must be passed before a class of steps. */
  readonly gate?: string;
  /** The procedure, one action a sentence. */
  readonly does: readonly string[];
  /** What is read, the input it is written to, and the figure that says what to expect. */
  readonly reads: readonly { readonly says: string; readonly unit?: string; readonly sets?: Ref<unknown>; readonly expect?: Ref<number> }[];
  readonly accept: string;
}
export function step(d: Omit<Step, "decl">): Step {
  return { ...d, decl: "step" };
}

/** What a picture is drawn into. */
export interface Frame {
  readonly width: number;
  readonly units: "metric" | "inch";
  /** Makes ids inside the drawing unique on the page. */
  readonly prefix: string;
}
export interface Drawn {
  readonly svg: string;
  readonly csv?: string;
  /** The plot behind it, where it is one, as pictures/plot-read.ts takes it: a page reads values under a cursor from it. */
  readonly plot?: object;
}
/** Samples for a picture: `at(0)` is the nominal case. Bands of a curve take the first SLOW_SAMPLES. */
export interface Sampled<X> {
  readonly count: number;
  readonly at: (k: number) => X;
}
/** One variant in a picture: the machine as found, or with options laid over it. */
export interface Case<X> {
  readonly name: string;
  readonly samples: Sampled<X>;
  /** What a check says of a thing, by its id and the thing's address; null where nobody asks. */
  readonly verdict: (check: string, item: string) => Verdict | null;
}
export interface Picture {
  readonly decl: "picture";
  readonly id: string;
  readonly per: Scope;
  readonly title: string;
  readonly needs: Readonly<Record<string, Ref<unknown>>>;
  readonly draws: (cases: readonly Case<never>[], frame: Frame) => Drawn;
}
/** Declares a picture. `cases` holds as found first, then the options laid beside it. */
export function picture<const X extends Readonly<Record<string, Ref<unknown>>>>(
  d: Omit<Picture, "decl" | "needs" | "draws"> & {
    needs: X;
    draws: (cases: readonly Case<Values<X>>[], frame: Frame) => Drawn;
  },
): Picture {
  return { ...d, decl: "picture" } as unknown as Picture;
}

export interface Room {
  readonly name: string;
  readonly title: string;
  /** The questions it answers, in the user's words. */
  readonly answers: string;
  readonly inputs: readonly Input<unknown>[];
  readonly figures: readonly (Figure | Simulated | JointPart | Value<unknown>)[];
  readonly joints: readonly Joint[];
  readonly slots: readonly Slot<unknown>[];
  readonly offers: readonly Offer[];
  readonly contracts: readonly Contract[];
  readonly checks: readonly Check[];
  readonly notices: readonly Notice[];
  readonly hazards: readonly Hazard[];
  readonly steps: readonly Step[];
  readonly pictures: readonly Picture[];
  readonly scopes: readonly Scope[];
  readonly links: readonly Link[];
  /** Catalogue text that ships with the program; the user's own entries win, key by key. */
  readonly catalogue?: string;
}

const isRecord = (v: unknown): v is Record<string, unknown> => typeof v === "object" && v !== null && !Array.isArray(v);

/** Declares a room from its modules: everything they export that is a declaration belongs to it, in order. */
export function room(d: {
  name: string;
  title: string;
  answers: string;
  brings: readonly Readonly<Record<string, unknown>>[];
  catalogue?: string;
}): Room {
  const seen = new Set<unknown>();
  const all: unknown[] = [];
  const add = (v: unknown): void => {
    if (seen.has(v)) return;
    seen.add(v);
    all.push(v);
  };
  for (const module of d.brings) {
    for (const v of Object.values(module)) {
      if (Array.isArray(v)) v.forEach(add);
      else if (isRecord(v) && isRecord(v["joint"])) Object.values(v).forEach(add);
      else add(v);
    }
  }
  const decl = <T>(...names: string[]): T[] => all.filter((v) => isRecord(v) && names.includes(String(v["decl"]))) as T[];
  return {
    name: d.name,
    title: d.title,
    answers: d.answers,
    ...(d.catalogue === undefined ? {} : { catalogue: d.catalogue }),
    inputs: decl<Input<unknown>>("input"),
    figures: decl<Figure | Simulated | JointPart | Value<unknown>>("figure", "simulated", "part", "value"),
    joints: decl<Joint>("joint"),
    slots: decl<Slot<unknown>>("slot"),
    offers: decl<Offer>("offer"),
    contracts: decl<Contract>("contract"),
    checks: decl<Check>("check"),
    notices: decl<Notice>("notice"),
    hazards: decl<Hazard>("hazard"),
    steps: decl<Step>("step"),
    pictures: decl<Picture>("picture"),
    scopes: decl<Scope>("scope"),
    links: decl<Link>("link"),
  };
}
