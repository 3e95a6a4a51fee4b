// Torque, terminal box, bus, heat and narrowing from samples made by hand: what each says at its edges.
import { describe, expect, test } from "vitest";
import type { Case, Drawn, Frame, Picture } from "../../kernel/room.ts";
import { busPicture, sizingPicture } from "./pictures-drive.ts";
import { shiftPicture } from "./pictures-heat.ts";
import { boxPicture, familyPicture } from "./pictures-motor.ts";
import { narrowingPicture } from "./pictures-narrowing.ts";
import { torquePicture } from "./pictures-torque.ts";

const frame: Frame = { width: 586, units: "metric", prefix: "p" };
function draw(p: Picture, ...samples: readonly object[]): Drawn {
  const one = { name: "as found", samples: { count: samples.length, at: (k: number) => samples[k] ?? {} }, verdict: () => null };
  return p.draws([one as unknown as Case<never>], frame);
}
const says = (d: Drawn): string => /aria-label="([^"]*)"/.exec(d.svg)?.[1] ?? "";

/** The lathe motor in parallel on a drive whose bus does not sag: 240 V at any power. */
const c = {
  circuit: { R_1: 0.225, X_1: 0.4375, R_2: 0.1875, X_2: 0.525, X_m: 13, G_c: 0, f: 60, poles: 4 },
  losses: { P_fw: 0, w_fw: 182.8, P_stray: 0, I_2n: 22 },
  V_n: 230,
  f_n: 60,
  E_0: null,
  P: 6000,
  valleys: [339.4, 339.4, 339.4, 339.4],
  k_dt: 1,
  eta_d: 1,
  I_hours: 22.544,
  I_short: 33.8,
  T_n: 38.486,
  I_n: 22.544,
  w_n: 182.84,
  k_f: 0,
  share: 0.67,
  g_0: 0.3,
  tested: true,
};
const ratios = [{ from: "only", item: "lathe/spindle.belts.only", value: { i: 1, eta: 1 } }];
const spindle = { c, ratios, n_top: 283, w_b: 188.5, n_lim: null, cuts: [], t_o: 60 };

describe("torque against speed", () => {
  test("its numbers are those of the circuit: 38.5 N*m where full flux ends, 27.8 N*m at 90 Hz", () => {
    const rows = (draw(torquePicture, spindle).csv ?? "")
      .trim()
      .split("\r\n")
      .slice(1)
      .map((r) => r.split(",").map(Number));
    const near = (rpm: number) => rows.toSorted(([a = 0], [b = 0]) => Math.abs(a - rpm) - Math.abs(b - rpm))[0]?.[1] ?? 0;
    expect(near(1746) / 38.486).toBeGreaterThan(0.97);
    expect(near(1746) / 38.486).toBeLessThan(1.03);
    // 27.83 N*m at 90 Hz (2,700 rpm less slip).
    expect(near(2620) / 27.83).toBeGreaterThan(0.95);
    expect(near(2620) / 27.83).toBeLessThan(1.05);
  });
  test("without cuts it says that none are entered", () => {
    expect(says(draw(torquePicture, spindle))).toContain("no cuts entered");
  });
  test("a parting cut at constant surface speed wanders as a path, one at constant speed does not", () => {
    const cut = (held: boolean) => ({
      from: "part-off",
      item: "lathe/work/knob.operations.part-off",
      value: { kind: "part-off", w: 100, T: 10, cap: 250, held },
    });
    const paths = (held: boolean) => draw(torquePicture, { ...spindle, cuts: [cut(held)] }).svg.match(/class="nf i3"/g)?.length ?? 0;
    expect(paths(true)).toBe(paths(false) + 1);
  });
  test("a limit nobody knows draws nothing, a known one hatches all above it", () => {
    expect(draw(torquePicture, spindle).svg).not.toContain("allowed to here");
    expect(draw(torquePicture, { ...spindle, n_lim: 250 }).svg).toContain("allowed to here");
  });
});

test("the family says where full flux ends and what pull-out is left: 110.8 N*m at 60 Hz, 57.7 at 90", () => {
  expect(says(draw(familyPicture, { c }))).toMatch(/full flux to 60\.0 Hz, pull-out 111 N·m there and 57\.7 N·m at 90 Hz/);
});

const box = { n_l: 9, winding: "star", n_sp: 1, links: ["4-7", "5-8", "6-9"], lines: ["1", "2", "3"], connected: "series" };
describe("terminal box", () => {
  test("links that leave a coil reversed are drawn with what is wrong", () => {
    expect(says(draw(boxPicture, { ...box, links: ["1-5-6"], lines: ["4-7", "2-8", "3-9"] }))).toMatch(/Wrong: /);
  });
  test("where only the connection is named its links are those of the table", () => {
    expect(says(draw(boxPicture, { ...box, links: null, lines: null, connected: "parallel" }))).toContain(
      "joined 4-5-6, lines on 1-7, 2-8, 3-9",
    );
  });
  test.each([
    [{ ...box, links: null, lines: null, connected: null }, /not drawn, neither the links/],
    [{ ...box, n_l: 7 }, /not drawn, /],
    [{ ...box, n_sp: 2 }, /two-speed/],
  ])("what cannot be drawn says why: %o", (x, why) => expect(says(draw(boxPicture, x))).toMatch(why));
});

const bus = { V: 240, f: 60, P: 2400, C: 1000e-6, R: 0.35, L: 0.35e-3, phases: 1, trip: 400, low: 200 };
describe("bus", () => {
  test("240 V, 2.4 kW, 1000 uF on a house supply swing from 299 to 346 V at 16.6 A", () => {
    // Own simulation at a step four hundred times finer: 299..346 V, 16.6 A.
    const [, valley = 0, crest = 0, I = 0] =
      /from (\d+) to (\d+) V; the line gives ([\d.]+) A/.exec(says(draw(busPicture, bus)))?.map(Number) ?? [];
    expect(Math.abs(valley - 299)).toBeLessThanOrEqual(3);
    expect(Math.abs(crest - 346)).toBeLessThanOrEqual(3);
    expect(Math.abs(I / 16.6 - 1)).toBeLessThan(0.02);
  });
  test("a power no supply of this impedance carries is said, not drawn", () => {
    expect(says(draw(busPicture, { ...bus, P: 200e3 }))).toContain("the bus collapses");
  });
  test("a choke takes amperes down and the valley with them", () => {
    const [, bare = 0, high = 0, choked = 0, low = 0] =
      /no choke ([\d.]+) A and a valley of (\d+) V.*3 % choke ([\d.]+) A and a valley of (\d+) V/
        .exec(says(draw(sizingPicture, { ...bus, x_c: null, I_b: null })))
        ?.map(Number) ?? [];
    expect(choked).toBeLessThan(bare);
    expect(low).toBeLessThan(high);
  });
  test("where the drive would not run its line ends, and the label says where", () => {
    expect(says(draw(sizingPicture, { ...bus, C: 200e-6, low: 280, x_c: null, I_b: 12 }))).toMatch(/runs only to [\d.]+ kW/);
  });
});

const idle = { h: 0.3, g: 1 };
const warm = { c, cuts: null, u: 0.3, tau: 1800, rise: 80, T: null, t: null };
describe("winding over a shift", () => {
  test("plate torque all day settles at the class rise", () => {
    const rise = Number(/stands ([\d.]+) K/.exec(says(draw(shiftPicture, { ...warm, T: [38.486], t: [60] })))?.[1]);
    expect(Math.abs(rise / 80 - 1)).toBeLessThan(0.01);
  });
  test("a cut that is too hot says how long it may go on without a pause", () => {
    // h/g = 2: half of the settled rise is reached after tau ln 2.
    const cut = { from: "rough", item: "lathe/work/knob.operations.rough", value: { on: { h: 2, g: 1 }, idle } };
    expect(says(draw(shiftPicture, { ...warm, cuts: [cut] }))).toContain(`after ${Math.round((1800 * Math.LN2) / 60)} min`);
  });
  test("with its pauses the same cut settles at the mean of the heat", () => {
    const cut = { from: "rough", item: "lathe/work/knob.operations.rough", value: { on: { h: 2, g: 1 }, idle } };
    const rise = Number(/stands ([\d.]+) K/.exec(says(draw(shiftPicture, { ...warm, cuts: [cut] })))?.[1]);
    expect(Math.abs(rise / (80 * (0.3 * 2 + 0.7 * 0.3)) - 1)).toBeLessThan(0.03);
  });
  test("without duty and cuts there is nothing to draw", () => {
    expect(says(draw(shiftPicture, warm))).toContain("neither a duty of the motor nor any cut");
  });
});

describe("what each measurement would leave", () => {
  // Breakdown hangs on leakage, which the standstill test reads; resistance and magnetising current say nothing of it.
  const samples = Array.from({ length: 1000 }, (_, k) => ({
    T: 90 + 20 * (k === 0 ? 0 : ((k * 7) % 999) / 999 - 0.5),
    T_n: 30,
    R_ll: 1.7 + 0.5 * (k === 0 ? 0 : ((k * 13) % 997) / 997 - 0.5),
    I_0: 5 + (k === 0 ? 0 : ((k * 29) % 991) / 991 - 0.5),
    X_k: 4 - 1.5 * (k === 0 ? 0 : ((k * 7) % 999) / 999 - 0.5),
    R: null,
    I: null,
    k: null,
  }));
  test("the reading that breakdown hangs on is named as the one that leaves least", () => {
    expect(says(draw(narrowingPicture, ...samples))).toMatch(
      /the standstill test would leave 89\.\d N·m to 90\.\d N·m, less than any other/,
    );
  });
  test("a reading already taken is not promised again", () => {
    const d = draw(narrowingPicture, ...samples.map((s) => ({ ...s, k: 11.7 })));
    expect(d.svg).toContain("with standstill test");
    expect(d.svg).not.toContain("after the standstill test");
  });
  test("a circuit that is exact has nothing left to narrow", () => {
    expect(says(draw(narrowingPicture, ...samples.slice(0, 1)))).toContain("known as well as these readings would tell");
  });
});
