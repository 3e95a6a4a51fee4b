import fc from "fast-check";
import { expect, test } from "vitest";
import { type Issue, readPair, type QuantityOptions, type Read, readQuantity } from "./quantity.ts";
import { type Kind, kindInfo, kindNames } from "./unit.ts";

function read(text: string, kind: Kind, options?: QuantityOptions): Read {
  const reading = readQuantity(text, kind, options);
  if (!reading.ok) throw new Error(`${text}: ${reading.issues[0].code} ${reading.issues[0].says}`);
  return reading;
}

function issues(text: string, kind: Kind, options?: QuantityOptions): readonly Issue[] {
  const reading = readQuantity(text, kind, options);
  return reading.ok ? reading.notes : reading.issues;
}

// Value by hand from the definition of the unit.
test.each<[string, Kind, number]>([
  ["5.08 mm", "length", 0.00508],
  ["1/2 in", "length", 0.0127],
  ["3-1/4 in", "length", 0.08255],
  ["1/3 hp", "power", 745.6998715822702 / 3],
  ["5 thou", "length", 0.000127],
  ["2 tenths", "length", 0.00000508],
  ["10 \u00b5m", "fine-length", 1e-5],
  ["-12.5 mm", "position", -0.0125],
  ["90 psi", "gauge-pressure", 90 * 6894.757293168361],
  ["7.6 bar", "gauge-pressure", 760e3],
  ["77 degF", "temperature", 298.15],
  ["20 degC", "temperature", 293.15],
  ["9 degF", "temperature-difference", 5],
  ["5 degC", "temperature-difference", 5],
  ["60 m3/h", "flow", 1 / 60],
  ["24.5 h/month", "share", (24.5 * 12) / 8760],
  ["10 /h", "per-hour", 10 / 3600],
  ["25 1/s", "per-time", 25],
  ["900 /month", "per-month", 900 / 2628000],
  ["6 %/yr", "share-per-year", 0.06 / 31536000],
  ["1745 rpm", "rotation", (1745 * Math.PI) / 30],
  ["0.17 USD/kWh", "money-per-energy", 0.17 / 3.6e6],
  ["9 lb*ft", "torque", 9 * 1.3558179483314],
  ["5 oz*in", "torque", 5 * 0.00706155181422604],
  ["5 lb", "force", 22.2411080763025],
  ["5 lb", "mass", 2.26796185],
  ["2 lb*in*s2", "inertia", 2 * 0.1129848290276167],
  ["17 um/(m*K)", "expansion", 17e-6],
  ["2.6 dm3/(s*bar)", "flow-coefficient", 2.6e-8],
  ["1.5 mm/m", "slope", 0.0015],
  ["5000000 cycles", "count", 5e6],
  ["1.90 USD/each", "money", 1.9],
  ["250 sfm", "cutting-speed", 1.27],
  ["115 A*s^0.5/mm2", "conductor-k", 115e6],
  ["80 %", "share", 0.8],
  ["0.85", "share", 0.85],
  ["1e-3 m", "length", 0.001],
  ["95 L/min ANR", "free-air-flow", 0.095 / 60],
])("%s is %s: %d in SI", (text, kind, si) => {
  const reading = read(text, kind);
  expect(reading.notes).toEqual([]);
  expect(reading.spread).toBe("exact");
  expect(Math.abs(reading.nominal / si - 1)).toBeLessThan(1e-12);
  expect([reading.low, reading.high]).toEqual([reading.nominal, reading.nominal]);
});

// ASTM B258: 211,600, 10,380 and 1,620 circular mils; mm2 as tabled.
test.each([
  ["AWG 4/0", 107.2],
  ["AWG 0000", 107.2],
  ["AWG 1/0", 53.49],
  ["AWG 10", 5.261],
  ["AWG 18", 0.8231],
  ["AWG 36", 0.01267],
])("a wire of %s has %d mm2", (text, mm2) => {
  expect((read(text, "wire-size").nominal * 1e6) / mm2).toBeCloseTo(1, 3);
});

test("every example offered in a message is accepted as it stands", () => {
  for (const kind of kindNames) for (const text of kindInfo(kind).examples) expect(read(text, kind).notes, text).toEqual([]);
});

test.each<[string, Kind, Read["spread"], number, number, number]>([
  ["0.2 to 0.4 N*m", "torque", "range", 0.3, 0.2, 0.4],
  ["0.2 N*m to 0.4 N*m", "torque", "range", 0.3, 0.2, 0.4],
  ["500 um to 1 mm", "length", "range", 0.00075, 0.0005, 0.001],
  ["48 N/um +/- 10 %", "stiffness", "relative", 48e6, 43.2e6, 52.8e6],
  ["5 mm +/- 0.1 mm", "length", "plus-minus", 0.005, 0.0049, 0.0051],
  ["5 +/- 0.1 mm", "length", "plus-minus", 0.005, 0.0049, 0.0051],
  ["17 +/- 1 um/(m*K)", "expansion", "plus-minus", 17e-6, 16e-6, 18e-6],
  ["8 to 30 degC", "temperature", "range", 292.15, 281.15, 303.15],
  ["20 degC +/- 2 K", "temperature", "plus-minus", 293.15, 291.15, 295.15],
  ["68 degF +/- 9 degF", "temperature", "plus-minus", 293.15, 288.15, 298.15],
  ["5 bar abs +/- 0.1 bar", "gauge-pressure", "plus-minus", 398675, 388675, 408675],
  ["0.85 to 0.92", "share", "range", 0.885, 0.85, 0.92],
  ["0.9 +/- 10 %", "share", "relative", 0.9, 0.81, 0.99],
  ["0 to 10 %", "share", "range", 0.05, 0, 0.1],
  ["4 +/- 0.5", "ratio", "plus-minus", 4, 3.5, 4.5],
  ["300 to 450", "count", "range", 375, 300, 450],
  ["100 L/min ANR +/- 5 %", "free-air-flow", "relative", 0.1 / 60, 0.095 / 60, 0.105 / 60],
  ["AWG 10 to AWG 8", "wire-size", "range", 6.8134e-6, 5.2612e-6, 8.3656e-6],
  ["5988 to 6000 um", "length", "range", 0.005994, 0.005988, 0.006],
])("%s lies between its ends", (text, kind, spread, nominal, low, high) => {
  const reading = read(text, kind);
  expect(reading.notes).toEqual([]);
  expect(reading.spread).toBe(spread);
  expect([reading.nominal / nominal, reading.high / high].map((x) => Number(x.toFixed(4)))).toEqual([1, 1]);
  expect(low === 0 ? reading.low + 1 : reading.low / low).toBeCloseTo(1, 4);
});

test("Cv and Kv of a label become a band of C, because no exact factor exists", () => {
  const cv = read("Cv 0.35", "flow-coefficient");
  expect([cv.low, cv.nominal, cv.high].map((c) => Number((c * 1e8).toFixed(3)))).toEqual([1.155, 1.4, 1.505]); // 3.3, 4.0, 4.3 times 0.35
  expect(cv.spread).toBe("range");
  const kv = read("Kv 0.865", "flow-coefficient");
  expect(kv.nominal).toBeCloseTo(read("Cv 1", "flow-coefficient").nominal, 18);
  expect(read("bore 7 mm", "flow-coefficient").low * 1e8).toBeCloseTo(4.9, 10); // 0.10 * 7^2
  const wider = read("Cv 0.35 +/- 10 %", "flow-coefficient");
  expect(wider.low).toBeLessThan(cv.low);
  expect(wider.high).toBeGreaterThan(cv.high);
});

test("in a gauge field bar and psi are gauge, and the reading says so", () => {
  expect(read("7.6 bar", "gauge-pressure").readAs).toBe("7.6 bar gauge");
  expect(read("2 to 3 bar", "gauge-pressure").readAs).toBe("2 to 3 bar gauge");
  expect(read("14.695948775514 psia", "gauge-pressure").nominal).toBeCloseTo(0, 3);
  expect(read("1 bar abs", "gauge-pressure", { ambient: 95e3 }).nominal).toBeCloseTo(5e3, 9);
  expect(read("5 bar abs", "gauge-pressure").readAs).toContain("101.3 kPa ambient");
});

test("in an absolute field a pressure without base is refused", () => {
  expect(issues("5 bar", "absolute-pressure")[0]).toMatchObject({ code: "base-missing", at: 2, length: 3 });
  expect(read("0 bar gauge", "absolute-pressure").nominal).toBe(101325);
  expect(read("14.7 psia", "absolute-pressure").nominal).toBeCloseTo(101353, 0);
});

test("a difference of pressure has no base", () => {
  expect(issues("5 bar abs", "pressure-difference")[0]?.code).toBe("unit-mismatch");
});

test("a label that says 7 cfm leaves open which air: both readings are given", () => {
  // 240 m up, 22 degC: 7 * 28.3168 L/min * 0.9847 * 293.15/295.15 = 193.9 L/min; at 90 psi (7.30 times the ambient) 1416 L/min
  const site = { ambient: 98470, intake: 295.15, delivery: 90 * 6894.757293168361 };
  const reading = read("7 cfm", "free-air-flow", site);
  expect(reading.notes.map((n) => n.code)).toEqual(["air-basis-missing"]);
  expect(reading.nominal * 60e3).toBeCloseTo(193.9, 1);
  expect((reading.air?.ifCompressed?.nominal ?? 0) * 60e3).toBeCloseTo(1415.5, 0);
  expect((reading.air?.typed.nominal ?? 0) * 60e3).toBeCloseTo(198.2, 1);
  expect(read("7 cfm", "free-air-flow").air?.ifCompressed).toBeUndefined();
});

test("with the basis said there is nothing to ask", () => {
  const site = { ambient: 98470, intake: 295.15, delivery: 90 * 6894.757293168361 };
  expect(read("7 cfm inlet", "free-air-flow", site)).toMatchObject({ notes: [], air: { basis: "inlet" } });
  expect(read("7 cfm compressed", "free-air-flow", site).nominal).toBeCloseTo(
    read("7 cfm", "free-air-flow", site).air?.ifCompressed?.nominal ?? 0,
    12,
  );
  expect(read("100 L/min normal", "free-air-flow").nominal * 60e3).toBeCloseTo(108.74, 2); // 1.01325 * 293.15/273.15
  expect(issues("7 cfm compressed", "free-air-flow")[0]?.code).toBe("base-missing");
  expect(issues("7 cfm inlet", "flow")[0]?.code).toBe("unit-mismatch");
});

test("the tolerance of inlet air is inlet air too", () => {
  const reading = read("100 +/- 10 L/min inlet", "free-air-flow", { ambient: 90e3, intake: 293.15 });
  expect([reading.low, reading.nominal, reading.high].map((q) => Number((q * 60e3).toFixed(6)))).toEqual([81, 90, 99]);
});

// What model files get wrong: text, kind, code, stretch, and what is offered.
test.each<[string, Kind, Issue["code"], number, number, string]>([
  ["0,4 mm", "length", "decimal-comma", 0, 3, "0.4 mm"],
  ["1.234,5 mm", "length", "decimal-comma", 0, 7, "1234.5 mm"],
  ["1 000 mm", "length", "thousands-sign", 0, 5, "1000 mm"],
  ["1'000'000 mm", "length", "thousands-sign", 0, 9, "1000000 mm"],
  ["12,500,000 mm", "length", "thousands-sign", 0, 10, "12500000 mm"],
  ["5OO mm/min", "speed", "letter-in-number", 0, 3, "500 mm/min"],
  ["l00 mm", "length", "letter-in-number", 0, 3, "100 mm"],
  ["6.000 to 5.988 mm", "length", "range-backwards", 0, 17, "5.988 to 6.000 mm"],
  ["30 mm to 2 cm", "length", "range-backwards", 0, 13, "2 cm to 30 mm"],
  ["85kg +- 15%", "mass", "quantity", 0, 11, "85 kg +/- 15 %"],
  ["5 \u00b1 0.1 mm", "length", "quantity", 0, 10, "5 +/- 0.1 mm"],
  ["5-10 mm", "length", "quantity", 0, 7, "5 to 10 mm"],
  ["0.2\u20130.4 N*m", "torque", "quantity", 0, 11, "0.2 to 0.4 N*m"],
  ["1 1/2 in", "length", "quantity", 0, 8, "1-1/2 in"],
  ['3/8"', "length", "quantity", 0, 4, "3/8 in"],
  ["18 AWG", "wire-size", "quantity", 0, 6, "AWG 18"],
  ["5 oz-in", "torque", "quantity", 0, 7, "5 oz*in"],
  ["2.4 Nm", "torque", "quantity", 0, 6, "2.4 N*m"],
  ["24 VDC", "voltage", "quantity", 0, 6, "24 V"],
  ["80%", "share", "quantity", 0, 3, "80 %"],
  ["80 % +/- 5 %", "share", "quantity", 0, 12, "75 to 85 %"],
  ["5 mm +/- 0.1", "length", "quantity", 0, 12, "5 mm +/- 0.1 mm"],
  ["  5mm ", "length", "quantity", 2, 3, "5 mm"],
])("%j, %s: %s, and the way out is offered", (text, kind, code, at, length, rewrite) => {
  const [first, ...rest] = issues(text, kind);
  expect(rest).toEqual([]);
  expect(first).toMatchObject({ code, at, length, rewrite });
  expect(read(rewrite, kind).notes).toEqual([]);
});

test("1,500 is fifteen hundred or one and a half: both are named and none is put in", () => {
  const [first] = issues("1,500 mm", "length");
  expect(first?.code).toBe("thousands-sign");
  expect(first?.says).toMatch(/1500 mm.*1\.500 mm/);
  expect(first?.rewrite).toBeUndefined();
});

test.each<[string, Kind, Issue["code"], number, number]>([
  ["5", "speed", "unit-missing", 0, 1],
  ["2.6", "inertia", "unit-missing", 0, 3],
  ["85", "share", "unit-missing", 0, 2],
  ["5 +/- 10 %", "length", "unit-missing", 0, 1],
  ["110 degC", "gauge-pressure", "unit-mismatch", 0, 8],
  ["2.4 J", "torque", "unit-mismatch", 0, 5],
  ["2.4 N*m", "energy", "unit-mismatch", 0, 7],
  ["5 kVA", "power", "unit-mismatch", 0, 5],
  ["60 Hz", "rotation", "unit-mismatch", 0, 5],
  ["AWG 18", "length", "unit-mismatch", 0, 6],
  ["Cv 0.3", "length", "unit-mismatch", 0, 6],
  ["20 degC +/- 10 %", "temperature", "unit-mismatch", 12, 4],
  ["5 mm to 3 kg", "length", "unit-mismatch", 8, 4],
  ["5 MM", "length", "unit-unknown", 2, 2],
  ["5 N*mn", "torque", "unit-unknown", 2, 4],
  ["5 scfm", "free-air-flow", "unit-unknown", 2, 4],
  ["5 __proto__", "length", "unit-unknown", 2, 9],
  ["5 constructor", "length", "unit-unknown", 2, 11],
  ["230/460 V", "voltage", "pair-here", 0, 7],
  ["230/460 mm", "length", "pair-here", 0, 7],
  ["-5 mm", "length", "number-range", 0, 5],
  ["5 mm +/- 6 mm", "length", "number-range", 0, 13],
  ["5 mm +/- -1 mm", "length", "number-range", 9, 5],
  ["-300 degC", "temperature", "number-range", 0, 9],
  ["-20 psi", "gauge-pressure", "number-range", 0, 7],
  ["-0.1 bar abs", "gauge-pressure", "number-range", 0, 12],
  ["3.5", "count", "number-range", 0, 3],
  ["", "length", "number-bad", 0, 0],
  ["NaN mm", "length", "number-bad", 0, 3],
  [".inf mm", "length", "number-bad", 0, 4],
  ["Infinity", "ratio", "number-bad", 0, 8],
  ["0x10 mm", "length", "number-bad", 0, 4],
  ["1e400 mm", "length", "number-bad", 0, 5],
  ["1e-400 mm", "length", "number-bad", 0, 6],
  ["1e308 kWh", "energy", "number-bad", 0, 9],
  ["1.2.3 mm", "length", "number-bad", 0, 8],
  ["1/0 in", "length", "number-bad", 0, 3],
  ["about 5 mm", "length", "number-bad", 0, 10],
  ["5 to 6 to 7 mm", "length", "unit-unknown", 7, 7],
  ["5 mm to", "length", "unit-unknown", 2, 5],
  ["4 to 5 mm +/- 1 mm", "length", "number-bad", 0, 18],
  ["AWG", "wire-size", "number-bad", 3, 0],
])("%j is no %s: %s", (text, kind, code, at, length) => {
  const reading = readQuantity(text, kind);
  expect(reading.ok).toBe(false);
  expect(issues(text, kind)[0]).toMatchObject({ code, at, length });
});

test("a page of junk is refused for its length alone", () => {
  for (const junk of ["x".repeat(100_000), `5 ${"(".repeat(100_000)}`, " ".repeat(100_000), "1/".repeat(50_000), "5-".repeat(50_000)]) {
    expect(issues(junk, "length")).toMatchObject([{ code: "number-bad", at: 0, length: junk.length }]);
    expect(readPair(junk, "voltage").ok).toBe(false);
  }
});

test("a mismatch says what was given, what is wanted, and how that looks", () => {
  const [first] = issues("110 degC", "gauge-pressure", { key: "cut-in" });
  expect(first?.says).toContain("cut-in");
  expect(first?.says).toContain("a temperature");
  expect(first?.says).toContain("110 psi");
  expect(issues("77 F", "temperature")[0]?.nearest).toBe("degF");
  expect(issues("5 MM", "length")[0]?.nearest).toBe("mm");
});

test("an inertia without unit is told the four units and how far two of them lie apart", () => {
  const [first] = issues("2.6", "inertia");
  for (const word of ["kg*cm2", "kg*m2", "lb*in2", "lb*in*s2", "386"]) expect(first?.says).toContain(word);
  expect(read("1 lb*in*s2", "inertia").nominal / read("1 lb*in2", "inertia").nominal).toBeCloseTo(386.09, 2); // g_n in in/s2
});

test("both ends of a range are found wrong at once", () => {
  expect(issues("0,2 to 0,4 N*m", "torque").map((i) => [i.code, i.at])).toEqual([
    ["decimal-comma", 0],
    ["decimal-comma", 7],
  ]);
  expect(issues("6 to 12", "mass").map((i) => i.code)).toEqual(["unit-missing", "unit-missing"]);
});

test("money of another country is refused, since nothing is converted", () => {
  expect(issues("3 EUR", "money", { currency: "USD" })[0]?.code).toBe("unit-mismatch");
  expect(read("3 EUR/m", "money-per-length", { currency: "EUR" }).nominal).toBe(3);
});

test("the field settles what the unit leaves open, and the reading says so", () => {
  expect(read("9 lb*ft", "torque").readAs).toBe("9 lbf*ft");
  expect(read("2 to 3 lb*in*s2", "inertia").readAs).toBe("2 to 3 lbf*in*s2");
  expect(read("5 lb", "mass").readAs).toBe("5 lb");
  expect(read("9 degF", "temperature-difference").readAs).toBe("9 degF difference");
  expect(read("AWG 10", "wire-size").readAs).toBe("AWG 10 = 5.261 mm2");
});

test("a plate may carry two values for two connections, in its own order", () => {
  const values = (text: string, kind: Kind): number[] => {
    const reading = readPair(text, kind);
    return reading.ok ? reading.values.map((v) => v.nominal) : [];
  };
  expect(values("230/460 V", "voltage")).toEqual([230, 460]);
  expect(values("20.4/10.2 A", "current")).toEqual([20.4, 10.2]);
  expect(values(" 9.0 / 4.5 A", "current")).toEqual([9, 4.5]);
  expect(values("240 V", "voltage")).toEqual([240]);
  expect(values("240 V +/- 5 %", "voltage")).toEqual([240]);
  expect(values("1/2 hp", "power").map(Math.round)).toEqual([373]);
  expect(values("5.5/7.5 kW", "power")).toEqual([5500, 7500]);
});

test.each<[string, Kind, Issue["code"]]>([
  ["208-230/460 V", "voltage", "number-bad"],
  ["230/460", "voltage", "pair-here"],
  ["230/460 mm", "voltage", "unit-mismatch"],
])("%j is no plate %s: %s", (text, kind, code) => {
  const reading = readPair(text, kind);
  expect(reading.ok ? undefined : reading.issues[0].code).toBe(code);
});

const scraps = [
  "5",
  "0.1",
  "1/2",
  "-3",
  "1e5",
  ",",
  " ",
  "to",
  "+/-",
  "\u00b1",
  "mm",
  "in",
  "bar abs",
  "degC",
  "%",
  "AWG",
  "Cv",
  "kg*m2",
  "(",
  ")",
  "/",
  "*",
  "O",
  "l",
  "cfm",
  "inlet",
];

test("whatever is typed, the answer is a finite value between its ends or an issue inside the text", () => {
  const text = fc.oneof(
    fc.string({ unit: "binary", maxLength: 40 }),
    fc.array(fc.constantFrom(...scraps), { maxLength: 8 }).map((all) => all.join(" ")),
    fc.array(fc.constantFrom(...scraps), { maxLength: 8 }).map((all) => all.join("")),
  );
  fc.assert(
    fc.property(text, fc.constantFrom(...kindNames), (typed, kind) => {
      const reading = readQuantity(typed, kind, { delivery: 6e5 });
      const found = reading.ok ? reading.notes : reading.issues;
      for (const { at, length } of found) expect(at >= 0 && length >= 0 && at + length <= typed.length, typed).toBe(true);
      if (reading.ok) {
        expect([reading.low, reading.nominal, reading.high].every(Number.isFinite)).toBe(true);
        expect(reading.low <= reading.nominal && reading.nominal <= reading.high).toBe(true);
      }
      readPair(typed, kind);
    }),
    { numRuns: 5000 },
  );
});

test("a rewrite that is offered reads as the same value, with nothing left to say about its spelling", () => {
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom(...scraps), { maxLength: 6 }).map((all) => all.join("")),
      fc.constantFrom<Kind>("length", "share", "gauge-pressure", "mass"),
      (typed, kind) => {
        const reading = readQuantity(typed, kind);
        const rewrite = reading.ok ? reading.notes.find((n) => n.code === "quantity")?.rewrite : undefined;
        if (!reading.ok || rewrite === undefined) return;
        const again = read(rewrite, kind);
        expect(again.notes).toEqual([]);
        expect(again.low).toBeCloseTo(reading.low, 9);
        expect(again.high).toBeCloseTo(reading.high, 9);
      },
    ),
    { numRuns: 2000 },
  );
});
