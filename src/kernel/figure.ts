// What a room declares: inputs, figures, joint values, simulated figures, values. Plain data with plain functions in it.
import { type Kind, kindOf, type Measure } from "./unit.ts";
import type { Contract } from "./contract.ts";
import type { Job, Json } from "./job.ts";
import { machine, type Scope, shop } from "./item.ts";
import type { Link, Needs, Ref, Values, When } from "./ref.ts";
import type { Slot } from "./slot.ts";

export { link, type Link, type Ref, type Values, type When } from "./ref.ts";

/** A band that stands in for what nobody has measured. */
interface Typical {
  /** Written as a user would write it. */
  readonly value: string;
  readonly source: string;
  /** No source at hand could confirm it; shown so. */
  readonly unchecked?: true;
}

export type TypicalOr = Typical | (Partial<Typical> & { readonly of: Ref<number>; readonly source: string });

interface InputWords {
  /** Key below the thing, as in the files. */
  readonly key: string;
  readonly per: Scope;
  /** What it is, in a few words: label of the field. */
  readonly says: string;
  /** How to find it out at home. */
  readonly measure: string;
  /** Never assumed: without it the checks that need it stay open. */
  readonly required?: true;
  /** `none` is an answer: known to be absent. */
  readonly none?: true;
  /** The short form of the map around it fills this key. */
  readonly head?: true;
  /** Earlier names of the key. */
  readonly was?: readonly string[];
}

export interface Input<T = number> extends Ref<T>, Omit<InputWords, "per"> {
  readonly decl: "input";
  readonly form: "quantity" | "word" | "list" | "pair" | "text" | "lists";
  readonly symbol?: string;
  readonly unit: string;
  readonly kind: Kind | null;
  /** A band; or the figure that estimates it from other things, and the band where that figure is missing too. */
  readonly typical?: TypicalOr;
  readonly words?: readonly string[];
  readonly typicalWords?: readonly string[];
  readonly wordsSource?: string;
}

const inputId = (per: Scope, key: string): string => (per === shop || per === machine ? key : `${per.name}.${key}`);

/** A quantity written in the files. Without `typical` and `required` it exists only where it is written (or is `none`). */
export function input(d: InputWords & Measure & { symbol?: string; typical?: TypicalOr }): Input<number> {
  const { unit, kind: _kind, ...rest } = d;
  return { ...rest, decl: "input", form: "quantity", id: inputId(d.per, d.key), unit, kind: kindOf(d) };
}

/** A word out of a few. An unknown one is sampled among the typical words. */
export function wordInput<const W extends string>(
  d: InputWords & { words: readonly W[]; typical?: readonly W[]; source?: string },
): Input<W> {
  const { typical, source, ...rest } = d;
  return {
    ...rest,
    decl: "input",
    form: "word",
    id: inputId(d.per, d.key),
    unit: "",
    kind: null,
    ...(typical ? { typicalWords: typical } : {}),
    ...(source ? { wordsSource: source } : {}),
  };
}

/** A list of quantities, data rather than samples. */
export function listInput(d: InputWords & Measure & { symbol?: string }): Input<readonly number[]> {
  const { unit, kind: _kind, ...rest } = d;
  return { ...rest, decl: "input", form: "list", id: inputId(d.per, d.key), unit, kind: kindOf(d) };
}

/** One value or two joined by a slash, as plates of two-voltage motors carry them. */
export function pairInput(d: InputWords & Measure & { symbol?: string }): Input<readonly number[]> {
  const { unit, kind: _kind, ...rest } = d;
  return { ...rest, decl: "input", form: "pair", id: inputId(d.per, d.key), unit, kind: kindOf(d) };
}

/** Free text. */
export function textInput(d: InputWords): Input<string> {
  return { ...d, decl: "input", form: "text", id: inputId(d.per, d.key), unit: "", kind: null };
}

/** A list of texts such as `4-7`, kept as written. */
export function listsInput(d: InputWords): Input<readonly string[]> {
  return { ...d, decl: "input", form: "lists", id: inputId(d.per, d.key), unit: "", kind: null };
}

export interface Via<T> extends Ref<T> {
  readonly decl: "via";
  readonly links: readonly Link[];
  readonly to: Ref<T>;
}
/** Looks a need up at the thing the item names, over one link or several. */
export function via<T>(links: Link | readonly [Link, ...Link[]], to: Ref<T>): Via<T> {
  const chain = "decl" in links ? [links] : links;
  return { decl: "via", id: to.id, per: chain[0]?.per ?? to.per, links: chain, to };
}

export interface First<T> extends Ref<T> {
  readonly decl: "first";
  readonly refs: readonly Ref<T>[];
}
/** The first of several that exists here. */
export function first<T>(...refs: [Ref<T>, ...Ref<T>[]]): First<T> {
  return { decl: "first", id: refs[0].id, per: refs[0].per, refs };
}

export interface Perhaps<T> extends Ref<T | null> {
  readonly decl: "perhaps";
  readonly to: Ref<T>;
}
/** A need that may be missing: `of` then receives null. */
export function perhaps<T>(to: Ref<T>): Perhaps<T> {
  return { decl: "perhaps", id: to.id, per: to.per, to };
}

type Signs<X extends Needs> = { readonly [K in keyof X]?: "+" | "-" };

interface FigureWords<X extends Needs> {
  readonly id: string;
  readonly per: Scope;
  readonly symbol: string;
  readonly says: string;
  readonly source: string;
  readonly needs: X;
  readonly when?: readonly When[];
  readonly signs?: Signs<X>;
  /** Windows this figure relies on; each is guarded by a check. */
  readonly assumes?: readonly Contract[];
  /** Where the formula stops being true: a sentence, or null where it holds. */
  readonly valid?: (x: Values<X>) => string | null;
}

export interface Figure extends Ref<number>, Omit<FigureWords<Needs>, "per" | "valid" | "signs"> {
  readonly decl: "figure";
  readonly unit: string;
  readonly kind: Kind;
  /** Formula text, checked against code and units for every figure; or in words how it is worked out. */
  readonly formula?: string;
  readonly method?: string;
  readonly of: (x: never) => number;
  readonly valid?: (x: never) => string | null;
  readonly signs?: Readonly<Record<string, "+" | "-" | undefined>>;
}

/** One computed quantity. `formula` where one line says it, `method` where a table, a search or a loop is needed. */
export function figure<const X extends Needs>(
  d: FigureWords<X> &
    Measure & { of: (x: Values<X>) => number } & ({ formula: string; method?: never } | { method: string; formula?: never }),
): Figure {
  const { kind: _kind, ...rest } = d;
  // The one widening of the kernel: `of` is stored without the names of its needs; the evaluator hands it exactly those.
  return { ...rest, decl: "figure", kind: kindOf(d) } as unknown as Figure;
}

/** A physical constant as a need, so that a formula may name it. */
export function known(
  id: string,
  c: { symbol: string; value: number; unit: string; kind?: string; says: string; source: string },
): Ref<number> {
  const { kind: _kind, ...rest } = c;
  return {
    ...rest,
    decl: "figure",
    id: `constant.${id}`,
    per: shop,
    kind: kindOf(c as Measure),
    formula: String(c.value),
    needs: {},
    of: () => c.value,
  } as Figure;
}

/** What a joint value draws with: a seed of its own, how many samples are wanted, and half the spread of each reading (two standard deviations). */
export interface Draw<N extends string> {
  readonly seed: string;
  readonly count: number;
  readonly half: { readonly [K in N]?: number };
}

export interface Refusal {
  readonly refused: string;
}

export interface Joint extends Ref<never> {
  readonly decl: "joint";
  readonly says: string;
  readonly method: string;
  readonly source: string;
  readonly needs: Needs;
  readonly when?: readonly When[];
  readonly gives: Readonly<Record<string, { symbol: string; unit: string; kind: Kind; says: string }>>;
  readonly of: (x: never, draw: Draw<string>) => Readonly<Record<string, Float64Array>> | Refusal;
  readonly readings: readonly Reading[];
}
/** One member of a joint value. */
export interface JointPart extends Ref<number> {
  readonly decl: "part";
  readonly joint: Joint;
  readonly part: string;
  readonly symbol: string;
  readonly unit: string;
  readonly kind: Kind;
  readonly says: string;
}

/** A measurement that would narrow a joint value: which member it reads, and the input it is written to. */
export interface Reading {
  readonly part: string;
  readonly input: Ref<unknown>;
  readonly says: string;
}

/** Values that only make sense together (a motor's circuit): drawn jointly, weighed by readings, never recombined. Needs are taken at their nominal. */
export function joint<const X extends Needs, const G extends Readonly<Record<string, Measure & { symbol: string; says: string }>>>(d: {
  id: string;
  per: Scope;
  says: string;
  method: string;
  source: string;
  needs: X;
  when?: readonly When[];
  gives: G;
  of: (x: Values<X>, draw: Draw<Extract<keyof X, string>>) => { readonly [K in keyof G]: Float64Array } | Refusal;
  readings: readonly (Reading & { part: keyof G })[];
}): { readonly joint: Joint } & { readonly [K in keyof G]: JointPart } {
  const gives = Object.fromEntries(Object.entries(d.gives).map(([name, m]) => [name, { ...m, kind: kindOf(m) }]));
  const whole = { ...d, decl: "joint", gives } as unknown as Joint;
  const parts: Record<string, JointPart> = {};
  for (const [part, m] of Object.entries(whole.gives)) {
    parts[part] = {
      decl: "part",
      id: `${d.id}.${part}`,
      per: d.per,
      joint: whole,
      part,
      symbol: m.symbol,
      unit: m.unit,
      kind: m.kind,
      says: m.says,
    };
  }
  return { joint: whole, ...parts } as { readonly joint: Joint } & { readonly [K in keyof G]: JointPart };
}

export interface Simulated extends Ref<number>, Omit<FigureWords<Needs>, "per" | "valid" | "signs"> {
  readonly decl: "simulated";
  readonly unit: string;
  readonly kind: Kind;
  readonly method: string;
  readonly job: Job<Json, Json>;
  readonly brief: (x: never) => Json;
  readonly read: (r: never) => number;
  readonly estimate?: Ref<number>;
  /** Relative error the method is tested to keep. */
  readonly tolerance: number;
  readonly valid?: (x: never) => string | null;
  readonly signs?: Readonly<Record<string, "+" | "-" | undefined>>;
}

/** A figure that is run rather than calculated: once for each of the first samples, carried to all by its estimate. */
export function simulated<const X extends Needs, B extends Json, R extends Json>(
  d: FigureWords<X> &
    Measure & {
      method: string;
      job: Job<B, R>;
      brief: (x: Values<X>) => B;
      read: (r: R) => number;
      estimate?: Ref<number>;
      tolerance: number;
    },
): Simulated {
  return { ...d, decl: "simulated", kind: kindOf(d) } as unknown as Simulated;
}

export interface Value<T> extends Ref<T> {
  readonly decl: "value";
  readonly says: string;
  /** For lists of numbers: what each is, so that one can be given by hand. */
  readonly unit?: string;
  readonly kind?: Kind;
  readonly needs: Needs;
  readonly when?: readonly When[];
  readonly of: (x: never) => T;
}

/**
 * Something that is not one number: a curve, a link table, a list of ratios. What `of` returns must not hold on to the values it was given:
 * those of the next sample are written over them.
 */
export function value<const X extends Needs, T>(d: {
  id: string;
  per: Scope;
  says: string;
  needs: X;
  when?: readonly When[];
  each?: Measure;
  of: (x: Values<X>) => T;
}): Value<T> {
  const { each, ...rest } = d;
  return { ...rest, ...(each ? { unit: each.unit, kind: kindOf(each) } : {}), decl: "value" } as unknown as Value<T>;
}

/** Everything a need can lead to once links, firsts and perhapses are followed. */
export type Declared = Input<unknown> | Figure | JointPart | Simulated | Value<unknown> | Slot<unknown>;
export type AnyRef = Declared | Via<unknown> | First<unknown> | Perhaps<unknown>;
