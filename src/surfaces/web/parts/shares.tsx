// What decides a spread: the unknowns with the share of it that each makes.
import type { JSX } from "preact";
import { percent } from "../model/numbers.ts";
import { workingLink } from "../model/place.ts";

export interface Share {
  readonly address: string | null;
  readonly says: string;
  readonly share: number;
}

export function Shares({ shares }: { shares: readonly Share[] }): JSX.Element {
  return (
    <ul class="shares">
      {shares.map((s) => (
        <li key={s.address ?? s.says}>
          {s.address === null ? <span>{s.says}</span> : <a href={workingLink(s.address)}>{s.says}</a>}
          <svg width="100%" height="10" aria-hidden="true">
            <rect x="0" y="1" width={`${Math.max(1, s.share * 100)}%`} height="8" class="fa" />
          </svg>
          <span class="num">{s.share >= 1 ? "all" : percent(s.share)}</span>
        </li>
      ))}
    </ul>
  );
}
