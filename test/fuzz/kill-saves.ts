// Kills a program in the middle of its saves, again and again, and looks what stands on the disk.
import { spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { build } from "vite";
import { expect } from "vitest";
import { readShop, type ShopFiles } from "../../src/files/shop-folder.ts";
import { saveText } from "../../src/files/save.ts";
import { sha256 } from "../../src/kernel/sha256.ts";

export interface Killed {
  readonly kills: number;
  /** Saves that were answered before the kill. */
  readonly saves: number;
  /** Kills that fell into a save; of these, those that left a file beside, and those whose new text stood although the answer was lost. */
  readonly midway: number;
  readonly leftovers: number;
  readonly unanswered: number;
}

/** The child runs plain JavaScript: Node 20 reads no types. */
export async function compiledSave(folder: string): Promise<string> {
  const entry = join(import.meta.dirname, "../../src/files/save.ts");
  await build({ configFile: false, logLevel: "silent", build: { ssr: entry, target: "node20", outDir: folder, emptyOutDir: false } });
  return join(folder, "save.js");
}

/** The shop in the state the child expects, with the hash of each file. */
function freshShop(root: string): Map<string, string> {
  const text = "# old\n";
  const paths = ["shop.yaml", "catalogue/parts.yaml", "lathe/machine.yaml", "lathe/options/more-air.yaml", "mill/machine.yaml"];
  for (const path of [...paths, "lathe/records/readings.csv"]) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  }
  return new Map([...paths, "lathe/records/readings.csv"].map((path) => [path, sha256(text)]));
}

/**
 * SIGKILL at random instants. After each kill every file must hold the last text whose save was answered, or the one being
 * saved; every record once answered must stand. A kill leaves the kernel's cache alive: the flushes that a power cut needs
 * are not tried by this.
 */
export async function killSaves(kills: number): Promise<Killed> {
  const work = mkdtempSync(join(tmpdir(), "kill-"));
  try {
    writeFileSync(join(work, "package.json"), '{ "type": "module" }');
    const module = await compiledSave(work);
    const root = join(work, "shop");
    const standing = freshShop(root);
    const counts = { kills, saves: 0, midway: 0, leftovers: 0, unanswered: 0 };
    for (let seed = 0; seed < kills; seed++) {
      const lines = await killedRun(module, root, seed);
      expect(lines.filter((line) => line.startsWith("refused"))).toEqual([]);
      let underWay: readonly [path: string, hash: string] | null = null;
      for (const line of lines) {
        const [word, path = "", hash = ""] = line.split(" ");
        underWay = word === "try" ? [path, hash] : null;
        if (word !== "done") continue;
        standing.set(path, hash);
        counts.saves++;
      }
      const files = expectWhole(root, standing, underWay);
      if (underWay !== null) {
        const [path, hash] = underWay;
        counts.midway++;
        if (files.get(path)?.hash === hash) {
          standing.set(path, hash);
          counts.unanswered++;
        }
      }
      counts.leftovers += leftovers(root).length;
      await clearLeftovers(root, standing);
    }
    return counts;
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
}

/** With two flushes, on an ordinary disk. */
const saveTime = 15; // ms

/** What the child said until it was killed, whole lines only. */
function killedRun(module: string, root: string, seed: number): Promise<string[]> {
  const child = spawn(process.execPath, [join(import.meta.dirname, "saver.mjs"), module, root, String(seed)], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  let said = "";
  let isDue = false;
  child.stdout.setEncoding("utf8").on("data", (text: string) => {
    said += text;
    // One to five saves after the start; then steps of the golden ratio spread the instants evenly over the length of a save.
    if (isDue || said.split("try ").length <= 1 + (seed % 5)) return;
    isDue = true;
    setTimeout(() => child.kill("SIGKILL"), saveTime * ((seed * 0.618034) % 1));
  });
  return new Promise((resolve, reject) => {
    child.on("error", reject).on("close", (status, signal) => {
      if (signal === "SIGKILL" || said.includes("refused")) resolve(said.split("\n").slice(0, -1));
      else reject(new Error(`the child ended by itself with ${status ?? signal}: ${said.slice(-500)}`));
    });
  });
}

function expectWhole(root: string, standing: ReadonlyMap<string, string>, underWay: readonly [string, string] | null): ShopFiles["files"] {
  const { files, findings } = readShop(root);
  expect(findings).toEqual([]);
  for (const [path, { hash }] of files) {
    const allowed = [standing.get(path), underWay?.[0] === path ? underWay[1] : undefined];
    expect(allowed, `${path} is torn`).toContain(hash);
  }
  expect([...standing.keys()].filter((path) => !files.has(path))).toEqual([]);
  return files;
}

/** The next save in a folder clears what the kill left there. */
async function clearLeftovers(root: string, standing: Map<string, string>): Promise<void> {
  for (const folder of new Set(leftovers(root).map((path) => dirname(path)))) {
    const path = [...standing.keys()].find((each) => dirname(each) === folder);
    const file = readShop(root).files.get(path ?? "");
    if (path === undefined || file === undefined) throw new Error(`no file in ${folder}`);
    const grown = `${file.text}# after the kill\n`;
    expect(await saveText(root, path, grown, file.hash)).toEqual({ ok: true, hash: sha256(grown) });
    standing.set(path, sha256(grown));
  }
  expect(leftovers(root)).toEqual([]);
}

function leftovers(root: string): string[] {
  return readdirSync(root, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".waywright-new"));
}
