import { expect, test } from "vitest";
import { answered } from "./house.ts";

/** Promised is 5 s; a busy machine is no fault of the program [s]. */
const longest = 20;

test("10,000 hurt shops are answered all the way, none of them for ever", { timeout: 7_200_000 }, () => {
  const told = { clean: 0, seconds: 0, slowest: 0, slowestSeed: 0 };
  for (let seed = 0; seed < 10_000; seed++) {
    const { seconds, errors, slips } = answered(seed);
    expect(slips, `folder ${seed}`).toEqual([]);
    told.clean += Number(errors === 0);
    told.seconds += seconds;
    if (seconds > told.slowest) [told.slowest, told.slowestSeed] = [seconds, seed];
  }
  console.log(told);
  expect(told.slowest).toBeLessThan(longest);
});
