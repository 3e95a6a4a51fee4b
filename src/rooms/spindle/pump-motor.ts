// A pump on another frequency: what it asks of its motor. The flux its winding keeps: fluxShare in voltage-laws.ts.

/**
 * Factors of flow, head and power of a centrifugal pump when its frequency changes.
 *
 * r, r^2, r^3 with r [1] = f_2/f_1; f_1, f_2 [Hz]. Source: affinity laws, Karassik, Pump Handbook. Valid without static lift and at equal slip.
 */
export function affinity(x: { f_1: number; f_2: number }): { flow: number; head: number; power: number } {
  const r = x.f_2 / x.f_1;
  return { flow: r, head: r * r, power: r * r * r };
}
