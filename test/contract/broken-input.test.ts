import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { readShop } from "../../src/files/shop-folder.ts";
import { findings as table } from "../../src/kernel/finding.ts";
import { asFound } from "../../src/kernel/model/node.ts";
import { parseShop } from "../../src/kernel/model/shop.ts";
import { study } from "../../src/kernel/study.ts";
import { waywright } from "../../src/rooms/index.ts";
import { found, heron } from "./broken-folder.ts";
import { rows } from "./broken-rows.ts";

for (const { slip, edits, finds, options } of rows) {
  test(`${slip} is found once, where it stands`, () => {
    const { findings, marks } = found(edits, options);
    expect(marks).toHaveLength(finds.length);
    expect(findings).toEqual(finds.map((f, i) => ({ at: marks[i], ...f })));
  });
}

test("a faulty line is left out of the answer, and the rest of the shop is reckoned with", () => {
  const { study: broken } = found([{ file: "lathe/machine.yaml", was: "length: 18 m,", typed: "length: 18 kg," }]);
  const text = (address: string): unknown => broken.answer.inputs[address]?.text;
  expect(text("lathe/supply.run.length")).not.toBe("18 kg");
  expect(text("mill/supply.run.length")).toBe("11 m");
  expect(broken.answer.checks.filter((c) => c.root === "mill" && c.verdict !== "open").length).toBeGreaterThan(5);
});

test("Windows line ends and a byte order mark move no finding", () => {
  const windows = (text: string): string => `\uFEFF${text.replaceAll("\n", "\r\n")}`;
  const typed = readFileSync(join(heron, "lathe/machine.yaml"), "utf8").replace("length: 18 m,", "length: ▸18 kg,");
  const { findings, marks } = found([{ file: "lathe/machine.yaml", typed: windows(typed) }]);
  expect(findings).toEqual([{ at: marks[0], code: "unit-mismatch", expected: "18 m" }]);
});

test("a bomb of aliases never goes off", () => {
  const rungs = Array.from({ length: 30 }, (_, i) => `x${i + 1}: &x${i + 1} [ ${`*x${i}, `.repeat(9)}*x${i} ]`);
  const { findings } = found([{ file: "shop.yaml", typed: ["x0: &x0 boom", ...rungs, ""].join("\n") }]);
  expect(findings.filter(({ code }) => code === "alias").map(({ at }) => at.split(":")[1])).toEqual([
    "1",
    ...rungs.map((_, i) => String(i + 2)),
  ]);
});

const folders: string[] = [];
afterAll(() => folders.forEach((folder) => rmSync(folder, { recursive: true })));

/** A copy of the example on the disk, one thing done to it, and all that is found then: in the folder, and in what could be read of it. */
function onDisk(change: (path: (file: string) => string) => void): { at: string; code: string }[] {
  const folder = mkdtempSync(join(tmpdir(), "broken-"));
  folders.push(folder);
  cpSync(heron, folder, { recursive: true });
  change((file) => join(folder, file));
  const { files, findings } = readShop(folder);
  const { answer } = study(waywright, parseShop(files, waywright.keys), asFound, "nominal");
  const errors = [...findings, ...answer.findings].filter((f) => f.severity === "error");
  return errors.map(({ place, code }) => ({ at: `${place.file}:${place.line}:${place.column}`, code }));
}

const disk: readonly { slip: string; finds: readonly { at: string; code: string }[]; change: (path: (file: string) => string) => void }[] =
  [
    {
      slip: "a degree sign saved in an older encoding",
      finds: [{ at: "mill/machine.yaml:2:21", code: "not-text" }],
      change: (path) => writeFileSync(path("mill/machine.yaml"), Buffer.from("machine: Mill\nkind: bed-mill # 60 \u00b0C\n", "latin1")),
    },
    {
      slip: "a file saved as UTF-16",
      finds: [{ at: "mill/machine.yaml:1:1", code: "not-text" }],
      change: (path) => writeFileSync(path("mill/machine.yaml"), Buffer.from("machine: Mill\nkind: bed-mill\n", "utf16le")),
    },
    {
      slip: "a file of 100 MB",
      finds: [{ at: "mill/machine.yaml:1:1", code: "too-large" }],
      change: (path) => truncateSync(path("mill/machine.yaml"), 100e6),
    },
    {
      slip: "a text far longer than any file of a shop",
      finds: [{ at: "lathe/records/2026-03-01-log.yaml:1:1", code: "too-large" }],
      change: (path) => writeFileSync(path("lathe/records/2026-03-01-log.yaml"), "remark: x\n".repeat(30_000)),
    },
    {
      slip: "a machine file that leads out of the shop",
      finds: [{ at: "mill/machine.yaml:1:1", code: "link-out" }],
      change: (path) => {
        rmSync(path("mill/machine.yaml"));
        symlinkSync("/etc/hostname", path("mill/machine.yaml"));
      },
    },
    {
      slip: "a folder of machine files without a machine",
      finds: [{ at: "mill/machine.yaml:1:1", code: "file-missing" }],
      change: (path) => rmSync(path("mill/machine.yaml")),
    },
  ];

for (const { slip, change, finds } of disk) {
  test(`${slip} is found on the disk, and nothing else`, () => expect(onDisk(change)).toEqual(finds));
}

/** Findings that nothing in today's rooms can raise. */
const toCome: ReadonlySet<string> = new Set(["base-missing", "air-basis-missing"]);
const kindsToCome: ReadonlySet<string | null> = new Set(["gauge-pressure", "absolute-pressure", "free-air-flow", "free-air-volume"]);

test("every kind of finding is brought about by some slip, but those of air, which no room reads yet", () => {
  const brought = new Set<string>([...rows.flatMap((r) => r.finds), ...disk.flatMap((d) => d.finds)].map(({ code }) => code));
  expect(Object.keys(table).filter((code) => !brought.has(code))).toEqual([...toCome]);
  const inputs = waywright.rooms.flatMap((r) => r.inputs);
  expect(inputs.filter((i) => kindsToCome.has(i.kind)).map((i) => i.id)).toEqual([]);
});
