import { expect, test } from "vitest";
import { coverage } from "./plate-trial.test-help.ts";

test.each([
  ["bare plates", false],
  ["plates with dc resistance, run without load and standstill test", true],
])("of 1,000 motors drawn from the stated bands, %s hold the truth between 5th and 95th percentile in 870 to 930 cases", (_, measured) => {
  const held = coverage("slow", 1000, 1000, measured);
  console.log(held);
  for (const [name, share] of Object.entries(held)) {
    expect(share, name).toBeGreaterThan(0.87);
    expect(share, name).toBeLessThan(0.93);
  }
});
