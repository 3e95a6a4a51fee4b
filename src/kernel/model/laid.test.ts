// Options laid together: what they build on, what they cost, what they would change in which file.
import { expect, test } from "vitest";
import { billOf, changesOf, isUnread, triesOf, withNeeds } from "./laid.ts";
import type { OptionFile } from "./node.ts";
import { parseShop, resolve } from "./resolve.ts";
import { folder, machineFile, smallKeys } from "./small-house.test-help.ts";
import { asFound } from "./node.ts";

const option = (name: string, more: Partial<OptionFile> = {}): OptionFile => ({
  machine: "lathe",
  name,
  title: name,
  cost: null,
  hours: null,
  needs: [],
  file: `lathe/options/${name}.yaml`,
  ...more,
});
const laid = (...names: string[]): { machine: string; name: string }[] => names.map((name) => ({ machine: "lathe", name }));

test("what an option builds on is laid before it, once, and a ring comes to an end", () => {
  const files = [option("belt", { needs: ["motor"] }), option("motor", { needs: ["drive"] }), option("drive", { needs: ["belt"] })];
  expect(withNeeds(files, laid("belt")).map((o) => o.name)).toEqual(["drive", "motor", "belt"]);
  expect(withNeeds(files.slice(0, 1), laid("belt", "belt")).map((o) => o.name)).toEqual(["motor", "belt"]);
});

test("costs and hours add up, and an option that says no cost is named", () => {
  const bill = billOf([option("a", { cost: "120 USD", hours: "2 h" }), option("b", { cost: "35 USD" }), option("c")]);
  expect(bill).toEqual({ cost: 155, hours: 7200, silent: ["c"] });
  expect(billOf([option("c")])).toEqual({ cost: null, hours: null, silent: ["c"] });
});

test("a remedy's paths are below its thing, or the shop's", () => {
  expect(triesOf("lathe/spindle.motor", { connected: "parallel", "shop/environment.altitude": "0 m" })).toEqual([
    { root: "lathe", path: "spindle.motor.connected", text: "parallel" },
    { root: "lathe", path: "shop/environment.altitude", text: "0 m" },
  ]);
  expect(triesOf("lathe", { "supply.run.ampacity": "50 A" })[0]?.path).toBe("supply.run.ampacity");
});

const shop = parseShop(
  folder({
    "lathe/machine.yaml": `${machineFile}axes:\n  x: { mass: 80 kg, screw: { lead: 5 mm }, remark: old }\n`,
    "lathe/work/nut.yaml": "part: Nut\nbatch: 20\n",
    "lathe/options/screw.yaml":
      "option: screw\nset:\n  axes.x.screw: { lead: 10 mm, starts: 2 }\n  work/nut.batch: 40\n  shop/environment.altitude: 300 m\nremove: [ axes.x.remark ]\n",
    "lathe/options/later.yaml": "option: later\nset: { year: 1984 }\n",
  }),
  smallKeys,
);
const found = resolve(shop, smallKeys, asFound);

test("an option is told value by value, each with its file, what stands there and what would", () => {
  expect(found.findings).toEqual([]);
  expect(changesOf(shop, found, laid("screw"))).toEqual([
    { option: "screw", file: "lathe/machine.yaml", path: "axes.x.remark", from: "old", to: null },
    { option: "screw", file: "lathe/machine.yaml", path: "axes.x.screw.lead", from: "5 mm", to: "10 mm" },
    { option: "screw", file: "lathe/machine.yaml", path: "axes.x.screw.starts", from: null, to: "2" },
    { option: "screw", file: "lathe/work/nut.yaml", path: "work/nut.batch", from: "20", to: "40" },
    { option: "screw", file: "shop.yaml", path: "shop/environment.altitude", from: null, to: "300 m" },
  ]);
});

test("an option is unread where no room reads a word of what it changes", () => {
  const named = (name: string): OptionFile => found.options.find((o) => o.name === name) ?? option(name);
  expect(isUnread(shop, named("later"))).toBe(true);
  expect(isUnread(shop, named("screw"))).toBe(false);
});
