// What is typed into the calculator is a link.
import fc from "fast-check";
import { expect, test } from "vitest";
import { nothing, ownOf, readTyped, type Typed } from "./typed-address.ts";

const word = fc.string({ minLength: 1 });
const typed: fc.Arbitrary<Typed> = fc.record({
  figure: fc.option(fc.stringMatching(/^[a-z]+(\.[a-z-]+){1,3}$/)),
  values: fc.dictionary(fc.stringMatching(/^[A-Za-z][A-Za-z0-9_.-]*$/), word, { maxKeys: 4 }).map((d) => new Map(Object.entries(d))),
  along: fc.oneof(word, fc.constant("")),
  range: fc.oneof(word, fc.constant("")),
  steps: fc.oneof(word, fc.constant("")),
  scale: fc.constantFrom("linear", "log"),
});

test("the address leads back to figure, values and plot, and an empty calculator leaves nothing in it", () => {
  fc.assert(
    fc.property(typed, (t) => {
      expect(readTyped(ownOf(t))).toEqual(t);
    }),
  );
  expect(ownOf(nothing).size).toBe(0);
});
