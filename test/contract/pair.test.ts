// The benchmark harness on a made-up clock, where each piece of work takes exactly what we say.
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { ratioOf } from "../../bench/pair.ts";

let clock = 0;
beforeEach(() => {
  clock = 0;
  vi.spyOn(performance, "now").mockImplementation(() => clock);
});
afterEach(() => {
  vi.restoreAllMocks();
});

/** Work that takes a time [ms], as the machine's speed allows. */
const work = (time: number, slowness: () => number = () => 1) => {
  return () => {
    clock += time * slowness();
  };
};

test("work that takes three times as long has the ratio 3, whichever is too short for the clock", () => {
  expect(ratioOf({ says: "", base: work(2), subject: work(6) }).median).toBeCloseTo(3, 12);
  expect(ratioOf({ says: "", base: work(1 / 1024), subject: work(3 / 1024) }).median).toBeCloseTo(3, 12);
  expect(ratioOf({ says: "", base: work(2), subject: work(6) }).baseTime).toBeCloseTo(2e-3, 12);
});

test("a machine that slows down to a tenth while it measures leaves the ratio near 3", () => {
  const tired = (): number => 1 + 9 * (clock / 1e4);
  const { lower, median, upper } = ratioOf({ says: "", base: work(2, tired), subject: work(6, tired) });
  expect(median).toBeGreaterThan(2.9);
  expect(median).toBeLessThan(3.1);
  expect(lower).toBeLessThan(upper);
});

test("a rare interruption moves no quartile", () => {
  let calls = 0;
  const interrupted = (): number => (++calls % 25 === 0 ? 100 : 1);
  const { lower, median, upper } = ratioOf({ says: "", base: work(8), subject: work(8, interrupted) });
  expect([lower, median, upper]).toEqual([1, 1, 1].map((one) => expect.closeTo(one, 12)));
});

test("a pair that takes seconds a turn still gets thirteen turns", () => {
  let calls = 0;
  const slow = (): void => {
    calls++;
    clock += 2_000;
  };
  ratioOf({ says: "", base: slow, subject: work(1) });
  expect(calls).toBe(1 + 13); // one to find the length of a turn
});
