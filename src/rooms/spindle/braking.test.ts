import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  brakeEnergy,
  brakeMeanPower,
  brakePeakPower,
  brakeResistanceMax,
  busReserve,
  rampBrakeTorque,
  stopTimeWithoutResistor,
} from "./braking.ts";

fc.configureGlobal({ seed: 1 });

const stop = { J: 0.06, w: (2400 * Math.PI) / 30, T_f: 1.2, eta_m: 0.82, eta_d: 0.95 };

describe("0.06 kg m2 stopped from 2400 rpm in 2 s", () => {
  test("send 1241.2 W and 1241.2 J to the bus, for a resistor of at most 116.34 ohm at 380 V", () => {
    expect(brakePeakPower({ ...stop, t: 2 })).toBeCloseTo(1241.2, 1);
    expect(brakeEnergy({ ...stop, t: 2 })).toBeCloseTo(1241.2, 1);
    expect(brakeResistanceMax({ V: 380, P: brakePeakPower({ ...stop, t: 2 }) })).toBeCloseTo(116.34, 2);
  });

  test("as often as every 20 s warm the resistor with 62 W", () => {
    expect(brakeMeanPower({ E: 1241.2, t_c: 20 })).toBeCloseTo(62.06, 2);
  });

  test("brake with the torque of the ramp less friction, and not at all when friction is faster", () => {
    expect(rampBrakeTorque({ ...stop, t: 2 })).toBeCloseTo(0.06 * 125.664 - 1.2, 4);
    expect(brakePeakPower({ ...stop, t: 60 })).toBe(0);
    expect(brakeEnergy({ ...stop, t: 60 })).toBe(0);
    expect(brakeResistanceMax({ V: 380, P: 0 })).toBe(Infinity);
  });

  test("energy is the area under the power of the ramp", () => {
    const t = 1.4;
    let area = 0;
    for (let k = 0; k < 1000; k++) {
      const w = stop.w * (1 - (k + 0.5) / 1000);
      area += (((stop.J * stop.w) / t - stop.T_f) * w * stop.eta_m * stop.eta_d * t) / 1000;
    }
    expect(brakeEnergy({ ...stop, t })).toBeCloseTo(area, 6);
  });
});

test("1500 uF between 325 and 390 V take up 34.9 J", () => {
  expect(busReserve({ C: 1500e-6, V_trip: 390, V_0: 325 })).toBeCloseTo(0.75e-3 * (390 ** 2 - 325 ** 2), 9);
  expect(busReserve({ C: 1500e-6, V_trip: 320, V_0: 325 })).toBe(0);
});

describe("a stop without resistor", () => {
  /** Most energy above the losses that ever stands on the bus during a ramp of t, summed in small steps. */
  const onBus = (x: typeof stop, P_l: number, t: number): number => {
    let most = 0;
    let now = 0;
    for (let k = 0; k < 20000; k++) {
      const w = x.w * (1 - (k + 0.5) / 20000);
      now += ((((x.J * x.w) / t - x.T_f) * w * x.eta_m * x.eta_d - P_l) * t) / 20000;
      most = Math.max(most, now);
    }
    return most;
  };

  test("on the shortest ramp just fills the bus, whatever the drive itself draws", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 200, noNaN: true }),
        fc.double({ min: 0, max: 150, noNaN: true }),
        fc.double({ min: 0.2, max: 3, noNaN: true }),
        (E, P_l, T_f) => {
          const x = { ...stop, T_f };
          const t = stopTimeWithoutResistor({ ...x, E, P_l });
          expect(onBus(x, P_l, t) / E).toBeCloseTo(1, 3);
          expect(onBus(x, P_l, 1.1 * t)).toBeLessThan(E);
        },
      ),
      { numRuns: 40 },
    );
  });

  test("takes as long as coasting when the bus has no room and nothing draws from it", () => {
    expect(stopTimeWithoutResistor({ ...stop, E: 0, P_l: 0 })).toBeCloseTo((stop.J * stop.w) / stop.T_f, 9);
  });

  test("is free when the bus holds it all, and never when nothing takes the energy", () => {
    const all = (stop.J * stop.w ** 2 * stop.eta_m * stop.eta_d) / 2;
    expect(stopTimeWithoutResistor({ ...stop, E: all, P_l: 0 })).toBe(0);
    expect(stopTimeWithoutResistor({ ...stop, T_f: 0, E: 30, P_l: 0 })).toBe(Infinity);
    expect(stopTimeWithoutResistor({ ...stop, T_f: 0, E: 0, P_l: 0 })).toBe(Infinity);
  });
});
