// When flux is so high that the linear circuit says nothing.
import { fluxGuard, fluxShare } from "./voltage-laws.ts";

/** The refusal of a figure that takes volts V and hertz f of a winding rated V_n at f_n; null where flux is no more than 1.2 of rated, or the rating not said. */
export function saturated(x: { V: number; f: number; V_n: number | null; f_n: number | null }): string | null {
  if (x.V_n === null || x.f_n === null) return null;
  const guard = fluxGuard(fluxShare(x.V, x.f, x.V_n, x.f_n));
  return guard === null || guard === "warn" ? null : guard.refused;
}
