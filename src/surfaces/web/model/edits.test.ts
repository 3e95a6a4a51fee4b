// What is typed can be taken back step by step, and what was kept is no edit any more.
import fc from "fast-check";
import { expect, test } from "vitest";
import { countOf, left, noTrail, redone, restored, settled, textTyped, type Trail, typed, typedAll, undone } from "./edits.ts";

const power = "lathe/spindle.motor.plate.power";
const speed = "lathe/spindle.motor.plate.speed";

test("letters of one visit to a field are one step back, another visit is another step", () => {
  let t = typed(noTrail, power, "1", power);
  t = typed(t, power, "10", power);
  t = typed(t, power, "10 hp", power);
  t = typed(left(t), power, "12 hp", power);
  expect(undone(t).now.values.get(power)).toBe("10 hp");
  expect(undone(undone(t)).now.values.has(power)).toBe(false);
});

test("every step back can be stepped forward again, to the same edits", () => {
  const steps = fc.array(fc.tuple(fc.constantFrom(power, speed), fc.string({ maxLength: 4 })), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(steps, (list) => {
      const end = list.reduce<Trail>((t, [address, value]) => typed(t, address, value), noTrail);
      let t = end;
      for (let i = 0; i < list.length; i += 1) t = undone(t);
      expect(countOf(t.now)).toBe(0);
      expect(undone(t)).toBe(t);
      for (let i = 0; i < list.length; i += 1) t = redone(t);
      expect(t.now).toEqual(end.now);
      expect(redone(t)).toBe(t);
    }),
  );
});

test("a new edit after a step back forgets what lay ahead", () => {
  const t = typed(undone(typed(noTrail, power, "10 hp")), speed, "1750 rpm");
  expect(redone(t)).toBe(t);
});

test("a remedy with several values is one step, and a restored value is one step too", () => {
  const t = typedAll(
    noTrail,
    new Map([
      [power, "10 hp"],
      [speed, "1750 rpm"],
    ]),
  );
  expect(countOf(t.now)).toBe(2);
  expect(countOf(undone(t).now)).toBe(0);
  expect(countOf(restored(t, power).now)).toBe(1);
  expect(restored(noTrail, power)).toBe(noTrail);
});

test("a text typed in the file view takes over the values that it holds already", () => {
  const t = textTyped(typed(noTrail, power, "10 hp"), "lathe/machine.yaml", "power: 10 hp\n", [power]);
  expect([...t.now.values.keys()]).toEqual([]);
  expect(t.now.texts.get("lathe/machine.yaml")).toBe("power: 10 hp\n");
  expect(countOf(textTyped(t, "lathe/machine.yaml", null).now)).toBe(0);
});

test("what was kept is no edit any more, and no step leads back before the keeping", () => {
  const t = settled(typed(typed(noTrail, power, "10 hp"), speed, "1750 rpm"), [power], []);
  expect([...t.now.values.keys()]).toEqual([speed]);
  expect(undone(t)).toBe(t);
});
