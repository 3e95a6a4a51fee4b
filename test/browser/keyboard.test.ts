// A person without a mouse: from the shop to a value changed and taken back, by keys alone.
import { expect } from "vitest";
import { settled, soon, visit } from "./desk.ts";
import { pageTest } from "./harness.ts";

pageTest("by keys alone: find a value, look at its working, change it, take the change back", async ({ page }) => {
  await settled(page);
  await page.keyboard.press("/");
  await page.keyboard.type("rating of the service");
  await page
    .getByRole("option", { name: /rating of the service/ })
    .first()
    .waitFor();
  await page.keyboard.press("Enter");
  const drawer = page.getByRole("complementary", { name: "Working" });
  await drawer.getByRole("link", { name: "Change it" }).waitFor();
  // The focus is in the drawer: Tab goes on from its title.
  for (let i = 0; i < 6 && (await page.evaluate(() => document.activeElement?.textContent)) !== "Change it"; i += 1)
    await page.keyboard.press("Tab");
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Change it");
  await page.keyboard.press("Enter");
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.closest(".fld")?.querySelector("label")?.textContent))
    .toBe("Rating of the service");
  await page.keyboard.press("Control+a");
  await page.keyboard.type("100 A");
  await expect.poll(() => page.textContent(".keep-bar p"), soon).toContain("1 edit");
  await page.keyboard.press("Control+z");
  await expect.poll(() => page.evaluate(() => (document.activeElement as HTMLInputElement).value), soon).toBe("60 A");
});

pageTest("every control of the margins page can be reached by Tab, shows where the focus is, and none holds it", async ({ page }) => {
  await visit(page, "/lathe");
  const seen = new Set<string>();
  for (let i = 0; i < 400; i += 1) {
    await page.keyboard.press("Tab");
    const at = await page.evaluate(() => {
      const element = document.activeElement;
      if (element === null || element === document.body) return null;
      const { outlineStyle, outlineWidth } = getComputedStyle(element);
      const hasRing = outlineStyle !== "none" && parseFloat(outlineWidth) >= 2;
      return { name: `${element.localName} ${element.getAttribute("href") ?? element.textContent ?? ""}`, hasRing };
    });
    if (at === null) break;
    expect(at.hasRing, at.name).toBe(true);
    seen.add(at.name);
  }
  const all = await page.$$eval("a[href], button, select", (controls) =>
    controls
      .filter((control) => control.checkVisibility({ visibilityProperty: true }) && !control.closest("[popover]"))
      .map((control) => `${control.localName} ${control.getAttribute("href") ?? control.textContent ?? ""}`),
  );
  expect(all.filter((name) => !seen.has(name))).toEqual([]);
});
