// Values tried out stand in the address, and what else is there stays.
import fc from "fast-check";
import { expect, test } from "vitest";
import { readTried, type TriedValue, writtenTried } from "./tried-address.ts";

const value: fc.Arbitrary<TriedValue> = fc.record({
  address: fc.stringMatching(/^(shop|lathe)\/[a-z]+(\.[a-z-]+){0,3}$/),
  text: fc.string(),
  range: fc.option(fc.string()),
});

test("the address leads back to the values and ranges that it was made of, and keeps the rest", () => {
  fc.assert(
    fc.property(fc.uniqueArray(value, { maxLength: 4, selector: (v) => v.address }), (values) => {
      const own = writtenTried(
        new Map([
          ["cols", "belt"],
          ["try.lathe/old", "1 m"],
          ["range.lathe/old", "1 to 2 m"],
        ]),
        values,
      );
      expect(readTried(own)).toEqual(values);
      expect(own.get("cols")).toBe("belt");
      expect(own.has("range.lathe/old")).toBe(values.some((v) => v.address === "lathe/old" && v.range !== null));
    }),
  );
});
