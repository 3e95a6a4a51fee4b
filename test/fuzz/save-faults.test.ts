import { spawnSync } from "node:child_process";
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { sha256 } from "../../src/kernel/sha256.ts";
import { compiledSave } from "./kill-saves.ts";

let work = "";
let module = "";
let root = "";
const old = "machine: lathe\n";

beforeAll(async () => {
  work = mkdtempSync(join(tmpdir(), "faults-"));
  chmodSync(work, 0o755);
  writeFileSync(join(work, "package.json"), '{ "type": "module" }');
  module = await compiledSave(work);
});
beforeEach(() => {
  root = mkdtempSync(join(work, "shop-"));
  chmodSync(root, 0o755);
  mkdirSync(join(root, "lathe"));
  writeFileSync(join(root, "shop.yaml"), "waywright: 1\n");
  writeFileSync(join(root, "lathe/machine.yaml"), old);
});
afterAll(() => rmSync(work, { recursive: true, force: true }));

/** A save in another process; `before` is a line of shell. */
function save(text: string, before = ":"): unknown {
  const args = [join(import.meta.dirname, "save-once.mjs"), module, root, "lathe/machine.yaml", text, sha256(old)];
  const { stdout, stderr } = spawnSync("sh", ["-c", `${before}; exec "$@"`, "sh", process.execPath, ...args], {
    encoding: "utf8",
  });
  expect(stderr).toBe("");
  return JSON.parse(stdout);
}

function mode(folder: number, file: number): void {
  chmodSync(join(root, "lathe/machine.yaml"), file);
  chmodSync(join(root, "lathe"), folder);
}

function expectUntouched(): void {
  expect(readdirSync(join(root, "lathe"))).toEqual(["machine.yaml"]);
  expect(readFileSync(join(root, "lathe/machine.yaml"), "utf8")).toBe(old);
}

test("when the disk takes only part of the text, the old text stands, nothing lies beside, and the answer says so", () => {
  mode(0o777, 0o666);
  const blocks = 8; // of 512 or 1024 bytes
  expect(save("*100000", `ulimit -f ${blocks}`)).toEqual({
    ok: false,
    reason: "disk",
    says: "not saved: the file would grow beyond what the system allows",
  });
  expectUntouched();
});

test("in a read-only folder the old text stands and the answer says so", () => {
  mode(0o555, 0o666);
  expect(save("new\n")).toEqual({ ok: false, reason: "disk", says: "not saved: this user may not" });
  expectUntouched();
});

test("a file marked read-only is not replaced, though its folder would allow it", () => {
  mode(0o777, 0o444);
  expect(save("new\n")).toEqual({ ok: false, reason: "disk", says: "not saved: this user may not" });
  expectUntouched();
});

test("the same save goes through once nothing stands against it", () => {
  mode(0o777, 0o666);
  expect(save("new\n")).toEqual({ ok: true, hash: sha256("new\n") });
  expect(readFileSync(join(root, "lathe/machine.yaml"), "utf8")).toBe("new\n");
});
