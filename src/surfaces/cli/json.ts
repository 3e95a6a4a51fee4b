// Answers for other programs: JSON with sorted keys, so that two answers can be compared line by line.

/** Two blanks a level, keys in the order of their code points, lists as they are. */
export function json(value: unknown): string {
  return `${JSON.stringify(sorted(value), null, 2)}\n`;
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (value instanceof Map) return sorted(Object.fromEntries(value));
  if (typeof value !== "object" || value === null) return value;
  const entries = Object.entries(value).toSorted(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(entries.map(([key, v]) => [key, sorted(v)]));
}
