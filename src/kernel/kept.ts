// Answers of slow pure functions, kept by all that goes into them: a kept answer is never wrong, only forgotten.

/** Where answers outlast this start of the program. It gives back what was put under that very key, or nothing. */
export interface Shelf {
  readonly take: (key: string) => unknown;
  readonly put: (key: string, answer: unknown) => void;
}

let shelf: Shelf | null = null;
/** Lends a shelf to all that is kept from now on; null takes it away. */
export function lend(one: Shelf | null): void {
  shelf = one;
}

/** Answers had sooner than this are had again sooner than a disk gives them back [s]. */
const worthPutting = 1e-3;

/** The answer under a key from the shelf, or made now and put there. */
export function shelved<T>(key: string, make: () => T): T {
  const had = shelf?.take(key) as T | undefined; // put under this key by this function
  if (had !== undefined) return had;
  const start = performance.now();
  const made = make();
  if (performance.now() - start > worthPutting * 1e3) shelf?.put(key, made);
  return made;
}

const answers = new Map<string, unknown>();
const mostKept = 20_000;

/** The answer under a key from memory, or made now and kept there. */
export function kept<T>(key: string, make: () => T): T {
  if (answers.has(key)) return answers.get(key) as T;
  const answer = make();
  if (answers.size >= mostKept) answers.clear();
  answers.set(key, answer);
  return answer;
}
