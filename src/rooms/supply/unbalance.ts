// How unequal three line voltages are, by the meter's rule and by the negative sequence that heats a motor.
import { figure } from "../../kernel/figure.ts";
import { shop } from "../../kernel/item.ts";
import { lineVoltages } from "./inputs.ts";

/** Three voltages read between the lines [V]. */
export interface LineVoltages {
  V_12: number;
  V_23: number;
  V_31: number;
}

/**
 * Largest deviation from the mean of the three line voltages.
 *
 * u [1] = max |V_i - mean| / mean; V_12, V_23, V_31 [V]. Source: NEMA MG 1, definition of voltage unbalance.
 */
export function unbalance(x: LineVoltages): number {
  const mean = (x.V_12 + x.V_23 + x.V_31) / 3;
  return Math.max(Math.abs(x.V_12 - mean), Math.abs(x.V_23 - mean), Math.abs(x.V_31 - mean)) / mean;
}

/**
 * Negative-sequence share V_2/V_1 from three magnitudes alone.
 *
 * u_2 [1] = sqrt((1 - q)/(1 + q)), q = sqrt(3 - 6 beta), beta = (sum V^4)/(sum V^2)^2; V_12, V_23, V_31 [V] between the lines.
 * Source: IEC 61000-4-30. Valid when the three close to a triangle (isTriangle), as line voltages always do; flat triangle: 1.
 */
export function negativeSequence(x: LineVoltages): number {
  const a = x.V_12 * x.V_12;
  const b = x.V_23 * x.V_23;
  const c = x.V_31 * x.V_31;
  const beta = (a * a + b * b + c * c) / (a + b + c) ** 2;
  // Rounding can carry an exactly equal or an exactly flat triangle past its end of the range 1/3 .. 1/2.
  const q = Math.sqrt(Math.min(1, Math.max(0, 3 - 6 * beta)));
  return Math.sqrt((1 - q) / (1 + q));
}

/** Whether three readings can be line voltages of one supply: none longer than the other two together. */
export function isTriangle(x: LineVoltages): boolean {
  return x.V_12 > 0 && x.V_23 > 0 && x.V_31 > 0 && 2 * Math.max(x.V_12, x.V_23, x.V_31) <= x.V_12 + x.V_23 + x.V_31;
}

const three = (V: readonly number[]): LineVoltages => ({ V_12: V[0] ?? 0, V_23: V[1] ?? 0, V_31: V[2] ?? 0 });
const isThree = (x: { V: readonly number[] }): string | null =>
  x.V.length === 3 && isTriangle(three(x.V)) ? null : "three line-to-line voltages that can belong to one supply are wanted";

export const supplyUnbalance = figure({
  id: "supply.unbalance",
  per: shop,
  symbol: "u",
  unit: "1",
  kind: "share",
  says: "largest deviation of a line voltage from their mean",
  formula: "max(abs(V - mean(V))) / mean(V)",
  source: "NEMA MG 1, definition of voltage unbalance",
  needs: { V: lineVoltages },
  of: (x) => unbalance(three(x.V)),
  valid: isThree,
});

export const supplyNegativeSequence = figure({
  id: "supply.negative-sequence",
  per: shop,
  symbol: "u_2",
  unit: "1",
  kind: "share",
  says: "negative-sequence share of the three voltages",
  formula: "sqrt((1 - sqrt(3 - 6 * sum(V^4) / sum(V^2)^2)) / (1 + sqrt(3 - 6 * sum(V^4) / sum(V^2)^2)))",
  source: "IEC 61000-4-30",
  needs: { V: lineVoltages },
  of: (x) => negativeSequence(three(x.V)),
  valid: isThree,
});

/** Points of the derating curve: unbalance, share of the plate load. */
const DERATING = [
  [0, 1],
  [0.01, 1],
  [0.02, 0.95],
  [0.03, 0.9],
  [0.04, 0.82],
  [0.05, 0.76],
] as const;
/** Above this a motor should not run. */
const DO_NOT_RUN = 0.05;

/**
 * Share of the plate load a motor may carry on unequal voltages, by the curve of the standard.
 *
 * k [1] from u [1]; straight lines between 1 % 1.0, 2 % 0.95, 3 % 0.90, 4 % 0.82, 5 % 0.76; 0 above 5 %. Source: NEMA MG 1 figure
 * (points and the limit seen in secondary sources).
 */
export function unbalanceDerating(x: { u: number }): number {
  if (x.u > DO_NOT_RUN) return 0;
  let [before, after]: readonly (readonly [number, number])[] = DERATING.slice(-2);
  for (let i = 1; i < DERATING.length; i += 1) {
    const [a, b] = [DERATING[i - 1], DERATING[i]];
    if (a && b && x.u <= b[0]) {
      [before, after] = [a, b];
      break;
    }
  }
  if (!before || !after) return 1;
  return before[1] + ((x.u - before[0]) * (after[1] - before[1])) / (after[0] - before[0]);
}

export const supplyUnbalanceDerating = figure({
  id: "supply.unbalance-derating",
  per: shop,
  symbol: "k_u",
  unit: "1",
  kind: "share",
  says: "share of its plate a motor may carry on these voltages, by the usual curve",
  method: "straight lines between 1 % 1.0, 2 % 0.95, 3 % 0.90, 4 % 0.82, 5 % 0.76; above 5 % nothing",
  source: "NEMA MG 1, derating figure (points seen in secondary sources); the motor's own circuit says more",
  needs: { u: supplyUnbalance },
  of: unbalanceDerating,
  signs: { u: "-" },
});
