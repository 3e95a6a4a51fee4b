import { expect, test } from "vitest";
import { killSaves } from "./kill-saves.ts";

test("killed 60 times in the middle of its saves, the program leaves every file old or new, none torn, no record lost", async () => {
  const { saves, midway } = await killSaves(60);
  expect(saves).toBeGreaterThan(60);
  expect(midway).toBeGreaterThan(30); // else the kills missed what they were meant for
});
