// What a drive built for three phases may still give when one phase feeds it.
import { type Bus, type BusState, busState } from "./bus.ts";
import { root } from "../../solve/root.ts";

/** Series resistance [ohm] and inductance [H] of each line of the stiff supply on which a drive's own rating is simulated; assumption. */
export const STIFF_LINE = { R: 0.15, L: 0.15e-3 } as const;

/** Share of the rating to which the search closes [1]. */
const CLOSE = 1e-4;

/**
 * Line and capacitor current of a drive on three stiff phases at its rated bus power: what it was built to stand.
 *
 * V [V rms], f [Hz] of its plate; P [W] rated bus power; C [F]. Source: busState. A rated input current on the plate goes before this one.
 */
export function ratedBusState(x: { V: number; f: number; P: number; C: number }): BusState {
  return busState({ ...x, ...STIFF_LINE, phases: 3 });
}

/**
 * Share of its rated bus power that a three-phase drive may carry on one phase.
 *
 * s [1] = largest share at which neither I_line nor I_C of busState, one phase, power s P, exceeds its limit; V [V rms]; f [Hz]; P [W] rated bus power;
 * C [F]; R [ohm], L [H] of the loop with its choke; I_line, I_C [A rms] the limits (ratedBusState or the plate). Never above 1: beyond its rating nothing
 * is promised. Source: simulation; valid when the drive's papers allow single-phase input at all. About twenty runs of the bus.
 */
export function onePhaseShare(x: Omit<Bus, "phases"> & { I_line: number; I_C: number }): number {
  const excess = (share: number): number => {
    const now = busState({ V: x.V, f: x.f, P: share * x.P, C: x.C, R: x.R, L: x.L, phases: 1 });
    return Math.max(now.I_line / x.I_line, now.I_C / x.I_C) - 1;
  };
  return root(excess, 0, 1, CLOSE) ?? 1;
}
