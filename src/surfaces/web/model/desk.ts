// The page's own desk: texts as they are on disk, edits over them, and what the workers answer. Nothing is computed here.
import { batch, computed, effect, signal } from "@preact/signals";
import type { Answer } from "../../../kernel/answer.ts";
import type { Finding } from "../../../kernel/finding.ts";
import type { Household } from "../worker/household.ts";
import type { Answered, AskName, FromWorker, Numbers, OfAsk, ReplyOf, ToWorker } from "../worker/protocol.ts";
import type { Laid, Tried, View } from "../worker/view.ts";
import { noTrail, type Trail } from "./edits.ts";
import { route } from "./place.ts";
import type { DiskFile } from "./server.ts";
import { wished } from "./wishes.ts";

/** Name of the folder; null until the server has answered. */
export const folder = signal<string | null>(null);
export const disk = signal<ReadonlyMap<string, DiskFile>>(new Map());
export const diskFindings = signal<readonly Finding[]>([]);
export const trail = signal<Trail>(noTrail);
export const edits = computed(() => trail.value.now);

/** Texts as the page has them: on disk, or as typed in the file view. */
export const texts = computed<ReadonlyMap<string, string>>(
  () => new Map([...[...disk.value].map(([path, { text }]) => [path, text] as const), ...edits.value.texts]),
);

/** Options laid over, in order. */
export const laid = computed<readonly Laid[]>(() =>
  route.value.options.flatMap((text) => {
    const [machine, name] = text.split("/");
    return machine !== undefined && name !== undefined ? [{ machine, name }] : [];
  }),
);

/** Values tried out over the options while the page that tries them is shown. */
export const laidTries = signal<readonly Tried[]>([]);

/** The nominal answer comes first; the one with bands after it. */
export const nominal = signal<Answered | null>(null);
export const banded = signal<Answered | null>(null);
/** The number of the view whose answers are awaited. */
export const pass = signal(0);
export const trouble = signal<string | null>(null);
export const household = signal<Household | null>(null);

/** The newest answer there is, whatever its mode. */
export const newest = computed<Answered | null>(() => {
  const [a, b] = [nominal.value, banded.value];
  return a === null || b === null ? (a ?? b) : a.pass > b.pass ? a : b;
});
export const answer = computed<Answer | null>(() => newest.value?.answer ?? null);
/** Bands on the screen belong to an older view: they are shown in ink-3 until theirs come. */
export const isStale = computed(() => banded.value === null || banded.value.pass < pass.value);
/** Nothing better is coming for this view. */
export const isSettled = computed(() => banded.value?.pass === pass.value && banded.value.mode === "full");

interface Open {
  readonly fulfil: (reply: unknown) => void;
  readonly reject: (error: Error) => void;
}
const open = new Map<number, Open>();
let lastAsk = 0;

const worker = new Worker(new URL("../worker/worker.ts", import.meta.url), { type: "module" });
worker.onmessage = ({ data }: MessageEvent<FromWorker>) => receive(data);
worker.onerror = (event) => {
  trouble.value = `The worker stopped: ${event.message}`;
};

function tell(message: ToWorker): void {
  worker.postMessage(message);
}

function receive(message: FromWorker): void {
  switch (message.say) {
    case "answer":
      take(message);
      return;
    case "numbers":
      takeNumbers(message);
      return;
    case "failed":
      if (message.pass === pass.value) trouble.value = message.says;
      return;
    case "reply":
      open.get(message.id)?.fulfil(message.reply);
      open.delete(message.id);
      return;
    case "no-reply":
      open.get(message.id)?.reject(new Error(message.says));
      open.delete(message.id);
  }
}

function take(answered: Answered): void {
  // An answer to a view before the last one shown is nobody's any more.
  const before = answered.mode === "nominal" ? nominal.value : banded.value;
  if (before !== null && answered.pass < before.pass) return;
  batch(() => {
    if (answered.mode === "nominal") nominal.value = answered;
    else banded.value = answered;
    if (answered.pass === pass.value) trouble.value = null;
  });
}

/** Nominal numbers laid over the last answer: everything else of it stands until the next whole one. */
function takeNumbers({ pass: number, margins, figures, refused }: Numbers): void {
  const before = newest.value;
  if (before === null || number < before.pass) return;
  const checks = before.answer.checks.map((c) => {
    const now = margins[c.address];
    return now === undefined ? c : { ...c, margin: { ...c.margin, nominal: now } };
  });
  const shown = Object.fromEntries(
    Object.entries(figures).map(([address, f]) => {
      const had = before.answer.figures[address]?.amount;
      return [address, had ? { ...f, amount: { ...had, nominal: f.amount.nominal, text: f.amount.text } } : f];
    }),
  );
  take({ ...before, pass: number, mode: "nominal", answer: { ...before.answer, checks, figures: shown }, refused });
}

/** Asks the worker; it answers from the best that it has worked out for what is looked at now. */
export function ask<K extends AskName>(name: K, of: OfAsk<K>): Promise<ReplyOf<K>> {
  const id = (lastAsk += 1);
  tell({ say: "ask", id, name, of });
  return new Promise((fulfil, reject) => {
    open.set(id, { fulfil: fulfil as (reply: unknown) => void, reject });
  });
}

let sent: ReadonlyMap<string, string> = new Map();
let view: View | null = null;

/** Sends what changed to the worker, now and whenever it changes. */
export function startDesk(): void {
  void ask("household", null).then((reply) => {
    household.value = reply;
  });
  effect(() => {
    if (folder.value === null) return;
    const changed = differences(sent, texts.value);
    sent = texts.value;
    if (changed.length > 0) tell({ say: "texts", texts: changed });
    const values = [...edits.value.values].map(([address, value]) => ({ address, value }));
    const next: View = { pass: (view?.pass ?? 0) + 1, values, options: laid.value, tries: laidTries.value, units: wished.units.value };
    if (view !== null && changed.length === 0 && sameView(view, next)) return;
    view = next;
    pass.value = next.pass;
    tell({ say: "view", view: next });
  });
}

function sameView(a: View, b: View): boolean {
  return JSON.stringify({ ...a, pass: 0 }) === JSON.stringify({ ...b, pass: 0 });
}

function differences(before: ReadonlyMap<string, string>, now: ReadonlyMap<string, string>): [string, string | null][] {
  const gone = [...before.keys()].filter((path) => !now.has(path)).map((path): [string, null] => [path, null]);
  return [...[...now].filter(([path, text]) => before.get(path) !== text), ...gone];
}
