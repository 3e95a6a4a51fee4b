import { expect, test } from "vitest";
import { nodeAt } from "./node.ts";
import { parseShop, resolve } from "./resolve.ts";
import { folder, leafAt, load, machineFile, smallKeys, told } from "./small-house.test-help.ts";

const lathe = "lathe/machine.yaml";
const axisX = (line: string): string => `${machineFile}axes:\n  x:\n${line}`;
const catalogue =
  "motors:\n  small: { torque: 2 N*m, inertia: 2.6 kg*cm2 }\n  large: { torque: 5 N*m, inertia: 6 kg*cm2 }\nscrews:\n  old: { lead: 5.08 mm, starts: 1 }\n";
const option = (name: string, set: string, more = ""): string => `option: ${name}\n${more}set:\n${set}`;
const record = (name: string, date: string, sets: string, more = ""): string =>
  `record: ${name}\nstep: spindle.test\ndate: ${date}\naccepted: yes\n${more}sets:\n${sets}`;

test("an option removes, replaces, then sets; a map is merged key by key, a value replaced", () => {
  const model = load(
    {
      [lathe]: axisX("    motor: { torque: 2 N*m, inertia: 1 kg*cm2 }\n    screw: { lead: 5 mm, root: 20 mm }\n    mass: 85 kg\n"),
      "lathe/options/o.yaml":
        "option: o\nset:\n  axes.x.screw: { lead: 10 mm }\n  axes.x.motor.leads: 9\nreplace:\n  axes.x.motor: { torque: 5 N*m }\nremove: [ axes.x.mass ]\n",
    },
    ["o"],
  );
  expect(told(model.findings)).toEqual([]);
  const text = (...path: string[]): string | undefined => leafAt(model, "lathe", "axes", "x", ...path)?.text;
  expect([
    text("screw", "lead"),
    text("screw", "root"),
    text("motor", "torque"),
    text("motor", "inertia"),
    text("motor", "leads"),
    text("mass"),
  ]).toEqual(["10 mm", "20 mm", "5 N*m", undefined, "9", undefined]);
});

test("options reach the shop, another machine, parts and operations by name", () => {
  const model = load(
    {
      "shop.yaml": "waywright: 1\nshop: S\nair: { compressors: { main: { delivery: 95 L/min ANR } } }\n",
      "mill/machine.yaml": `${machineFile}axes: { x: { mass: 300 kg } }\n`,
      "lathe/work/shaft.yaml":
        "part: shaft\noperations:\n  - { operation: face, speed: 600 rpm }\n  - { operation: thread, speed: 600 rpm }\n",
      "lathe/sequences/home.yaml": "sequence: home\nsteps:\n  - { step: clear, until: a }\n  - { step: seat, until: b }\n",
      "lathe/options/o.yaml": option(
        "o",
        "  shop/air.compressors.helper: { delivery: 50 L/min ANR }\n  mill/axes.x.mass: 310 kg\n  work/shaft.operations.thread.speed: 750 rpm\n  sequences/home.steps.seat.until: c\n",
      ),
    },
    ["o"],
  );
  expect(told(model.findings)).toEqual([]);
  expect(leafAt(model, "shop", "air", "compressors", "helper", "delivery")?.text).toBe("50 L/min ANR");
  expect(leafAt(model, "shop", "air", "compressors", "main", "delivery")?.text).toBe("95 L/min ANR");
  expect(leafAt(model, "mill", "axes", "x", "mass")?.text).toBe("310 kg");
  expect(leafAt(model, "lathe", "work", "shaft", "operations", "thread", "speed")?.text).toBe("750 rpm");
  expect(leafAt(model, "lathe", "work", "shaft", "operations", "face", "speed")?.text).toBe("600 rpm");
  expect(leafAt(model, "lathe", "sequences", "home", "steps", "seat", "until")?.text).toBe("c");
});

test("a word that meant absent gives way to a map and is kept as what lost", () => {
  const model = load(
    { [lathe]: `${machineFile}axes: { x: { motor: none } }\n`, "lathe/options/o.yaml": option("o", "  axes.x.motor: { torque: 5 N*m }\n") },
    ["o"],
  );
  expect(leafAt(model, "lathe", "axes", "x", "motor", "torque")).toMatchObject({
    text: "5 N*m",
    over: [{ text: "none", origin: { by: "line" } }],
  });
});

test("two options that set one value are reported, the later wins; equal values are no quarrel", () => {
  const files = {
    [lathe]: axisX("    mass: 85 kg\n"),
    "lathe/options/a.yaml": option("a", "  axes.x.mass: 60 kg\n"),
    "lathe/options/b.yaml": option("b", "  axes.x: { mass: 50 kg }\n"),
    "lathe/options/c.yaml": option("c", "  axes.x.mass: 60 kg\n"),
  };
  const both = load(files, ["a", "b"]);
  expect(told(both.findings)).toEqual(["lathe/options/b.yaml:3:3 options-collide"]);
  expect(leafAt(both, "lathe", "axes", "x", "mass")?.text).toBe("50 kg");
  expect(told(load(files, ["a", "c"]).findings)).toEqual([]);
  expect(told(load(files, ["b"]).findings)).toEqual([]);
});

test("an option that builds on another says so when it is not laid on, or is not there", () => {
  const files = {
    [lathe]: axisX("    mass: 85 kg\n"),
    "lathe/options/a.yaml": option("a", "  axes.x.mass: 60 kg\n"),
    "lathe/options/b.yaml": option("b", "  axes.x.rapid: 6 m/min\n", "needs: [ a ]\n"),
  };
  expect(told(load(files, ["b"]).findings)).toEqual(["lathe/options/b.yaml:2:10 option-needs"]);
  expect(told(load(files, ["a", "b"]).findings)).toEqual([]);
  expect(told(load({ ...files, "lathe/options/b.yaml": files["lathe/options/b.yaml"].replace("a ]", "aa ]") }).findings)).toEqual([
    "lathe/options/b.yaml:2:10 option-unknown",
  ]);
  expect(load(files, ["bb"]).findings).toMatchObject([{ code: "option-unknown", nearest: "b" }]);
});

test("paths that lead nowhere are found in options and records nobody laid on, with what was meant", () => {
  const model = load({
    [lathe]: axisX("    mass: 85 kg\n"),
    "lathe/work/shaft.yaml": "part: shaft\noperations:\n  - { operation: thread, speed: 600 rpm }\n",
    "lathe/options/o.yaml": option(
      "o",
      "  axes.x.screw.leed: 5 mm\n  axes.y.mass: 5 kg\n  axes.w: { mass: 5 kg }\n  work/shaft.operations.tread.speed: 5 rpm\n  shop/enviroment.altitude: 5 m\n  spindel.bore: 5 mm\n",
      "remove: [ axes.y ]\n",
    ),
    "lathe/records/r.yaml": record("r", "2026-03-01", "  axes.x.mas: 5 kg\n", "holds-while: [ axes.q ]\n"),
  });
  expect(model.findings.map((f) => [`${f.place.file.slice(6)}:${f.place.line}`, f.code, f.nearest])).toEqual([
    ["options/o.yaml:2", "unknown-path", undefined],
    ["options/o.yaml:4", "unknown-path", "axes.x.screw.lead"],
    ["options/o.yaml:5", "unknown-path", undefined],
    ["options/o.yaml:7", "unknown-path", "work/shaft.operations.thread.speed"],
    ["options/o.yaml:8", "unknown-path", "shop/environment.altitude"],
    ["options/o.yaml:9", "unknown-path", "spindle.bore"],
    ["records/r.yaml:5", "unknown-path", undefined],
    ["records/r.yaml:7", "unknown-path", "axes.x.mas".replace("mas", "mass")],
  ]);
});

test("values in options and records are held against the keys at their paths", () => {
  const model = load({
    [lathe]: axisX("    mass: 85 kg\n"),
    "lathe/options/o.yaml": option("o", "  axes.x.mass: 5 mm\n  axes.x.screw: { leed: 5 mm }\n  axes.x: 3\n"),
    "lathe/records/r.yaml": record("r", "2026-02-30", "  axes.x.mass: 5\n"),
  });
  expect(told(model.findings)).toEqual([
    "lathe/options/o.yaml:3:16 unit-mismatch",
    "lathe/options/o.yaml:4:19 unknown-key",
    "lathe/options/o.yaml:5:11 not-a-map",
    "lathe/records/r.yaml:3:7 date-bad",
    "lathe/records/r.yaml:6:16 unit-missing",
  ]);
});

test("a thing that one option makes may be changed by another", () => {
  const files = {
    "lathe/options/a.yaml": option("a", "  axes.y: { mass: 60 kg }\n"),
    "lathe/options/b.yaml": option("b", "  axes.y.mass: 50 kg\n", "needs: [ a ]\n"),
  };
  expect(told(load(files).findings)).toEqual([]);
  expect(leafAt(load(files, ["a", "b"]), "lathe", "axes", "y", "mass")?.text).toBe("50 kg");
});

test("a new leak may be set, a misspelt one not", () => {
  const files = (name: string): Record<string, string> => ({
    [lathe]: `${machineFile}air: { leaks: { closer: unknown } }\n`,
    "lathe/options/a.yaml": option("a", `  air.leaks.${name}: 0.01 dm3/(s*bar)\n`),
  });
  expect(told(load(files("closer")).findings)).toEqual([]);
  expect(told(load(files("turret")).findings)).toEqual([]);
  expect(load(files("closr")).findings).toMatchObject([{ code: "unknown-path", nearest: "air.leaks.closer" }]);
});

test("like may chain; the nearer part wins, and the ring of parts is no part", () => {
  const chain =
    "motors:\n  a: { like: b, torque: 1 N*m }\n  b: { like: c, torque: 2 N*m, inertia: 2 kg*cm2 }\n  c: { torque: 3 N*m, inertia: 3 kg*cm2, leads: 3 }\n";
  const model = load({ [lathe]: axisX("    motor: { like: a }\n"), "catalogue/m.yaml": chain });
  expect(told(model.findings)).toEqual([]);
  const at = (key: string): unknown => {
    const leaf = leafAt(model, "lathe", "axes", "x", "motor", key);
    return [leaf?.text, leaf?.origin.by === "catalogue" ? leaf.origin.entry : null, ...(leaf?.over.map((o) => o.text) ?? [])];
  };
  expect([at("torque"), at("inertia"), at("leads")]).toEqual([
    ["1 N*m", "a", "2 N*m", "3 N*m"],
    ["2 kg*cm2", "b", "3 kg*cm2"],
    ["3", "c"],
  ]);
  const ring = load({ [lathe]: axisX("    motor: { like: a }\n"), "catalogue/m.yaml": chain.replace("torque: 3", "like: a, torque: 3") });
  expect(told(ring.findings)).toEqual(["catalogue/m.yaml:4:14 like-ring"]);
});

test("a part inside a part: the nearer like wins, and none takes it away", () => {
  const parts =
    "motors:\n  m: { torque: 2 N*m, brake: { like: b, torque: 9 N*m } }\nbrakes:\n  b: { torque: 1 N*m, delay: 20 ms }\n  c: { torque: 3 N*m }\n";
  const brake = (line: string, key: string): string | undefined =>
    leafAt(
      load({ [lathe]: axisX(`    motor: { like: m${line} }\n`), "catalogue/m.yaml": parts }),
      "lathe",
      "axes",
      "x",
      "motor",
      "brake",
      key,
    )?.text;
  expect([brake("", "torque"), brake("", "delay")]).toEqual(["9 N*m", "20 ms"]);
  expect([brake(", brake: { like: c }", "torque"), brake(", brake: { like: c }", "delay")]).toEqual(["3 N*m", "20 ms"]);
  expect(brake(", brake: none", "torque")).toBeUndefined();
});

test("a part that is not there is told with the nearest and where that stands", () => {
  const [finding] = load({ [lathe]: axisX("    motor: { like: smal }\n"), "catalogue/parts.yaml": catalogue }).findings;
  expect(finding).toMatchObject({ code: "not-in-catalogue", nearest: "small", place: { line: 5, column: 20 } });
  expect(finding?.says).toContain("catalogue/parts.yaml:2");
});

test("the catalogue may be spread over files, but a part has one home", () => {
  const model = load({
    "catalogue/a.yaml": "motors:\n  m: { torque: 2 N*m }\n",
    "catalogue/b.yaml": "motors:\n  n: { torque: 3 N*m }\n  m: { torque: 4 N*m }\n",
  });
  expect(told(model.findings)).toEqual(["catalogue/b.yaml:3:3 twice"]);
  expect([
    leafAt(model, "shop", "catalogue", "motors", "m", "torque")?.text,
    leafAt(model, "shop", "catalogue", "motors", "n", "torque")?.text,
  ]).toEqual(["2 N*m", "3 N*m"]);
});

test("a value tried out wins over everything and is checked like any other", () => {
  const files = {
    [lathe]: axisX("    mass: 85 kg\n    motor: { like: small }\n"),
    "catalogue/parts.yaml": catalogue,
    "lathe/options/a.yaml": option("a", "  axes.x.mass: 60 kg\n"),
  };
  const tries = (path: string, text: string) => [{ root: "lathe", path, text }];
  const mass = leafAt(load(files, ["a"], tries("axes.x.mass", "70 kg")), "lathe", "axes", "x", "mass");
  expect(mass).toMatchObject({ text: "70 kg", origin: { by: "option", name: "tried" } });
  expect(mass?.over.map((o) => o.text)).toEqual(["60 kg", "85 kg"]);
  expect(leafAt(load(files, [], tries("axes.x.motor.like", "large")), "lathe", "axes", "x", "motor", "torque")?.text).toBe("5 N*m");
  expect(load(files, [], tries("shop/environment.altitude", "240 m")).findings).toEqual([]);
  expect(load(files, [], tries("axes.x.mas", "70 kg")).findings).toMatchObject([{ code: "unknown-path", nearest: "axes.x.mass" }]);
  expect(load(files, [], tries("axes.x.mass", "70 mm")).findings.map((f) => f.code)).toEqual(["unit-mismatch"]);
});

test("a value of a thing that an option makes can be tried where that option is laid on", () => {
  const files = { "lathe/options/a.yaml": option("a", "  axes.y: { mass: 60 kg }\n") };
  const tries = [{ root: "lathe", path: "axes.y.mass", text: "55 kg" }];
  expect(leafAt(load(files, ["a"], tries), "lathe", "axes", "y", "mass")?.text).toBe("55 kg");
  expect(load(files, ["a"], tries).findings).toEqual([]);
  expect(load(files, [], tries).findings.map((f) => f.code)).toEqual(["unknown-path"]);
});

test("what nobody may assume is a note at the thing that lacks it, and unknown is an answer", () => {
  const bare = {
    "shop.yaml": "waywright: 1\n",
    [lathe]: "machine: Lathe\nspindle: { bore: 34 mm }\ndevices:\n  a: { valve: { delay: 3 ms } }\n  b: {}\n",
  };
  expect(told(load(bare).findings)).toEqual([
    "lathe/machine.yaml:1:1 required",
    "lathe/machine.yaml:2:1 required",
    "lathe/machine.yaml:4:8 required",
  ]);
  const asked =
    "machine: Lathe\nsupply: { run: unknown }\nspindle: { bore: 34 mm, drive: { rated-current: unknown } }\ndevices: { a: { valve: unknown } }\n";
  expect(told(load({ [lathe]: asked }).findings)).toEqual([]);
});

test("a folder is a machine when it holds a machine.yaml, and files elsewhere are not read", () => {
  const model = load({
    "old/work/a.yaml": "nonsense: [",
    "mill/machine.yaml": machineFile,
    "lathe/notes.yaml": "{",
    ".waywright/x.yaml": "{",
    "lathe/records/a.csv": "{",
  });
  expect([...model.roots.keys()]).toEqual(["shop", "lathe", "mill"]);
  expect(told(model.findings)).toEqual([]);
});

test("a machine has a name of its own, and a shop its file", () => {
  expect(told(load({ "Mill/machine.yaml": machineFile, "shop/machine.yaml": machineFile }).findings)).toEqual([
    "Mill/machine.yaml:1:1 bad-name",
    "shop/machine.yaml:1:1 bad-name",
  ]);
  const files = folder({});
  files.delete("shop.yaml");
  const model = resolve(parseShop(files, smallKeys), smallKeys, { options: [], tries: [] });
  expect(told(model.findings)).toEqual(["shop.yaml:1:1 file-missing"]);
});

test("title and display come from the shop file", () => {
  expect(
    load({ "shop.yaml": "waywright: 1\nshop: Small\nshow: { units: inch, also: metric, pressure: psi, currency: EUR }\n" }),
  ).toMatchObject({
    title: "Small",
    show: { units: "inch", also: "metric", pressure: "psi", currency: "EUR" },
  });
  expect(load({ "shop.yaml": "waywright: 1\n" }).show).toEqual({ units: "metric", also: null, pressure: "bar", currency: "USD" });
});

test("an edit reads one file again and keeps all others as they were", () => {
  const files = folder({ [lathe]: axisX("    mass: 85 kg\n"), "catalogue/parts.yaml": catalogue });
  const before = parseShop(files, smallKeys);
  files.set(lathe, { text: axisX("    mass: 86 kg\n") });
  const after = parseShop(files, smallKeys, before);
  expect(after.files.get("catalogue/parts.yaml")).toBe(before.files.get("catalogue/parts.yaml"));
  expect(after.files.get(lathe)).not.toBe(before.files.get(lathe));
  const model = resolve(after, smallKeys, { options: [], tries: [] });
  expect(leafAt(model, "lathe", "axes", "x", "mass")?.text).toBe("86 kg");
  files.set("mill/machine.yaml", { text: machineFile });
  expect(parseShop(files, smallKeys, after).machines).toEqual(new Set(["lathe", "mill"]));
});

test("a file that could not be read whole is not blamed for what is missing in it", () => {
  const model = load({ [lathe]: 'machine: "Lathe\nspindle: { bore: 3 mm }\n' });
  expect(told(model.findings)).toEqual(["lathe/machine.yaml:1:10 syntax"]);
  const broken = load({ [lathe]: axisX("    motor: { like: small }\n"), "catalogue/parts.yaml": `}\n${catalogue}` });
  expect(told(broken.findings)).toEqual(["catalogue/parts.yaml:1:1 syntax"]);
});

test("files named like the innards of objects are names like any other", () => {
  const model = load({
    "constructor/machine.yaml": machineFile,
    "lathe/work/constructor.yaml": "part: c\n",
    "lathe/options/tostring.yaml": "option: tostring\nset:\n  __proto__.polluted: 1\n",
  });
  expect(model.roots.get("constructor")?.is).toBe("map");
  expect(nodeAt(model.roots.get("lathe"), ["work", "constructor"])?.is).toBe("map");
  expect(told(model.findings)).toEqual(["lathe/options/tostring.yaml:3:3 unknown-path"]);
  expect(({} as Record<string, unknown>)["polluted"]).toBeUndefined();
});
