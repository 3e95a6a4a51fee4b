import { expect, test } from "vitest";
import { shownIn } from "./shown.ts";

test("torque is drawn in newton metres or foot pounds, as the reader wants", () => {
  const [metric, inch] = [shownIn("torque", { units: "metric" }), shownIn("torque", { units: "inch" })];
  expect([metric.unit, inch.unit]).toEqual(["N·m", "lbf·ft"]);
  expect(metric.of(13.558)).toBeCloseTo(13.558, 12);
  // 1 lbf ft = 1.3558179 N m (NIST SP 811).
  expect(inch.of(13.558179)).toBeCloseTo(10, 6);
  expect(inch.text(13.558179)).toBe("10 lbf·ft");
});
test("a temperature keeps its zero, a difference of temperatures has none", () => {
  expect(shownIn("temperature", { units: "metric" }).of(293.15)).toBeCloseTo(20, 9);
  expect(shownIn("temperature-difference", { units: "inch" }).of(80)).toBeCloseTo(144, 9);
});
