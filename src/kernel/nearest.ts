// The nearest valid word to a misspelt one, by edit distance.

/** Words longer than this are no slip of the finger, and would only cost time. */
const longestWord = 60;

/**
 * The candidate nearest to the word, or undefined when none is near.
 *
 * Distance: insertions, deletions, substitutions and swaps of neighbours (Damerau 1964; optimal string alignment), case ignored.
 * Near is at most a third of the word's letters, at least 1; a word of one letter has no neighbours but its other case.
 * Of equals the first wins.
 */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  if (word.length === 0 || word.length > longestWord) return undefined;
  const limit = word.length === 1 ? 0 : Math.max(1, Math.floor(word.length / 3));
  const lower = word.toLowerCase();
  let best: string | undefined;
  let least = limit + 1;
  for (const candidate of candidates) {
    if (Math.abs(candidate.length - word.length) >= least) continue;
    const distance = editDistance(lower, candidate.toLowerCase());
    if (distance < least) [best, least] = [candidate, distance];
  }
  return best;
}

function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let least = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + (same ? 0 : 1));
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) least = Math.min(least, (beforeLast[j - 2] ?? 0) + 1);
      row.push(least);
    }
    [beforeLast, last] = [last, row];
  }
  return last[b.length] ?? 0;
}
