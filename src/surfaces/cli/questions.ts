// The questions of `new`: what a visit to the machine and a look at the panel can answer, in the order one walks.
import type { Keys } from "../../kernel/model/keys.ts";
import { keyAt } from "../../kernel/model/keys.ts";
import { nearest } from "../../kernel/nearest.ts";
import { readPair, readQuantity } from "../../kernel/quantity.ts";
import type { Kind } from "../../kernel/unit.ts";

export interface Question {
  /** Name of the answer in a file of answers. */
  readonly name: string;
  readonly asks: string;
  /** Where to look. */
  readonly help: string;
  readonly example: string;
  /** `shop` or the machine, and the keys below it; a question without a place decides about the folder itself. */
  readonly at: readonly ["shop" | "machine", string] | null;
  readonly form: "text" | "name" | "words" | "quantity" | "pair" | "count";
  readonly kind?: Kind;
  /** Where the house does not know better. */
  readonly words?: readonly string[];
}

export const questions: readonly Question[] = [
  {
    name: "shop",
    asks: "What is your shop called?",
    help: "It stands on every sheet.",
    example: "Millbrook Reels",
    at: ["shop", "shop"],
    form: "text",
  },
  {
    name: "units",
    asks: "Which units do you think in?",
    help: "Files keep what you type; this is for the screen.",
    example: "metric",
    at: ["shop", "show.units"],
    form: "words",
    words: ["metric", "inch"],
  },
  {
    name: "machine",
    asks: "What is the machine?",
    help: "A few words of your own.",
    example: "Six-station turret bar lathe",
    at: ["machine", "machine"],
    form: "text",
  },
  {
    name: "folder",
    asks: "A short name for its folder?",
    help: "Small letters, digits and hyphens.",
    example: "lathe",
    at: null,
    form: "name",
  },
  {
    name: "kind",
    asks: "What kind of machine?",
    help: "Lathe or mill, and how the tool or the table moves.",
    example: "turret-lathe",
    at: ["machine", "kind"],
    form: "words",
    words: ["turret-lathe", "bar-lathe", "sliding-head-lathe", "bed-mill", "knee-mill"],
  },
  {
    name: "service",
    asks: "What kind of electrical service has the shop?",
    help: "Mains can kill: a licensed person reads it at the main panel.",
    example: "split-phase",
    at: ["shop", "supply.kind"],
    form: "words",
    words: ["single-phase", "split-phase", "three-phase-star", "three-phase-high-leg", "three-phase-corner-earthed"],
  },
  {
    name: "voltage",
    asks: "Voltage between its lines?",
    help: "From the meter or the supplier's papers.",
    example: "240 V +/- 5 %",
    at: ["shop", "supply.voltage"],
    form: "quantity",
    kind: "voltage",
  },
  {
    name: "rating",
    asks: "Rating of the service?",
    help: "Plate of the main switch that feeds the shop.",
    example: "60 A",
    at: ["shop", "supply.rating"],
    form: "quantity",
    kind: "current",
  },
  {
    name: "existing",
    asks: "What does the house already draw?",
    help: "A clamp logger on the main lines for a week, or an estimate as a range.",
    example: "3 to 10 A",
    at: ["shop", "supply.existing"],
    form: "quantity",
    kind: "current",
  },
  {
    name: "run-length",
    asks: "How long is the cable from the panel to the machine, one way?",
    help: "Tape along the way it takes.",
    example: "18 m",
    at: ["machine", "supply.run.length"],
    form: "quantity",
    kind: "distance",
  },
  {
    name: "run-size",
    asks: "What section have its conductors?",
    help: "Print on the sheath.",
    example: "AWG 8",
    at: ["machine", "supply.run.size"],
    form: "quantity",
    kind: "wire-size",
  },
  {
    name: "ampacity",
    asks: "What current does the local code allow on that cable?",
    help: "Ask licensed practice; it is never guessed.",
    example: "40 A",
    at: ["machine", "supply.run.ampacity"],
    form: "quantity",
    kind: "current",
  },
  {
    name: "motor-kind",
    asks: "What kind of spindle motor?",
    help: "Its plate.",
    example: "induction",
    at: ["machine", "spindle.motor.kind"],
    form: "words",
    words: ["induction", "two-speed", "dc", "servo", "stepper", "wound-rotor", "capacitor"],
  },
  {
    name: "motor-power",
    asks: "Power on the plate of the spindle motor?",
    help: "As stamped.",
    example: "7.5 hp",
    at: ["machine", "spindle.motor.plate.power"],
    form: "quantity",
    kind: "power",
  },
  {
    name: "motor-voltage",
    asks: "Voltage on that plate?",
    help: "Both, when it carries two.",
    example: "230/460 V",
    at: ["machine", "spindle.motor.plate.voltage"],
    form: "pair",
    kind: "voltage",
  },
  {
    name: "motor-current",
    asks: "Current on that plate?",
    help: "In the same order.",
    example: "20.4/10.2 A",
    at: ["machine", "spindle.motor.plate.current"],
    form: "pair",
    kind: "current",
  },
  {
    name: "motor-frequency",
    asks: "Frequency on that plate?",
    help: "As stamped.",
    example: "60 Hz",
    at: ["machine", "spindle.motor.plate.frequency"],
    form: "quantity",
    kind: "frequency",
  },
  {
    name: "motor-speed",
    asks: "Speed on that plate?",
    help: "At full load, a little below a round number.",
    example: "1745 rpm",
    at: ["machine", "spindle.motor.plate.speed"],
    form: "quantity",
    kind: "rotation",
  },
  {
    name: "leads",
    asks: "How many leads come out of the motor?",
    help: "Power isolated and locked off, count them in the terminal box.",
    example: "9",
    at: ["machine", "spindle.motor.leads"],
    form: "count",
    kind: "count",
  },
  {
    name: "connected",
    asks: "How are they joined?",
    help: "As seen in the terminal box.",
    example: "series",
    at: ["machine", "spindle.motor.connected"],
    form: "words",
    words: ["star", "delta", "series", "parallel", "series-star", "parallel-star", "series-delta", "parallel-delta"],
  },
  {
    name: "highest-speed",
    asks: "Highest spindle speed you want?",
    help: "What the smallest parts ask for.",
    example: "2800 rpm",
    at: ["machine", "spindle.highest-speed"],
    form: "quantity",
    kind: "rotation",
  },
  {
    name: "air-delivery",
    asks: "What does the compressor deliver?",
    help: "Its label, with which air: inlet, ANR or compressed.",
    example: "5.1 cfm inlet",
    at: ["shop", "air.compressors.main.delivery"],
    form: "quantity",
    kind: "free-air-flow",
  },
  {
    name: "air-receiver",
    asks: "How large is its receiver?",
    help: "Its plate.",
    example: "50 L",
    at: ["shop", "air.receivers.main.volume"],
    form: "quantity",
    kind: "volume",
  },
];

const dontKnow = /^(|\?|-|unknown|do(n'?|n\u2019| no)?t know|don't know|not known|no idea|dunno)$/i;

/** Whether an answer says that nobody knows. */
export const isDontKnow = (answer: string): boolean => dontKnow.test(answer.trim());

export interface Mistake {
  readonly code: string;
  readonly says: string;
}

/** Why an answer cannot be taken, in the words of the files' own reader; null when it can. */
export function mistakeIn(q: Question, answer: string, keys: Keys): Mistake | null {
  const text = answer.trim();
  if (isDontKnow(text)) return null;
  switch (q.form) {
    case "text":
      // oxlint-disable-next-line no-control-regex -- these are the ones looked for
      return text.length <= 200 && !/[\u0000-\u001f\u007f]/.test(text)
        ? null
        : { code: "answer-bad", says: "one line of at most 200 letters" };
    case "name":
      return /^[a-z0-9]+(-[a-z0-9]+)*$/.test(text) && !["shop", "catalogue"].includes(text)
        ? null
        : { code: "bad-name", says: "a name of small letters, digits and hyphens, such as lathe" };
    case "words": {
      const words = wordsOf(q, keys);
      if (words.includes(text)) return null;
      const near = nearest(text, words);
      return { code: "unknown-word", says: `"${text}" is none of ${words.join(", ")}${near === undefined ? "" : `; nearest: ${near}`}` };
    }
    case "pair":
    case "quantity":
    case "count": {
      const kind = q.kind ?? "ratio";
      const read = q.form === "pair" ? readPair(text, kind) : readQuantity(text, kind, { key: q.name });
      return read.ok ? null : { code: read.issues[0].code, says: read.issues[0].says };
    }
  }
}

/** The words that may be answered: those of the house where it knows the key. */
export function wordsOf(q: Question, keys: Keys): readonly string[] {
  const [root, path] = q.at ?? ["shop", ""];
  return keyAt(keys[root], path.split("."))?.input?.words ?? q.words ?? [];
}
