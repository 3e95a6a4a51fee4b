// A text as it lies on disk and as the editor holds it: every line end and a byte order mark stay what they are.

/** The byte order mark that some editors put before a text. */
const mark = "\uFEFF";

/** As the editor holds it: line feeds alone, no mark. */
export function plainOf(raw: string): string {
  return (raw.startsWith(mark) ? raw.slice(1) : raw).replaceAll(/\r\n?/g, "\n");
}

/** One change of the plain text: in its places before all changes. */
export interface Change {
  readonly from: number;
  readonly to: number;
  readonly insert: string;
}

/** The raw text with changes that were made to the plain one, in their order; new lines end as most lines of the text do. */
export function applied(raw: string, changes: readonly Change[]): string {
  const places = rawPlaces(raw);
  const end = usualEnd(raw);
  let next = "";
  let done = 0;
  for (const { from, to, insert } of changes) {
    const [start, stop] = [places(from), places(to)];
    next += raw.slice(done, start) + insert.replaceAll("\n", end);
    done = stop;
  }
  return next + raw.slice(done);
}

/** Where a place of the plain text is in the raw one; places are asked for in rising order. */
function rawPlaces(raw: string): (plain: number) => number {
  let at = raw.startsWith(mark) ? 1 : 0;
  let count = 0;
  return (plain) => {
    while (count < plain && at < raw.length) {
      at += raw.startsWith("\r\n", at) ? 2 : 1;
      count += 1;
    }
    return at;
  };
}

function usualEnd(raw: string): string {
  const pairs = raw.match(/\r\n/g)?.length ?? 0;
  const feeds = (raw.match(/\n/g)?.length ?? 0) - pairs;
  return pairs > feeds ? "\r\n" : "\n";
}

/** The one change that leads from a text to another: what differs between their common start and their common end. */
export function difference(before: string, after: string): Change | null {
  if (before === after) return null;
  const most = Math.min(before.length, after.length);
  let head = 0;
  while (head < most && before[head] === after[head]) head += 1;
  let tail = 0;
  while (tail < most - head && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail += 1;
  return { from: head, to: before.length - tail, insert: after.slice(head, after.length - tail) };
}
