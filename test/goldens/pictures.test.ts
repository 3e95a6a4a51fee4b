// Every picture against the one that was last looked at. A changed picture is written beside the old one as `-changed`.
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { samples } from "./picture-samples.ts";

const folder = fileURLToPath(new URL("pictures/", import.meta.url));
const isUpdating = process.env["UPDATE_GOLDENS"] === "1";

describe("each picture is drawn as it was when it was last looked at", () => {
  test.each(Object.entries(samples))("%s", (name, draw) => {
    const file = `${folder}${name}.svg`;
    const changed = `${folder}${name}-changed.svg`;
    const drawn = draw();
    rmSync(changed, { force: true });
    if (isUpdating) {
      mkdirSync(folder, { recursive: true });
      writeFileSync(file, drawn);
    }
    const kept = existsSync(file) ? readFileSync(file, "utf8") : "";
    if (drawn !== kept) writeFileSync(changed, drawn);
    expect(drawn === kept, `${name}.svg differs: look at ${name}-changed.svg, then run with UPDATE_GOLDENS=1`).toBe(true);
  });
});

test("no golden is left of a picture that is no longer drawn", () => {
  const kept = readdirSync(folder).filter((name) => !name.endsWith("-changed.svg"));
  expect(kept.toSorted()).toEqual(
    Object.keys(samples)
      .map((name) => `${name}.svg`)
      .toSorted(),
  );
});
