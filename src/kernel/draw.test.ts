import { expect, test } from "vitest";
import { bandAlong, draw } from "./draw.ts";
import { evaluate } from "./evaluate.ts";
import { figure, input, perhaps } from "./figure.ts";
import { scope } from "./item.ts";
import { type Case, picture, type Sampled } from "./room.ts";
import { benchOf, drum, fullSpeed, graphOf, lift, radius, speed, voltage } from "./toy-house.test-help.ts";

const frame = { width: 400, units: "metric", prefix: "p" } as const;
const evaluated = (more = {}) => evaluate(graphOf(more), "full");

/** A picture that hands its cases out. */
function caught(needs: Parameters<typeof picture>[0]["needs"], per = drum) {
  const got: { cases: readonly Case<Record<string, unknown>>[] } = { cases: [] };
  const p = picture({
    id: "toy.picture",
    per,
    title: "toy",
    needs,
    draws: (cases) => {
      got.cases = cases as readonly Case<Record<string, unknown>>[];
      return { svg: "<svg/>" };
    },
  });
  return { p, got };
}
const atDrum = (p: Parameters<typeof draw>[0], ...evaluations: ReturnType<typeof evaluated>[]) => {
  const [first, ...more] = evaluations.map((evaluation, k) => ({ name: `case ${k}`, evaluation }));
  if (!first) throw new Error("no case");
  return draw(p, "winch/drum", [first, ...more], frame);
};

test("a picture receives its needs sample by sample, the nominal case first", () => {
  const { p, got } = caught({ r: radius, v: fullSpeed, V: voltage });
  expect(atDrum(p, evaluated({ drum: { radius: "100 mm +/- 10 %" } }))).toEqual({ svg: "<svg/>" });
  const [one] = got.cases;
  expect(one?.samples.count).toBe(1000);
  expect(one?.samples.at(0)["r"]).toBeCloseTo(0.1, 12);
  for (const k of [1, 500, 999]) {
    const x = one?.samples.at(k) ?? {};
    expect(x["v"]).toBeCloseTo((Number(x["V"]) * Number(x["r"])) / 100, 12);
  }
});

test("what may be missing is null, what must be there is said in a sentence", () => {
  const { p, got } = caught({ r: radius, n: perhaps(speed) });
  atDrum(p, evaluated({ drum: { radius: "100 mm" } }));
  expect(got.cases[0]?.samples.at(0)["n"]).toBeNull();
  const none = caught({ n: speed });
  expect(atDrum(none.p, evaluated())).toHaveProperty("empty");
});

test("an option that lacks what the picture needs is left out, the rest is drawn", () => {
  const { p, got } = caught({ r: radius });
  atDrum(p, evaluated({ drum: { radius: "100 mm" } }), evaluated({ drum: "none" }), evaluated({ drum: { radius: "200 mm" } }));
  expect(got.cases.map((c) => c.name)).toEqual(["case 0", "case 2"]);
});

test("samples without a value are left out, and a nominal without one leaves nothing to draw", () => {
  const bobbin = scope({ name: "bobbin", says: "a bobbin", mounts: ["bobbin"] });
  const width = input({ key: "width", per: bobbin, says: "width", unit: "m", measure: "rule" });
  const room = figure({
    id: "toy.bobbin.room",
    per: bobbin,
    symbol: "w",
    unit: "m",
    says: "room for rope",
    formula: "b - 0.1",
    source: "toy",
    needs: { b: width },
    of: (x) => x.b - 0.1,
    valid: (x) => (x.b > 0.1 ? null : "too narrow for any rope"),
  });
  const drawnOf = (text: string) => {
    const { p, got } = caught({ w: room }, bobbin);
    const evaluation = benchOf({ bobbin, width, room }, { bobbin: { width: text } });
    return { got, said: draw(p, "winch/bobbin", [{ name: "as found", evaluation }], frame) };
  };
  const { got } = drawnOf("80 to 140 mm");
  const count = got.cases[0]?.samples.count ?? 0;
  expect(count / 1000).toBeCloseTo(2 / 3, 1);
  for (let k = 0; k < count; k += 1) expect(got.cases[0]?.samples.at(k)["w"]).toBeGreaterThan(0);
  expect(drawnOf("80 mm").said).toEqual({ empty: "too narrow for any rope" });
});

test("a check is asked by its id and the address of the thing", () => {
  const { p, got } = caught({ r: radius });
  atDrum(p, evaluated({ drum: { radius: "100 mm" } }));
  expect(["holds", "tight", "fails", "open"]).toContain(got.cases[0]?.verdict("early.not-drawn-down", "shop"));
  expect(got.cases[0]?.verdict("early.not-drawn-down", "winch/drum")).toBeNull();
});

test("a thing that is not there, or is of another kind, is said", () => {
  const { p } = caught({ r: radius });
  const one = { name: "as found", evaluation: evaluated() };
  expect(draw(p, "winch/nowhere", [one], frame)).toEqual({ empty: "there is no drum here" });
  expect(draw(caught({ v: speed }, lift).p, "winch/drum", [one], frame)).toEqual({ empty: "there is no lift here" });
});

test("the band along x is that of the first 64 samples, the line that of the nominal one", () => {
  const samples: Sampled<number> = { count: 1000, at: (k) => (k < 64 ? k : 1e6) };
  const { nominal, low, high } = bandAlong(samples, [1, 2], (sample, x) => sample * x);
  expect(nominal).toEqual([0, 0]);
  // 63 samples 1 to 63 beside the nominal: 5 % of 64 places is the 3.2nd, 95 % the 60.8th.
  expect(low[0]).toBeCloseTo(3.2, 9);
  expect(high[0]).toBeCloseTo(60.8, 9);
  expect(high[1]).toBeCloseTo(2 * 60.8, 9);
});
