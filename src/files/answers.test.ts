// Answers on disk: what was put comes back, and nothing else ever does.
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { buildOf, openAnswers } from "./answers.ts";

let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "waywright-answers-"));
});
afterEach(() => {
  chmodSync(root, 0o755);
  rmSync(root, { recursive: true, force: true });
});

const folder = (): string => join(root, ".waywright/answers");
const files = (): string[] => readdirSync(folder()).map((name) => join(folder(), name));
const only = (): string => {
  const [file, ...more] = files();
  if (file === undefined || more.length > 0) throw new Error(`one file was expected, not ${files().length}`);
  return file;
};
const circuit = { each: [{ R_1: Float64Array.of(0.9, 0.91, Number.NaN), X_m: Float64Array.of(52, Infinity, 51) }], holes: null };

describe("an answer put on the shelf", () => {
  test("comes back at the next start just as it was, numbers to the last bit", () => {
    openAnswers(root, "one").put("circuit 1", circuit);
    expect(openAnswers(root, "one").take("circuit 1")).toEqual(circuit);
    const holed = { v: Float64Array.of(Number.NaN), holes: new Map([["no circuit fits", 1]]) };
    openAnswers(root, "one").put("circuit 2", holed);
    expect(openAnswers(root, "one").take("circuit 2")).toEqual(holed);
  });

  test("is not there for another key, nor for another build of the program", () => {
    openAnswers(root, "one").put("circuit 1", circuit);
    expect(openAnswers(root, "one").take("circuit 2")).toBeUndefined();
    expect(openAnswers(root, "two").take("circuit 1")).toBeUndefined();
  });

  test("is not there under a name that is not its own", () => {
    const shelf = openAnswers(root, "one");
    shelf.put("circuit 1", circuit);
    const first = readFileSync(only());
    shelf.put("circuit 2", { each: [] });
    for (const file of files()) writeFileSync(file, first);
    expect(openAnswers(root, "one").take("circuit 2")).toBeUndefined();
    expect(openAnswers(root, "one").take("circuit 1")).toEqual(circuit);
  });

  test("is not there once it is torn, cut off or changed in any byte", () => {
    openAnswers(root, "one").put("circuit 1", circuit);
    const whole = readFileSync(only());
    const file = only();
    for (let length = 0; length < whole.length; length += 7) {
      writeFileSync(file, whole.subarray(0, length));
      expect(openAnswers(root, "one").take("circuit 1")).toBeUndefined();
    }
    for (let at = 0; at < whole.length; at += 5) {
      const other = Buffer.from(whole);
      other[at] = (other[at] ?? 0) ^ 1;
      writeFileSync(file, other);
      expect(openAnswers(root, "one").take("circuit 1")).toBeUndefined();
    }
    writeFileSync(file, whole);
    expect(openAnswers(root, "one").take("circuit 1")).toEqual(circuit);
  });
});

test("the folder hides itself from version control and says that it may be deleted", () => {
  openAnswers(root, "one").put("circuit 1", circuit);
  const says = readFileSync(join(root, ".waywright/.gitignore"), "utf8");
  expect(says.split("\n")).toContain("*");
  expect(says).toContain("may be deleted");
});

test("a shelf that nothing is put on leaves no trace in the shop", () => {
  expect(openAnswers(root, "one").take("circuit 1")).toBeUndefined();
  expect(existsSync(join(root, ".waywright"))).toBe(false);
});

test("when the shelf is full, what was not used for longest makes room", () => {
  const answer = new Float64Array(1000);
  const shelf = openAnswers(root, "one", 20_000);
  shelf.put("first", answer);
  utimesSync(only(), 1, 1);
  const [old] = files();
  shelf.put("second", answer);
  for (const file of files()) if (file !== old) utimesSync(file, 2, 2);
  // Reading the first makes it the younger one.
  expect(openAnswers(root, "one").take("first")).toEqual(answer);
  shelf.put("third", answer);
  const later = openAnswers(root, "one");
  expect(later.take("second")).toBeUndefined();
  expect(later.take("first")).toEqual(answer);
  expect(later.take("third")).toEqual(answer);
});

describe("where nothing can be kept", () => {
  test("a file in the place of the folder is left alone", () => {
    writeFileSync(join(root, ".waywright"), "mine");
    const shelf = openAnswers(root, "one");
    shelf.put("circuit 1", circuit);
    expect(shelf.take("circuit 1")).toBeUndefined();
    expect(readFileSync(join(root, ".waywright"), "utf8")).toBe("mine");
  });

  test("nothing is written through a link that leads out of the shop", () => {
    const outside = mkdtempSync(join(tmpdir(), "waywright-outside-"));
    symlinkSync(outside, join(root, ".waywright"), "junction");
    openAnswers(root, "one").put("circuit 1", circuit);
    expect(readdirSync(outside)).toEqual([]);
    rmSync(outside, { recursive: true });
  });
});

describe("the build of a program", () => {
  test("is told by any change in its files", () => {
    const program = join(root, "node");
    mkdirSync(program);
    writeFileSync(join(program, "cli.mjs"), "1");
    writeFileSync(join(program, "rooms-1.mjs"), "1");
    const url = pathToFileURL(join(program, "cli.mjs")).href;
    const before = buildOf(url);
    expect(buildOf(url)).toBe(before);
    writeFileSync(join(program, "rooms-1.mjs"), "12");
    expect(buildOf(url)).not.toBe(before);
  });

  test("has no name where it runs from its sources", () => {
    expect(buildOf(import.meta.url)).toBeNull();
  });
});
