import { expect, test } from "vitest";
import { expectNear, shopOf, verdictOf, worked } from "./bench.test-help.ts";

test("a 50 Hz pump on 60 Hz asks 1.728 times the power", () => {
  expectNear(worked("spindle.pump.power-ratio", { f_1: "50 Hz", f_2: "60 Hz" }), 1.728, 1e-9);
});

const pump = (plate: string, more = ""): string => `machine: lathe
kind: turret-lathe
fluids: { coolant: { pump: { motor: { kind: induction, plate: { ${plate} } }${more} } } }
`;
const flux = (machine: string) => shopOf(machine).answer.notices.find((n) => n.address.endsWith("pump.flux"))?.says;

test("a 230 V 50 Hz winding on 240 V 60 Hz lacks flux while its pump asks more, and the check fails", () => {
  const abroad = pump("power: 0.18 kW, voltage: 230 V, current: 0.9 A, frequency: 50 Hz, speed: 2850 rpm");
  expect(flux(abroad)).toMatch(/flux 15 % down, .* while the pump asks 73 % more power/);
  expect(verdictOf(shopOf(abroad), "pump.overload-holds").verdict).toBe("fails");
});

test("a winding of the line's own volts and hertz is left in peace, and so is one behind a drive", () => {
  expect(flux(pump("power: 0.18 kW, voltage: 240 V, current: 0.9 A, frequency: 60 Hz, speed: 3420 rpm"))).toBeUndefined();
  const abroad = "power: 0.18 kW, voltage: 230 V, current: 0.9 A, frequency: 50 Hz, speed: 2850 rpm";
  expect(flux(pump(abroad, ", drive: { rated-current: 1.5 A }"))).toBeUndefined();
});
