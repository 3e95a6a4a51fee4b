// Columns of a comparison as the address names them.
import fc from "fast-check";
import { expect, test } from "vitest";
import { columnsOf, columnsText, flipped, isMine, isSame } from "./columns.ts";

const name = fc.stringMatching(/^[a-z][a-z0-9-]{0,8}$/).filter((n) => n !== "found");
const columns = fc.array(fc.uniqueArray(name, { minLength: 1, maxLength: 3 }), { maxLength: 5 });

test("the address leads back to the columns that it was made of, also to none at all", () => {
  fc.assert(
    fc.property(columns, (all) => {
      expect(columnsOf(columnsText(all), ["usual"], [])).toEqual(all);
    }),
  );
});

test("an address that names none shows the usual ones", () => {
  expect(columnsOf(undefined, ["belt", "drive"], [])).toEqual([["belt"], ["drive"]]);
});

test("what is laid on always has a column, and only one, in whatever order it is laid", () => {
  expect(columnsOf("belt", [], ["drive", "belt"])).toEqual([["belt"], ["drive", "belt"]]);
  expect(columnsOf("belt+drive", [], ["drive", "belt"])).toEqual([["belt", "drive"]]);
});

test("a column that is shown goes, one that is not comes, and twice is as before", () => {
  fc.assert(
    fc.property(fc.uniqueArray(name, { minLength: 1, maxLength: 4 }), (names) => {
      const one = [["other-one"]];
      expect(flipped(flipped(one, names), names.toReversed())).toEqual(one);
    }),
  );
  expect(isSame(["a"], ["a", "b"])).toBe(false);
});

test("a machine is concerned by itself and by the shop, not by its neighbour", () => {
  expect(["lathe/spindle.thermal", "shop/supply.current", "lathe-2/x", "mill/x"].map((a) => isMine(a, "lathe"))).toEqual([
    true,
    true,
    false,
    false,
  ]);
});
