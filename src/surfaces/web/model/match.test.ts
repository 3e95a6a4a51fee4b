// Figures and inputs are found by a few letters of their address, words or symbol.
import { expect, test } from "vitest";
import { found } from "./match.ts";

const all = [
  { id: "spindle.motor.breakdown-torque", says: "breakdown torque of the motor", symbol: "T_bd" },
  { id: "spindle.belt.torque-at-slip", says: "motor torque at which the belt slips", symbol: "T_slip" },
  { id: "supply.voltage-drop", says: "drop in the run", symbol: "dU" },
  { id: "supply.motor-start-voltage-drop", says: "drop in the run while a motor starts", symbol: "dU_m" },
];
const ids = (query: string): string[] => found(query, all, 10).map((f) => f.id);

test("a symbol typed out is the first to be meant", () => {
  expect(ids("T_bd")[0]).toBe("spindle.motor.breakdown-torque");
  expect(ids("dU")[0]).toBe("supply.voltage-drop");
});

test("every word must be there, in whatever order and whatever part of the name", () => {
  expect(ids("slip motor")).toEqual(["spindle.belt.torque-at-slip"]);
  expect(ids("torque spindle").length).toBe(2);
  expect(ids("torque air")).toEqual([]);
});

test("of two that fit alike the shorter one comes first, and nothing typed shows them as they stand", () => {
  expect(ids("drop run")).toEqual(["supply.voltage-drop", "supply.motor-start-voltage-drop"]);
  expect(found("  ", all, 2).map((f) => f.id)).toEqual(all.slice(0, 2).map((f) => f.id));
});
