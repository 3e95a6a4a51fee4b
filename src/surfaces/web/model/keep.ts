// Keeping edits: texts on disk and texts on the page brought together, and no one's work lost.
import { batch, effect, signal } from "@preact/signals";
import { ask, disk, diskFindings, edits, folder, trail, trouble } from "./desk.ts";
import { settled, textTyped } from "./edits.ts";
import { merged, type Piece, resolved } from "./lines.ts";
import { type DiskFile, fetchShop, listen, save } from "./server.ts";

/** A file that somebody else changed in lines that were changed here too. */
export interface Conflict {
  readonly path: string;
  readonly pieces: readonly Piece[];
}

export const isCutOff = signal(false);
/** Files where both sides changed the same lines; edits in them wait for an answer. */
export const conflicts = signal<ReadonlyMap<string, Conflict>>(new Map());

/** What a file would be if all were kept, beside what it is. */
export interface Draft {
  readonly path: string;
  /** On disk; null for a file that is new. */
  readonly before: string | null;
  readonly after: string;
}
export interface Drafts {
  readonly files: readonly Draft[];
  readonly refused: readonly { readonly address: string; readonly says: string }[];
}

/** Everything as it would be written now. */
export async function drafts(): Promise<Drafts> {
  const { files, refused } = await ask("kept", null);
  const all = new Map([...edits.value.texts, ...files.map(({ path, text }) => [path, text] as const)]);
  return {
    files: [...all]
      .map(([path, after]) => ({ path, before: disk.value.get(path)?.text ?? null, after }))
      .filter(({ before, after }) => before !== after),
    refused,
  };
}

export interface KeptFile {
  readonly path: string;
  readonly says: string | null;
}

/** Keeps the drafts, file by file. What was kept is no edit any more; a conflict or a refusal leaves its edits standing. */
export async function keep(files: readonly Draft[], refused: readonly string[]): Promise<KeptFile[]> {
  const done: KeptFile[] = [];
  for (const { path, before, after } of files) {
    const saved = await save(path, after, before === null ? null : (disk.value.get(path)?.hash ?? null)).catch(
      (error: unknown) => ({ is: "refused", says: error instanceof Error ? error.message : String(error) }) as const,
    );
    if (saved.is === "saved") setDisk(path, { text: after, hash: saved.hash });
    if (saved.is === "conflict") meet(path, before ?? "", saved.disk, after);
    done.push({
      path,
      says: saved.is === "saved" ? null : saved.is === "refused" ? saved.says : "changed on disk meanwhile: look at both",
    });
  }
  const isAll = done.every(({ says }) => says === null);
  // Values know their file only through the worker: when every file was kept, all values but the refused ones were.
  if (isAll) {
    const values = [...edits.value.values.keys()].filter((address) => !refused.includes(address));
    trail.value = settled(
      trail.value,
      values,
      files.map(({ path }) => path),
    );
  }
  return done;
}

function setDisk(path: string, file: DiskFile | null): void {
  const next = new Map(disk.value);
  if (file === null) next.delete(path);
  else next.set(path, file);
  disk.value = next;
}

/** Another text lies on disk than the one our edits were made on. */
function meet(path: string, before: string, now: DiskFile | null, ours: string): void {
  const pieces = merged(before, now?.text ?? "", ours);
  batch(() => {
    setDisk(path, now);
    if (pieces.some((p) => p.is === "conflict")) conflicts.value = new Map(conflicts.value).set(path, { path, pieces });
    // Apart from each other the changes stand together: values are written over the new text anyway, a typed text is carried over.
    else if (edits.value.texts.has(path))
      trail.value = textTyped(
        trail.value,
        path,
        resolved(pieces, () => "ours"),
      );
  });
}

/** Answers a conflict: of each place the side that was chosen. The file's edits become one text, to be kept like any other. */
export async function settleConflict(path: string, choice: (conflict: number) => "theirs" | "ours"): Promise<void> {
  const conflict = conflicts.value.get(path);
  if (!conflict) return;
  const text = resolved(conflict.pieces, choice);
  const { values } = edits.value;
  const { addresses } = await ask("valuesIn", { path, values: [...values.keys()] });
  batch(() => {
    const left = new Map(conflicts.value);
    left.delete(path);
    conflicts.value = left;
    const isDisk = disk.value.get(path)?.text === text;
    trail.value = textTyped(trail.value, path, isDisk ? null : text, addresses);
  });
}

/** Drops all that was not kept. */
export function dropEdits(): void {
  batch(() => {
    conflicts.value = new Map();
    trail.value = settled(trail.value, [...edits.value.values.keys()], [...edits.value.texts.keys()]);
  });
}

async function readAgain(): Promise<void> {
  const shop = await fetchShop();
  const changed = [...shop.files].filter(([path, { hash }]) => disk.value.get(path)?.hash !== hash);
  const gone = [...disk.value.keys()].filter((path) => !shop.files.has(path));
  const { files } = folder.value === null ? { files: [] } : await drafts();
  batch(() => {
    for (const [path, now] of changed) {
      const ours = files.find((f) => f.path === path);
      if (ours) meet(path, ours.before ?? "", now, ours.after);
      else setDisk(path, now);
    }
    for (const path of gone) {
      const ours = files.find((f) => f.path === path);
      if (ours) meet(path, ours.before ?? "", null, ours.after);
      else setDisk(path, null);
    }
    diskFindings.value = shop.findings;
    folder.value = shop.name;
  });
}

let reading: Promise<void> = Promise.resolve();

/** One reading after another: two at once could mix their findings. */
function read(): void {
  reading = reading.then(readAgain).catch((error: unknown) => {
    trouble.value = `The shop could not be read: ${error instanceof Error ? error.message : String(error)}.`;
  });
}

/** Reads the shop, and again whenever somebody writes; warns before a page with edits is closed. */
export function startKeeping(): void {
  read();
  listen(
    (changes) => {
      if (changes.some(({ path, hash }) => disk.value.get(path)?.hash !== (hash ?? undefined))) read();
    },
    (isLost) => {
      const wasLost = isCutOff.value;
      isCutOff.value = isLost;
      if (wasLost && !isLost) read();
    },
  );
  const warn = (event: BeforeUnloadEvent): void => event.preventDefault();
  effect(() => {
    const hasEdits = edits.value.values.size + edits.value.texts.size > 0;
    if (hasEdits) addEventListener("beforeunload", warn);
    else removeEventListener("beforeunload", warn);
  });
}
