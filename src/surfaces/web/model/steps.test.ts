// Steps come in an order in which a person can do them.
import { expect, test } from "vitest";
import type { StepInfo } from "../worker/household.ts";
import { canBeDone, inOrder } from "./steps.ts";

const step = (id: string, ...after: string[]): StepInfo => ({
  id,
  after,
  room: "spindle",
  per: "spindle",
  title: id,
  hazards: [],
  gate: null,
  does: [],
  reads: [],
  accept: "",
});
const steps = [step("run-in", "first-turn"), step("first-turn", "insulation", "power-on"), step("insulation"), step("resistance")];

test("no step stands before one that must be done first", () => {
  expect(inOrder(steps).map((s) => s.id)).toEqual(["insulation", "first-turn", "run-in", "resistance"]);
});

test("what waits for no described step can be done now", () => {
  expect(canBeDone(steps).map((s) => s.id)).toEqual(["insulation", "resistance"]);
});

test("steps that wait for each other are shown all the same, each once", () => {
  const ring = [step("a", "b"), step("b", "a")];
  expect(inOrder(ring).map((s) => s.id)).toEqual(["b", "a"]);
});
