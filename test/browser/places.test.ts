// Every place of the workbench, on the desk and on the phone, in both themes: nothing overlaps, nothing is too small, nothing is out of reach.
import { expect } from "vitest";
import { settled } from "./desk.ts";
import { axe, desk, pageTest, phone } from "./harness.ts";
import { lookChecks } from "./look.ts";

const places = [
  "/shop",
  "/lathe",
  "/lathe?working=lathe/supply.fault-current",
  "/lathe/spindle",
  "/lathe/spindle?working=lathe/spindle.motor.breakdown-torque",
  "/lathe/spindle?with=lathe/reconnect-low",
  "/lathe/supply",
  "/lathe/next?step=spindle.run-in",
  "/lathe/rooms",
  "/mill",
  "/nowhere/at/all",
];

pageTest.for(places)("%s has no fault of look or access, on the desk, on the phone, light and dark", async (place, { page }) => {
  await page.goto(new URL(place, page.url()).href);
  await settled(page);
  for (const viewport of [desk, phone]) {
    await page.setViewportSize(viewport);
    // Drawings come one after another, each laid out for its width.
    await page.waitForTimeout(800);
    const width = viewport.width;
    expect({ width, faults: await lookChecks(page) }).toEqual({ width, faults: [] });
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      expect({ width, colorScheme, faults: await axe(page) }).toEqual({ width, colorScheme, faults: [] });
    }
  }
});

pageTest("a page that has loaded asks for nothing that is not on this computer, and nothing more once it stands", async ({ page }) => {
  const requests: string[] = [];
  page.on("request", (request) => requests.push(new URL(request.url()).origin));
  await page.goto(new URL("/lathe/spindle", page.url()).href);
  await settled(page);
  expect(new Set(requests)).toEqual(new Set([new URL(page.url()).origin]));
});
