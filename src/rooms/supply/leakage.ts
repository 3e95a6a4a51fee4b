// Standing current to earth through filters and screened cables, and the residual-current device that a drive asks for.
import { check, notice } from "../../kernel/check.ts";
import { figure } from "../../kernel/figure.ts";
import { machine, shop } from "../../kernel/item.ts";
import { slot, offer } from "../../kernel/slot.ts";
import { cableCapacitance, filterLeakage, residualTrip, residualType, serviceKind, voltage } from "./inputs.ts";
import { serviceKinds } from "./service.ts";
import { leaks } from "./slots.ts";
import { frequency } from "./source.ts";

/**
 * Standing earth leakage of a capacitance at line frequency.
 *
 * I [A] = 2 pi f C V; f [Hz]; C [F] from line to earth, of filter and motor cable; V [V] line to earth. Source: Ohm's law for a capacitor.
 */
export function earthLeakage(x: { f: number; C: number; V: number }): number {
  return 2 * Math.PI * x.f * x.C * x.V;
}

/** Capacitance of a screened motor cable to its screen, per length [F/m]; unchecked. */
export const CABLE_CAPACITANCE = { low: 0.1e-9, high: 0.3e-9, source: "practice, unchecked" } as const;

/** Leakage above which the protective conductor must be strengthened or supervised [A]. IEC 61800-5-1 (seen quoted). */
export const STRENGTHENED_EARTH_ABOVE = 3.5e-3;

/** What strengthens it: either of these sections [m2], or a second conductor of the same size, or a trip on its loss. */
export const STRENGTHENED_EARTH = {
  copper: 10e-6,
  aluminium: 16e-6,
  source: "IEC 61800-5-1 (seen quoted in drive papers); the local code decides",
} as const;

/** Share of a residual-current device's trip that standing leakage may take before it trips for nothing [1]. IEC 61008 idea, practice. */
export const STANDING_SHARE = 0.3;

/** What stands on the line side of the device: plain ac loads, or drives by how their rectifier is fed. */
export type RectifierFeed = "none" | "line-to-neutral" | "line-to-line" | "three-phase";

/** Type of residual-current device for each way of feeding a drive, with the reason; the local code decides. */
export const residualDevices: Record<RectifierFeed, { type: "A" | "F" | "B"; because: string }> = {
  none: { type: "A", because: "no drive stands behind it" },
  "line-to-neutral": { type: "F", because: "one line and an earthed middle conductor: mixed frequencies, but no smooth dc" },
  "line-to-line": { type: "B", because: "current rectified from two lines never falls to zero, which blinds types AC, A and F" },
  "three-phase": { type: "B", because: "a three-phase rectifier can pass smooth dc to earth, which blinds types AC, A and F" },
};

/** Where the types come from, and where they end. */
export const residualDeviceSource =
  "IEC 62423 and wiring rules quoting it (seen); types are IEC words, where the local code knows other devices it has the last word";

/** Length of screened motor cable behind the supply, offered by whatever drives a motor. */
export const screenedCable = slot({
  id: "supply.screened-cable",
  per: machine,
  says: "screened motor cable on the machine",
  combine: "sum",
  empty: "zero",
  unit: "m",
  kind: "distance",
});

export const voltageToEarth = figure({
  id: "supply.voltage-to-earth",
  per: shop,
  symbol: "V_e",
  unit: "V",
  says: "greatest voltage of a line against earth",
  method: "the share of the line voltage that the kind of service puts between a line and earth",
  source: "geometry of the windings and of their earthed point",
  needs: { kind: serviceKind, V: voltage },
  of: (x) => serviceKinds[x.kind].toEarth * x.V,
});

export const machineLeakage = figure({
  id: "supply.machine-leakage",
  per: machine,
  symbol: "I_m",
  unit: "A",
  kind: "small-current",
  says: "standing leakage of this machine",
  formula: "I_f + 2 * pi * f * c * L * V_e",
  source: "Ohm's law for a capacitor",
  needs: { I_f: filterLeakage, f: frequency, c: cableCapacitance, L: screenedCable, V_e: voltageToEarth },
  of: (x) => x.I_f + earthLeakage({ f: x.f, C: x.c * x.L, V: x.V_e }),
});
export const machineLeaks = offer(leaks, machineLeakage);

export const supplyEarthLeakage = figure({
  id: "supply.earth-leakage",
  per: shop,
  symbol: "I_leak",
  unit: "A",
  kind: "small-current",
  says: "standing leakage of the shop",
  formula: "I_sum",
  source: "sum; leakages of one line add arithmetically at most",
  needs: { I_sum: leaks },
  of: (x) => x.I_sum,
});

export const leakageAllowed = figure({
  id: "supply.leakage-allowed",
  per: shop,
  symbol: "I_ok",
  unit: "A",
  kind: "small-current",
  says: "standing leakage a residual-current device bears without tripping for nothing",
  formula: "0.3 * I_trip",
  source: "practice after IEC 61008: a device may trip from half its rating on",
  needs: { I_trip: residualTrip },
  of: (x) => STANDING_SHARE * x.I_trip,
});

export const leakageCheck = check({
  id: "supply.leakage-holds",
  per: shop,
  asks: "Does the residual-current device stay in with everything plugged in?",
  demand: supplyEarthLeakage,
  capacity: leakageAllowed,
  H: 1.2,
  remedies: [
    { does: "a line filter of low leakage", costs: "its price", changes: [filterLeakage] },
    { does: "another type or rating of device", costs: "for licensed practice and the local code to choose", changes: [residualTrip] },
  ],
});

/** What the rectifiers behind the device are fed with; offered once by the first drive that has an opinion. */
export const residualDeviceType = notice({
  id: "supply.residual-type",
  per: shop,
  severity: "warning",
  needs: { type: residualType, kind: serviceKind },
  at: residualType,
  of: (x) => {
    const feed: RectifierFeed =
      serviceKinds[x.kind].phases === 3 ? "three-phase" : x.kind === "split-phase" ? "line-to-line" : "line-to-neutral";
    const wanted = residualDevices[feed];
    if (x.type === wanted.type || x.type === "B") return null;
    return `A drive on this service asks for a residual-current device of type ${wanted.type}: ${wanted.because}. Yours is type ${x.type}. Source: ${residualDeviceSource}.`;
  },
});

export const strengthenedEarth = notice({
  id: "supply.strengthened-earth",
  per: machine,
  severity: "warning",
  needs: { I: machineLeakage },
  at: filterLeakage,
  of: (x) =>
    x.I > STRENGTHENED_EARTH_ABOVE
      ? `More than 3.5 mA stand to earth: the protective conductor wants 10 mm2 of copper (16 mm2 of aluminium), or a second one of the same size, or a trip on its loss (${STRENGTHENED_EARTH.source}).`
      : null,
});
