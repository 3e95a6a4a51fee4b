// Things are called as a machinist would call them.
import { expect, test } from "vitest";
import { thingName, thingOf } from "./things.ts";

test.each([
  ["lathe", ""],
  ["lathe/axes.x.drive", "x drive"],
  ["lathe/spindle.belts.only", "spindle belt only"],
  ["lathe/work/drag-knob.operations.rough", "drag-knob rough"],
  ["lathe/fluids.coolant.pump.motor", "coolant pump motor"],
  ["shop/air.compressors.main.motor", "compressor main motor"],
])("the thing at %s is called %j", (item, name) => {
  expect(thingName(item)).toBe(name);
});

test("over several machines each thing is called with its machine, and the shop's own need none", () => {
  expect(thingOf("mill/axes.z.drive")).toBe("Mill, z drive");
  expect(thingOf("shop/air.compressors.main.motor")).toBe("compressor main motor");
  expect(thingOf("shop")).toBe("the shop");
});
