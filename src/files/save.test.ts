import { spawnSync } from "node:child_process";
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { sha256 } from "../kernel/sha256.ts";
import { saveText } from "./save.ts";
import { readShop } from "./shop-folder.ts";

const path = "lathe/machine.yaml";
const old = "machine: lathe # as bought\n";
let root = "";
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "save-"));
  put("shop.yaml", "waywright: 1\n");
  put(path, old);
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

function put(path: string, text: string): void {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), text);
}
const onDisk = (path: string): string => readFileSync(join(root, path), "utf8");
const strays = (): string[] => readdirSync(root, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".waywright-new"));

test("a text is saved over the one that was read, byte for byte, and the answer carries its hash", async () => {
  const text = "\ufeffmachine: lathe\r\n# 25 µm\r\n";
  expect(await saveText(root, path, text, sha256(old))).toEqual({ ok: true, hash: sha256(text) });
  expect(readFileSync(join(root, path))).toEqual(Buffer.from(text));
  expect(readShop(root).files.get(path)).toEqual({ text, hash: sha256(text) });
  expect(strays()).toEqual([]);
});

test("a file edited by hand since it was read is left alone, and the answer brings its text", async () => {
  put(path, "machine: lathe # by hand\n");
  const disk = { text: "machine: lathe # by hand\n", hash: sha256("machine: lathe # by hand\n") };
  expect(await saveText(root, path, "machine: lathe # on the page\n", sha256(old))).toEqual({
    ok: false,
    reason: "conflict",
    conflict: disk,
  });
  expect(onDisk(path)).toBe(disk.text);
});

test("a file that was removed since it was read is not brought back unasked", async () => {
  rmSync(join(root, path));
  expect(await saveText(root, path, "new", sha256(old))).toEqual({ ok: false, reason: "conflict", conflict: null });
  expect(existsSync(join(root, path))).toBe(false);
});

test("a new file does not cover one that is already there", async () => {
  expect(await saveText(root, path, "new\n", null)).toEqual({ ok: false, reason: "conflict", conflict: { text: old, hash: sha256(old) } });
  expect(onDisk(path)).toBe(old);
});

test("a new option makes its folder, and a new machine too", async () => {
  expect(await saveText(root, "lathe/options/more-air.yaml", "title: More air\n", null)).toMatchObject({ ok: true });
  expect(await saveText(root, "mill/machine.yaml", "machine: mill\n", null)).toMatchObject({ ok: true });
  expect(onDisk("lathe/options/more-air.yaml")).toBe("title: More air\n");
  expect(onDisk("mill/machine.yaml")).toBe("machine: mill\n");
});

test("a save whose answer was lost may be sent again", async () => {
  const twice = async (): Promise<unknown> => saveText(root, path, "machine: lathe # new\n", sha256(old));
  expect(await twice()).toEqual(await twice());
});

test("of many saves at once over the same text one goes through and all others are told of it", async () => {
  const texts = Array.from({ length: 20 }, (_, i) => `machine: lathe # writer ${i}\n`);
  for (const [file, before] of [[path, sha256(old)] as const, ["lathe/options/a.yaml", null] as const]) {
    const saved = await Promise.all(texts.map((text) => saveText(root, file, text, before)));
    const winner = saved.findIndex(({ ok }) => ok);
    expect(onDisk(file)).toBe(texts[winner]);
    const lost = saved.filter((_, i) => i !== winner);
    for (const each of lost) expect(each).toMatchObject({ ok: false, reason: "conflict", conflict: { text: texts[winner] } });
  }
  expect(strays()).toEqual([]);
});

test("readings may grow; a record's standing lines are neither changed nor cut", async () => {
  const record = "lathe/records/2026-02-20-closer-leak.csv";
  put(record, "time/s,pressure/bar\n0,7.00\n");
  const before = sha256(onDisk(record));
  const grown = "time/s,pressure/bar\n0,7.00\n30,6.72\n";
  for (const text of ["time/s,pressure/bar\n0,7.10\n", "time/s,pressure/bar\n", ""])
    expect(await saveText(root, record, text, before)).toMatchObject({ ok: false, reason: "append-only" });
  expect(await saveText(root, record, grown, before)).toEqual({ ok: true, hash: sha256(grown) });
});

test.each([
  "../outside.yaml",
  "/etc/outside.yaml",
  "lathe/../../outside.yaml",
  "lathe\\machine.yaml",
  "lathe/machine.yaml\0.txt",
  "lathe/programs/a.yaml",
  "lathe/machine.yml",
  "notes.yaml",
  ".waywright/machine.yaml",
  "package.json",
  "",
])("nothing is written to %j, which is no place of a shop", async (stray) => {
  const before = readdirSync(root, { recursive: true });
  expect(await saveText(root, stray, "x\n", null)).toMatchObject({ ok: false, reason: "not-a-shop-path" });
  expect(readdirSync(root, { recursive: true })).toEqual(before);
});

test("nothing is written through a link that leads out of the shop, or to a file that is none of the model", async () => {
  const outside = mkdtempSync(join(tmpdir(), "outside-"));
  try {
    writeFileSync(join(outside, "a.yaml"), "a");
    put("README.md", "a");
    mkdirSync(join(root, "catalogue"));
    symlinkSync(join(outside, "a.yaml"), join(root, "catalogue/a.yaml"));
    symlinkSync(join(outside, "b.yaml"), join(root, "catalogue/b.yaml"));
    symlinkSync("../README.md", join(root, "catalogue/c.yaml"));
    symlinkSync(outside, join(root, "lathe/options"));
    for (const [stray, expected] of [
      ["catalogue/a.yaml", sha256("a")],
      ["catalogue/b.yaml", null],
      ["catalogue/c.yaml", sha256("a")],
      ["lathe/options/a.yaml", sha256("a")],
      ["lathe/options/new.yaml", null],
    ] as const)
      expect(await saveText(root, stray, "b", expected), stray).toMatchObject({ ok: false });
    expect(readdirSync(outside)).toEqual(["a.yaml"]);
    expect(readFileSync(join(outside, "a.yaml"), "utf8")).toBe("a");
    expect(onDisk("README.md")).toBe("a");
  } finally {
    rmSync(outside, { recursive: true });
  }
});

test("a link inside the shop stays a link and its file gets the text", async () => {
  put("catalogue/a.yaml", "a\n");
  symlinkSync("a.yaml", join(root, "catalogue/b.yaml"));
  expect(await saveText(root, "catalogue/b.yaml", "b\n", sha256("a\n"))).toMatchObject({ ok: true });
  expect(onDisk("catalogue/a.yaml")).toBe("b\n");
});

test("who may read and write a file is the same after a save", async () => {
  for (const mode of [0o600, 0o666, 0o644, 0o640]) {
    chmodSync(join(root, path), mode);
    await saveText(root, path, `machine: lathe # ${mode}\n`, sha256(onDisk(path)));
    expect(statSync(join(root, path)).mode & 0o777).toBe(mode);
  }
});

test("text that could not be read back is refused: half characters, zero bytes, more than 5 MB", async () => {
  expect(await saveText(root, path, "a\ud800", sha256(old))).toMatchObject({ reason: "not-text" });
  expect(await saveText(root, path, "a\0", sha256(old))).toMatchObject({ reason: "not-text" });
  expect(await saveText(root, path, "µ".repeat(2_500_001), sha256(old))).toMatchObject({ reason: "too-large" });
  expect(onDisk(path)).toBe(old);
});

test("a file on disk that is no text is not written over", async () => {
  writeFileSync(join(root, path), Buffer.from(old, "utf16le"));
  expect(await saveText(root, path, "new\n", sha256(old))).toMatchObject({ ok: false, reason: "not-text" });
  expect(readFileSync(join(root, path))).toEqual(Buffer.from(old, "utf16le"));
});

test("what a killed program left beside is cleared by the next save, what a running one is writing is not", async () => {
  const gone = spawnSync(process.execPath, ["--version"]).pid;
  const leave = (pid: number, ending: string): string => {
    put(`lathe/.${pid}-${"a".repeat(16)}${ending}`, "half a te");
    return join(root, `lathe/.${pid}-${"a".repeat(16)}${ending}`);
  };
  const killed = leave(gone, ".waywright-new");
  const running = leave(process.ppid, ".waywright-new");
  const foreign = leave(gone, ".other");
  expect(readShop(root).findings).toEqual([]);
  await saveText(root, path, "machine: lathe # 1\n", sha256(old));
  expect([killed, running, foreign].map(existsSync)).toEqual([false, true, true]);
  utimesSync(running, 0, 0);
  await saveText(root, path, "machine: lathe # 2\n", sha256("machine: lathe # 1\n"));
  expect([running, foreign].map(existsSync)).toEqual([false, true]);
});

test("a shop folder that is gone, as a memory stick pulled out, is said and nothing is made in its place", async () => {
  rmSync(root, { recursive: true });
  const saved = await saveText(root, path, "new\n", sha256(old));
  expect(saved).toMatchObject({ ok: false, reason: "disk" });
  expect(existsSync(root)).toBe(false);
});
