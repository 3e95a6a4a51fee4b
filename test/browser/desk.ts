// How the page tests go about the workbench: to a place, until its numbers stand, and what its list of checks says.
import type { Page } from "playwright-core";
import { expect } from "vitest";

/** How long a test waits for what the page still computes: a busy machine is slow, and nothing here is about speed. */
export const soon = { timeout: 30_000 }; // ms

/** Goes to a place and waits until nothing better is coming for it. */
export async function visit(page: Page, path: string): Promise<void> {
  await page.goto(new URL(path, page.url()).href);
  await settled(page);
}

/** Waits until bands and simulations have come in. */
export async function settled(page: Page): Promise<void> {
  await page.waitForSelector('main[aria-busy="false"]');
}

export interface ShownCheck {
  readonly asks: string;
  readonly verdict: string;
  readonly margin: string;
  readonly band: string;
  /** What a screen reader hears of the strip. */
  readonly strip: string;
  readonly top: number;
}

export function checksShown(page: Page): Promise<ShownCheck[]> {
  return page.$$eval(".checks .row", (rows) =>
    rows.map((row) => {
      const text = (part: string): string => row.querySelector(part)?.textContent?.trim() ?? "";
      return {
        asks: text(".nm"),
        verdict: text(".ra .vw"),
        margin: text(".mg"),
        band: text(".bd"),
        strip: row.querySelector(".strip")?.getAttribute("aria-label") ?? "",
        top: row.getBoundingClientRect().top + window.scrollY,
      };
    }),
  );
}

/** The input of a room page by its label. */
export function field(page: Page, label: string): ReturnType<Page["getByLabel"]> {
  return page.locator(".fld").getByLabel(label, { exact: true }).first();
}

/** Opens a group of inputs that is shut. */
export async function openGroup(page: Page, title: string): Promise<void> {
  const group = page.locator(".inputs details", { has: page.getByRole("heading", { name: title, exact: true }) }).first();
  if ((await group.getAttribute("open")) === null) await group.locator("summary").first().click();
}

/** Every request the page makes from now on. */
export function requestsOf(page: Page): string[] {
  const requests: string[] = [];
  page.on("request", (request) => requests.push(request.url()));
  return requests;
}

/** Acts, and waits until what is read says something else. */
export async function changed(read: () => Promise<unknown>, act: () => Promise<void>): Promise<void> {
  const before = JSON.stringify(await read());
  await act();
  await expect.poll(async () => JSON.stringify(await read()), soon).not.toBe(before);
}
