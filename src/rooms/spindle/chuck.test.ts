import { expect, test } from "vitest";
import { gripInside, gripOutside, slipGrip } from "./chuck.ts";

const jaws = { F_0: 30e3, z: 3, m: 0.55, r: 0.055, w: (3000 * Math.PI) / 30 };

test("three jaws of 0.55 kg at 55 mm lose 8957 N at 3000 rpm", () => {
  // 3 * 0.55 * 0.055 * 314.159^2.
  expect(jaws.F_0 - gripOutside(jaws)).toBeCloseTo(8956.7, 1);
});

test("inside a bore the same pull adds", () => {
  expect(gripInside(jaws) - jaws.F_0).toBeCloseTo(8956.7, 1);
});

test("the loss goes with the square of speed, and grip ends at nothing", () => {
  expect(jaws.F_0 - gripOutside({ ...jaws, w: jaws.w / 2 })).toBeCloseTo(8956.7 / 4, 1);
  expect(gripOutside({ ...jaws, w: jaws.w * 3 })).toBe(0);
});

test("30 N m on 25 mm and 400 N of push slip at 12.2 kN with friction 0.2", () => {
  // hypot(2400, 400) / 0.2.
  expect(slipGrip({ T: 30, d: 0.025, F_a: 400, mu: 0.2 })).toBeCloseTo(12165.5, 1);
  expect(slipGrip({ T: 0, d: 0.025, F_a: 0, mu: 0.2 })).toBe(0);
});
