// Slow answers: pure functions of a brief, so that equal briefs have equal answers wherever and whenever they run.

export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

export interface Job<B extends Json, R extends Json> {
  readonly id: string;
  /** Raised whenever the code changes a result. */
  readonly version: number;
  readonly run: (brief: B) => R;
}

/** Declares a job. The brief holds exactly what it may read. */
export function job<B extends Json, R extends Json>(d: Job<B, R>): Job<B, R> {
  return d;
}

/** Text of a brief for its key: sorted keys, numbers to 12 digits, so that rounding noise is no change. */
export function canonical(value: Json): string {
  if (typeof value === "number") return String(Number.isFinite(value) ? Number(value.toPrecision(12)) + 0 : value);
  if (Array.isArray(value)) return `[${value.map(canonical).join(",")}]`;
  if (value !== null && typeof value === "object") {
    const entries = Object.entries(value as { readonly [key: string]: Json }).toSorted(([a], [b]) => (a < b ? -1 : 1));
    return `{${entries.map(([k, v]) => `${JSON.stringify(k)}:${canonical(v)}`).join(",")}}`;
  }
  return JSON.stringify(value);
}
