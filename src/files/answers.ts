// Slow answers kept between two starts of the program, in .waywright/answers of the shop: what is torn, foreign or of another build is not there.
import { createHash } from "node:crypto";
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { deserialize, serialize } from "node:v8";
import type { Shelf } from "../kernel/kept.ts";
import { locate } from "./text-file.ts";

const folderName = ".waywright/answers";
const ending = ".answer";
const notice = "# Answers that took long to work out. All of this folder may be deleted; it is made again.\n*\n";

/** All answers of a shop together; beyond it those not used for longest go [bytes]. */
const mostBytes = 200e6;
/** Length of the checksum at the front of a file [bytes]. */
const sumLength = 32;

const sumOf = (bytes: Uint8Array | string): Buffer => createHash("sha256").update(bytes).digest();

/**
 * The program as it was built: its files by name, size and time, for another build may answer otherwise. null when it runs from its
 * sources, which change under it. `url` is of one of its files.
 */
export function buildOf(url: string): string | null {
  if (!url.endsWith(".mjs")) return null;
  const folder = dirname(fileURLToPath(url));
  const states = readdirSync(folder).map((name) => {
    const { size, mtimeMs } = statSync(join(folder, name));
    return `${name} ${size} ${mtimeMs}`;
  });
  return sumOf(states.toSorted().join("\n")).toString("hex");
}

/**
 * A shelf in the folder of a shop. A file holds the checksum of what follows it, then key and answer; it is written aside and moved into
 * place. Where nothing can be written, nothing is kept, and nobody is troubled with it.
 */
export function openAnswers(root: string, build: string, most: number = mostBytes): Shelf {
  const folder = placeOf(root);
  if (folder === null) return { take: () => undefined, put: () => undefined };
  const there = new Set(namesIn(folder));
  const nameOf = (key: string): string => sumOf(`${build}\n${key}`).toString("hex") + ending;
  let isWritable = true;
  /** What all files take; known once something is to be written. */
  let used: number | null = null;
  const write = (name: string, bytes: Buffer): void => {
    if (used === null) {
      mkdirSync(folder, { recursive: true });
      writeFileSync(join(dirname(folder), ".gitignore"), notice);
    }
    if (used === null || used + bytes.length > most) used = makeRoom(folder, most - bytes.length);
    const aside = join(folder, `${name}-${process.pid}`);
    writeFileSync(aside, bytes);
    renameSync(aside, join(folder, name));
    used += bytes.length;
    there.add(name);
  };
  return {
    take(key) {
      const name = nameOf(key);
      return there.has(name) ? read(join(folder, name), key) : undefined;
    },
    put(key, answer) {
      if (!isWritable) return;
      try {
        const payload = serialize({ key, answer });
        write(nameOf(key), Buffer.concat([sumOf(payload), payload]));
      } catch {
        isWritable = false;
      }
    },
  };
}

/** null where a link leads out of the shop. */
function placeOf(root: string): string | null {
  try {
    return locate(root, folderName);
  } catch {
    return null;
  }
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

/** The answer in a file; nothing where any byte of it is not what was written, or it belongs to another key. */
function read(file: string, key: string): unknown {
  try {
    const bytes = readFileSync(file);
    const payload = bytes.subarray(sumLength);
    if (!sumOf(payload).equals(bytes.subarray(0, sumLength))) return undefined;
    const found = deserialize(payload) as { key: string; answer: unknown }; // as it was written, says its checksum
    if (found.key !== key) return undefined;
    touch(file);
    return found.answer;
  } catch {
    return undefined;
  }
}

/** Notes that an answer was of use; on a disk that may not be written it is read all the same. */
function touch(file: string): void {
  try {
    const now = new Date();
    utimesSync(file, now, now);
  } catch {
    // It will be taken for one that nobody needs, which costs an answer made again.
  }
}

/** Removes what was not used for longest until all that is left fits in `room` [bytes]; what that takes. */
function makeRoom(folder: string, room: number): number {
  const files = namesIn(folder).map((name) => {
    const file = join(folder, name);
    const { size, mtimeMs } = statSync(file);
    return { file, size, mtimeMs };
  });
  let all = files.reduce((sum, { size }) => sum + size, 0);
  for (const { file, size } of files.toSorted((a, b) => a.mtimeMs - b.mtimeMs)) {
    if (all <= room) break;
    rmSync(file);
    all -= size;
  }
  return all;
}
