// Findings are seen where they stand, whatever the text has become since.
import fc from "fast-check";
import { expect, test } from "vitest";
import { stretchOf } from "./spots.ts";

const place = (line: number, column: number, endLine = line, endColumn = column): Parameters<typeof stretchOf>[0] => ({
  file: "f",
  line,
  column,
  endLine,
  endColumn,
});

test("a place counted from 1 is a stretch of the text", () => {
  const text = "a: 1\nbore: 5 mn\n";
  const { from, to } = stretchOf(place(2, 7, 2, 11), text);
  expect(text.slice(from, to)).toBe("5 mn");
});

test("a place without width is seen: at the letter it stands before, or behind the last one of its line", () => {
  expect(stretchOf(place(1, 2), "abc\n")).toEqual({ from: 1, to: 2 });
  expect(stretchOf(place(1, 4), "abc\n")).toEqual({ from: 2, to: 3 });
});

test("no place leads out of the text, and none in a text is without width", () => {
  fc.assert(
    fc.property(
      fc.string({ unit: fc.constantFrom("a", " ", "\n"), maxLength: 30 }),
      fc.nat(12),
      fc.nat(12),
      fc.nat(12),
      fc.nat(12),
      (text, a, b, c, d) => {
        const { from, to } = stretchOf(place(a + 1, b + 1, c + 1, d + 1), text);
        expect(from).toBeGreaterThanOrEqual(0);
        expect(to).toBeLessThanOrEqual(text.length);
        expect(to - from).toBeGreaterThanOrEqual(text === "" || from === 0 ? 0 : 1);
      },
    ),
  );
});
