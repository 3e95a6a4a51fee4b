import { expect, test } from "vitest";
import { shopOf } from "./bench.test-help.ts";
import { cuttability } from "./materials.ts";
import { shippedCatalogue } from "./shipped.ts";

const machine = "machine: lathe\nkind: turret-lathe\nspindle: { highest-speed: 3000 rpm }\n";
const work = (material: string): Record<string, string> => ({
  "catalogue/shipped.yaml": shippedCatalogue,
  "lathe/work/shaft.yaml": `part: shaft\nstock: { material: ${material}, size: 20 mm }\noperations:\n  - { operation: rough, kind: turn, surface-speed: 60 m/min, feed: 0.1 mm, depth: 1 mm, wear: 1 }\n`,
});

test("the shipped text reads without a finding of its own", () => {
  expect(shopOf(machine, work("stainless-303")).answer.findings.filter((f) => f.place.file === "catalogue/shipped.yaml")).toEqual([]);
});

test.each(Object.entries(cuttability))("%s is found by an operation, with the force of its row", (name, row) => {
  const s = shopOf(machine, work(name));
  const force = s.answer.inputs[`shop/catalogue/materials.${name}.kc`]?.amount;
  expect(force?.low).toBeGreaterThanOrEqual(row.kc11Band[0] * 0.999);
  expect(force?.high).toBeLessThanOrEqual(row.kc11Band[1] * 1.001);
  expect(s.answer.figures["lathe/spindle.work/shaft.operations.rough.cut.torque"]?.amount.nominal).toBeGreaterThan(0);
});
