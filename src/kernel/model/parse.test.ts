import fc from "fast-check";
import { expect, test } from "vitest";
import type { Node } from "./node.ts";
import { parseFile } from "./parse.ts";
import { settle } from "./report.ts";

function told(text: string): string[] {
  return settle(parseFile("f.yaml", text).drafts, () => text).map(({ place, code }) => `${place.line}:${place.column} ${code}`);
}

function plain(node: Node): unknown {
  if (node.is === "leaf") return node.text;
  if (node.is === "list") return node.items.map(plain);
  return [...node.entries].map(([key, child]) => [key, plain(child)]);
}
const read = (text: string): unknown => plain(parseFile("f.yaml", text).root);

test("a value keeps every sign it was typed with", () => {
  expect(read("a: 8.20\nb: 007\nc: yes\nd: 2026-02-14\ne: ~\nf: '1'\n")).toEqual([
    ["a", "8.20"],
    ["b", "007"],
    ["c", "yes"],
    ["d", "2026-02-14"],
    ["e", "~"],
    ["f", "1"],
  ]);
});

test("a file in another habit of lines, marks and indents says the same", () => {
  const plainFile = "axes:\n  x:\n    mass: 85 kg\n    ways: { kind: box }\n";
  const others = [
    plainFile.replaceAll("\n", "\r\n"),
    `\uFEFF${plainFile}`,
    plainFile.replaceAll("  ", "     "),
    `---\n${plainFile}`,
    `# note\n\n${plainFile}\n\n`,
  ];
  for (const other of others) {
    expect(told(other)).toEqual([]);
    expect(read(other)).toEqual(read(plainFile));
  }
});

test("a byte order mark does not move the first line", () => {
  expect(told("\uFEFFa: { x: 1, x: 2 }\n")).toEqual(["1:12 twice"]);
});

test("a place is counted as editors count, over CRLF and past wide signs", () => {
  const leaf = parseFile("f.yaml", "a:\r\n  note: \u00b5 5\r\n  b: 34 mm # x\r\n").root.entries.get("a");
  const b = leaf?.is === "map" ? leaf.entries.get("b") : undefined;
  expect(b?.place).toEqual({ file: "f.yaml", line: 3, column: 6, endLine: 3, endColumn: 11 });
  expect(b?.key).toEqual({ file: "f.yaml", line: 3, column: 3, endLine: 3, endColumn: 4 });
});

test("a text over several lines is one value", () => {
  expect(read("note: one\n  two\n  three\nb: >\n  x\n  y\n")).toEqual([
    ["note", "one two three"],
    ["b", "x y\n"],
  ]);
});

test.each([
  ["a tab indents a key", "s:\n\tbore: 34 mm\n\tc: 3\n", ["2:1 tab-indent", "3:1 tab-indent"]],
  ["a tab indents inside braces", "s:\n  a: { b: 1,\n\tc: 2 }\n", ["3:1 tab-indent"]],
  ["a tab stands behind blanks", "s:\n  a: 1\n  \tb: 2\n", ["3:3 tab-indent"]],
  ["a line holds a tab only", "a:\n\t\nb: 3\n", []],
  ["a key lacks its blank before another key", "s:\n  bore:34 mm\n  c: 3\n", ["2:3 no-blank-after-colon"]],
  ["a key lacks its blank after another key", "s:\n  c: 2\n  bore:34 mm\n", ["3:3 no-blank-after-colon"]],
  ["the only key lacks its blank", "s:\n  bore:34 mm\nq: 1\n", ["2:3 no-blank-after-colon"]],
  ["a key at the top lacks its blank", "bore:34 mm\n", ["1:1 no-blank-after-colon"]],
  ["a key in braces lacks its blank", "s: { a: 1, bore:34 mm }\n", ["1:12 no-blank-after-colon"]],
  ["a key stands twice", "axes:\n  x: { mass: 80 kg }\n  x: { mass: 90 kg }\n", ["3:3 twice"]],
  ["a colon stands in a text", "a:\n    note: motor: hums\n    b: 2\n", ["2:11 colon-in-text"]],
  ["a colon stands in a text in braces", "a: { note: motor: hums, b: 2 }\n", ["1:12 colon-in-text"]],
  ["a colon ends a text", "a: b:\n", ["1:4 colon-in-text"]],
  ["a number sign eats the size", "a:\n    size: AWG #8\n", ["2:11 comment-ate-value"]],
  ["an anchor and an alias", "a: { rotor: &j 0.02 kg*m2 }\nb: *j\n", ["1:13 alias", "2:4 alias"]],
  ["an alias to nothing", "b: *nobody\n", ["1:4 alias"]],
  ["an alias that holds itself", "a: &a [ *a ]\n", ["1:4 alias"]],
  ["a tag", "a: !!set { x }\n", ["1:4 syntax"]],
  ["a decimal comma inside braces", "s: { bore: 0,4 mm, c: 2 }\n", ["1:12 decimal-comma"]],
  ["a comma in a text inside braces", "s: { fault: stuck, jammed }\n", ["1:20 syntax"]],
  ["a brace is not closed", "a: { x: 1\nb: 3\n", ["1:4 syntax"]],
  ["a bracket is not closed", "a: [ 1, 2\nb: 3\n", ["1:4 syntax"]],
  ["a quote is not closed", 'a: "b\nc: 3\n', ["1:4 syntax"]],
  ["a bracket closes a brace", "a: { x: 1 ]\nb: 3\n", ["1:11 syntax"]],
  ["a brace too many", "a: { b: 2 }}\nc: 3\nd: 4\n", ["1:12 syntax"]],
  ["a sign that starts no text", "a: % b\n", ["1:4 syntax"]],
  ["a comma is missing between lines in braces", "a: { x: 1\n  y: 2 }\n", ["1:9 syntax"]],
  ["an indent fits nothing", "a:\n  b: 1\n c: 2\n", ["3:1 syntax"]],
  ["a key stands below a value", "a: 1\n  b: 2\nc: 3\n", ["2:3 syntax"]],
  ["a colon is missing", "a: 1\nb\nc: 3\n", ["2:1 syntax"]],
  ["a list starts behind its key", "a: - b\n", ["1:4 syntax"]],
  ["text behind a quote", "a: 'x' y\n", ["1:8 syntax"]],
  ["a second document", "a: 1\n---\nb: 1\n", ["2:1 syntax"]],
  ["a list instead of keys", "- a\n- b\n", ["1:1 not-a-map"]],
  ["a word instead of keys", "word\n", ["1:1 not-a-map"]],
  ["a map as a key", "{ a: b }: c\n", ["1:1 bad-name"]],
  ["no key before the colon", ": c\n", ["1:1 bad-name"]],
  ["an explicit key", "? a\n: b\n", ["1:1 syntax"]],
  ["a zero byte", "a: 1\nb: x\u0000\n", ["2:5 not-text"]],
  ["bytes of another encoding", "b: M\uFFFDller\n", ["1:5 not-text"]],
  ["a file of nothing", "", []],
  ["a file of comments", "# a\n# b\n", []],
])("%s", (_, text, findings) => {
  expect(told(text)).toEqual(findings);
});

test("the rest of a file is read as it was meant, past slips whose cure is sure", () => {
  const text = "s:\n\tbore:34 mm\n\tnote: motor: hums\n\tb: 3\nc: 1\n";
  expect(told(text)).toEqual(["2:1 tab-indent", "3:1 tab-indent", "4:1 tab-indent"]);
  expect(read(text)).toEqual([
    [
      "s",
      [
        ["bore", "34 mm"],
        ["note", "motor: hums"],
        ["b", "3"],
      ],
    ],
    ["c", "1"],
  ]);
});

test("the first line of a key that stands twice is named, and that one counts", () => {
  const parsed = parseFile("f.yaml", "a: 1\nb: 2\na: 3\n");
  expect(parsed.drafts[0]?.says).toContain("line 1");
  expect(plain(parsed.root)).toEqual([
    ["a", "1"],
    ["b", "2"],
  ]);
});

test("the caret stands under the slip, tabs and all", () => {
  const text = "a: 1\n \tb: 2\n";
  expect(settle(parseFile("f.yaml", text).drafts, () => text)[0]?.excerpt).toBe(" \tb: 2\n ^");
});

test("keys that other programs trip over are mere names", () => {
  const { root, drafts } = parseFile("f.yaml", "__proto__: { x: 1 }\nconstructor: 2\nhasOwnProperty: 3\n");
  expect(drafts).toEqual([]);
  expect([...root.entries.keys()]).toEqual(["__proto__", "constructor", "hasOwnProperty"]);
  expect(Object.getPrototypeOf({})).toBe(Object.prototype);
  expect(({} as Record<string, unknown>)["x"]).toBeUndefined();
});

const deep = 60_000;
test.each([
  ["brackets in brackets", `a: ${"[".repeat(deep)}`],
  ["brackets in brackets, closed", `a: ${"[".repeat(deep)}${"]".repeat(deep)}`],
  ["braces in braces", `a: ${"{ a: ".repeat(deep / 2)}`],
  ["lists in lists on a line", "- ".repeat(deep)],
  ["keys below keys", Array.from({ length: 200 }, (_, i) => `${" ".repeat(i)}a:`).join("\n")],
])("%s are refused before anything is made of them", (_, text) => {
  expect(parseFile("f.yaml", text).drafts.map((d) => d.code)).toEqual(["too-deep"]);
});

test("forty levels are read, one more is not", () => {
  const nested = (n: number): string => `a: ${"{ a: ".repeat(n - 1)}1${" }".repeat(n - 1)}\n`;
  expect(told(nested(40))).toEqual([]);
  expect(told(nested(41))).toEqual(["1:201 too-deep"]);
});

test("a file of five million letters is refused unread", () => {
  expect(told(`a: ${"x".repeat(5_000_000)}`)).toEqual(["1:1 too-large"]);
});

test("an alias bomb is a list of refused aliases, nothing is multiplied", () => {
  const bomb = Array.from({ length: 20 }, (_, i) => `a${i}: &a${i} [ ${"*a0, ".repeat(9)}*a0 ]`).join("\n");
  const parsed = parseFile("f.yaml", bomb);
  expect(new Set(parsed.drafts.map((d) => d.code))).toEqual(new Set(["alias"]));
});

test("any text gives a tree and findings inside the text", () => {
  const pieces = fc.constantFrom(
    "a",
    "b-1",
    ":",
    ": ",
    " ",
    "  ",
    "\n",
    "\r\n",
    "\t",
    "{",
    "}",
    "[",
    "]",
    ",",
    ", ",
    "#",
    " #",
    '"',
    "'",
    "- ",
    "? ",
    "|",
    ">",
    "&x",
    "*x",
    "!t",
    "%",
    "@",
    "0,4",
    "\\",
    "\uFEFF",
    "---\n",
    "\u2028",
    "12 mm",
  );
  fc.assert(
    fc.property(fc.array(pieces, { maxLength: 40 }), (parts) => {
      const text = parts.join("");
      const lines = text.split("\n").length;
      const parsed = parseFile("f.yaml", text);
      for (const { place } of parsed.drafts) {
        expect(place.line).toBeGreaterThan(0);
        expect(place.line).toBeLessThanOrEqual(lines + 1);
        expect(place.column).toBeGreaterThan(0);
      }
      settle(parsed.drafts, () => text);
    }),
    { numRuns: 400, seed: 41 },
  );
});
