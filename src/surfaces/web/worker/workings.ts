// The working of what stands at an address, and how well it is known yet.
import type { Mode } from "../../../kernel/evaluate.ts";
import { working, type Working } from "../../../kernel/working.ts";
import type { Bench } from "./bench.ts";

export interface WorkingReply {
  readonly working: Working | null;
  readonly mode: Mode;
}

export function workingOf(bench: Bench, address: string): WorkingReply {
  const evaluation = bench.best();
  return { working: working(evaluation, address), mode: evaluation.mode };
}
