// The grip of a chuck that turns: what centrifugal pull takes from it, and what the cut asks of it.

/**
 * Grip left at speed when the jaws hold from outside.
 *
 * F [N] = F_0 - z m r w^2, not below 0; F_0 [N] total grip at rest; z [1] jaws; m [kg] of one with its base; r [m] of its centre of mass; w [rad/s].
 * Source: statics of a rotating mass; ISO 16156 (clause unchecked).
 */
export function gripOutside(x: { F_0: number; z: number; m: number; r: number; w: number }): number {
  return Math.max(0, x.F_0 - x.z * x.m * x.r * x.w * x.w);
}

/** Grip at speed when the jaws hold a bore from inside: the same pull adds, F [N] = F_0 + z m r w^2. Symbols as gripOutside. */
export function gripInside(x: { F_0: number; z: number; m: number; r: number; w: number }): number {
  return x.F_0 + x.z * x.m * x.r * x.w * x.w;
}

/**
 * Grip at which the part just slips under a cut.
 *
 * F [N] = sqrt((2 T/d)^2 + F_a^2)/mu; T [N m] of the cut; d [m] gripped diameter; F_a [N] along the spindle; mu [1] at the jaws, 0.1 to 0.25.
 * Source: friction at the jaws, turning and pushing added as vectors; any textbook of statics. No reserve is in it: the check asks for twice this.
 */
export function slipGrip(x: { T: number; d: number; F_a: number; mu: number }): number {
  return Math.hypot((2 * x.T) / x.d, x.F_a) / x.mu;
}
