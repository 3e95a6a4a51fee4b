// The shop folder as a tree.
import { expect, test } from "vitest";
import { type Folder, treeOf } from "./tree.ts";

const lines = (folder: Folder, depth = 0): string[] => [
  ...folder.files.map((f) => `${"  ".repeat(depth)}${f.name}`),
  ...folder.folders.flatMap((child) => [`${"  ".repeat(depth)}${child.name}/`, ...lines(child, depth + 1)]),
];

test("files stand in their folders by name, a folder's own files before its folders", () => {
  const tree = treeOf(["shop.yaml", "lathe/work/nut.yaml", "lathe/machine.yaml", "catalogue/parts.yaml", "lathe-2/machine.yaml"]);
  expect(lines(tree)).toEqual([
    "shop.yaml",
    "catalogue/",
    "  parts.yaml",
    "lathe-2/",
    "  machine.yaml",
    "lathe/",
    "  machine.yaml",
    "  work/",
    "    nut.yaml",
  ]);
  expect(tree.folders.at(-1)?.folders[0]?.files[0]?.path).toBe("lathe/work/nut.yaml");
});
