// waywright check: every check of the shop, worst first, with what would change it and what to measure next.
import { waywright } from "../../rooms/index.ts";
import type { Given } from "./arguments.ts";
import { cautionsOf } from "./cautions.ts";
import { checkDesk, checkedJson, type Status } from "./checked.ts";
import { checkPage } from "./check-text.ts";
import { openDesk, variantGiven } from "./desk.ts";
import { json } from "./json.ts";
import { print, type Terminal } from "./terminal.ts";

export function check(given: Given, t: Terminal, cwd: string): Status {
  const desk = openDesk(given, cwd);
  const checked = checkDesk(desk, { figures: given.has("json"), cures: true }, variantGiven(desk, given));
  if (given.has("json")) t.out(json(checkedJson(checked)));
  else print(t, checkPage(t, checked, cautionsOf(waywright), given.has("all")));
  return checked.status;
}
