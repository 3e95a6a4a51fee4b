import { expect, test } from "vitest";
import { browserCommand } from "./browser.ts";

test("a browser is asked for only where there is a screen", () => {
  expect(browserCommand("linux", {})).toBeNull();
  expect(browserCommand("linux", { DISPLAY: ":0" })).toEqual(["xdg-open"]);
  expect(browserCommand("darwin", {})).toEqual(["open"]);
  expect(browserCommand("win32", {})?.[0]).toBe("cmd");
});
