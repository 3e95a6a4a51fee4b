import { expect, test } from "vitest";
import { earthLeakage, residualDevices, STANDING_SHARE, STRENGTHENED_EARTH_ABOVE } from "./leakage.ts";

test("47 nF at 230 V and 50 Hz leak 3.4 mA, just below what asks for a stronger earth", () => {
  // 2 pi 50 * 47e-9 * 230 = 3.396e-3.
  const leak = earthLeakage({ f: 50, C: 47e-9, V: 230 });
  expect(leak).toBeCloseTo(3.396e-3, 6);
  expect(leak).toBeLessThan(STRENGTHENED_EARTH_ABOVE);
});

test("leakage doubles with the length of cable and grows by a fifth from 50 to 60 Hz", () => {
  const x = { f: 50, C: 2e-9, V: 120 };
  expect(earthLeakage({ ...x, C: 4e-9 })).toBeCloseTo(2 * earthLeakage(x), 15);
  expect(earthLeakage({ ...x, f: 60 }) / earthLeakage(x)).toBeCloseTo(1.2, 12);
});

test("a 30 mA device is left 9 mA of standing leakage", () => {
  expect(30e-3 * STANDING_SHARE).toBeCloseTo(9e-3, 12);
});

test("a drive between two lines asks for type B though it has one phase, one to neutral for type F", () => {
  expect(residualDevices["line-to-line"].type).toBe("B");
  expect(residualDevices["three-phase"].type).toBe("B");
  expect(residualDevices["line-to-neutral"].type).toBe("F");
});
