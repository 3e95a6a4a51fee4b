import { expect, test } from "vitest";
import { affinity } from "./pump-motor.ts";

test("a 50 Hz pump on 60 Hz moves 1.2 times as much, lifts 1.44 times and asks 1.728 times the power", () => {
  expect(affinity({ f_1: 50, f_2: 60 }).flow).toBeCloseTo(1.2, 12);
  expect(affinity({ f_1: 50, f_2: 60 }).head).toBeCloseTo(1.44, 12);
  expect(affinity({ f_1: 50, f_2: 60 }).power).toBeCloseTo(1.728, 12);
});

test("power is flow times head, at any frequency", () => {
  for (const f_2 of [10, 25, 47, 60, 90]) {
    const r = affinity({ f_1: 60, f_2 });
    expect(r.power).toBeCloseTo(r.flow * r.head, 12);
  }
});
