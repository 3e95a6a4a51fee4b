// What stands where a picture cannot be drawn: its title and one sentence that says what is missing.
import type { Drawn, Frame } from "../kernel/room.ts";
import { titleSize } from "./plot-frame.ts";
import { drawing } from "./svg.ts";
import { fitted, textWidth } from "./text-width.ts";
import { noteSize, words } from "./words.ts";

export function emptyPicture(title: string, sentence: string, frame: Pick<Frame, "width">): Drawn {
  const size = noteSize(frame.width) + 1;
  const text = wrapped(sentence, frame.width, size);
  const height = titleSize + 14 + text.length * (size + 5) + 4;
  const svg = drawing(
    { label: `${title}: not drawn, ${sentence}`, width: frame.width, height },
    words(0, titleSize + 2, fitted(title, frame.width, titleSize, true), { size: titleSize, bold: true }),
    ...text.map((line, i) => words(0, titleSize + 14 + (i + 1) * (size + 5) - 4, line, { size, tone: "q" })),
  );
  return { svg };
}

/** The sentence in lines of at most this width; a word longer than a line stands alone and is cut. */
function wrapped(sentence: string, width: number, size: number): string[] {
  const found: string[] = [];
  for (const word of sentence.split(" ")) {
    const last = found.at(-1);
    const joined = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && textWidth(joined, size) <= width) found[found.length - 1] = joined;
    else found.push(fitted(word, width, size));
  }
  return found;
}
