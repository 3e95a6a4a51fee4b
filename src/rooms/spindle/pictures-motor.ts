// Pictures of the motor itself: its terminal box as found and after, and its torque at every frequency of the drive.
import { perhaps, type Values } from "../../kernel/figure.ts";
import { type Case, picture } from "../../kernel/room.ts";
import { csv } from "../../pictures/csv.ts";
import { emptyPicture } from "../../pictures/empty.ts";
import { plot } from "../../pictures/plot.ts";
import { plotCsv } from "../../pictures/plot-read.ts";
import type { PlotSpec, Series } from "../../pictures/plot-spec.ts";
import { shownIn } from "../../pictures/shown.ts";
import { type TerminalBox, terminalBoxes } from "../../pictures/terminal-box.ts";
import { phoneWidth } from "../../pictures/words.ts";
import { motor, spindle } from "../ground/index.ts";
import { type Capability, capability, lawAt } from "./capability.ts";
import { breakdownSlip, folded } from "./circuit.ts";
import { connected, leads, lines, links, winding, windingSpeeds } from "./motor-inputs.ts";
import { boxOf } from "./motor-links.ts";
import { baseFrequency, lawTorque, pullOut } from "./voltage-laws.ts";
import { windingOf } from "./windings.ts";

const boxNeeds = {
  n_l: leads,
  winding,
  n_sp: windingSpeeds,
  links: perhaps(links),
  lines: perhaps(lines),
  connected: perhaps(connected),
} as const;
type Boxed = Values<typeof boxNeeds>;
type Groups = readonly (readonly number[])[];

/** The links written; without lines written, those of the connection that is named. */
function linked(x: Boxed): { name: string; joined: Groups; lines: Groups; says: string | null } | { refused: string } {
  if (x.lines !== null) {
    const box = boxOf({ ...x, lines: x.lines });
    if ("refused" in box) return box;
    const fault = box.found.faults[0];
    return {
      name: box.found.link?.name ?? "no connection of this winding",
      joined: box.joined,
      lines: box.lines,
      says: fault === undefined ? null : fault.says,
    };
  }
  const made = windingOf(x.n_l, x.n_sp, x.winding);
  if ("refused" in made) return made;
  const row = made.links.find((l) => l.name === x.connected);
  if (row === undefined) return { refused: "neither the links nor the connection of the terminal box are written" };
  return { name: row.name, joined: row.joined, lines: row.lines, says: null };
}

const text = (groups: Groups): string => groups.map((g) => g.join("-")).join(", ");
const BOX = "Terminal box";
export const boxPicture = picture({
  id: "spindle.motor.box-picture",
  per: motor,
  title: BOX,
  needs: boxNeeds,
  draws: (cases, frame) => {
    const found = cases[0]?.samples.at(0);
    if (found === undefined) return emptyPicture(BOX, "nothing to draw", frame);
    const before = linked(found);
    if ("refused" in before) return emptyPicture(BOX, before.refused, frame);
    const boxed = (name: string, l: typeof before, n_l: number): TerminalBox => ({
      title: `${name}: ${l.name}`,
      leads: n_l,
      joined: l.joined,
      lines: l.lines,
    });
    const others = cases.slice(1).flatMap((c: Case<Boxed>) => {
      const x = c.samples.at(0);
      const l = linked(x);
      const differs = !("refused" in l) && (text(l.joined) !== text(before.joined) || text(l.lines) !== text(before.lines));
      return differs ? [{ name: c.name, l, n_l: x.n_l }] : [];
    });
    const after = others[0];
    const says = (name: string, l: typeof before) =>
      `${name}: ${l.name}, ${l.joined.length === 0 ? "nothing joined" : `joined ${text(l.joined)}`}, lines on ${text(l.lines)}.${l.says === null ? "" : ` Wrong: ${l.says}.`}`;
    const first = boxed(cases[0]?.name ?? "", before, found.n_l);
    const all = [{ name: cases[0]?.name ?? "", l: before }, ...(after ? [after] : [])];
    const svg = terminalBoxes({
      label: all.map(({ name, l }) => says(name, l)).join(" "),
      width: frame.width,
      boxes: after ? [first, boxed(after.name, after.l, after.n_l)] : [first],
    });
    return {
      svg,
      csv: csv(
        ["box", "connection", "joined", "lines"],
        all.map(({ name, l }) => [name, l.name, text(l.joined), text(l.lines)]),
      ),
    };
  },
});

/** Frequencies of the family [Hz], and points on each line. */
const FAMILY = [10, 20, 30, 40, 50, 60, 70, 80, 90, 100];
const POINTS = 41;
const RPM = 30 / Math.PI;
const slips = { c: capability } as const;

/** One line of the family: from no load to a little past its pull-out. */
function family(c: Capability, f: number): { n: number[]; T: number[] } {
  const k = folded(c.circuit, f);
  const law = lawAt(c, c.P);
  const past = Math.min(1, 1.6 * Math.max(breakdownSlip(k), pullOut(k, law).s));
  const at = Array.from({ length: POINTS }, (_, i) => (past * i) / (POINTS - 1));
  return { n: at.map((s) => k.w_s * (1 - s) * RPM), T: at.map((s) => lawTorque(k, law, s)) };
}
/** The greatest torque of each frequency, where it stands. */
function ceiling(c: Capability): { n: number[]; T: number[] } {
  const law = lawAt(c, c.P);
  const outs = Array.from({ length: 4 * FAMILY.length - 3 }, (_, i) => {
    const f = 10 + 2.5 * i;
    const k = folded(c.circuit, f);
    const out = pullOut(k, law);
    return { n: k.w_s * (1 - out.s) * RPM, T: out.T };
  });
  return { n: outs.map((o) => o.n), T: outs.map((o) => o.T) };
}

const SLIP = "Motor torque at 10 to 100 Hz";
export const familyPicture = picture({
  id: "spindle.family-picture",
  per: spindle,
  title: SLIP,
  needs: slips,
  draws: (cases, frame) => {
    const x = cases[0]?.samples.at(0);
    if (x === undefined) return emptyPicture(SLIP, "nothing to draw", frame);
    const torque = shownIn("torque", frame);
    const { c } = x;
    const law = lawAt(c, c.P);
    const f_b = baseFrequency(law);
    const named = frame.width < phoneWidth ? [10, 30, 60, 100] : FAMILY;
    const lines: Series[] = FAMILY.map((f) => {
      const { n, T } = family(c, f);
      return { name: named.includes(f) ? `${f} Hz` : "", x: n, y: T.map(torque.of), role: "quiet" };
    });
    const tops = cases.map((one: Case<Values<typeof slips>>, k): Series => {
      const { n, T } = ceiling(one.samples.at(0).c);
      const name = cases.length > 1 ? `pull-out, ${one.name}` : "pull-out";
      return { name, x: n, y: T.map(torque.of), role: k === 0 ? "base" : "option" };
    });
    const at = (one: Capability, f: number) => torque.text(pullOut(folded(one.circuit, f), lawAt(one, one.P)).T);
    const says = (name: string, one: Capability) => {
      const l = lawAt(one, one.P);
      const end = baseFrequency(l);
      return `${name}: full flux to ${end.toFixed(1)} Hz, pull-out ${at(one, end)} there and ${at(one, 1.5 * one.f_n)} at ${Math.round(1.5 * one.f_n)} Hz.`;
    };
    const spec: PlotSpec = {
      prefix: `${frame.prefix}-family`,
      title: SLIP,
      label: `${cases.map((one) => says(one.name, one.samples.at(0).c)).join(" ")} Plate torque is ${torque.text(c.T_n)}.`,
      width: frame.width,
      height: 400,
      x: { label: "motor", unit: "rpm", min: 0 },
      y: { label: "torque of the air gap", unit: torque.unit, min: 0 },
      series: [...lines, ...tops],
      limits: [
        { on: "y", at: torque.of(c.T_n), words: "plate torque", role: "quiet" },
        { on: "x", at: ((4 * Math.PI * f_b) / c.circuit.poles) * RPM, words: `full flux to ${f_b.toFixed(0)} Hz`, role: "quiet" },
      ],
    };
    return { svg: plot(spec), csv: plotCsv(spec), plot: spec };
  },
});
