// Every question the page may ask the worker, by name. A page that needs another adds its function here, in a file of its own.
import type { Bench } from "./bench.ts";
import { changes, column, unread } from "./comparing.ts";
import { completeAt, hoverAt } from "./editing.ts";
import { fields } from "./fields.ts";
import { household } from "./household.ts";
import { kept, valuesIn } from "./kept.ts";
import { picture, pictures } from "./pictures.ts";
import { tryOption, tryRemedy } from "./trials.ts";
import { figureForm, figureList, formFields, workAlong, workFigure } from "./working-out.ts";
import { workingReply } from "./workings.ts";

export const asks = {
  /** Rooms, steps, hazards and declarations: what does not depend on the shop. */
  household: (bench: Bench) => household(bench.house),
  /** The texts of the files with all values typed into fields written into them. */
  kept,
  /** Which of these addresses are written in a file. */
  valuesIn,
  /** The working of what stands at an address, from the best evaluation there is. */
  working: workingReply,
  /** The inputs that a room reads on a machine, as fields. */
  fields,
  /** The pictures that a room declares, for the things that are there; one of them drawn. */
  pictures,
  picture,
  /** Verdicts with one more option laid over. */
  tryOption,
  /** Verdicts with a remedy laid over. */
  tryRemedy,
  /** A variant against the shop as found. */
  column,
  /** What options would change in the files. */
  changes,
  /** Options of which no room reads a word yet. */
  unread,
  /** Every figure that can be worked out alone, and what one takes. */
  figureList: (bench: Bench, _all: Record<string, never>) => figureList(bench),
  figureForm,
  formFields,
  /** A figure from values typed, with no shop; the same along one of them. */
  workFigure,
  workAlong,
  /** What may be typed at a place of a file, and what stands there. */
  completeAt,
  hoverAt,
} as const satisfies Record<string, (bench: Bench, of: never) => unknown>;

export type Asks = typeof asks;
