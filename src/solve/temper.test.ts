import { describe, expect, test } from "vitest";
import { uniforms } from "./random.ts";
import { type CubePoint, effectiveDraws, resampled, tempered, weightsOf } from "./temper.ts";

/** Tables of the normal distribution: 5 % lie below -1.6449 standard deviations. */
const EDGE = 1.6449;

describe("a reading a hundred times sharper than what was believed", () => {
  const sigma = 0.01;
  /** The slanted ridge x_0 + x_1/10 = 0.55 among five numbers: along it nothing is known, across it sigma. */
  const across = (p: CubePoint) => ((p[0] ?? NaN) + 0.1 * (p[1] ?? NaN) - 0.55) / sigma;
  const logLikelihood = (p: CubePoint) => -0.5 * across(p) ** 2;
  const runs = Array.from({ length: 40 }, (_, run) => {
    const u = uniforms(`ridge ${run}`);
    const points = Array.from({ length: 1000 }, () => Array.from({ length: 5 }, u));
    return tempered({ points, logs: points.map(logLikelihood) }, logLikelihood, 500, u).points;
  }).flat();

  test("leaves samples with its own spread and no more", () => {
    const z = runs.map(across);
    const variance = z.reduce((sum, x) => sum + x * x, 0) / z.length;
    // 20,000 samples worth at least 4,000 independent ones: standard deviation of the variance 2.2 %, of a tail 0.35 %.
    expect(Math.abs(variance - 1)).toBeLessThan(0.07);
    expect(Math.abs(z.filter((x) => x < -EDGE).length / z.length - 0.05)).toBeLessThan(0.011);
    expect(Math.abs(z.filter((x) => x > EDGE).length / z.length - 0.05)).toBeLessThan(0.011);
  });

  test("says nothing about what it did not see", () => {
    for (const k of [1, 2, 4]) {
      const mean = runs.reduce((sum, p) => sum + (p[k] ?? NaN), 0) / runs.length;
      const below = runs.filter((p) => (p[k] ?? NaN) < 0.1).length / runs.length;
      expect(Math.abs(mean - 0.5)).toBeLessThan(0.02);
      expect(Math.abs(below - 0.1)).toBeLessThan(0.02);
    }
  });
});

test("impossible points are never kept", () => {
  const u = uniforms("corner");
  const logLikelihood = (p: CubePoint) => ((p[0] ?? 1) + (p[1] ?? 1) < 0.2 ? -1000 * (p[0] ?? 1) : -Infinity);
  const points = Array.from({ length: 2000 }, () => Array.from({ length: 2 }, u));
  const found = tempered({ points, logs: points.map(logLikelihood) }, logLikelihood, 300, u);
  expect(found.points.every((p) => (p[0] ?? 1) + (p[1] ?? 1) < 0.2)).toBe(true);
  expect(found.points.reduce((sum, p) => sum + (p[0] ?? 0), 0) / 300).toBeCloseTo(1e-3, 3);
});

describe("weights", () => {
  test("of equal likelihood are worth all draws, of one far above the rest a single draw", () => {
    expect(effectiveDraws(weightsOf([-3, -3, -3, -3], 1))).toBeCloseTo(4, 12);
    expect(effectiveDraws(weightsOf([0, -900, -900], 1))).toBeCloseTo(1, 12);
    expect(effectiveDraws(weightsOf([-Infinity, -Infinity], 1))).toBe(0);
  });

  test("decide to within one how often a draw is taken", () => {
    const weights = Float64Array.of(1, 2, 3, 4, 0);
    const picked = resampled(weights, 101, uniforms("wheel"));
    expect(picked).toHaveLength(101);
    for (const [j, w] of weights.entries()) expect(Math.abs(picked.filter((x) => x === j).length - (101 * w) / 10)).toBeLessThan(1);
  });
});
