import { expect, test } from "vitest";
import { emptyPicture } from "./empty.ts";
import { isWithin, overlap, writtenBoxes } from "./words.ts";

const sentence = "neither the links nor the connection of the terminal box are written, and how many leads there are is not known either";

test.each([320, 358, 720])("at %d px title and sentence stand inside the drawing and clear of each other", (width) => {
  const { svg } = emptyPicture("Terminal box", sentence, { width });
  const boxes = writtenBoxes(svg);
  const [, height = "0"] = /height="([\d.]+)"/.exec(svg) ?? [];
  expect(boxes.every((box) => isWithin(box, { x: 0, y: 0, width, height: Number(height) }))).toBe(true);
  expect(boxes.some((box, i) => boxes.slice(i + 1).some((other) => overlap(box, other)))).toBe(false);
  expect(
    boxes
      .slice(1)
      .map((box) => box.text)
      .join(" "),
  ).toBe(sentence);
});
test("who cannot see it is told that nothing is drawn, and why", () => {
  expect(emptyPicture("Terminal box", "no leads", { width: 358 }).svg).toContain('aria-label="Terminal box: not drawn, no leads"');
});
