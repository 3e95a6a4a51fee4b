// A picture of one thing under several variants: its needs looked up, handed over sample by sample.
import { type Band, band, isColumn } from "./band.ts";
import type { Verdict } from "./check.ts";
import type { Evaluation } from "./evaluate.ts";
import { isMissing } from "./graph.ts";
import { type Item, itemAddress } from "./item.ts";
import { SLOW_SAMPLES } from "./random.ts";
import type { Case, Drawn, Frame, Picture, Sampled } from "./room.ts";
import { judge } from "./verdict.ts";

/** A variant to be drawn. */
export interface DrawnCase {
  readonly name: string;
  readonly evaluation: Evaluation;
}
/** Why a picture cannot be drawn: a sentence to put in its place. */
export interface Undrawn {
  readonly empty: string;
}

/**
 * Draws a picture of the thing at an address. The first case is the machine as found; a later one that lacks the thing, or something the
 * picture needs, is left out.
 */
export function draw(picture: Picture, item: string, cases: readonly [DrawnCase, ...DrawnCase[]], frame: Frame): Drawn | Undrawn {
  const [found, ...options] = cases;
  const first = caseOf(picture, item, found);
  if ("empty" in first) return first;
  const others = options.flatMap((o) => {
    const made = caseOf(picture, item, o);
    return "empty" in made ? [] : made;
  });
  // The one widening: `draws` is stored without the names of its needs and receives exactly those.
  return picture.draws([first, ...others] as readonly Case<unknown>[] as readonly Case<never>[], frame);
}

function caseOf(picture: Picture, address: string, { name, evaluation }: DrawnCase): Case<unknown> | Undrawn {
  const item = evaluation.graph.items.find((i) => i.scope === picture.per && itemAddress(i) === address);
  if (!item) return { empty: `there is no ${picture.per.name} here` };
  const samples = sampled(picture, item, evaluation);
  return "empty" in samples ? samples : { name, samples, verdict: (check, at) => verdicts(evaluation).get(`${check} ${at}`) ?? null };
}

function sampled(picture: Picture, item: Item, e: Evaluation): Sampled<unknown> | Undrawn {
  const fixed: Record<string, unknown> = {};
  const long: (readonly [string, ArrayLike<unknown>])[] = [];
  for (const [name, ref] of Object.entries(picture.needs)) {
    const cell = e.graph.find(item, ref);
    const f = isMissing(cell) ? undefined : e.filled.get(cell);
    const values: ArrayLike<unknown> = !f ? [] : isColumn(f) ? f.v : f.each;
    if (values.length === 0 || isNone(values[0])) {
      if (ref.decl !== "perhaps") return { empty: isMissing(cell) ? cell.says : (f?.holes?.keys().next().value ?? "no value") };
      fixed[name] = null;
    } else if (values.length === 1) fixed[name] = values[0];
    else long.push([name, values]);
  }
  const n = long.reduce((least, [, values]) => Math.min(least, values.length), long.length === 0 ? 1 : Infinity);
  const rows = Array.from({ length: n }, (_, k) => k).filter((k) => !long.some(([, values]) => isNone(values[k])));
  const at = (i: number): unknown => ({ ...fixed, ...Object.fromEntries(long.map(([name, values]) => [name, values[rows[i] ?? 0]])) });
  return { count: rows.length, at };
}

const isNone = (value: unknown): boolean => typeof value === "number" && Number.isNaN(value);

const judged = new WeakMap<Evaluation, ReadonlyMap<string, Verdict>>();
function verdicts(e: Evaluation): ReadonlyMap<string, Verdict> {
  const known = judged.get(e);
  if (known) return known;
  const made = new Map(judge(e).map((j) => [`${j.cell.decl.id} ${itemAddress(j.cell.item)}`, j.verdict]));
  judged.set(e, made);
  return made;
}

/** A curve and its band along x: y of the nominal case, 5 and 95 % of the first samples; a sample without a y at some x is left out there. */
export interface CurveBand {
  readonly nominal: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
}
export function bandAlong<X>(samples: Sampled<X>, x: readonly number[], y: (sample: X, x: number) => number): CurveBand {
  const all = Array.from({ length: Math.min(samples.count, SLOW_SAMPLES) }, (_, k) => samples.at(k));
  const bands = x.map((at): Band => band({ v: Float64Array.from(all, (sample) => y(sample, at)), holes: null }));
  return { nominal: bands.map((b) => b.nominal), low: bands.map((b) => b.low), high: bands.map((b) => b.high) };
}
