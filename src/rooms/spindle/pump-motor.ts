// A pump motor on another frequency: what the pump asks and what flux the winding keeps.

/**
 * Factors of flow, head and power of a centrifugal pump when its frequency changes.
 *
 * r, r^2, r^3 with r [1] = f_2/f_1; f_1, f_2 [Hz]. Source: affinity laws, Karassik, Pump Handbook. Valid without static lift and at equal slip.
 */
export function affinity(x: { f_1: number; f_2: number }): { flow: number; head: number; power: number } {
  const r = x.f_2 / x.f_1;
  return { flow: r, head: r * r, power: r * r * r };
}

/**
 * Flux of a winding on another line, as a share of its own.
 *
 * phi [1] = (V_2/f_2)/(V_1/f_1); V_1 [V], f_1 [Hz] of its plate as connected; V_2 [V], f_2 [Hz] of the line. Source: induced voltage ~ f phi.
 * Leaves out the drop in the winding, which is not small below 300 W: there use the circuit.
 */
export function fluxShare(x: { V_1: number; f_1: number; V_2: number; f_2: number }): number {
  return x.V_2 / x.f_2 / (x.V_1 / x.f_1);
}
