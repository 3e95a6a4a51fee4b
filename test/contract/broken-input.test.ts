// The example shop with one slip of the hand at a time: each is found once, with its code, at the letter where it stands.
import { expect, test } from "vitest";
import { type BrokenFolder, rows } from "./broken-rows.ts";
import { found, told } from "./broken-folder.ts";

test.each(rows)("$says", ({ says: _, finds, ...folder }) => {
  const { findings, places } = found(folder as BrokenFolder);
  console.log(JSON.stringify(findings.map(f=>[f.code,f.says,f.expected,f.nearest,f.excerpt]), null, 1));
  expect(told(findings)).toEqual(finds.map((f, i) => ({ ...f, at: places[i] })));
});
