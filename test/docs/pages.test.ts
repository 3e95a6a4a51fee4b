// The documents are run: commands in a copy of the example, YAML through the loader, links and scripts looked up. UPDATE_DOCS=1 writes outputs anew.
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readShop } from "../../src/files/shop-folder.ts";
import { parseShop, resolve } from "../../src/kernel/model/resolve.ts";
import { waywright } from "../../src/rooms/index.ts";
import { readArguments } from "../../src/surfaces/cli/arguments.ts";
import { blocksOf, layExample, layFiles, pages, printed, ran, root, textOf, toldIn, wordsOf } from "./pages.ts";

const isUpdating = process.env["UPDATE_DOCS"] === "1";
const scripts = Object.keys((JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as { scripts: object }).scripts);

describe.each(pages)("%s", (page) => {
  let folder = "";
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "waywright-docs-"));
    layExample(folder);
    layFiles(blocksOf(page), folder);
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  const consoles = blocksOf(page).filter((b) => b.language === "console");
  test.runIf(consoles.length > 0)("its commands print what it says they print", { timeout: 300_000 }, async () => {
    const stale: string[] = [];
    for (const block of consoles) {
      let now = "";
      for (const { command, output } of toldIn(block)) {
        const said = await printed(command, folder);
        now += `$ ${command}\n${said}`;
        if (said !== output) stale.push(command);
      }
      if (isUpdating) writeFileSync(join(root, page), textOf(page).replace(`\`\`\`console\n${block.text}\`\`\``, () => `\`\`\`console\n${now}\`\`\``));
    }
    expect(isUpdating ? [] : stale, "out of date: run UPDATE_DOCS=1 npm run test:unit -- test/docs, and look at what moved").toEqual([]);
    expect(consoles.every((b) => toldIn(b).length > 0)).toBe(true);
  });

  test.runIf(blocksOf(page).some((b) => b.words[0] === "shop.yaml"))("its files load without a mistake, with every option laid over", () => {
    const shop = parseShop(readShop(folder).files, waywright.keys);
    const variants = [[], ...resolve(shop, waywright.keys, { options: [], tries: [] }).options.map((o) => [o])];
    const errors = variants.flatMap((options) => resolve(shop, waywright.keys, { options, tries: [] }).findings.filter((f) => f.severity === "error"));
    expect(errors).toEqual([]);
  });

  test("every command it names is one, with flags that it takes; every npm script is there", () => {
    const shell = blocksOf(page).flatMap((b) => (b.language === "sh" ? b.text.split("\n").map((l) => l.replace(/\s+#.*$/, "")) : []));
    const inline = [...textOf(page).matchAll(/(?<!`)`((?:UPDATE_\w+=1 )?(?:waywright|npm) [^`\n]+)`/g)].map((m) => m[1] ?? "");
    for (const line of [...shell, ...inline].filter((l) => l.trim() !== "")) {
      const [program, ...words] = wordsOf(line.replace(/^(?:\w+=\S+ )+/, ""));
      if (program === "waywright") expect(() => readArguments(words), line).not.toThrow();
      else if (program === "npm") {
        const [verb = "", script = ""] = words;
        if (!["ci", "install"].includes(verb)) expect(scripts, line).toContain(verb === "run" ? script : verb);
      } else expect(["cd", "git"], line).toContain(program);
    }
  });

  /** What asks, serves or stands on an answer to a question is not run; what stands in a line of its own is. */
  const isRun = (words: readonly string[]): boolean =>
    words[0] === "waywright" && !["new", "open", "completion"].includes(words[1] ?? "") && !words.includes("../my-shop");
  const shells = blocksOf(page).filter((b) => b.language === "sh" && b.text.split("\n").some((l) => isRun(wordsOf(l))));
  test.runIf(shells.length > 0)("the commands of its shell blocks give an answer", { timeout: 300_000 }, async () => {
    for (const block of shells) {
      let at = folder;
      for (const line of block.text.split("\n").map((l) => wordsOf(l.replace(/\s+#.*$/, "")))) {
        if (line[0] === "cd") at = join(at, line[1] ?? "");
        if (isRun(line)) expect([0, 1], line.join(" ")).toContain((await ran(line.slice(1), at)).status);
      }
    }
  });

  test("every link leads somewhere", () => {
    const links = [...textOf(page).matchAll(/\]\(([^)#\s]+)(?:#[^)]*)?\)/g)].map((m) => m[1] ?? "").filter((to) => !to.startsWith("https://"));
    expect(links.filter((to) => !existsSync(join(root, dirname(page), to)))).toEqual([]);
  });

  test("it promises nobody that anything is safe", () => {
    const text = textOf(page).replaceAll('"safe"', ""); // the word itself may be named
    expect(text.match(/.*\bsafe(?:ly)?\b.*/gi) ?? []).toEqual([]);
  });
});
