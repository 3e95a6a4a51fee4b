// The digest that names a text: SHA-256, own and synchronous, because a page over plain http has no crypto.subtle.

const blockBytes = 64;
/** A block ends with the length of the text in bits, as one 64-bit number. */
const lengthBytes = 8;

const primes = firstPrimes(64);
/** FIPS 180-4 section 4.2.2: first 32 bits of the fractional parts of the cube roots of the first 64 primes. */
const K = Int32Array.from(primes, (prime) => fractionBits(Math.cbrt(prime)));
/** FIPS 180-4 section 5.3.3: the same of the square roots of the first eight. */
const start = Int32Array.from(primes.slice(0, 8), (prime) => fractionBits(Math.sqrt(prime)));

/**
 * SHA-256 of a text as UTF-8, in 64 lower-case hexadecimal digits.
 *
 * Source: FIPS 180-4 (NIST, 2015), sections 4.1.2, 5.1.1 and 6.2. A lone surrogate is encoded as U+FFFD, as TextEncoder does.
 */
export function sha256(text: string): string {
  const bytes = padded(new TextEncoder().encode(text));
  const words = new DataView(bytes.buffer);
  const hash = start.slice();
  const W = new Int32Array(64);
  for (let at = 0; at < bytes.length; at += blockBytes) {
    for (let t = 0; t < 16; t++) W[t] = words.getInt32(at + 4 * t);
    digestBlock(hash, W);
  }
  return Array.from(hash, (word) => (word >>> 0).toString(16).padStart(8, "0")).join("");
}

/** One round over a block, FIPS 180-4 section 6.2.2; the first 16 words of W hold the block. */
function digestBlock(hash: Int32Array, W: Int32Array): void {
  for (let t = 16; t < 64; t++) {
    const near = word(W, t - 2);
    const far = word(W, t - 15);
    const sigma_1 = turned(near, 17) ^ turned(near, 19) ^ (near >>> 10);
    const sigma_0 = turned(far, 7) ^ turned(far, 18) ^ (far >>> 3);
    W[t] = sigma_1 + word(W, t - 7) + sigma_0 + word(W, t - 16);
  }
  let a = word(hash, 0);
  let b = word(hash, 1);
  let c = word(hash, 2);
  let d = word(hash, 3);
  let e = word(hash, 4);
  let f = word(hash, 5);
  let g = word(hash, 6);
  let h = word(hash, 7);
  for (let t = 0; t < 64; t++) {
    const Sigma_1 = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25);
    const choice = (e & f) ^ (~e & g);
    const T_1 = (h + Sigma_1 + choice + word(K, t) + word(W, t)) | 0;
    const Sigma_0 = turned(a, 2) ^ turned(a, 13) ^ turned(a, 22);
    const majority = (a & b) ^ (a & c) ^ (b & c);
    h = g;
    g = f;
    f = e;
    e = (d + T_1) | 0;
    d = c;
    c = b;
    b = a;
    a = (T_1 + Sigma_0 + majority) | 0;
  }
  // Int32Array wraps sums to 32 bits, which is the addition the standard asks for.
  [a, b, c, d, e, f, g, h].forEach((add, i) => (hash[i] = word(hash, i) + add));
}

/** FIPS 180-4 section 5.1.1: the text, a one bit, zeros, the length in bits. */
function padded(text: Uint8Array): Uint8Array<ArrayBuffer> {
  const blocks = Math.ceil((text.length + 1 + lengthBytes) / blockBytes);
  const bytes = new Uint8Array(blocks * blockBytes);
  bytes.set(text);
  bytes[text.length] = 0x80;
  new DataView(bytes.buffer).setBigUint64(bytes.length - lengthBytes, BigInt(text.length) * 8n);
  return bytes;
}

function turned(x: number, right: number): number {
  return (x >>> right) | (x << (32 - right));
}

function word(words: Int32Array, i: number): number {
  return words[i] ?? 0;
}

/** None of the 72 roots comes nearer than 0.0009 to a whole number here; a double is off by 0.000004 at most, so the floor is sure. */
function fractionBits(root: number): number {
  return Math.floor((root % 1) * 2 ** 32);
}

function firstPrimes(count: number): number[] {
  const found: number[] = [];
  for (let n = 2; found.length < count; n++) if (found.every((prime) => n % prime !== 0)) found.push(n);
  return found;
}
