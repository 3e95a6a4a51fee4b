import fc from "fast-check";
import { expect, test } from "vitest";
import { canonical, job, type Json } from "./job.ts";
import { runJob } from "./evaluate.ts";

test("rounding noise is no change: 0.1 + 0.2 and 0.3 are one brief", () => {
  expect(canonical({ p: 0.1 + 0.2 })).toBe(canonical({ p: 0.3 }));
  expect(canonical(1)).not.toBe(canonical(1 + 1e-11));
});

test("the order of keys and the sign of zero are harmless", () => {
  expect(canonical({ a: 1, b: { d: -0, c: [0] } })).toBe(canonical({ b: { c: [-0], d: 0 }, a: 1 }));
  expect(canonical([1, 2])).not.toBe(canonical([2, 1]));
});

test("never is apart from nothing, from its opposite, and from the word for it", () => {
  const keys = [Infinity, -Infinity, null, Number.NaN, 0, false, "Infinity", "NaN", "null", "0", [], {}].map(canonical);
  expect(new Set(keys).size).toBe(keys.length);
});

test("two briefs have one key just when they are the same but for rounding", () => {
  const value = fc.jsonValue() as fc.Arbitrary<Json>;
  fc.assert(
    fc.property(value, (brief) => {
      const key = canonical(brief);
      // Text of a key is itself JSON for what has an end, and its own key again.
      expect(canonical(JSON.parse(key) as Json)).toBe(key);
    }),
  );
});

test("a job runs once for equal briefs, again for another brief and for a new version", () => {
  let runs = 0;
  const count = (version: number) => job<{ x: number }, number>({ id: "toy.count", version, run: (b) => ((runs += 1), b.x * 2) });
  expect(runJob(count(1), { x: 0.3 })).toBe(0.6);
  expect(runJob(count(1), { x: 0.1 + 0.2 })).toBe(0.6);
  expect(runs).toBe(1);
  runJob(count(1), { x: 0.31 });
  runJob(count(2), { x: 0.3 });
  expect(runs).toBe(3);
});
