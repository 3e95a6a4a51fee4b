// A motor made up from the estimator's own bands, and the plate its maker would stamp on it: the means to try the estimator's honesty.
import { synchronousSpeed } from "./circuit.ts";
import { codeLetter, lockedCurrent, lockedPower } from "./plate.ts";
import { circuitOfPlate, type PlateCircuit } from "./plate-circuit.ts";
import { type Design, efficiencyBand, type Plate, PRIOR, type Range } from "./plate-prior.ts";

export interface Trial {
  plate: Plate;
  truth: PlateCircuit;
  hot: number;
  skin: number;
}

const DESIGNS: readonly (Design | null)[] = [null, "A", "B", "B", "C"];
const LETTERED = { low: lockedPower("C").low, high: lockedPower("L").high };

/** Efficiency and power factor even over their bands, the plate following from them: the road opposite to the estimator's. */
export function trial(u: () => number): Trial {
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
    const I_LR = lettered ? lockedCurrent(share, P, V) : I * within(PRIOR.locked, u);
    const design = pick(DESIGNS, u);
    const split = design === null ? within(PRIOR.split, u) : design === "A" ? 0.5 : design === "B" ? 0.4 : 0.3;
    const truth = circuitOfPlate(
      { P, V, I, f, poles, s },
      {
        efficiency,
        P_fw: within(PRIOR.friction, u) * loss,
        P_core: within(PRIOR.core, u) * loss,
        P_stray: within(PRIOR.stray, u) * P,
        split,
        I_LR,
        saturation: within(PRIOR.saturation, u),
      },
    );
    const [hot, skin] = [within(PRIOR.hot, u), within(PRIOR.skin, u)];
    const w = (5 * Math.round((synchronousSpeed(f, poles) * (1 - s) * 30) / Math.PI / 5) * Math.PI) / 30;
    if (truth === null || w >= synchronousSpeed(f, poles)) continue;
    const code = lettered ? codeLetter(share) : null;
    return { plate: { P, V, I: Number(I.toPrecision(3)), f, w, poles, design, code }, truth, hot, skin };
  }
}

function pick<T>(list: readonly [T, ...T[]] | readonly T[], u: () => number): T {
  const one = list[Math.floor(u() * list.length)];
  if (one === undefined) throw new Error("nothing to pick from");
  return one;
}

function within(range: Range, u: () => number): number {
  return range.low + u() * (range.high - range.low);
}
