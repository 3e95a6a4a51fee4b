// The windings a terminal box may hold, coil by coil, and every way to link them.
import type { Refusal } from "./refusal.ts";

/** A lead number, or a joint inside the motor that no lead reaches (negative). */
export type Node = number;

/** One coil (half of a phase in dual-voltage windings): emf of `phase` 0, 1, 2 (A, B, C at 0, -120, +120 deg) from start to finish. */
export interface Coil {
  readonly start: Node;
  readonly finish: Node;
  readonly phase: 0 | 1 | 2;
}

export interface Link {
  readonly name: ConnectionName;
  /** Leads joined to each other and to nothing else. */
  readonly joined: readonly (readonly number[])[];
  /** Leads on each of the three lines. */
  readonly lines: readonly (readonly number[])[];
  /** Rated voltage over that of the first row of the winding. */
  readonly volts: number;
}

export interface Winding {
  readonly name: WindingName;
  readonly leads: readonly number[];
  readonly coils: readonly Coil[];
  readonly links: readonly Link[];
}

export type WindingName = "six-lead" | "nine-lead-star" | "nine-lead-delta" | "twelve-lead";
export type ConnectionName = "star" | "delta" | "series" | "parallel" | "series-star" | "parallel-star" | "series-delta" | "parallel-delta";

/** The star point inside a 9-lead star motor. */
const INNER_STAR: Node = -1;

function coils(...of: readonly (readonly [Node, Node])[]): Coil[] {
  const phases = [0, 1, 2] as const;
  return of.map(([start, finish], j) => ({ start, finish, phase: phases[j % 3] ?? 0 }));
}

function counted(to: number): number[] {
  return Array.from({ length: to }, (_, j) => j + 1);
}

const DELTA_OVER_STAR = 1 / Math.sqrt(3);

/** Lead numbers and links as NEMA MG 1; six leads U1 V1 W1 U2 V2 W2 of IEC 60034-8 are 1 to 6. Checked against published link tables. */
export const WINDINGS: Readonly<Record<WindingName, Winding>> = {
  "six-lead": {
    name: "six-lead",
    leads: counted(6),
    coils: coils([1, 4], [2, 5], [3, 6]),
    links: [
      { name: "star", joined: [[4, 5, 6]], lines: [[1], [2], [3]], volts: 1 },
      {
        name: "delta",
        joined: [],
        lines: [
          [1, 6],
          [2, 4],
          [3, 5],
        ],
        volts: DELTA_OVER_STAR,
      },
    ],
  },
  "nine-lead-star": {
    name: "nine-lead-star",
    leads: counted(9),
    coils: coils([1, 4], [2, 5], [3, 6], [7, INNER_STAR], [8, INNER_STAR], [9, INNER_STAR]),
    links: [
      {
        name: "series",
        joined: [
          [4, 7],
          [5, 8],
          [6, 9],
        ],
        lines: [[1], [2], [3]],
        volts: 1,
      },
      {
        name: "parallel",
        joined: [[4, 5, 6]],
        lines: [
          [1, 7],
          [2, 8],
          [3, 9],
        ],
        volts: 1 / 2,
      },
    ],
  },
  "nine-lead-delta": {
    name: "nine-lead-delta",
    leads: counted(9),
    coils: coils([1, 4], [2, 5], [3, 6], [7, 2], [8, 3], [9, 1]),
    links: [
      {
        name: "series",
        joined: [
          [4, 7],
          [5, 8],
          [6, 9],
        ],
        lines: [[1], [2], [3]],
        volts: 1,
      },
      {
        name: "parallel",
        joined: [],
        lines: [
          [1, 6, 7],
          [2, 4, 8],
          [3, 5, 9],
        ],
        volts: 1 / 2,
      },
    ],
  },
  "twelve-lead": {
    name: "twelve-lead",
    leads: counted(12),
    coils: coils([1, 4], [2, 5], [3, 6], [7, 10], [8, 11], [9, 12]),
    links: [
      {
        name: "series-star",
        joined: [
          [4, 7],
          [5, 8],
          [6, 9],
          [10, 11, 12],
        ],
        lines: [[1], [2], [3]],
        volts: 1,
      },
      {
        name: "parallel-star",
        joined: [
          [4, 5, 6],
          [10, 11, 12],
        ],
        lines: [
          [1, 7],
          [2, 8],
          [3, 9],
        ],
        volts: 1 / 2,
      },
      {
        name: "series-delta",
        joined: [
          [4, 7],
          [5, 8],
          [6, 9],
        ],
        lines: [
          [1, 12],
          [2, 10],
          [3, 11],
        ],
        volts: DELTA_OVER_STAR,
      },
      {
        name: "parallel-delta",
        joined: [],
        lines: [
          [1, 6, 7, 12],
          [2, 4, 8, 10],
          [3, 5, 9, 11],
        ],
        volts: DELTA_OVER_STAR / 2,
      },
    ],
  },
};

/**
 * The winding of a motor with so many leads, one speed or two, star or delta inside where nine leads leave that open.
 *
 * Source: NEMA MG 1 lead markings. Refuses what the links alone do not tell.
 */
export function windingOf(leads: number, speeds: number, inside: "star" | "delta" | null): Winding | Refusal {
  if (speeds !== 1) {
    return {
      code: "two-speed-winding",
      refused: "a two-speed winding reverses half of its coils between the speeds: its links are on its own plate",
    };
  }
  if (leads === 6) return WINDINGS["six-lead"];
  if (leads === 12) return WINDINGS["twelve-lead"];
  if (leads === 9 && inside !== null) return WINDINGS[inside === "star" ? "nine-lead-star" : "nine-lead-delta"];
  if (leads === 9) {
    return {
      code: "nine-leads",
      refused:
        "nine leads, star or delta inside? One group of three leads and three pairs by continuity: star; three groups of three: delta",
    };
  }
  if (leads === 3) return { code: "three-leads", refused: "three leads: linked inside the motor, nothing to reconnect" };
  return { code: "lead-count", refused: `${leads} leads: no winding of one speed known by that count; look for a diagram on the motor` };
}

/**
 * k [1] = rated voltage of connection `to` over that of `from`; current goes with 1/k, every ohm with k^2; torque at a slip, poles and speed stay.
 * null when the winding has no such connection. Source: same turns, same volts on each (derivation); circuit.ts reconnected.
 */
export function connectionFactor(winding: Winding, from: ConnectionName, to: ConnectionName): number | null {
  const volts = (name: ConnectionName) => winding.links.find((link) => link.name === name)?.volts;
  const [before, after] = [volts(from), volts(to)];
  return before === undefined || after === undefined ? null : after / before;
}
