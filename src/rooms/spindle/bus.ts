// The dc bus of a drive: what its rectifier takes from the line in pulses, and how low the bus falls between them.

/** A rectifier-fed dc bus with a load that takes its power whatever the voltage is. */
export interface Bus {
  /** Line voltage [V rms], between the lines. */
  V: number;
  /** Line frequency [Hz]. */
  f: number;
  /** Power drawn from the bus [W], >= 0. */
  P: number;
  /** Bus capacitance [F]. */
  C: number;
  /** Series resistance [ohm]: of the whole loop with one phase, of each line with three. */
  R: number;
  /** Series inductance [H], > 0: of the whole loop with one phase, of each line with three. */
  L: number;
  /** 1 or 3. */
  phases: number;
}

export interface BusState {
  /** Line current [A rms]. */
  readonly I_line: number;
  /** True power factor at the source, power / (V I) [1]; 0 without current. */
  readonly pf: number;
  /** Lowest and highest bus voltage over the last cycles, and mean over the kept one [V]; all 0 when the supply collapses. */
  readonly V_valley: number;
  readonly V_crest: number;
  readonly V_mean: number;
  /** Capacitor current [A rms]. */
  readonly I_C: number;
  /** (energy in - out - dissipated - stored) / energy out over the kept cycle [1]: what the arithmetic lost. */
  readonly residual: number;
  /**
   * Change of the bus voltage over the kept cycle, relative [1]. Beyond a percent the bus does not settle: choke and capacitor resonate near the ripple,
   * a load that takes its power whatever the voltage is damps nothing, and only valley and crest mean something.
   */
  readonly drift: number;
}

/** One kept cycle for a picture. With three phases, `current` is what enters the bus, else the line current without its sign. */
export interface BusTrace {
  /** Time from the zero crossing of a line voltage [s]. */
  t: Float64Array;
  /** Bus voltage [V]. */
  voltage: Float64Array;
  /** Current into the bus [A]. */
  current: Float64Array;
}

/** Step of the march [s]; 20 us is 0.02 % off on all figures against 0.05 us. */
export const BUS_STEP = 20e-6;

/** Cycles marched; the last is kept. A bus settles within a few: each crest refills it. */
const CYCLES = 12;

/** Cycles at the end whose lowest and highest voltage count, so that a bus that swings from cycle to cycle shows how far. */
const SWINGING = 4;

/** Where the march starts at the latest, as a share of the crest: near the mean of a loaded bus. */
const START = 0.93;

/** Least share of a step worth a step of its own: below it rounding would outweigh it. */
const SMALLEST_PART = 1e-6;

/** A bus that holds less than this many steps' worth of energy is taken as collapsed: P/v cannot be followed any lower. */
const EMPTY_STEPS = 4;

const COLLAPSED: BusState = { I_line: Infinity, pf: 0, V_valley: 0, V_crest: 0, V_mean: 0, I_C: Infinity, residual: 0, drift: 0 };

/**
 * Bus of a drive in the steady state, by simulation.
 *
 * L di/dt = e - R i - v while the diodes conduct (i >= 0), C dv/dt = i - P/v; e: |sine| with one phase, where a current that outlasts its half-wave runs on
 * against the next, or the envelope of three lines, where the outgoing and the incoming line share the current until it has passed over (commutation).
 * Implicit midpoint on (i, v), P/v linearised within a step; ideal diodes; sine source. Arguments: see Bus. Source: circuit as in Rashid, Power Electronics,
 * ch. 3. Valid while commutation takes less than a sixth of a cycle. When the supply cannot carry P the bus collapses: 0 V, and the current asked for has
 * no end. About 0.2 ms a run; halving the step moves every figure of a settled bus by less than 0.05 %.
 */
export function busState(x: Bus, step: number = BUS_STEP): BusState {
  return march(x, step, null);
}

/** The last cycle of the same simulation, for the picture of bus voltage and current. Empty when the supply collapses. */
export function busTrace(x: Bus): BusTrace {
  const n = stepsPerCycle(x.f, BUS_STEP);
  const trace: BusTrace = { t: new Float64Array(n), voltage: new Float64Array(n), current: new Float64Array(n) };
  const collapsed = march(x, BUS_STEP, trace).V_mean === 0;
  return collapsed ? { t: new Float64Array(), voltage: new Float64Array(), current: new Float64Array() } : trace;
}

/** Whole steps in each of the two or six humps of a cycle, so that no crest is treated differently. */
function stepsPerCycle(f: number, step: number): number {
  return 6 * Math.ceil(1 / (6 * f * step));
}

const COS_30 = Math.sqrt(3) / 2;
const SIN_30 = 1 / 2;

function march(x: Bus, step: number, trace: BusTrace | null): BusState {
  const { P, R, L } = x;
  const three = x.phases === 3;
  const crest = Math.SQRT2 * x.V;
  const n = stepsPerCycle(x.f, step);
  const h = 1 / (x.f * n);
  const humps = three ? 6 : 2;
  const perHump = n / humps;
  const turn = (2 * Math.PI) / n;
  const cosTurn = Math.cos(turn);
  const sinTurn = Math.sin(turn);
  const g = (2 * x.C) / h;
  const empty = Math.sqrt((2 * EMPTY_STEPS * P * h) / x.C);

  // The path of the current: the whole loop with one phase, two lines in series with three, one and a half while two share.
  const rFull = three ? 2 * R : R;
  const lFull = three ? 2 * L : L;
  const aFull = (2 * lFull) / h;
  const rShared = 1.5 * R;
  const aShared = (3 * L) / h;
  const aLine = (2 * L) / h;

  // Just after a crest the bus has the crest less what the load took; a lightly loaded one must start there, or its first gulp overshoots for good.
  let v = Math.sqrt(Math.max((START * crest) ** 2, crest * crest - P / (2 * x.f * x.C)));
  let i = 0;
  let sign = 1;
  let delta = 0;
  let waiting = false;
  let sharing = false;
  let low = v;
  let high = v;
  let sumV = 0;
  let sumLine = 0;
  let sumC = 0;
  let energyIn = 0;
  let lost = 0;
  let vStart = v;
  let iStart = 0;

  for (let cycle = 0; cycle < CYCLES; cycle++) {
    if (cycle <= CYCLES - SWINGING) low = high = v;
    vStart = v;
    iStart = i;
    sumV = sumLine = sumC = energyIn = lost = 0;
    for (let hump = 0; hump < humps; hump++) {
      let c = Math.cos(turn / 2);
      let s = Math.sin(turn / 2);
      if (i > 0) {
        sign = -1;
        waiting = three;
      }
      for (let k = 0; k < perHump; k++) {
        if (trace && cycle === CYCLES - 1) {
          const at = hump * perHump + k;
          trace.t[at] = at * h;
          trace.voltage[at] = v;
          trace.current[at] = i;
        }
        // A step is taken whole, or in two parts when the outgoing line runs dry within it: then the circuit changes.
        let rest = 1;
        while (rest > 0) {
          if (i === 0) {
            sign = 1;
            waiting = sharing = false;
          }
          // The next line can only take over once its voltage beats the one that conducts, whose inductance holds it up while its current falls.
          if (waiting && crest * (COS_30 * c + (SIN_30 + 1) * s) > v) {
            waiting = false;
            sharing = true;
            delta = i;
          }
          let e = crest * (three ? COS_30 * c + (waiting ? -SIN_30 : SIN_30) * s : sign * s);
          let r = rFull;
          let a = aFull;
          let part = rest;
          let last = false;
          if (sharing) {
            e = crest * COS_30 * c;
            r = rShared;
            a = aShared;
            // What the outgoing line carries is (delta + i)/2; it runs dry where both changes together have used that up.
            const fall = (2 * (crest * s + R * delta)) / aLine - (2 * (e - r * i - v)) / aShared;
            last = delta + i < fall * rest;
            if (last) part = Math.max(SMALLEST_PART, (delta + i) / fall);
          }
          const scale = 1 / part;
          a *= scale;
          const gPart = g * scale;
          const inverse = 1 / v;
          const q = P * inverse;
          const gLoad = gPart - q * inverse;
          const rhs = gLoad * v - q;
          let im = 0;
          let iEnd = 0;
          if (i > 0 || e > v) {
            im = ((e + a * i) * gLoad - rhs) / ((a + r) * gLoad + 1);
            iEnd = 2 * im - i;
            if (iEnd <= 0) {
              // The current ends within the step: only the triangle until then counts.
              im = iEnd < i ? Math.max(0, (i * i) / (2 * (i - iEnd))) : 0;
              iEnd = 0;
            }
          }
          const vm = (rhs + im) / gLoad;
          const vEnd = 2 * vm - v;
          if (!(vEnd > empty && gLoad > 0)) return COLLAPSED;

          let squares = (three ? 2 : 1) * im * im;
          let power = e * im;
          if (sharing) {
            // delta: outgoing less incoming line; from +i when the next line takes over to -i when it has all.
            const aPart = aLine * scale;
            const deltaEnd = last ? -iEnd : Math.max(-iEnd, ((aPart - R) * delta - 2 * crest * s) / (aPart + R));
            const deltaMid = (delta + deltaEnd) / 2;
            squares = 1.5 * im * im + 0.5 * deltaMid * deltaMid;
            power -= 0.5 * crest * s * deltaMid;
            delta = deltaEnd;
            sharing = deltaEnd > -iEnd;
          }
          const iC = gPart * (vm - v);
          energyIn += part * power;
          lost += part * R * squares;
          sumLine += part * squares;
          sumC += part * iC * iC;
          sumV += part * vm;
          v = vEnd;
          i = iEnd;
          rest -= part;
        }
        if (v < low) low = v;
        if (v > high) high = v;
        const next = s * cosTurn + c * sinTurn;
        c = c * cosTurn - s * sinTurn;
        s = next;
      }
    }
  }

  const line = Math.sqrt(sumLine / (three ? 3 * n : n));
  const power = energyIn / n;
  const stored = 0.5 * x.f * (x.C * (v * v - vStart * vStart) + lFull * (i * i - iStart * iStart));
  return {
    I_line: line,
    pf: P > 0 ? power / (x.V * line * (three ? Math.sqrt(3) : 1)) : 0,
    V_valley: low,
    V_crest: high,
    V_mean: sumV / n,
    I_C: Math.sqrt(sumC / n),
    residual: P > 0 ? (power - lost / n - P - stored) / P : 0,
    drift: (v - vStart) / v,
  };
}
