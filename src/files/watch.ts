// Tells which files of a shop have another text than before, whoever wrote them.
import { realpathSync } from "node:fs";
import { relative, sep } from "node:path";
import { watch } from "chokidar";
import { readShop } from "./shop-folder.ts";
import { isShopFolder, isShopPath } from "./shop-path.ts";

/** A file of the shop and the hash of its text now; null when it is gone or cannot be read. */
export interface Change {
  readonly path: string;
  readonly hash: string | null;
}

export interface Watch {
  close(): Promise<void>;
}

/** An editor saves in several steps, a checkout changes many files: what comes this close together is told at once. */
const pause = 60; // ms

/**
 * Calls `changed` with every file whose text is not what it was. A save by this program is told too, so that a second page
 * hears of it; who saved knows the hash of its own text and has nothing to do. Events only wake it: what changed is found by
 * comparing hashes, since a touched file has not changed and events get lost.
 */
export async function watchShop(
  root: string,
  changed: (changes: readonly Change[]) => void,
  failed: (error: unknown) => void,
): Promise<Watch> {
  const base = realpathSync.native(root);
  const watcher = watch(base, {
    ignored: (path) => !isWatched(relative(base, path).split(sep).join("/")),
    ignoreInitial: true,
    followSymlinks: false,
  });
  await new Promise<void>((ready) => watcher.once("ready", ready).on("error", failed));

  let known = shopState(base);
  let isDue = false;
  watcher.on("all", () => {
    if (isDue) return;
    isDue = true;
    setTimeout(() => {
      isDue = false;
      look();
    }, pause).unref();
  });

  function look(): void {
    const now = shopState(base);
    const paths = [...new Set([...known.keys(), ...now.keys()])].filter((path) => known.get(path)?.state !== now.get(path)?.state);
    known = now;
    if (paths.length > 0 && !watcher.closed) changed(paths.sort().map((path) => ({ path, hash: now.get(path)?.hash ?? null })));
  }

  return { close: () => watcher.close() };
}

function isWatched(path: string): boolean {
  return isShopFolder(path) || isShopPath(path);
}

interface State {
  /** The hash, or the code of the finding in its place. */
  readonly state: string;
  readonly hash: string | null;
}

function shopState(root: string): Map<string, State> {
  const { files, findings } = readShop(root);
  const states = new Map<string, State>();
  for (const { code, place } of findings) states.set(place.file, { state: code, hash: null });
  for (const [path, { hash }] of files) states.set(path, { state: hash, hash });
  return states;
}
