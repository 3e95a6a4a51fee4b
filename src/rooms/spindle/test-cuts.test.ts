import { expect, test } from "vitest";
import { expectNear, refused, worked } from "./bench.test-help.ts";

/** Three cuts made up from kc11 1950 N/mm2 and m_c 0.21 on 1 mm depth at 90 m/min, 150 W idle, 75 % to the edge. */
const cuts = (() => {
  const feeds = [0.05, 0.1, 0.2];
  const power = feeds.map((f) => 150 + (1950 * f ** -0.21 * f * 1 * 1.5) / 0.75);
  return {
    f: `${feeds.join(", ")} mm`,
    P: `${power.map((p) => p.toPrecision(12)).join(", ")} W`,
    P_0: "150 W",
    a_p: "1 mm",
    v_c: "90 m/min",
    kappa: "90 deg",
    eta: "0.75",
  };
})();

test("three feeds give back the two numbers they were made of", () => {
  expectNear(worked("spindle.cut.kienzle-force", cuts), 1950e6, 1e-6);
  expectNear(worked("spindle.cut.kienzle-exponent", cuts), 0.21, 1e-6);
});

test("three cuts that scatter leave an interval of a factor, four that scatter alike a narrower one", () => {
  const [f, P] = [cuts.f.replace(" mm", ""), cuts.P.replace(" W", "").split(", ").map(Number)];
  const shaken = P.map((p, k) => p * (k === 1 ? 1.03 : 1));
  const ends = (feeds: string, powers: number[]) => {
    const given = { ...cuts, f: `${feeds} mm`, P: `${powers.join(", ")} W` };
    const [low, mid, high] = ["-low", "", "-high"].map((end) => worked(`spindle.cut.kienzle-force${end}`, given));
    return { low, mid: mid ?? Number.NaN, high, ratio: (high ?? Number.NaN) / (low ?? Number.NaN) };
  };
  const three = ends(f, shaken);
  expect(three.low).toBeLessThan(three.mid);
  expect(three.high).toBeGreaterThan(three.mid);
  expect(worked("spindle.cut.kienzle-exponent-low", cuts)).toBeLessThanOrEqual(worked("spindle.cut.kienzle-exponent-high", cuts));
  const fourth = 150 + (1950 * 0.4 ** -0.21 * 0.4 * 1.5) / 0.75;
  expect(ends(`${f}, 0.4`, [...shaken, fourth]).ratio).toBeLessThan(three.ratio);
});

test("two feeds, or a cut that takes no more than idle, are refused", () => {
  expect(refused("spindle.cut.kienzle-force", { ...cuts, f: "0.05, 0.1 mm", P: "400, 500 W" }).message).toMatch(/^three cuts or more/);
  expect(refused("spindle.cut.kienzle-force", { ...cuts, P: "140, 300, 500 W" }).message).toMatch(/^three cuts or more/);
});
