// An input's column: what is written, or what is typical, spread over the imagined shops.
import { type Column, exact, type Filled, hole } from "./band.ts";
import type { Input } from "./figure.ts";
import type { InputCell } from "./graph.ts";
import { type Reading, readPair, readQuantity } from "./quantity.ts";
import { SAMPLES, stratified } from "./random.ts";
import { normalQuantile } from "./normal.ts";
import { kindInfo } from "./unit.ts";

/** How an input spreads: the ends are those of the range, three standard deviations of a reading. */
type Spread = { readonly nominal: number; readonly low: number; readonly high: number } & (
  { readonly shape: "exact" | "uniform" } | { readonly shape: "normal"; readonly sigma: number }
);

/** Kept by declaration, then by place and text. */
const columns = new WeakMap<Input<unknown>, Map<string, Filled>>();
/** Of one declaration; a slider that is moved leaves one at each stop. */
const COLUMNS = 1000;

/** The column of an input. Kept by what is written, so that an edit elsewhere hands out the very same column. */
export function fillInput(cell: InputCell, nominal: boolean): Filled {
  const { decl, leaf } = cell;
  const known = leaf !== null && leaf.text !== "unknown";
  const said = known ? `${leaf.origin.by} ${leaf.from ?? ""} ${leaf.text}` : "typical";
  const key = `${cell.address} ${nominal ? "n" : "s"} ${said}`;
  let kept = columns.get(decl);
  if (!kept) columns.set(decl, (kept = new Map()));
  const had = kept.get(key);
  if (had) return had;
  const made = make(cell, decl, known ? leaf.text : null, nominal);
  if (kept.size >= COLUMNS) kept.clear();
  kept.set(key, made);
  return made;
}

function make(cell: InputCell, decl: Input<unknown>, text: string | null, nominal: boolean): Filled {
  switch (decl.form) {
    case "text":
      return { each: [text ?? ""] };
    case "lists":
      return { each: [text === null || text === "" ? [] : text.split("\n")] };
    case "word":
      return text === null ? sampledWord(cell, decl.typicalWords ?? [], nominal) : { each: [text] };
    case "list": {
      if (decl.kind === null || text === null) return hole(`${decl.says} is not known`);
      const kind = decl.kind;
      const values = text === "" ? [] : text.split("\n").map((t) => readQuantity(t, kind));
      return { each: [values.map((r) => (r.ok ? r.nominal : Number.NaN))] };
    }
    case "pair": {
      if (decl.kind === null || text === null) return hole(`${decl.says} is not known`);
      const pair = readPair(text, decl.kind);
      return pair.ok ? { each: [pair.values.map((r) => r.nominal)] } : hole(`${decl.says} cannot be read`);
    }
    case "quantity": {
      const spread = spreadOf(cell, decl, text);
      return spread ? column(cell.address, spread, nominal) : hole(`${decl.says} cannot be read`);
    }
  }
}

function sampledWord(cell: InputCell, typical: readonly string[], nominal: boolean): Filled {
  if (nominal || typical.length < 2) return { each: [typical[0] ?? ""] };
  const u = stratified(cell.address);
  // The nominal case is the first of the typical words.
  return {
    each: Array.from({ length: SAMPLES }, (_, k) =>
      k === 0 ? typical[0] : typical[Math.min(typical.length - 1, Math.floor((u[k] ?? 0) * typical.length))],
    ),
  };
}

/** Nominal, ends and shape of an input; null where the text cannot be read. */
export function spreadOf(cell: InputCell, decl: Input<unknown> = cell.decl, text: string | null = knownText(cell)): Spread | null {
  if (decl.kind === null) return null;
  const typical = decl.typical?.value;
  const reading: Reading | null =
    text !== null ? readQuantity(text, decl.kind) : typical !== undefined ? readQuantity(typical, decl.kind) : null;
  if (!reading?.ok) return null;
  const { nominal, low, high, spread } = reading;
  if (spread === "exact" || low === high) return { nominal, low: nominal, high: nominal, shape: "exact" };
  // A stated uncertainty of a measurement is two standard deviations; a stated range is closed.
  const measured = text !== null && (cell.leaf?.origin.by === "record" || cell.leaf?.from === "measured");
  if (measured && spread !== "range") {
    const sigma = (high - low) / 4;
    const lowest = kindInfo(decl.kind).lowest ?? -Infinity;
    return { nominal, low: Math.max(lowest, nominal - FAR * sigma), high: nominal + FAR * sigma, shape: "normal", sigma };
  }
  return { nominal, low, high, shape: "uniform" };
}

/** A reading is not taken to be further off than this many standard deviations: once in 370. */
const FAR = 3;

const knownText = (cell: InputCell): string | null => (cell.leaf && cell.leaf.text !== "unknown" ? cell.leaf.text : null);

function column(address: string, s: Spread, nominal: boolean): Column {
  if (s.shape === "exact" || nominal) return exact(s.nominal);
  const u = stratified(address);
  const v = new Float64Array(SAMPLES);
  for (let k = 1; k < SAMPLES; k += 1) {
    const p = u[k] ?? 0.5;
    v[k] = s.shape === "normal" ? Math.min(s.high, Math.max(s.low, s.nominal + s.sigma * normalQuantile(p))) : s.low + p * (s.high - s.low);
  }
  v[0] = s.nominal;
  return { v, holes: null };
}
