// The example shop with its values changed to what a tired, hurried or hostile hand could type, taken all the way to the answer.
import type { Mode } from "../../src/kernel/evaluate.ts";
import { asFound } from "../../src/kernel/model/node.ts";
import { parseShop } from "../../src/kernel/model/resolve.ts";
import { study } from "../../src/kernel/study.ts";
import { waywright } from "../../src/rooms/index.ts";
import { files, hurtFolder, numbers, placed, untouched } from "./folders.ts";

type Pick = (below: number) => number;

const whole = parseShop(new Map(files.map(([file, text]) => [file, { text }])), waywright.keys);
const asItStands = study(waywright, whole, asFound, "nominal");

/** `  key: value` and `{ key: value, key: value }`: the key, and what stands behind it up to the next comma, brace or comment. */
const entry = /([a-z][\w.-]*): (?=[^\s{[#])("[^"]*"|[^,{}[\]#\n]*[^,{}[\]#\n\s])/g;
const number = /(?<![\w.-])\d+(?:\.\d+)?(?![\w.-])/g;

const dictionary = {
  keys: [...new Set(files.flatMap(([, text]) => [...text.matchAll(entry)].map((m) => m[1] ?? "")))].toSorted(),
  values: [...new Set(files.flatMap(([, text]) => [...text.matchAll(entry)].map((m) => m[2] ?? "")))].toSorted(),
};
const figures =
  "0 1 2 3 7 -1 -0.001 0.5 1e-300 1e-9 1e-3 1e3 1e6 1e9 1e15 1e300 5e-324 1e999 NaN 4294967296 9007199254740993 1/2 1/3 0/0 12,5 1'000 0x10".split(
    " ",
  );
const words = ["unknown", "none", "", "yes", "no", "[]", "{}", "[ 1, 2 ]", "{ value: 3 }", "0 to 0", "~", "null", "true", "__proto__"];
const letters = ["\u00df", "\u0130", "\u{1f9f0}", "\u202e", "\u00a0", "e\u0301", "\u2212", "\u00b5", "\ud800", "\u0000", "\u3000"];

/** One of several places of a text that a pattern finds, exchanged. */
function exchanged(text: string, pattern: RegExp, next: Pick, by: (found: RegExpExecArray) => string): string {
  const all = [...text.matchAll(pattern)];
  const one = all[next(all.length)];
  return one === undefined ? text : text.slice(0, one.index) + by(one) + text.slice(one.index + one[0].length);
}

const oneOf = (list: readonly string[], next: Pick): string => list[next(list.length)] ?? "";

const scaled = (x: number, next: Pick): string => String(Number((x * 2 ** ((next(81) - 40) / 8)).toPrecision(3)));

/** One change of one text: grammar is mostly spared, so that the physics gets what it does not expect. */
function changed(text: string, next: Pick): string {
  const lines = text.split("\n");
  const [a, b, at] = [next(lines.length), next(lines.length), next(text.length + 1)];
  switch (next(14)) {
    case 0: // two lines change places
      return lines
        .with(a, lines[b] ?? "")
        .with(b, lines[a] ?? "")
        .join("\n");
    case 1:
      return text.slice(0, at);
    case 2: // one bit of one byte
      return Buffer.from(text)
        .map((byte, i) => (i === at ? byte ^ (1 << next(8)) : byte))
        .toString();
    case 3:
      return text.slice(0, at) + oneOf(letters, next) + text.slice(at);
    case 4:
      return exchanged(text, entry, next, (m) => `${oneOf(dictionary.keys, next)}: ${m[2] ?? ""}`);
    case 5:
    case 6:
      return exchanged(text, entry, next, (m) => `${m[1] ?? ""}: ${oneOf(dictionary.values, next)}`);
    case 7:
      return exchanged(text, entry, next, (m) => `${m[1] ?? ""}: ${oneOf(words, next)}`);
    case 8:
      return lines.toSpliced(a, 1 + next(4)).join("\n");
    default:
      return exchanged(text, number, next, (m) => (next(3) > 0 ? scaled(Number(m[0]), next) : oneOf(figures, next)));
  }
}

/** Every fourth folder is hurt in its grammar, the others in their values. */
function hurtHouse(seed: number): Map<string, { text: string }> {
  if (seed % 4 === 0) return hurtFolder(seed);
  const next = numbers(seed);
  const folder = new Map(files.map(([file, text]) => [file, { text }]));
  for (let n = 1 + next(5); n > 0; n--) {
    const file = next(4) === 0 ? (files[next(files.length)]?.[0] ?? "") : oneOf(read, next);
    folder.set(file, { text: changed(folder.get(file)?.text ?? "", next) });
  }
  return folder;
}

/** Where most of what the rooms read stands. */
const read = [
  "shop.yaml",
  "lathe/machine.yaml",
  "mill/machine.yaml",
  "catalogue/parts.yaml",
  "lathe/work/drag-knob.yaml",
  "mill/work/side-plate.yaml",
];

export interface Outcome {
  readonly seconds: number;
  readonly errors: number;
  /** Holes that are mistakes of ours, whatever was typed. */
  readonly slips: readonly string[];
}

/** From texts to the answer as JSON; throws when anything is not as it always has to be. */
export function answered(seed: number, mode: Mode = "nominal"): Outcome {
  const folder = hurtHouse(seed);
  const start = performance.now();
  const shop = parseShop(folder, waywright.keys, whole);
  const options = [...shop.files.values()].flatMap((f) => f.option?.option ?? []).filter((_, i) => (seed >> (2 * i)) % 4 === 1);
  const variant = { options, tries: [{ root: "lathe", path: "spindle.highest-speed", text: "3000 rpm" }] };
  const { answer, evaluation, graph } = study(waywright, shop, variant, mode, asItStands);
  const plain: unknown = JSON.parse(JSON.stringify(answer));
  const seconds = (performance.now() - start) / 1000;
  if (typeof plain !== "object" || plain === null || !("checks" in plain)) throw new Error("an answer that is no answer");
  placed(answer.findings, folder);
  untouched();
  const holes = [...graph.cells.values()].flatMap((cell) => [...(evaluation.filled.get(cell)?.holes?.keys() ?? [])]);
  return {
    seconds,
    errors: answer.findings.filter((f) => f.severity === "error").length,
    slips: [...new Set(holes.filter((why) => why.startsWith("program error")))],
  };
}
