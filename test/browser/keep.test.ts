// Keeping in a real browser: what is written is what was shown, comments stay, and nobody's work is lost.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect } from "vitest";
import { field, openGroup, settled, soon, visit } from "./desk.ts";
import { pageTest } from "./harness.ts";

const machine = (folder: string): string => join(folder, "lathe/machine.yaml");

pageTest("keeping shows the changed lines, writes exactly those and leaves every comment", async ({ page, shop }) => {
  const before = readFileSync(machine(shop.folder), "utf8");
  await visit(page, "/lathe/spindle");
  await openGroup(page, "Drive");
  await field(page, "Carrier frequency").fill("6 kHz");
  await page.getByRole("button", { name: "Show and keep" }).click();
  const dialog = page.getByRole("dialog");
  await dialog.locator(".lines .new").waitFor();
  expect((await dialog.locator(".lines .old code").allTextContents()).map((text) => text.trim())).toEqual(["carrier: 4 kHz"]);
  expect((await dialog.locator(".lines .new code").allTextContents()).map((text) => text.trim())).toEqual(["carrier: 6 kHz"]);
  await dialog.getByRole("button", { name: "Keep 1 file" }).click();
  await dialog.waitFor({ state: "detached" });
  expect(readFileSync(machine(shop.folder), "utf8")).toBe(before.replace("carrier: 4 kHz", "carrier: 6 kHz"));
  expect(await page.locator(".keep-bar").count()).toBe(0);
  await settled(page);
  expect(await field(page, "Carrier frequency").inputValue()).toBe("6 kHz");
});

pageTest("a hand edit in another line is taken in, and the edit on the page stands", async ({ page, shop }) => {
  await visit(page, "/lathe/spindle");
  await openGroup(page, "Drive");
  await field(page, "Current limit set, as a share of rated").fill("90 %");
  const text = readFileSync(machine(shop.folder), "utf8");
  writeFileSync(machine(shop.folder), text.replace("ramp: { up: 4 s", "ramp: { up: 6 s"));
  await openGroup(page, "Drive ramp");
  await expect.poll(() => field(page, "Ramp to highest speed").inputValue(), soon).toBe("6 s");
  expect(await field(page, "Current limit set, as a share of rated").inputValue()).toBe("90 %");
  await page.getByRole("button", { name: "Show and keep" }).click();
  await page.getByRole("button", { name: "Keep 1 file" }).click();
  await page.getByRole("dialog").waitFor({ state: "detached" });
  const after = readFileSync(machine(shop.folder), "utf8");
  expect(after).toContain("current-limit: 90 %");
  expect(after).toContain("ramp: { up: 6 s");
});

pageTest("the same line changed by hand and on the page is asked about, and the line chosen is the one written", async ({ page, shop }) => {
  await visit(page, "/lathe/spindle");
  await openGroup(page, "Motor");
  const highest = field(page, "Highest speed the motor's maker allows");
  await highest.fill("3400 rpm");
  const text = readFileSync(machine(shop.folder), "utf8");
  expect(text).toContain("    highest-speed: 3600 rpm");
  writeFileSync(
    machine(shop.folder),
    text.replace("    highest-speed: 3600 rpm", "    highest-speed: 3500 rpm").replace("leads: 9", "leads: 9    # counted"),
  );
  await page.getByRole("button", { name: "Show both" }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByRole("radio").first().waitFor();
  const sides = await dialog.locator(".meeting label").allTextContents();
  expect(sides.map((side) => side.replace(/\s+/g, " ").trim())).toEqual([
    "on disk now highest-speed: 3500 rpm",
    "yours highest-speed: 3400 rpm",
  ]);
  await dialog.getByRole("radio", { name: /^yours/ }).check();
  await dialog.getByRole("button", { name: "Take these lines" }).click();
  await dialog.getByRole("button", { name: "Keep 1 file" }).click();
  await dialog.waitFor({ state: "detached" });
  const after = readFileSync(machine(shop.folder), "utf8");
  expect(after).toBe(
    text.replace("    highest-speed: 3600 rpm", "    highest-speed: 3400 rpm").replace("leads: 9", "leads: 9    # counted"),
  );
});

pageTest("two tabs: what one keeps the other shows, and the other's own edit is not lost", async ({ page, desktop, shop }) => {
  const other = await desktop.newPage();
  await other.goto(new URL("/lathe/supply", page.url()).href);
  await settled(other);
  await field(other, "Rating of the service").fill("100 A");
  await visit(page, "/lathe/supply");
  await field(page, "What the house already draws").fill("4 to 7 A");
  await page.getByRole("button", { name: "Show and keep" }).click();
  await page.getByRole("button", { name: "Keep 1 file" }).click();
  await page.getByRole("dialog").waitFor({ state: "detached" });
  await expect.poll(() => field(other, "What the house already draws").inputValue(), soon).toBe("4 to 7 A");
  expect(await field(other, "Rating of the service").inputValue()).toBe("100 A");
  await other.getByRole("button", { name: "Show and keep" }).click();
  await other.getByRole("button", { name: "Keep 1 file" }).click();
  await other.getByRole("dialog").waitFor({ state: "detached" });
  const after = readFileSync(join(shop.folder, "shop.yaml"), "utf8");
  expect(after).toMatch(/existing: \{ value: 4 to 7 A, from: estimate/);
  expect(after).toMatch(/rating: \{ value: 100 A, from: plate/);
  await other.close();
});
