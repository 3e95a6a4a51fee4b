import { expect, test } from "vitest";
import { figure, input, listInput, pairInput, perhaps, type Ref, value, via, wordInput } from "./figure.ts";
import { machine, scope } from "./item.ts";
import { link } from "./ref.ts";
import { SAMPLES } from "./random.ts";
import { houseOf, toyRoom, winches } from "./toy-house.test-help.ts";
import { fieldsOf, type Worked, type WorkError, workable, workOut } from "./work.ts";

const metric = { units: "metric" } as const;
const measure = "look at it";
type Given = Readonly<Record<string, string>>;
const winch = (id: string, given: Given): Worked | WorkError => workOut(winches, id, given, metric);
const good = (w: Worked | WorkError): Worked => {
  if ("code" in w) throw new Error(`${w.code}: ${w.message}`);
  return w;
};
const bad = (w: Worked | WorkError): WorkError => {
  if (!("code" in w)) throw new Error(`worked: ${w.amount.text}`);
  return w;
};
const nominal = (w: Worked | WorkError): number => good(w).column.v[0] ?? NaN;

test("a figure is worked out from values given under the names of its formula", () => {
  const w = good(winch("late.drum.torque", { F: "2 kN", r: "100 mm" }));
  expect(w.column.v).toEqual(Float64Array.of(200));
  expect(w.amount).toMatchObject({ text: "200 N*m", band: "exact" });
  expect(w.working).toMatchObject({ numbers: "2000 N * 100 mm", formula: "F * r" });
});

test("a need answers to its name, its id, its key and its symbol alike", () => {
  for (const given of [
    { F: "2 kN", r: "0.1 m" },
    { "late.weight": "2 kN", "drum.radius": "0.1 m" },
    { weight: "2 kN", radius: "0.1 m" },
  ])
    expect(nominal(winch("late.drum.torque", given))).toBe(200);
});

test("a need that is a figure may be given, or worked out from its own needs", () => {
  expect(nominal(winch("late.drum.torque", { load: "100 kg", r: "0.1 m" }))).toBeCloseTo(98.0665, 9);
  expect(nominal(winch("late.drum.torque", { m: "100 kg", r: "0.1 m" }))).toBeCloseTo(98.0665, 9);
});

test("a range spreads the result, and says so in its band", () => {
  const w = good(winch("late.drum.torque", { F: "2 kN", r: "90 to 110 mm" }));
  expect(w.column.v.length).toBe(SAMPLES);
  expect(w.amount.band).toBe("182 to 218 N*m");
  expect(w.working.shares[0]?.share).toBeGreaterThan(0.99);
});

test("what is not given but typical is used, and shown as typical", () => {
  const w = good(winch("late.drum.torque", { F: "2 kN" }));
  expect(w.amount.text).toBe("200 N*m");
  expect(w.working.needs.find((n) => n.name === "r")?.origin).toMatchObject({ by: "typical" });
  expect(good(winch("late.drum.torque", { F: "2 kN", r: "unknown" })).column.v).toEqual(w.column.v);
});

test("what is missing is listed: short names at the top, whole ids below", () => {
  expect(bad(winch("late.drum.torque", {}))).toMatchObject({ code: "needs-missing", message: "late.drum.torque still needs load" });
  expect(bad(winch("late.weight", {}))).toMatchObject({ code: "needs-missing", message: "late.weight still needs m" });
  expect(bad(winch("late.weight", { m: "none" }))).toMatchObject({ code: "needs-missing" });
});

test("an unknown name is refused with the nearest that would do, and so is an unknown figure", () => {
  expect(bad(winch("late.drum.torque", { F: "2 kN", radus: "100 mm" }))).toMatchObject({ code: "name-unknown", nearest: "radius" });
  expect(bad(winch("late.drum.torqe", {}))).toMatchObject({ code: "figure-unknown", nearest: "late.drum.torque" });
});

test("a wrong unit, no unit and no number are told apart", () => {
  const code = (r: string) => bad(winch("late.drum.torque", { F: "2 kN", r })).code;
  expect(code("100 kg")).toBe("unit-mismatch");
  expect(code("100")).toBe("unit-missing");
  expect(code("about a foot")).toBe("number-bad");
});

test("outside of what a figure is valid for it refuses in its own words", () => {
  expect(bad(winch("late.drum.torque", { F: "2 kN", r: "0 mm" }))).toMatchObject({ code: "refused", message: "no drum without a radius" });
});

test("an optional need may be left out, or said to be none", () => {
  for (const given of [{ T: "400 N*m" }, { T: "400 N*m", P: "none" }]) expect(nominal(winch("late.drum.heat", given))).toBe(4);
  expect(nominal(winch("late.drum.heat", { T: "400 N*m", P: "1 kW" }))).toBe(104);
});

test("a need at another thing is a field of its own", () => {
  expect(nominal(winch("late.lift.pull", { F_max: "9 kN" }))).toBe(9000);
  expect(nominal(winch("late.lift.pull", { "rope.strength": "9 kN" }))).toBe(9000);
});

test("of several that would do, the one that is given is taken", () => {
  expect(nominal(winch("late.lift.wanted", { speed: "0.3 m/s" }))).toBe(0.3);
  expect(nominal(winch("late.lift.wanted", { "full-speed": "0.4 m/s" }))).toBe(0.4);
  expect(nominal(winch("late.lift.wanted", { voltage: "100 V", radius: "0.1 m" }))).toBeCloseTo(0.1, 12);
});

const pulleys = scope({ name: "pulley", says: "a pulley", mounts: ["pulleys.*"] });
const turned = scope({ name: "turned", says: "a turned pulley", mounts: ["turned.*"] });
const drivenBy = link({ per: turned, key: "by", to: pulleys, says: "driving pulley" });
const V = input({ key: "voltage", per: machine, says: "voltage", unit: "V", measure, typical: { value: "100 V", source: "toy" } });
const R = input({ key: "resistance", per: machine, says: "resistance", unit: "ohm", measure });
const current = figure({
  id: "toy.current",
  per: machine,
  symbol: "I",
  unit: "A",
  says: "current",
  formula: "V / R",
  source: "Ohm",
  needs: { V, R },
  of: (x) => x.V / x.R,
});
const lost = figure({
  id: "toy.lost",
  per: machine,
  symbol: "P",
  unit: "W",
  says: "power",
  formula: "V * I",
  source: "Joule",
  needs: { V, I: current },
  of: (x) => x.V * x.I,
});
const diameter = input({ key: "diameter", per: pulleys, says: "diameter", unit: "m", measure });
const own = input({ key: "diameter", per: turned, says: "own diameter", unit: "m", measure });
const ratio = figure({
  id: "toy.ratio",
  per: pulleys,
  symbol: "i",
  unit: "1",
  kind: "ratio",
  says: "ratio",
  formula: "d_2 / d_1",
  source: "toy",
  needs: { d_1: diameter, d_2: via(drivenBy, diameter) },
  of: (x) => x.d_2 / x.d_1,
});
const kind = wordInput({ key: "kind", per: machine, says: "kind", words: ["new", "worn"], typical: ["new"], measure });
const list = listInput({ key: "list", per: machine, says: "angles", unit: "rad", measure });
const pair = pairInput({ key: "volts", per: machine, says: "plate voltages", unit: "V", measure });
const angles = value({ id: "toy.angles", per: machine, says: "angles", each: { unit: "rad" }, needs: { list }, of: (x) => x.list });
const sum = figure({
  id: "toy.sum",
  per: machine,
  symbol: "a",
  unit: "rad",
  says: "sum",
  formula: "sum(l)",
  source: "toy",
  needs: { l: list },
  of: (x) => x.l.reduce((s, v) => s + v, 0),
});
const twice = figure({
  id: "toy.twice",
  per: machine,
  symbol: "a",
  unit: "rad",
  says: "sum of a table",
  formula: "sum(t)",
  source: "toy",
  needs: { t: angles as Ref<readonly number[]> },
  of: (x) => x.t.reduce((s, v) => s + v, 0),
});
const most = figure({
  id: "toy.most",
  per: machine,
  symbol: "U",
  unit: "V",
  says: "most",
  formula: "max(u)",
  source: "toy",
  needs: { u: pair, k: kind, none: perhaps(R) },
  of: (x) => Math.max(...x.u) * (x.k === "worn" ? 0.5 : 1),
});
const house = houseOf(
  toyRoom({ pulleys, turned, drivenBy, V, R, current, lost, diameter, own, ratio, kind, list, pair, angles, sum, twice, most }),
);
const toy = (id: string, given: Given): Worked | WorkError => workOut(house, id, given, metric);

test("what is given for a figure goes for the figures below it too", () => {
  // By hand: 230 V on 10 ohm.
  for (const name of ["V", "voltage"]) expect(nominal(toy("toy.lost", { [name]: "230 V", R: "10 ohm" }))).toBeCloseTo(5290, 9);
  expect(nominal(toy("toy.lost", { R: "10 ohm" }))).toBeCloseTo(1000, 9);
});

test("an input that acts twice is one value in each shop", () => {
  const v = good(toy("toy.lost", { V: "200 to 240 V", R: "10 ohm" })).column.v;
  expect(Math.max(...v)).toBeLessThanOrEqual(5760);
  expect(Math.max(...v)).toBeGreaterThan(5740);
});

test("two pulleys of one make have a field each, and their tolerances do not move together", () => {
  expect(nominal(toy("toy.ratio", { d_1: "100 mm", d_2: "200 mm" }))).toBe(2);
  const v = good(toy("toy.ratio", { d_1: "90 to 110 mm", d_2: "90 to 110 mm" })).column.v;
  expect(Math.max(...v)).toBeGreaterThan(1.15);
});

test("what is given for another thing is not taken for this one", () => {
  const around = figure({
    id: "toy.around",
    per: pulleys,
    symbol: "l",
    unit: "m",
    says: "once around both",
    formula: "pi * d_2 + u",
    source: "toy",
    needs: {
      d_2: via(drivenBy, diameter),
      u: figure({
        id: "toy.girth",
        per: pulleys,
        symbol: "u",
        unit: "m",
        says: "girth",
        formula: "pi * d",
        source: "toy",
        needs: { d: diameter },
        of: (x) => Math.PI * x.d,
      }),
    },
    of: (x) => Math.PI * x.d_2 + x.u,
  });
  const both = houseOf(toyRoom({ pulleys, turned, drivenBy, diameter, around, girth: around.needs["u"] }));
  expect(bad(workOut(both, "toy.around", { d_2: "100 mm" }, metric))).toMatchObject({
    code: "needs-missing",
    message: "toy.around still needs pulley.diameter",
  });
  expect(nominal(workOut(both, "toy.around", { d_2: "100 mm", u: "50 mm" }, metric))).toBeCloseTo(0.1 * Math.PI + 0.05, 12);
});

test("lists take one unit for all, pairs two values, words one of theirs", () => {
  expect(nominal(toy("toy.sum", { l: "0, 90, 180 deg" }))).toBeCloseTo(1.5 * Math.PI, 12);
  expect(nominal(toy("toy.twice", { t: "90 deg; 1 rad" }))).toBeCloseTo(Math.PI / 2 + 1, 12);
  expect(nominal(toy("toy.most", { u: "230/460 V" }))).toBe(460);
  expect(nominal(toy("toy.most", { u: "230/460 V", k: "worn" }))).toBe(230);
  expect(bad(toy("toy.most", { u: "230/460 V", k: "wrn" }))).toMatchObject({ code: "unknown-word", nearest: "worn" });
  expect(bad(toy("toy.sum", { l: "0, 90 kg" })).code).toBe("unit-mismatch");
});

test("a table is no number", () => {
  expect(bad(toy("toy.angles", { list: "1 rad, 2 rad" })).code).toBe("not-a-number");
});

test("the fields of a figure are its needs, with what is typical and what may be left out", () => {
  const heat = workable(winches).find((f) => f.id === "late.drum.heat");
  expect(heat && fieldsOf(heat)).toMatchObject([
    { name: "T", id: "brake.grip", kind: "torque", typical: "300 to 500 N*m", optional: false },
    { name: "P", id: "motor.power", kind: "power", typical: null, optional: true },
  ]);
});
