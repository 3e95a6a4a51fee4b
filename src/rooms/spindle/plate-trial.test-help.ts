// A motor made up from the estimator's own bands, and the plate its maker would stamp on it: the means to try the estimator's honesty.
import { breakdownTorque, type Circuit, folded, synchronousSpeed } from "./circuit.ts";
import { lineResistance, noLoadReading, standstillReading } from "./motor-tests.ts";
import { codeLetter, lockedCurrent, lockedPower } from "./plate.ts";
import { circuitOfPlate, type PlateCircuit } from "./plate-circuit.ts";
import { circuitOf, drawCircuits } from "./plate-draws.ts";
import { type Design, efficiencyBand, lockedBand, type Plate, PRIOR, type Range, SPLIT } from "./plate-prior.ts";
import type { Readings } from "./plate-readings.ts";
import { isRefusal } from "./refusal.ts";
import { uniforms } from "../../solve/random.ts";

interface Trial {
  plate: Plate;
  truth: PlateCircuit;
  hot: number;
  skin: number;
}

const DESIGNS: readonly (Design | null)[] = [null, "A", "B", "B", "C"];
const LETTERED = { low: lockedPower("C").low, high: lockedPower("L").high };

/** Efficiency and power factor even over their bands, the plate following from them: the road opposite to the estimator's. */
function trial(u: () => number): Trial {
  for (;;) {
    const P = 300 * 40 ** u();
    const V = pick([208, 230, 400, 460], u);
    const f = pick([50, 60], u);
    const poles = pick([2, 4, 4, 6], u);
    const s = within({ low: 0.012, high: 0.08 }, u);
    const efficiency = within(efficiencyBand(P), u);
    const powerFactor = within(PRIOR.powerFactor, u);
    const I = P / (Math.sqrt(3) * V * efficiency * powerFactor);
    const loss = P / efficiency - P;
    const lettered = u() < 0.6;
    const share = within(LETTERED, u);
    const I_LR = lettered ? lockedCurrent(share, P, V) : I * within(lockedBand(P), u);
    const design = pick(DESIGNS, u);
    const truth = circuitOfPlate(
      { P, V, I, f, poles, s },
      {
        efficiency,
        P_fw: within(PRIOR.friction, u) * loss,
        P_core: within(PRIOR.core, u) * loss,
        P_stray: within(PRIOR.stray, u) * P,
        split: design === null ? within(PRIOR.split, u) : SPLIT[design],
        I_LR,
        saturation: within(PRIOR.saturation, u),
      },
    );
    const [hot, skin] = [within(PRIOR.hot, u), within(PRIOR.skin, u)];
    // Stamped to 5 rpm and three digits of current.
    const w = (5 * Math.round((synchronousSpeed(f, poles) * (1 - s) * 30) / Math.PI / 5) * Math.PI) / 30;
    if (truth === null || w >= synchronousSpeed(f, poles)) continue;
    const code = lettered ? codeLetter(share) : null;
    return { plate: { P, V, I: Number(I.toPrecision(3)), f, w, poles, design, code }, truth, hot, skin };
  }
}

/** Readings a shop would take of that motor, with errors as large as stated. */
function readingsOf({ plate, truth, hot, skin }: Trial, u: () => number): Readings {
  const normal = () => Math.sqrt(-2 * Math.log(u())) * Math.cos(2 * Math.PI * u());
  const read = (value: number, share: number) => ({ value: value * (1 + share * normal()), u: share * value });
  const idle = noLoadReading(truth, plate.V, plate.f, truth.P_fw, truth.w_fw) ?? { I: NaN, P: NaN };
  const [V, f] = [plate.V / 12, plate.f];
  const still = standstillReading(truth, V, f);
  const cold = 291;
  return {
    resistance: { R: read(lineResistance(truth.R_1, cold, hot, skin), 0.01), T: cold, k: 1 },
    noLoad: { V: plate.V, f, I: read(idle.I, 0.02), P: read(idle.P, 0.05), k: 1 },
    standstill: { V, f, I: read(still.I, 0.02), P: read(still.P, 0.04), k: 1 },
  };
}

const QUANTITIES: Readonly<Record<string, (c: Circuit, V: number) => number>> = {
  R_1: (c) => c.R_1,
  R_2: (c) => c.R_2,
  "X_1 + X_2": (c) => c.X_1 + c.X_2,
  X_m: (c) => c.X_m,
  T_bd: (c, V) => breakdownTorque(folded(c, c.f), V),
};

/** In what share of `trials` plates the 5 % to 95 % band of each quantity holds the truth. */
export function coverage(seed: string, trials: number, count: number, measured: boolean): Record<string, number> {
  const u = uniforms(seed);
  const held: Record<string, number> = {};
  for (let k = 0; k < trials; k++) {
    const made = trial(u);
    const { plate, truth } = made;
    const draws = drawCircuits(plate, measured ? readingsOf(made, u) : {}, { seed: `${seed}/${k}`, count });
    if (isRefusal(draws)) throw new Error(`${draws.code}: ${JSON.stringify(plate)}`);
    const circuits = Array.from({ length: count }, (_, j) => circuitOf(draws.columns, j, plate.f, plate.poles));
    for (const [name, of] of Object.entries(QUANTITIES)) {
      const x = of(truth, plate.V);
      const below = circuits.filter((c) => of(c, plate.V) < x).length / count;
      held[name] = (held[name] ?? 0) + (below > 0.05 && below < 0.95 ? 1 / trials : 0);
    }
  }
  return held;
}

function pick<T>(list: readonly T[], u: () => number): T {
  const one = list[Math.floor(u() * list.length)];
  if (one === undefined) throw new Error("nothing to pick from");
  return one;
}

function within(range: Range, u: () => number): number {
  return range.low + u() * (range.high - range.low);
}
