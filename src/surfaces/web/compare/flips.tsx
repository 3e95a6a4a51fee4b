// Which verdicts the values tried out change.
import type { JSX } from "preact";
import { counted } from "../model/numbers.ts";
import { workingLink } from "../model/place.ts";
import { thingName } from "../model/things.ts";
import { VerdictWord } from "../parts/verdict.tsx";
import type { Column } from "./column.ts";
import { isMine, isSame, type Names } from "./columns.ts";
import { useLive } from "./live.ts";

/** Checks that have another verdict with the values than without them. */
export function Flips({ root, columns: given, over }: { root: string; columns: readonly Column[]; over: Names }): JSX.Element {
  const columns = useLive(given);
  const tried = columns.find((c) => c.isTried);
  const base = columns.find((c) => !c.isTried && isSame(c.names, over));
  if (!tried?.reply || !base?.reply) return <p class="small q">…</p>;
  const before = new Map(base.reply.checks.map((c) => [c.address, c.now]));
  const flips = tried.reply.checks.flatMap((c) => {
    const was = before.get(c.address) ?? null;
    return isMine(c.address, root) && was && c.now && was.verdict !== c.now.verdict ? [{ ...c, was, now: c.now }] : [];
  });
  return (
    <div class={`flips${tried.isStale ? " stale" : ""}`} aria-live="polite">
      <h3>
        {flips.length === 0 ? "No verdict changes" : `${counted(flips.length, "verdict")} ${flips.length === 1 ? "changes" : "change"}`}
      </h3>
      <ul>
        {flips.map((f) => (
          <li key={f.address}>
            <VerdictWord verdict={f.was.verdict} size={12} />
            <span class="q" aria-label="becomes">
              →
            </span>
            <VerdictWord verdict={f.now.verdict} size={12} />
            <a href={workingLink(f.address)} class="number" data-opens="working">
              {f.asks} <span class="q">{thingName(f.item)}</span>
            </a>
          </li>
        ))}
      </ul>
    </div>
  );
}
