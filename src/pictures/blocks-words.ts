// The words of a block: its name, its worst verdict and its key figures.
import type { Block } from "./blocks-spec.ts";
import { fitted, textWidth } from "./text-width.ts";
import { verdictWord, verdictWordWidth } from "./verdict.ts";
import { baseLine, words } from "./words.ts";
import type { Box } from "./words.ts";

/** From the name to its verdict [px]. */
const gap = 8;

function lineHeight(size: number): number {
  return size + 4;
}

/** Height of a name and two figures. */
export function wordsHeight(size: number): number {
  return size + 2 + 2 * lineHeight(size);
}

/** The width at which nothing of the block has to be cut. */
export function blockWidth(block: Block, size: number): number {
  const verdict = block.verdict ? gap + verdictWordWidth(block.verdict, { size, bold: true }) : 0;
  return Math.max(textWidth(block.name, size + 1, true) + verdict, ...block.figures.map((figure) => textWidth(figure, size)));
}

/** Name, verdict and figures, each fitted to the room it has. */
export function blockWords(block: Block, room: Box, size: number, halo: boolean): string[] {
  const nameSize = size + 1;
  const base = baseLine(room.y, nameSize);
  const verdictRoom = block.verdict ? verdictWordWidth(block.verdict, { size, bold: true }) + gap : 0;
  const name = fitted(block.name, room.width - verdictRoom, nameSize, true);
  const verdictX = room.x + textWidth(name, nameSize, true) + gap;
  return [
    words(room.x, base, name, { size: nameSize, bold: true, halo }),
    block.verdict && room.width >= verdictRoom - gap ? verdictWord(block.verdict, verdictX, base, { size, bold: true, halo }) : "",
    ...block.figures.map((figure, i) =>
      words(room.x, base + (i + 1) * lineHeight(size), fitted(figure, room.width, size), { size, tone: "q2", halo }),
    ),
  ];
}
