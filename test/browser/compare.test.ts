// Compare in a real browser: what each option changes, the numbers of every column with their working, values tried out, nothing written unasked.
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { expect } from "vitest";
import { checksShown, requestsOf, settled, soon, visit } from "./desk.ts";
import { axe, pageTest } from "./harness.ts";
import { desk, phone } from "./served.ts";
import { lookChecks } from "./look.ts";

/** All columns worked out: the sentence over the page counts them until then. */
async function compared(page: Page, path: string): Promise<void> {
  await visit(page, path);
  await page.waitForFunction(() => !/Working out/.test(document.querySelector(".say")?.textContent ?? "Working out"), null, soon);
  await settled(page);
}

const thermal = "Does the motor stay below its class limit";

/** What a column says of a question, as shown. */
async function cell(page: Page, asks: string, column: string): Promise<string> {
  const names = await page.locator(".sbs thead th .name").allTextContents();
  const row = page.locator(".sbs tbody tr", { hasText: asks }).first();
  const text = await row.locator("td").nth(names.indexOf(column)).textContent();
  return (text ?? "").trim();
}

const placesOfCompare = [
  "/lathe/compare",
  "/lathe/compare?cols=reconnect-low,bigger-drive+vector-mode&with=lathe/reconnect-low",
  "/lathe/compare?cols=reconnect-low&try.shop/supply.voltage=215%20V&range.shop/supply.voltage=200%20to%20250%20V&at=tried",
];

pageTest.for(placesOfCompare)("%s has no fault of look or access, on the desk, on the phone, light and dark", async (place, { page }) => {
  await compared(page, place);
  for (const viewport of [desk, phone]) {
    await page.setViewportSize(viewport);
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      await page.waitForTimeout(300);
      const at = `${viewport.width} ${colorScheme}`;
      expect({ at, faults: await lookChecks(page) }).toEqual({ at, faults: [] });
      expect({ at, faults: await axe(page) }).toEqual({ at, faults: [] });
    }
  }
});

pageTest(
  "options stand side by side with the verdicts that each would bring, and the sentence names the one that cures most",
  async ({ page }) => {
    await compared(page, "/lathe/compare");
    const sentence = await page.textContent(".say");
    expect(sentence).toMatch(/fail as found: reconnect-low cures \w+ of them, for 640\.00 USD and 6 h of own work/);
    expect(await cell(page, "Does the drive give full flux", "as found")).toMatch(/fails$/);
    expect(await cell(page, "Does the drive give full flux", "reconnect-low")).toMatch(/holds100 of 100 better$/);
    expect(await cell(page, "Does the drive give full flux", "pump-50")).toMatch(/fails$/);
  },
);

pageTest("choosing a column looks at the machine with it: every page says what the column said", async ({ page }) => {
  await compared(page, "/lathe/compare");
  const said = await cell(page, thermal, "reconnect-low");
  await page.getByRole("link", { name: "reconnect-low", exact: true }).click();
  await expect.poll(() => page.locator(".sbs thead th.chosen .name").allTextContents(), soon).toEqual(["reconnect-low"]);
  await page.getByRole("link", { name: "Margins", exact: true }).click();
  await settled(page);
  const row = (await checksShown(page)).find((r) => r.asks.startsWith(thermal));
  expect(said.startsWith(`${row?.margin ?? ""}${row?.verdict ?? ""}`), `${said} beside ${JSON.stringify(row)}`).toBe(true);
});

pageTest("a number opens its working in its own column's variant", async ({ page }) => {
  await compared(page, "/lathe/compare");
  const said = await cell(page, thermal, "bigger-drive");
  await page
    .locator(".sbs tbody tr", { hasText: thermal })
    .locator("td")
    .nth((await page.locator(".sbs thead th .name").allTextContents()).indexOf("bigger-drive"))
    .getByRole("link")
    .click();
  await settled(page);
  const drawer = page.getByRole("complementary", { name: "Working" });
  await expect.poll(() => drawer.locator(".big b").first().textContent(), soon).toBe(/^[\d.]+/.exec(said)?.[0]);
  expect(new URL(page.url()).searchParams.get("with")).toBe("lathe/bigger-drive");
});

pageTest("two options ticked together become a column of their own", async ({ page }) => {
  await compared(page, "/lathe/compare?cols=reconnect-low");
  await page.getByRole("button", { name: /^Columns/ }).click();
  await page.getByRole("checkbox", { name: "reconnect-low together with others" }).check();
  await page.getByRole("checkbox", { name: "vector-mode together with others" }).check();
  await page.getByRole("button", { name: "Add a column of reconnect-low + vector-mode" }).click();
  await expect
    .poll(() => page.locator(".sbs thead th .name").allTextContents(), soon)
    .toEqual(["as found", "reconnect-low", "reconnect-low + vector-mode"]);
  // Each option brings its own share: neither alone does both.
  await expect.poll(() => cell(page, "Does the drive give full flux", "reconnect-low + vector-mode"), soon).toMatch(/holds/);
  expect(new URL(page.url()).searchParams.get("cols")).toBe("reconnect-low,reconnect-low vector-mode".replace(" vector", "+vector"));
});

pageTest("keeping an option says what belongs into which file, and writes nothing", async ({ page, shop }) => {
  const before = readFileSync(join(shop.folder, "lathe/machine.yaml"), "utf8");
  await compared(page, "/lathe/compare?cols=vector-mode&with=lathe/vector-mode");
  const requests = requestsOf(page);
  await page.getByRole("button", { name: "Keep “vector-mode”" }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByRole("row", { name: /spindle\.drive\.mode/ }).waitFor();
  expect(await dialog.getByRole("row", { name: /spindle\.drive\.mode/ }).textContent()).toBe("spindle.drive.modevolts-per-hertzvector");
  expect(await dialog.getByRole("link", { name: "lathe/machine.yaml" }).getAttribute("href")).toMatch(/^\/shop\/files\?/);
  expect(await axe(page)).toEqual([]);
  await page.keyboard.press("Escape");
  await dialog.waitFor({ state: "detached" });
  expect(requests).toEqual([]);
  expect(readFileSync(join(shop.folder, "lathe/machine.yaml"), "utf8")).toBe(before);
});

pageTest("by keys alone: an input is found, moved on its slider, its numbers follow, and the address keeps it", async ({ page }) => {
  await compared(page, "/lathe/compare?cols=reconnect-low");
  const requests = requestsOf(page);
  await page.getByRole("combobox", { name: "Input to try other values of" }).focus();
  await page.keyboard.type("voltage between lines");
  await page
    .getByRole("option", { name: /^Voltage between lines/ })
    .first()
    .waitFor();
  await page.keyboard.press("Enter");
  const slider = page.getByRole("slider", { name: "Voltage between lines" });
  await slider.waitFor();
  await expect.poll(() => page.locator(".sbs thead th.chosen .name").allTextContents(), soon).toEqual(["what if"]);
  await settled(page);
  const flux = (): Promise<string> => cell(page, "Does the drive give full flux", "what if");
  const before = await flux();
  await slider.focus();
  await page.keyboard.press("Home");
  await expect.poll(flux, soon).not.toBe(before);
  await settled(page);
  const low = parseFloat(await flux());
  await page.keyboard.press("End");
  await settled(page);
  await expect.poll(async () => parseFloat(await flux()), soon).toBeGreaterThan(low);
  const text = await page.getByRole("textbox", { name: "Voltage between lines, value" }).inputValue();
  await expect.poll(() => new URL(page.url()).searchParams.get("try.shop/supply.voltage"), soon).toBe(text);
  // A new address makes a browser look at the page's icon again; nothing else is asked for.
  expect(requests.filter((url) => !url.endsWith(".svg"))).toEqual([]);
  await page.reload();
  await settled(page);
  await expect.poll(() => page.getByRole("textbox", { name: "Voltage between lines, value" }).inputValue(), soon).toBe(text);
});

pageTest(
  "a value tried out far enough changes verdicts, which are told; one that cannot be read is refused at its field",
  async ({ page }) => {
    await compared(
      page,
      "/lathe/compare?cols=reconnect-low&try.shop/supply.voltage=170%20V&range.shop/supply.voltage=150%20to%20250%20V&at=tried",
    );
    await expect.poll(() => page.locator(".flips li").count(), soon).toBeGreaterThan(0);
    const value = page.getByRole("textbox", { name: "Voltage between lines, value" });
    await value.fill("215 bar");
    await expect.poll(() => page.locator(".what-if .wrong").textContent(), soon).toMatch(/pressure/);
    expect(await value.getAttribute("aria-invalid")).toBe("true");
    await page.getByRole("button", { name: "Take all back" }).click();
    await expect.poll(() => page.locator(".sbs thead th .name").allTextContents(), soon).toEqual(["as found", "reconnect-low"]);
  },
);

pageTest("values tried out are kept as an option by the same way as every edit: shown, then written", async ({ page, shop }) => {
  const file = join(shop.folder, "lathe/options/lower-supply.yaml");
  await compared(
    page,
    "/lathe/compare?cols=reconnect-low&over=reconnect-low&with=lathe/reconnect-low&try.shop/supply.voltage=230%20V&at=tried",
  );
  await page.getByRole("button", { name: "Keep as an option …" }).click();
  const naming = page.getByRole("dialog", { name: "Keep as an option" });
  await naming.getByRole("button", { name: "Show and keep" }).click();
  expect(await naming.getByRole("alert").textContent()).toMatch(/lower-case/);
  await naming.getByLabel("Name").fill("lower-supply");
  await naming.getByLabel("What would be done").fill("Supply as it is in summer");
  expect(await axe(page)).toEqual([]);
  await naming.getByRole("button", { name: "Show and keep" }).click();
  const keeping = page.getByRole("dialog", { name: "What keeping would write" });
  await keeping.getByRole("button", { name: "Keep 1 file" }).waitFor();
  expect(existsSync(file)).toBe(false);
  await keeping.getByRole("button", { name: "Keep 1 file" }).click();
  await keeping.waitFor({ state: "detached" });
  expect(readFileSync(file, "utf8")).toBe(
    "option: lower-supply\ntitle: Supply as it is in summer\nneeds: [ reconnect-low ]\nset:\n  shop/supply.voltage: 230 V\n",
  );
});
