import fc from "fast-check";
import { expect, test } from "vitest";
import { nearest } from "./nearest.ts";

const screw = ["lead", "starts", "diameter", "root", "free-length", "loaded-length"];

test.each([
  ["leed", "lead"],
  ["laed", "lead"], // swapped neighbours are one slip
  ["diametre", "diameter"],
  ["free-lenght", "free-length"],
  ["ROOT", "root"],
])("a screw has no %s, but it has a %s", (typed, meant) => {
  expect(nearest(typed, screw)).toBe(meant);
});

test("a word that is near nothing has no neighbour", () => {
  expect(nearest("voltage", screw)).toBeUndefined();
  expect(nearest("", screw)).toBeUndefined();
  expect(nearest("x", ["y", "z"])).toBeUndefined(); // one letter is near every other letter
});

test("of equally near words the first of the list is offered", () => {
  expect(nearest("at-hom", ["at-home", "at-home2"])).toBe("at-home");
  expect(nearest("in.3", ["in.4", "in.5"])).toBe("in.4");
});

test("a page of junk has no neighbour", () => {
  expect(nearest("z".repeat(100_000), ["z".repeat(100_000)])).toBeUndefined();
});

test("one slip in a key of four letters or more always finds it among words that are not alike", () => {
  const keys = ["spindle", "counterbalance", "acceleration", "lubrication", "feedback"];
  fc.assert(
    fc.property(fc.constantFrom(...keys), fc.nat(), fc.constantFrom("drop", "double", "swap", "other"), (key, n, slip) => {
      const at = n % (key.length - 1);
      const [head, a, b, tail] = [key.slice(0, at), key[at] ?? "", key[at + 1] ?? "", key.slice(at + 2)];
      const typed = { drop: head + b + tail, double: head + a + a + b + tail, swap: head + b + a + tail, other: `${head}q${b}${tail}` }[
        slip
      ];
      expect(nearest(typed, keys)).toBe(key);
    }),
  );
});
