// What comes from others: the reason for each package stands in the decisions, the licence of what is bundled in NOTICE. UPDATE_DOCS=1 writes NOTICE.
import { existsSync, readFileSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { root, textOf } from "./pages.ts";

interface Package {
  readonly name: string;
  readonly license: string;
  readonly dependencies?: Readonly<Record<string, string>>;
}

const folderOf = (name: string): string => join(root, "node_modules", name);
const packageOf = (name: string): Package => JSON.parse(readFileSync(join(folderOf(name), "package.json"), "utf8")) as Package;

/** Packages named in the sources that are built: imports of code and of style sheets. */
function named(): string[] {
  const files = readdirSync(join(root, "src"), { recursive: true, encoding: "utf8" }).filter((f) => /\.(?:tsx?|css)$/.test(f) && !/\.test(?:-help)?\./.test(f));
  const found = new Set<string>();
  for (const file of files) {
    const text = readFileSync(join(root, "src", file), "utf8");
    for (const [, at = ""] of text.matchAll(/(?:from|import|url\(|@import)\s*\(?["'](?:[./]*node_modules\/)?((?:@[\w-]+\/)?[\w-]+)(?:\/[^"']*)?["']/g)) {
      if (existsSync(join(folderOf(at), "package.json"))) found.add(at);
    }
  }
  return [...found];
}

/** With everything that those bring along. */
function bundled(names: readonly string[], seen = new Set<string>()): Set<string> {
  for (const name of names) {
    if (seen.has(name)) continue;
    seen.add(name);
    bundled(Object.keys(packageOf(name).dependencies ?? {}), seen);
  }
  return seen;
}

function licenceOf(name: string): string {
  const file = readdirSync(folderOf(name)).find((f) => /^licen[cs]e/i.test(f));
  expect(file, `${name} has no licence text`).toBeDefined();
  return readFileSync(join(folderOf(name), file ?? ""), "utf8").replaceAll("\r\n", "\n").trim();
}

const rule = "-".repeat(72);
const head = "Waywright is licensed under the MIT licence (see LICENSE). It is built with the packages below, each under its own licence.";

test("NOTICE carries the licence of every package in the program, and of no other", () => {
  const names = [...bundled(named())].toSorted();
  expect(names).toEqual(expect.arrayContaining(["chokidar", "preact", "yaml"]));
  const notice = [head, ...names.map((name) => `${rule}\n${name}: ${packageOf(name).license}\n${rule}\n\n${licenceOf(name)}`)].join("\n\n");
  const path = join(root, "NOTICE");
  if (process.env["UPDATE_DOCS"] === "1") writeFileSync(path, `${notice}\n`);
  expect(existsSync(path) ? readFileSync(path, "utf8") : "", "out of date: run UPDATE_DOCS=1 npm run test:unit -- test/docs").toBe(`${notice}\n`);
});

test("what is bundled may be bundled: no licence asks for more than its own text", () => {
  const allowed = ["MIT", "ISC", "OFL-1.1", "BSD-3-Clause", "Apache-2.0"];
  expect([...bundled(named())].filter((name) => !allowed.includes(packageOf(name).license))).toEqual([]);
});

test("the decisions give a reason for every package there is, and for no other", () => {
  const [, table = ""] = textOf("docs/decisions.md").split("## Dependencies\n");
  const first = [...(table.split("\n## ")[0] ?? "").matchAll(/^\| ([^|]+) \|/gm)].slice(2).flatMap((m) => (m[1] ?? "").split(", "));
  const packages = ["package.json", "test/browser/chromium/package.json"].flatMap((file) => {
    const { devDependencies = {}, dependencies = {} } = JSON.parse(readFileSync(join(root, file), "utf8")) as Record<string, Record<string, string>>;
    return [...Object.keys(devDependencies), ...Object.keys(dependencies)];
  });
  const isGiven = (name: string): boolean => first.some((f) => f === name || (f.endsWith("/*") && name.startsWith(f.slice(0, -1))));
  expect(packages.filter((name) => !isGiven(name))).toEqual([]);
  expect(first.filter((f) => !packages.some((name) => f === name || (f.endsWith("/*") && name.startsWith(f.slice(0, -1)))))).toEqual([]);
});
