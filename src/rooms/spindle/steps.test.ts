import { expect, test } from "vitest";
import { supply } from "../supply/index.ts";
import { spindle } from "./index.ts";

const steps = [...supply.steps, ...spindle.steps];
const ids = new Set(steps.map((s) => s.id));
const inputs = new Set<unknown>([...supply.inputs, ...spindle.inputs]);
const gates = ["purchase", "placed", "power", "stop", "motion", "air", "spindle", "cutting", "bar", "carousel", "unattended"];

test("the bring-up of the spindle has its thirteen steps, the survey of the supply among them", () => {
  expect([...ids]).toEqual(
    expect.arrayContaining([
      "spindle.photograph",
      "supply.survey",
      "spindle.insulation",
      "spindle.identify-windings",
      "spindle.motor-resistance",
      "spindle.standstill",
      "spindle.first-rotation",
      "spindle.run-in",
      "spindle.speed-proof",
      "spindle.inertia",
      "spindle.braking",
      "spindle.cut-test",
      "spindle.heat-run",
      "spindle.run-out",
    ]),
  );
});

test.each(steps.map((s) => [s.id, s] as const))("%s waits only for steps that exist, and never for itself", (id, s) => {
  const before = new Set<string>();
  const walk = (step: string): void => {
    for (const one of steps.find((x) => x.id === step)?.after ?? []) {
      expect(ids.has(one), `${step} waits for ${one}`).toBe(true);
      if (before.has(one)) continue;
      before.add(one);
      walk(one);
    }
  };
  walk(id);
  expect(before.has(id)).toBe(false);
  expect(s.gate === undefined || gates.includes(s.gate)).toBe(true);
});

test.each(steps.map((s) => [s.id, s] as const))("%s writes its readings to inputs that some figure or notice can read", (_, s) => {
  for (const read of s.reads) if (read.sets) expect(inputs.has(read.sets), read.says).toBe(true);
});

test("whatever turns under power names the rotating spindle and waits for a gate", () => {
  for (const s of spindle.steps.filter((x) => x.gate === "spindle" || x.gate === "cutting")) {
    expect(s.hazards.map((h) => h.id)).toContain("rotating-spindle");
  }
});

test("the winding is on no supply before its insulation was read", () => {
  const after = (id: string): readonly string[] => steps.find((s) => s.id === id)?.after ?? [];
  expect(after("spindle.identify-windings")).toEqual(["spindle.insulation"]);
  expect(after("spindle.first-rotation")).toContain("spindle.standstill");
});
