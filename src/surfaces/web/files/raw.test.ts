// Line ends and byte order mark outlive every edit.
import fc from "fast-check";
import { expect, test } from "vitest";
import { applied, type Change, difference, plainOf } from "./raw.ts";

const text = fc.array(fc.constantFrom("a", "ü", "key: 1", " ", "\n", "\r\n", "\r", "🙂"), { maxLength: 20 }).map((parts) => parts.join(""));
const marked = fc.tuple(fc.boolean(), text).map(([has, t]) => (has ? "\uFEFF" : "") + t);
/** Changes as an editor tells them: in order, apart, in places of the plain text. */
const edited = marked.chain((raw) =>
  fc
    .uniqueArray(fc.nat(plainOf(raw).length), { maxLength: 4 })
    .chain((places) =>
      fc.tuple(
        fc.constant(raw),
        fc.constant(places.toSorted((a, b) => a - b)),
        fc.array(fc.constantFrom("", "x", "\n", "y\nz"), { minLength: 2, maxLength: 2 }),
      ),
    ),
);
const changesOf = (places: readonly number[], inserts: readonly string[]): Change[] =>
  places.flatMap((from, i) => (i % 2 === 0 ? [{ from, to: places[i + 1] ?? from, insert: inserts[i / 2] ?? "" }] : []));

test("the raw text after an edit is, plainly read, the edited plain text", () => {
  fc.assert(
    fc.property(edited, ([raw, places, inserts]) => {
      const changes = changesOf(places, inserts);
      const plain = plainOf(raw);
      // A lone carriage return before a line feed that is put there would join with it: no editor is asked to tell them apart.
      fc.pre(!raw.includes("\r") || !/\r(?!\n)/.test(raw));
      let wanted = "";
      let at = 0;
      for (const { from, to, insert } of changes) {
        wanted += plain.slice(at, from) + insert;
        at = to;
      }
      expect(plainOf(applied(raw, changes))).toBe(wanted + plain.slice(at));
      expect(applied(raw, changes).startsWith("\uFEFF")).toBe(raw.startsWith("\uFEFF"));
    }),
  );
});

test("lines that are not touched keep their ends, and new ones end as most do", () => {
  const raw = "\uFEFFa: 1\r\nb: 2\nc: 3\r\n";
  expect(applied(raw, [{ from: 5, to: 9, insert: "b: 4\nd: 5" }])).toBe("\uFEFFa: 1\r\nb: 4\r\nd: 5\nc: 3\r\n");
  expect(applied("a\nb\n", [{ from: 1, to: 1, insert: "\n" }])).toBe("a\n\nb\n");
});

test("nothing changed is the same text, byte for byte", () => {
  fc.assert(
    fc.property(marked, (raw) => {
      expect(applied(raw, [])).toBe(raw);
    }),
  );
});

test("the difference of two texts leads from one to the other, and of one to itself there is none", () => {
  fc.assert(
    fc.property(text, text, (a, b) => {
      const change = difference(a, b);
      expect(change === null ? a : a.slice(0, change.from) + change.insert + a.slice(change.to)).toBe(b);
      expect(difference(a, a)).toBeNull();
    }),
  );
});
