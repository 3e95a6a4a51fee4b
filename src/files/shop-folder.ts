// The shop folder as it stands on disk: every file of the model as text, nothing else, always in the same order.
import { existsSync } from "node:fs";
import { access, readdir } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import type { Finding } from "../kernel/finding.ts";
import { isMeantForShop, isShopFolder, isShopPath } from "./shop-path.ts";
import { errorCode, fileFinding, locate, readShopFile, type ShopFile } from "./text-file.ts";

export interface ShopFiles {
  readonly root: string;
  /** By path from the root, parted by "/", in the order of the code points. */
  readonly files: ReadonlyMap<string, ShopFile>;
  /** By path too. */
  readonly findings: readonly Finding[];
}

/** Ten years of records are some thousand files of a few kB; a folder far above that is no shop, and would only fill the memory. */
const countLimit = 20_000;
const lengthLimit = 100_000_000;

/** The nearest folder upward, `start` included, with a shop.yaml; null when there is none up to the top. */
export function findShop(start: string): string | null {
  const folder = resolve(start);
  if (existsSync(join(folder, "shop.yaml"))) return folder;
  return dirname(folder) === folder ? null : findShop(dirname(folder));
}

/** Reads shop.yaml, the catalogue and all machines. What cannot be read is a finding, never an exception. */
export async function readShop(root: string): Promise<ShopFiles> {
  const found: Finding[] = [];
  const files = new Map<string, ShopFile>();
  const paths = await shopPaths(root, found);
  let length = 0;
  for (const path of paths.slice(0, countLimit)) {
    const read = await readShopFile(root, path);
    if ("code" in read) found.push(read);
    else {
      files.set(path, read);
      length += read.text.length;
    }
    if (length > lengthLimit) break;
  }
  if (length > lengthLimit || paths.length > countLimit)
    found.push(
      fileFinding(
        "too-large",
        "shop.yaml",
        `the shop folder holds more than ${countLimit} files or ${lengthLimit / 1e6} MB of text; the rest is left out`,
      ),
    );
  return { root, files, findings: found.sort((a, b) => (a.place.file < b.place.file ? -1 : 1)) };
}

/** All paths to be read, sorted; adds findings about names and links on the way. */
async function shopPaths(root: string, found: Finding[]): Promise<string[]> {
  const paths = ["shop.yaml"];
  for (const name of await namesIn(root, "", found)) {
    const inside = await pathsOf(root, name, found);
    const machine = `${name}/machine.yaml`;
    if (name !== "catalogue" && inside.length > 0 && !inside.includes(machine)) {
      found.push(fileFinding("file-missing", machine, `${name}/ holds files of a machine, but no machine.yaml`));
    }
    paths.push(...inside);
  }
  return paths.sort();
}

/** Paths in a folder of the shop and the folders inside it. */
async function pathsOf(root: string, folder: string, found: Finding[]): Promise<string[]> {
  if (!isShopFolder(folder)) {
    const isMachine = !/^\.|\//.test(folder) && (await isThere(root, `${folder}/machine.yaml`));
    if (isMachine) found.push(fileFinding("bad-name", `${folder}/machine.yaml`, `"${folder}" cannot name a machine`));
    return [];
  }
  const paths: string[] = [];
  for (const name of await namesIn(root, folder, found)) {
    const path = `${folder}/${name}`;
    if (isShopPath(path)) paths.push(path);
    else if (isMeantForShop(path)) found.push(fileFinding("bad-name", path, `"${name}" cannot name a file of the shop here`));
    else paths.push(...(await pathsOf(root, path, found)));
  }
  return paths;
}

/** Names in a folder, sorted; none when it is no folder. A folder with shop files that lies elsewhere is a finding. */
async function namesIn(root: string, folder: string, found: Finding[]): Promise<string[]> {
  try {
    const place = await locate(root, folder);
    if (place !== null) return (await readdir(place)).sort();
    const isMeant = folder === "catalogue" || folder.includes("/") || (await isThere(root, `${folder}/machine.yaml`));
    if (isMeant) found.push(fileFinding("link-out", folder, "the link leads out of the shop folder"));
  } catch (error) {
    if (!["ENOTDIR", "ENOENT"].includes(errorCode(error))) found.push(fileFinding("file-missing", folder, "this folder cannot be read"));
  }
  return [];
}

function isThere(root: string, path: string): Promise<boolean> {
  return access(join(root, path)).then(
    () => true,
    () => false,
  );
}
