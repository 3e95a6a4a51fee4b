// The user's own test cuts: the two Kienzle numbers of this tool in this material.
import { figure, input, listInput, value } from "../../kernel/figure.ts";
import { spindle } from "../ground/index.ts";
import { type KienzleFit, kienzleFit, kienzleInterval, testForce } from "./materials.ts";

const how = "Step cut-test: one tool, one depth, one surface speed, three feeds or more.";

export const testFeed = listInput({
  key: "test-cuts.feed",
  per: spindle,
  symbol: "f",
  unit: "m",
  says: "feeds of the test cuts",
  measure: how,
});
export const testPower = listInput({
  key: "test-cuts.power",
  per: spindle,
  symbol: "P_cut",
  unit: "W",
  says: "drive power in each test cut",
  measure: "The drive's display or a log, steady part of the cut.",
});
export const testIdle = input({
  key: "test-cuts.idle",
  per: spindle,
  symbol: "P_idle",
  unit: "W",
  says: "drive power at that speed without a cut",
  measure: "The same display, tool clear of the work.",
});
export const testDepth = input({
  key: "test-cuts.depth",
  per: spindle,
  symbol: "a_p",
  unit: "m",
  says: "depth of the test cuts",
  measure: how,
});
export const testSpeed = input({
  key: "test-cuts.surface-speed",
  per: spindle,
  symbol: "v_c",
  unit: "m/s",
  kind: "cutting-speed",
  says: "surface speed of the test cuts",
  measure: how,
});
export const testAngle = input({
  key: "test-cuts.edge-angle",
  per: spindle,
  symbol: "kappa",
  unit: "rad",
  says: "lead angle of the test tool",
  typical: { value: "90 to 95 deg", source: "usual for turning to a shoulder" },
  measure: "The holder's drawing.",
});
export const testEfficiency = input({
  key: "test-cuts.efficiency",
  per: spindle,
  symbol: "eta",
  unit: "1",
  kind: "share",
  says: "share of the power added that reaches the edge",
  typical: { value: "72 to 82 %", source: "drive 0.97, motor 0.80 to 0.88, belt 0.95, practice, unchecked", unchecked: true },
  measure: "From motor, belt and drive efficiency at that load.",
});

/** Fewest cuts a fit can be doubted with. */
const FEWEST = 3;

export const kienzleLine = value({
  id: "spindle.cut.kienzle-line",
  per: spindle,
  says: "specific force against chip thickness from the test cuts",
  needs: { f: testFeed, P: testPower, P_0: testIdle, a_p: testDepth, v_c: testSpeed, kappa: testAngle, eta: testEfficiency },
  of: (x): KienzleFit | null => {
    if (x.f.length !== x.P.length || x.f.length < FEWEST) return null;
    return kienzleFit(
      x.f.map((f, k) => ({
        h: f * Math.sin(x.kappa),
        b: x.a_p / Math.sin(x.kappa),
        F_c: testForce({ P_cut: x.P[k] ?? 0, P_idle: x.P_0, eta: x.eta, v_c: x.v_c }),
      })),
    );
  },
});
const fits = (x: { fit: KienzleFit | null }): string | null =>
  x.fit === null ? "three cuts or more at different feeds are wanted, each with more power than idle" : null;
const METHOD =
  "ln(F_c/(b h)) = ln kc11 - m_c ln(h/1 mm), least squares; F_c = eta (P_cut - P_idle)/v_c, h = f sin kappa, b = a_p/sin kappa";
const KIENZLE = "Kienzle's law as a straight line in logarithms; any textbook of regression";

export const kienzleForce = figure({
  id: "spindle.cut.kienzle-force",
  per: spindle,
  symbol: "kc11",
  unit: "Pa",
  kind: "stress",
  says: "specific cutting force at a chip of 1 mm by 1 mm, from the test cuts",
  method: METHOD,
  source: KIENZLE,
  needs: { fit: kienzleLine },
  of: (x) => x.fit?.kc11 ?? Number.NaN,
  valid: fits,
});
export const kienzleExponent = figure({
  id: "spindle.cut.kienzle-exponent",
  per: spindle,
  symbol: "m_c",
  unit: "1",
  kind: "ratio",
  says: "its fall with chip thickness, from the test cuts",
  method: METHOD,
  source: KIENZLE,
  needs: { fit: kienzleLine },
  of: (x) => x.fit?.m_c ?? Number.NaN,
  valid: fits,
});
/** Student's quantile at 95 %, one side, for 1, 2, 3 ... degrees of freedom; beyond the list that of the normal law. Any textbook of statistics. */
const STUDENT = [6.314, 2.92, 2.353, 2.132, 2.015, 1.943, 1.895, 1.86, 1.833, 1.812] as const;
const NORMAL = 1.645;
const interval = (fit: KienzleFit) => kienzleInterval(fit, STUDENT[fit.degrees - 1] ?? NORMAL);
const END = `${METHOD}; value and standard error, times Student's quantile for the cuts less two`;
const end = (id: string, symbol: string, says: string, of: (fit: KienzleFit) => number) =>
  ({
    id: `spindle.cut.${id}`,
    per: spindle,
    symbol,
    says,
    method: END,
    source: KIENZLE,
    needs: { fit: kienzleLine },
    of: (x: { fit: KienzleFit | null }) => (x.fit === null ? Number.NaN : of(x.fit)),
    valid: fits,
  }) as const;

export const kienzleForceLow = figure({
  ...end("kienzle-force-low", "kc11_lo", "lower end of that specific force, 90 % interval", (f) => interval(f).kc11[0]),
  unit: "Pa",
  kind: "stress",
});
export const kienzleForceHigh = figure({
  ...end("kienzle-force-high", "kc11_hi", "upper end of that specific force, 90 % interval", (f) => interval(f).kc11[1]),
  unit: "Pa",
  kind: "stress",
});
export const kienzleExponentLow = figure({
  ...end("kienzle-exponent-low", "mc_lo", "lower end of that fall, 90 % interval", (f) => interval(f).m_c[0]),
  unit: "1",
  kind: "ratio",
});
export const kienzleExponentHigh = figure({
  ...end("kienzle-exponent-high", "mc_hi", "upper end of that fall, 90 % interval", (f) => interval(f).m_c[1]),
  unit: "1",
  kind: "ratio",
});
