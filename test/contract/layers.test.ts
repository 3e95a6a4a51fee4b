// The layer check against planted faults: a gate that was never seen to fail is no gate.
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, test } from "vitest";

const script = fileURLToPath(new URL("../../scripts/layers.mjs", import.meta.url));

function check(tree: Record<string, string>): { status: number | null; faults: string[]; says: string } {
  const folder = mkdtempSync(join(tmpdir(), "waywright-layers-"));
  for (const [file, text] of Object.entries(tree)) {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), text);
  }
  const { status, stdout, stderr } = spawnSync(process.execPath, [script, folder], { encoding: "utf8" });
  rmSync(folder, { recursive: true });
  return { status, faults: stderr.trim().split("\n"), says: stdout.trim() };
}

/** A small source tree with nothing wrong in it: every way an import may point. */
const sound: Record<string, string> = {
  "package.json": "{}",
  "src/index.ts": `export * from "./rooms/index.ts";`,
  "src/kernel/unit.ts": `import { parse } from "yaml"; export const unit = parse("m");`,
  "src/kernel/unit.test.ts": `import "node:fs"; import "vitest"; import "./unit.ts"; import "../../test/near.ts";`,
  "src/solve/root.ts": `import type { unit } from "../kernel/unit.ts"; export type Root = typeof unit;`,
  "src/timeline/move.ts": `import "../kernel/unit.ts";`,
  "src/prove/state.ts": `import "../kernel/unit.ts";`,
  "src/pictures/plot.ts": `import "../kernel/unit.ts";`,
  "src/files/save.ts": `import "node:fs"; import "../kernel/unit.ts";`,
  "src/rooms/index.ts": `import "./ground/index.ts"; import "./supply/index.ts"; import "./spindle/index.ts"; import "./axes/index.ts";`,
  "src/rooms/ground/index.ts": `import "./families/motor.ts";`,
  "src/rooms/ground/families/motor.ts": `import "../../../kernel/unit.ts";`,
  "src/rooms/supply/index.ts": `import "../ground/families/motor.ts"; import "./dip.ts";`,
  "src/rooms/supply/dip.ts": `import "../../solve/root.ts"; import "../../pictures/plot.ts"; import "../ground/index.ts";`,
  "src/rooms/spindle/index.ts": `import "../supply/index.ts"; /* import "../axes/index.ts" */ export const words = 'import "node:fs"';`,
  "src/rooms/axes/index.ts": `export {};`,
  "src/surfaces/cli/main.ts": `import "node:fs"; import "../server/serve.ts"; import "../../rooms/index.ts"; import "../../../package.json";`,
  "src/surfaces/server/serve.ts": `import "node:http"; import "../../files/save.ts";`,
  "src/surfaces/web/main.tsx": `new Worker(new URL("./worker.ts", import.meta.url)); export const page = <p />; import "./page.css?inline";`,
  "src/surfaces/web/worker.ts": `import "../../rooms/supply/index.ts"; import "../../rooms/ground/families/motor.ts";`,
  "src/surfaces/web/page.css": ``,
  "test/near.ts": `export {};`,
};

test("imports that point one way pass, and the check says how many files and imports it read", () => {
  const { status, says } = check(sound);
  expect(status).toBe(0);
  expect(says).toMatch(/^layers: 19 files, 34 imports,/);
});

test.each([
  ["an empty folder", { "package.json": "{}" }],
  ["a src without a source", { "src/notes.txt": "" }],
])("%s fails: a check that read nothing has found nothing out", (_, tree) => {
  const { status, faults } = check(tree);
  expect(status).toBe(1);
  expect(faults).toEqual([expect.stringContaining("no source file was read")]);
});

/** Each planted fault: where, what, and the start of the line that must name it. */
const planted: readonly [says: string, file: string, text: string, fault: string][] = [
  [
    "the kernel reads a surface",
    "src/kernel/a.ts",
    `import "../surfaces/cli/main.ts";`,
    "imports src/surfaces/cli/main.ts: kernel may not read surfaces",
  ],
  [
    "the kernel reads a room",
    "src/kernel/b.ts",
    `export * from "../rooms/supply/index.ts";`,
    "imports src/rooms/supply/index.ts: kernel may not read rooms",
  ],
  [
    "a type import points up",
    "src/solve/a.ts",
    `import type { Dip } from "../rooms/ground/index.ts";`,
    "imports src/rooms/ground/index.ts: solve may not read rooms",
  ],
  [
    "a type in a signature points up",
    "src/solve/b.ts",
    `\n\nexport type A = import("../files/save.ts").B;`,
    "imports src/files/save.ts: solve may not read files",
  ],
  [
    "an import on demand points up",
    "src/pictures/a.ts",
    `await import("../rooms/ground/index.ts");`,
    "imports src/rooms/ground/index.ts: pictures may not read rooms",
  ],
  [
    "a named re-export points sideways",
    "src/timeline/a.ts",
    `export { x } from "../solve/root.ts";`,
    "imports src/solve/root.ts: timeline may not read solve",
  ],
  [
    "the prover points sideways",
    "src/prove/a.ts",
    `import "../timeline/move.ts";`,
    "imports src/timeline/move.ts: prove may not read timeline",
  ],
  ["the files layer reads numerics", "src/files/a.ts", `import "../solve/root.ts";`, "imports src/solve/root.ts: files may not read solve"],
  [
    "a room reads the disk",
    "src/rooms/supply/a.ts",
    `import "../../files/save.ts";`,
    "imports src/files/save.ts: rooms may not read files",
  ],
  [
    "the library reads a surface",
    "src/library.ts",
    `import "./surfaces/web/worker.ts";`,
    "imports src/surfaces/web/worker.ts: library may not read surfaces",
  ],
  ["a test points up", "src/kernel/a.test.ts", `import "../rooms/index.ts";`, "imports src/rooms/index.ts: kernel may not read rooms"],
  [
    "a worker's address points up",
    "src/solve/c.ts",
    `new Worker(new URL("../surfaces/web/worker.ts", import.meta.url));`,
    "imports src/surfaces/web/worker.ts: solve may not read surfaces",
  ],
  ["a folder is no layer", "src/extras/a.ts", `import "../kernel/unit.ts";`, "imports src/kernel/unit.ts: extras is no layer"],
  [
    "a room reads a later room",
    "src/rooms/supply/b.ts",
    `import "../axes/index.ts";`,
    "imports src/rooms/axes/index.ts: axes stands after supply in src/rooms/index.ts",
  ],
  [
    "the ground reads a room",
    "src/rooms/ground/a.ts",
    `import "../supply/index.ts";`,
    "imports src/rooms/supply/index.ts: supply stands after ground in src/rooms/index.ts",
  ],
  [
    "a room reads behind another's index",
    "src/rooms/spindle/a.ts",
    `import "../supply/dip.ts";`,
    "imports src/rooms/supply/dip.ts: a room is read through its index.ts only",
  ],
  [
    "a surface reads behind a room's index",
    "src/surfaces/cli/a.ts",
    `import "../../rooms/supply/dip.ts";`,
    "imports src/rooms/supply/dip.ts: a room is read through its index.ts only",
  ],
  [
    "a room reads the registry",
    "src/rooms/axes/a.ts",
    `import "../index.ts";`,
    "imports src/rooms/index.ts: a room does not know the registry",
  ],
  [
    "a room outside the registry reads another",
    "src/rooms/air/index.ts",
    `import "../supply/index.ts";`,
    "imports src/rooms/supply/index.ts: air does not stand in src/rooms/index.ts",
  ],
  [
    "the kernel reads Node",
    "src/kernel/c.ts",
    `import { readFileSync } from "node:fs";`,
    "imports node:fs: kernel runs in the browser too",
  ],
  [
    "a room reads Node without its prefix",
    "src/rooms/supply/c.ts",
    `import { join } from "path";`,
    "imports path: rooms runs in the browser too",
  ],
  ["numerics read Node on demand", "src/solve/d.ts", `await import("node:crypto");`, "imports node:crypto: solve runs in the browser too"],
  [
    "the page reads Node",
    "src/surfaces/web/a.tsx",
    `import "node:fs"; export const p = <p />;`,
    "imports node:fs: the page runs in a browser",
  ],
  [
    "the page reads the server",
    "src/surfaces/web/b.ts",
    `import "../server/serve.ts";`,
    "imports src/surfaces/server/serve.ts: the page runs in a browser",
  ],
  [
    "the page reads the disk",
    "src/surfaces/web/c.ts",
    `import "../../files/save.ts";`,
    "imports src/files/save.ts: the page runs in a browser",
  ],
  ["the kernel leaves src", "src/kernel/d.ts", `import "../../test/near.ts";`, "imports test/near.ts: outside src"],
  ["an address has no ending", "src/kernel/e.ts", `import "./unit";`, "imports src/kernel/unit: no such file"],
  [
    "an address is computed",
    "src/kernel/f.ts",
    `export const f = (name: string) => import("../rooms/" + name);`,
    "imports something computed: only an address written out",
  ],
];

describe("each planted fault is named with its file and line", () => {
  let found: ReturnType<typeof check>;
  beforeAll(() => {
    found = check({ ...sound, ...Object.fromEntries(planted.map(([, file, text]) => [file, text])) });
  });

  test.each(planted)("%s", (_, file, text, fault) => {
    const line = text.split("\n").length;
    expect(found.faults).toContainEqual(expect.stringContaining(`${file}:${line} ${fault}`));
  });

  test("and nothing else is", () => {
    expect(found.status).toBe(1);
    expect(found.faults).toHaveLength(planted.length);
  });
});

test.each([
  ["two files read each other", `import "./b.ts";`, `import "./a.ts";`, "circle: src/kernel/a.ts -> src/kernel/b.ts -> src/kernel/a.ts"],
  [
    "only types go round",
    `import type { B } from "./b.ts";`,
    `import type { A } from "./a.ts";`,
    "circle: src/kernel/a.ts -> src/kernel/b.ts -> src/kernel/a.ts",
  ],
  ["a file reads itself", `import "./a.ts";`, ``, "circle: src/kernel/a.ts -> src/kernel/a.ts"],
])("a circle is refused: %s", (_, a, b, circle) => {
  const { status, faults } = check({ ...sound, "src/kernel/a.ts": a, "src/kernel/b.ts": b });
  expect(status).toBe(1);
  expect(faults).toEqual([circle]);
});
