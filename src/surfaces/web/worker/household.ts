// What the rooms declare, as plain data for the page: names, questions, steps, hazards, what an input is.
import type { House } from "../../../kernel/house.ts";
import type { Input } from "../../../kernel/figure.ts";
import { kindInfo } from "../../../kernel/unit.ts";

export interface StepInfo {
  readonly id: string;
  readonly room: string;
  readonly per: string;
  readonly title: string;
  readonly hazards: readonly string[];
  readonly after: readonly string[];
  readonly gate: string | null;
  readonly does: readonly string[];
  readonly reads: readonly { readonly says: string; readonly sets: string | null }[];
  readonly accept: string;
}

interface InputInfo {
  readonly symbol: string;
  /** `none` is an answer. */
  readonly none: boolean;
  readonly examples: readonly string[];
}

export interface Household {
  /** In the order in which they may import each other; those without figures are left out. */
  readonly rooms: readonly {
    readonly name: string;
    readonly title: string;
    readonly answers: string;
    readonly pictures: readonly { readonly id: string; readonly title: string; readonly per: string }[];
  }[];
  readonly hazards: readonly { readonly id: string; readonly name: string; readonly says: string }[];
  readonly steps: readonly StepInfo[];
  /** By the id of the input. */
  readonly inputs: Readonly<Record<string, InputInfo>>;
  /** How a sentence names a thing: "a motor". */
  readonly scopes: Readonly<Record<string, string>>;
}

export function household(house: House): Household {
  const rooms = house.rooms.filter((r) => r.checks.length + r.figures.length > 0);
  return {
    rooms: rooms.map(({ name, title, answers, pictures }) => ({
      name,
      title,
      answers,
      pictures: pictures.map((p) => ({ id: p.id, title: p.title, per: p.per.name })),
    })),
    hazards: [...new Map(house.rooms.flatMap((r) => r.hazards).map((h) => [h.id, { id: h.id, name: h.name, says: h.says }])).values()],
    steps: house.rooms.flatMap((r) =>
      r.steps.map((s) => ({
        id: s.id,
        room: r.name,
        per: s.per.name,
        title: s.title,
        hazards: s.hazards.map((h) => h.id),
        after: s.after,
        gate: s.gate ?? null,
        does: s.does,
        reads: s.reads.map(({ says, sets }) => ({ says, sets: sets?.id ?? null })),
        accept: s.accept,
      })),
    ),
    inputs: Object.fromEntries(house.rooms.flatMap((r) => r.inputs).map((i) => [i.id, infoOf(i)])),
    scopes: Object.fromEntries(house.scopes.map((s) => [s.name, s.says])),
  };
}

function infoOf(input: Input<unknown>): InputInfo {
  const examples = input.words ?? (input.kind === null ? [] : kindInfo(input.kind).examples);
  return { symbol: input.symbol ?? "", none: input.none ?? false, examples };
}
