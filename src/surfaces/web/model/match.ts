// Finding things by a few letters: of their address, their words, their symbol.

interface Findable {
  readonly id: string;
  readonly says: string;
  readonly symbol: string;
}

/** Those in which every word of the query occurs, best first; of equal ones the order stays. */
export function found<T extends Findable>(query: string, all: readonly T[], most: number): T[] {
  const words = query
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== "");
  if (words.length === 0) return all.slice(0, most);
  return all
    .map((one) => ({ one, score: score(words, query.trim(), one) }))
    .filter(({ score: s }) => s > 0)
    .toSorted((a, b) => b.score - a.score)
    .slice(0, most)
    .map(({ one }) => one);
}

/** 0 where a word is missing. A symbol typed out beats everything; the start of a word beats its middle; words beat the address. */
function score(words: readonly string[], query: string, { id, says, symbol }: Findable): number {
  if (symbol !== "" && symbol === query) return 1000;
  const [text, address] = [says.toLowerCase(), id.toLowerCase()];
  let sum = 0;
  for (const word of words) {
    const at = startsWord(word, text) ? 4 : text.includes(word) ? 2 : startsWord(word, address) ? 3 : address.includes(word) ? 1 : 0;
    const bySymbol = symbol.toLowerCase() === word ? 5 : 0;
    if (at + bySymbol === 0) return 0;
    sum += Math.max(at, bySymbol);
  }
  // Of two that fit alike the shorter one is meant.
  return sum + 1 / (1 + id.length);
}

function startsWord(word: string, text: string): boolean {
  for (let at = text.indexOf(word); at >= 0; at = text.indexOf(word, at + 1))
    if (at === 0 || /[^a-z0-9]/.test(text.charAt(at - 1))) return true;
  return false;
}
