// Real files of the example, hurt in every way a hand can hurt them, taken all the way to answers by the real rooms.
import { expect, test } from "vitest";
import { answered } from "./house.ts";

/** Folders tried in every run; thousands in the slow one. */
const FOLDERS = 60;

test("no hurt folder of the example brings the program down, and every finding has a place", () => {
  const slips: string[] = [];
  const prototype = Object.getOwnPropertyNames(Object.prototype).toSorted();
  for (let seed = 0; seed < FOLDERS; seed += 1) for (const slip of answered(seed, "nominal").slips) slips.push(`folder ${seed}: ${slip}`);
  expect(slips).toEqual([]);
  expect(Object.getOwnPropertyNames(Object.prototype).toSorted()).toEqual(prototype);
});
