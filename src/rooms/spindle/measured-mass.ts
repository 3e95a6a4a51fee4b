// Inertia and friction out of the user's own coast-down and spin-up, both at once.
import { figure, input, listInput, value } from "../../kernel/figure.ts";
import { spindle } from "../ground/index.ts";
import { topRatio } from "./mass.ts";
import { type InertiaFit, inertiaAndFriction } from "./motion.ts";

const how = "Step inertia: speed of the spindle twice a second or oftener, from the drive's log or a video of a tachometer.";
const time = (of: "coast-down" | "spin-up") =>
  listInput({ key: `${of}.time`, per: spindle, symbol: "t", unit: "s", says: `times of the ${of}`, measure: how });
const speed = (of: "coast-down" | "spin-up") =>
  listInput({ key: `${of}.speed`, per: spindle, symbol: "n", unit: "rad/s", says: `spindle speeds of the ${of}`, measure: how });
export const coastDownTime = time("coast-down");
export const coastDownSpeed = speed("coast-down");
export const spinUpRecordTime = time("spin-up");
export const spinUpRecordSpeed = speed("spin-up");
export const spinUpRecordTorque = input({
  key: "spin-up.torque",
  per: spindle,
  symbol: "T",
  unit: "N*m",
  says: "torque of the motor during that spin-up",
  measure: "The torque limit set in the drive, low enough to be the limit all the way below base speed.",
});

export const massFit = value({
  id: "spindle.measured-mass",
  per: spindle,
  says: "inertia and friction at the motor that both curves agree with best",
  needs: {
    t_c: coastDownTime,
    n_c: coastDownSpeed,
    t_s: spinUpRecordTime,
    n_s: spinUpRecordSpeed,
    T: spinUpRecordTorque,
    i: topRatio,
  },
  of: (x): InertiaFit | null => {
    if (x.t_c.length !== x.n_c.length || x.t_s.length !== x.n_s.length) return null;
    const atMotor = (n: readonly number[]): number[] => n.map((w) => x.i * w);
    return inertiaAndFriction({ t: x.t_c, w: atMotor(x.n_c) }, { t: x.t_s, w: atMotor(x.n_s) }, x.T);
  },
});
const METHOD = "w(t) - w(0) = (T/J) t - (T_0/J) t - (b/J) integral of w dt, T = 0 while coasting; least squares over both curves at once";
const SOURCE = "Newton, integrated, so that no slope of noisy readings is needed";
const agrees = (x: { fit: InertiaFit | null }): string | null =>
  x.fit === null ? "the two curves cannot tell inertia from friction: more readings, a longer coast-down, a time for each speed" : null;

export const measuredInertia = figure({
  id: "spindle.measured-inertia",
  per: spindle,
  symbol: "J",
  unit: "kg*m2",
  says: "inertia at the motor, from coast-down and spin-up",
  method: METHOD,
  source: SOURCE,
  needs: { fit: massFit },
  of: (x) => x.fit?.J ?? Number.NaN,
  valid: agrees,
});
export const measuredFriction = figure({
  id: "spindle.measured-friction",
  per: spindle,
  symbol: "T_0",
  unit: "N*m",
  says: "friction near standstill at the spindle, from coast-down and spin-up",
  method: `${METHOD}; times the ratio`,
  source: SOURCE,
  needs: { fit: massFit, i: topRatio },
  of: (x) => (x.fit?.T_0 ?? Number.NaN) * x.i,
  valid: agrees,
});
