import fc from "fast-check";
import { expect, test } from "vitest";
import type { Finding } from "../../kernel/finding.ts";
import { addFindings, excerpt } from "./findings-text.ts";
import { pageFor } from "./terminal.ts";
import { widthOf } from "./text.ts";

test("the caret stays under its sign when a long line is cut to fit", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 118 }), fc.integer({ min: 40, max: 90 }), (at, width) => {
      const line = `${"-".repeat(at)}X${"-".repeat(119 - at)}`;
      const [shown = "", carets = ""] = excerpt(`${line}\n${" ".repeat(at)}^`, width);
      expect(shown[carets.indexOf("^")]).toBe("X");
      expect(widthOf(shown)).toBeLessThanOrEqual(width);
    }),
  );
});

test("a finding begins with place and code, and an error ends with its usual cause", () => {
  const finding: Finding = {
    code: "unit-missing",
    severity: "error",
    says: "5 what?",
    place: { file: "lathe/machine.yaml", line: 41, column: 12, endLine: 41, endColumn: 13 },
    excerpt: "    rapid: 5\n           ^",
  };
  const page = pageFor({ width: 80 });
  addFindings(page, { width: 80, colour: false, unicode: true, asks: false, out: () => undefined, err: () => undefined }, [finding]);
  expect(page.lines[0]).toMatch(/^lathe\/machine\.yaml:41:12 unit-missing: 5 what\?/);
  expect(page.lines.join(" ")).toContain("Usual cause:");
  expect(page.lines.slice(-2)).toEqual(["      rapid: 5", "             ^"]);
});
