import { describe, expect, test } from "vitest";
import { shopOf } from "./bench.test-help.ts";
import { boxOf, leadsOfText } from "./motor-links.ts";

const plate = "plate: { power: 7.5 hp, voltage: 230/460 V, current: 20.4/10.2 A, frequency: 60 Hz, speed: 1745 rpm }";
function boxed(connected: string, links: string, lines: string, leads = 9) {
  const motor = `{ kind: induction, ${plate}, leads: ${leads}, winding: star, connected: ${connected}, links: ${links}, lines: ${lines} }`;
  const { answer } = shopOf(`machine: lathe\nkind: turret-lathe\nspindle:\n  motor: ${motor}\n`);
  const check = answer.checks.find((c) => c.address.endsWith("coils-right-way-round"));
  return { verdict: check?.verdict, says: answer.notices.filter((n) => /connection/.test(n.address)).map((n) => n.says) };
}

test("nine leads linked in series as the table says hold without a word", () => {
  expect(boxed("series", "[ 4-7, 5-8, 6-9 ]", "[ 1, 2, 3 ]")).toEqual({ verdict: "holds", says: [] });
});
test("the same nine in parallel hold too", () => {
  expect(boxed("parallel", "[ 4-5-6 ]", "[ 1-7, 2-8, 3-9 ]")).toEqual({ verdict: "holds", says: [] });
});
test("one coil the wrong way round fails and the leads to exchange are named", () => {
  // Coil 1-4 turned: 1 and 4 have changed places.
  const { verdict, says } = boxed("parallel", "[ 1-5-6 ]", "[ 4-7, 2-8, 3-9 ]");
  expect(verdict).toBe("fails");
  expect(says.join(" ")).toMatch(/Exchanging leads 1 and 4 cures it/);
});
test("links that make another connection than is written are an error, though every coil is right", () => {
  const { verdict, says } = boxed("series", "[ 4-5-6 ]", "[ 1-7, 2-8, 3-9 ]");
  expect(verdict).toBe("holds");
  expect(says.join(" ")).toMatch(/make this winding parallel, and connected says series/);
});
test("a delta joins nothing but its lines", () => {
  const box = boxOf({ n_l: 6, n_sp: 1, winding: "star", links: null, lines: ["1-6", "2-4", "3-5"] });
  expect("found" in box && box.found.link?.name).toBe("delta");
});

describe("what cannot be followed is said", () => {
  test.each([
    [{ n_l: 5, n_sp: 1 }, ["1", "2", "3"]],
    [{ n_l: 6, n_sp: 2 }, ["1", "2", "3"]],
    [{ n_l: 9, n_sp: 1 }, ["one", "2", "3"]],
  ] as const)("%o %o", (motor, lines) => {
    const box = boxOf({ ...motor, winding: "star", links: [], lines });
    expect("refused" in box && box.refused.length).toBeGreaterThan(10);
  });
});

test.each([
  ["4-7", [4, 7]],
  ["1", [1]],
  ["U1", null],
  ["", null],
] as const)("%s as leads", (text, leads) => expect(leadsOfText(text)).toEqual(leads));
