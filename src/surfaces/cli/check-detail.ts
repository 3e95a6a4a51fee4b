// One check in full: question, margin, both sides, what it rests on, every remedy and option with what it would bring, and what to measure.
import type { Answer, CheckAnswer, DeciderAnswer } from "../../kernel/answer.ts";
import { amountText } from "./amount-words.ts";
import { marksOf, optionName, restText, under } from "./check-brief.ts";
import { aboutOf, nameOf } from "./check-words.ts";
import type { Cures, Tried } from "./cures.ts";
import { type Page, type Terminal, toned } from "./terminal.ts";
import { listed } from "./text.ts";
import { marginText, outcomeText, verdictText } from "./verdict-words.ts";

export function addCheckDetail(page: Page, t: Terminal, c: CheckAnswer, answer: Answer, cures: Cures | undefined): void {
  const say = (text: string): void => page.say(text, under, `${under}  `);
  page.say(`${aboutOf(c)}: ${c.asks}`, `  ${verdictText(t, c.verdict)}  `, under);
  page.say(toned(t, c.address, "quiet"), under);
  say([marginText(c), ...(c.yesNo ? [] : [`holds from ${c.reserve}`]), ...marksOf(c)].join(", "));
  for (const [name, side] of [["wants", c.demand] as const, ["has", c.capacity] as const]) {
    if (!side || c.yesNo) continue;
    const { nominal } = side.amount;
    const isRefused = typeof nominal !== "number" && "refused" in nominal;
    say(`${name} ${isRefused ? "what is not known yet" : amountText(t, side.amount)}: ${side.says}`);
  }
  if (c.verdict === "holds") return;
  if (c.because !== null && c.reason !== "rests-on") say(c.because);
  for (const r of c.restsOn) say(restText(r, c.root, answer));
  c.remedies.forEach((r, i) => {
    const tried = cures?.remedies[i];
    const costs = r.costs === "" ? "" : ` (${r.costs})`;
    const then = !tried ? "" : tried.better === null ? `: still ${c.verdict}` : `: ${outcomeText(t, tried)}`;
    say(`remedy: ${r.does}${costs}${then}${tried ? harmText(t, tried, c.root, answer) : ""}`);
  });
  for (const o of cures?.options ?? []) {
    say(`option ${optionName(o, c.root)}: ${outcomeText(t, o)}${o.better === false ? " (worse)" : ""}${harmText(t, o, c.root, answer)}`);
  }
  if (c.verdict === "open") for (const d of c.deciders) say(deciderText(d));
}

function deciderText(d: DeciderAnswer): string {
  const share = d.share >= 1 ? "nothing can be said without it" : `${Math.round(d.share * 100)} % of the spread`;
  const where = d.input === d.says ? "" : ` (${d.input})`;
  return `measure: ${d.says}${where}, ${share}${d.measure === "" ? "" : `. ${d.measure}`}`;
}

function harmText(t: Terminal, { worsens }: Tried, root: string, answer: Answer): string {
  const harms = worsens.map((h) => `${nameOf(answer, h.address, root)} ${outcomeText(t, h)}`);
  return harms.length === 0 ? "" : `; worsens ${listed(harms)}`;
}
