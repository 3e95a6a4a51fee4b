// The page in a real browser: from a key pressed in a field to new numbers painted, and from the address to the first row of margins.
import { existsSync } from "node:fs";
import type { Page } from "playwright-core";
import { desk, note, openBrowser, servePage } from "../test/browser/served.ts";
import type { TimedPair } from "./pair.ts";

/** Room and field whose edit is watched: a load of the house, which the margin of its service hangs on. */
const room = "/lathe/supply";
const label = "What the house already draws";
const watched = ".checks .row";

/** The page notes by itself when its first row of margins was painted [ms from the start of the navigation]. */
function noteFirstRow(row: string): void {
  const noted = window as { firstRow?: number; painted?: number };
  const watch = new MutationObserver(() => {
    if (document.querySelector(`${row} .mg`) === null) return;
    watch.disconnect();
    requestAnimationFrame(() => setTimeout(() => (noted.firstRow = performance.now())));
  });
  watch.observe(document, { childList: true, subtree: true });
  addEventListener("DOMContentLoaded", () => requestAnimationFrame(() => setTimeout(() => (noted.painted = performance.now()))));
}

/** Types into a field as a user does, and waits until what the rows say has changed and was painted, their bands too where wanted [ms]. */
function typeAndWait({ name, text, row, bands }: { name: string; text: string; row: string; bands: boolean }): Promise<number> {
  const field = [...document.querySelectorAll<HTMLLabelElement>(".fld label")].find((l) => l.textContent === name)?.control;
  if (!(field instanceof HTMLInputElement)) throw new Error(`there is no field ${name}`);
  const margins = (): string => [...document.querySelectorAll(`${row} .mg`)].map((m) => m.textContent).join("|");
  const before = margins();
  return new Promise((done) => {
    const watch = new MutationObserver(() => {
      if (margins() === before || (bands && document.querySelector(`${row}.stale`) !== null)) return;
      watch.disconnect();
      requestAnimationFrame(() => setTimeout(() => done(performance.now() - start)));
    });
    watch.observe(document.body, { childList: true, subtree: true, characterData: true, attributes: true });
    field.focus();
    const start = performance.now();
    field.value = text;
    field.dispatchEvent(new Event("input", { bubbles: true }));
  });
}

/** One text changed by hand, and painted [ms]. */
function paintText(row: string): Promise<number> {
  const text = document.querySelector(`${row} .nm`);
  return new Promise((done) => {
    const start = performance.now();
    if (text) text.textContent = `${text.textContent} `;
    requestAnimationFrame(() => setTimeout(() => done(performance.now() - start)));
  });
}

const seconds = (ms: number): number => ms / 1e3;

async function settled(page: Page): Promise<void> {
  await page.waitForSelector('main[aria-busy="false"]', { timeout: 60_000 });
}

/** Loads an address with nothing kept from before, and says when what is noted under a name was painted. */
async function loaded(page: Page, address: string, name: "firstRow" | "painted"): Promise<number> {
  await page.goto(address, { waitUntil: "commit" });
  const time = await page.waitForFunction((key) => (window as { firstRow?: number; painted?: number })[key], name, { timeout: 60_000 });
  return seconds(Number(await time.jsonValue()));
}

export async function timed(bench: (pair: TimedPair) => Promise<void>, leaveOut: (why: string) => void): Promise<void> {
  if (!existsSync(note)) {
    leaveOut("no browser was found for it; npm run setup -- --browser looks for one");
    return;
  }
  const [browser, shop] = await Promise.all([openBrowser(), servePage()]);
  try {
    const context = await browser.newContext({ viewport: desk });
    const page = await context.newPage();
    await page.goto(shop.start);
    await page.goto(new URL(room, shop.start).href);
    await settled(page);
    let turn = 0;
    const edit = (bands: boolean) => async (): Promise<number> => {
      await settled(page);
      // Every turn another load, far enough from the one before for its margin to show it.
      const least = 1 + ((7 * turn++) % 20) / 2;
      const text = `${least} to ${least + 4} A`;
      return seconds(await page.evaluate(typeAndWait, { name: label, text, row: watched, bands }));
    };
    const paint = async (): Promise<number> => seconds(await page.evaluate(paintText, watched));
    await bench({
      says: "an edit to its nominal numbers painted, against one text painted (bar 50 ms)",
      base: paint,
      subject: edit(false),
    });
    await bench({ says: "an edit to its bands painted, letters waited for, against one text painted", base: paint, subject: edit(true) });

    const fresh = await context.newPage();
    await (await context.newCDPSession(fresh)).send("Network.setCacheDisabled", { cacheDisabled: true });
    await fresh.addInitScript(noteFirstRow, watched);
    await bench({
      says: "the first page to its first row of margins, against a page with nothing on it from the same server (bar 1 s)",
      base: () => loaded(fresh, new URL("/no-such-file.txt", shop.start).href, "painted"),
      subject: () => loaded(fresh, new URL("/lathe", shop.start).href, "firstRow"),
    });
  } finally {
    await Promise.all([browser.close(), shop.stop()]);
  }
}
