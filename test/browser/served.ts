// A browser and a shop served by the real program, for tests and benches of the page.
import { spawn } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import type { Browser, LaunchOptions } from "playwright-core";

const root = fileURLToPath(new URL("../..", import.meta.url));
const exampleShop = join(root, "examples/heron");

/** Written by scripts/browser.mjs: the program and the options with which it opened a page. */
export const note = join(root, "node_modules/.waywright-browser.json");

/** The desk and the phone that pages are made for [px]. */
export const desk = { width: 1440, height: 900 };
export const phone = { width: 390, height: 844 };

export function openBrowser(): Promise<Browser> {
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
