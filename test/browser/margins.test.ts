// Margins in a real browser: every check on one scale, its working one key away, options and units in one click.
import { expect } from "vitest";
import { checksShown, settled, soon, visit } from "./desk.ts";
import { pageTest } from "./harness.ts";

pageTest(
  "the checks of the lathe stand on one scale, each with its verdict in words, sorted by the low end of the band",
  async ({ page }) => {
    await visit(page, "/lathe");
    const rows = await checksShown(page);
    expect(rows.length).toBeGreaterThan(30);
    for (const { strip, verdict } of rows) expect(strip.startsWith(`${verdict},`), strip).toBe(true);
    const lows = rows.flatMap(({ strip }) => {
      const low = /band ([\d.]+) to/.exec(strip)?.[1] ?? /margin ([\d.]+), exact/.exec(strip)?.[1];
      return low === undefined ? [] : [Number(low)];
    });
    expect(lows.length).toBeGreaterThan(20);
    expect(lows).toEqual(lows.toSorted((a, b) => a - b));
  },
);

pageTest("the sentence at the top counts what the list shows, and one verdict can be looked at alone", async ({ page }) => {
  await visit(page, "/lathe");
  const all = await checksShown(page);
  const failing = all.filter((row) => row.verdict === "fails").length;
  const open = all.filter((row) => row.verdict === "open").length;
  const small = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];
  const said = (n: number): string => small[n] ?? String(n);
  const sentence = (await page.textContent(".say"))?.toLowerCase() ?? "";
  expect(sentence.startsWith(`${said(failing)} check`), sentence).toBe(true);
  expect(sentence).toContain(`${said(open)} stay`);
  await page.click(".chips button:has-text('fails')");
  await expect
    .poll(async () => (await checksShown(page)).map((row) => row.verdict))
    .toEqual(Array.from({ length: failing }, () => "fails"));
  expect(new URL(page.url()).searchParams.get("verdict")).toBe("fails");
  await page.click(".chips button:has-text('fails')");
  await expect.poll(async () => (await checksShown(page)).length, soon).toBe(all.length);
});

pageTest("Enter on a check opens its working, Escape closes it and puts the focus back", async ({ page }) => {
  await visit(page, "/lathe");
  const row = page.locator(".checks .row a.ra", { hasText: "Does the spindle turn this cut" }).first();
  await row.focus();
  await page.keyboard.press("Enter");
  const drawer = page.getByRole("complementary", { name: "Working" });
  await drawer.getByRole("row", { name: /^capacity/ }).waitFor();
  expect(await drawer.textContent()).toContain("Does the spindle turn this cut");
  expect(new URL(page.url()).searchParams.get("working")).toMatch(/^lathe\/spindle\.work\/.+torque-holds$/);
  await page.keyboard.press("Escape");
  await drawer.waitFor({ state: "detached" });
  expect(await row.evaluate((element) => element === document.activeElement)).toBe(true);
});

pageTest("an option laid over cures what it is for, and the address says so", async ({ page }) => {
  await visit(page, "/lathe");
  const question = "Does the drive give full flux up to the speed where full torque is wanted?";
  const verdict = async (): Promise<string | undefined> => (await checksShown(page)).find((row) => row.asks.startsWith(question))?.verdict;
  expect(await verdict()).toBe("fails");
  await page.click(".options .more");
  await page.getByRole("checkbox", { name: /Motor in parallel star/ }).check();
  await settled(page);
  await expect.poll(verdict, soon).toBe("holds");
  expect(new URL(page.url()).searchParams.get("with")).toBe("lathe/reconnect-low");
  await page.getByRole("button", { name: "as found" }).click();
  await settled(page);
  await expect.poll(verdict, soon).toBe("fails");
});

pageTest("the unit switch changes every number at once, without asking the server", async ({ page }) => {
  await visit(page, "/lathe?working=lathe/spindle.motor.rated-torque");
  const drawer = page.getByRole("complementary", { name: "Working" });
  await expect.poll(() => drawer.locator(".big").textContent(), soon).toContain("N·m");
  const requests: string[] = [];
  page.on("request", (request) => requests.push(request.url()));
  await page.getByRole("button", { name: "in lbf·ft psi" }).click();
  await expect.poll(() => drawer.locator(".big").textContent(), soon).toContain("lbf·ft");
  await expect.poll(() => page.textContent(".draw"), soon).toContain("lbf·ft");
  expect(requests).toEqual([]);
  await page.getByRole("button", { name: "mm N·m bar" }).click();
  await expect.poll(() => drawer.locator(".big").textContent(), soon).toContain("N·m");
});

pageTest("the machine drawing leads to the rooms, and a block that no room knows says so and bears no verdict", async ({ page }) => {
  await visit(page, "/lathe");
  const labels = await page.$$eval(".draw a.block", (blocks) => blocks.map((block) => block.getAttribute("aria-label") ?? ""));
  expect(labels.find((label) => label.startsWith("Motor, "))).toMatch(/^Motor, (fails|open|tight|holds), series/);
  const mute = await page.$$eval(".draw g > title", (titles) => titles.map((title) => title.textContent ?? ""));
  expect(mute).toContain("Compressor, no room yet");
  await page.locator(".draw a.block", { hasText: "Supply" }).first().click();
  await page.waitForURL("**/lathe/supply");
});
