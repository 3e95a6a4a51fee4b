// How the program starts: from an installed package, and from a clone that is fresh, stale, broken or not set up.
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterEach, beforeEach, expect, test } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));

let place: string;
beforeEach(() => {
  place = mkdtempSync(join(tmpdir(), "waywright-start-"));
});
afterEach(() => {
  rmSync(place, { recursive: true, force: true });
});

function copy(...names: string[]): void {
  for (const name of names) cpSync(join(root, name), join(place, name), { recursive: true });
}

function write(file: string, text: string): void {
  mkdirSync(dirname(join(place, file)), { recursive: true });
  writeFileSync(join(place, file), text);
}

function node(words: readonly string[], env: Record<string, string> = {}): { status: number | null; out: string; complains: string } {
  const { status, stdout, stderr } = spawnSync(process.execPath, words, {
    cwd: tmpdir(),
    env: { ...process.env, ...env },
    encoding: "utf8",
  });
  return { status, out: stdout, complains: stderr };
}

const start = (words: readonly string[] = [], env: Record<string, string> = {}) => node([join(place, "bin/waywright.mjs"), ...words], env);

/** A program that says its arguments, and ends with a status of its own. */
const program = (says: string): string => `console.log(${JSON.stringify(says)}, ...process.argv.slice(2));\nprocess.exitCode = 3;\n`;

/** A clone with one source file, its packages marked as installed; of those it has the bundler only. */
function clone(): void {
  copy("bin", "scripts", "package.json", "package-lock.json");
  write("src/surfaces/cli/main.ts", program("first"));
  write("src/kernel/unit.ts", "");
  mkdirSync(join(place, "node_modules"));
  symlinkSync(join(root, "node_modules/vite"), join(place, "node_modules/vite"), "junction");
  markInstalled();
}

function markInstalled(): void {
  const script = `import(${JSON.stringify(pathToFileURL(join(place, "scripts/fresh.mjs")).href)}).then((fresh) => fresh.packages.mark())`;
  expect(node(["-e", script]).status).toBe(0);
}

/** An npm that writes down what it was asked for. */
function fakeNpm(status: number): Record<string, string> {
  const asked = JSON.stringify(join(place, "asked"));
  write(
    "npm-cli.js",
    `import { appendFileSync } from "node:fs";
    appendFileSync(${asked}, process.argv.slice(2).join(" ") + "\\n");
    process.exitCode = ${status};`,
  );
  return { npm_execpath: join(place, "npm-cli.js") };
}

test("an installed package starts from any folder without sources or scripts and passes words and status through", () => {
  copy("bin", "package.json");
  write("dist/node/cli.mjs", program("installed"));
  expect(start(["check", "my shop"])).toEqual({ status: 3, out: "installed check my shop\n", complains: "" });
});

test("a clone builds itself once, tells of it on stderr only, and then starts at once", () => {
  clone();
  const first = start(["check"]);
  expect(first).toMatchObject({ status: 3, out: "first check\n" });
  expect(first.complains).toContain("Building");
  expect(start(["check"])).toEqual({ status: 3, out: "first check\n", complains: "" });
});

test("a saved source and a removed one are built into the next start; a saved test is not", () => {
  clone();
  start();
  write("src/surfaces/cli/main.ts", program("second"));
  expect(start()).toMatchObject({ out: "second\n", complains: expect.stringContaining("Building") });
  rmSync(join(place, "src/kernel/unit.ts"));
  expect(start().complains).toContain("Building");
  write("src/kernel/unit.test.ts", "");
  expect(start()).toEqual({ status: 3, out: "second\n", complains: "" });
});

test("a source that does not build ends with status 2, and yesterday's program does not answer for it", () => {
  clone();
  start();
  write("src/surfaces/cli/main.ts", `import "./gone.ts";`);
  expect(start()).toMatchObject({ status: 2, out: "", complains: expect.stringContaining("it was not built") });
});

test("another lock file has its packages installed once, development packages too", () => {
  clone();
  write("package-lock.json", readFileSync(join(place, "package-lock.json"), "utf8") + "\n");
  const env = fakeNpm(0);
  expect(start([], env)).toMatchObject({ status: 3, out: "first\n", complains: expect.stringContaining("npm ci") });
  expect(start([], env)).toEqual({ status: 3, out: "first\n", complains: "" });
  expect(readFileSync(join(place, "asked"), "utf8")).toBe("ci --include=dev --loglevel=error\n");
});

test("packages that cannot be installed end with status 2 and are tried again at the next start", () => {
  clone();
  write("package-lock.json", "{}");
  const env = fakeNpm(1);
  expect(start([], env)).toMatchObject({ status: 2, out: "", complains: expect.stringContaining("not installed") });
  expect(start([], env).status).toBe(2);
  expect(readFileSync(join(place, "asked"), "utf8").split("\n")).toHaveLength(3);
});

test.each([
  ["18.20.4", true],
  ["20.18.9", true],
  ["20.19.0", false],
  ["22.1.0", false],
])("Node %s is too old: %s", (version, isTooOld) => {
  copy("bin", "package.json");
  const module = pathToFileURL(join(place, "bin/node-version.mjs")).href;
  const { out } = node(["-e", `import(${JSON.stringify(module)}).then((m) => console.log(m.nodeTooOld(${JSON.stringify(version)})))`]);
  expect(out.trim()).toBe(isTooOld ? `Waywright needs Node 20.19 or newer; this is Node ${version}.` : "null");
});
