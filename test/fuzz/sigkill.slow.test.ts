import { expect, test } from "vitest";
import { killSaves } from "./kill-saves.ts";

test(
  "killed 1,000 times in the middle of its saves, the program leaves every file old or new, none torn, no record lost",
  { timeout: 1_800_000 },
  async () => {
    const killed = await killSaves(1000);
    console.log(killed);
    expect(killed.saves).toBeGreaterThan(1000);
    expect(killed.midway).toBeGreaterThan(500);
  },
);
