import { expect, test } from "vitest";
import { expectNear, refused, shopOf, worked } from "./bench.test-help.ts";
import type { CutPath } from "./cut-path.ts";

const turning304 = { kc11: "2350 N/mm2", m_c: "0.21", a_p: "1.5 mm", f: "0.2 mm", kappa: "95 deg", d: "25 mm" };

// Recomputed by hand from Kienzle's law (O. Kienzle 1952; Klocke, Fertigungsverfahren 1, ch. 3): h = 0.2 sin 95, kc = 2350 h^-0.21.
test("turning 304 at 1.5 mm by 0.2 mm on 25 mm asks 12.366 N m, 989 N and 1979 W at 120 m/min", () => {
  const sharp = { ...turning304, K: "1" };
  expectNear(worked("spindle.cut.turn-thickness", { f: "0.2 mm", kappa: "95 deg" }), 0.19924e-3, 1e-4);
  expectNear(worked("spindle.cut.turn-torque", sharp), 12.366, 1e-4);
  expectNear(worked("spindle.cut.specific-force", { kc11: "2350 N/mm2", m_c: "0.21", K: "1", h: "0.19924 mm" }), 3297.6e6, 1e-4);
  expectNear(worked("spindle.cut.edge-force", { T: "12.366 N*m", d: "25 mm" }), 989.28, 1e-4);
  const w = worked("spindle.cut.speed-by-surface", { v_c: "120 m/min", d: "25 mm", n_lim: "4000 rpm", n_top: "5000 rpm" });
  expectNear((w * 30) / Math.PI, 1527.9, 1e-4);
  expectNear(worked("spindle.cut.power", { T_m: "12.366 N*m", w: "1527.9 rpm" }), 1978.6, 2e-4);
});

test("a worn edge counted 1.4 asks 1385 N where a sharp one asks 989", () => {
  expectNear((2 * worked("spindle.cut.turn-torque", { ...turning304, K: "1.4" })) / 0.025, 1385.0, 1e-4);
});

// Published data of a carbide maker's table for mild steel of 520 MPa: kc 3100 at 0.2 mm; 3 mm x 0.2 mm at 120 m/min and efficiency 0.8 takes 4.65 kW.
test("mild steel, 3 mm by 0.2 mm at 120 m/min, takes 4.65 kW at the motor", () => {
  const torque = worked("spindle.cut.turn-torque", {
    K: "1",
    kc11: "3100 N/mm2",
    m_c: "0",
    a_p: "3 mm",
    f: "0.2 mm",
    kappa: "90 deg",
    d: "40 mm",
  });
  const atCut = (torque * (2 * (120 / 60))) / 0.04;
  expectNear(worked("spindle.cut.motor-power", { P: `${atCut} W`, eta_b: "80 %", T_0: "0 N*m", w: "900 rpm" }), 4650, 1e-9);
});

test("a drill of 8.5 mm at 0.12 mm a turn in titanium asks 2.7366 N m and 376 W at 35 m/min", () => {
  const given = { K: "1", kc11: "1370 N/mm2", m_c: "0.21", f: "0.12 mm", sigma: "130 deg", D: "8.5 mm", d_0: "0 mm" };
  expectNear(worked("spindle.cut.drill-thickness", { f: "0.12 mm", sigma: "130 deg" }), 0.054378e-3, 1e-4);
  const torque = worked("spindle.cut.drill-torque", given);
  expectNear(torque, 2.7366, 1e-4);
  const w = worked("spindle.cut.speed-by-surface", { v_c: "35 m/min", d: "8.5 mm", n_lim: "5000 rpm", n_top: "5000 rpm" });
  expectNear((w * 30) / Math.PI, 1310.7, 1e-4);
  expectNear(torque * w, 375.6, 2e-4);
});

test("opening a hole asks less than drilling into the full, and a hole as large as the drill is refused", () => {
  const given = { K: "1", kc11: "1370 N/mm2", m_c: "0.21", f: "0.12 mm", sigma: "130 deg", D: "8.5 mm" };
  const full = worked("spindle.cut.drill-torque", { ...given, d_0: "0 mm" });
  expectNear(worked("spindle.cut.drill-torque", { ...given, d_0: "4.25 mm" }), 0.75 * full, 1e-9);
  expect(refused("spindle.cut.drill-torque", { ...given, d_0: "8.5 mm" })).toEqual({
    code: "refused",
    message: "the hole is as large as the drill",
  });
});

test("a tap asks less than the trade rule kc p^2 D/8 by a sixth, and twice as much when it jams", () => {
  const given = { K: "1", kc11: "2000 N/mm2", m_c: "0", K_f: "1", K_form: "1", h: "0.04 mm", p: "1 mm", D: "8 mm" };
  const torque = worked("spindle.cut.tap-torque", given);
  const rule = (2000e6 * 1e-6 * 8e-3) / 8;
  expect(rule / torque).toBeGreaterThan(1.15);
  expect(rule / torque).toBeLessThan(1.2);
  expectNear(worked("spindle.cut.tap-jammed", { T: `${torque} N*m` }), 2 * torque, 1e-9);
});

test("straight in, the last thread pass is half as thick and asks more than along the flank", () => {
  const flank = worked("spindle.cut.thread-thickness-flank", { a_1: "0.2 mm", N: "7" });
  const radial = worked("spindle.cut.thread-thickness-radial", { a_1: "0.2 mm", N: "7" });
  expectNear(flank, 2 * radial, 1e-9);
  const given = { K: "1", kc11: "1950 N/mm2", m_c: "0.21", a_1: "0.2 mm", d: "8 mm" };
  const along = worked("spindle.cut.thread-torque", { ...given, h: `${flank} m` });
  // Along: 1950 (0.0378)^-0.21 = 3881 N/mm2 on 0.0231 mm2 at 4 mm.
  expectNear(along, 0.3585, 2e-3);
  expectNear(worked("spindle.cut.thread-torque", { ...given, h: `${radial} m` }) / along, 2 ** 0.21, 1e-9);
});

test("a cutter as wide as its cut meets the work the same whether beside or over it, and a wider cut is refused", () => {
  const wide = { a_e: "40 mm", D: "40 mm" };
  expectNear(worked("spindle.cut.mill-arc", { ...wide, engagement: "beside" }), Math.PI, 1e-9);
  expectNear(worked("spindle.cut.mill-arc", { ...wide, engagement: "centred" }), Math.PI, 1e-9);
  expect(refused("spindle.cut.mill-arc", { a_e: "41 mm", D: "40 mm", engagement: "beside" }).message).toBe(
    "the cut is wider than the cutter",
  );
});

test("with fewer than two teeth in the cut the peak is at least half as high again as the mean", () => {
  const given = {
    K: "1",
    kc11: "765 N/mm2",
    m_c: "0.24",
    f_z: "0.06 mm",
    kappa: "90 deg",
    a_p: "0.5 mm",
    a_e: "10 mm",
    D: "40 mm",
    z: "4",
  };
  const mean = worked("spindle.cut.mill-torque", { ...given, phi: `${Math.acos(0.5)} rad` });
  const peak = worked("spindle.cut.mill-peak-torque", { ...given, engagement: "beside" });
  expect(peak / mean).toBeGreaterThan(1.5);
  expect(peak / mean).toBeLessThan(3);
});

test("neither program nor surface speed takes the spindle past the highest speed wanted", () => {
  const slow = (w: number): number => (w * 30) / Math.PI;
  expect(slow(worked("spindle.cut.speed-as-given", { n: "9000 rpm", n_lim: "5000 rpm", n_top: "2800 rpm" }))).toBeCloseTo(2800, 9);
  expect(slow(worked("spindle.cut.speed-by-surface", { v_c: "75 m/min", d: "0 mm", w_cap: "2600 rpm" }))).toBeCloseTo(2600, 9);
});

const machine = `machine: lathe
kind: turret-lathe
spindle: { highest-speed: 3000 rpm }
tools: { 1: { name: turn, insert: sharp }, 2: { name: drill, kind: drill, diameter: 8 mm, point: 130 deg } }
`;
const catalogue = `materials: { stuff: { kc: 2000 N/mm2, mc: 0.25 } }
inserts: { sharp: { edge-angle: 90 deg, rake: 6 deg, nose: 0.4 mm } }
`;
const work = (operation: string): Record<string, string> => ({
  "catalogue/parts.yaml": catalogue,
  "lathe/work/shaft.yaml": `part: shaft\nstock: { material: stuff, size: 20 mm }\noperations:\n  - ${operation}\n`,
});

test("an operation finds its edge through tool and insert, its force through the material, its diameter in the stock", () => {
  const s = shopOf(
    machine,
    work("{ operation: rough, kind: turn, tool: 1, surface-speed: 100 m/min, feed: 0.1 mm, depth: 1 mm, wear: 1 }"),
  );
  const torque = s.answer.figures["lathe/spindle.work/shaft.operations.rough.cut.torque"];
  // 2000 * 0.1^-0.25 = 3556.6 N/mm2 on 0.1 mm2 at 10 mm.
  expect(torque?.amount.nominal).toBeCloseTo(3.5566, 4);
});

test("a drill takes its diameter from the tool, and what it lacks is named", () => {
  const whole = shopOf(machine, work("{ operation: drill, kind: drill, tool: 2, speed: 1000 rpm, feed: 0.1 mm }"));
  expect(whole.answer.figures["lathe/spindle.work/shaft.operations.drill.cut.tool-diameter"]?.amount.nominal).toBeCloseTo(8e-3, 12);
  expect(whole.answer.notices.filter((n) => n.address.endsWith("cut.incomplete"))).toEqual([]);
  const lacking = shopOf(machine, work("{ operation: drill, kind: drill, tool: 2, speed: 1000 rpm }"));
  expect(lacking.answer.notices.find((n) => n.address.endsWith("cut.incomplete"))?.says).toMatch(/it may lack feed\.$/);
});

test("a material that is not named leaves the whole table as its band", () => {
  const s = shopOf(machine, {
    "lathe/work/shaft.yaml":
      "part: shaft\nstock: { size: 20 mm }\noperations:\n  - { operation: rough, kind: turn, speed: 900 rpm, feed: 0.1 mm, depth: 1 mm, wear: 1 }\n",
  });
  const amount = s.answer.figures["lathe/spindle.work/shaft.operations.rough.cut.torque"]?.amount;
  expect(Number(amount?.high) / Number(amount?.low)).toBeGreaterThan(3);
});

test("parting runs up to its cap and its torque falls to nothing at the centre", () => {
  const s = shopOf(
    machine,
    work("{ operation: part-off, kind: part-off, surface-speed: 100 m/min, speed-limit: 2500 rpm, feed: 0.05 mm, width: 2 mm, wear: 1 }"),
  );
  const cell = s.graph.cells.get("lathe/spindle.work/shaft.operations.part-off.cut.path");
  const filled = cell && s.evaluation.filled.get(cell);
  const path = (filled && "each" in filled ? filled.each[0] : undefined) as CutPath | undefined; // what the value gives
  const outside = s.answer.figures["lathe/spindle.work/shaft.operations.part-off.cut.torque"]?.amount.nominal;
  expect(path?.T[0]).toBe(outside);
  expect(path?.T.at(-1)).toBe(0);
  expect(path?.w[0]).toBeCloseTo(100 / 60 / 10e-3, 9);
  expect(path?.w.at(-1)).toBeCloseTo((2500 * Math.PI) / 30, 9);
});
