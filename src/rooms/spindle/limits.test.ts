import { expect, test } from "vitest";
import { expectNear, shopOf, verdictOf, worked } from "./bench.test-help.ts";

// 3 * 0.55 kg * 55 mm * (3000 rpm)^2.
const jaws = { z_j: "3", m_j: "0.55 kg", r_j: "55 mm", w: "3000 rpm" };

test("three jaws of 0.55 kg at 55 mm pull 8956.7 N on themselves at 3000 rpm", () => {
  expectNear(worked("spindle.chuck.grip-lost", jaws), 8956.7, 1e-5);
});

test("what jaws lose outside they gain inside, and they never push the work away", () => {
  expectNear(worked("spindle.chuck.grip-outside", { ...jaws, F_0: "20 kN" }), 20000 - 8956.7, 1e-5);
  expectNear(worked("spindle.chuck.grip-inside", { ...jaws, F_0: "20 kN" }), 20000 + 8956.7, 1e-5);
  expect(worked("spindle.chuck.grip-outside", { ...jaws, F_0: "8 kN" })).toBe(0);
});

test("a cut of 20 N m and 300 N along on 40 mm slips below 5220 N at a friction of 0.2", () => {
  expectNear(
    worked("spindle.chuck.grip-needed", { T: "20 N*m", d: "40 mm", F_a: "300 N", mu_g: "0.2" }),
    Math.hypot(1000, 300) / 0.2,
    1e-9,
  );
});

const lathe = (allowed: string, more = ""): string => `machine: lathe
kind: turret-lathe
spindle:
  belts: { only: { motor-pulley: 140 mm, spindle-pulley: 112 mm } }
  highest-speed: 2800 rpm
  allowed-speed: { ${allowed} }
${more}`;
const known = "collet: 5000 rpm, chuck: none, jaws: none, bearings: 4000 rpm, motor: 3600 rpm, pulley: 4500 rpm";

test("while the closer's speed is not entered the limit stays open and names it", () => {
  const check = verdictOf(shopOf(lathe(`${known}, closer: unknown`)), "spindle.speed-holds");
  expect(check.verdict).toBe("open");
  expect(check.deciders.map((d) => d.input)).toEqual(["lathe/spindle.allowed-speed.closer"]);
});

test("with every speed entered the smallest decides, and what is not fitted does not count", () => {
  const check = verdictOf(shopOf(lathe(`${known}, closer: 3200 rpm`)), "spindle.speed-holds");
  expect(check.verdict).toBe("holds");
  expectNear(Number(check.capacity?.amount.nominal), (3200 * Math.PI) / 30, 1e-9);
  expect(check.people).toBe(true);
});

test("one speed that is too low fails even while others are not known", () => {
  expect(
    verdictOf(shopOf(lathe(`${known}, closer: unknown, collet: 2500 rpm`.replace("collet: 5000 rpm, ", ""))), "speed-holds").verdict,
  ).toBe("fails");
});

test("the motor's speed counts through the ratio: 3600 rpm of the motor are 4500 rpm of the spindle", () => {
  expectNear(worked("spindle.motor-speed-limit", { n_m: "3600 rpm", i: "0.8" }), (4500 * Math.PI) / 30, 1e-9);
});

const work = {
  "lathe/work/hub.yaml":
    "part: hub\nstock: { size: 60 mm }\noperations:\n  - { operation: face, kind: face, surface-speed: 200 m/min, speed-limit: 2800 rpm, feed: 0.1 mm, depth: 0.5 mm, wear: 1 }\n",
};
const held = (holding: string): string => lathe(known, `  workholding: { ${holding} }\n`);

test("a chuck is judged at the cap of a facing cut, where its jaws pull hardest", () => {
  const s = shopOf(held("kind: chuck, force: 30 kN, jaws: 3, jaw-mass: 0.55 kg, jaw-radius: 55 mm, friction: 0.2"), work);
  const grip = s.answer.figures["lathe/spindle.work/hub.operations.face.chuck.grip"]?.amount;
  expectNear(Number(grip?.nominal), 30000 - 8956.7 * (2800 / 3000) ** 2, 1e-4);
  expect(verdictOf(s, "chuck.grip-holds").verdict).toBe("holds");
});

test("a grip nobody has measured is never guessed", () => {
  const check = verdictOf(
    shopOf(held("kind: chuck, force: unknown, jaws: 3, jaw-mass: 0.55 kg, jaw-radius: 55 mm"), work),
    "chuck.grip-holds",
  );
  expect(check.verdict).toBe("open");
  expect(check.deciders[0]?.input).toBe("lathe/spindle.workholding.force");
});

test("jaws whose mass nobody knows do not pass for a collet", () => {
  expect(
    verdictOf(shopOf(held("kind: chuck, force: 30 kN, jaws: 3, jaw-mass: unknown, jaw-radius: 55 mm"), work), "chuck.grip-holds").verdict,
  ).toBe("open");
});
