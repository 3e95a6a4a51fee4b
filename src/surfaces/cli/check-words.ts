// How a check is called: by what it is about in the user's names, and by a name that `explain` understands.
import type { CheckAnswer } from "../../kernel/answer.ts";

type Named = Pick<CheckAnswer, "root" | "thing" | "id">;

/** What is asked about: "lathe drag-knob rough". */
export const aboutOf = (c: Named): string => (c.thing === "" ? c.root : `${c.root} ${c.thing}`);

/** Name of a check beside one of `root`, short where they share it: "supply.current-holds", "drag-knob rough torque-holds". */
export function nameOf(c: Named, root: string): string {
  const own = c.thing === "" ? c.id : `${c.thing} ${c.id.slice(c.id.lastIndexOf(".") + 1)}`;
  return c.root === root || c.root === "shop" ? own : `${c.root} ${own}`;
}
