// What every file begins with, whatever rooms there are: its name and version, and the frame of options and records.
import { type Input, input, listsInput, textInput, wordInput } from "../figure.ts";
import { machine, shop } from "../item.ts";
import type { KeyNode, Keys } from "./key-node.ts";

/** Version of the file language: counts changes of meaning. */
export const fileVersion = "1";

const yesNo = ["yes", "no"] as const;

const shopTops = [
  textInput({ per: shop, key: "waywright", says: "version of the file language", measure: `always ${fileVersion}` }),
  textInput({ per: shop, key: "shop", says: "name of the shop", measure: "stands on every sheet" }),
  wordInput({
    per: shop,
    key: "show.units",
    says: "units on the screen",
    words: ["metric", "inch"],
    measure: "your habit; files keep what was typed",
  }),
  wordInput({ per: shop, key: "show.also", says: "units shown beside", words: ["metric", "inch"], none: true, measure: "your habit" }),
  wordInput({
    per: shop,
    key: "show.pressure",
    says: "unit of pressure on the screen",
    words: ["bar", "psi", "kPa"],
    measure: "what your gauges show",
  }),
  wordInput({
    per: shop,
    key: "show.currency",
    says: "currency of all prices",
    words: ["USD", "EUR", "GBP", "CHF", "CAD", "AUD", "JPY"],
    measure: "nothing is converted",
  }),
];
const machineTops = [textInput({ per: machine, key: "machine", says: "name of the machine", measure: "as you call it" })];
const part = textInput({ per: machine, key: "part", says: "name of the part", measure: "as on the drawing" });

export const optionKeys: KeyNode = frame("an option", [
  textInput({ per: machine, key: "option", says: "name of the option", measure: "as the file" }),
  textInput({ per: machine, key: "title", says: "what would be done", measure: "one line" }),
  input({ per: machine, key: "cost", says: "what it would cost", unit: "money", measure: "offers, price lists" }),
  input({ per: machine, key: "hours", says: "own work in it", unit: "s", kind: "long-time", measure: "a guess" }),
  listsInput({ per: machine, key: "needs", says: "options it builds on", measure: "names of files in options/" }),
  listsInput({ per: machine, key: "remove", says: "paths taken away", measure: "as if never written" }),
]);
optionKeys.keys.set("set", { keys: new Map() }).set("replace", { keys: new Map() });

export const recordKeys: KeyNode = frame("a record", [
  textInput({ per: machine, key: "record", says: "name of the record", measure: "as the file" }),
  textInput({ per: machine, key: "step", says: "step of the bring-up", measure: "which step it belongs to" }),
  textInput({ per: machine, key: "date", says: "when it was taken", measure: "2026-02-14 or 2026-02-14T10:20" }),
  listsInput({
    per: machine,
    key: "under",
    says: "options carried out but not yet in the machine file",
    measure: "names of files in options/",
  }),
  wordInput({ per: machine, key: "accepted", says: "counts", words: yesNo, measure: "yes, once you stand behind it" }),
  textInput({ per: machine, key: "supersedes", says: "older record that it withdraws", none: true, measure: "name of that record" }),
]);
for (const key of ["by", "second", "with", "temperature", "hours", "setup", "photos", "plan", "readings", "computed", "remark"]) {
  recordKeys.keys.set(key, { keys: new Map(), lax: true });
}
recordKeys.keys.set("sets", { keys: new Map() }).set("holds-while", { keys: new Map() });

function frame(says: string, inputs: readonly Input<unknown>[]): KeyNode {
  const node: KeyNode = { keys: new Map(), says };
  for (const i of inputs) node.keys.set(i.key, { keys: new Map(), input: i });
  return node;
}

/** Lays the tops under what the rooms declared. */
export function layTops(keys: Keys): void {
  const lay = (root: KeyNode, i: Input<unknown>): void => {
    let at = root;
    for (const key of i.key.split(".")) {
      let next = at.keys.get(key);
      if (!next) at.keys.set(key, (next = { keys: new Map() }));
      at = next;
    }
    at.input ??= i;
  };
  for (const i of shopTops) lay(keys.shop, i);
  for (const i of machineTops) lay(keys.machine, i);
  keys.shop.says ??= "the shop file";
  keys.machine.says ??= "a machine";
  keys.catalogue.says ??= "the catalogue";
  const work = folder(keys, "work");
  lay(work, part);
  work.says ??= "a part";
  const sequence = folder(keys, "sequences");
  // Their language is read by the rooms that play and prove them.
  if (sequence.keys.size === 0) sequence.lax = true;
}

function folder(keys: Keys, name: string): KeyNode {
  let at = keys.machine.keys.get(name);
  if (!at) keys.machine.keys.set(name, (at = { keys: new Map() }));
  const any = (at.any ??= { keys: new Map() });
  // What is lax is what stands in the files, not their names.
  if (at.lax) [at.lax, any.lax] = [false, true];
  return any;
}
