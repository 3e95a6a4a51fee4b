// Options tried out one after another while nothing else is asked: what each would cure.
import { effect, signal } from "@preact/signals";
import type { Outcomes } from "../worker/trials.ts";
import { answer, ask, banded, isSettled, laid, pass } from "./desk.ts";
import { machine } from "./place.ts";

/** By `machine/name`, for the present view; it grows while they are tried. */
export const optionTrials = signal<ReadonlyMap<string, Outcomes>>(new Map());
export const areTrialsDone = signal(false);

let last: Promise<unknown> = Promise.resolve();

/** One trial after another: several at once would only make each other, and every other question, wait. */
export function queued<T>(of: () => Promise<T>): Promise<T> {
  const next = last.then(of);
  last = next.catch(() => null);
  return next;
}

let wanted = 0;
let running: number | null = null;

/** Called by pages that show cures; returns how to stop wanting them. */
export function wantTrials(): () => void {
  wanted += 1;
  void run();
  return () => {
    wanted -= 1;
  };
}

async function run(): Promise<void> {
  const now = pass.value;
  if (wanted === 0 || running === now || !isSettled.value) return;
  running = now;
  optionTrials.value = new Map();
  areTrialsDone.value = false;
  const root = machine.value;
  const all = (answer.value?.options ?? []).filter(
    (o) => (root === null || o.machine === root) && !laid.value.some((l) => l.machine === o.machine && l.name === o.name),
  );
  for (const { machine: of, name } of all) {
    const outcomes = await queued(() => (running === now ? ask("tryOption", { machine: of, name }) : Promise.resolve(null))).catch(
      () => null,
    );
    if (running !== now || pass.value !== now || wanted === 0) {
      if (running === now) running = null;
      return;
    }
    if (outcomes) optionTrials.value = new Map(optionTrials.value).set(`${of}/${name}`, outcomes);
  }
  areTrialsDone.value = true;
}

export function startTrials(): void {
  effect(() => {
    // Read so that it runs again when a full answer is there, or another machine is looked at.
    const ready = isSettled.value && banded.value !== null;
    void machine.value;
    if (ready) queueMicrotask(() => void run());
  });
}
