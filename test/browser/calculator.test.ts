// The calculator in a real browser: any figure from values typed, with its working, its plot, and an address that holds it all.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { expect } from "vitest";
import { soon } from "./desk.ts";
import { axe, pageTest } from "./harness.ts";
import { desk, phone, servePage } from "./served.ts";
import { lookChecks } from "./look.ts";

const go = async (page: Page, path: string): Promise<void> => {
  await page.goto(new URL(path, page.url()).href);
  await page.waitForSelector(".figure-list");
};
const result = (page: Page): Promise<string> => page.locator(".one .big").innerText();

/** Two pulleys of 100 mm, their shafts 400 mm apart: two straight strands and one turn, L = 2 c + pi d. */
const belt = "/shop/calculator?figure=spindle.belt.length&v.d_m=100%20mm&v.d_s=100%20mm&v.c=400%20mm";
const length = (c: number, d: number): number => 2 * c + Math.PI * d; // mm

const placesOfCalculator = [
  "/shop/calculator",
  "/shop/calculator?figure=spindle.brake.energy",
  "/shop/calculator?figure=spindle.belt.length&v.d_m=90%20to%20110%20mm&v.d_s=130%20mm&v.c=16%20in&along=c&range=10%20to%2030%20in",
  "/shop/calculator?figure=spindle.belt.length&v.d_m=90%20bar",
];

pageTest.for(placesOfCalculator)(
  "%s has no fault of look or access, on the desk, on the phone, light and dark",
  async (place, { page }) => {
    await go(page, place);
    await page.waitForTimeout(1500);
    for (const viewport of [desk, phone]) {
      await page.setViewportSize(viewport);
      for (const colorScheme of ["light", "dark"] as const) {
        await page.emulateMedia({ colorScheme });
        await page.waitForTimeout(400);
        const at = `${viewport.width} ${colorScheme}`;
        expect({ at, faults: await lookChecks(page) }).toEqual({ at, faults: [] });
        expect({ at, faults: await axe(page) }).toEqual({ at, faults: [] });
      }
    }
  },
);

pageTest("a figure is found by its words, its fields filled, and what is still wanted is said until nothing is", async ({ page }) => {
  await go(page, "/shop/calculator");
  const search = page.getByRole("searchbox", { name: "Find a figure by its words, its id or its symbol" });
  await search.fill("pitch length");
  await search.press("ArrowDown");
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: "Pitch length of the belt" }).waitFor();
  await expect
    .poll(() => page.locator(".wants li").allTextContents(), soon)
    .toEqual(["pitch diameter of the motor pulley", "pitch diameter of the spindle pulley", "distance between the shafts"]);
  // The formula stands there before anything is typed.
  expect(await page.locator(".one .formula math").count()).toBeGreaterThan(0);
  await page.getByLabel(/^Pitch diameter of the motor pulley/).fill("100 mm");
  await page.getByLabel(/^Pitch diameter of the spindle pulley/).fill("100 mm");
  await page.getByLabel(/^Distance between the shafts/).fill("400 mm");
  await expect.poll(() => result(page), soon).toContain(`${Math.round(length(400, 100))}`);
  await expect.poll(() => new URL(page.url()).searchParams.get("v.c"), soon).toBe("400 mm");
});

pageTest("a range gives a band, and what decides it is the range", async ({ page }) => {
  await go(page, belt.replace("v.c=400%20mm", "v.c=390%20to%20410%20mm"));
  // Nine tenths of a range lie between its 5 and its 95 %, and a belt is twice as long as its shafts are apart.
  const [low, high] = [length(391, 100), length(409, 100)];
  await expect.poll(() => result(page), soon).toMatch(new RegExp(`${Math.round(low)} to ${Math.round(high)}`));
  expect(await page.locator(".shares li").allTextContents()).toEqual(["distance between the shafts100 %"]);
});

pageTest("a value in a wrong unit is refused at its field, in the words of the files", async ({ page }) => {
  await go(page, belt);
  const field = page.getByLabel(/^Distance between the shafts/);
  await field.fill("4 bar");
  await expect.poll(() => field.getAttribute("aria-invalid"), soon).toBe("true");
  expect(await page.locator(".values .is-bad .note").textContent()).toMatch(/pressure; expected a length/);
  await field.fill("16 in");
  await expect.poll(() => field.getAttribute("aria-invalid"), soon).toBe("false");
  await expect.poll(() => result(page), soon).toContain(`${Math.round(length(406.4, 100))}`);
});

pageTest("lists take one unit for all of their values", async ({ page }) => {
  // A bearing that warms from 20 to 50 degC with a time constant of 10 min: T = 50 - 30 exp(-t / 10 min).
  const minutes = [0, 5, 10, 15, 20, 30, 40];
  const warm = minutes.map((t) => (50 - 30 * Math.exp(-t / 10)).toFixed(3));
  await go(page, "/shop/calculator?figure=spindle.bearing-plateau");
  const fields = page.locator(".values .row input");
  await fields.first().waitFor();
  await fields.nth(0).fill(`${minutes.join(", ")} min`);
  await fields.nth(1).fill(`${warm.join(", ")} degC`);
  await expect.poll(() => result(page), soon).toMatch(/\n50\n°C/);
});

pageTest("what lies below a figure that is left empty gets fields of its own, which stay when they are filled", async ({ page }) => {
  await go(page, "/shop/calculator?figure=spindle.cut.force");
  const feed = page.getByLabel(/^Feed a turn/);
  await feed.fill("0.2 mm");
  await expect.poll(() => page.locator(".values .is-wanted").count(), soon).toBeGreaterThan(0);
  expect(await feed.inputValue()).toBe("0.2 mm");
});

pageTest("along one value the figure is a curve, read by a cursor and taken away as SVG and CSV", async ({ page }) => {
  await go(page, `${belt}&along=c&range=200%20to%20600%20mm&steps=5`);
  await page.locator(".along .picture").waitFor();
  const cursor = page.getByRole("slider", { name: /^Pitch length of the belt: values along/ });
  await cursor.focus();
  await page.keyboard.press("ArrowRight");
  expect(await cursor.getAttribute("aria-valuetext")).toMatch(/^4\d\d(\.\d+)? mm, L 1\d\d\d(\.\d+)? mm$/);
  const taken = async (name: string): Promise<string> => {
    const [download] = await Promise.all([page.waitForEvent("download"), page.locator(".along").getByRole("button", { name }).click()]);
    return readFileSync(await download.path(), "utf8");
  };
  const rows = (await taken("CSV"))
    .replace("\uFEFF", "")
    .trim()
    .split("\r\n")
    .map((line) => line.split(","));
  expect(rows[0]).toEqual(["distance between the shafts [mm]", "L [mm]"]);
  for (const [c, L] of rows.slice(1)) expect(Number(L)).toBeCloseTo(length(Number(c), 100), 3);
  expect(rows.length).toBe(6);
  expect(await taken("SVG")).toMatch(/^<svg [^>]*aria-label="Pitch length of the belt along distance between the shafts/);
});

pageTest("the whole calculation is a link: another tab shows the same", async ({ page, desktop }) => {
  await go(page, `${belt}&along=c&range=200%20to%20600%20mm`);
  await page.locator(".along .picture").waitFor();
  const other = await desktop.newPage();
  await other.goto(page.url());
  await other.locator(".along .picture").waitFor();
  expect(await result(other)).toBe(await result(page));
  await other.close();
});

pageTest("a folder with nothing in it but its name still calculates", async ({ browser }) => {
  const place = mkdtempSync(join(tmpdir(), "waywright-empty-"));
  mkdirSync(join(place, "empty"));
  writeFileSync(join(place, "empty", "shop.yaml"), "waywright: 1\nshop: Heron Reel Works\n");
  const served = await servePage(join(place, "empty"));
  const page = await browser.newPage({ viewport: desk });
  try {
    await page.goto(served.start);
    await go(page, belt);
    await expect.poll(() => result(page), soon).toContain(`${Math.round(length(400, 100))}`);
  } finally {
    await page.close();
    await served.stop();
    rmSync(place, { recursive: true, force: true });
  }
});
