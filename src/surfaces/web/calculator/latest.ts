// Questions that do not depend on the shop: asked when they change, one at a time, and only the last of those that came meanwhile.
import { useEffect, useRef, useState } from "preact/hooks";
import { ask } from "../model/desk.ts";
import type { AskName, OfAsk, ReplyOf } from "../worker/protocol.ts";

interface Latest<R> {
  readonly reply: R | null;
  /** The reply is to what was asked before. */
  readonly isStale: boolean;
  readonly failed: string | null;
}

/** `of` null asks nothing. */
export function useLatest<K extends AskName>(name: K, of: OfAsk<K> | null): Latest<ReplyOf<K>> {
  const [held, hold] = useState<{ key: string; reply: ReplyOf<K> | null; failed: string | null } | null>(null);
  const key = JSON.stringify(of);
  const wanted = useRef({ key, of });
  wanted.current = { key, of };
  const isBusy = useRef(false);
  useEffect(() => {
    const next = async (): Promise<void> => {
      const { key: now, of: what } = wanted.current;
      if (isBusy.current || what === null) return;
      isBusy.current = true;
      const answered = await ask(name, what).then(
        (reply) => ({ reply, failed: null }),
        (error: unknown) => ({ reply: null, failed: error instanceof Error ? error.message : String(error) }),
      );
      isBusy.current = false;
      hold({ key: now, ...answered });
      if (wanted.current.key !== now) void next();
    };
    void next();
  }, [key]);
  if (held === null || of === null) return { reply: null, isStale: false, failed: null };
  return { reply: held.reply, isStale: held.key !== key, failed: held.key === key ? held.failed : null };
}
