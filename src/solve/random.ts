// A seeded stream of uniform numbers, so that every random result can be had again.

/** Multipliers and offset basis of the hash and the finaliser below; odd numbers published with the methods. */
const FNV_BASIS = 0x811c9dc5;
const FNV_PRIME = 0x01000193;
const GOLDEN = 0x9e3779b9;
const MIX_1 = 0x85ebca6b;
const MIX_2 = 0xc2b2ae35;
/** Doubles carry 53 bits: 27 from one draw, 26 from the next. */
const TWO_POW_26 = 2 ** 26;
const TWO_POW_53 = 2 ** 53;

/**
 * Independent uniform numbers u, 0 < u < 1, that depend on the seed text alone.
 *
 * Source: generator xoshiro128** 1.1 (D. Blackman, S. Vigna, Scrambled Linear Pseudorandom Number Generators, ACM TOMS 47, 2021); the
 * seed text is hashed by FNV-1a and spread over the state by the finaliser of MurmurHash3 on a Weyl sequence. Valid for sampling, not
 * for secrets.
 */
export function uniforms(seed: string): () => number {
  let hash = FNV_BASIS;
  for (let k = 0; k < seed.length; k++) hash = Math.imul(hash ^ seed.charCodeAt(k), FNV_PRIME);
  const word = (k: number) => finalised((hash + Math.imul(k, GOLDEN)) | 0);
  const next = words([word(1), word(2), word(3), word(4)]);
  // Half a step off the grid keeps 0 and 1 out, where a logarithm or an inverse distribution would be infinite.
  return () => ((next() >>> 5) * TWO_POW_26 + (next() >>> 6) + 0.5) / TWO_POW_53;
}

/** 32-bit words (0 to 2^32 - 1) of xoshiro128** from a state that is not all zero. */
export function words(state: readonly [number, number, number, number]): () => number {
  let [s0, s1, s2, s3] = state;
  return () => {
    const result = Math.imul(rotated(Math.imul(s1, 5), 7), 9) >>> 0;
    const shifted = s1 << 9;
    s2 ^= s0;
    s3 ^= s1;
    s1 ^= s2;
    s0 ^= s3;
    s2 ^= shifted;
    s3 = rotated(s3, 11);
    return result;
  };
}

function rotated(x: number, by: number): number {
  return (x << by) | (x >>> (32 - by));
}

function finalised(x: number): number {
  let h = x;
  h = Math.imul(h ^ (h >>> 16), MIX_1);
  h = Math.imul(h ^ (h >>> 13), MIX_2);
  return h ^ (h >>> 16);
}
