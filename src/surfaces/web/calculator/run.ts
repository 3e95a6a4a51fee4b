// A figure worked out along its places: a few at a time, so that an edit and a stop come in between.
import { useEffect, useRef, useState } from "preact/hooks";
import type { System } from "../../../kernel/display.ts";
import { ask } from "../model/desk.ts";
import type { AlongReply } from "../worker/working-out.ts";
import type { Places } from "./places.ts";

/** So many values are asked for at once: between two questions an edit comes in, and a stop. */
const atOnce = 6;

const noRun: AlongReply = { unit: "", nominal: [], low: [], high: [], says: null };

const joined = (all: AlongReply, more: AlongReply): AlongReply => ({
  unit: more.unit === "" ? all.unit : more.unit,
  nominal: [...all.nominal, ...more.nominal],
  low: [...all.low, ...more.low],
  high: [...all.high, ...more.high],
  says: all.says ?? more.says,
});

export interface Running {
  /** The last run that came to an end, or was stopped: it stays on the screen until the next one has. */
  readonly run: { readonly reply: AlongReply; readonly x: readonly number[]; readonly unit: string } | null;
  readonly done: number;
  readonly isRunning: boolean;
  readonly stop: () => void;
}

const pause = 200; // ms: letters come in bursts

/** Works along the places, a few at a time. */
export function useRun(figure: string, values: ReadonlyMap<string, string>, along: string, places: Places, system: System): Running {
  const [run, setRun] = useState<Running["run"]>(null);
  const [done, setDone] = useState<number | null>(null);
  const isStopped = useRef(false);
  const key = JSON.stringify([figure, [...values].filter(([name]) => name !== along), along, places.texts, system]);
  useEffect(() => {
    let isCurrent = true;
    isStopped.current = false;
    const work = async (): Promise<void> => {
      let all = noRun;
      for (let i = 0; i < places.texts.length && !isStopped.current; i += atOnce) {
        setDone(i);
        const texts = places.texts.slice(i, i + atOnce);
        const reply = await ask("workAlong", { figure, values: Object.fromEntries(values), along, texts, system });
        if (!isCurrent) return;
        all = joined(all, reply);
      }
      setDone(null);
      setRun({ reply: all, x: places.x.slice(0, all.nominal.length), unit: places.unit });
    };
    const later = setTimeout(() => {
      work().catch((error: unknown) => {
        if (!isCurrent) return;
        setDone(null);
        setRun({ reply: { ...noRun, says: error instanceof Error ? error.message : String(error) }, x: [], unit: "" });
      });
    }, pause);
    return () => {
      isCurrent = false;
      clearTimeout(later);
    };
    // Everything that counts is in the key.
    // oxlint-disable-next-line react-hooks/exhaustive-deps
  }, [key]);
  const stop = (): void => {
    isStopped.current = true;
  };
  return { run, done: done ?? 0, isRunning: done !== null, stop };
}
