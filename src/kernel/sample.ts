// An input's column: what is written, or what is typical, spread over the imagined shops.
import { type Column, type Filled, hole } from "./band.ts";
import type { Input } from "./figure.ts";
import type { InputCell } from "./graph.ts";
import { type Reading, readPair, readQuantity } from "./quantity.ts";
import { SAMPLES, stratified } from "./random.ts";
import { normalQuantile } from "./normal.ts";

/** The ends of a range; three standard deviations of a reading. */
export interface Ends {
  readonly low: number;
  readonly high: number;
}

interface Spread extends Ends {
  readonly nominal: number;
  readonly shape: "exact" | "uniform" | "normal";
}

const columns = new Map<string, Filled>();
const COLUMNS = 10_000;

/** The column of an input. Kept by what is written, so that an edit elsewhere hands out the very same column. */
export function fillInput(cell: InputCell, nominal: boolean): Filled {
  const { decl, leaf } = cell;
  const known = leaf !== null && leaf.text !== "unknown";
  const said = known ? `${leaf.text} ${leaf.origin.by} ${leaf.from ?? ""}` : "typical";
  const key = `${cell.address} ${decl.form} ${nominal ? "n" : "s"} ${said}`;
  const had = columns.get(key);
  if (had) return had;
  const made = make(cell, decl, known ? leaf.text : null, nominal);
  if (columns.size >= COLUMNS) columns.clear();
  columns.set(key, made);
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
      const values = text.split("\n").map((t) => readQuantity(t, kind));
      return { each: [values.map((r) => (r.ok ? r.nominal : Number.NaN))] };
    }
    case "pair": {
      if (decl.kind === null || text === null) return hole(`${decl.says} is not known`);
      const pair = readPair(text, decl.kind);
      return pair.ok ? { each: [pair.values] } : hole(`${decl.says} cannot be read`);
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
  return { each: Array.from({ length: SAMPLES }, (_, k) => (k === 0 ? typical[0] : typical[Math.min(typical.length - 1, Math.floor((u[k] ?? 0) * typical.length))])) };
}

/** Nominal, ends and shape of an input; null where the text cannot be read. */
export function spreadOf(cell: InputCell, decl: Input<unknown> = cell.decl, text: string | null = knownText(cell)): Spread | null {
  if (decl.kind === null) return null;
  const typical = decl.typical?.value;
  const reading: Reading | null = text !== null ? readQuantity(text, decl.kind) : typical !== undefined ? readQuantity(typical, decl.kind) : null;
  if (!reading?.ok) return null;
  const { nominal, low, high, spread } = reading;
  if (spread === "exact" || low === high) return { nominal, low: nominal, high: nominal, shape: "exact" };
  // A stated uncertainty of a measurement is two standard deviations; a stated range is closed.
  const measured = text !== null && (cell.leaf?.origin.by === "record" || cell.leaf?.from === "measured");
  if (measured && spread !== "range") {
    const half = (high - low) / 2;
    return { nominal, low: nominal - 1.5 * half, high: nominal + 1.5 * half, shape: "normal" };
  }
  return { nominal, low, high, shape: "uniform" };
}

const knownText = (cell: InputCell): string | null => (cell.leaf && cell.leaf.text !== "unknown" ? cell.leaf.text : null);

function column(address: string, s: Spread, nominal: boolean): Column & { ends: Ends } {
  const ends = { low: s.low, high: s.high };
  if (s.shape === "exact" || nominal) return { v: Float64Array.of(s.nominal), holes: null, ends };
  const u = stratified(address);
  const v = new Float64Array(SAMPLES);
  // Ends of a normal spread lie three standard deviations out.
  const sigma = (s.high - s.low) / 6;
  for (let k = 1; k < SAMPLES; k += 1) v[k] = s.shape === "normal" ? s.nominal + sigma * normalQuantile(u[k] ?? 0.5) : s.low + (u[k] ?? 0.5) * (s.high - s.low);
  v[0] = s.nominal;
  return { v, holes: null, ends };
}
