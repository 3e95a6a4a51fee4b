// The two pages on adding to the program, done as they say in a copy of the repository: the room, then the figure, each held to what `npm test` asks.
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { waywright } from "../../src/rooms/index.ts";
import { blocksOf, root } from "./pages.ts";

/** What of the repository a room stands on; no surface knows a room. */
const copied = ["src", "test", "examples", "docs", "scripts", "package.json", ".prettierrc.json", ".oxlintrc.json", "vitest.config.ts", "tsconfig.json"];
const fiveMinutes = 300_000;

let copy = "";
beforeAll(() => {
  copy = mkdtempSync(join(tmpdir(), "waywright-room-"));
  for (const name of copied) cpSync(join(root, name), join(copy, name), { recursive: true, filter: (from) => !/node_modules|src\/surfaces/.test(from) });
  symlinkSync(join(root, "node_modules"), join(copy, "node_modules"));
  const include = ["src/rooms/rigging", "src/rooms/index.ts"];
  writeFileSync(join(copy, "tsconfig.room.json"), JSON.stringify({ extends: "./tsconfig.json", include }));
});
afterAll(() => rmSync(copy, { recursive: true }));

/** Files of a page written whole, and changes made where their unchanged lines stand. */
function follow(page: string): string[] {
  const touched = new Set<string>();
  for (const { language, words, text } of blocksOf(page)) {
    const [file] = words;
    if (file === undefined) continue;
    touched.add(file);
    const path = join(copy, file);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, language === "diff" ? changed(readFileSync(path, "utf8"), text, file) : text);
  }
  return [...touched];
}

function changed(text: string, diff: string, file: string): string {
  const lines = diff.trimEnd().split("\n");
  const side = (sign: string): string =>
    lines.flatMap((l) => (l.startsWith(" ") || l.startsWith(sign) ? [`${l.slice(1)}\n`] : l === "" ? ["\n"] : [])).join("");
  expect(text.split(side("-")).length - 1, `${file} has these lines once:\n${side("-")}`).toBe(1);
  return text.replace(side("-"), () => side("+"));
}

function run(program: string, words: readonly string[], env: Readonly<Record<string, string>> = {}): { status: number | null; said: string } {
  // As a newcomer runs it: nothing judged, nothing updated unless asked for.
  const { CI: _judged, UPDATE_DOCS: _updating, ...rest } = process.env;
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(copy, program), ...words], {
    cwd: copy,
    encoding: "utf8",
    env: { ...rest, NO_COLOR: "1", ...env },
  });
  return { status, said: stdout + stderr };
}
const program = (name: string, named = name): string => {
  const { bin } = JSON.parse(readFileSync(join(root, `node_modules/${name}/package.json`), "utf8")) as { bin: string | Record<string, string> };
  return `node_modules/${name}/${typeof bin === "string" ? bin : (bin[named] ?? "")}`;
};

/** The tests that a room meets: its own, the contracts, the tables. What is wrong with another room is no fault of this one. */
const contracts = ["figures", "rooms", "pictures"].map((name) => `test/contract/${name}.test.ts`);
const others = `^(?!.*\\b(?:${waywright.rooms.map((r) => r.name).join("|")})\\b)`;
const tested = (env: Readonly<Record<string, string>> = {}) =>
  run(program("vitest"), ["run", "--project", "unit", "src/rooms/rigging", ...contracts, "test/docs/reference.test.ts", "-t", others], env);
const isOutside = (file: string): boolean => !file.startsWith("src/rooms/rigging/");
const tables = ["docs/figures.md", "src/rooms/rigging/README.md"];
const written = (file: string): string => readFileSync(join(copy, file), "utf8");

describe("a room is added as its page says", () => {
  test("in its own folder and one line of the registry", () => {
    expect(follow("docs/how-a-room-is-added.md").filter(isOutside)).toEqual(["src/rooms/index.ts"]);
  });

  test("its tests and those of every room pass, and its tables are written", { timeout: fiveMinutes }, () => {
    const { status, said } = tested();
    expect(status, said).toBe(0);
    for (const file of tables) expect(written(file)).toContain("`rigging.hook-force`");
    expect(written("docs/model.md")).toContain("`rigging.tackle-rating`");
  });
});

describe("a figure is added as its page says", () => {
  test("in the folder of its room", () => {
    expect(follow("docs/how-a-figure-is-added.md").filter(isOutside)).toEqual([]);
  });

  test("its tests and those of every room pass once the tables are written anew", { timeout: fiveMinutes }, () => {
    const { status, said } = tested({ UPDATE_DOCS: "1" });
    expect(status, said).toBe(0);
    for (const file of tables) expect(written(file)).toContain("`rigging.leg-force`");
  });
});

describe("what the two pages write is as the house wants it", () => {
  const files = "src/rooms/rigging/**/*.ts";
  test.each([
    ["typed", "typescript", "tsc", ["-p", "tsconfig.room.json"]],
    ["formatted", "prettier", "prettier", ["--check", files, "src/rooms/index.ts"]],
    ["linted", "oxlint", "oxlint", ["--type-aware", "src/rooms/rigging"]],
  ])("%s", { timeout: fiveMinutes }, (_, name, named, words) => {
    const { status, said } = run(program(name, named), words);
    expect(status, said).toBe(0);
  });

  test("importing one way", () => {
    const { status, said } = run("scripts/layers.mjs", [copy]);
    expect(status, said).toBe(0);
  });
});
