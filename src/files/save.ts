// Saving a text of the shop: all of it or nothing, and never over a text that its writer has not seen.
import { randomBytes } from "node:crypto";
import { existsSync, linkSync, readFileSync, renameSync, realpathSync } from "node:fs";
import { access, constants, mkdir, open, readdir, stat, unlink } from "node:fs/promises";
import { dirname, join, relative, sep } from "node:path";
import { sha256 } from "../kernel/sha256.ts";
import { isRecordPath, isShopPath } from "./shop-path.ts";
import { asText, errorCode, fileLimit, locate, plainCause, readBytes, readShopFile, type ShopFile } from "./text-file.ts";

/** What became of a save. Unless `ok`, the old text stands; only when the very last flush fails, the new one does, and may be sent again. */
export type Saved =
  | { readonly ok: true; readonly hash: string }
  /** The file on disk is not the one that was read; null when it is gone. */
  | { readonly ok: false; readonly reason: "conflict"; readonly conflict: ShopFile | null }
  | { readonly ok: false; readonly reason: Refused | "disk"; readonly says: string };

type Refused = "not-a-shop-path" | "link-out" | "not-text" | "too-large" | "append-only";

/**
 * Puts `text` in the place of the text with hash `expected`, or makes a new file when `expected` is null.
 *
 * Written beside under another name, flushed, moved over the old file in one step, folder flushed: killed or cut off at any
 * instant, the file holds the old text or the new one. A file in records/ may only grow at its end. A new file never covers
 * one that appeared meanwhile. Another program that writes the same file in the microseconds between the last look and the
 * move would go unseen: no file system offers a move that compares.
 */
export async function saveText(root: string, path: string, text: string, expected: string | null): Promise<Saved> {
  if (!isShopPath(path)) return refused("not-a-shop-path", `${path} is not a place for a file of a shop`);
  if (/[\0\p{Surrogate}]/u.test(text)) return refused("not-text", "the text holds a zero or half a character");
  const bytes = Buffer.from(text, "utf8");
  if (bytes.length > fileLimit) return refused("too-large", `the text is larger than ${fileLimit / 1e6} MB`);
  try {
    const place = locate(root, path);
    if (place === null || !isShopPath(wayTo(root, place))) return refused("link-out", "the link leads out of the shop's files");
    return await replace({ root, path, place, bytes, hash: sha256(text), expected });
  } catch (error) {
    return refused("disk", `not saved: ${plainCause(error)}`);
  }
}

interface Save {
  readonly root: string;
  readonly path: string;
  readonly place: string;
  readonly bytes: Buffer;
  readonly hash: string;
  readonly expected: string | null;
}

async function replace(save: Save): Promise<Saved> {
  const { path, place, bytes, hash, expected } = save;
  const before = existsSync(place) ? readBytes(place) : null;
  const disk = before === null ? null : asText(path, before);
  if (disk !== null && "code" in disk)
    return refused(
      disk.code === "too-large" ? "too-large" : "not-text",
      `the file there cannot be read (${disk.says}), so it is left alone`,
    );
  if (disk?.hash === hash) {
    await flushFolder(dirname(place));
    return { ok: true, hash }; // an earlier try went through and its answer was lost
  }
  if ((disk?.hash ?? null) !== expected) return conflict(disk);
  if (before !== null && isRecordPath(path) && !bytes.subarray(0, before.length).equals(before))
    return refused("append-only", "a record may grow, but what stands in it stays; write a new one that supersedes it");
  if (before !== null) await access(place, constants.W_OK); // the move below needs no such right, but the owner meant something by it

  const folder = dirname(place);
  const made = await mkdir(folder, { recursive: true });
  await removeLeftovers(folder);
  const beside = join(folder, besideName());
  try {
    await writeFlushed(beside, bytes, before === null ? null : (await stat(place)).mode & modeBits);
    const isDone = before === null ? placeNew(beside, place) : placeOver(beside, place, before);
    if (!isDone) {
      const now = readShopFile(save.root, path);
      return conflict("code" in now ? null : now);
    }
  } finally {
    await unlink(beside).catch(ignored); // gone when moved; else the next save finds it
  }
  // A new folder is a line in the folder above, and a shop is two folders deep.
  const touched = made === undefined ? [folder] : [folder, dirname(folder), dirname(dirname(folder))];
  for (const each of touched) await flushFolder(each);
  return { ok: true, hash };
}

const modeBits = 0o777;

/** A new file, open to whom the system opens files by habit, or to whom `mode` says. */
async function writeFlushed(beside: string, bytes: Buffer, mode: number | null): Promise<void> {
  const file = await open(beside, "wx", mode ?? undefined);
  try {
    if (mode !== null) await file.chmod(mode).catch(ignored); // adds what the umask took; a file system without modes has none to keep
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** A link fails where a name stands already, a move does not; memory sticks know no links. */
function placeNew(beside: string, place: string): boolean {
  try {
    linkSync(beside, place);
    return true;
  } catch (error) {
    if (errorCode(error) === "EEXIST" || existsSync(place)) return false;
    if (!["EPERM", "ENOTSUP", "EOPNOTSUPP", "ENOSYS", "EMLINK"].includes(errorCode(error))) throw error;
    renameSync(beside, place);
    return true;
  }
}

/** Looks and moves without a pause between, so that of two saves in this program the second sees the first. */
function placeOver(beside: string, place: string, before: Buffer): boolean {
  if (!existsSync(place) || !readFileSync(place).equals(before)) return false;
  renameSync(beside, place);
  return true;
}

/** The move is lasting only when the folder is on the disk too; some systems cannot open or flush a folder and do it by themselves. */
async function flushFolder(folder: string): Promise<void> {
  try {
    const file = await open(folder, "r");
    try {
      await file.sync();
    } finally {
      await file.close();
    }
  } catch (error) {
    if (!["EISDIR", "EPERM", "EACCES", "EINVAL", "ENOTSUP"].includes(errorCode(error))) throw error;
  }
}

const besideEnding = ".waywright-new";
/** Nothing takes that long to write: what is older was left by a program that is gone, whoever has its number now. */
const leftoverAge = 60_000; // ms

function besideName(): string {
  return `.${process.pid}-${randomBytes(8).toString("hex")}${besideEnding}`;
}

/** Removes what a killed program left; the names begin with a dot, so no reader ever took them for files of the shop. */
async function removeLeftovers(folder: string): Promise<void> {
  for (const name of await readdir(folder)) {
    const pid = name.endsWith(besideEnding) ? /^\.(\d+)-/.exec(name)?.[1] : undefined;
    if (pid === undefined) continue;
    const path = join(folder, name);
    const age = await stat(path).then((found) => Date.now() - found.mtimeMs, ignored);
    if (age !== undefined && (age > leftoverAge || !isRunning(Number(pid)))) await unlink(path).catch(ignored);
  }
}

function isRunning(pid: number): boolean {
  try {
    return process.kill(pid, 0); // signal 0 only asks
  } catch (error) {
    return errorCode(error) === "EPERM";
  }
}

function wayTo(root: string, place: string): string {
  return relative(realpathSync.native(root), place).split(sep).join("/");
}

function conflict(disk: ShopFile | null): Saved {
  return { ok: false, reason: "conflict", conflict: disk };
}

function refused(reason: Refused | "disk", says: string): Saved {
  return { ok: false, reason, says };
}

function ignored(): undefined {
  return undefined;
}
