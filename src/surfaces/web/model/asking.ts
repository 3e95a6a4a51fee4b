// A question that a part of the page keeps asking: again with every answer that knows more, the last reply shown until then.
import { useEffect, useState } from "preact/hooks";
import type { AskName, OfAsk, ReplyOf } from "../worker/protocol.ts";
import { ask, newest, pass } from "./desk.ts";

interface Asked<R> {
  readonly reply: R | null;
  /** The reply belongs to an older state of the shop. */
  readonly isStale: boolean;
  readonly failed: string | null;
}

interface Held<R> {
  readonly key: string;
  readonly pass: number;
  readonly reply: R | null;
  readonly failed: string | null;
}

/** `of` null asks nothing. */
export function useAsk<K extends AskName>(name: K, of: OfAsk<K> | null): Asked<ReplyOf<K>> {
  const [held, hold] = useState<Held<ReplyOf<K>> | null>(null);
  const key = JSON.stringify([name, of]);
  const at = newest.value;
  const asked = at === null ? null : `${at.pass} ${at.mode}`;
  useEffect(() => {
    if (of === null || at === null) return undefined;
    let isCurrent = true;
    ask(name, of).then(
      (reply) => isCurrent && hold({ key, pass: at.pass, reply, failed: null }),
      (error: unknown) =>
        isCurrent && hold({ key, pass: at.pass, reply: null, failed: error instanceof Error ? error.message : String(error) }),
    );
    return () => {
      isCurrent = false;
    };
    // `of` is compared by what it says, `at` by its pass and mode.
  }, [key, asked]);
  if (held === null || held.key !== key) return { reply: null, isStale: false, failed: null };
  return { reply: held.reply, isStale: held.pass < pass.value, failed: held.failed };
}
