import { expect, test } from "vitest";
import { icon, iconNames, iconSprite } from "./icons.ts";

test("every icon that can be asked for is in the sprite, once", () => {
  const sprite = iconSprite();
  for (const name of iconNames) {
    expect(sprite.split(`id="icon-${name}"`)).toHaveLength(2);
    expect(icon(name)).toContain(`href="#icon-${name}"`);
  }
  expect(sprite.match(/<symbol /g)?.length).toBe(iconNames.length);
});

test("every stroke stays on its 20 by 20 square", () => {
  for (const [, d = ""] of iconSprite().matchAll(/<path d="([^"]+)"/g)) {
    const absolute = [...d.matchAll(/[MLHV]([\d. ]+)/g)].flatMap((match) => (match[1] ?? "").trim().split(/\s+/).map(Number));
    expect(Math.min(...absolute)).toBeGreaterThanOrEqual(1);
    expect(Math.max(...absolute)).toBeLessThanOrEqual(19);
  }
});

test("an icon beside a word is silent, one with a label speaks", () => {
  expect(icon("close")).toContain('aria-hidden="true"');
  expect(icon("close", 20, "close")).toContain('role="img" aria-label="close"');
});
