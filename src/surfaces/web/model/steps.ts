// Steps in an order in which they can be done: none before those it comes after.
import type { StepInfo } from "../worker/household.ts";

/** As declared, but each after what must come first; a step that waits for one that nobody describes waits for nothing. */
export function inOrder(steps: readonly StepInfo[]): StepInfo[] {
  const byId = new Map(steps.map((s) => [s.id, s]));
  const done = new Set<string>();
  const order: StepInfo[] = [];
  const visit = (s: StepInfo): void => {
    if (done.has(s.id)) return;
    done.add(s.id);
    for (const id of s.after) {
      const before = byId.get(id);
      if (before) visit(before);
    }
    order.push(s);
  };
  steps.forEach(visit);
  return order;
}

/** Steps that wait for no other that is described: what can be done now while nothing is recorded. */
export function canBeDone(steps: readonly StepInfo[]): StepInfo[] {
  const ids = new Set(steps.map((s) => s.id));
  return inOrder(steps).filter((s) => s.after.every((id) => !ids.has(id)));
}
