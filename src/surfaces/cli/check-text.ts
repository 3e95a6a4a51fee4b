// The page that `check` prints: on two screens what does not hold and what to do about it, or with --all every check in full.
import type { Answer, CheckAnswer } from "../../kernel/answer.ts";
import { addRoomBrief, addSideEffects } from "./check-brief.ts";
import { addCheckDetail } from "./check-detail.ts";
import { aboutOf } from "./check-words.ts";
import type { Checked } from "./checked.ts";
import { addFindings, addFindingsBrief } from "./findings-text.ts";
import { addMeasureNext, type CautionsFor, measureNumbers } from "./measure-text.ts";
import { type Page, pageFor, type Terminal, toned } from "./terminal.ts";
import { counted, listed } from "./text.ts";

export function checkPage(t: Terminal, checked: Checked, cautions: CautionsFor, all = false): Page {
  const { answer, findings, cures, counts } = checked;
  const page = pageFor(t);
  const over = answer.variant.length === 0 ? "" : `, with ${listed(answer.variant)} laid over`;
  const quick = answer.mode === "quick" ? " Simulations were left out: estimates stand in, and no remedy or option was tried." : "";
  page.say(`${toned(t, answer.shop, "strong")}${over}: ${tally(counts)}.${quick}`);
  const errors = findings.filter((f) => f.severity === "error").length;
  if (errors > 0) page.say(`${counted(errors, "mistake")} in the files: what hangs on those lines is left out of the answer.`);
  if (findings.length > 0) page.gap();
  (all ? addFindings : addFindingsBrief)(page, t, findings);
  const brief = { answer, cures, measureAt: measureNumbers(answer) };
  for (const room of roomsOf(answer)) {
    page.gap();
    page.say(toned(t, room.title, "strong"));
    if (all) for (const c of room.checks) addCheckDetail(page, t, c, answer, cures?.get(c.address));
    else addRoomBrief(page, t, room.checks, brief);
  }
  if (!all) addSideEffects(page, t, brief);
  addNotices(page, t, answer, all);
  addMeasureNext(page, t, answer, cautions);
  page.gap();
  if (!all && answer.checks.length > 0) page.say("--all shows every check in full, waywright explain CHECK one of them.");
  page.say(
    "A verdict says which demand meets which capacity in this model; it replaces neither guards nor the judgement of licensed people.",
  );
  return page;
}

/** "of 12 checks 2 fail, 3 are open, 1 is tight, 6 hold". */
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

function addNotices(page: Page, t: Terminal, answer: Answer, all: boolean): void {
  if (answer.notices.length === 0) return;
  page.gap();
  page.say(toned(t, "Notices", "strong"));
  for (const n of answer.notices) {
    const input = answer.inputs[n.at];
    const place = input?.origin.place;
    const where = all ? ` (${n.at}${place && place.file !== "" ? `, ${place.file}:${place.line}` : ""})` : "";
    const about = answer.checks.find((c) => c.item === input?.item);
    page.say(`${n.severity === "note" ? "" : `${n.severity}: `}${about ? aboutOf(about) : n.root}: ${n.says}${where}`, "  ", "    ");
  }
}
