// A verdict as shape and word, always together.
import type { JSX } from "preact";
import type { Verdict } from "../../../kernel/verdict.ts";
import { verdictIcon } from "../../../pictures/verdict.ts";
import { Svg } from "./svg.tsx";

export function VerdictWord({ verdict, size = 14 }: { verdict: Verdict; size?: number }): JSX.Element {
  return (
    <span class={`verdict ${verdict}`}>
      <Svg class="ic" text={verdictIcon(verdict, size)} />
      <span class="vw">{verdict}</span>
    </span>
  );
}

/** Stands where a verdict will stand: as wide, and nothing said. */
export function VerdictToCome(): JSX.Element {
  return (
    <span class="verdict to-come">
      <span class="vw">…</span>
    </span>
  );
}
