// The page that `check` prints.
import type { Answer, CheckAnswer, DeciderAnswer } from "../../kernel/answer.ts";
import type { Hazard } from "../../kernel/room.ts";
import type { Checked } from "./checked.ts";
import type { Outcome } from "../../kernel/compare.ts";
import { type Cures, isBetter } from "./cures.ts";
import { addFindings } from "./findings-text.ts";
import { type Page, pageFor, quantity, type Terminal, toned } from "./terminal.ts";
import { counted, listed } from "./text.ts";
import { marginText, verdictText } from "./verdict-words.ts";

type CautionsFor = (inputId: string) => readonly Hazard[];

/** Lines below a check stand under its question, right of shape and word. */
const under = " ".repeat("  x holds  ".length);

export function checkPage(t: Terminal, checked: Checked, cautions: CautionsFor): Page {
  const { answer, findings, cures, counts } = checked;
  const page = pageFor(t);
  addFindings(page, t, findings);
  page.gap();
  const over = answer.variant.length === 0 ? "" : `, with ${listed(answer.variant)} laid over`;
  page.say(
    `${toned(t, answer.shop, "strong")}${over}: ${tally(counts)}.${answer.mode === "quick" ? " Simulations were left out, and no remedy or option was tried." : ""}`,
  );
  const errors = findings.filter((f) => f.severity === "error").length;
  if (errors > 0) page.say(`${counted(errors, "mistake")} in the files: what hangs on those lines is left out of the answer.`);
  for (const room of roomsOf(answer)) {
    page.gap();
    page.say(toned(t, room.title, "strong"));
    for (const c of room.checks) addCheck(page, t, c, cures.get(c.address));
  }
  addNotices(page, answer);
  addMeasureNext(page, answer, cautions);
  page.gap();
  page.say(
    "A verdict says which demand meets which capacity in this model; it replaces neither guards nor the judgement of licensed people.",
  );
  return page;
}

/** "12 checks: 2 fail, 3 are open, 1 is tight, 6 hold". */
export function tally(counts: Checked["counts"]): string {
  const all = counts.fails + counts.open + counts.tight + counts.holds;
  if (all === 0) return "nothing is written yet that could be checked";
  const be = (n: number): string => (n === 1 ? "is" : "are");
  return `of ${counted(all, "check")} ${counts.fails} ${counts.fails === 1 ? "fails" : "fail"}, ${counts.open} ${be(counts.open)} open, ${counts.tight} ${be(counts.tight)} tight, ${counts.holds} ${counts.holds === 1 ? "holds" : "hold"}`;
}

/** Rooms in the order of their worst check: the checks come sorted. */
function roomsOf(answer: Answer): { title: string; checks: CheckAnswer[] }[] {
  const rooms = new Map<string, CheckAnswer[]>();
  for (const c of answer.checks) rooms.set(c.room, [...(rooms.get(c.room) ?? []), c]);
  return [...rooms].map(([name, checks]) => ({ title: answer.rooms.find((r) => r.name === name)?.title ?? name, checks }));
}

function addCheck(page: Page, t: Terminal, c: CheckAnswer, cures: Cures | undefined): void {
  page.say(c.asks, `  ${verdictText(t, c.verdict)}  `, under);
  const marks = [
    c.people ? "guards a person, judged at the worst" : "",
    c.near ? "near the edge of another verdict" : "",
    c.estimated ? "estimated, not simulated" : "",
  ].filter(Boolean);
  page.say([marginText(c), ...(c.yesNo ? [] : [`${c.reserve} asked for`]), ...marks, c.address].join(", "), under);
  for (const [name, side] of [["needs", c.demand] as const, ["has", c.capacity] as const]) {
    if (!side || c.yesNo) continue;
    const { nominal } = side.amount;
    const isRefused = typeof nominal !== "number" && "refused" in nominal;
    page.say(`${name} ${isRefused ? "what is not known yet" : amountText(t, side.amount)}: ${side.says}`, under, `${under}  `);
  }
  if (c.verdict === "holds") return;
  if (c.because !== null) page.say(c.because, under);
  for (const r of c.restsOn) page.say(`rests on: ${r.says}, which ${r.guard} does not bear out`, under);
  c.remedies.forEach((r, i) => {
    const outcome = cures?.remedies[i];
    const costs = r.costs === "" ? "" : ` (${r.costs})`;
    const then = !outcome ? "" : isBetter(outcome, c) === null ? `: still ${c.verdict}` : `: ${outcomeText(t, outcome)}`;
    page.say(`remedy: ${r.does}${costs}${then}`, under, `${under}  `);
  });
  for (const o of cures?.options ?? []) {
    page.say(
      `option ${o.machine === c.root ? "" : `${o.machine}/`}${o.name}: ${outcomeText(t, o)}${o.better ? "" : " (worse)"}`,
      under,
      `${under}  `,
    );
  }
  const top = c.deciders[0];
  if (c.verdict === "open" && top) addDecider(page, top);
}

function addDecider(page: Page, d: DeciderAnswer): void {
  const share = d.share >= 1 ? "nothing can be said without it" : `decides ${Math.round(d.share * 100)} % of the spread`;
  const where = d.input === d.says ? "" : ` (${d.input})`;
  page.say(`measure: ${d.says}${where}; ${share}. ${d.measure}`, under, `${under}  `);
}

/** `30.2 N·m (26 to 35 N·m)`. */
export function amountText(t: Pick<Terminal, "unicode">, a: { readonly text: string; readonly band: string }): string {
  return quantity(t, a.band === "exact" || a.band === a.text || a.band === "no value" ? a.text : `${a.text} (${a.band})`);
}

export const outcomeText = (t: Terminal, o: Outcome): string => `${verdictText(t, o.verdict).trimEnd()}, ${marginText(o)}`;

function addNotices(page: Page, answer: Answer): void {
  if (answer.notices.length === 0) return;
  page.gap();
  page.say("Notices");
  for (const n of answer.notices) {
    const place = answer.inputs[n.at]?.origin.place;
    page.say(`${n.severity}: ${n.says} (${n.at}${place && place.file !== "" ? `, ${place.file}:${place.line}` : ""})`, "  ", "    ");
  }
}

function addMeasureNext(page: Page, answer: Answer, cautions: CautionsFor): void {
  if (answer.measureNext.length === 0) return;
  page.gap();
  page.say("Measure next");
  const dangers = new Set<Hazard>();
  answer.measureNext.forEach((m, i) => {
    const id = answer.inputs[m.input]?.id ?? m.input.replace(/^[^/]*\//, "");
    const own = cautions(id);
    own.forEach((h) => dangers.add(h));
    const caution = own.length === 0 ? "" : ` Caution: ${listed(own.map((h) => h.name.toLowerCase()))}.`;
    const where = m.input === m.says ? "" : ` (${m.input})`;
    page.say(`${m.says}${where}: decides ${counted(m.checks.length, "open check")}. ${m.measure}${caution}`, `  ${`${i + 1}.`.padEnd(4)}`);
  });
  for (const h of dangers) page.say(`Caution, ${h.name.toLowerCase()}: ${h.says}`, "  ", "    ");
}
