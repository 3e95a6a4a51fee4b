import { expect, test } from "vitest";
import type { Run } from "./swept.ts";
import { sweepCsv, textPlot } from "./sweep-text.ts";
import { widthOf } from "./text.ts";

const run = (nominal: readonly number[], spread = 0): Run => ({
  address: "lathe/a.b",
  says: "a",
  symbol: "a",
  unit: "N",
  nominal,
  low: nominal.map((y) => y - spread),
  high: nominal.map((y) => y + spread),
});
const plain = { unicode: false, width: 80 };

test("a rising line is drawn from the lower left to the upper right", () => {
  const lines = textPlot(plain, [0, 1, 2], run([1, 2, 3]), "a").slice(1, -2);
  const columns = lines.flatMap((l) => (l.includes("*") ? [l.lastIndexOf("*")] : []));
  expect(columns).toEqual(columns.toSorted((a, b) => b - a));
  expect(columns.length).toBe(3);
});

test("plots fit the width, with values missing, without end, or all the same", () => {
  for (const y of [
    [1, Number.NaN, 3],
    [1, Infinity, 3],
    [2, 2, 2],
    [Number.NaN, Number.NaN, Number.NaN],
    [1e-30, 1e30, 5],
  ]) {
    for (const line of textPlot({ unicode: true, width: 50 }, [0, 1, 2], run(y, 0.5), "a")) expect(widthOf(line)).toBeLessThanOrEqual(50);
  }
});

test("the table as CSV carries units in its head and leaves empty what has no value", () => {
  const csv = sweepCsv({
    input: { address: "lathe/x", says: "x", unit: "mm", values: [1, 2] },
    texts: ["1 mm", "2 mm"],
    runs: [run([5, Number.NaN])],
  });
  expect(csv).toBe("lathe/x/mm,lathe/a.b/N,lathe/a.b low/N,lathe/a.b high/N\n1,5,5,5\n2,,,\n");
});
