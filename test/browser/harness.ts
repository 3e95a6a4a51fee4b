// How a page test gets a browser, a shop served by the real program, and what must hold of every page.
import { spawn } from "node:child_process";
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type axeCore from "axe-core";
import { chromium } from "playwright-core";
import type { Browser, LaunchOptions, Page } from "playwright-core";
import { expect, test } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));
const exampleShop = join(root, "examples/heron");

/** Written by scripts/browser.mjs: the program and the options with which it opened a page. */
const note = join(root, "node_modules/.waywright-browser.json");

/** The desk and the phone that pages are made for [px]. */
export const desk = { width: 1440, height: 900 };
export const phone = { width: 390, height: 844 };

function openBrowser(): Promise<Browser> {
  const { executablePath, args, env } = JSON.parse(readFileSync(note, "utf8")) as Required<
    Pick<LaunchOptions, "executablePath" | "args" | "env">
  >;
  return chromium.launch({ executablePath, args, env: { ...process.env, ...env } });
}

export interface Served {
  /** The start link, good once: the browser that follows it keeps a cookie. */
  readonly start: string;
  /** The copy of the shop that is served; a test may edit its files. */
  readonly folder: string;
  stop(): Promise<void>;
}

/** Serves a copy of a shop with the program as the user starts it. */
export async function servePage(shop: string = exampleShop): Promise<Served> {
  const place = mkdtempSync(join(tmpdir(), "waywright-shop-"));
  const folder = join(place, "shop");
  cpSync(shop, folder, { recursive: true });
  const program = spawn(process.execPath, [join(root, "bin/waywright.mjs"), "open", folder, "--no-browser", "--port", "0"]);
  const ended = new Promise<number | null>((resolve) => program.once("close", resolve));
  const stop = async (): Promise<void> => {
    program.kill();
    await ended;
    rmSync(place, { recursive: true, force: true });
  };
  let said = "";
  const link = new Promise<string>((resolve) => {
    for (const stream of [program.stdout, program.stderr]) {
      stream.setEncoding("utf8").on("data", (text: string) => {
        said += text;
        const found = /^Workbench: (http:\/\/127\.0\.0\.1:\d+\/\?start=\S+)\s/m.exec(said)?.[1];
        if (found !== undefined) resolve(found);
      });
    }
  });
  const early = ended.then((status): string => {
    throw new Error(`the program ended with status ${status} before it served the shop:\n${said}`);
  });
  try {
    return { start: await Promise.race([link, early]), folder, stop };
  } catch (failure) {
    await stop();
    throw failure;
  }
}

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
