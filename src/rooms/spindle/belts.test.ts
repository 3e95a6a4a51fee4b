import { expect, test } from "vitest";
import { expectNear, refused, shopOf, verdictOf, worked } from "./bench.test-help.ts";

test("equal pulleys are wrapped by half a turn, and their belt is twice the distance and once around", () => {
  const equal = { d_m: "100 mm", d_s: "100 mm", c: "400 mm" };
  expectNear(worked("spindle.belt.wrap", equal), Math.PI, 1e-12);
  expectNear(worked("spindle.belt.length", equal), 0.8 + Math.PI * 0.1, 1e-12);
});

test("pulleys that would touch are refused", () => {
  expect(refused("spindle.belt.wrap", { d_m: "300 mm", d_s: "300 mm", c: "250 mm" }).message).toMatch(/^these pulleys would touch/);
});

const set = { T_0: "200 N", z_b: "2", mu: "0.4", theta: "180 deg", beta: "38 deg", d_m: "140 mm" };

test("at rest a belt between fixed shafts slips at the same torque as a sprung one; at speed it slips sooner", () => {
  const sprung = worked("spindle.belt.slip-torque-sprung", set);
  expectNear(worked("spindle.belt.slip-torque-fixed", { ...set, m_1: "0.15 kg/m", v: "0 m/s", k_v: "1" }), sprung, 1e-12);
  expectNear(
    worked("spindle.belt.slip-torque-fixed", { ...set, m_1: "0.15 kg/m", v: "20 m/s", k_v: "1" }) / sprung,
    1 - (0.15 * 400) / 200,
    1e-12,
  );
});

test("a belt that flies off its pulleys holds nothing", () => {
  expect(worked("spindle.belt.slip-torque-fixed", { ...set, m_1: "0.15 kg/m", v: "60 m/s", k_v: "1" })).toBe(0);
});

test("a flat belt holds far less than a wedged one", () => {
  const flat = worked("spindle.belt.slip-torque-sprung", { ...set, beta: `${worked("spindle.belt.flat-face", {})} rad` });
  // tanh(0.4 pi/2) against tanh(0.4 pi/(2 sin 19 deg)).
  expectNear(
    flat / worked("spindle.belt.slip-torque-sprung", set),
    Math.tanh(0.2 * Math.PI) / Math.tanh((0.2 * Math.PI) / Math.sin((19 * Math.PI) / 180)),
    1e-9,
  );
});

const mill = (belt: string): string => `machine: mill
kind: bed-mill
spindle:
  motor: { kind: induction, plate: { power: 5 hp, voltage: 230 V, current: 13 A, frequency: 60 Hz, speed: 1745 rpm }, leads: 3, connected: star }
  drive: { rated-current: 17 A, input-phases: 1, single-phase: yes }
  belts: { only: { motor-pulley: 100 mm, spindle-pulley: 100 mm, centre: 400 mm, ${belt} } }
  highest-speed: 1800 rpm
`;

test("one slack belt slips under 5 hp, three tight ones hold; gears are not asked", () => {
  const grip = (belt: string) => verdictOf(shopOf(mill(belt)), "only.grip-holds").verdict;
  expect(grip("kind: v-belt, count: 1, strand-tension: 60 N, tension: sprung, friction: 0.3")).toBe("fails");
  expect(grip("kind: v-belt, count: 3, strand-tension: 300 N, tension: sprung, friction: 0.4")).toBe("holds");
  expect(shopOf(mill("kind: gears")).answer.checks.some((c) => c.address.endsWith("grip-holds"))).toBe(false);
});

test("run to twice base speed, a slack belt gives way there first: torque has halved, its own pull has grown fourfold", () => {
  const at = (k_v: string, T_0: string) => worked("spindle.belt.slip-torque-fixed", { ...set, T_0, m_1: "0.2 kg/m", v: "11 m/s", k_v });
  // Grip left, 120 N less m v^2: 95.8 N at base speed; 23.2 N at twice that, where 46.4 N would do for the torque at base.
  expectNear(at("2", "120 N") / at("1", "120 N"), (2 * (120 - 0.2 * 22 * 22)) / (120 - 0.2 * 11 * 11), 1e-9);
  expect(at("2", "400 N")).toBe(at("1", "400 N"));
});
