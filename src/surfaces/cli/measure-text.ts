// What to measure next: each reading once, how to take it, what it decides, and the dangers of the step in which it is taken.
import type { Answer } from "../../kernel/answer.ts";
import type { Hazard } from "../../kernel/room.ts";
import { nameOf } from "./check-words.ts";
import { type Page, type Terminal, toned } from "./terminal.ts";
import { listed } from "./text.ts";

export type CautionsFor = (inputId: string) => readonly Hazard[];

/** Number of a measurement in the list, by its input. */
export const measureNumbers = (answer: Answer): Map<string, number> => new Map(answer.measureNext.map((m, i) => [m.input, i + 1]));

export function addMeasureNext(page: Page, t: Terminal, answer: Answer, cautions: CautionsFor): void {
  if (answer.measureNext.length === 0) return;
  page.gap();
  page.say(toned(t, "Measure next", "strong"));
  const dangers = new Set<Hazard>();
  for (const [i, m] of answer.measureNext.entries()) {
    const own = cautions(answer.inputs[m.input]?.id ?? m.input.replace(/^[^/]*\//, ""));
    own.forEach((h) => dangers.add(h));
    const where = m.input === m.says ? "" : ` (${m.input})`;
    // What is not known heads the list of what to find out: no need to say so.
    const says = m.says.replace(/ is not known$/, "");
    const how = m.measure === "" ? "" : ` ${m.measure}`;
    const caution = own.length === 0 ? "" : ` Caution: ${listed(own.map((h) => h.name.toLowerCase()))}.`;
    page.say(`${says}${where}.${how}${caution} ${decidesText(answer, m)}`, `  ${`${i + 1}.`.padEnd(4)}`);
  }
  for (const h of dangers) page.say(`Caution, ${h.name.toLowerCase()}: ${h.says}`, "  ", "    ");
}

/** More than this many checks are counted. */
const mostNamed = 3;

/** What hangs on it, by the names that `explain` takes. */
function decidesText(answer: Answer, { input, checks }: Answer["measureNext"][number]): string {
  const root = input.split("/")[0] ?? "";
  const names = checks.slice(0, mostNamed).map((address) => nameOf(answer, address, root));
  const rest = checks.length - names.length;
  return `Decides ${listed([...names, ...(rest > 0 ? [`${rest} more`] : [])])}.`;
}
