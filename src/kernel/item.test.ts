import fc from "fast-check";
import { expect, test } from "vitest";
import { type Item, itemAddress, machine, mountKeys, pathKeys, pathText, quantityAddress, shop } from "./item.ts";
import { brake, drum } from "./toy-house.test-help.ts";

const top: Item = { scope: machine, root: "winch", path: [], parent: null, named: true };
const ofDrum: Item = { scope: drum, root: "winch", path: ["drum"], parent: top, named: false };
const rooms = new Set(["drum", "late"]);

test("a path is written as the files lie: a slash after a folder, dots between keys", () => {
  expect(pathText(["work", "crate", "lifts", "up"])).toBe("work/crate.lifts.up");
  expect(pathText(["drum", "brake"])).toBe("drum.brake");
  expect(pathText([])).toBe("");
  expect(pathKeys("work/crate.lifts.up")).toEqual(["work", "crate", "lifts", "up"]);
});

test("every path is read back as it was written", () => {
  const key = fc.stringMatching(/^[a-z0-9](?:[a-z0-9-]{0,8}[a-z0-9])?$/);
  const folder = fc.constantFrom("work", "sequences", "catalogue", "options", "records");
  const path = fc.oneof(
    fc.array(key, { maxLength: 5 }),
    fc.tuple(folder, fc.array(key, { minLength: 1, maxLength: 4 })).map(([f, rest]) => [f, ...rest]),
  );
  fc.assert(
    fc.property(path, (keys) => {
      expect(pathKeys(pathText(keys))).toEqual(keys);
    }),
  );
});

test("the room stands before a path that does not start with one, and is not said twice", () => {
  expect(itemAddress(ofDrum)).toBe("winch/drum");
  expect(quantityAddress(ofDrum, "late", "torque", rooms)).toBe("winch/drum.torque");
  expect(quantityAddress(ofDrum, "late", "torque", new Set(["late"]))).toBe("winch/late.drum.torque");
  expect(quantityAddress(top, "late", "weight", rooms)).toBe("winch/late.weight");
  expect(quantityAddress({ ...top, scope: shop, root: "shop" }, "late", "weight", rooms)).toBe("shop/late.weight");
});

test("a mount says which root it hangs on", () => {
  expect(mountKeys("shop/catalogue/ropes.*")).toEqual({ root: "shop", keys: ["catalogue", "ropes", "*"] });
  expect(mountKeys("work/*.lifts.*")).toEqual({ root: "machine", keys: ["work", "*", "lifts", "*"] });
  expect(brake.mounts).toEqual([{ at: "drum.brake", implied: true }]);
});
