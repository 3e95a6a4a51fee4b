import { expect, test } from "vitest";
import { survives } from "./folders.ts";

test("10,000 hurt shop folders load, with findings in place of a crash", () => {
  for (let seed = 0; seed < 10_000; seed++) expect(() => survives(seed), `folder ${seed}`).not.toThrow();
}, 1_800_000);
