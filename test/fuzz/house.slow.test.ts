// The same as house.test.ts, ten thousand times.
import { expect, test } from "vitest";
import { answered } from "./house.ts";

/** Seconds no folder may take. */
const LONGEST = 5;

test("ten thousand hurt folders: no crash, none longer than five seconds", { timeout: 7_200_000 }, () => {
  const wrong: string[] = [];
  for (let seed = 0; seed < 10_000; seed += 1) {
    const { slips, seconds } = answered(seed, "nominal");
    for (const slip of slips) wrong.push(`folder ${seed}: ${slip}`);
    if (seconds > LONGEST) wrong.push(`folder ${seed}: ${seconds} s`);
  }
  expect(wrong).toEqual([]);
});
