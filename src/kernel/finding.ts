// Every mistake a user can make in the files, as data: a code, a sentence, a place. Surfaces word and colour it.

/** A stretch of a file, counted from 1 as editors do. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  /** One sentence in plain words, without file and line. */
  readonly says: string;
  readonly place: Place;
  /** The line of the file and a caret line below it. */
  readonly excerpt?: string;
  /** What would have been accepted there, ready to be typed. */
  readonly expected?: string;
  /** The nearest valid word, when one is near. */
  readonly nearest?: string;
}

/** An error stops the figures of the file; a note leaves them standing. */
export type Severity = "error" | "note";

/**
 * Each code with its severity and its usual cause. One table, so that documents, tests and surfaces never disagree.
 */
export const findings = {
  "tab-indent": { severity: "error", cause: "pasted from a spreadsheet or another editor" },
  "no-blank-after-colon": { severity: "error", cause: "the blank after the colon is missing" },
  twice: { severity: "error", cause: "a block was copied and the old one left standing" },
  syntax: { severity: "error", cause: "a bracket, a quote or an indent does not match" },
  "colon-in-text": { severity: "error", cause: "a colon with a blank inside plain text starts a new key" },
  "comment-ate-value": { severity: "error", cause: "a blank and # start a comment" },
  alias: { severity: "error", cause: "anchors and aliases hide where a value stands" },
  "too-large": { severity: "error", cause: "not a file of a shop folder" },
  "too-deep": { severity: "error", cause: "not a file of a shop folder" },
  "not-text": { severity: "error", cause: "saved in another encoding, or no text file at all" },
  "not-a-map": { severity: "error", cause: "a list or a single word stands where named keys are wanted" },
  "not-a-list": { severity: "error", cause: "single values were not put in square brackets" },
  "not-a-value": { severity: "error", cause: "a map or list stands where one value is wanted" },
  "unknown-key": { severity: "error", cause: "misspelt, or written one level too high or low" },
  "bad-name": { severity: "error", cause: "capitals, blanks or underscores in a name" },
  "unknown-word": { severity: "error", cause: "misspelt, or a word of another trade" },
  "unit-missing": { severity: "error", cause: "the unit was thought to be understood" },
  "unit-unknown": { severity: "error", cause: "misspelt unit" },
  "unit-mismatch": { severity: "error", cause: "value typed into the neighbouring key" },
  "base-missing": { severity: "error", cause: "gauge or absolute pressure was not said" },
  "air-basis-missing": { severity: "note", cause: "labels leave out which air is meant" },
  "decimal-comma": { severity: "error", cause: "comma used as decimal sign" },
  "thousands-sign": { severity: "error", cause: "blank, comma or apostrophe between thousands" },
  "letter-in-number": { severity: "error", cause: "letter O or l typed for a digit" },
  "number-bad": { severity: "error", cause: "words or signs where digits are wanted" },
  "number-range": { severity: "error", cause: "outside what this quantity can be" },
  "range-backwards": { severity: "error", cause: "low and high ends swapped" },
  quantity: { severity: "note", cause: "written so that a person understands it, but not as the files want it" },
  "pair-here": { severity: "error", cause: "a pair of plate values outside a plate" },
  "not-in-catalogue": { severity: "error", cause: "misspelt, or the part was never entered" },
  "like-ring": { severity: "error", cause: "a copied entry kept the `like` of its original" },
  "like-group": { severity: "error", cause: "`like` stands where the catalogue has no such kind of part" },
  required: { severity: "note", cause: "never assumed, since a guess could hurt somebody" },
  contradiction: { severity: "error", cause: "two readings swapped, or one misread" },
  "plate-contradiction": { severity: "error", cause: "volts and amps of different connections were paired" },
  "unknown-path": { severity: "error", cause: "the thing was renamed or never entered" },
  "options-collide": { severity: "error", cause: "two options set one value" },
  "option-unknown": { severity: "error", cause: "no option of that name in options/" },
  "option-needs": { severity: "error", cause: "the option builds on another that is not laid on" },
  "record-aside": { severity: "note", cause: "what the reading depended on has changed since" },
  renamed: { severity: "note", cause: "the key has a new name" },
  "version-unknown": { severity: "error", cause: "written for a later program" },
  "file-missing": { severity: "error", cause: "a file that another names is not there" },
  "link-out": { severity: "error", cause: "a link leads out of the shop folder" },
  "date-bad": { severity: "error", cause: "written as the habit of a country has it" },
  "plate-slip": { severity: "error", cause: "speed at or above the synchronous speed, or the wrong frequency" },
} as const satisfies Record<string, { severity: Severity; cause: string }>;

export type FindingCode = keyof typeof findings;

/** What is wrong, and for a mistake its usual cause: the same words on every surface. */
export function findingSentence({ code, severity, says }: Finding): string {
  const sentence = /[.?!]$/.test(says) ? says : `${says}.`;
  return severity === "error" ? `${sentence} (Usual cause: ${findings[code].cause}.)` : sentence;
}
