import { expect, test } from "vitest";
import { complete, hover } from "./complete.ts";
import type { Role } from "./role.ts";
import { smallKeys } from "./small-house.test-help.ts";

const machine: Role = { is: "machine", machine: "lathe" };
const option: Role = { is: "option", machine: "lathe", name: "o" };

/** Labels offered where `|` stands, and the text after the first is taken. */
function offered(marked: string, role: Role = machine): string[] {
  const offset = marked.indexOf("|");
  return complete(marked.replace("|", ""), offset, role, smallKeys, (at) => [`${at.like ?? at.link?.says ?? ""}-1`]).candidates.map(
    (c) => c.label,
  );
}
function taken(marked: string, role: Role = machine): string {
  const offset = marked.indexOf("|");
  const text = marked.replace("|", "");
  const { from, candidates } = complete(text, offset, role, smallKeys);
  return text.slice(0, from) + (candidates[0]?.insert ?? "?") + text.slice(offset);
}

test("the indent says whose keys are wanted", () => {
  expect(offered("axes:\n  x:\n    ma|")).toEqual(["mass"]);
  expect(offered("axes:\n  x:\n    mass: 85 kg\n    |")).toEqual(expect.arrayContaining(["rapid", "screw", "motor"]));
  expect(offered("axes:\n  x:\n    mass: 85 kg\n    |")).not.toContain("mass");
  expect(offered("axes:\n  x:\n    mass: 85 kg\ns|").toSorted()).toEqual(["spindle", "supply"]);
  expect(taken("axes:\n  x:\n    ma|\n  y: {}\n")).toBe("axes:\n  x:\n    mass: \n  y: {}\n");
});

test("inside braces the keys of the map are offered, over several lines and half typed", () => {
  expect(offered("axes: { x: { screw: { le| } } }")).toEqual(["lead"]);
  expect(offered("axes:\n  x: { screw: { lead: 5 mm,\n      st|")).toEqual(["starts"]);
  expect(offered('axes:\n  x: { remark: "a, { b", ra|')).toEqual(["rapid"]);
  expect(offered("axes: { x: { screw: { lead: 5 mm }, ra|")).toEqual(["rapid"]);
});

test("words, examples and the two words for nothing are offered as values", () => {
  expect(offered("axes:\n  x:\n    ways: { kind: l|")).toEqual(["lined-box", "linear-guide"]);
  expect(offered("axes:\n  x:\n    rapid: |")).toEqual(["5 m/min", "200 in/min", "unknown"]);
  expect(offered("axes: { x: { jerk: n|")).toContain("none");
  expect(offered("devices:\n  a:\n    valve: d|")).toEqual(["detent"]);
});

test("names come from the shop", () => {
  expect(offered("axes:\n  x:\n    motor: { like: |")).toEqual(["motors-1"]);
  expect(offered("operations:\n  - { operation: face, tool: |", { is: "work", machine: "lathe", name: "p" })).toEqual([
    "tool-1",
    "unknown",
  ]);
  expect(offered("operations:\n  - operation: face\n    sp|", { is: "work", machine: "lathe", name: "p" })).toEqual(["speed"]);
});

test("in an option the path is completed key by key, and then its value", () => {
  expect(offered("option: o\nset:\n  spindle.motor.con|", option)).toEqual(["spindle.motor.connected"]);
  expect(offered("set:\n  shop/environment.al|", option)).toEqual(["shop/environment.altitude"]);
  expect(offered("set:\n  spindle.motor.connected: p|", option)).toEqual(["parallel"]);
  expect(offered("set:\n  axes.x.screw: { le|", option)).toEqual(["lead"]);
  expect(offered("se|", option)).toEqual(["set"]);
});

test("a key says what it is, a value says what its key is", () => {
  const text = "axes:\n  x: { mass: 85 kg }\n";
  expect(hover(text, text.indexOf("mass") + 1, machine, smallKeys)).toMatchObject({ path: ["axes", "x", "mass"] });
  expect(hover(text, text.indexOf("85"), machine, smallKeys)?.says).toContain("a mass");
  expect(hover(text, text.indexOf("x:"), machine, smallKeys)?.says).toBe("an axis");
  expect(hover("nonsense: 1\n", 2, machine, smallKeys)).toBeNull();
  expect(hover("set:\n  axes.x.mass: 5 kg\n", 9, option, smallKeys)?.says).toContain("a mass");
});

test("wherever the cursor stands, completion answers", () => {
  const text = 'axes:\n  x: { mass: 85 kg, screw: { lead: [ 5, 6 ] } }\n  - a: \'b\n"q": }\n';
  for (let offset = 0; offset <= text.length; offset++) {
    const { from } = complete(text, offset, machine, smallKeys);
    expect(from).toBeLessThanOrEqual(offset);
    expect(from).toBeGreaterThanOrEqual(0);
    hover(text, offset, machine, smallKeys);
  }
});
