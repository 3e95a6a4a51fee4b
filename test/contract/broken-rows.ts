// Slips of the hand in the example shop, and what has to be found of each.
import type { Edit, Finds } from "./broken-folder.ts";

export interface Row {
  /** What was done, as the title of a test. */
  readonly slip: string;
  readonly edits: readonly Edit[];
  /** In the order of the marks; each mark is a finding, and there are no others. */
  readonly finds: readonly Finds[];
  readonly options?: readonly string[];
}

const shop = "shop.yaml";
const lathe = "lathe/machine.yaml";
const mill = "mill/machine.yaml";
const parts = "catalogue/parts.yaml";
const bigger = "lathe/options/bigger-drive.yaml";
const vector = "lathe/options/vector-mode.yaml";
const ohms = "lathe/records/2026-02-14-motor-resistance.yaml";

const row = (slip: string, file: string, was: string, typed: string, ...finds: readonly Finds[]): Row => ({
  slip,
  edits: [{ file, was, typed }],
  finds,
});

const speed = "\n  highest-speed: 2800 rpm ";
const length = "length: 18 m,";
const plate = "voltage: 230/460 V, current: 20.4/10.2 A, frequency: 60 Hz, speed: 1745 rpm, design: B";
const alias: Finds = { code: "alias", expected: "like: NAME" };

const grammar: readonly Row[] = [
  row("a tab for an indent", lathe, speed, "\n▸\thighest-speed: 2800 rpm ", { code: "tab-indent" }),
  row("a tab among keys indented by blanks", lathe, "\n    leads: 9", "\n▸\tleads: 9", { code: "tab-indent" }),
  row("a brace right behind a colon", lathe, "    base: { frequency", "    ▸base:{ frequency", {
    code: "no-blank-after-colon",
    expected: "base: { frequency: 60 Hz, voltage: 230 V }",
  }),
  row("a colon that is missing above a whole block", lathe, "\nsupply:\n", "\n▸supply\n", { code: "syntax" }),
  row("two keys on one line above their block", shop, "\nsupply:\n  kind: ", "\nsupply: ▸kind: ", { code: "colon-in-text" }),
  row("an indent that fits nothing", lathe, "\n  highest-speed: 2800", "\n▸   highest-speed: 2800", { code: "syntax" }),
  row("no blank behind a colon", lathe, speed, "\n  ▸highest-speed:2800 rpm ", {
    code: "no-blank-after-colon",
    expected: "highest-speed: 2800 rpm",
  }),
  row("no blank behind a colon inside braces", lathe, length, "▸length:18 m,", { code: "no-blank-after-colon", expected: "length: 18 m" }),
  row("a key twice under one motor", lathe, "    leads: 9", "    leads: 9\n    ▸leads: 12", { code: "twice" }),
  row("a key twice inside braces", lathe, length, "length: 18 m, ▸length: 19 m,", { code: "twice" }),
  row("two axes of one name", lathe, "  z:\n    screw", "  ▸x:\n    screw", { code: "twice" }),
  row("a colon in a note", lathe, "note: 4-7 5-8", "note: ▸bridges: 4-7 5-8", {
    code: "colon-in-text",
    expected: '"bridges: 4-7 5-8 6-9 joined"',
  }),
  row("a colon in a title", bigger, "title: Larger drive", "title: ▸Drive: larger", {
    code: "colon-in-text",
    expected: '"Drive: larger with a choke and a resistor, motor left linked for 460 V"',
  }),
  row("a number sign before a wire size, inside braces", lathe, "size: AWG 8", "size: ▸AWG #8", {
    code: "comment-ate-value",
    expected: "AWG 8",
  }),
  row("a number sign before a number, on a line of its own", bigger, "title: Larger drive with", "title: ▸Drive #2 with", {
    code: "comment-ate-value",
    expected: "Drive 2",
  }),
  row("an anchor", lathe, "inertia: { spindle: unknown", "inertia: { spindle: ▸&j 0.02 kg*m2", alias),
  row("an alias of nothing", lathe, "inertia: { spindle: unknown", "inertia: { spindle: ▸*j", alias),
  row("an alias that stands for what it stands in", shop, "people:\n", "people: ▸&a\n  loop: ▸*a\n", alias, alias),
  row("a tag", shop, "dip-limit: 5 %", "dip-limit: ▸!!float 5", { code: "syntax" }),
  row("a second document", shop, "people:\n", "▸---\npeople:\n", { code: "syntax" }),
  row(
    "a brace that nobody closes",
    lathe,
    "cable: { length: 6 m, screened: yes, rise-time: unknown }",
    "cable: ▸{ length: 6 m, screened: yes, rise-time: unknown",
    { code: "syntax" },
  ),
  row("a quote that nobody closes", shop, 'note: "light and bench; clamp logger not yet hung"', 'note: ▸"light and bench', {
    code: "syntax",
  }),
  row("fifty lists inside each other", shop, "people:\n", `people: ${"[".repeat(40)}▸[${"]".repeat(41)}\n`, { code: "too-deep" }),
  { slip: "a file that is a list", edits: [{ file: shop, typed: "▸- waywright: 1\n" }], finds: [{ code: "not-a-map" }] },
];

const numbers: readonly Row[] = [
  row("a unit spelt out", shop, "value: 60 A, from: plate", "value: ▸60 Amps, from: plate", {
    code: "unit-unknown",
    expected: "10.2 A",
    nearest: "A",
  }),
  row("a current below nothing", mill, "rated-current: 10 A", "rated-current: ▸-10 A", { code: "number-range", expected: "10.2 A" }),
  row("a decimal comma", lathe, speed, "\n  highest-speed: ▸2800,5 rpm ", { code: "decimal-comma", expected: "2800.5 rpm" }),
  row("a decimal comma inside braces", lathe, length, "length: ▸18,5 m,", { code: "decimal-comma", expected: "18.5 m" }),
  row("a decimal comma at an axis, which no room reads yet", lathe, "travel: 160 mm", "travel: ▸160,5 mm", {
    code: "decimal-comma",
    expected: "160.5 mm",
  }),
  row("a sign between thousands", lathe, speed, "\n  highest-speed: ▸2'800 rpm ", { code: "thousands-sign", expected: "2800 rpm" }),
  row("the letter O for a zero", lathe, speed, "\n  highest-speed: ▸28OO rpm ", { code: "letter-in-number", expected: "2800 rpm" }),
  row("the letter O at an axis", lathe, "rapid: 5 m/min", "rapid: ▸5OO mm/min", { code: "letter-in-number", expected: "500 mm/min" }),
  row("a number without its unit", lathe, speed, "\n  highest-speed: ▸2800 ", { code: "unit-missing", expected: "2800 rpm" }),
  row("an inertia without its unit", lathe, "inertia: { spindle: unknown", "inertia: { spindle: ▸2.6", {
    code: "unit-missing",
    expected: "2.6 kg*cm2",
  }),
  row("a mass where a length is wanted", lathe, length, "length: ▸18 kg,", { code: "unit-mismatch", expected: "18 m" }),
  row("a length in a unit that there is not", lathe, length, "length: ▸18 metr,", {
    code: "unit-unknown",
    expected: "18 m",
  }),
  row("degrees without a scale", lathe, "temperature: 60 degC, reactance", "temperature: ▸60 C, reactance", {
    code: "unit-unknown",
    expected: "20 degC",
    nearest: "degC",
  }),
  row("money in another currency than the shop's", bigger, "590 USD", "▸590 EUR", { code: "unit-mismatch", expected: "9.60 USD" }),
  row("a mass where an option lays a share", bigger, "choke: 3 %", "choke: ▸3 kg", { code: "unit-mismatch", expected: "80 %" }),
  row("a range that runs backwards", shop, "value: 3 to 6 A", "value: ▸6 to 3 A", { code: "range-backwards", expected: "3 to 6 A" }),
  row("a tolerance written short", shop, "voltage: 240 V +/- 5 %", "voltage: ▸240V +- 5%", {
    code: "quantity",
    severity: "note",
    expected: "240 V +/- 5 %",
  }),
  row("a pair of voltages outside a plate", shop, "voltage: 240 V +/- 5 %", "voltage: ▸120/240 V", {
    code: "pair-here",
    expected: "230 V",
  }),
  row("a number beyond all numbers", lathe, length, "length: ▸1e999 m,", { code: "number-bad", expected: "18 m" }),
  row("leads beyond counting", lathe, "leads: 9", "leads: ▸99999999999999999999", { code: "number-range" }),
  row("half a lead", lathe, "leads: 9", "leads: ▸9.5", { code: "number-range" }),
  row("NaN", lathe, length, "length: ▸NaN m,", { code: "number-bad", expected: "18 m" }),
  row("YAML's own infinity", lathe, length, "length: ▸.inf m,", { code: "number-bad", expected: "18 m" }),
  row("a fraction over zero", lathe, length, "length: ▸1/0 m,", { code: "number-bad", expected: "18 m" }),
  row("a negative length", lathe, length, "length: ▸-18 m,", { code: "number-range", expected: "18 m" }),
  row("a temperature below absolute zero", lathe, "temperature: 60 degC, reactance", "temperature: ▸-300 degC, reactance", {
    code: "number-range",
    expected: "20 degC",
  }),
];

const keys: readonly Row[] = [
  row("a key misspelt", lathe, "    leads: 9", "    ▸leeds: 9", { code: "unknown-key", nearest: "leads" }),
  row("a key that is required, misspelt", lathe, "ampacity: { value", "▸ampacty: { value", { code: "unknown-key", nearest: "ampacity" }),
  row("a room's key misspelt", lathe, "\nwiring:\n", "\n▸wirring:\n", { code: "unknown-key", nearest: "wiring" }),
  row("a key of the long form misspelt", shop, "60 A, from: plate", "60 A, ▸form: plate", { code: "unknown-key", nearest: "from" }),
  row("a key from the inside of JavaScript", lathe, "    leads: 9", "    leads: 9\n    ▸__proto__: { leads: 3 }", { code: "unknown-key" }),
  row("such a key where no room reads yet", lathe, "\naxes:\n", "\naxes:\n  ▸__proto__: { x: yes }\n", {
    code: "bad-name",
    expected: "proto",
  }),
  row("another such key", lathe, "\naxes:\n", "\n▸constructor: { name: x }\naxes:\n", { code: "unknown-key" }),
  row("capitals in a name", lathe, "    only: { motor", "    ▸Only_One: { motor", { code: "bad-name", expected: "only-one" }),
  row("an earlier name of a key", shop, "  line-voltages: none", "  ▸unbalance: none", {
    code: "renamed",
    severity: "note",
    expected: "line-voltages",
  }),
  row("a word misspelt", lathe, "winding: star", "winding: ▸starr", { code: "unknown-word", expected: "star, delta", nearest: "star" }),
  row("a source of knowledge that there is not", shop, "60 A, from: plate", "60 A, from: ▸plates", {
    code: "unknown-word",
    expected: "plate, papers, seller, drawing, seen, measured, estimate, local-code",
    nearest: "plate",
  }),
  row("a list where a map is wanted", lathe, "resistor: none  ", "resistor: ▸[ 40 ohm, 600 W ]", { code: "not-a-map" }),
  row("a word where a map is wanted", lathe, "ramp: { up: 4 s, down: 5 s }", "ramp: ▸4 s", { code: "not-a-map" }),
  row("a map where a value is wanted", lathe, "leads: 9", "leads: ▸{ count: 9 }", { code: "not-a-value", expected: "6" }),
  row(
    "a list for the kind of an operation",
    "lathe/work/drag-knob.yaml",
    "operation: drill, kind: drill",
    "operation: drill, kind: ▸[ drill ]",
    {
      code: "not-a-value",
      expected: "turn",
    },
  ),
  row("a map for the depth of a cut", "lathe/work/drag-knob.yaml", "depth: 2 mm", "depth: ▸{ most: 2 mm }", {
    code: "not-a-value",
    expected: "5.08 mm",
  }),
  row("nothing behind a key", lathe, "winding: star", "winding:▸", { code: "not-a-value", expected: "star" }),
  row("a list without its brackets", lathe, "links: [ 4-7, 5-8, 6-9 ]", "links: ▸4-7 5-8 6-9", {
    code: "not-a-list",
    expected: "[ 4-7 5-8 6-9 ]",
  }),
  row("a day that no calendar has", shop, "date: 2026-01-10", "date: ▸2026-02-30", { code: "date-bad", expected: "2026-02-14" }),
  row("a date the other way round", ohms, "date: 2026-02-14T10:20", "date: ▸14.02.2026", { code: "date-bad", expected: "2026-02-14" }),
  row("a version to come", shop, "waywright: 1 ", "waywright: ▸2 ", { code: "version-unknown", expected: "1" }),
  row(
    "no version",
    shop,
    "waywright: 1                                # version of this file language; the only key that is required to be first\nshop:",
    "▸shop:",
    { code: "required", severity: "note", expected: "waywright: 1" },
  ),
  row(
    "no ampacity of the mill's run",
    mill,
    "run: { length: 11 m, size: 6 mm2, material: copper, temperature: 60 degC, ampacity: 30 A,",
    "▸run: { length: 11 m, size: 6 mm2, material: copper, temperature: 60 degC,",
    { code: "required", severity: "note" },
  ),
];

const references: readonly Row[] = [
  row("two operations of one name", "lathe/work/drag-knob.yaml", "operation: part-off,", "operation: ▸rough,", { code: "twice" }),
  row("a drive that the catalogue has not", lathe, "like: spindle-drive-11", "like: ▸spindle-drive-12", {
    code: "not-in-catalogue",
    nearest: "spindle-drive-11",
  }),
  row("a screw that the catalogue has not", lathe, "{ like: old-5tpi, free-length", "{ like: ▸old-4tpi, free-length", {
    code: "not-in-catalogue",
    nearest: "old-5tpi",
  }),
  row("two motors like each other", parts, "\n  servo-2n4:\n", "\n  a: { like: b }\n  b: { like: ▸a }\n  servo-2n4:\n", {
    code: "like-ring",
  }),
  row("a drive like itself", parts, "\n  servo-drive-750:\n", "\n  servo-drive-750:\n    like: ▸servo-drive-750\n", { code: "like-ring" }),
  row("a catalogue part for a whole spindle", lathe, "\nspindle:\n", "\nspindle:\n  ▸like: servo-2n4\n", { code: "like-group" }),
  row("a path misspelt in an option", vector, "spindle.drive.mode", "▸spindle.drive.mod", {
    code: "unknown-path",
    nearest: "spindle.drive.mode",
  }),
  row("a path misspelt in a record", ohms, "  spindle.motor.tested-as", "  ▸spindle.motr.tested-as", {
    code: "unknown-path",
    nearest: "spindle.motor.tested-as",
  }),
  row("a path misspelt among those a record depends on", ohms, "[ spindle.motor.plate ]", "[ ▸spindle.motor.plates ]", {
    code: "unknown-path",
    nearest: "spindle.motor.plate",
  }),
  row("an option that builds on one there is not", vector, "\nhours", "\nneeds: [ ▸biger-drive ]\nhours", {
    code: "option-unknown",
    nearest: "bigger-drive",
  }),
  {
    slip: "an option without the one that it builds on",
    options: ["vector-mode"],
    edits: [{ file: vector, was: "\nhours", typed: "\nneeds: [ ▸bigger-drive ]\nhours" }],
    finds: [{ code: "option-needs", expected: "bigger-drive" }],
  },
  {
    slip: "two options that set one value",
    options: ["pump-50", "vector-mode"],
    edits: [{ file: vector, was: "\nset:\n", typed: "\nset:\n  ▸fluids.coolant.pump.frequency: 40 Hz\n" }],
    finds: [{ code: "options-collide" }],
  },
  {
    slip: "an option under which a reading no longer counts",
    options: ["vector-mode"],
    edits: [
      { file: vector, was: "\nset:\n", typed: "\nset:\n  spindle.motor.plate.design: C\n" },
      { file: ohms, was: "[ spindle.motor.plate ]", typed: "[ ▸spindle.motor.plate ]" },
    ],
    finds: [{ code: "record-aside", severity: "note" }],
  },
];

const contradictions: readonly Row[] = [
  row("the amperes of the other connection", lathe, plate, plate.replace("230/460", "230").replace("20.4/", "▸"), {
    code: "plate-contradiction",
  }),
  row("the pairs of a plate crosswise", lathe, plate, plate.replace("20.4/10.2", "▸10.2/20.4"), { code: "plate-contradiction" }),
  row("the field's own speed on a plate", lathe, plate, plate.replace("1745", "▸1800"), { code: "plate-slip" }),
  row("the speed of 60 Hz beside 50 Hz", lathe, plate, plate.replace("60 Hz, speed: ", "50 Hz, speed: ▸"), { code: "plate-slip" }),
  row("a higher voltage with the test load than without", shop, "loaded: 238.9 V", "loaded: ▸244 V", { code: "contradiction" }),
  row("the sides of a transformer swapped", lathe, "transformer: none", "transformer: { plate: 10 kVA, low: ▸480 V, high: 240 V }", {
    code: "contradiction",
  }),
  row(
    "a chopper that switches on after the trip",
    parts,
    "bus: { capacitance: 680 uF, trip: 400 V,",
    "bus: { capacitance: 680 uF, trip: 400 V, resistor-on: ▸410 V,",
    {
      code: "contradiction",
    },
  ),
  row("a drive that gives up above its trip", parts, "trip: 400 V, under-voltage: 200 V", "trip: 400 V, under-voltage: ▸420 V", {
    code: "contradiction",
  }),
];

export const rows: readonly Row[] = [...grammar, ...numbers, ...keys, ...references, ...contradictions];
