// How wide words are in the page's sans face, without a browser: so that a drawing can be laid out before it is shown.

// Advance widths in thousandths of the text size, tabular figures, no kerning, of the variable face in
// @fontsource-variable/source-sans-3 5.3.1 at weights 400 and 600: measured from that package in a browser at 1000 px.
// prettier-ignore
const regular = [
  200, 289, 426, 497, 497, 824, 609, 249, 303, 303, 418, 497, 249, 311, 249, 350, 497, 497, 497,
  497, 497, 497, 497, 497, 497, 497, 249, 249, 497, 497, 497, 425, 847, 543, 588, 571, 615, 527,
  494, 617, 652, 263, 479, 579, 486, 727, 647, 664, 566, 664, 569, 534, 536, 645, 515, 786, 513,
  476, 539, 303, 350, 303, 497, 500, 542, 504, 553, 456, 555, 496, 289, 504, 544, 246, 247, 495,
  255, 829, 547, 542, 555, 555, 347, 419, 338, 544, 467, 719, 446, 467, 425, 303, 241, 303, 497,
];
// prettier-ignore
const semibold = [
  200, 315, 482, 513, 513, 841, 639, 275, 324, 324, 438, 513, 275, 322, 275, 344, 513, 513, 513,
  513, 513, 513, 513, 513, 513, 513, 275, 275, 513, 513, 513, 444, 875, 558, 597, 576, 625, 538,
  510, 628, 663, 282, 494, 597, 502, 745, 657, 674, 582, 674, 592, 545, 546, 655, 536, 800, 541,
  501, 540, 324, 344, 324, 513, 500, 549, 516, 563, 462, 564, 507, 309, 520, 558, 262, 263, 522,
  271, 843, 560, 549, 564, 564, 373, 431, 361, 556, 495, 748, 481, 495, 443, 324, 255, 324, 513,
];
/** Characters beyond plain ASCII that drawings use: [regular, semibold]. */
// prettier-ignore
const beyond: Readonly<Record<string, readonly [number, number]>> = {
  "\u00a0": [200, 200], "°": [331, 348], "±": [497, 513], "²": [367, 372], "³": [367, 372], "¹": [367, 372], "µ": [562, 578],
  "·": [249, 275], "¼": [781, 795], "½": [808, 827], "¾": [796, 807], "×": [497, 513], "Ø": [664, 674], "ø": [542, 549],
  "ß": [576, 604], "æ": [778, 780], "÷": [497, 513], "–": [480, 480], "—": [800, 800], "‘": [249, 275], "’": [249, 275],
  "“": [426, 482], "”": [426, 482], "…": [948, 964], "−": [497, 513], "Δ": [588, 614], "Ω": [678, 695], "μ": [562, 578],
  "π": [586, 611], "ω": [701, 724], "φ": [680, 710], "θ": [522, 536], "η": [541, 552], "α": [560, 578], "β": [565, 583],
  "λ": [494, 524], "ρ": [549, 559], "σ": [546, 560], "τ": [458, 474], "⌀": [602, 602],
};
/** A character the face lacks comes from a fallback face; the widest seen when measuring (an arrow) stands in for it. */
const fallback = 838;
const firstPrintable = 32;

/**
 * Width of one line of words.
 *
 * w [px] = size / 1000 * sum of advances; size [px]. Kerning is left out: it makes a line narrower by a few per cent at most.
 */
export function textWidth(words: string, size: number, bold = false): number {
  let sum = 0;
  for (const letter of words) sum += advance(letter, bold);
  return (sum * size) / 1000;
}

function advance(letter: string, bold: boolean): number {
  // An accent takes no room of its own: the bare letter is measured.
  return known(letter, bold) ?? known(letter.normalize("NFD").charAt(0), bold) ?? fallback;
}

function known(letter: string, bold: boolean): number | undefined {
  const plain = (bold ? semibold : regular)[letter.charCodeAt(0) - firstPrintable];
  return plain ?? beyond[letter]?.[bold ? 1 : 0];
}

/** The words, or as many as fit in `width` [px] followed by an ellipsis. */
export function fitted(words: string, width: number, size: number, bold = false): string {
  if (textWidth(words, size, bold) <= width) return words;
  const letters = Array.from(words);
  while (letters.length > 0 && textWidth(`${letters.join("").trimEnd()}…`, size, bold) > width) letters.pop();
  return letters.length === 0
    ? ""
    : `${letters
        .join("")
        .trimEnd()
        .replace(/[,;:]$/, "")}…`;
}
