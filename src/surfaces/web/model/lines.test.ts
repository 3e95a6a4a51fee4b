// Texts compared line by line: nothing is lost, nothing is made up, and what two people changed apart is taken from both.
import fc from "fast-check";
import { expect, test } from "vitest";
import { hunks, linesIn, merged, resolved } from "./lines.ts";

const text = fc.array(fc.constantFrom("a\n", "b\n", "c: 1\n", "d: 2 # why\n", "\n"), { maxLength: 14 }).map((lines) => lines.join(""));
const base = "supply:\n  rating: 60 A\n  voltage: 240 V\n\nspindle:\n  power: 7.5 hp\n";

test("a text cut into lines and joined again is the text, with or without its last line end, in either kind of line end", () => {
  fc.assert(
    fc.property(fc.string({ unit: fc.constantFrom("a", "\n", "\r\n", "é") }), (t) => {
      expect(linesIn(t).join("")).toBe(t);
    }),
  );
});

test("the hunks between two texts turn the one into the other and touch as few lines as can be", () => {
  fc.assert(
    fc.property(text, text, (before, after) => {
      const [a, b] = [linesIn(before), linesIn(after)];
      const found = hunks(a, b);
      const made: string[] = [];
      let at = 0;
      for (const h of found) {
        made.push(...a.slice(at, h.from), ...b.slice(h.newFrom, h.newTo));
        at = h.to;
      }
      made.push(...a.slice(at));
      expect(made.join("")).toBe(after);
      const changed = found.reduce((n, h) => n + (h.to - h.from) + (h.newTo - h.newFrom), 0);
      expect(changed).toBe(a.length + b.length - 2 * longestCommon(a, b));
    }),
  );
});

/** By the textbook table: an independent route. */
function longestCommon(a: readonly string[], b: readonly string[]): number {
  const row = Array.from({ length: b.length + 1 }, () => 0);
  for (const x of a) {
    let corner = 0;
    for (let j = 1; j <= b.length; j += 1) {
      const above = row[j] ?? 0;
      row[j] = x === b[j - 1] ? corner + 1 : Math.max(above, row[j - 1] ?? 0);
      corner = above;
    }
  }
  return row[b.length] ?? 0;
}

test("a hand edit on disk and an edit on the page in other lines are both kept, without asking", () => {
  const theirs = base.replace("60 A", "80 A");
  const ours = base.replace("7.5 hp", "10 hp");
  const pieces = merged(base, theirs, ours);
  expect(pieces.every((p) => p.is === "agreed")).toBe(true);
  expect(resolved(pieces, () => "ours")).toBe(base.replace("60 A", "80 A").replace("7.5 hp", "10 hp"));
});

test("the same line changed on both sides is asked about, and each answer gives that side's text", () => {
  const theirs = base.replace("60 A", "80 A");
  const ours = base.replace("60 A", "100 A");
  const pieces = merged(base, theirs, ours);
  expect(pieces.filter((p) => p.is === "conflict")).toEqual([
    { is: "conflict", base: ["  rating: 60 A\n"], theirs: ["  rating: 80 A\n"], ours: ["  rating: 100 A\n"] },
  ]);
  expect(resolved(pieces, () => "theirs")).toBe(theirs);
  expect(resolved(pieces, () => "ours")).toBe(ours);
});

test("a line taken away here and changed there is a conflict, a line taken away on both sides is none", () => {
  const without = base.replace("  rating: 60 A\n", "");
  expect(merged(base, without, base.replace("60 A", "80 A")).some((p) => p.is === "conflict")).toBe(true);
  expect(merged(base, without, without)).toEqual([{ is: "agreed", lines: linesIn(without) }]);
});

test("whoever did not change a text takes what the other made of it, and two equal changes are one", () => {
  fc.assert(
    fc.property(text, text, (b, other) => {
      expect(resolved(merged(b, other, b), () => "ours")).toBe(other);
      expect(resolved(merged(b, b, other), () => "theirs")).toBe(other);
      expect(resolved(merged(b, other, other), () => "ours")).toBe(other);
    }),
  );
});

test("choosing one side everywhere never loses a line that both sides left standing", () => {
  fc.assert(
    fc.property(text, text, text, (b, theirs, ours) => {
      for (const side of ["theirs", "ours"] as const) {
        const pieces = merged(b, theirs, ours);
        const chosen = resolved(pieces, () => side);
        const agreed = pieces.flatMap((p) => (p.is === "agreed" ? p.lines : p[side])).join("");
        expect(chosen).toBe(agreed);
      }
      expect(resolved(merged(b, theirs, ours), () => "ours")).toBe(resolved(merged(b, ours, theirs), () => "theirs"));
    }),
  );
});
