// Which connection a motor has, from its links alone, and which coil is the wrong way round.
import type { Coil, Link, Node, Winding } from "./windings.ts";

/** What is wrong with a set of links. */
interface LinkFault {
  readonly code:
    "unknown-lead" | "lead-twice" | "no-lines" | "coil-shorted" | "lines-joined" | "coil-open" | "loop-open" | "lines-unequal" | "unlisted";
  readonly says: string;
  /** Leads concerned; for a loop, the coil ends along it. */
  readonly leads: readonly number[];
  /** Volts left over round a loop, or between the greatest and least line voltage, in coil volts. */
  readonly residual?: number;
}

export interface Connected {
  /** The row of the winding's table that these links make; null when faulty or unlisted. */
  readonly link: Link | null;
  /** Whether line 2 follows line 1 as phase B follows A: the direction of rotation the numbers promise. */
  readonly sequence: "forward" | "reverse" | null;
  readonly faults: readonly LinkFault[];
  /** Two leads whose exchange makes a listed connection of it. */
  readonly swap: readonly [number, number] | null;
}

/** Phase angles of the coil emfs [rad]: A, B, C. */
const ANGLES = [0, (-2 * Math.PI) / 3, (2 * Math.PI) / 3] as const;
/** Rounding left in sums of unit phasors, and line voltages called equal. */
const CLOSED = 1e-9;
const EQUAL = 1e-3;

/**
 * Names the connection of a winding from its links and lines, or says what is wrong.
 *
 * Nodes are joined leads; each coil is an edge that carries its phasor emf; walking the edges gives every node a potential, and a loop
 * that does not close to zero holds a reversed or misplaced coil. Line-to-line volts must then be equal within 0.1 %. A listed
 * connection may stand there under any renaming that leaves the winding as it is (phases exchanged, halves of a phase exchanged, all
 * coils turned round). Source: Kirchhoff's voltage law; lead tables of NEMA MG 1. What links cannot show is a lead with the wrong
 * number on it: polarity is proved by test.
 */
export function connectionOf(winding: Winding, joined: readonly (readonly number[])[], lines: readonly (readonly number[])[]): Connected {
  const faults = examined(winding, joined, lines);
  const link = listed(winding, joined, lines);
  if (faults.length === 0 && link !== null) return { link, sequence: sequenceOf(winding, joined, lines), faults, swap: null };
  const unlisted: LinkFault = {
    code: "unlisted",
    says: "volts close and are equal, yet this is none of the connections of this winding: two phases share a path",
    leads: [],
  };
  return { link: null, sequence: null, faults: faults.length > 0 ? faults : [unlisted], swap: swapFor(winding, joined, lines) };
}

/** Faults in the order they must be cured; potentials are only looked at when the list itself makes sense. */
function examined(winding: Winding, joined: readonly (readonly number[])[], lines: readonly (readonly number[])[]): LinkFault[] {
  const named = [...joined, ...lines].flat();
  const unknown = named.filter((lead) => !winding.leads.includes(lead));
  if (unknown.length > 0) return [{ code: "unknown-lead", says: `this winding has no lead ${unknown.join(", ")}`, leads: unknown }];
  if (lines.length !== 3 || lines.some((line) => line.length === 0)) {
    return [{ code: "no-lines", says: "three lines are wanted, each on one lead at least", leads: lines.flat() }];
  }
  const nodes = nodesOf(winding, joined, lines);
  const at = (lead: Node) => nodes.get(lead) ?? lead;
  const lineNodes = lines.map((line) => at(line[0] ?? 0));
  const faults: LinkFault[] = [];
  if (new Set(lineNodes).size < 3) {
    return [{ code: "lines-joined", says: "two lines meet in one joint: a short between them", leads: lines.flat() }];
  }
  for (const coil of winding.coils) {
    if (at(coil.start) === at(coil.finish)) {
      faults.push({ code: "coil-shorted", says: `coil ${ends(coil)} has both ends in one joint`, leads: leadsOf(coil), residual: 1 });
    }
  }
  if (faults.length > 0) return faults;
  const walked = walk(winding, at, lineNodes[0] ?? 0);
  if (walked.loop !== null) return [walked.loop];
  const open = winding.coils.filter((coil) => isDeadEnd(winding, at, lineNodes, coil) || !walked.potential.has(at(coil.start)));
  for (const coil of open)
    faults.push({ code: "coil-open", says: `coil ${ends(coil)} carries no current: one end leads nowhere`, leads: leadsOf(coil) });
  if (faults.length > 0) return faults;
  const volts = between(lineNodes.map((node) => walked.potential.get(node) ?? null));
  const [most, least] = [Math.max(...volts), Math.min(...volts)];
  if (!(most - least <= EQUAL * most)) {
    faults.push({
      code: "lines-unequal",
      says: `line voltages ${volts.map((x) => x.toFixed(2)).join(", ")} in coil volts: one phase is reversed or mixed with another`,
      leads: lines.flat(),
      residual: most - least,
    });
  }
  const twice = named.filter((lead, j) => named.indexOf(lead) !== j);
  if (twice.length > 0) faults.push({ code: "lead-twice", says: `lead ${twice.join(", ")} is listed twice`, leads: twice });
  return faults;
}

type Phasor = readonly [number, number];

/** Potentials of all nodes reached from one, and the first loop that does not close. */
function walk(winding: Winding, at: (n: Node) => Node, from: Node): { potential: Map<Node, Phasor>; loop: LinkFault | null } {
  const potential = new Map<Node, Phasor>();
  const cameBy = new Map<Node, Coil>();
  // Parts that no line reaches are walked too: a loop among them is as much a short.
  for (const first of [from, ...winding.coils.map((coil) => at(coil.start))]) {
    if (potential.has(first)) continue;
    potential.set(first, [0, 0]);
    const queue = [first];
    for (let node = queue.shift(); node !== undefined; node = queue.shift()) {
      const here = potential.get(node) ?? [0, 0];
      for (const coil of winding.coils) {
        const [start, finish] = [at(coil.start), at(coil.finish)];
        if (start !== node && finish !== node) continue;
        const other = start === node ? finish : start;
        const emf = (start === node ? -1 : 1) as 1 | -1;
        const angle = ANGLES[coil.phase];
        const there: Phasor = [here[0] + emf * Math.cos(angle), here[1] + emf * Math.sin(angle)];
        const known = potential.get(other);
        if (known === undefined) {
          potential.set(other, there);
          cameBy.set(other, coil);
          queue.push(other);
          continue;
        }
        const residual = Math.hypot(there[0] - known[0], there[1] - known[1]);
        if (residual > CLOSED) {
          const round = loopOf(coil, at, cameBy);
          return {
            potential,
            loop: {
              code: "loop-open",
              says: `round the loop of coils ${round.map(ends).join(", ")} ${residual.toFixed(2)} coil volts are left over: a short through the winding; one of them is reversed or misplaced`,
              leads: round.flatMap(leadsOf),
              residual,
            },
          };
        }
      }
    }
  }
  // Only what hangs together with the first line has a potential that means anything to the lines.
  return { potential: reached(winding, at, from, potential), loop: null };
}

function reached(winding: Winding, at: (n: Node) => Node, from: Node, potential: Map<Node, Phasor>): Map<Node, Phasor> {
  const seen = new Set([from]);
  for (let before = 0; before < seen.size;) {
    before = seen.size;
    for (const coil of winding.coils) {
      if (seen.has(at(coil.start)) || seen.has(at(coil.finish))) seen.add(at(coil.start)).add(at(coil.finish));
    }
  }
  return new Map([...potential].filter(([node]) => seen.has(node)));
}

/** Coils of the loop that `closing` closes: both ways back to the start of the walk, without what they share. */
function loopOf(closing: Coil, at: (n: Node) => Node, cameBy: ReadonlyMap<Node, Coil>): Coil[] {
  const back = (node: Node): Coil[] => {
    const coil = cameBy.get(node);
    if (coil === undefined) return [];
    return [coil, ...back(at(coil.start) === node ? at(coil.finish) : at(coil.start))];
  };
  const [one, two] = [back(at(closing.start)), back(at(closing.finish))];
  return [closing, ...one.filter((coil) => !two.includes(coil)), ...two.filter((coil) => !one.includes(coil))];
}

/** Whether one end of the coil meets neither another coil nor a line. */
function isDeadEnd(winding: Winding, at: (n: Node) => Node, lineNodes: readonly Node[], coil: Coil): boolean {
  const ends_2 = [coil.start, coil.finish];
  return ends_2.some((end) => {
    const node = at(end);
    const others = winding.coils.filter((other) => other !== coil && (at(other.start) === node || at(other.finish) === node));
    return others.length === 0 && !lineNodes.includes(node);
  });
}

/** Each lead's node: the first lead of the group it ends up in when all groups that share leads are merged. */
function nodesOf(winding: Winding, joined: readonly (readonly number[])[], lines: readonly (readonly number[])[]): Map<Node, Node> {
  const nodes = new Map<Node, Node>(winding.leads.map((lead) => [lead, lead]));
  for (const group of [...joined, ...lines]) {
    const names = new Set(group.map((lead) => nodes.get(lead) ?? lead));
    const name = Math.min(...names);
    for (const [lead, node] of nodes) if (names.has(node)) nodes.set(lead, name);
  }
  return nodes;
}

/** The row whose groups these are, under some renaming of leads that leaves the winding as it is. */
function listed(winding: Winding, joined: readonly (readonly number[])[], lines: readonly (readonly number[])[]): Link | null {
  const found = text(joined, lines);
  const names = renamings(winding);
  return (
    winding.links.find((link) =>
      names.some((rename) => {
        const renamed = (groups: readonly (readonly number[])[]) => groups.map((group) => group.map((lead) => rename.get(lead) ?? lead));
        return text(renamed(link.joined), renamed(link.lines)) === found;
      }),
    ) ?? null
  );
}

function text(joined: readonly (readonly number[])[], lines: readonly (readonly number[])[]): string {
  const sorted = (groups: readonly (readonly number[])[]) =>
    groups
      .filter((group) => group.length > 1 || groups === lines)
      .map((group) => group.toSorted((a, b) => a - b).join("-"))
      .toSorted()
      .join(" ");
  return `${sorted(joined)} / ${sorted(lines)}`;
}

const PHASE_ORDERS = [
  [0, 1, 2],
  [1, 2, 0],
  [2, 0, 1],
  [0, 2, 1],
  [2, 1, 0],
  [1, 0, 2],
] as const;

/** All renamings of leads that carry coils to coils: phases in any order, halves of each phase either way, all coils as they are or all turned. */
function renamings(winding: Winding): ReadonlyMap<Node, Node>[] {
  const halves = winding.coils.length / 3;
  const found: ReadonlyMap<Node, Node>[] = [];
  for (const order of PHASE_ORDERS) {
    for (const turned of [false, true]) {
      for (let exchange = 0; exchange < (halves === 2 ? 8 : 1); exchange++) {
        const rename = renaming(winding, order, turned, exchange);
        if (rename !== null) found.push(rename);
      }
    }
  }
  return found;
}

function renaming(
  winding: Winding,
  order: readonly [0 | 1 | 2, 0 | 1 | 2, 0 | 1 | 2],
  turned: boolean,
  exchange: number,
): ReadonlyMap<Node, Node> | null {
  const map = new Map<Node, Node>();
  for (const [j, coil] of winding.coils.entries()) {
    const half = Math.floor(j / 3) ^ ((exchange >> coil.phase) & 1);
    const to = winding.coils[3 * half + order[coil.phase]];
    if (to === undefined) return null;
    const pairs = turned
      ? [
          [coil.start, to.finish],
          [coil.finish, to.start],
        ]
      : [
          [coil.start, to.start],
          [coil.finish, to.finish],
        ];
    for (const [from = 0, name = 0] of pairs) {
      // An inner joint must stay an inner joint, and a lead that ends two coils must go to one that ends both images.
      if ((map.get(from) ?? name) !== name || from < 0 !== name < 0) return null;
      map.set(from, name);
    }
  }
  return map;
}

/** The exchange of two leads that makes a listed connection; the two ends of one coil before any others. */
function swapFor(
  winding: Winding,
  joined: readonly (readonly number[])[],
  lines: readonly (readonly number[])[],
): readonly [number, number] | null {
  const pairs = winding.leads.flatMap((a) => winding.leads.filter((b) => b > a).map((b) => [a, b] as const));
  const isCoil = ([a, b]: readonly [number, number]) =>
    winding.coils.some((coil) => leadsOf(coil).includes(a) && leadsOf(coil).includes(b));
  const swapped = (groups: readonly (readonly number[])[], [a, b]: readonly [number, number]) =>
    groups.map((group) => group.map((lead) => (lead === a ? b : lead === b ? a : lead)));
  const cures = (pair: readonly [number, number]) => listed(winding, swapped(joined, pair), swapped(lines, pair)) !== null;
  return pairs.filter(isCoil).find(cures) ?? pairs.find(cures) ?? null;
}

/** Whether phase 2 follows phase 1 as B follows A. */
function sequenceOf(
  winding: Winding,
  joined: readonly (readonly number[])[],
  lines: readonly (readonly number[])[],
): "forward" | "reverse" {
  const nodes = nodesOf(winding, joined, lines);
  const at = (lead: Node) => nodes.get(lead) ?? lead;
  const lineNodes = lines.map((line) => at(line[0] ?? 0));
  const { potential } = walk(winding, at, lineNodes[0] ?? 0);
  const [a, b, c] = lineNodes.map((node) => potential.get(node) ?? ([0, 0] as const));
  if (a === undefined || b === undefined || c === undefined) throw new Error("a listed connection has three lines");
  const [ab, bc] = [
    [a[0] - b[0], a[1] - b[1]],
    [b[0] - c[0], b[1] - c[1]],
  ] as const;
  return ab[0] * bc[1] - ab[1] * bc[0] < 0 ? "forward" : "reverse";
}

function between(potentials: readonly (Phasor | null)[]): number[] {
  return potentials.map((one, j) => {
    const other = potentials[(j + 1) % 3];
    return one === null || other === null || other === undefined ? NaN : Math.hypot(one[0] - other[0], one[1] - other[1]);
  });
}

function leadsOf(coil: Coil): number[] {
  return [coil.start, coil.finish].filter((node) => node > 0);
}

function ends(coil: Coil): string {
  return leadsOf(coil).join("-");
}
