import { expect, test } from "vitest";
import { expectNear, refused, worked } from "./bench.test-help.ts";

// Palmgren's law by hand: 2e-7 (22 * 3000)^(2/3) 80^3 N mm.
test("a bearing of 80 mm with factor 2 in oil of 22 cSt drags with 167.24 N mm at 3000 rpm and makes 52.5 W", () => {
  const M = worked("spindle.bearing.churning-torque", { f_0: "2", nu: "22 mm2/s", w: "3000 rpm", d_M: "80 mm" });
  expectNear(M, 0.16724, 1e-4);
  expectNear(worked("spindle.bearing.heat", { M_0: `${M} N*m`, M_1: "0 N*m", w: "3000 rpm" }), 52.53, 2e-4);
});

test("oil in a bath churns no less than grease in any rolling bearing, and a plain one follows other laws", () => {
  for (const kind of ["ball", "angular-contact", "angular-contact-pair", "taper-roller", "cylindrical-roller"]) {
    const factor = (lubricant: string) => worked("spindle.bearing.churning-factor", { kind, lubricant });
    expect(factor("oil")).toBeGreaterThanOrEqual(factor("grease"));
  }
  expect(refused("spindle.bearing.churning-factor", { kind: "plain", lubricant: "oil" }).message).toMatch(/^a plain bearing/);
});

const curve = (of: (t: number) => number): { t: string; T: string } => {
  const t = Array.from({ length: 13 }, (_, k) => 120 * k);
  return { t: `${t.join(", ")} s`, T: `${t.map((s) => of(s).toFixed(6)).join(", ")} degC` };
};

test("readings on their way from 20 to 45 degC with 12 minutes name 45 degC as plateau", () => {
  expectNear(
    worked(
      "spindle.bearing-plateau",
      curve((s) => 45 - 25 * Math.exp(-s / 720)),
    ),
    273.15 + 45,
    1e-5,
  );
});

test("a rise that grows faster and faster is refused: stop", () => {
  expect(
    refused(
      "spindle.bearing-plateau",
      curve((s) => 20 + 2 * Math.exp(s / 500)),
    ).message,
  ).toMatch(/^still accelerating: stop/);
});

test("three readings are too few", () => {
  expect(refused("spindle.bearing-plateau", { t: "0, 120, 240 s", T: "20, 22, 23 degC" }).message).toMatch(/^at least six readings/);
});
