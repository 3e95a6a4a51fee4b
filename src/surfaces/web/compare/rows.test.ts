// Rows of a comparison: what is put first, what is left out, and what a cell says.
import { expect, test } from "vitest";
import type { CheckChange, FigureChange, Outcome } from "../../../kernel/compare.ts";
import type { ColumnReply } from "../worker/comparing.ts";
import { checkRows, figureRows, isNumber } from "./rows.ts";

const outcome = (verdict: Outcome["verdict"], low: number): Outcome => ({
  verdict,
  yesNo: false,
  margin: { nominal: low, low, high: low },
});
const check = (address: string, was: Outcome | null, now: Outcome | null): CheckChange => ({
  address,
  asks: "?",
  item: "lathe/spindle",
  was,
  now,
  isChanged: JSON.stringify(was) !== JSON.stringify(now),
  betterIn: 40,
});
const reply = (checks: readonly CheckChange[], figures: readonly FigureChange[] = []): ColumnReply => ({
  checks,
  figures,
  cost: null,
  hours: null,
  options: [],
  mistakes: [],
});

const [bad, worse, good] = [outcome("fails", 0.8), outcome("fails", 0.4), outcome("holds", 2)];
const found = reply([
  check("lathe/a", good, good),
  check("lathe/b", bad, bad),
  check("lathe/c", worse, worse),
  check("lathe/d", good, good),
]);

test("what changes a verdict stands first, worst as found on top; then margins; what stays comes last", () => {
  const column = reply([
    check("lathe/a", good, outcome("holds", 3)),
    check("lathe/b", bad, good),
    check("lathe/c", worse, good),
    check("lathe/d", good, good),
  ]);
  expect(checkRows(found, [column]).map((r) => [r.address, r.changes])).toEqual([
    ["lathe/c", "verdict"],
    ["lathe/b", "verdict"],
    ["lathe/a", "margin"],
    ["lathe/d", "nothing"],
  ]);
});

test("a column still being worked out says nothing, and changes no row", () => {
  const rows = checkRows(found, [null]);
  expect(rows.every((r) => r.cells[0] === null && r.changes === "nothing")).toBe(true);
});

test("a check that an option brings is asked in its column alone, and stands last of its kind", () => {
  const rows = checkRows(found, [reply([...found.checks, check("lathe/new", null, good)]), found]);
  expect(rows.find((r) => r.address === "lathe/new")).toMatchObject({
    found: null,
    changes: "verdict",
    cells: [{ outcome: good }, { outcome: null }],
  });
  const also = checkRows(found, [reply([check("lathe/b", bad, good), check("lathe/new", null, good)])]);
  expect(
    also
      .filter((r) => r.changes === "verdict")
      .map((r) => r.address)
      .at(-1),
  ).toBe("lathe/new");
});

test("what does not change says nothing of imagined shops", () => {
  const [row] = checkRows(found, [found]);
  expect(row?.cells[0]).toMatchObject({ isChanged: false, betterIn: null });
});

const figure = (address: string, from: string, to: string, ratio: FigureChange["ratio"]): FigureChange => ({
  address,
  symbol: "T",
  says: "torque",
  from,
  to,
  ratio,
});

test("figures stand by how far any column moves them, their unit said once where all share it", () => {
  const rows = figureRows([
    reply([], [figure("lathe/a", "10 N*m", "12 N*m", 1.2), figure("lathe/b", "4 A", "2 A", 0.5)]),
    reply([], [figure("lathe/a", "10 N*m", "40 N*m", 4)]),
    null,
  ]);
  expect(rows.map((r) => r.address)).toEqual(["lathe/a", "lathe/b"]);
  expect(rows[0]).toMatchObject({ unit: "N·m", found: "10", cells: ["12", "40", undefined] });
  expect(rows[1]).toMatchObject({ unit: "A", cells: ["2", null, undefined] });
});

test("a figure that had no value keeps the unit of those that have one", () => {
  const [row] = figureRows([reply([], [figure("lathe/a", "no resistor is known", "12 s", { refused: "from nothing" })])]);
  expect(row).toMatchObject({ unit: "s", found: "no resistor is known", cells: ["12"] });
  expect([isNumber("12 s"), isNumber("-0.5"), isNumber("never")]).toEqual([true, true, false]);
});
