import { describe, expect, test } from "vitest";
import { curveFit, linearFit } from "./fit.ts";

/** Correct decimal digits, as NIST counts them. */
const digits = (found: number | undefined, certified: number) => -Math.log10(Math.abs((found ?? NaN) / certified - 1) || 1e-16);

describe("NIST StRD Longley (J. Longley 1967), sixteen readings of seven nearly dependent unknowns", () => {
  const y = [60323, 61122, 60171, 61187, 63221, 63639, 64989, 63761, 66019, 67857, 68169, 66513, 68655, 69564, 69331, 70551];
  const columns = [
    [83.0, 88.5, 88.2, 89.5, 96.2, 98.1, 99.0, 100.0, 101.2, 104.6, 108.4, 110.8, 112.6, 114.2, 115.7, 116.9],
    [234289, 259426, 258054, 284599, 328975, 346999, 365385, 363112, 397469, 419180, 442769, 444546, 482704, 502601, 518173, 554894],
    [2356, 2325, 3682, 3351, 2099, 1932, 1870, 3578, 2904, 2822, 2936, 4681, 3813, 3931, 4806, 4007],
    [1590, 1456, 1616, 1650, 3099, 3594, 3547, 3350, 3048, 2857, 2798, 2637, 2552, 2514, 2572, 2827],
    [107608, 108632, 109773, 110929, 112075, 113270, 115094, 116219, 117388, 118734, 120445, 121950, 123366, 125368, 127852, 130081],
    Array.from({ length: 16 }, (_, k) => 1947 + k),
  ];

  test("comes out to twelve digits of the certified values", () => {
    const fit = linearFit(columns, y);
    const certified = [15.0618722713733, -0.03581917929259, -2.02022980381683, -1.03322686717359, -0.0511041056535807, 1829.15146461355];
    for (const [k, value] of certified.entries()) expect(digits(fit?.of[k], value)).toBeGreaterThan(12);
    expect(digits(fit?.constant, -3482258.63459582)).toBeGreaterThan(12);
    expect(digits(Math.sqrt((fit?.residual ?? NaN) / 9), 304.854073561965)).toBeGreaterThan(12);
  });

  test("with a column given twice, has no answer", () => {
    expect(linearFit([...columns, columns[1] ?? []], y)).toBeNull();
  });
});

test("a line through points of a line is that line, whatever the offset", () => {
  const x = [1e6, 1e6 + 1, 1e6 + 2, 1e6 + 5];
  const fit = linearFit(
    [x],
    x.map((value) => 3 * value - 7),
  );
  expect(fit?.of[0]).toBeCloseTo(3, 9);
  expect(digits(fit?.constant, -7)).toBeGreaterThan(4);
});

test("fewer readings than unknowns, and a column that never changes, have no answer", () => {
  expect(linearFit([[1, 2]], [3])).toBeNull();
  expect(linearFit([[5, 5, 5]], [1, 2, 3])).toBeNull();
  expect(
    linearFit(
      [
        [1, 2],
        [2, 1],
      ],
      [1, 2],
    ),
  ).toBeNull();
});

describe("NIST StRD Misra1a (D. Misra 1978), a saturating exponential", () => {
  const y = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78];
  const x = [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760];
  const curve = ([b_1 = NaN, b_2 = NaN]: readonly number[], i: number) => b_1 * (1 - Math.exp(-b_2 * (x[i] ?? NaN)));

  test("comes out to eight digits from either of the published starts", () => {
    for (const start of [
      [500, 1e-4],
      [250, 5e-4],
    ]) {
      const p = curveFit(curve, y, start);
      expect(digits(p?.[0], 238.94212918)).toBeGreaterThan(8);
      expect(digits(p?.[1], 5.5015643181e-4)).toBeGreaterThan(8);
    }
  });

  test("with a parameter that does nothing, has no answer", () => {
    expect(curveFit(([a = NaN]) => a, [1, 2, 3], [0, 0])).toBeNull();
  });
});
