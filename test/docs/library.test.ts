// The lines of the README that use the library, run as they stand there.
import { expect, test } from "vitest";
import * as library from "../../src/index.ts";
import { blocksOf } from "./pages.ts";

/** The block as the body of a function: its one import is what it is handed. */
function bodyOf(text: string): string {
  const [head = "", ...rest] = text.split("\n");
  const names = /^import \{ (.*) \} from "waywright";$/.exec(head)?.[1];
  expect(names, head).toBeDefined();
  return `const { ${names ?? ""} } = library;\n${rest.join("\n")}`;
}

test("a shop is read from texts and asked for a working: 80 % of 60 A at 240 V may be drawn for hours", () => {
  const [block] = blocksOf("README.md").filter((b) => b.language === "ts");
  const said: unknown[] = [];
  // oxlint-disable-next-line no-implied-eval -- the text of the README is what is tested
  new Function("library", "console", bodyOf(block?.text ?? ""))(library, { log: (text: unknown) => said.push(text) });
  expect(said).toEqual(["11.52 kVA"]); // 0.8 * 240 V * 60 A
});
