// Two variants of a winch held against each other: what is said to change, and what is not.
import { expect, test } from "vitest";
import { figureAnswers } from "./answer.ts";
import { checksAgainst, figuresAgainst, type Outcome, trialOf } from "./compare.ts";
import { evaluate } from "./evaluate.ts";
import { graphOf } from "./toy-house.test-help.ts";

const of = (more: Parameters<typeof graphOf>[0] = {}): ReturnType<typeof evaluate> => evaluate(graphOf(more), "full");
const changed = (a: ReturnType<typeof of>, b: ReturnType<typeof of>): string[] =>
  checksAgainst(trialOf(a), trialOf(b))
    .filter((c) => c.isChanged)
    .map((c) => c.address);

test("a shop against itself changes nothing", () => {
  expect(changed(of(), of())).toEqual([]);
  expect(figuresAgainst(figureAnswers(of()), figureAnswers(of()))).toEqual([]);
});

test("twice the load halves the margin of the brake and nothing else", () => {
  const [before, after] = [of(), of({ load: "600 kg" })];
  expect(changed(before, after)).toEqual(["winch/late.drum.brake-holds"]);
  const brake = checksAgainst(trialOf(before), trialOf(after)).find((c) => c.address === "winch/late.drum.brake-holds");
  const nominal = (o: Outcome | null | undefined): number => (typeof o?.margin.nominal === "number" ? o.margin.nominal : Number.NaN);
  expect(nominal(brake?.was) / nominal(brake?.now)).toBeCloseTo(2, 9);
});

test("a heavier load is better in no imagined shop, a lighter one in all of them, though the bands overlap", () => {
  const at = (load: string): number | null | undefined =>
    checksAgainst(trialOf(of()), trialOf(of({ load }))).find((c) => c.address === "winch/late.drum.brake-holds")?.betterIn;
  expect(at("310 kg")).toBe(0);
  expect(at("290 kg")).toBe(100);
});

test("a check that is asked in one variant only has changed, and is asked of nobody in the other", () => {
  const without = of({ drum: "none" });
  const gone = checksAgainst(trialOf(of()), trialOf(without)).filter((c) => c.was !== null && c.now === null);
  expect(gone.map((c) => c.address)).toContain("winch/late.drum.brake-holds");
  expect(gone.every((c) => c.isChanged && c.betterIn === null)).toBe(true);
  const come = checksAgainst(trialOf(without), trialOf(of())).filter((c) => c.was === null);
  expect(come.map((c) => c.address)).toEqual(gone.map((c) => c.address));
});

test("figures that move most come first, halving as far up as doubling, and those of other things not at all", () => {
  const moved = figuresAgainst(
    figureAnswers(of()),
    figureAnswers(of({ load: "900 kg", drum: { radius: "90 to 110 mm", motor: { kind: "cage", power: "2 kW" } } })),
  );
  expect(moved.map(({ address }) => address.slice(0, address.indexOf("/")))).not.toContain("crane");
  const ratios = moved.map((f) => (typeof f.ratio === "number" ? Math.abs(Math.log(f.ratio)) : Infinity));
  expect(ratios).toEqual(ratios.toSorted((a, b) => b - a));
  expect(moved.find((f) => f.says === "draw of the motor")?.ratio).toBeCloseTo(0.5, 9);
});

test("half a percent of a margin is no change, one percent is", () => {
  expect(changed(of(), of({ load: "301.2 kg" }))).toEqual([]);
  expect(changed(of(), of({ load: "303 kg" }))).toEqual(["winch/late.drum.brake-holds"]);
});
