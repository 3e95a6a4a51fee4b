// What is looked for by its words is found, the nearest first.
import { expect, test } from "vitest";
import { found, type Hit } from "./search.ts";

const hit = (says: string, more = ""): Hit => ({
  is: "figure",
  says,
  of: "",
  now: "",
  words: `${says} ${more}`.toLowerCase(),
  opens: { working: says },
});
const hits = [
  hit("rated torque of the motor", "lathe/spindle.motor.rated-torque t_n"),
  hit("torque this cut asks of the motor", "lathe/spindle.cut.motor-torque"),
  hit("voltage between lines", "shop/supply.voltage"),
  { ...hit("Margins, lathe"), is: "place" as const },
];

test("all words count, in any order, also those of the address", () => {
  expect(found(hits, "torque motor").map((h) => h.says)).toEqual(["torque this cut asks of the motor", "rated torque of the motor"]);
  expect(found(hits, "MOTOR rated").map((h) => h.says)).toEqual(["rated torque of the motor"]);
  expect(found(hits, "shop supply").map((h) => h.says)).toEqual(["voltage between lines"]);
});

test("what begins with the word stands before what only has it", () => {
  expect(found(hits, "torque")[0]?.says).toBe("torque this cut asks of the motor");
});

test("before a word is typed the places are offered, and a word that nothing has finds nothing", () => {
  expect(found(hits, "  ").map((h) => h.says)).toEqual(["Margins, lathe"]);
  expect(found(hits, "gearbox")).toEqual([]);
});

test("a word that everything has brings no more than can be read", () => {
  expect(
    found(
      Array.from({ length: 500 }, (_, i) => hit(`torque ${i}`)),
      "torque",
    ),
  ).toHaveLength(60);
});
