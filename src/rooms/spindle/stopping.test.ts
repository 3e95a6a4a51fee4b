import { expect, test } from "vitest";
import { expectNear, shopOf, verdictOf, worked } from "./bench.test-help.ts";

// By hand: (0.06 251.33/2 - 1.2) 251.33 0.82 0.95.
const stop = { J: "0.06 kg*m2", w: "2400 rpm", t: "2 s", T_f: "1.2 N*m", eta_m: "0.82", eta_d: "0.95" };

test("0.06 kg m2 stopped from 2400 rpm in 2 s sends 1241.2 W at its peak and 1241.2 J in all to the bus", () => {
  expectNear(worked("spindle.brake.peak-power", stop), 1241.2, 1e-4);
  expectNear(worked("spindle.brake.energy", stop), 1241.2, 1e-4);
});

test("a chopper that switches on at 380 V takes that peak in 116.34 ohm at most", () => {
  expectNear(worked("spindle.brake.resistance-max", { V_on: "380 V", P_pk: "1241.2 W" }), 116.34, 1e-4);
});

test("a ramp longer than coasting sends nothing back", () => {
  const long = { ...stop, t: "60 s" };
  expect(worked("spindle.brake.peak-power", long)).toBe(0);
  expect(worked("spindle.brake.energy", long)).toBe(0);
  expect(worked("spindle.brake.resistance-max", { V_on: "380 V", P_pk: "0 W" })).toBe(Infinity);
});

test("the shortest stop with a resistor is the ramp whose peak the resistor just takes", () => {
  const { t: _, ...rest } = stop;
  expectNear(worked("spindle.brake.stop-time-with-resistor", { ...rest, V_on: "380 V", R_br: "116.34 ohm" }), 2, 1e-4);
});

test("a bus that takes up nothing and a drive that loses nothing leave only the time to coast", () => {
  const { t: _, ...rest } = stop;
  const alone = worked("spindle.brake.stop-time-without-resistor", { ...rest, E: "0 J", P_l: "0 W" });
  expectNear(alone, (0.06 * ((2400 * Math.PI) / 30)) / 1.2, 1e-9);
  expect(worked("spindle.brake.stop-time-without-resistor", { ...rest, E: "40 J", P_l: "40 W" })).toBeLessThan(alone);
});

test("friction that grows with speed stops the spindle sooner than friction that does not", () => {
  const given = { J_m: "0.03 kg*m2", J_s: "0.04 kg*m2", i: "1", n: "2000 rpm", T_0: "1 N*m" };
  const constant = worked("spindle.coast-time", { ...given, T_1: "1 N*m" });
  expectNear(constant, 0.07 * ((2000 * Math.PI) / 30), 1e-9);
  expectNear(worked("spindle.coast-time", { ...given, T_1: "2 N*m" }), constant * Math.LN2, 1e-9);
});

const lathe = (drive: string): string => `machine: lathe
kind: turret-lathe
spindle:
  motor: { kind: induction, plate: { power: 5 hp, voltage: 230 V, current: 13 A, frequency: 60 Hz, speed: 1745 rpm }, leads: 3, connected: star }
  drive: ${drive}
  belts: { only: { motor-pulley: 100 mm, spindle-pulley: 100 mm } }
  friction: { steady: 0.5 N*m, at-top: 1 N*m }
  inertia: { spindle: 0.03 kg*m2, chuck: 0.01 kg*m2 }
  highest-speed: 1800 rpm
  wanted: { stop: 3 s }
`;
const papers = "rated-current: 17 A, input-phases: 1, single-phase: yes, bus: { capacitance: 680 uF, trip: 400 V, resistor-on: 380 V }";

test("a stop of 2 s without a resistor trips the bus, with 60 ohm it does not, with 30 the chopper is too small", () => {
  const bare = shopOf(lathe(`{ ${papers}, resistor: none, ramp: { down: 2 s } }`));
  expect(verdictOf(bare, "brake.peak-holds").verdict).toBe("fails");
  expect(bare.answer.checks.some((c) => c.address.endsWith("brake.mean-holds"))).toBe(false);
  const fitted = (ohm: number) =>
    shopOf(
      lathe(
        `{ ${papers}, chopper: { smallest-resistor: 40 ohm }, resistor: { resistance: ${ohm} ohm, power: 300 W }, ramp: { down: 2 s } }`,
      ),
    );
  expect(verdictOf(fitted(60), "brake.peak-holds").verdict).toBe("holds");
  expect(verdictOf(fitted(60), "brake.resistor-allowed").verdict).toBe("holds");
  expect(verdictOf(fitted(60), "brake.mean-holds").verdict).toBe("holds");
  expect(verdictOf(fitted(30), "brake.resistor-allowed").verdict).toBe("fails");
});

test("a spindle without a drive coasts", () => {
  const s = shopOf(lathe("none"));
  const figure = (name: string) => s.answer.figures[`lathe/spindle.${name}`]?.amount.nominal;
  expect(figure("stop-time")).toBeCloseTo(Number(figure("coast-time")), 9);
  expect(figure("driven-stop-time")).toBeUndefined();
});
