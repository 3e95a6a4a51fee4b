// What to find out next, told from the open checks: which unknown, how many checks it decides, which step measures it and what may hurt.
import type { Answer, DeciderAnswer } from "../../../kernel/answer.ts";
import type { Household, StepInfo } from "../worker/household.ts";
import { thingName } from "./things.ts";

export interface Hazard {
  readonly id: string;
  readonly name: string;
  readonly says: string;
}

export interface Next extends DeciderAnswer {
  readonly checks: readonly string[];
  /** The address whose working says more: the input where it is written, else the first check that waits for it. */
  readonly opens: string;
  readonly thing: string;
  readonly step: StepInfo | null;
  readonly hazards: readonly Hazard[];
}

/** Of a machine and of the shop that carries it; of everything where no machine is named. */
export function nextOf(answer: Answer, household: Household | null, machine: string | null): Next[] {
  const mine = new Set(answer.checks.filter((c) => machine === null || c.root === machine || c.root === "shop").map((c) => c.address));
  return answer.measureNext.flatMap((m): Next[] => {
    const checks = m.checks.filter((c) => mine.has(c));
    const first = checks[0];
    if (first === undefined) return [];
    const input = answer.inputs[m.input];
    const step = stepFor(household, input?.id ?? null, m.input);
    return [
      {
        ...m,
        says: m.says.replace(/ is not known$/, ""),
        checks,
        opens: input ? m.input : first,
        thing: thingName(input?.item ?? m.input.replace(/\.[^./]+$/, "")),
        step,
        hazards: step ? hazardsOf(household, step) : [],
      },
    ];
  });
}

/** The step that reads an input: by its id, or by the last words of its address while nothing is written. */
export function stepFor(household: Household | null, id: string | null, address: string): StepInfo | null {
  const steps = household?.steps ?? [];
  const reads = (s: StepInfo): boolean =>
    s.reads.some(({ sets }) => sets !== null && (id === null ? address.endsWith(sets.split(".").slice(-2).join(".")) : sets === id));
  return steps.find(reads) ?? null;
}

export function hazardsOf(household: Household | null, step: StepInfo): Hazard[] {
  return (household?.hazards ?? []).filter((h) => step.hazards.includes(h.id));
}
