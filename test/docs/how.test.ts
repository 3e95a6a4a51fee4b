// The two pages on adding to the program, done as they say in a copy of the repository: the room, then the figure, each held to what `npm test` asks.
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { blocksOf, root } from "./pages.ts";

/** What of the repository a room stands on. */
const copied = ["src", "test", "examples", "docs", "scripts", "package.json", ".prettierrc.json", ".oxlintrc.json", "vitest.config.ts", "tsconfig.json"];
const fiveMinutes = 300_000;

let copy = "";
beforeAll(() => {
  copy = mkdtempSync(join(tmpdir(), "waywright-room-"));
  for (const name of copied) cpSync(join(root, name), join(copy, name), { recursive: true, filter: (from) => !from.includes("node_modules") });
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

function run(program: string, ...words: string[]): { status: number | null; said: string } {
  const { CI: _judged, UPDATE_DOCS: _updating, ...env } = process.env;
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(copy, program), ...words], { cwd: copy, encoding: "utf8", env: { ...env, NO_COLOR: "1" } });
  return { status, said: stdout + stderr };
}
const bin = (name: string): string => {
  const { bin: programs } = JSON.parse(readFileSync(join(root, `node_modules/${name}/package.json`), "utf8")) as { bin: string | Record<string, string> };
  return `node_modules/${name}/${typeof programs === "string" ? programs : (programs[name.includes("typescript") ? "tsc" : name] ?? "")}`;
};

const documents = (file: string): string => readFileSync(join(copy, file), "utf8");
/** The tests that a room meets: its own, the contracts, the tables. */
const tests = ["src/rooms/rigging", "test/contract/figures.test.ts", "test/contract/rooms.test.ts", "test/contract/pictures.test.ts", "test/docs/reference.test.ts"];
const ours = "rigging|says what the declarations say|example shop as found|circle|share an id|is computed from itself";

describe.sequential.each([
  ["docs/how-a-room-is-added.md", (files: readonly string[]) => files.filter((f) => !f.startsWith("src/rooms/rigging/")), ["src/rooms/index.ts"], "rigging.hook-force"],
  ["docs/how-a-figure-is-added.md", (files: readonly string[]) => files.filter((f) => !f.startsWith("src/rooms/rigging/")), [], "rigging.leg-force"],
] as const)("%s", (page, beyond, allowed, figure) => {
  test("touches its own folder and nothing else but the registry", () => {
    expect(beyond(follow(page))).toEqual(allowed);
  });

  test("what it writes is typed, formatted, linted, and imports one way", { timeout: fiveMinutes }, () => {
    expect(run(bin("typescript"), "-p", "tsconfig.room.json")).toEqual({ status: 0, said: "" });
    expect(run(bin("prettier"), "--check", "src/rooms/rigging/**/*.ts", "src/rooms/index.ts")).toMatchObject({ status: 0 });
    expect(run(bin("oxlint"), "--type-aware", "src/rooms/rigging")).toMatchObject({ status: 0 });
    expect(run("scripts/layers.mjs", copy)).toMatchObject({ status: 0 });
  });

  test("its tests and those of every room pass, and its tables are written", { timeout: fiveMinutes }, () => {
    const isNew = allowed.length > 0;
    if (!isNew) {
      // A figure that changes tables makes them stale first; the page says how they are written.
      expect(run(bin("vitest"), "run", "--project", "unit", "test/docs/reference.test.ts").status).toBe(1);
      expect(spawnSync(process.execPath, [join(copy, bin("vitest")), "run", "--project", "unit", "test/docs/reference.test.ts"], { cwd: copy, env: { ...process.env, UPDATE_DOCS: "1" } }).status).toBe(0);
    }
    const { status, said } = run(bin("vitest"), "run", "--project", "unit", ...tests, "-t", ours);
    expect(status, said).toBe(0);
    for (const file of ["docs/figures.md", "src/rooms/rigging/README.md"]) expect(documents(file)).toContain(`\`${figure}\``);
    expect(documents("docs/model.md")).toContain("`rigging.tackle-rating`");
  });
});
