import fc from "fast-check";
import { expect, test } from "vitest";
import { counted, listed, table, widthOf, wrap } from "./text.ts";

const words = fc.array(fc.string({ unit: fc.constantFrom("a", "b", "/", ".", "-", "é", "字", "\u00b2"), minLength: 1, maxLength: 60 }), {
  maxLength: 30,
});

test("no line of a wrapped text is wider than asked for, however long its words", () => {
  fc.assert(
    fc.property(words, fc.integer({ min: 20, max: 120 }), fc.integer({ min: 0, max: 10 }), (list, width, indent) => {
      for (const line of wrap(list.join(" "), width, " ".repeat(indent))) expect(widthOf(line)).toBeLessThanOrEqual(width);
    }),
  );
});

test("wrapping loses and adds no letter", () => {
  fc.assert(
    fc.property(words, fc.integer({ min: 20, max: 120 }), (list, width) => {
      expect(wrap(list.join(" "), width).join("").replaceAll(" ", "")).toBe(list.join(""));
    }),
  );
});

test("a table of long words stays inside its width", () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.string({ maxLength: 90, unit: "grapheme-ascii" }), fc.string({ maxLength: 90, unit: "grapheme-ascii" })), {
        minLength: 1,
        maxLength: 5,
      }),
      (rows) => {
        for (const line of table([{ head: "one" }, { head: "two", right: true }], rows, 60, "  "))
          expect(widthOf(line)).toBeLessThanOrEqual(60);
      },
    ),
  );
});

test("colours take no room, wide letters two columns, accents none", () => {
  expect(widthOf("\u001b[31mfails\u001b[0m")).toBe(5);
  expect(widthOf("字e\u0301")).toBe(3);
});

test("lists and counts read as sentences do", () => {
  expect(listed(["a", "b", "c"])).toBe("a, b and c");
  expect([counted(1, "check"), counted(2, "check")]).toEqual(["1 check", "2 checks"]);
});
