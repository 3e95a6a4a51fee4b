// Texts compared line by line: what changed between two, and what two people made of a third.

/** A stretch of lines in the old text and what stands there in the new one; counted from 0, ends exclusive. */
export interface Hunk {
  readonly from: number;
  readonly to: number;
  readonly newFrom: number;
  readonly newTo: number;
}

/** Lines with their line ends, so that joined they are the text again. */
export function linesIn(text: string): string[] {
  return text.match(/[^\n]*\n|[^\n]+$/g) ?? [];
}

/** The fewest changed lines that lead from one text to the other (E. W. Myers, An O(ND) difference algorithm, Algorithmica 1, 1986). */
export function hunks(before: readonly string[], after: readonly string[]): Hunk[] {
  let head = 0;
  while (head < before.length && head < after.length && before[head] === after[head]) head += 1;
  let tail = 0;
  const most = Math.min(before.length, after.length) - head;
  while (tail < most && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail += 1;
  const a = before.slice(head, before.length - tail);
  const b = after.slice(head, after.length - tail);
  return joined(kept(a, b), a.length, b.length).map((h) => ({
    from: h.from + head,
    to: h.to + head,
    newFrom: h.newFrom + head,
    newTo: h.newTo + head,
  }));
}

type Pair = readonly [number, number];

/** Pairs of lines that stay, in order. */
function kept(a: readonly string[], b: readonly string[]): Pair[] {
  const [n, m] = [a.length, b.length];
  const reach = new Map<number, number>([[1, 0]]);
  const trail: Map<number, number>[] = [];
  for (let d = 0; d <= n + m; d += 1) {
    trail.push(new Map(reach));
    for (let k = -d; k <= d; k += 2) {
      const down = k === -d || (k !== d && (reach.get(k - 1) ?? -1) < (reach.get(k + 1) ?? -1));
      let x = down ? (reach.get(k + 1) ?? 0) : (reach.get(k - 1) ?? 0) + 1;
      while (x < n && x - k < m && a[x] === b[x - k]) x += 1;
      reach.set(k, x);
      if (x >= n && x - k >= m) return backwards(trail, n, m);
    }
  }
  return [];
}

function backwards(trail: readonly Map<number, number>[], n: number, m: number): Pair[] {
  const pairs: Pair[] = [];
  let [x, y] = [n, m];
  for (let d = trail.length - 1; d >= 0; d -= 1) {
    const reach = trail[d] ?? new Map<number, number>();
    const k = x - y;
    const down = k === -d || (k !== d && (reach.get(k - 1) ?? -1) < (reach.get(k + 1) ?? -1));
    const from = down ? k + 1 : k - 1;
    const px = d === 0 ? 0 : (reach.get(from) ?? 0);
    const py = d === 0 ? 0 : px - from;
    while (x > px && y > py) {
      x -= 1;
      y -= 1;
      pairs.push([x, y]);
    }
    [x, y] = [px, py];
  }
  return pairs.reverse();
}

/** What lies between the lines that stay. */
function joined(pairs: readonly Pair[], n: number, m: number): Hunk[] {
  const found: Hunk[] = [];
  let [x, y] = [0, 0];
  for (const [px, py] of [...pairs, [n, m] as const]) {
    if (px > x || py > y) found.push({ from: x, to: px, newFrom: y, newTo: py });
    [x, y] = [px + 1, py + 1];
  }
  return found;
}

/** A stretch of a merged text: agreed on, or made differently by both. */
export type Piece =
  | { readonly is: "agreed"; readonly lines: readonly string[] }
  | { readonly is: "conflict"; readonly base: readonly string[]; readonly theirs: readonly string[]; readonly ours: readonly string[] };

/** Two texts made from one: changes that do not meet are taken both, those that meet are left to the user. */
export function merged(base: string, theirs: string, ours: string): Piece[] {
  const [b, t, o] = [linesIn(base), linesIn(theirs), linesIn(ours)];
  const changes = [
    ...hunks(b, t).map((h) => ({ ...h, by: "theirs" as const })),
    ...hunks(b, o).map((h) => ({ ...h, by: "ours" as const })),
  ].sort((p, q) => p.from - q.from || p.to - q.to);
  const pieces: Piece[] = [];
  const say = (lines: readonly string[]): void => {
    const last = pieces.at(-1);
    if (lines.length === 0) return;
    if (last?.is === "agreed") pieces[pieces.length - 1] = { is: "agreed", lines: [...last.lines, ...lines] };
    else pieces.push({ is: "agreed", lines });
  };
  let at = 0;
  for (let i = 0; i < changes.length;) {
    const first = changes[i];
    if (!first) break;
    // All changes that touch one another, by whomever, are one stretch.
    let to = first.to;
    let j = i + 1;
    for (let next = changes[j]; next && (next.from < to || (next.from === to && next.by !== first.by)); next = changes[j]) {
      to = Math.max(to, next.to);
      j += 1;
    }
    const group = changes.slice(i, j);
    say(b.slice(at, first.from));
    const side = (by: "theirs" | "ours", text: readonly string[]): readonly string[] =>
      stretch(
        group.filter((h) => h.by === by),
        first.from,
        to,
        b,
        text,
      );
    const [theirLines, ourLines] = [side("theirs", t), side("ours", o)];
    const baseLines = b.slice(first.from, to);
    if (sameLines(theirLines, ourLines) || sameLines(ourLines, baseLines)) say(theirLines);
    else if (sameLines(theirLines, baseLines)) say(ourLines);
    else pieces.push({ is: "conflict", base: baseLines, theirs: theirLines, ours: ourLines });
    at = to;
    i = j;
  }
  say(b.slice(at));
  return pieces;
}

/** What one side made of the base lines from `from` to `to`. */
function stretch(own: readonly Hunk[], from: number, to: number, base: readonly string[], text: readonly string[]): string[] {
  const lines: string[] = [];
  let at = from;
  for (const h of own) {
    lines.push(...base.slice(at, h.from), ...text.slice(h.newFrom, h.newTo));
    at = h.to;
  }
  return [...lines, ...base.slice(at, to)];
}

function sameLines(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((line, i) => line === b[i]);
}

/** The merged text; of each conflict the side that was chosen. */
export function resolved(pieces: readonly Piece[], choice: (conflict: number) => "theirs" | "ours"): string {
  let n = -1;
  return pieces
    .flatMap((p) => {
      if (p.is === "agreed") return p.lines;
      n += 1;
      return p[choice(n)];
    })
    .join("");
}
