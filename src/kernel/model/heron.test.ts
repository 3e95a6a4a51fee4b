import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { keysOf } from "./keys.ts";
import { nodeAt } from "./node.ts";
import { parseShop, resolve } from "./resolve.ts";
import { told } from "./small-house.test-help.ts";

const example = new URL("../../../examples/heron/", import.meta.url).pathname;
const files = new Map(
  readdirSync(example, { recursive: true, encoding: "utf8" })
    .filter((f) => statSync(join(example, f)).isFile())
    .map((file) => [file, { text: readFileSync(join(example, file), "utf8") }]),
);

/** Every top key of the example, all of rooms to come: the grammar, the names and the units are what is tested here. */
const lax = keysOf([], {
  shop: ["environment", "supply", "air", "people", "instruments", "costs"],
  machine:
    "kind year place supply spindle axes control controller air bar-feed devices fluids wiring tools production upkeep bring-up sequences work".split(
      " ",
    ),
  catalogue: "motors drives valves couplers sensors screws materials oils inserts".split(" "),
});
const shop = parseShop(files, lax);

test("the example shop is read without a finding, as found and with each of its options", () => {
  const base = resolve(shop, lax, { options: [], tries: [] });
  expect(told(base.findings)).toEqual([]);
  expect([...base.roots.keys()]).toEqual(["shop", "lathe", "mill"]);
  expect(base.title).toBe("Heron Reel Works");
  expect(base.options.length).toBe([...files.keys()].filter((f) => f.includes("/options/")).length);
  for (const { machine, name } of base.options) {
    const model = resolve(shop, lax, { options: [{ machine, name }], tries: [] });
    expect(model.findings.filter((f) => f.severity === "error")).toEqual([]);
  }
});

test("tightening the closer puts the reading of its leak aside", () => {
  const model = resolve(shop, lax, { options: [{ machine: "lathe", name: "closer-seals" }], tries: [] });
  expect(told(model.findings)).toEqual(["lathe/records/2026-02-20-closer-leak.yaml:12:16 record-aside"]);
  const leak = nodeAt(model.roots.get("lathe"), ["air", "leaks", "closer-shut"]);
  expect(leak).toMatchObject({
    text: "0.004 to 0.008 dm3/(s*bar)",
    origin: { by: "option" },
    over: [{ text: "0.04 to 0.08 dm3/(s*bar)" }],
  });
});

test("the strobe reaches single steps of a sequence", () => {
  const model = resolve(shop, lax, { options: [{ machine: "lathe", name: "turret-strobe" }], tries: [] });
  const until = (step: string): unknown => nodeAt(model.roots.get("lathe"), ["sequences", "turret-index", "steps", step, "until"]);
  expect(until("turn")).toMatchObject({ origin: { by: "option", name: "turret-strobe" } });
  expect(until("lift")).toMatchObject({ origin: { by: "line" } });
});
