// How a check is called: by what it is about in the user's names, and by a name that `explain` understands.
import type { Answer, CheckAnswer } from "../../kernel/answer.ts";

/** Name of a thing that has no fellows, such as the one belt of a spindle. */
const lone = "only";

/** What is asked about: "lathe drag-knob rough". The room stands above it and is not said again. */
export function aboutOf({ root, thing, room }: Pick<CheckAnswer, "root" | "thing" | "room">): string {
  return [root, ...thing.split(" ").filter((word, i) => word !== "" && word !== lone && (i > 0 || word !== room))].join(" ");
}

/** Name of the check at an address for somebody at one machine: its id, with the thing where several have it: "drag-knob rough torque-holds". */
export function nameOf(answer: Answer, address: string, root: string): string {
  const c = answer.checks.find((x) => x.address === address);
  if (!c) return address;
  const isOnly = answer.checks.filter((x) => x.root === c.root && x.id === c.id).length === 1;
  const own = isOnly ? c.id : `${c.thing} ${c.id.slice(c.id.lastIndexOf(".") + 1)}`;
  return c.root === root || c.root === "shop" ? own : `${c.root} ${own}`;
}
