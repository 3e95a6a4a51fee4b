// Every picture against the one that was last looked at. A changed picture is written beside the old one as `-changed`.
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { standalone } from "../../src/pictures/standalone.ts";
import { isWithin, overlap, writtenBoxes } from "../../src/pictures/words.ts";
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

const rules = readFileSync(new URL("../../src/surfaces/web/pictures.css", import.meta.url), "utf8");

/** The first tag that does not match, or null: enough to see that a drawing is well-formed. */
function unmatched(svg: string): string | null {
  const open: string[] = [];
  for (const [tag, end, name = "", closed] of svg.matchAll(/<(\/?)([\w-]+)(?:\s[\w-]+="[^"<]*")*\s*(\/?)>/g)) {
    if (end === "/" && open.pop() !== name) return tag;
    if (end !== "/" && closed !== "/") open.push(name);
  }
  const other = svg.replaceAll(/<\/?[\w-]+(?:\s[\w-]+="[^"<]*")*\s*\/?>/g, "").match(/[<>]|&(?!amp;|lt;|gt;|quot;)/);
  return open.at(-1) ?? other?.[0] ?? null;
}

test("a drawing with a tag left open, a tag closed wrongly or a bare sign is caught", () => {
  expect(unmatched("<svg><g></svg>")).toBe("</svg>");
  expect(unmatched("<svg><g/>")).toBe("svg");
  expect(unmatched("<svg>a & b</svg>")).toBe("&");
  expect(unmatched('<svg><text x="1">a &amp; b</text></svg>')).toBeNull();
});

describe("a picture keeps the rules of all pictures", () => {
  test.each(Object.entries(samples))("%s", (name, draw) => {
    const svg = draw();
    expect(unmatched(svg)).toBeNull();
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);

    // Colours are classes, known to the style sheet; the page's policy blocks style attributes.
    expect(svg).not.toContain("style=");
    const paints = [...svg.matchAll(/ (?:fill|stroke|color)="([^"]*)"/g)].map((match) => match[1] ?? "");
    expect(paints.filter((paint) => !paint.startsWith("url(#"))).toEqual([]);
    const classes = new Set([...svg.matchAll(/class="([^"]*)"/g)].flatMap((match) => (match[1] ?? "").split(" ")));
    expect([...classes].filter((one) => !new RegExp(`\\.${one}(?![\\w-])`).test(rules))).toEqual([]);

    const ids = [...svg.matchAll(/ id="([^"]*)"/g)].map((match) => match[1]);
    expect(new Set(ids).size).toBe(ids.length);
    const used = [...svg.matchAll(/url\(#([^)]*)\)/g)].map((match) => match[1]);
    expect(used.filter((id) => !ids.includes(id))).toEqual([]);

    const boxes = writtenBoxes(svg);
    expect(boxes.every((box) => box.size >= 12)).toBe(true);
    // Strips stretch: their words hang on percentages and have no place in pixels.
    if (name === "margin-strips") return;
    const [, width, height] = /width="([\d.]+)" height="([\d.]+)"/.exec(svg) ?? [];
    const sheet = { x: 0, y: 0, width: Number(width), height: Number(height) };
    expect(boxes.filter((box) => !isWithin(box, sheet)).map((box) => box.text)).toEqual([]);
    expect(boxes.filter((box, i) => boxes.slice(i + 1).some((other) => overlap(box, other))).map((box) => box.text)).toEqual([]);
  });
});

test("pictures on one page share no id", () => {
  const owners = new Map<string, string>();
  for (const [name, draw] of Object.entries(samples)) {
    for (const [, id = ""] of draw().matchAll(/ id="([^"]*)"/g)) {
      expect(owners.get(id) ?? name, id).toBe(name);
      owners.set(id, name);
    }
  }
  expect(owners.size).toBeGreaterThan(10);
});

test("in a picture on its own every class that sets a colour ends in a colour", () => {
  const tokens = readFileSync(new URL("../../src/surfaces/web/tokens.css", import.meta.url), "utf8");
  for (const draw of Object.values(samples)) {
    const svg = standalone(draw(), [tokens, rules]);
    const style = /<style>([\s\S]*?)<\/style>/.exec(svg)?.[1] ?? "";
    const colours = [...style.matchAll(/(?:fill|stroke):\s*([^;}]+)/g)].map((match) => match[1]?.trim() ?? "");
    expect(colours.length).toBeGreaterThan(25);
    expect(colours.filter((colour) => !/^(#[0-9a-f]{6}|none|currentColor|transparent)$/.test(colour))).toEqual([]);
  }
});
