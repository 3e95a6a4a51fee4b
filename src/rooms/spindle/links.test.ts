import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "./circuits.test-help.ts";
import { connectionOf } from "./links.ts";
import { isRefusal } from "./refusal.ts";
import { connectionFactor, type Link, type Winding, windingOf, WINDINGS } from "./windings.ts";

fc.configureGlobal({ seed: 1 });

type Groups = readonly (readonly number[])[];

const rows = Object.values(WINDINGS).flatMap((winding) =>
  winding.links.map((link) => ({ winding, link, title: `${winding.name}, ${link.name}` })),
);
const anyRow = fc.constantFrom(...rows);

const swapped = (groups: Groups, [a, b]: readonly [number, number]): number[][] =>
  groups.map((group) => group.map((lead) => (lead === a ? b : lead === b ? a : lead)));

function swappedIn(winding: Winding, link: Link, pair: readonly [number, number]) {
  return connectionOf(winding, swapped(link.joined, pair), swapped(link.lines, pair));
}

/** Two leads that are the two ends of one coil. */
const coilPairs = (winding: Winding) =>
  winding.coils.flatMap((coil) => (coil.start > 0 && coil.finish > 0 ? [[coil.start, coil.finish] as const] : []));

/** Volts by the nodes' own equations with relaxation, an independent road: the field that leaves the least emf unbalanced. */
function relaxed(winding: Winding, link: Link): { lines: number; worst: number } {
  const group = (lead: number) => [...link.joined, ...link.lines].findIndex((leads) => leads.includes(lead));
  const node = (lead: number) => (group(lead) >= 0 ? group(lead) : 100 + Math.abs(lead));
  const emf = (phase: number) => [Math.cos((-2 * Math.PI * phase) / 3), Math.sin((-2 * Math.PI * phase) / 3)] as const;
  const volts = new Map<number, [number, number]>();
  for (const coil of winding.coils) volts.set(node(coil.start), [0, 0]).set(node(coil.finish), [0, 0]);
  const wanted = winding.coils.map((coil) => ({ from: node(coil.start), to: node(coil.finish), e: emf(coil.phase) }));
  for (let k = 0; k < 4000; k++) {
    for (const { from, to, e } of wanted) {
      const [a, b] = [volts.get(from), volts.get(to)];
      if (a === undefined || b === undefined) continue;
      for (const part of [0, 1] as const) {
        const miss = (a[part] - b[part] - e[part]) / 2;
        a[part] -= miss;
        b[part] += miss;
      }
    }
  }
  const apart = (a?: [number, number], b?: [number, number]) =>
    Math.hypot((a?.[0] ?? NaN) - (b?.[0] ?? NaN), (a?.[1] ?? NaN) - (b?.[1] ?? NaN));
  const worst = Math.max(
    ...wanted.map(({ from, to, e }) => {
      const [a, b] = [volts.get(from), volts.get(to)];
      return Math.hypot((a?.[0] ?? NaN) - (b?.[0] ?? NaN) - e[0], (a?.[1] ?? NaN) - (b?.[1] ?? NaN) - e[1]);
    }),
  );
  const at = link.lines.map((line) => volts.get(node(line[0] ?? 0)));
  const [one, two, three] = [apart(at[0], at[1]), apart(at[1], at[2]), apart(at[2], at[0])];
  expectNear(one, two, 1e-6);
  expectNear(two, three, 1e-6);
  return { lines: one, worst };
}

describe.each(rows)("the table row $title", ({ winding, link }) => {
  test("closes every loop and puts equal volts, 120 degrees apart, on the lines: 1 coil volt a coil in its rated share", () => {
    const { lines, worst } = relaxed(winding, link);
    expect(worst).toBeLessThan(1e-6);
    const first = winding.links[0];
    expectNear(lines, (first === undefined ? NaN : relaxed(winding, first).lines) * link.volts, 1e-6);
  });

  test("is named from its links alone", () => {
    const found = connectionOf(winding, link.joined, link.lines);
    expect(found).toEqual({ link, sequence: "forward", faults: [], swap: null });
  });

  test("is named in whatever order links and leads are written, and lines two and three exchanged turn it round", () => {
    const backwards = (groups: Groups) => groups.toReversed().map((group) => group.toReversed());
    const [one = [], two = [], three = []] = link.lines;
    expect(connectionOf(winding, backwards(link.joined), link.lines).link).toBe(link);
    expect(connectionOf(winding, link.joined, [one, three, two])).toMatchObject({ link, sequence: "reverse" });
    expect(connectionOf(winding, link.joined, [two, three, one])).toMatchObject({ link, sequence: "forward" });
  });

  test.each(coilPairs(winding))("with the leads %i and %i of one coil exchanged is found out, and that exchange is the cure", (a, b) => {
    const found = swappedIn(winding, link, [a, b]);
    expect(found.link).toBeNull();
    expect(found.faults.length).toBeGreaterThan(0);
    expect(found.faults[0]?.code).toMatch(/loop-open|lines-unequal|coil-shorted|lines-joined/);
    const cure = found.swap;
    expect(cure).not.toBeNull();
    if (cure === null) return;
    const cured = connectionOf(winding, swapped(swapped(link.joined, [a, b]), cure), swapped(swapped(link.lines, [a, b]), cure));
    expect(cured.link?.name).toBe(link.name);
    expect(cured.faults).toEqual([]);
  });

  test("with one lead forgotten is found out", () => {
    for (const lead of winding.leads) {
      const without = (groups: Groups) =>
        groups.map((group) => group.filter((other) => other !== lead)).filter((group) => group.length > 0);
      const found = connectionOf(winding, without(link.joined), without(link.lines));
      expect(found.link, `lead ${lead}`).toBeNull();
      expect(found.faults.length, `lead ${lead}`).toBeGreaterThan(0);
    }
  });
});

describe("a wrong link", () => {
  test("between any two leads either changes nothing electrically or is found out", () => {
    fc.assert(
      fc.property(anyRow, fc.nat(), fc.nat(), ({ winding, link }, i, j) => {
        const [a, b] = [winding.leads[i % winding.leads.length], winding.leads[j % winding.leads.length]];
        if (a === undefined || b === undefined) return;
        const found = swappedIn(winding, link, [a, b]);
        if (found.link === null) expect(found.faults.length).toBeGreaterThan(0);
        else {
          // What passes must also pass by the other road.
          const { worst, lines } = relaxed(winding, {
            ...found.link,
            joined: swapped(link.joined, [a, b]),
            lines: swapped(link.lines, [a, b]),
          });
          expect(worst).toBeLessThan(1e-6);
          expectNear(lines, relaxed(winding, link).lines, 1e-6);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("of a parallel row never leaves a coil turned round unnoticed, however many are turned", () => {
    for (const { winding, link } of rows.filter((row) => row.link.name.startsWith("parallel"))) {
      const pairs = coilPairs(winding);
      for (let turned = 1; turned < 2 ** pairs.length - 1; turned++) {
        let [joined, lines]: [Groups, Groups] = [link.joined, link.lines];
        for (const [k, pair] of pairs.entries()) {
          if ((turned >> k) % 2 === 1) [joined, lines] = [swapped(joined, pair), swapped(lines, pair)];
        }
        const found = connectionOf(winding, joined, lines);
        if (found.link !== null) {
          // Turning all coils of the winding alike is no fault; nothing else may pass.
          const whole = relaxed(winding, { ...link, joined, lines });
          expect(whole.worst, `${winding.name} ${turned}`).toBeLessThan(1e-6);
        } else expect(found.faults.length).toBeGreaterThan(0);
      }
    }
  });

  test("that turns half of a parallel phase leaves two coil volts in a loop: a short through the winding", () => {
    const found = connectionOf(
      WINDINGS["nine-lead-star"],
      [[1, 5, 6]],
      [
        [4, 7],
        [2, 8],
        [3, 9],
      ],
    );
    expect(found.faults[0]).toMatchObject({ code: "loop-open" });
    expect(found.faults[0]?.residual).toBeGreaterThan(1.7);
    expect(found.swap).toEqual([1, 4]);
  });

  test("that turns one phase of a star leaves every loop open and the lines unequal", () => {
    const found = connectionOf(WINDINGS["six-lead"], [[1, 5, 6]], [[4], [2], [3]]);
    expect(found.faults[0]).toMatchObject({ code: "lines-unequal" });
    expect(found.swap).toEqual([1, 4]);
  });

  test("that mixes the halves of two phases is found, with the leads to exchange", () => {
    const found = connectionOf(
      WINDINGS["nine-lead-star"],
      [
        [4, 8],
        [5, 7],
        [6, 9],
      ],
      [[1], [2], [3]],
    );
    expect(found.faults[0]?.code).toBe("lines-unequal");
    const cure = found.swap ?? [0, 0];
    expect(
      connectionOf(
        WINDINGS["nine-lead-star"],
        swapped(
          [
            [4, 8],
            [5, 7],
            [6, 9],
          ],
          cure,
        ),
        swapped([[1], [2], [3]], cure),
      ).link?.name,
    ).toBe("series");
  });

  test("that shifts every second half by a phase keeps the lines equal and is still not taken for a connection", () => {
    const found = connectionOf(
      WINDINGS["twelve-lead"],
      [
        [4, 8],
        [5, 9],
        [6, 7],
        [10, 11, 12],
      ],
      [[1], [2], [3]],
    );
    expect(found.link).toBeNull();
    expect(found.faults.map((fault) => fault.code)).toEqual(["unlisted"]);
  });

  test("between two lines, or across one coil, is named", () => {
    const star = WINDINGS["six-lead"];
    expect(
      connectionOf(
        star,
        [
          [4, 5, 6],
          [1, 2],
        ],
        [[1], [2], [3]],
      ).faults[0]?.code,
    ).toBe("lines-joined");
    expect(connectionOf(star, [[4, 5, 6, 1]], [[1], [2], [3]]).faults[0]).toMatchObject({ code: "coil-shorted", leads: [1, 4] });
    expect(connectionOf(star, [[4, 5]], [[1], [2], [3]]).faults.map((fault) => fault.code)).toContain("coil-open");
  });

  test("in a list that is no list of this motor is named", () => {
    const star = WINDINGS["six-lead"];
    expect(connectionOf(star, [[4, 5, 13]], [[1], [2], [3]]).faults[0]).toMatchObject({ code: "unknown-lead", leads: [13] });
    expect(connectionOf(star, [[4, 5, 6]], [[1], [2]]).faults[0]?.code).toBe("no-lines");
    expect(connectionOf(star, [[4, 5, 6]], [[1], [2], []]).faults[0]?.code).toBe("no-lines");
    expect(
      connectionOf(
        star,
        [
          [4, 5, 6],
          [5, 6],
        ],
        [[1], [2], [3]],
      ).faults[0],
    ).toMatchObject({ code: "lead-twice", leads: [5, 6] });
  });
});

describe("windings by the count of their leads", () => {
  test("six, nine with the inside known, and twelve leads are known", () => {
    expect(windingOf(6, 1, null)).toBe(WINDINGS["six-lead"]);
    expect(windingOf(9, 1, "star")).toBe(WINDINGS["nine-lead-star"]);
    expect(windingOf(9, 1, "delta")).toBe(WINDINGS["nine-lead-delta"]);
    expect(windingOf(12, 1, null)).toBe(WINDINGS["twelve-lead"]);
  });

  test("others, and two speeds, are refused", () => {
    const codes = [windingOf(9, 1, null), windingOf(6, 2, null), windingOf(3, 1, null), windingOf(10, 1, null)];
    expect(codes.map((x) => (isRefusal(x) ? x.code : null))).toEqual(["nine-leads", "two-speed-winding", "three-leads", "lead-count"]);
  });

  test("series star to parallel halves the volts, to series delta divides them by root 3, to parallel delta by twice that", () => {
    const twelve = WINDINGS["twelve-lead"];
    expectNear(connectionFactor(twelve, "series-star", "parallel-star"), 1 / 2, 1e-12);
    expectNear(connectionFactor(twelve, "series-star", "series-delta"), 1 / Math.sqrt(3), 1e-12);
    expectNear(connectionFactor(twelve, "series-star", "parallel-delta"), 1 / (2 * Math.sqrt(3)), 1e-12);
    expectNear(connectionFactor(twelve, "series-delta", "parallel-delta"), 1 / 2, 1e-12);
    expectNear(connectionFactor(WINDINGS["six-lead"], "delta", "star"), Math.sqrt(3), 1e-12);
    expect(connectionFactor(WINDINGS["six-lead"], "star", "parallel")).toBeNull();
  });
});
