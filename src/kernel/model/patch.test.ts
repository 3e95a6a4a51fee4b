import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { expect, test } from "vitest";
import type { Node } from "./node.ts";
import { parseFile } from "./parse.ts";
import { headsOf, homeOf, patch } from "./patch.ts";
import { parseShop } from "./resolve.ts";
import { folder, machineFile, smallKeys } from "./small-house.test-help.ts";

const example = new URL("../../../examples/heron/", import.meta.url).pathname;
const files = readdirSync(example, { recursive: true, encoding: "utf8" })
  .filter((f) => f.endsWith(".yaml") && statSync(join(example, f)).isFile())
  .toSorted()
  .map((file) => ({ file, text: readFileSync(join(example, file), "utf8") }));

/** Every single value of a file with its path. */
function values(node: Node, path: string[] = []): { path: string[]; text: string }[] {
  if (node.is === "leaf") return [{ path, text: node.text }];
  if (node.is === "list") return [];
  return [...node.entries].flatMap(([key, child]) => values(child, [...path, key]));
}
function valueAt(text: string, path: readonly string[]): string | undefined {
  return values(parseFile("f", text).root).find((v) => v.path.join("\n") === path.join("\n"))?.text;
}
function changedLines(before: string, after: string): number {
  const [a, b] = [before.split("\n"), after.split("\n")];
  return Math.max(a.length, b.length) - a.filter((line, i) => line === b[i]).length;
}
const texts = fc.constantFrom(
  "5.08 mm",
  "230/460 V",
  "unknown",
  "none",
  "a: b",
  "x # y",
  "slow, then stop",
  "",
  " led by a blank",
  "it's",
  'a "quote"',
  "{ x }",
  "[ 1",
  "& more",
  "- 5",
  "two\nlines",
  "0,4 mm",
  "#8",
  "% 5",
  "\\n",
  "\u00b5m",
  "? why",
  "null",
  "~",
  "!x",
  "key:",
  "'",
  "]",
);

test("a patched value of the example reads back as given, and no other line moves", () => {
  fc.assert(
    fc.property(fc.constantFrom(...files), fc.nat(), texts, fc.boolean(), ({ text }, n, value, crlf) => {
      const source = crlf ? text.replaceAll("\n", "\r\n") : text;
      const all = values(parseFile("f", source).root);
      const chosen = all[n % all.length];
      if (!chosen) return;
      const done = patch(source, chosen.path, value);
      if (!("text" in done)) throw new Error(`${chosen.path.join(".")}: ${done.refused}`);
      expect(valueAt(done.text, chosen.path)).toBe(value);
      expect(changedLines(source, done.text)).toBeLessThanOrEqual(1);
      expect(values(parseFile("f", done.text).root).filter((v) => v.path !== chosen.path).length).toBe(all.length);
    }),
    { numRuns: 250, seed: 7 },
  );
});

test("a value set back is the file as it was, byte for byte", () => {
  for (const { text } of files) {
    const chosen = values(parseFile("f", text).root).filter((v) => v.text !== "" && /^[\w. /%+-]+$/.test(v.text))[3];
    if (!chosen) continue;
    const there = patch(text, chosen.path, "changed");
    const back = "text" in there ? patch(there.text, chosen.path, chosen.text) : there;
    const quoted = text.includes(`"${chosen.text}"`) || text.includes(`'${chosen.text}'`);
    if (!quoted) expect(back).toEqual({ text });
  }
});

test("a key added to the example reads back, and lines only come in", () => {
  fc.assert(
    fc.property(fc.constantFrom(...files), fc.nat(), texts, ({ text }, n, value) => {
      const all = values(parseFile("f", text).root);
      const path = [...(all[n % all.length]?.path.slice(0, -1) ?? []), "brand-new"];
      const done = patch(text, path, value);
      if (!("text" in done)) throw new Error(`${path.join(".")}: ${done.refused}`);
      expect(valueAt(done.text, path)).toBe(value);
      const undone = patch(done.text, path, null);
      expect("text" in undone ? undone.text.trimEnd() : undone).toBe(text.trimEnd());
    }),
    { numRuns: 250, seed: 8 },
  );
});

const one = "axes:\n    x:\n        mass: 85 kg   # with the vice\n        ways: { kind: box }\n    y: {}\n";

test.each([
  [
    "a value keeps its comment",
    one,
    ["axes", "x", "mass"],
    "90 kg",
    "axes:\n    x:\n        mass: 90 kg   # with the vice\n        ways: { kind: box }\n    y: {}\n",
  ],
  [
    "a key comes in with the file's own indent",
    one,
    ["axes", "x", "rapid"],
    "5 m/min",
    one.replace("box }\n", "box }\n        rapid: 5 m/min\n"),
  ],
  [
    "missing maps are made with the file's own step",
    one,
    ["axes", "x", "screw", "lead"],
    "5 mm",
    one.replace("box }\n", "box }\n        screw:\n            lead: 5 mm\n"),
  ],
  [
    "a key comes into braces",
    one,
    ["axes", "x", "ways", "moving-friction"],
    "0.1",
    one.replace("kind: box }", "kind: box, moving-friction: 0.1 }"),
  ],
  [
    "a map comes into braces",
    one,
    ["axes", "x", "ways", "gib", "force"],
    "5 N",
    one.replace("kind: box }", "kind: box, gib: { force: 5 N } }"),
  ],
  ["a key comes into empty braces", one, ["axes", "y", "mass"], "5 kg", one.replace("y: {}", "y: { mass: 5 kg }")],
  ["a key comes to the top", one, ["year"], "1983", `${one}year: 1983\n`],
  ["a key comes into an empty file", "", ["axes", "x", "mass"], "5 kg", "axes:\n  x:\n    mass: 5 kg\n"],
  ["a file without a last line break gets one", "a: 1", ["b"], "2", "a: 1\nb: 2\n"],
  ["line ends stay those of the file", "a: 1\r\nb: 2\r\n", ["c"], "3", "a: 1\r\nb: 2\r\nc: 3\r\n"],
  ["a mark at the start stays", "\uFEFFa: 1\n", ["a"], "2", "\uFEFFa: 2\n"],
  ["nothing becomes a value", "a:\nb: 2\n", ["a"], "1", "a: 1\nb: 2\n"],
  ["a word that meant absent gives way to a map", "choke: none\n", ["choke", "share"], "3 %", "choke: { share: 3 % }\n"],
  ["a long form keeps how it is known", "a: { value: 5 mm, from: plate }\n", ["a"], "6 mm", "a: { value: 6 mm, from: plate }\n"],
  ["a text in braces gets its quotes", "a: { b: x, c: 1 }\n", ["a", "b"], "x, y", 'a: { b: "x, y", c: 1 }\n'],
  [
    "an operation is found by its name",
    "operations:\n  - { operation: face, speed: 1 rpm }\n  - { operation: thread, speed: 600 rpm }\n",
    ["operations", "thread", "speed"],
    "750 rpm",
    "operations:\n  - { operation: face, speed: 1 rpm }\n  - { operation: thread, speed: 750 rpm }\n",
  ],
])("%s", (_, before, path, value, after) => {
  expect(patch(before, path, value)).toEqual({ text: after });
});

test("a list is written in square brackets", () => {
  expect(patch("links: [ 4-7, 5-8 ]\n", ["links"], ["4-5-6"])).toEqual({ text: "links: [ 4-5-6 ]\n" });
  expect(patch("a: 1\n", ["links"], ["a, b", "c"])).toEqual({ text: 'a: 1\nlinks: [ "a, b", c ]\n' });
});

test.each([
  ["a line goes with its comment", one, ["axes", "x", "mass"], one.replace("        mass: 85 kg   # with the vice\n", "")],
  ["the first key of braces", "a: { b: 1, c: 2 }\n", ["a", "b"], "a: { c: 2 }\n"],
  ["the last key of braces", "a: { b: 1, c: 2 }\n", ["a", "c"], "a: { b: 1 }\n"],
  ["the only key of braces", "a: { b: 1 }\n", ["a", "b"], "a: {}\n"],
  ["the only key of a block leaves an empty map", "a:\n  b: 1\nc: 2\n", ["a", "b"], "a: {}\nc: 2\n"],
  ["a whole block", one, ["axes", "x"], "axes:\n    y: {}\n"],
])("taken away: %s", (_, before, path, after) => {
  expect(patch(before, path, null)).toEqual({ text: after });
});

test.each([
  ["a file that cannot be read", "a: [ 1\n", ["b"], "1"],
  ["a file in which a key stands twice", "a: 1\na: 2\n", ["a"], "1"],
  ["a key that is not there cannot go", "a: 1\n", ["b"], null],
  ["a block of keys is no single value", "a:\n  b: 1\n  c: 2\n", ["a"], "1"],
  ["a text of several lines", "a: |\n  b\n  c\n", ["a"], "1"],
  ["a word that is no map", "a: word\n", ["a", "b"], "1"],
  ["an item that is not there", "a: [ { step: x } ]\n", ["a", "y", "z"], "1"],
  ["no path", "a: 1\n", [], "1"],
])("refused: %s", (_, before, path, value) => {
  expect(patch(before, path, value)).toHaveProperty("refused");
});

test("the head key of a short form is the word itself, and another key makes it a map", () => {
  const text = "devices: { a: { valve: detent } }\n";
  const shop = parseShop(folder({ "lathe/machine.yaml": text }), smallKeys);
  const heads = headsOf("lathe/machine.yaml", shop);
  const valve = ["devices", "a", "valve"];
  expect(patch(text, [...valve, "kind"], "spring", heads)).toEqual({ text: "devices: { a: { valve: spring } }\n" });
  expect(patch(text, [...valve, "like"], "valve-52", heads)).toEqual({
    text: "devices: { a: { valve: { kind: detent, like: valve-52 } } }\n",
  });
  expect(patch(text, [...valve, "like"], "valve-52")).toHaveProperty("refused");
});

test("every address has one home, catalogue values beside the like that brings them", () => {
  const shop = parseShop(
    folder({
      "lathe/machine.yaml": machineFile,
      "catalogue/a.yaml": "screws: { s: { lead: 5 mm } }\n",
      "catalogue/b.yaml": "motors: { m: { torque: 5 N*m } }\n",
    }),
    smallKeys,
  );
  const home = (address: string): string => {
    const { file, path } = homeOf(address, shop);
    return `${file} ${path.join(".")}`;
  };
  expect(home("lathe/axes.x.motor.torque")).toBe("lathe/machine.yaml axes.x.motor.torque");
  expect(home("lathe/work/shaft.operations.thread.speed")).toBe("lathe/work/shaft.yaml operations.thread.speed");
  expect(home("lathe/sequences/home.steps.seat.until")).toBe("lathe/sequences/home.yaml steps.seat.until");
  expect(home("shop/air.compressors.main.delivery")).toBe("shop.yaml air.compressors.main.delivery");
  expect(home("shop/catalogue/motors.m.torque")).toBe("catalogue/b.yaml motors.m.torque");
  expect(homeOf({ root: "lathe", path: ["axes", "x"] }, shop)).toEqual({ file: "lathe/machine.yaml", path: ["axes", "x"] });
});
