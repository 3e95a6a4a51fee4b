import { mkdirSync, mkdtempSync, renameSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { sha256 } from "../kernel/sha256.ts";
import { saveText } from "./save.ts";
import { watchShop, type Change, type Watch } from "./watch.ts";

let root = "";
let watch: Watch;
let told: Change[] = [];
const failures: unknown[] = [];

beforeEach(async () => {
  root = mkdtempSync(join(tmpdir(), "watch-"));
  mkdirSync(join(root, "lathe/options"), { recursive: true });
  put("shop.yaml", "waywright: 1\n");
  put("lathe/machine.yaml", "machine: lathe\n");
  told = [];
  watch = await watchShop(
    root,
    (changes) => told.push(...changes),
    (error) => failures.push(error),
  );
});
afterEach(async () => {
  await watch.close();
  rmSync(root, { recursive: true, force: true });
  expect(failures).toEqual([]);
});

const put = (path: string, text: string): void => writeFileSync(join(root, path), text);
const soon = { timeout: 10_000 };

test("three saves in a row through a file beside are each told, as an editor and this program make them", async () => {
  for (const text of ["one\n", "two\n", "three\n"]) {
    put("lathe/.machine.yaml.swp", text);
    renameSync(join(root, "lathe/.machine.yaml.swp"), join(root, "lathe/machine.yaml"));
    await vi.waitFor(() => expect(told.at(-1)).toEqual({ path: "lathe/machine.yaml", hash: sha256(text) }), soon);
  }
});

test("a new option, its removal and a removed machine are told by path", async () => {
  put("lathe/options/more-air.yaml", "title: More air\n");
  await vi.waitFor(() => expect(told).toEqual([{ path: "lathe/options/more-air.yaml", hash: sha256("title: More air\n") }]), soon);
  told = [];
  rmSync(join(root, "lathe/options/more-air.yaml"));
  await vi.waitFor(() => expect(told).toEqual([{ path: "lathe/options/more-air.yaml", hash: null }]), soon);
  told = [];
  rmSync(join(root, "lathe"), { recursive: true });
  await vi.waitFor(() => expect(told).toEqual([{ path: "lathe/machine.yaml", hash: null }]), soon);
});

test("a file that was touched, and files that are none of the model, are not told", async () => {
  utimesSync(join(root, "lathe/machine.yaml"), 1, 1);
  put("lathe/notes.txt", "x");
  put("shop.yaml", "waywright: 1 # last\n"); // told after whatever came before it
  await vi.waitFor(() => expect(told.map(({ path }) => path)).toContain("shop.yaml"), soon);
  expect(told.map(({ path }) => path)).toEqual(["shop.yaml"]);
});

test("a save of our own is told with the hash that the save answered, so its writer knows it", async () => {
  const saved = await saveText(root, "lathe/machine.yaml", "machine: lathe # new\n", sha256("machine: lathe\n"));
  await vi.waitFor(() => expect(told).toEqual([{ path: "lathe/machine.yaml", hash: saved.ok ? saved.hash : "" }]), soon);
});

test("a file that stops being text is told as unreadable, and as text again when it is one", async () => {
  writeFileSync(join(root, "lathe/machine.yaml"), Buffer.from("machine: lathe", "utf16le"));
  await vi.waitFor(() => expect(told).toEqual([{ path: "lathe/machine.yaml", hash: null }]), soon);
  put("lathe/machine.yaml", "machine: lathe\n");
  await vi.waitFor(() => expect(told.at(-1)).toEqual({ path: "lathe/machine.yaml", hash: sha256("machine: lathe\n") }), soon);
});
