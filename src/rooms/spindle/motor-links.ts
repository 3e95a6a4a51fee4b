// The terminal box as found: every coil followed, the connection named, and what is wrong said with the leads to swap.
import { check, notice } from "../../kernel/check.ts";
import { figure, known, perhaps, value } from "../../kernel/figure.ts";
import { motor } from "../ground/index.ts";
import { type Connected, connectionOf } from "./links.ts";
import { connected, induction, leads, lines, links, winding, windingSpeeds } from "./motor-inputs.ts";
import { type Winding, windingOf } from "./windings.ts";

/** "4-7" as lead numbers; null where it is no list of numbers. */
export function leadsOfText(text: string): readonly number[] | null {
  const numbers = text.split(/[-\s]+/).filter((part) => part !== "");
  return numbers.length > 0 && numbers.every((part) => /^\d{1,2}$/.test(part)) ? numbers.map(Number) : null;
}

/** A terminal box, read and followed; or why it cannot be. */
export type Box =
  | {
      readonly winding: Winding;
      readonly joined: readonly (readonly number[])[];
      readonly lines: readonly (readonly number[])[];
      readonly found: Connected;
    }
  | { readonly refused: string };

export function boxOf(x: {
  n_l: number;
  winding: "star" | "delta";
  n_sp: number;
  /** Nothing joined where none are written, as in delta. */
  links: readonly string[] | null;
  lines: readonly string[];
}): Box {
  const made = windingOf(x.n_l, x.n_sp, x.winding);
  if ("refused" in made) return { refused: made.refused };
  const joins = x.links ?? [];
  const unread = [...joins, ...x.lines].find((text) => leadsOfText(text) === null);
  if (unread !== undefined) return { refused: `"${unread}" is no list of leads such as 4-7` };
  const groups = (texts: readonly string[]) => texts.flatMap((text) => [leadsOfText(text) ?? []]);
  const [joined, on] = [groups(joins), groups(x.lines)];
  return { winding: made, joined, lines: on, found: connectionOf(made, joined, on) };
}

export const terminalBox = value({
  id: "spindle.motor.terminal-box",
  per: motor,
  says: "the terminal box with every coil followed",
  needs: { n_l: leads, winding, n_sp: windingSpeeds, links: perhaps(links), lines },
  ...induction,
  of: boxOf,
});

const GOOD =
  "every coil carries its phasor; every loop must close to nothing and the three line voltages be equal and a third of a turn apart";
export const connectionFigure = figure({
  id: "spindle.motor.connection-check",
  per: motor,
  symbol: "n_ok",
  unit: "1",
  kind: "count",
  says: "1 where the links make a connection of this winding with every coil the right way round, else 0",
  method: GOOD,
  source: "Kirchhoff's voltage law; lead tables of NEMA MG 1 and IEC 60034-8; a lead with the wrong number on it shows only by test",
  needs: { box: terminalBox },
  ...induction,
  valid: (x) => ("refused" in x.box ? x.box.refused : null),
  of: (x) => ("refused" in x.box ? Number.NaN : x.box.found.faults.length === 0 && x.box.found.link !== null ? 1 : 0),
});

export const connectionCheck = check({
  id: "spindle.motor.coils-right-way-round",
  per: motor,
  asks: "Is every coil the right way round?",
  demand: known("all-coils", { symbol: "1", value: 1, unit: "1", kind: "count", says: "yes", source: "definition" }),
  capacity: connectionFigure,
  H: 1,
  yesNo: true,
  when: induction.when,
  remedies: [
    { does: "link it as the drawing of the terminal box says, isolated and proved dead", costs: "an hour", changes: [links, lines] },
    {
      does: "prove the polarity of every coil by test, then write the leads as they really are",
      costs: "an afternoon",
      changes: [links, lines],
    },
  ],
});

export const connectionFault = notice({
  id: "spindle.motor.connection-fault",
  per: motor,
  severity: "error",
  needs: { box: terminalBox },
  when: induction.when,
  at: links,
  of: ({ box }) => {
    if ("refused" in box) return `The links cannot be followed: ${box.refused}.`;
    const { faults, swap } = box.found;
    if (faults.length === 0) return null;
    const cure =
      swap === null ? "No exchange of two leads cures it: link it anew." : `Exchanging leads ${swap[0]} and ${swap[1]} cures it.`;
    return `Terminal box: ${faults.map((f) => f.says).join("; ")}. ${cure} Do not switch it on like this.`;
  },
});
export const connectionNamed = notice({
  id: "spindle.motor.connection-named",
  per: motor,
  severity: "error",
  needs: { box: terminalBox, connected },
  when: induction.when,
  at: connected,
  of: ({ box, connected: said }) => {
    if ("refused" in box || box.found.link === null || box.found.link.name === said) return null;
    return `The links make this winding ${box.found.link.name}, and connected says ${said}: one of the two is wrong, and every volt and ampere of the motor hangs on it.`;
  },
});
