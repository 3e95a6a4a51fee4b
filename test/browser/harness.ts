// How a page test gets a browser, a shop served by the real program, and what must hold of every page.
import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type axeCore from "axe-core";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { desk, note, openBrowser, servePage } from "./served.ts";

export { desk, phone, servePage } from "./served.ts";

/** Everything the page complains of, as it comes: errors on its console and exceptions nobody caught. */
export function complaintsOf(page: Page): string[] {
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error") complaints.push(`${message.text()} (${message.location().url})`);
  });
  page.on("pageerror", (error) => complaints.push(`uncaught: ${error.message}`));
  return complaints;
}

const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** One sentence for each accessibility rule that the page breaks; the source is evaluated, since the page's policy refuses a script tag. */
export async function axe(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  const { violations } = await page.evaluate(() => (window as unknown as { axe: typeof axeCore }).axe.run());
  return violations.map(({ id, help, nodes }) => `${id}: ${help}, at ${nodes.map(({ target }) => target.join(" ")).join("; ")}`);
}

/**
 * A test of the page, with what it takes from here by name: `browser`, `shop`, `desktop` (a browser window that has followed the start
 * link), `page` (the workbench, just opened there) and `complaints`. A complaint that is left at the end fails the test; a test that
 * provokes one takes it out. Without a browser the test is skipped, which the set-up before the tests makes an error on CI.
 */
/* oxlint-disable no-empty-pattern -- the runner reads from the pattern what a fixture needs, even nothing */
export const pageTest = test
  .extend("browser", { scope: "file" }, async ({}, { onCleanup }) => {
    const browser = await openBrowser();
    onCleanup(() => browser.close());
    return browser;
  })
  .extend("shop", { scope: "file" }, async ({}, { onCleanup }) => {
    const shop = await servePage();
    onCleanup(() => shop.stop());
    return shop;
  })
  .extend("desktop", { scope: "file" }, async ({ browser, shop }, { onCleanup }) => {
    const desktop = await browser.newContext({ viewport: desk });
    const first = await desktop.newPage();
    await first.goto(shop.start);
    await first.close();
    onCleanup(() => desktop.close());
    return desktop;
  })
  .extend("opened", async ({ desktop, shop }, { onCleanup }) => {
    const page = await desktop.newPage();
    const complaints = complaintsOf(page);
    await page.goto(new URL("/", shop.start).href);
    onCleanup(async () => {
      await page.close();
      expect(complaints, "what the page complained of").toEqual([]);
    });
    return { page, complaints };
  })
  .extend("page", ({ opened }) => opened.page)
  .extend("complaints", ({ opened }) => opened.complaints)
  .runIf(existsSync(note));
