// Seeded uniform numbers: one stream a name, so that adding an input moves no other number.

/** 32-bit hash of a text (FNV-1a, then mixed), the seed of its stream. */
function seedOf(name: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < name.length; i += 1) h = Math.imul(h ^ name.charCodeAt(i), 0x01000193);
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

/** Uniform numbers in (0, 1) for a name: the generator "mulberry32" over a hashed seed. */
export function uniforms(name: string): () => number {
  let state = seedOf(name);
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
}

/** Samples of a column. The first one is the nominal case. */
export const SAMPLES = 1000;
/** Samples that slow answers are run for. */
export const SLOW_SAMPLES = 64;

function stratify(out: Float64Array, from: number, to: number, next: () => number): void {
  const n = to - from;
  for (let i = 0; i < n; i += 1) out[from + i] = (i + next()) / n;
  for (let i = n - 1; i > 0; i -= 1) {
    const j = Math.floor(next() * (i + 1));
    const held = out[from + i] ?? 0;
    out[from + i] = out[from + j] ?? 0;
    out[from + j] = held;
  }
}

const kept = new Map<string, Float64Array>();
/** Enough for two big machines; older ones are drawn again when asked for. */
const KEPT = 5000;

/**
 * Stratified uniform samples of a name; entry 0, the nominal case, holds 0.5. The slow samples are stratified by themselves,
 * the rest fills up, so that a short column is as good as its length allows.
 */
export function stratified(name: string): Float64Array {
  const known = kept.get(name);
  if (known) return known;
  const out = new Float64Array(SAMPLES);
  const next = uniforms(name);
  out[0] = 0.5;
  stratify(out, 1, SLOW_SAMPLES, next);
  stratify(out, SLOW_SAMPLES, SAMPLES, next);
  if (kept.size >= KEPT) kept.clear();
  kept.set(name, out);
  return out;
}
