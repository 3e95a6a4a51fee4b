// Rooms in the order of the work, and the worst verdict in each.
import type { Answer, CheckAnswer } from "../../../kernel/answer.ts";
import type { Verdict } from "../../../kernel/verdict.ts";

/** From the meter to the papers: the order in which a machinist meets them, not the one in which they may import each other. */
const order = [
  "supply",
  "spindle",
  "axes",
  "threading",
  "air",
  "fluids",
  "wiring",
  "sequences",
  "bring-up",
  "accuracy",
  "production",
  "documents",
];

const rank: readonly Verdict[] = ["fails", "open", "tight", "holds"];

export function worst(verdicts: Iterable<Verdict>): Verdict | null {
  const there = new Set(verdicts);
  return rank.find((v) => there.has(v)) ?? null;
}

/** What concerns a machine: its own checks and those of the shop that carries it. */
export function checksOf(answer: Answer, machine: string | null): readonly CheckAnswer[] {
  return machine === null ? answer.checks : answer.checks.filter((c) => c.root === machine || c.root === "shop");
}

export interface RoomLine {
  readonly name: string;
  readonly title: string;
  readonly worst: Verdict | null;
}

export function roomLines(answer: Answer, checks: readonly CheckAnswer[]): RoomLine[] {
  const place = (name: string): number => (order.includes(name) ? order.indexOf(name) : order.length);
  return answer.rooms
    .toSorted((a, b) => place(a.name) - place(b.name))
    .map(({ name, title }) => ({ name, title, worst: worst(checks.filter((c) => c.room === name).map((c) => c.verdict)) }));
}

export function titleOfRoom(answer: Answer, name: string): string {
  return answer.rooms.find((r) => r.name === name)?.title ?? name;
}
