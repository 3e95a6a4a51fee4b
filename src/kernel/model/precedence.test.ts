import { expect, test } from "vitest";
import { digest } from "./digest.ts";
import { nodeAt } from "./node.ts";
import { filed, parseShop } from "./resolve.ts";
import { folder, leafAt, load, machineFile, smallKeys, told } from "./small-house.test-help.ts";

const lathe = "lathe/machine.yaml";
const axisX = (line: string): string => `${machineFile}axes:\n  x:\n${line}`;
const catalogue =
  "motors:\n  small: { torque: 2 N*m, inertia: 2.6 kg*cm2 }\n  large: { torque: 5 N*m, inertia: 6 kg*cm2 }\nscrews:\n  old: { lead: 5.08 mm, starts: 1 }\n";
const option = (name: string, set: string, more = ""): string => `option: ${name}\n${more}set:\n${set}`;
const record = (name: string, date: string, sets: string, more = ""): string =>
  `record: ${name}\nstep: spindle.test\ndate: ${date}\naccepted: yes\n${more}sets:\n${sets}`;

// Six cases of precedence: base, option, record, record under an option, part exchanged, note added.

test("a line in the file wins over the catalogue, and the catalogue's value stays visible", () => {
  const model = load({ [lathe]: axisX("    motor: { like: small, torque: 2.4 N*m }\n"), "catalogue/parts.yaml": catalogue });
  expect(told(model.findings)).toEqual([]);
  const torque = leafAt(model, "lathe", "axes", "x", "motor", "torque");
  expect(torque).toMatchObject({ text: "2.4 N*m", origin: { by: "line" }, place: { file: lathe, line: 5 } });
  expect(torque?.over).toMatchObject([
    { text: "2 N*m", origin: { by: "catalogue", entry: "small" }, place: { file: "catalogue/parts.yaml", line: 2 } },
  ]);
  expect(leafAt(model, "lathe", "axes", "x", "motor", "inertia")).toMatchObject({
    text: "2.6 kg*cm2",
    origin: { by: "catalogue", entry: "small" },
  });
});

test("a record wins over the line, an option over the record, and all of them stay visible", () => {
  const files = {
    [lathe]: axisX("    mass: 85 kg\n"),
    "lathe/records/2026-02-14-scale.yaml": record("2026-02-14-scale", "2026-02-14", "  axes.x.mass: 91 kg\n"),
    "lathe/options/light.yaml": option("light", "  axes.x.mass: 60 kg\n"),
  };
  const base = leafAt(load(files), "lathe", "axes", "x", "mass");
  expect(base).toMatchObject({ text: "91 kg", origin: { by: "record", name: "2026-02-14-scale", date: "2026-02-14" } });
  const light = leafAt(load(files, ["light"]), "lathe", "axes", "x", "mass");
  expect(light).toMatchObject({
    text: "60 kg",
    origin: { by: "option", name: "light" },
    place: { file: "lathe/options/light.yaml", line: 3 },
  });
  expect(light?.over.map((o) => o.text)).toEqual(["91 kg", "85 kg"]);
});

test("of two records the newer counts, whatever the files are called", () => {
  const model = load({
    [lathe]: axisX("    mass: 85 kg\n"),
    "lathe/records/a.yaml": record("a", "2026-03-01", "  axes.x.mass: 92 kg\n"),
    "lathe/records/b.yaml": record("b", "2026-02-01", "  axes.x.mass: 91 kg\n"),
  });
  expect(leafAt(model, "lathe", "axes", "x", "mass")?.over.map((o) => o.text)).toEqual(["91 kg", "85 kg"]);
  expect(leafAt(model, "lathe", "axes", "x", "mass")?.text).toBe("92 kg");
});

test("a record taken with an option carried out counts only where it is laid on, and beats it there", () => {
  const files = {
    [lathe]: axisX("    mass: 85 kg\n"),
    "lathe/options/light.yaml": option("light", "  axes.x.mass: 60 kg\n"),
    "lathe/records/a.yaml": record("a", "2026-03-01", "  axes.x.mass: 63 kg\n", "under: [ light ]\n"),
  };
  expect(leafAt(load(files), "lathe", "axes", "x", "mass")?.text).toBe("85 kg");
  expect(load(files).records[0]?.aside).not.toBeNull();
  const laid = leafAt(load(files, ["light"]), "lathe", "axes", "x", "mass");
  expect([laid?.text, ...(laid?.over ?? []).map((o) => o.text)]).toEqual(["63 kg", "60 kg", "85 kg"]);
});

const measured = {
  [lathe]: axisX("    motor: { like: small, resistance: unknown }\n"),
  "catalogue/parts.yaml": catalogue,
  "lathe/options/exchange.yaml": option("exchange", "  axes.x.motor.like: large\n"),
  "lathe/options/stiff.yaml": option("stiff", "  axes.x.mass: 99 kg\n"),
  "lathe/records/a.yaml": record("a", "2026-03-01", "  axes.x.motor.resistance: 1.7 ohm\n", "holds-while: [ axes.x.motor ]\n"),
};

test("another motor puts the record of its winding aside and says which option did it", () => {
  expect(leafAt(load(measured, ["stiff"]), "lathe", "axes", "x", "motor", "resistance")?.text).toBe("1.7 ohm");
  const model = load(measured, ["stiff", "exchange"]);
  expect(leafAt(model, "lathe", "axes", "x", "motor", "resistance")?.text).toBe("unknown");
  expect(leafAt(model, "lathe", "axes", "x", "motor", "torque")?.text).toBe("5 N*m");
  expect(told(model.findings)).toEqual(["lathe/records/a.yaml:5:16 record-aside"]);
  expect(model.findings[0]).toMatchObject({ severity: "note" });
  expect(model.records[0]?.aside).toContain("`exchange`");
  expect(model.records[0]?.aside).toContain("`axes.x.motor`");
});

test("a digest notices a later edit of the files, and no better reading, no note, no date", () => {
  const shop = parseShop(folder(measured), smallKeys);
  const stood = digest(nodeAt(filed(shop, smallKeys).get("lathe"), ["axes", "x", "motor"]));
  const kept = {
    ...measured,
    "lathe/records/a.yaml": record("a", "2026-03-01", "  axes.x.motor.resistance: 1.7 ohm\n", `holds-while: { axes.x.motor: ${stood} }\n`),
  };
  const counts = (line: string): boolean => load({ ...kept, [lathe]: axisX(line) }).records[0]?.aside === null;
  expect(counts("    motor: { like: small, resistance: unknown }\n")).toBe(true);
  expect(counts("    motor: { like: small, resistance: { value: unknown, note: asked, date: 2026-02-01 } }\n")).toBe(true);
  expect(counts("    motor: { like: large, resistance: unknown }\n")).toBe(false);
  expect(counts("    motor: { like: small, resistance: 3 ohm }\n")).toBe(false);
  const moved = load({ ...kept, "catalogue/parts.yaml": catalogue.replace("2.6 kg", "2.7 kg") });
  expect(told(moved.findings)).toEqual(["lathe/records/a.yaml:5:16 record-aside"]);
});

test("a record that is not accepted or withdrawn does not count", () => {
  const files = {
    [lathe]: axisX("    mass: 85 kg\n"),
    "lathe/records/a.yaml": record("a", "2026-03-01", "  axes.x.mass: 92 kg\n").replace("accepted: yes", "accepted: no"),
    "lathe/records/b.yaml": record("b", "2026-03-02", "  axes.x.mass: 93 kg\n"),
    "lathe/records/c.yaml": record("c", "2026-03-03", "  axes.x.rapid: 5 m/min\n", "supersedes: b\n"),
  };
  const model = load(files);
  expect(leafAt(model, "lathe", "axes", "x", "mass")?.text).toBe("85 kg");
  expect(model.records.map((r) => [r.name, r.aside === null])).toEqual([
    ["a", false],
    ["b", false],
    ["c", true],
  ]);
});
