// Kinds of service: how many phases, how far a line may be from earth, and what stands between a line and the neutral.

/**
 * What each kind of service is: its phases, its greatest line-to-earth voltage, and the voltage from a line to its neutral, both as shares of the voltage
 * between lines.
 */
export const serviceKinds = {
  "single-phase": { phases: 1, toEarth: 1, toNeutral: 1, source: "one line and an earthed neutral" },
  "split-phase": { phases: 1, toEarth: 1 / 2, toNeutral: 1 / 2, source: "two lines, middle of the winding earthed" },
  "three-phase-star": { phases: 3, toEarth: 1 / Math.sqrt(3), toNeutral: 1 / Math.sqrt(3), source: "star point earthed" },
  "three-phase-high-leg": {
    phases: 3,
    toEarth: Math.sqrt(3) / 2,
    toNeutral: 1 / 2,
    source: "middle of one side of the delta earthed: height of the triangle",
  },
  "three-phase-corner-earthed": { phases: 3, toEarth: 1, toNeutral: 1, source: "one corner of the delta earthed" },
} as const;

/** Factor between V I of one line and the power of the supply [1]: sqrt 3 with three phases, else 1. */
export function lineFactor(phases: number): number {
  return phases >= 3 ? Math.sqrt(3) : 1;
}
