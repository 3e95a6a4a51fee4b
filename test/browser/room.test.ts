// A room in a real browser: an edit answers at once and without the server, says what it cannot read, and can be taken back.
import { readFile } from "node:fs/promises";
import { expect } from "vitest";
import { changed, checksShown, field, openGroup, requestsOf, settled, soon, visit } from "./desk.ts";
import { pageTest } from "./harness.ts";

const margins = async (page: Parameters<typeof checksShown>[0]): Promise<string[]> => (await checksShown(page)).map((row) => row.margin);

pageTest("a value typed moves margins with no request to the server, and no row changes its place meanwhile", async ({ page }) => {
  await visit(page, "/lathe/supply");
  const requests = requestsOf(page);
  const before = await checksShown(page);
  await openGroup(page, "Run");
  await changed(
    () => margins(page),
    () => field(page, "Length of the run, one way").fill("40 m"),
  );
  const during = await checksShown(page);
  expect(during.map((row) => row.asks)).toEqual(before.map((row) => row.asks));
  expect(during.map((row) => row.top)).toEqual(before.map((row) => row.top));
  await settled(page);
  expect(await margins(page)).not.toEqual(before.map((row) => row.margin));
  expect(requests).toEqual([]);
  await page.getByRole("button", { name: /^restore length of the run/ }).click();
  await settled(page);
  await expect.poll(() => margins(page), soon).toEqual(before.map((row) => row.margin));
});

pageTest("what cannot be read is said at its field, with what was expected, and the last numbers stand", async ({ page }) => {
  await visit(page, "/lathe/supply");
  const before = await margins(page);
  const rating = field(page, "Rating of the service");
  await rating.fill("60 mm");
  const error = page.locator(".fld .err");
  await error.waitFor();
  expect(await error.textContent()).toMatch(/length/);
  expect(await rating.getAttribute("aria-invalid")).toBe("true");
  await settled(page);
  expect(await margins(page)).toEqual(before);
  await rating.fill("60 A");
  await error.waitFor({ state: "detached" });
  expect(await page.locator(".keep-bar").count()).toBe(0);
});

pageTest("not knowing is an answer: what hangs on it stays open without a number, and one step back it has one again", async ({ page }) => {
  await visit(page, "/lathe/supply");
  const service = async (): Promise<string> => {
    const row = (await checksShown(page)).find(({ asks }) => asks.startsWith("Does the service carry everything at once"));
    return `${row?.verdict} ${row?.margin}`;
  };
  const before = await service();
  expect(before).toMatch(/^(open|tight|holds|fails) \d/);
  await page.getByRole("button", { name: "Don't know: rating of the service" }).click();
  await expect.poll(service, soon).toBe("open –");
  await page.keyboard.press("Control+z");
  await settled(page);
  await expect.poll(service, soon).toBe(before);
  await page.keyboard.press("Control+Shift+z");
  await expect.poll(service, soon).toBe("open –");
  await page.keyboard.press("Control+z");
});

pageTest("a remedy that can be laid over is tried out first, and one click makes it an edit", async ({ page }) => {
  await visit(page, "/lathe/spindle");
  const remedy = page.locator(".rem", { has: page.getByRole("button", { name: "a line choke before the drive" }) }).first();
  await expect.poll(() => remedy.locator(".becomes").count(), soon).toBe(1);
  const promised = await remedy.locator(".becomes .vw").textContent();
  const asks = await remedy.locator("xpath=ancestor::li[contains(@class,'row')]").locator(".nm").textContent();
  await remedy.getByRole("button").click();
  await settled(page);
  const now = (await checksShown(page)).find((row) => row.asks === asks?.trim());
  expect(now?.verdict).toBe(promised);
  expect(await page.locator(".keep-bar p").textContent()).toContain("1 edit");
  await page.keyboard.press("Control+z");
});

pageTest("a value that a record measured is read, not typed over", async ({ page }) => {
  await visit(page, "/lathe/spindle");
  await openGroup(page, "Motor");
  const resistance = field(page, "Dc resistance between two lines");
  expect(await resistance.inputValue()).toBe("1.71 ohm +/- 1 %");
  expect(await resistance.getAttribute("readonly")).not.toBeNull();
});

pageTest("a picture gives its values under the cursor, by pointer and by keys, and can be taken away as SVG and CSV", async ({ page }) => {
  await visit(page, "/lathe/spindle");
  const picture = page.locator(".pic", { has: page.locator("svg text", { hasText: "Torque and power against spindle speed" }) }).first();
  const cursor = picture.getByRole("slider");
  await cursor.focus();
  await page.keyboard.press("ArrowRight");
  expect(await cursor.getAttribute("aria-valuetext")).toMatch(/rpm/);
  const before = await picture.locator(".readout").textContent();
  await page.keyboard.press("Shift+ArrowRight");
  expect(await picture.locator(".readout").textContent()).not.toBe(before);
  const taken = async (name: string): Promise<string> => {
    const [download] = await Promise.all([page.waitForEvent("download"), picture.getByRole("button", { name }).click()]);
    return readFile(await download.path(), "utf8");
  };
  expect(await taken("SVG")).toMatch(/^<svg [^>]*>\n<style>[^<]*\.fi/);
  const csv = await taken("CSV");
  expect(csv.charCodeAt(0)).toBe(0xfeff);
  expect(csv.split("\r\n").length).toBeGreaterThan(20);
});

pageTest("a link from elsewhere opens the field it names, its group unfolded and the cursor in it", async ({ page }) => {
  await visit(page, "/lathe/spindle?field=lathe/spindle.drive.carrier");
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.closest(".fld")?.querySelector("label")?.textContent))
    .toBe("Carrier frequency");
});
