// The worker's bench over a small shop: edits laid over or written in, fields with what stands in for them, texts as they would be kept.
import { expect, test } from "vitest";
import { Bench } from "./bench.ts";
import { fields } from "./fields.ts";
import { kept, valuesIn } from "./kept.ts";
import type { ValueEdit } from "./view.ts";

const shopText = `waywright: 1
shop: Small Works
supply:
  kind: split-phase
  voltage: 240 V      # read at the panel
  rating: { value: 60 A, from: plate }
  existing: unknown
  line-voltages: none
`;
const latheText = `machine: A lathe
kind: bar-lathe
supply:
  run: { length: 18 m, size: 10 mm2 }
spindle:
  motor:
    kind: induction
    leads: 9
    links: [ 4-7, 5-8, 6-9 ]   # as seen
`;

function bench(values: readonly ValueEdit[] = []): Bench {
  const b = new Bench();
  b.lay([
    ["shop.yaml", shopText],
    ["lathe/machine.yaml", latheText],
  ]);
  b.look({ pass: 1, values, options: [], tries: [], units: null });
  return b;
}

const stateOf = (b: Bench, address: string, room = "supply"): string | undefined =>
  fields(b, { machine: "lathe", room })
    .flatMap((g) => g.fields)
    .find((f) => f.address === address)?.state;

test("a value typed is laid over what the file says, and the file stays as it was", () => {
  const b = bench([{ address: "lathe/supply.run.length", value: "40 m" }]);
  const resistance = b.evaluation("nominal").graph.cells.get("lathe/supply.run.length");
  expect(resistance?.is === "input" && resistance.leaf?.text).toBe("40 m");
  expect(b.shop.files.get("lathe/machine.yaml")?.parsed.text).toBe(latheText);
});

test("what would be kept is the text with exactly that value changed, comments and all", () => {
  const b = bench([
    { address: "shop/supply.voltage", value: "230 V" },
    { address: "shop/supply.rating", value: "100 A" },
    { address: "lathe/spindle.motor.links", value: ["4-5-6"] },
  ]);
  expect(kept(b)).toEqual({
    files: [
      { path: "shop.yaml", text: shopText.replace("240 V ", "230 V ").replace("60 A", "100 A") },
      { path: "lathe/machine.yaml", text: latheText.replace("[ 4-7, 5-8, 6-9 ]", "[ 4-5-6 ]") },
    ],
    refused: [],
  });
});

test("a list typed takes effect before it is kept", () => {
  const b = bench([{ address: "lathe/spindle.motor.links", value: ["4-5-6"] }]);
  const links = b.evaluation("nominal").graph.cells.get("lathe/spindle.motor.links");
  expect(links?.is === "input" && links.leaf?.text).toBe("4-5-6");
});

test("a value that no file can take is refused with its reason, and the others are written", () => {
  const b = bench([
    { address: "lathe/spindle.motor.leads.of.nothing", value: "3" },
    { address: "shop/supply.voltage", value: "230 V" },
  ]);
  const { files, refused } = kept(b);
  expect(files.map((f) => f.path)).toEqual(["shop.yaml"]);
  expect(refused).toEqual([{ address: "lathe/spindle.motor.leads.of.nothing", says: expect.stringContaining("leads") }]);
});

test("each value is known by the file in which it would be written", () => {
  const values = ["shop/supply.voltage", "lathe/supply.run.length"];
  expect(valuesIn(bench(), { path: "lathe/machine.yaml", values }).addresses).toEqual(["lathe/supply.run.length"]);
});

test("a field says whether it is there, never assumed, not known, known to be absent, or not written", () => {
  const b = bench();
  expect(stateOf(b, "shop/supply.voltage")).toBe("there");
  expect(stateOf(b, "shop/supply.drop-limit"), "a typical band stands in").toBe("there");
  expect(stateOf(b, "shop/supply.existing"), "required and unknown").toBe("wanted");
  expect(stateOf(b, "shop/supply.line-voltages")).toBe("none");
  expect(stateOf(b, "shop/supply.load-test.idle")).toBe("absent");
  expect(stateOf(b, "lathe/supply.run.ampacity"), "required and missing").toBe("wanted");
});

test("fields come in groups by thing, the room's own first, keys in the order of the file", () => {
  const groups = fields(bench(), { machine: "lathe", room: "supply" });
  expect(groups.filter((g) => g.isOwn).map((g) => g.title)).toEqual(expect.arrayContaining(["service", "run"]));
  const run = groups.find((g) => g.title === "run");
  expect(run?.fields.slice(0, 2).map((f) => f.key)).toEqual(["supply.run.length", "supply.run.size"]);
});

test("units wished for are shown, and the shop's own stay where nothing is wished", () => {
  const b = bench();
  expect(b.evaluation("nominal").graph.model.show.units).toBe("metric");
  b.look({ pass: 2, values: [], options: [], tries: [], units: "inch" });
  expect(b.evaluation("nominal").graph.model.show).toMatchObject({ units: "inch", pressure: "psi" });
});
