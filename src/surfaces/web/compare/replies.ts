// Columns worked out one after another while nothing else is asked; an edit begins again, choosing a column does not.
import { useEffect, useState } from "preact/hooks";
import { ask, disk, edits, isSettled, pass } from "../model/desk.ts";
import { wished } from "../model/wishes.ts";
import type { ColumnReply } from "../worker/comparing.ts";
import type { Laid, Tried } from "../worker/view.ts";

export interface Wanted {
  readonly key: string;
  readonly options: readonly Laid[];
  readonly tries: readonly Tried[];
}

export interface Held {
  readonly reply: ColumnReply;
  /** It belongs to an older state of the files or of the edits. */
  readonly isStale: boolean;
}

interface Kept {
  readonly reply: ColumnReply;
  readonly of: string;
  readonly state: readonly unknown[];
}

/** What is known of the columns, by their keys. */
export function useReplies(columns: readonly Wanted[]): ReadonlyMap<string, Held> {
  const [kept, setKept] = useState<ReadonlyMap<string, Kept>>(new Map());
  const state = [edits.value.values, edits.value.texts, disk.value, wished.units.value];
  const isFresh = (k: Kept | undefined, w: Wanted): boolean => k?.of === JSON.stringify(w) && k.state.every((part, i) => part === state[i]);
  const settled = isSettled.value ? pass.value : null;
  const words = JSON.stringify(columns);
  useEffect(() => {
    if (settled === null) return undefined;
    let isCurrent = true;
    const work = async (): Promise<void> => {
      for (const wanted of columns) {
        if (isFresh(kept.get(wanted.key), wanted)) continue;
        const reply = await ask("column", { options: wanted.options, tries: wanted.tries }).catch(() => null);
        if (!isCurrent) return;
        if (reply) setKept((all) => new Map(all).set(wanted.key, { reply, of: JSON.stringify(wanted), state }));
      }
    };
    void work();
    return () => {
      isCurrent = false;
    };
    // Columns are compared by what they say; what is kept changes while they are worked out.
    // oxlint-disable-next-line react-hooks/exhaustive-deps
  }, [settled, words]);
  return new Map(
    columns.flatMap((w): [string, Held][] => {
      const k = kept.get(w.key);
      return k ? [[w.key, { reply: k.reply, isStale: !isFresh(k, w) }]] : [];
    }),
  );
}
