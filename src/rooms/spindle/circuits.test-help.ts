// Motors of the textbooks and of the example shop, and the closeness their digits deserve.
import { expect } from "vitest";
import type { Circuit } from "./circuit.ts";

/** Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed., examples 6.2 and 6.3: 220 V, 10 hp, 6 poles. */
export const FKU: Circuit = { R_1: 0.294, X_1: 0.503, R_2: 0.144, X_2: 0.209, X_m: 13.25, G_c: 0, f: 60, poles: 6 };
/** Chapman, Electric Machinery Fundamentals, examples 7-3 and 7-5: 460 V, 25 hp, 4 poles. */
export const CHAPMAN: Circuit = { R_1: 0.641, X_1: 1.106, R_2: 0.332, X_2: 0.464, X_m: 26.3, G_c: 0, f: 60, poles: 4 };
/** Sen, Principles of Electric Machines and Power Electronics, example 5.4: 460 V, 4 poles, 1740 rpm. */
export const SEN: Circuit = { R_1: 0.25, X_1: 0.5, R_2: 0.2, X_2: 0.5, X_m: 30, G_c: 0, f: 60, poles: 4 };
/** A 7.5 hp lathe motor, 460 V series, 4 poles, slip 0.03. */
export const LATHE: Circuit = { R_1: 0.9, X_1: 1.75, R_2: 0.75, X_2: 2.1, X_m: 52, G_c: 0, f: 60, poles: 4 };

/** Relative closeness. */
export function expectNear(found: number | null | undefined, wanted: number, share: number): void {
  expect(Math.abs((found ?? NaN) / wanted - 1), `${found ?? "nothing"} against ${wanted}`).toBeLessThan(share);
}
