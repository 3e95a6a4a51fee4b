import { expect, test } from "vitest";
import { type Named, oneNamed } from "./addresses.ts";
import { Misuse } from "./misuse.ts";

const names: readonly Named[] = [
  { address: "lathe/spindle.torque", id: "spindle.torque", root: "lathe" },
  { address: "mill/spindle.torque", id: "spindle.torque", root: "mill" },
  { address: "shop/supply.rating", id: "supply.rating", root: "shop" },
  { address: "lathe/axes.x.rapid", id: "axis.rapid", root: "lathe" },
  { address: "lathe/axes.z.rapid", id: "axis.rapid", root: "lathe" },
];
function misuse(word: string, machine: string | null = null): Misuse {
  try {
    oneNamed(word, names, machine);
  } catch (error) {
    if (error instanceof Misuse) return error;
  }
  throw new Error(`${word} was understood`);
}

test("an address, an address without its root, an id and the end of an address all lead to the thing", () => {
  expect(oneNamed("mill/spindle.torque", names, "lathe").address).toBe("mill/spindle.torque");
  expect(oneNamed("axes.x.rapid", names, null).address).toBe("lathe/axes.x.rapid");
  expect(oneNamed("supply.rating", names, "mill").address).toBe("shop/supply.rating");
  expect(oneNamed("x.rapid", names, null).address).toBe("lathe/axes.x.rapid");
});

test("some words of an address in their order lead to the thing, when they end as it does", () => {
  expect(oneNamed("lathe torque", names, null).address).toBe("lathe/spindle.torque");
  expect(oneNamed("axes z rapid", names, null).address).toBe("lathe/axes.z.rapid");
  expect(misuse("z axes rapid").code).toBe("name-unknown");
  expect(misuse("lathe spindle").code).toBe("name-unknown");
  expect(misuse("lathe rapid").among).toEqual(["lathe/axes.x.rapid", "lathe/axes.z.rapid"]);
});

test("an id of several things asks which, and a machine may answer", () => {
  expect(misuse("spindle.torque")).toMatchObject({ code: "name-ambiguous", among: ["lathe/spindle.torque", "mill/spindle.torque"] });
  expect(oneNamed("spindle.torque", names, "mill").address).toBe("mill/spindle.torque");
  expect(misuse("axis.rapid", "lathe").among).toEqual(["lathe/axes.x.rapid", "lathe/axes.z.rapid"]);
});

test("a slip of the finger gets the nearest word, part of a name those that hold it", () => {
  expect(misuse("spindle.torqe")).toMatchObject({ code: "name-unknown", among: ["spindle.torque"] });
  expect(misuse("any.rapid-limits.rapid")).toMatchObject({ code: "name-unknown", among: ["axis.rapid"] });
});
