import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, symlinkSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, posix } from "node:path";
import fc from "fast-check";
import { afterEach, beforeEach, expect, test } from "vitest";
import { sha256 } from "../kernel/sha256.ts";
import { findShop, readShop } from "./shop-folder.ts";
import { isMeantForShop, isShopPath } from "./shop-path.ts";

let root = "";
beforeEach(() => {
  root = realpathSync(mkdtempSync(join(tmpdir(), "shop-")));
  put("shop.yaml", "waywright: 1\n");
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

function put(path: string, text: string | Uint8Array): void {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), text);
}

function faults(): string[] {
  const { findings } = readShop(root);
  for (const { code, place, says } of findings) {
    if (code !== "not-text") expect(place).toMatchObject({ line: 1, column: 1 });
    expect(says).not.toBe("");
  }
  return findings.map(({ code, place }) => `${place.file} ${code}`);
}

test("the example shop is read whole: site, catalogue, two machines with sequences, work, options and records", () => {
  const heron = join(import.meta.dirname, "../../examples/heron");
  const { files, findings } = readShop(heron);
  expect(findings).toEqual([]);
  for (const path of [
    "shop.yaml",
    "catalogue/parts.yaml",
    "lathe/machine.yaml",
    "lathe/sequences/turret-index.yaml",
    "lathe/work/spool-shaft.yaml",
    "lathe/options/night-run.yaml",
    "lathe/records/2026-02-20-closer-leak.csv",
    "mill/machine.yaml",
  ])
    expect(files.get(path)?.text).toBe(readFileSync(join(heron, path), "utf8"));
  expect([...files.keys()]).toEqual([...files.keys()].sort());
});

test("a shop is found from any folder inside it, and not from outside", () => {
  put("lathe/records/photos/a.jpg", "");
  expect(findShop(join(root, "lathe/records/photos"))).toBe(root);
  expect(findShop(root)).toBe(root);
  expect(findShop(join(root, "shop.yaml"))).toBe(root);
  expect(findShop(dirname(root))).toBeNull();
});

test("part programs, photos, editor leftovers, hidden folders and kept answers are not read", () => {
  for (const path of [
    "lathe/programs/a.nc",
    "lathe/records/a.jpg",
    "lathe/records/photos/b.csv",
    "lathe/machine.yaml~",
    "lathe/work/.a.yaml",
  ])
    put(path, "x");
  for (const path of [".git/machine.yaml", ".waywright/answers/a.json", "README.md", "lathe/templates/a.yaml", "lathe/.5-ab.waywright-new"])
    put(path, "x");
  put("lathe/machine.yaml", "machine: lathe\n");
  expect([...readShop(root).files.keys()]).toEqual(["lathe/machine.yaml", "shop.yaml"]);
  expect(faults()).toEqual([]);
});

test("a byte order mark and CRLF stand in the text as they stand on disk, and the hash is of these bytes", () => {
  const text = "\ufeffwaywright: 1\r\n# 25 µm\r\n";
  put("shop.yaml", text);
  expect(readShop(root).files.get("shop.yaml")).toEqual({ text, hash: sha256(text) });
});

test("UTF-16 with and without its mark, Latin-1, cut UTF-8 and zero bytes are reported as no text, and the rest is read", () => {
  put("lathe/machine.yaml", Buffer.from("\ufeffmachine: lathe", "utf16le"));
  put("lathe/work/a.yaml", Buffer.from("work: a", "utf16le"));
  put("lathe/work/b.yaml", Buffer.from("work: a", "utf16le").swap16());
  put("lathe/work/c.yaml", Buffer.from("length: 5 µm", "latin1"));
  put("lathe/work/d.yaml", Buffer.from("5 µ").subarray(0, 3));
  put("lathe/work/e.yaml", "a\0\0\0\0b");
  put("lathe/work/f.yaml", "work: f\n");
  expect(faults()).toEqual(["lathe/machine.yaml not-text", ...["a", "b", "c", "d", "e"].map((name) => `lathe/work/${name}.yaml not-text`)]);
  expect([...readShop(root).files.keys()]).toEqual(["lathe/work/f.yaml", "shop.yaml"]);
  const at = (file: string): unknown => readShop(root).findings.find(({ place }) => place.file === file)?.place;
  expect(at("lathe/work/c.yaml")).toMatchObject({ line: 1, column: 11 });
  expect(at("lathe/work/d.yaml")).toMatchObject({ line: 1, column: 3 });
});

test("a file of 5 MB is read, one byte more is too large, and 100 GB cost no more than that", () => {
  put("catalogue/full.yaml", "#".repeat(5_000_000));
  put("catalogue/above.yaml", "#".repeat(5_000_001));
  put("catalogue/huge.yaml", "");
  truncateSync(join(root, "catalogue/huge.yaml"), 100e9);
  expect(faults()).toEqual(["catalogue/above.yaml too-large", "catalogue/huge.yaml too-large"]);
  expect(readShop(root).files.get("catalogue/full.yaml")?.text.length).toBe(5_000_000);
});

test("of a folder with more than 100 MB of text no more than that is read, and this is said", () => {
  for (let i = 10; i < 31; i++) put(`catalogue/${i}.yaml`, "#".repeat(5_000_000));
  expect(faults()).toEqual(["shop.yaml too-large"]);
  expect(readShop(root).files.size).toBe(21); // 20 whole ones and the one that was too much; shop.yaml sorts last
});

test("a link out of the shop is reported and not followed, one that stays inside is read", () => {
  const outside = mkdtempSync(join(tmpdir(), "outside-"));
  try {
    for (const name of ["secret.yaml", "machine.yaml"]) writeFileSync(join(outside, name), "secret: yes\n");
    put("lathe/machine.yaml", "machine: lathe\n");
    put("catalogue/a.yaml", "motors: {}\n");
    symlinkSync(join(outside, "secret.yaml"), join(root, "catalogue/out.yaml"));
    symlinkSync("../catalogue/a.yaml", join(root, "catalogue/in.yaml"));
    symlinkSync(outside, join(root, "lathe/work"));
    symlinkSync(outside, join(root, "mill"));
    symlinkSync(tmpdir(), join(root, "photos"));
    expect(faults()).toEqual(["catalogue/out.yaml link-out", "lathe/work link-out", "mill link-out"]);
    const { files } = readShop(root);
    expect([...files.keys()]).toEqual(["catalogue/a.yaml", "catalogue/in.yaml", "lathe/machine.yaml", "shop.yaml"]);
    expect(JSON.stringify([...files])).not.toContain("secret");
  } finally {
    rmSync(outside, { recursive: true });
  }
});

test("links to nothing and in a circle, a folder and a pipe in a file's place are reported and hold nothing up", () => {
  put("lathe/machine.yaml", "machine: lathe\n");
  mkdirSync(join(root, "lathe/work/folder.yaml"), { recursive: true });
  symlinkSync("nowhere.yaml", join(root, "lathe/work/dangling.yaml"));
  symlinkSync("ring.yaml", join(root, "lathe/work/ring.yaml"));
  execFileSync("mkfifo", [join(root, "lathe/work/pipe.yaml")]);
  expect(faults()).toEqual(["dangling", "folder", "pipe", "ring"].map((name) => `lathe/work/${name}.yaml file-missing`));
});

test("a folder without shop.yaml, and files of a machine without machine.yaml, are reported as missing the file", () => {
  put("lathe/options/more-air.yaml", "title: More air\n");
  rmSync(join(root, "shop.yaml"));
  expect(faults().sort()).toEqual(["lathe/machine.yaml file-missing", "shop.yaml file-missing"]);
  rmSync(root, { recursive: true });
  expect(faults()).toEqual(["shop.yaml file-missing"]);
});

test("files and machines whose names nothing could refer to are reported, not passed over", () => {
  put("Old Lathe/machine.yaml", "machine: lathe\n");
  put("lathe/machine.yaml", "machine: lathe\n");
  put("lathe/machine.yml", "machine: lathe\n");
  put("lathe/options/More Air.yaml", "title: More air\n");
  put("lathe/records/a.CSV", "t,p\n");
  put("catalogue/parts.yml", "motors: {}\n");
  expect(faults().sort()).toEqual(
    ["Old Lathe/machine.yaml", "lathe/machine.yml", "lathe/options/More Air.yaml", "lathe/records/a.CSV", "catalogue/parts.yml"]
      .map((path) => `${path} bad-name`)
      .sort(),
  );
});

test("no path that climbs, starts at the root, hides or holds a foreign sign belongs to a shop", () => {
  const hostile = [
    "..",
    ".",
    "",
    "/",
    "\\",
    "\0",
    "~",
    "%2e",
    "C:",
    "shop.yaml",
    "machine.yaml",
    "lathe",
    "records",
    "a.yaml",
    "catalogue",
    "\n",
  ];
  let accepted = 0;
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...hostile), { maxLength: 6 }), fc.constantFrom("/", ""), (parts, glue) => {
      const path = parts.join(glue);
      if (!isShopPath(path)) return;
      accepted++;
      expect(posix.normalize(path)).toBe(path);
      expect(path).not.toMatch(/[\\\0\n~%:]|^\/|(^|\/)\./);
      expect(isMeantForShop(path)).toBe(false);
    }),
    { seed: 1, numRuns: 5000 },
  );
  expect(accepted).toBeGreaterThan(10);
  for (const path of [
    "../shop.yaml",
    "/shop.yaml",
    "a/../shop.yaml",
    "catalogue/../shop.yaml",
    "lathe//machine.yaml",
    "lathe/records/.a.yaml",
    "lathe\\machine.yaml",
    "constructor",
    "__proto__/machine.yaml",
    "lathe/options/a.csv",
    "lathe/records/a.yaml/b.yaml",
    "shop.yaml\n",
  ])
    expect(isShopPath(path), path).toBe(false);
});
