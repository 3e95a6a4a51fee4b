// A benchmark compares two things in one process, turn by turn: the machine's mood hits both, so their ratio is steadier than any time.

/** Two ways to spend time; a bench file exports one or several as `benches`. */
export interface Pair {
  /** What the ratio is, readable aloud, with the bar it is held against if it has one. */
  readonly says: string;
  readonly base: () => unknown;
  readonly subject: () => unknown;
}

/** Two things that say themselves how long they took [s], each a turn long: what happens in another process or in a browser. */
export interface TimedPair {
  readonly says: string;
  readonly base: () => Promise<number>;
  readonly subject: () => Promise<number>;
}

/** Time of the subject over time of the base: the middle ratio of all turns, and the quartiles about it. */
export interface Ratio {
  readonly lower: number;
  readonly median: number;
  readonly upper: number;
  /** Median time of one call of the base, and of the subject [s], so that a ratio of two trifles can be seen as one. */
  readonly baseTime: number;
  readonly subjectTime: number;
}

/** A turn is long enough for the clock and short enough that both sides of a ratio meet the same load [s]. */
const turnTime = 5e-3;

/** Turns are of the form 4 k + 1, so that median and quartiles are turns that took place; slow pairs get fewer. */
const mostTurns = 101;
const fewestTurns = 13;
const timeForAll = 5;

/** Results land where anyone might read them, so that no compiler may leave the work out. */
const kept: [unknown] = [null];

/** Seconds that one call takes, as the mean over a turn. */
function callTime(work: () => unknown, calls: number): number {
  const start = performance.now();
  for (let i = 0; i < calls; i++) kept[0] = work();
  return (performance.now() - start) / 1e3 / calls;
}

/** Calls that fill one turn, found by doubling (which warms the code up too), and the time of such a turn [s]. */
function turnOf(work: () => unknown): { calls: number; time: number } {
  for (let calls = 1; ; calls *= 2) {
    const time = callTime(work, calls) * calls;
    if (time >= turnTime) return { calls, time };
  }
}

/** Who goes first changes from turn to turn, so that neither always clears the other's waste. */
export function ratioOf({ base, subject }: Pair): Ratio {
  const [b, s] = [turnOf(base), turnOf(subject)];
  const turns: Turn[] = [];
  for (let left = turnsWorth(b.time + s.time); left > 0; left--) {
    const early = turns.length % 2 === 0 ? callTime(base, b.calls) : null;
    const ofSubject = callTime(subject, s.calls);
    turns.push([early ?? callTime(base, b.calls), ofSubject]);
  }
  return ratioOver(turns);
}

/** The same for two that time themselves. */
export async function timedRatioOf({ base, subject }: TimedPair): Promise<Ratio> {
  const [b, s] = [await base(), await subject()];
  const turns: Turn[] = [];
  for (let left = turnsWorth(b + s); left > 0; left--) {
    const early = turns.length % 2 === 0 ? await base() : null;
    const ofSubject = await subject();
    turns.push([early ?? (await base()), ofSubject]);
  }
  return ratioOver(turns);
}

/** Time of a call of the base and of one of the subject [s]. */
type Turn = readonly [number, number];

/** As many turns of this length [s] as can be afforded. */
function turnsWorth(time: number): number {
  return Math.min(mostTurns, Math.max(fewestTurns, 4 * Math.floor(timeForAll / time / 4) + 1));
}

function ratioOver(turns: readonly Turn[]): Ratio {
  const ratios = turns.map(([base, subject]) => subject / base);
  return {
    lower: rank(ratios, 0.25),
    median: rank(ratios, 0.5),
    upper: rank(ratios, 0.75),
    baseTime: rank(
      turns.map(([base]) => base),
      0.5,
    ),
    subjectTime: rank(
      turns.map(([, subject]) => subject),
      0.5,
    ),
  };
}

function rank(values: readonly number[], share: number): number {
  return values.toSorted((a, b) => a - b)[Math.round((values.length - 1) * share)] ?? NaN;
}
