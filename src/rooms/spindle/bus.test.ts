import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BUS_STEP, type Bus, type BusState, busState, busTrace } from "./bus.ts";

fc.configureGlobal({ seed: 1 });

/** The bus of the sizing table: 240 V, 60 Hz, 2.4 kW, 1000 uF. */
const bus = { V: 240, f: 60, P: 2400, C: 1000e-6 };

const figures = ["I_line", "pf", "V_valley", "V_crest", "V_mean", "I_C"] as const;

/** Three-phase bridge followed line by line with ideal switches and a short explicit step: nothing in common with the marched envelope. */
function sixDiodes(x: Omit<Bus, "phases">): { I_line: number; V_valley: number; V_crest: number; I_C: number } {
  const peak = (Math.SQRT2 * x.V) / Math.sqrt(3);
  const steps = Math.round(1 / (x.f * 0.5e-6));
  const h = 1 / (x.f * steps);
  const i: [number, number, number] = [0, 0, 0];
  const lines = [0, 1, 2] as const;
  const each = (of: (j: 0 | 1 | 2) => number): [number, number, number] => [of(0), of(1), of(2)];
  let v = 0.95 * Math.SQRT2 * x.V;
  let out = { I_line: 0, V_valley: v, V_crest: v, I_C: 0 };
  for (let cycle = 0; cycle < 8; cycle++) {
    let squares = 0;
    let ripple = 0;
    let low = v;
    let high = v;
    for (let k = 0; k < steps; k++) {
      const angle = (2 * Math.PI * (k + 0.5)) / steps;
      const e = each((j) => peak * Math.sin(angle - (j * 2 * Math.PI) / 3));
      const side = each((j) => Math.sign(i[j]));
      const star = (): number => {
        const on = lines.filter((j) => side[j] !== 0);
        return on.reduce<number>((sum, j) => sum + e[j] - x.R * i[j] - (side[j] * v) / 2, 0) / on.length;
      };
      const most = Math.max(...e);
      const least = Math.min(...e);
      if (side.every((s) => s === 0) && most - least > v) {
        for (const j of lines) side[j] = e[j] === most ? 1 : e[j] === least ? -1 : 0;
      }
      if (side.some((s) => s !== 0)) {
        const middle = star();
        for (const j of lines) if (side[j] === 0) side[j] = e[j] > v / 2 + middle ? 1 : e[j] < -v / 2 + middle ? -1 : 0;
        const u = star();
        for (const j of lines) {
          if (side[j] === 0) continue;
          const next = i[j] + (h / x.L) * (e[j] - x.R * i[j] - (side[j] * v) / 2 - u);
          i[j] = next * side[j] < 0 ? 0 : next;
        }
        const on = lines.filter((j) => i[j] !== 0);
        const rest = i[0] + i[1] + i[2];
        for (const j of on) i[j] = on.length < 2 ? 0 : i[j] - rest / on.length;
      }
      const into = lines.reduce<number>((sum, j) => sum + Math.max(0, i[j]), 0) - x.P / v;
      v += (h / x.C) * into;
      squares += i[0] ** 2 + i[1] ** 2 + i[2] ** 2;
      ripple += into * into;
      low = Math.min(low, v);
      high = Math.max(high, v);
    }
    out = { I_line: Math.sqrt(squares / 3 / steps), V_valley: low, V_crest: high, I_C: Math.sqrt(ripple / steps) };
  }
  return out;
}

describe("what one phase does to a bus of 2.4 kW and 1000 uF at 240 V, 60 Hz", () => {
  // Reference: the sizing table of the design, simulated apart from this code at a step of 0.05 us.
  test.each([
    ["three phases of a stiff supply", 3, 0.15, 0.15e-3, 8.9, 0.66, 325, 336, 8.1],
    ["one phase of a stiff supply", 1, 0.15, 0.15e-3, 18.8, 0.54, 303, 353, 17.3],
    ["one phase of a house supply", 1, 0.35, 0.35e-3, 16.6, 0.63, 299, 346, 14.8],
    ["one phase through a 3 % choke", 1, 0.4, 1.91e-3, 13.9, 0.74, 288, 329, 11.5],
    ["one phase through a 5 % choke", 1, 0.45, 3.18e-3, 13.5, 0.77, 277, 317, 10.7],
  ])("%s", (_, phases, R, L, I_line, pf, V_valley, V_crest, I_C) => {
    const now = busState({ ...bus, R, L, phases });
    const expected = { I_line, pf, V_valley, V_crest, I_C };
    for (const key of ["I_line", "pf", "V_valley", "V_crest", "I_C"] as const) {
      expect(Math.abs(now[key] / expected[key] - 1), key).toBeLessThan(0.02);
    }
  });
});

describe("three lines whose currents overlap while they hand over", () => {
  test.each([
    ["9 kW on a stiff supply", 9000, 0.15, 0.15e-3],
    ["9 kW on a house supply", 9000, 0.35, 0.35e-3],
    ["15 kW on a stiff supply", 15000, 0.15, 0.15e-3],
  ])("agree with six diodes followed one by one: %s", (_, P, R, L) => {
    const x = { V: 240, f: 60, P, C: 3150e-6, R, L };
    const now = busState({ ...x, phases: 3 });
    const reference = sixDiodes(x);
    expect(Math.abs(now.I_line / reference.I_line - 1)).toBeLessThan(0.003);
    expect(Math.abs(now.V_valley / reference.V_valley - 1)).toBeLessThan(0.001);
    expect(Math.abs(now.V_crest / reference.V_crest - 1)).toBeLessThan(0.001);
    expect(Math.abs(now.I_C / reference.I_C - 1)).toBeLessThan(0.01);
  });

  test("lose 3 w L/pi volts an ampere of smooth current, as Mohan, Undeland and Robbins have it for line rectifiers", () => {
    const x = { V: 400, f: 50, P: 15e3, C: 0.05, R: 1e-6, L: 3e-3, phases: 3 };
    const now = busState(x);
    const expected = ((3 * Math.SQRT2) / Math.PI) * x.V - ((3 * 2 * Math.PI * x.f * x.L) / Math.PI) * (x.P / now.V_mean);
    expect(Math.abs(now.V_mean / expected - 1)).toBeLessThan(0.01);
  });
});

const anyBus = fc.record({
  V: fc.double({ min: 200, max: 420, noNaN: true }),
  f: fc.constantFrom(50, 60),
  P: fc.double({ min: 200, max: 6000, noNaN: true }),
  C: fc.double({ min: 800e-6, max: 3000e-6, noNaN: true }),
  R: fc.double({ min: 0.1, max: 0.6, noNaN: true }),
  L: fc.double({ min: 0.1e-3, max: 3e-3, noNaN: true }),
  phases: fc.constantFrom(1, 3),
});

const isSettled = (now: BusState): boolean => Math.abs(now.drift) < 1e-4;

describe("the arithmetic", () => {
  test("keeps energy: what comes in goes out, warms the wires or is stored, to 0.1 %", () => {
    fc.assert(
      fc.property(anyBus, (x) => {
        expect(Math.abs(busState(x).residual)).toBeLessThan(1e-3);
      }),
    );
  });

  test("moves no figure by 0.1 % when the step is halved, on any bus that settles", () => {
    fc.assert(
      fc.property(anyBus, (x) => {
        const once = busState(x);
        if (once.V_mean === 0 || !isSettled(once)) return;
        const twice = busState(x, BUS_STEP / 2);
        for (const key of figures) expect(Math.abs(twice[key] / once[key] - 1), key).toBeLessThan(1e-3);
      }),
    );
  });

  test("carries a true power factor: input power is the load plus what the resistance turns into heat", () => {
    const x = { ...bus, R: 0.35, L: 0.35e-3, phases: 1 };
    const { I_line, pf } = busState(x);
    expect(pf * x.V * I_line).toBeCloseTo(x.P + x.R * I_line ** 2, -1);
  });
});

describe("the valley of the bus", () => {
  test("falls when the load asks for more", () => {
    fc.assert(
      fc.property(anyBus, fc.double({ min: 1.05, max: 2, noNaN: true }), (x, k) => {
        const light = busState(x);
        const heavy = busState({ ...x, P: x.P * k });
        if (!isSettled(light) || !isSettled(heavy)) return;
        if (light.V_mean > 0) expect(heavy.V_valley).toBeLessThan(light.V_valley);
        else expect(heavy.V_valley).toBe(0);
      }),
    );
  });

  test("falls when there is less capacitance, on one phase", () => {
    fc.assert(
      fc.property(anyBus, fc.double({ min: 0.5, max: 0.95, noNaN: true }), (x, k) => {
        const much = busState({ ...x, L: 0.2e-3, phases: 1 });
        const little = busState({ ...x, L: 0.2e-3, C: x.C * k, phases: 1 });
        if (much.V_mean > 0) expect(little.V_valley).toBeLessThan(much.V_valley);
        else expect(little.V_valley).toBe(0);
      }),
    );
  });

  test("scales with the line when power, impedance and capacitance are scaled to match", () => {
    const x = { ...bus, R: 0.35, L: 0.35e-3, phases: 1 };
    const twice = busState({ V: 480, f: 60, P: 4800, C: 500e-6, R: 0.7, L: 0.7e-3, phases: 1 });
    expect(twice.V_valley / busState(x).V_valley).toBeCloseTo(2, 9);
    expect(twice.I_line / busState(x).I_line).toBeCloseTo(1, 9);
  });
});

describe("the ends of the range", () => {
  test("an unloaded bus stands at the crest of the line and draws nothing", () => {
    for (const phases of [1, 3]) {
      const idle = busState({ ...bus, P: 0, R: 0.35, L: 0.35e-3, phases });
      expect(idle.V_valley).toBeCloseTo(240 * Math.SQRT2, 6);
      expect(idle.V_crest).toBeCloseTo(240 * Math.SQRT2, 6);
      expect(idle.I_line).toBeCloseTo(0, 9);
      expect(idle.pf).toBe(0);
    }
  });

  test("a supply that cannot carry the load collapses: 0 V, and no end to the current asked for", () => {
    const gone = busState({ ...bus, P: 60e3, R: 0.6, L: 0.5e-3, phases: 1 });
    expect(gone).toMatchObject({ V_valley: 0, V_crest: 0, V_mean: 0, pf: 0, I_line: Infinity, I_C: Infinity });
    expect(busTrace({ ...bus, P: 60e3, R: 0.6, L: 0.5e-3, phases: 1 }).t).toHaveLength(0);
  });

  test("a choke that resonates with the bus near the ripple never settles, and a resistance damps it", () => {
    // 1/(2 pi sqrt(2.2 mH 800 uF)) = 120 Hz against a ripple of 100 Hz.
    const tuned = { V: 200, f: 50, P: 3200, C: 800e-6, L: 2.2e-3, phases: 1 };
    expect(Math.abs(busState({ ...tuned, R: 0.1 }).drift)).toBeGreaterThan(0.01);
    expect(Math.abs(busState({ ...tuned, R: 0.6 }).drift)).toBeLessThan(1e-3);
  });

  test("a bus too small to last until the next half-wave collapses on one phase and not on three", () => {
    const small = { ...bus, C: 150e-6, R: 0.35, L: 0.35e-3 };
    expect(busState({ ...small, phases: 1 }).V_valley).toBe(0);
    expect(busState({ ...small, phases: 3 }).V_valley).toBeGreaterThan(280);
  });
});

test("the traced cycle shows the same valley, crest and mean square as the figures", () => {
  for (const phases of [1, 3]) {
    const x = { ...bus, R: 0.35, L: 0.35e-3, phases };
    const { voltage, current, t } = busTrace(x);
    const now = busState(x);
    expect(Math.min(...voltage)).toBeCloseTo(now.V_valley, 4);
    expect(Math.max(...voltage)).toBeCloseTo(now.V_crest, 4);
    const square = current.reduce((sum, i) => sum + i * i, 0) / current.length;
    expect(Math.sqrt(phases === 3 ? (square * 2) / 3 : square) / now.I_line).toBeCloseTo(1, 2);
    expect(t.at(-1)).toBeGreaterThan((0.99 * 1) / 60);
  }
});
