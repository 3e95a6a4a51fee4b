import { expect, test } from "vitest";
import { check } from "./check.ts";
import { contract } from "./contract.ts";
import { figure, first, input, perhaps, via } from "./figure.ts";
import { kindOfRef, quantityOf } from "./house.ts";
import { machine, shop } from "./item.ts";
import { offer, slot } from "./slot.ts";
import { grip, houseOf, lift, motor, ropeOfLift, strength, toyRoom } from "./toy-house.test-help.ts";

const measure = "look at it";
const power = input({ key: "power", per: machine, says: "power", unit: "W", measure });
const force = input({ key: "force", per: machine, says: "force", unit: "N", measure });
const double = (id: string) =>
  figure({ id, per: machine, symbol: "P", unit: "W", says: "", formula: "2 * P", source: "", needs: { P: power }, of: (x) => 2 * x.P });

test("an id stands for one thing", () => {
  expect(() => houseOf(toyRoom({ one: double("toy.twice"), two: double("toy.twice") }))).toThrow("id twice: toy.twice");
});

test("a key of the shop may be a key of a machine too, but not twice of one", () => {
  const key = (per: typeof machine) => input({ key: "voltage", per, says: "voltage", unit: "V", measure });
  expect(houseOf(toyRoom({ a: key(shop), b: key(machine) })).rooms[0]?.inputs.length).toBe(2);
  expect(() => houseOf(toyRoom({ a: key(machine), b: key(machine) }))).toThrow("id twice: voltage");
});

test("an id starts with its room", () => {
  expect(() => houseOf(toyRoom({ one: double("other.twice") }))).toThrow("other.twice does not start with its room, toy");
});

test("a check holds like against like, and asks for no reserve below 1", () => {
  const bad = (more: object) =>
    check({ id: "toy.check", per: machine, asks: "?", demand: power, capacity: power, H: 1, remedies: [], ...more });
  expect(() => houseOf(toyRoom({ c: bad({ capacity: force }) }))).toThrow("toy.check holds a power against a force");
  expect(() => houseOf(toyRoom({ c: bad({ H: 0.9 }) }))).toThrow("toy.check asks for a reserve below 1: 0.9");
  expect(() => houseOf(toyRoom({ c: bad({ H: NaN }) }))).toThrow("toy.check asks for a reserve below 1: NaN");
});

test("a slot takes its own kind only", () => {
  const sum = slot({ id: "toy.sum", per: machine, says: "sum", combine: "sum", empty: "zero", unit: "W" });
  expect(() => houseOf(toyRoom({ sum, give: offer(sum, force) }))).toThrow("toy.sum takes a power and is offered a force by force");
});

test("a contract has just one guard", () => {
  const quiet = contract({ id: "toy.quiet", per: machine, says: "quiet" });
  const guard = (id: string) =>
    check({ id, per: machine, asks: "?", demand: power, capacity: power, H: 1, guarantees: quiet, remedies: [] });
  expect(() => houseOf(toyRoom({ quiet }))).toThrow("contract toy.quiet wants one guard and has 0");
  expect(() => houseOf(toyRoom({ quiet, a: guard("toy.a"), b: guard("toy.b") }))).toThrow("contract toy.quiet wants one guard and has 2");
  expect(houseOf(toyRoom({ quiet, a: guard("toy.a") })).rooms[0]?.contracts).toEqual([quiet]);
});

test("the kind of a need is that of what stands at its end", () => {
  expect(kindOfRef(via(ropeOfLift, strength))).toBe("force");
  expect(kindOfRef(first(perhaps(grip), grip))).toBe("torque");
});

test("a quantity is named without room and kind of thing", () => {
  expect(quantityOf("late.lift.pull", "late", lift)).toBe("pull");
  expect(quantityOf("late.motor.draw", "late", motor)).toBe("draw");
  expect(quantityOf("late.weight", "late", machine)).toBe("weight");
});

test("a room brings everything that is a declaration, once, lists and joints taken apart", () => {
  const room = toyRoom({ list: [power, force], again: power, odd: 3, none: null, text: "figure" });
  expect(room.inputs).toEqual([power, force]);
});
