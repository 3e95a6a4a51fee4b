import { expect, test } from "vitest";
import { at41, leafAt, load, machineFile, smallKeys, told } from "./small-house.test-help.ts";
import { nodeAt } from "./node.ts";

const lathe = "lathe/machine.yaml";
const run = "supply: { run: { ampacity: 40 A } }\n";
const axis = `${run}axes:\n  x:\n`;

// The table of mistakes that the loader answers for, each typed at line 41.
test.each([
  ["a tab indents", lathe, `${run}spindle:\n  drive: { rated-current: 11 A }\n`, "\tbore: 34 mm\n", "lathe/machine.yaml:41:1 tab-indent"],
  ["a blank is missing behind a colon", lathe, `${run}spindle:\n`, "  bore:34 mm\n", "lathe/machine.yaml:41:3 no-blank-after-colon"],
  ["an axis stands twice", lathe, `${run}axes:\n  x: { mass: 80 kg }\n`, "  x: { mass: 90 kg }\n", "lathe/machine.yaml:41:3 twice"],
  ["a comma stands for the point", lathe, axis, "    bore: 0,4 mm\n", "lathe/machine.yaml:41:11 decimal-comma"],
  ["a speed lacks its unit", lathe, axis, "    rapid: 5\n", "lathe/machine.yaml:41:12 unit-missing"],
  [
    "a pressure is a temperature",
    "shop.yaml",
    "waywright: 1\nair:\n  compressors:\n    main:\n",
    "      switch: { cut-in: 110 degC, cut-out: 8 bar }\n",
    "shop.yaml:41:25 unit-mismatch",
  ],
  [
    "nobody says which air",
    "shop.yaml",
    "waywright: 1\nair:\n  compressors:\n    main:\n",
    "      delivery: 7 cfm\n",
    "shop.yaml:41:17 air-basis-missing",
  ],
  ["a key is misspelt", lathe, axis, "    screw: { leed: 5.08 mm }\n", "lathe/machine.yaml:41:14 unknown-key"],
  ["a word is misspelt", lathe, axis, "    ways: { kind: dove-tail }\n", "lathe/machine.yaml:41:19 unknown-word"],
  ["a part was never entered", lathe, axis, "    motor: { like: servo-2n5 }\n", "lathe/machine.yaml:41:20 not-in-catalogue"],
  ["a colon stands in a text", lathe, axis, "    remark: motor: hums\n", "lathe/machine.yaml:41:13 colon-in-text"],
  ["a number sign eats the size", lathe, axis, "    size: AWG #8\n", "lathe/machine.yaml:41:11 comment-ate-value"],
  [
    "a path in an option is misspelt",
    "lathe/options/low.yaml",
    "option: low\nset:\n",
    "  spindle.motor.conected: parallel\n",
    "lathe/options/low.yaml:41:3 unknown-path",
  ],
  ["a tolerance is written as people talk", lathe, axis, "    mass: 85kg +- 15%\n", "lathe/machine.yaml:41:11 quantity"],
  [
    "an inertia lacks its unit",
    lathe,
    `${axis}    motor:\n`,
    "    inertia: 2.6\n".replace("    ", "      "),
    "lathe/machine.yaml:41:16 unit-missing",
  ],
  ["an anchor", lathe, `${run}axes:\n  x:\n`, "    motor: { inertia: &j 0.02 kg*m2 }\n", "lathe/machine.yaml:41:23 alias"],
  [
    "a range runs backwards",
    "lathe/work/shaft.yaml",
    "part: shaft\nfeatures:\n",
    "  seat: { limits: 6.000 to 5.988 mm }\n",
    "lathe/work/shaft.yaml:41:19 range-backwards",
  ],
  ["a letter stands for a nought", lathe, axis, "    rapid: 5OO mm/min\n", "lathe/machine.yaml:41:12 letter-in-number"],
])("%s: one finding, where it was typed", (_, file, above, typed, finding) => {
  expect(at41(file, above, typed)).toEqual([finding]);
});

test("a device whose valve nobody looked at gets a note, at the valve", () => {
  const catalogue = "valves:\n  valve-52: { delay: 20 ms }\n";
  const model = load({ [lathe]: `${machineFile}devices:\n  catcher:\n    valve: { like: valve-52 }\n`, "catalogue/parts.yaml": catalogue });
  expect(told(model.findings)).toEqual(["lathe/machine.yaml:5:5 required"]);
  expect(model.findings[0]).toMatchObject({ severity: "note", expected: "spring, detent" });
});

test("a word as short form fills its head key, and counts as written", () => {
  const model = load({ [lathe]: `${machineFile}devices: { catcher: { valve: detent } }\n` });
  expect(told(model.findings)).toEqual([]);
  expect(leafAt(model, "lathe", "devices", "catcher", "valve", "kind")).toMatchObject({ text: "detent", place: { line: 3, column: 30 } });
});

test("a value in long form keeps how it is known", () => {
  const model = load({
    [lathe]: `${machineFile}spindle:\n  motor: { resistance: { value: 1.71 ohm, from: measured, date: 2026-02-14, with: meter, note: "cold" } }\n  drive: { rated-current: 11 A }\n`,
  });
  expect(told(model.findings)).toEqual([]);
  expect(leafAt(model, "lathe", "spindle", "motor", "resistance")).toMatchObject({
    text: "1.71 ohm",
    from: "measured",
    date: "2026-02-14",
    with: "meter",
    note: "cold",
    place: { line: 4, column: 33 },
    key: { line: 4, column: 12 },
  });
});

test("a list and a short form may be long, too", () => {
  const model = load({
    [lathe]: `${machineFile}spindle: { motor: { links: { value: [ 4-7, 5-8 ], from: seen } }, drive: { rated-current: 11 A } }\ndevices: { a: { valve: { value: spring, from: seen } } }\n`,
  });
  expect(told(model.findings)).toEqual([]);
  const links = nodeAt(model.roots.get("lathe"), ["spindle", "motor", "links"]);
  expect(links).toMatchObject({
    is: "list",
    items: [
      { text: "4-7", from: "seen" },
      { text: "5-8", from: "seen" },
    ],
  });
  expect(leafAt(model, "lathe", "devices", "a", "valve", "kind")).toMatchObject({ text: "spring", from: "seen" });
});

const typed = (line: string): string[] =>
  told(load({ [lathe]: `${machineFile}axes:\n  x:\n${line}\n` }).findings).map((t) => t.replace("lathe/machine.yaml:", ""));

test.each([
  ["a long form has five keys", "    mass: { value: 80 kg, form: plate }", ["5:27 unknown-key"]],
  ["there are eight ways to know", "    mass: { value: 80 kg, from: hearsay }", ["5:33 unknown-word"]],
  ["a day that no calendar has", "    mass: { value: 80 kg, date: 2026-02-30 }", ["5:33 date-bad"]],
  ["a date the other way round", "    mass: { value: 80 kg, date: 14.2.2026 }", ["5:33 date-bad"]],
  ["a map where a value stands", "    mass: { low: 80 kg }", ["5:11 not-a-value"]],
  ["a list where a value stands", "    mass: [ 80 kg ]", ["5:11 not-a-value"]],
  ["a word where keys stand", "    screw: long", ["5:12 not-a-map"]],
  ["a list where keys stand", "    screw: [ 1, 2 ]", ["5:12 not-a-map"]],
  ["a word where a list stands", "    motor: { links: 4-7 }", ["5:21 not-a-list"]],
  ["a map where a list stands", "    motor: { links: { a: 1 } }", ["5:21 not-a-list"]],
  ["nothing where a value stands", "    mass:", ["5:10 not-a-value"]],
  ["keys run together where keys stand", "    screw: lead:5 mm", ["5:12 no-blank-after-colon"]],
  ["nothing where keys stand", "    screw:", []],
  ["a pair on a plate", "    motor: { plate: { voltage: 230/460 V } }", []],
  ["a pair elsewhere", "    mass: 80/85 kg", ["5:11 pair-here"]],
  ["a negative mass", "    mass: -5 kg", ["5:11 number-range"]],
  ["no number", "    mass: NaN kg", ["5:11 number-bad"]],
  ["more digits than any number has", `    mass: ${"9".repeat(150)}e999 kg`, ["5:11 number-bad"]],
  ["a like where the catalogue has none", "    like: axis-1", ["5:5 like-group"]],
  ["an earlier name of a key", "    screw: { pitch: 5.08 mm }", ["5:14 renamed"]],
  ["not known", "    mass: unknown", []],
  ["absent where that is an answer", "    jerk: none", []],
  ["absent where that is none", "    mass: none", ["5:11 unknown-word"]],
  ["a whole thing not known, a whole thing absent", "    screw: unknown\n    motor: none", []],
  ["a number without quotes", "    screw: { starts: 1 }", []],
])("%s", (_, line, findings) => {
  expect(typed(line)).toEqual(findings);
});

test("true and false are yes and no", () => {
  const model = load({
    [lathe]: `${machineFile}devices: { a: { check-valve: true }, b: { check-valve: false }, c: { check-valve: maybe } }\n`,
  });
  expect(told(model.findings)).toEqual(["lathe/machine.yaml:3:83 unknown-word"]);
  expect(["a", "b"].map((d) => leafAt(model, "lathe", "devices", d, "check-valve")?.text)).toEqual(["yes", "no"]);
});

test("an earlier name is read under the present one", () => {
  const model = load({ [lathe]: `${machineFile}axes: { x: { screw: { pitch: 5.08 mm } } }\n` });
  expect(leafAt(model, "lathe", "axes", "x", "screw", "lead")?.text).toBe("5.08 mm");
  expect(model.findings[0]).toMatchObject({ code: "renamed", severity: "note", expected: "lead" });
});

test("a list of quantities is read one by one", () => {
  expect(told(load({ "shop.yaml": "waywright: 1\nsupply:\n  unbalance: [ 238 V, 241 V, 5 A ]\n" }).findings)).toEqual([
    "shop.yaml:3:30 unit-mismatch",
  ]);
  expect(told(load({ "shop.yaml": "waywright: 1\nsupply:\n  unbalance: none\n" }).findings)).toEqual([]);
});

test("names of things are lower case letters, digits and hyphens", () => {
  const names = ["X", "x y", "x.y", "x/y", "-x", "x_1", "\u00e9", "__proto__"];
  for (const name of names) {
    const model = load({ [lathe]: `${machineFile}axes:\n  "${name}": { mass: 80 kg }\n` });
    expect(told(model.findings)).toEqual(["lathe/machine.yaml:4:3 bad-name"]);
  }
  expect(told(load({ [lathe]: `${machineFile}tools: { 1: { diameter: 3 mm }, b-2: { diameter: 4 mm } }\n` }).findings)).toEqual([]);
});

test("a key one level too high is shown its place, a misspelt one its neighbour", () => {
  const [high, misspelt] = load({ [lathe]: `${machineFile}axes:\n  x: { lead: 5 mm, rapide: 5 m/min }\n` }).findings;
  expect(high).toMatchObject({ code: "unknown-key", place: { line: 4, column: 8 } });
  expect(high?.says).toContain("`screw`");
  expect(misspelt).toMatchObject({ code: "unknown-key", nearest: "rapid", place: { line: 4, column: 20 } });
});

test("keys of rooms to come are looked over for slips that nobody needs a meaning to see", () => {
  const shop = (line: string): string[] => told(load({ "shop.yaml": `waywright: 1\npeople:\n  me: { ${line} }\n` }).findings);
  expect(shop('hours: "07:30 to 17:00", days: 5, note: any text, links: [ 4-7 ], speed: 5 m/min')).toEqual([]);
  expect(shop("bore: 5OO mm")).toEqual(["shop.yaml:3:15 letter-in-number"]);
  expect(shop("bore: 34 mmm")).toEqual(["shop.yaml:3:15 unit-unknown"]);
  expect(shop("Bore: 34 mm")).toEqual(["shop.yaml:3:9 bad-name"]);
  expect(shop("bore: 0,4 mm")).toEqual(["shop.yaml:3:15 decimal-comma"]);
});

test("every mistake of a file is told at once, in the order of its lines", () => {
  const model = load({ [lathe]: `${machineFile}axes:\n  x: { rapid: 5, mass: 5 mm }\n  x: { mass: 80 kg }\nspindel: 3\n` });
  expect(told(model.findings)).toEqual([
    "lathe/machine.yaml:4:15 unit-missing",
    "lathe/machine.yaml:4:24 unit-mismatch",
    "lathe/machine.yaml:5:3 twice",
    "lathe/machine.yaml:6:1 unknown-key",
  ]);
});

test("the caret marks the letters that are wrong, the place is the value", () => {
  const [finding] = load({ [lathe]: `${machineFile}axes: { x: { mass: "85 kgg" } }\n` }).findings;
  expect(finding?.place).toMatchObject({ line: 3, column: 20 });
  expect(finding?.excerpt?.split("\n")).toEqual(['axes: { x: { mass: "85 kgg" } }', "                       ^^^"]);
});

test("the price in another currency than the shop's is no price", () => {
  const files = (currency: string): Record<string, string> => ({
    "shop.yaml": `waywright: 1\nshow: { currency: ${currency} }\n`,
    "lathe/options/a.yaml": "option: a\ncost: 40 USD\n",
  });
  expect(told(load(files("USD")).findings)).toEqual([]);
  expect(load(files("EUR")).findings.map((f) => f.place.file)).toEqual(["lathe/options/a.yaml"]);
});

test("the tops of the files are there whatever rooms there are", () => {
  expect([...smallKeys.shop.keys.keys()]).toEqual(expect.arrayContaining(["waywright", "shop", "show"]));
  expect(told(load({ "shop.yaml": "shop: S\n" }).findings)).toEqual(["shop.yaml:1:1 required"]);
  expect(told(load({ "shop.yaml": "waywright: 2\n" }).findings)).toEqual(["shop.yaml:1:12 version-unknown"]);
});
