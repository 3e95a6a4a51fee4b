// The shop folder as it stands on disk: every file of the model as text, nothing else, always in the same order.
import { existsSync, readdirSync } from "node:fs";
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
export function readShop(root: string): ShopFiles {
  const found: Finding[] = [];
  const files = new Map<string, ShopFile>();
  const paths = shopPaths(root, found);
  let length = 0;
  for (const path of paths.slice(0, countLimit)) {
    const read = readShopFile(root, path);
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
  return { root, files, findings: found.sort(byFile) };
}

function byFile(a: Finding, b: Finding): number {
  if (a.place.file === b.place.file) return 0;
  return a.place.file < b.place.file ? -1 : 1;
}

/** All paths to be read, sorted; adds findings about names and links on the way. */
function shopPaths(root: string, found: Finding[]): string[] {
  const paths = ["shop.yaml"];
  for (const name of namesIn(root, "", found)) {
    const inside = pathsOf(root, name, found);
    const machine = `${name}/machine.yaml`;
    if (name !== "catalogue" && inside.length > 0 && !inside.includes(machine)) {
      found.push(fileFinding("file-missing", machine, `${name}/ holds files of a machine, but no machine.yaml`));
    }
    paths.push(...inside);
  }
  return paths.sort();
}

/** Paths in a folder of the shop and the folders inside it. */
function pathsOf(root: string, folder: string, found: Finding[]): string[] {
  if (!isShopFolder(folder)) {
    const isMachine = !/^\.|\//.test(folder) && existsSync(join(root, `${folder}/machine.yaml`));
    if (isMachine) found.push(fileFinding("bad-name", `${folder}/machine.yaml`, `"${folder}" cannot name a machine`));
    return [];
  }
  const paths: string[] = [];
  for (const name of namesIn(root, folder, found)) {
    const path = `${folder}/${name}`;
    if (isShopPath(path)) paths.push(path);
    else if (isMeantForShop(path)) found.push(fileFinding("bad-name", path, `"${name}" cannot name a file of the shop here`));
    else paths.push(...pathsOf(root, path, found));
  }
  return paths;
}

/** Names in a folder, sorted; none when it is no folder. A folder with shop files that lies elsewhere is a finding. */
function namesIn(root: string, folder: string, found: Finding[]): string[] {
  try {
    const place = locate(root, folder);
    if (place !== null) return readdirSync(place).sort();
    const isMeant = folder === "catalogue" || folder.includes("/") || existsSync(join(root, `${folder}/machine.yaml`));
    if (isMeant) found.push(fileFinding("link-out", folder, "the link leads out of the shop folder"));
  } catch (error) {
    if (!["ENOTDIR", "ENOENT"].includes(errorCode(error))) found.push(fileFinding("file-missing", folder, "this folder cannot be read"));
  }
  return [];
}
