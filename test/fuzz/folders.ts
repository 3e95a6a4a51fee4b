// Folders of the example shop with slips of hand, shuffled lines and hostile bits in them, the same for a seed for ever.
import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import type { Finding } from "../../src/kernel/finding.ts";
import { keysOf } from "../../src/kernel/model/keys.ts";
import { parseShop, resolve } from "../../src/kernel/model/resolve.ts";
import { smallKeys } from "../../src/kernel/model/small-house.test-help.ts";

const example = new URL("../../examples/heron/", import.meta.url).pathname;
/** The example shop: each file of the model with its text. */
export const files = readdirSync(example, { recursive: true, encoding: "utf8" })
  .filter((f) => f.endsWith(".yaml") && statSync(join(example, f)).isFile())
  .toSorted()
  .map((file): [string, string] => [file, readFileSync(join(example, file), "utf8")]);

const tops = "shop supply spindle axes air devices fluids wiring tools work sequences production kind year".split(" ");
const lax = keysOf([], { shop: tops, machine: tops, catalogue: "motors drives valves screws materials oils inserts".split(" ") });

const bits = [
  "\t",
  ":",
  ": ",
  "{",
  "}",
  "[",
  "]",
  '"',
  "'",
  "#",
  " #",
  "&a ",
  "*a",
  "!t ",
  ",",
  "\n",
  "\r",
  "- ",
  "? ",
  "|",
  ">",
  "\u0000",
  "\uFEFF",
  "\uFFFD",
  "NaN",
  "-5 mm",
  "1e999",
  "99999999999999999999",
  "0,4 mm",
  "5OO",
  "__proto__: ",
  "constructor: ",
  "like: servo-2n4",
  "unknown",
  "none",
  "%",
  "@",
  "---\n",
  "\u2028",
  "<<: *a",
];

/** A small generator of numbers: mulberry32 of Tommy Ettinger, public domain. */
export function numbers(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return Math.floor((((t ^ (t >>> 14)) >>> 0) / 2 ** 32) * below);
  };
}

function hurt(text: string, next: (below: number) => number): string {
  const at = next(text.length + 1);
  const bit = bits[next(bits.length)] ?? "";
  const lines = text.split("\n");
  const line = next(lines.length);
  switch (next(6)) {
    case 0:
      return text.slice(0, at) + bit + text.slice(at);
    case 1:
      return text.slice(0, at) + text.slice(at + 1 + next(20));
    case 2:
      return lines.toSpliced(line, 0, lines[next(lines.length)] ?? "").join("\n");
    case 3:
      return lines.toSpliced(line, 1).join("\n");
    case 4:
      return lines.with(line, " ".repeat(next(5)) + (lines[line] ?? "")).join("\n");
    default:
      return text.slice(0, at) + bit.repeat(1 + next(60)) + text.slice(at);
  }
}

/** A folder of the seed: most files as they are, a few hurt once or more. */
export function hurtFolder(seed: number): Map<string, { text: string }> {
  const next = numbers(seed);
  const folder = new Map(files.map(([file, text]) => [file, { text }]));
  for (let n = 1 + next(4); n > 0; n--) {
    const [file, text] = files[next(files.length)] ?? ["", ""];
    let hurtText = text;
    for (let k = 1 + next(5); k > 0; k--) hurtText = hurt(hurtText, next);
    if (next(20) === 0) folder.delete(file);
    else folder.set(file, { text: hurtText });
  }
  return folder;
}

const whole = new Map(files.map(([file, text]) => [file, { text }]));
const unhurt = new Map([lax, smallKeys].map((keys) => [keys, parseShop(whole, keys)]));

/** Loads a hurt folder with every key tree and with options; throws when anything is not as it always has to be. */
export function survives(seed: number): void {
  const folder = hurtFolder(seed);
  const keys = seed % 2 === 0 ? lax : smallKeys;
  const shop = parseShop(folder, keys, unhurt.get(keys)); // as an edit would: files that did not change are not read again
  const options = [...shop.files.values()].flatMap((f) => f.option?.option ?? []).filter((_, i) => (seed >> i) % 2 === 1);
  const model = resolve(shop, keys, { options, tries: [{ root: "lathe", path: "axes.x.mass", text: "1 kg" }] });
  placed(model.findings, folder);
  untouched();
}

/** Throws when a finding stands outside its file, or does not show where. */
export function placed(findings: readonly Finding[], folder: ReadonlyMap<string, { readonly text: string }>): void {
  for (const { place, excerpt, says } of findings) {
    const text = folder.get(place.file)?.text;
    if (says === "" || place.line < 1 || place.column < 1) throw new Error(`a finding without a place: ${JSON.stringify(place)}`);
    if (text === undefined) continue;
    if (place.line > text.split("\n").length + 1) throw new Error(`a finding past the end: ${JSON.stringify(place)}`);
    if (excerpt?.includes("\n") !== true) throw new Error("a finding without its caret");
  }
}

const born = Object.getOwnPropertyNames(Object.prototype).join();

/** Throws when something was written where every object would have it. */
export function untouched(): void {
  const fresh: Record<string, unknown> = {};
  if (Object.getOwnPropertyNames(Object.prototype).join() !== born || fresh["polluted"] !== undefined)
    throw new Error("a prototype was written to");
}
