// The file view in a real browser: completion, help, mistakes in place, every page following, and texts kept byte for byte.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { expect } from "vitest";
import { field, openGroup, settled, soon, visit } from "./desk.ts";
import { axe, pageTest } from "./harness.ts";
import { desk, phone } from "./served.ts";
import { lookChecks } from "./look.ts";

const machine = "/shop/files?file=lathe/machine.yaml";
/** The line with the carrier frequency, its cursor behind the value. */
async function atCarrier(page: Page, folder: string): Promise<void> {
  const text = readFileSync(join(folder, "lathe/machine.yaml"), "utf8");
  const line = text.split(/\r?\n/).findIndex((l) => l.trim() === "carrier: 4 kHz") + 1;
  expect(line).toBeGreaterThan(0);
  await visit(page, `${machine}&line=${line}`);
  await page.waitForSelector(".cm-content");
  await page.keyboard.press("End");
}
async function retyped(page: Page, text: string): Promise<void> {
  for (let i = 0; i < "4 kHz".length; i += 1) await page.keyboard.press("Backspace");
  await page.keyboard.type(text);
  await page.keyboard.press("Escape");
}
const shown = (page: Page): Promise<string> => page.locator(".cm-activeLine").innerText();

pageTest(
  "the file view has no fault of look or access, on the desk, on the phone, light and dark, with a mistake in it",
  async ({ page, shop }) => {
    await atCarrier(page, shop.folder);
    await retyped(page, "4 kHx");
    await page.locator(".findings li").first().waitFor();
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
    await page.getByRole("button", { name: "Undo", exact: true }).click();
  },
);

pageTest(
  "a mistake is underlined where it stands, told in the words of the command line, and gone when it is put right",
  async ({ page, shop }) => {
    await atCarrier(page, shop.folder);
    await retyped(page, "4 kHx");
    await expect.poll(() => page.locator(".cm-lintRange-error").allTextContents(), soon).toEqual(["4 kHx"]);
    expect(await page.locator(".findings li").textContent()).toMatch(
      /unit-unknown "kHx" is no unit; `kHz`\? \(Usual cause: misspelt unit\.\)$/,
    );
    expect(await page.locator(".file-tree a[aria-current]").textContent()).toContain("1 mistake");
    await page.keyboard.press("Backspace");
    await page.keyboard.type("z");
    await page.keyboard.press("Escape");
    await expect.poll(() => page.locator(".findings li").count(), soon).toBe(0);
    // The text is what lies on disk again: nothing is left to be kept.
    expect(await page.locator(".keep-bar [role=status]").count()).toBeLessThanOrEqual(1);
    await expect.poll(() => page.locator(".file .state").textContent()).toBe("");
  },
);

pageTest("letters typed fast arrive in their order", async ({ page, shop }) => {
  await atCarrier(page, shop.folder);
  await retyped(page, "4 kHz # a remark that is typed at once, and longer than a moment");
  expect((await shown(page)).trim()).toBe("carrier: 4 kHz # a remark that is typed at once, and longer than a moment");
});

pageTest("keys that fit are offered as one types, with what they mean, and Enter takes one", async ({ page, shop }) => {
  await atCarrier(page, shop.folder);
  await page.keyboard.press("Enter");
  await page.keyboard.type("rated-c");
  const offered = page.locator(".cm-tooltip-autocomplete li");
  await offered.first().waitFor();
  expect(await offered.allTextContents()).toEqual(["rated-current"]);
  await expect.poll(() => page.locator(".cm-completionInfo").textContent(), soon).toMatch(/current/);
  // The editor takes no Enter in the first moment of a list: it may have been meant for the text.
  await page.waitForTimeout(200);
  await page.keyboard.press("Enter");
  expect(await shown(page)).toMatch(/^ +rated-current: $/);
});

pageTest("a key under the pointer says what it is and how to find it out", async ({ page, shop }) => {
  await atCarrier(page, shop.folder);
  await page.locator(".cm-activeLine span", { hasText: "carrier" }).hover();
  await expect.poll(() => page.locator(".cm-help").textContent(), soon).toMatch(/^spindle\.drive\.carriercarrier frequency/);
});

pageTest("Tab leads out of the editor: it holds nobody who has no mouse", async ({ page, shop }) => {
  await atCarrier(page, shop.folder);
  await page.keyboard.press("Tab");
  expect(await page.evaluate(() => document.activeElement?.closest(".cm-editor") === null)).toBe(true);
});

pageTest("what is typed counts on every page before it is kept", async ({ page, shop }) => {
  await atCarrier(page, shop.folder);
  await retyped(page, "6 kHz");
  await page.getByRole("link", { name: /^Spindle/ }).click();
  await settled(page);
  await openGroup(page, "Drive");
  await expect.poll(() => field(page, "Carrier frequency").inputValue(), soon).toBe("6 kHz");
  expect(readFileSync(join(shop.folder, "lathe/machine.yaml"), "utf8")).toContain("carrier: 4 kHz");
});

pageTest(
  "Ctrl-S shows what would be written; kept, the file has the new line and every old byte, its line ends too",
  async ({ page, shop }) => {
    const path = join(shop.folder, "lathe/machine.yaml");
    const before = `\uFEFF${readFileSync(path, "utf8").replaceAll("\n", "\r\n")}`;
    writeFileSync(path, before);
    await atCarrier(page, shop.folder);
    await retyped(page, "8 kHz");
    await page.keyboard.press("Enter");
    await page.keyboard.type("# measured");
    await page.keyboard.press("Control+s");
    const dialog = page.getByRole("dialog");
    await dialog.locator(".lines .new").first().waitFor();
    expect((await dialog.locator(".lines .new code").allTextContents()).map((text) => text.trim())).toEqual([
      "carrier: 8 kHz",
      "# measured",
    ]);
    await dialog.getByRole("button", { name: "Keep 1 file" }).click();
    await dialog.waitFor({ state: "detached" });
    expect(readFileSync(path, "utf8")).toBe(before.replace("carrier: 4 kHz\r\n", "carrier: 8 kHz\r\n    # measured\r\n"));
    writeFileSync(path, before.replace("\uFEFF", "").replaceAll("\r\n", "\n"));
  },
);

pageTest("a hand edit elsewhere in the file comes into the open editor, and what was typed stays", async ({ page, shop }) => {
  const path = join(shop.folder, "lathe/machine.yaml");
  const before = readFileSync(path, "utf8");
  await atCarrier(page, shop.folder);
  await retyped(page, "5 kHz");
  writeFileSync(path, before.replace("kind: turret-lathe", "kind: turret-lathe # by hand"));
  // Only lines near the cursor are drawn.
  await page.keyboard.press("Control+Home");
  await expect.poll(() => page.locator(".cm-content").innerText(), soon).toContain("# by hand");
  expect(await page.locator(".file .state").textContent()).toContain("typed, not kept");
  writeFileSync(path, before);
});

pageTest("what stands in a record cannot be changed, only added to", async ({ page }) => {
  await visit(page, "/shop/files?file=lathe/records/2026-02-14-motor-resistance.yaml");
  await page.locator(".cm-content").click();
  await page.keyboard.press("Control+Home");
  await page.keyboard.type("x");
  expect(await page.locator(".file .state").textContent()).toBe("");
  await page.keyboard.press("Control+End");
  await page.keyboard.type("# seen again");
  await expect.poll(() => page.locator(".file .state").textContent(), soon).toBe("typed, not kept");
});

pageTest("the editor is loaded by the file view and by no other page", async ({ desktop, page }) => {
  const scripts = async (path: string): Promise<string[]> => {
    const tab = await desktop.newPage();
    const texts: string[] = [];
    tab.on("response", (response) => {
      if (response.url().endsWith(".js")) texts.push(response.url());
    });
    await tab.goto(new URL(path, page.url()).href);
    await settled(tab);
    const holdsEditor: string[] = [];
    for (const url of texts)
      if ((await (await tab.request.get(url)).text()).includes("cm-lintRange")) holdsEditor.push(new URL(url).pathname);
    await tab.close();
    return holdsEditor;
  };
  expect(await scripts("/lathe")).toEqual([]);
  expect(await scripts("/lathe/compare")).toEqual([]);
  expect((await scripts(machine)).length).toBe(1);
});
