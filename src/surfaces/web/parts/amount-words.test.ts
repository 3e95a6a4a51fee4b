// Numbers taken apart for the eye.
import { expect, test } from "vitest";
import { bandWords, numberAndUnit } from "./amount-words.ts";

test("a number parts from its unit, which is set as in print", () => {
  expect(numberAndUnit("30.2 N*m")).toEqual({ number: "30.2", unit: "N·m" });
  expect(numberAndUnit("26 to 35 N*m")).toEqual({ number: "26 to 35", unit: "N·m" });
  expect(numberAndUnit("0.8")).toEqual({ number: "0.8", unit: "" });
  expect(numberAndUnit("AWG 8")).toEqual({ number: "AWG 8", unit: "" });
});

test("a band says its unit only where the value beside it has another", () => {
  expect(bandWords({ nominal: 30.2, text: "30.2 N*m", band: "26 to 35 N*m" })).toBe("26 to 35");
  expect(bandWords({ nominal: 30.2, text: "30.2 N*m", band: "exact" })).toBe("exact");
  expect(bandWords({ nominal: { never: true }, text: "never", band: "3 s to never" })).toBe("3 s to never");
  expect(bandWords({ nominal: { refused: "no number" }, text: "no number", band: "no number to no number" })).toBe("");
});
