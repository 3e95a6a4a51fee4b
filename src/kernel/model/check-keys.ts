// One tree against the keys that may stand in it: short and long forms made one, words and quantities read, every slip reported.
import type { Input } from "../figure.ts";
import type { Place } from "../finding.ts";
import { nearest } from "../nearest.ts";
import { readNumber } from "../number.ts";
import { type Issue, readPair, readQuantity } from "../quantity.ts";
import { kindInfo, readUnit } from "../unit.ts";
import type { KeyNode } from "./keys.ts";
import type { Leaf, ListNode, MapNode, Node } from "./node.ts";
import { type Draft, some } from "./report.ts";
import { runTogether } from "./syntax.ts";

/** What the check of one file needs from others, and where it writes what it finds. */
export interface Scene {
  readonly drafts: Draft[];
  /** Currency of the shop, when it says one. */
  readonly currency: string | undefined;
}

const nameOfThing = /^[a-z0-9](?:[a-z0-9-]*[a-z0-9])?$/;
/** Keys of rooms to come may be paths (`turret-ring.rotate`). */
const nameInLax = /^[a-z0-9](?:[a-z0-9.-]*[a-z0-9])?$/;

/** Whether a text is the name of a thing: lower case letters, digits and hyphens. */
export function isName(text: string): boolean {
  return nameOfThing.test(text);
}

export const isBlank = (leaf: Leaf): boolean => leaf.text === "unknown" || leaf.text === "none";

/** How a value is known. */
export const knownFrom = ["plate", "papers", "seller", "drawing", "seen", "measured", "estimate", "local-code"] as const;
export const knownLongForm: ReadonlySet<string> = new Set(["value", "from", "date", "with", "note"]);

/**
 * The tree as the model wants it: a short form fills its head key (`valve: detent` becomes `valve: { kind: detent }`), a long form becomes the
 * value with its provenance, an earlier name the present one. What is wrong is reported and left out. `name` is the key above.
 */
export function checkKeys(node: Node, at: KeyNode, name: string, scene: Scene): Node | undefined {
  if (node.is === "map") {
    if (isLongForm(node, at)) return fromLongForm(node, at, name, scene);
    if (hasKeys(at) || isLax(at)) return checkMap(node, at, name, scene);
    const wanted = isList(at) ? "a list in square brackets" : `one value${wants(at.input)}`;
    return report(scene, node, isList(at) ? "not-a-list" : "not-a-value", `\`${name}\` holds keys here; ${wanted} is wanted`, at.input);
  }
  if (node.is === "list") return checkList(node, at, name, scene);
  return checkLeaf(node, at, name, scene);
}

/** Keys stand here: those listed, or none at all yet for a kind of thing. */
const hasKeys = (at: KeyNode): boolean => at.keys.size > 0 || at.any !== undefined || at.says !== undefined;
/** Anything may stand here; where a room reads a value already, a value has to. */
const isLax = (at: KeyNode): boolean => at.lax === true && at.input === undefined;
const isList = (at: KeyNode): boolean => at.item !== undefined || at.input?.form === "list" || at.input?.form === "lists";

function report(scene: Scene, node: Node, code: Draft["code"], says: string, input?: Input<unknown>): undefined {
  scene.drafts.push({ code, says, place: node.place, ...expected(input) });
  return undefined;
}

function expected(input: Input<unknown> | undefined): { expected?: string } {
  const example = exampleOf(input);
  return example === undefined ? {} : { expected: example };
}

/** A value that would do: the first word, or the first example of the kind. */
function exampleOf(input: Input<unknown> | undefined): string | undefined {
  if (!input) return undefined;
  return input.words ? input.words[0] : input.kind ? kindInfo(input.kind).examples[0] : undefined;
}

function checkMap(map: MapNode, at: KeyNode, name: string, scene: Scene): MapNode {
  const entries = new Map<string, Node>();
  const unread: string[] = [];
  for (const [typed, child] of map.entries) {
    const key = renamed(typed, child, map, at, scene);
    const found = checkEntry(key, child, at, name, scene);
    if (found) entries.set(key, found);
    else unread.push(at.keys.has(key) ? key : (nearest(key, at.keys.keys()) ?? key));
  }
  return unread.length > 0 ? { ...map, entries, unread } : { ...map, entries };
}

function renamed(typed: string, child: Node, map: MapNode, at: KeyNode, scene: Scene): string {
  const now = at.was?.get(typed);
  if (now === undefined || at.keys.has(typed) || map.entries.has(now)) return typed;
  scene.drafts.push({ code: "renamed", says: `\`${typed}\` is called \`${now}\` now`, place: child.key ?? child.place, expected: now });
  return now;
}

function checkEntry(key: string, child: Node, at: KeyNode, name: string, scene: Scene): Node | undefined {
  const place = child.key ?? child.place;
  const known = at.keys.get(key);
  if (known) return checkKeys(child, known, key, scene);
  if (key === "like" && (at.like !== undefined || at.lax)) return checkLike(child, scene);
  if (key === "like") {
    scene.drafts.push({
      code: "like-group",
      says: `the catalogue has no parts that could be laid under ${at.says ?? `\`${name}\``}`,
      place,
    });
    return undefined;
  }
  if (at.any) {
    if (isName(key)) return checkKeys(child, at.any, key, scene);
    badName(key, place, scene);
    return undefined;
  }
  if (at.lax) {
    if (nameInLax.test(key)) return checkLax(child, scene);
    badName(key, place, scene);
    return undefined;
  }
  scene.drafts.push(unknownKey(key, place, at, name));
  return undefined;
}

function badName(key: string, place: Place, scene: Scene): void {
  const better = key
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "");
  const says = `\`${short(key)}\`: names are lower case letters, digits and hyphens`;
  scene.drafts.push({ code: "bad-name", says, place, ...(better === "" ? {} : { expected: better }) });
}

/** `leed` is not a key of a screw: with the nearest that is, or where the word would be right, and some that are. */
function unknownKey(key: string, place: Place, at: KeyNode, name: string): Draft {
  const names = [...at.keys.keys(), ...(at.like === undefined ? [] : ["like"])];
  const near = nearest(key, names);
  const below = [...at.keys].filter(([, child]) => child.keys.has(key)).map(([holder]) => holder);
  const hint = near !== undefined ? ` Did you mean \`${near}\`?` : below.length > 0 ? ` It stands under \`${below.join("`, `")}\`.` : "";
  const says = `\`${short(key)}\` is not a key of ${at.says ?? `\`${name}\``}.${hint}${names.length > 0 ? ` Others here: ${some(names)}` : ""}`;
  return { code: "unknown-key", says, place, ...(near === undefined ? {} : { nearest: near }) };
}

function checkLike(child: Node, scene: Scene): Node | undefined {
  if (child.is === "leaf" && isName(child.text)) return child;
  return report(scene, child, child.is === "leaf" ? "bad-name" : "not-a-value", "`like` names one entry of catalogue/");
}

function checkList(list: ListNode, at: KeyNode, name: string, scene: Scene): Node | undefined {
  const { input, item } = at;
  if (item) return withItems(list, (child) => checkKeys(child, item, name, scene));
  if (input?.form === "list") {
    return withItems(list, (child) =>
      child.is === "leaf" ? checkValue(child, input, name, scene) : report(scene, child, "not-a-value", "one value is wanted", input),
    );
  }
  if (input?.form === "lists")
    return withItems(list, (child) => (child.is === "map" ? report(scene, child, "not-a-value", "a text is wanted") : child));
  if (isLax(at)) return checkLax(list, scene);
  if (input || at.link) return report(scene, list, "not-a-value", `\`${name}\` is a list here; one value${wants(input)} is wanted`, input);
  if (hasKeys(at))
    return report(
      scene,
      list,
      "not-a-map",
      `\`${name}\` is a list here; named keys are wanted: ${some(at.any ? ["NAME"] : at.keys.keys())}`,
    );
  return report(scene, list, "not-a-value", "a name is wanted");
}

function withItems(list: ListNode, check: (child: Node) => Node | undefined): ListNode {
  return { ...list, items: list.items.flatMap((child) => check(child) ?? []) };
}

function checkLeaf(leaf: Leaf, at: KeyNode, name: string, scene: Scene): Node | undefined {
  if (at.input && !isList(at)) return checkValue(leaf, at.input, name, scene);
  if (leaf.text === "" && (hasKeys(at) || at.lax))
    return { is: "map", entries: new Map(), place: leaf.place, origin: leaf.origin, ...keyOf(leaf) };
  if (leaf.text === "") return report(scene, leaf, "not-a-value", `nothing stands after \`${name}:\``);
  if (isBlank(leaf)) return leaf;
  if (isList(at)) {
    scene.drafts.push({
      code: "not-a-list",
      says: `\`${name}\` is a list: write \`[ ${leaf.text} ]\``,
      place: leaf.place,
      expected: `[ ${leaf.text} ]`,
    });
    return undefined;
  }
  const head = at.head === undefined ? undefined : at.keys.get(at.head);
  if (at.head !== undefined && head) {
    const child = checkKeys(leaf, head, at.head, scene);
    return child && { is: "map", entries: new Map([[at.head, child]]), place: leaf.place, origin: leaf.origin, ...keyOf(leaf) };
  }
  if (at.lax) return checkLax(leaf, scene);
  if (!hasKeys(at)) return leaf; // a name: of a thing, or of the thing it links to
  const run = runTogether(leaf.text);
  if (run) {
    const better = `${run[0]} ${leaf.text.slice(run[0].length)}`;
    scene.drafts.push({
      code: "no-blank-after-colon",
      says: `"${short(leaf.text)}" is read as one word; write \`${short(better)}\``,
      place: leaf.place,
      expected: better,
    });
    return undefined;
  }
  const keys = at.any ? "names of yours" : some(at.keys.keys());
  return report(scene, leaf, "not-a-map", `"${short(leaf.text)}" stands where keys of \`${name}\` are wanted: ${keys}`);
}

function keyOf(node: Node): { key?: Place } {
  return node.key ? { key: node.key } : {};
}

function isLongForm(map: MapNode, at: KeyNode): boolean {
  if (!map.entries.has("value") || at.keys.has("value")) return false;
  return at.input !== undefined || at.link !== undefined || at.head !== undefined;
}

/** `{ value: 40 A, from: local-code, date: 2026-01-12 }`: the value, and how it is known. */
function fromLongForm(map: MapNode, at: KeyNode, name: string, scene: Scene): Node | undefined {
  const says: { from?: string; date?: string; with?: string; note?: string } = {};
  for (const [key, child] of map.entries) {
    const place = child.key ?? child.place;
    if (!knownLongForm.has(key)) {
      const near = nearest(key, knownLongForm);
      scene.drafts.push({
        code: "unknown-key",
        says: `\`${short(key)}\` is not a key of a value in long form.${near ? ` Did you mean \`${near}\`?` : ""} There are: ${some(knownLongForm)}`,
        place,
        ...(near ? { nearest: near } : {}),
      });
    } else if (key !== "value") {
      if (child.is !== "leaf") report(scene, child, "not-a-value", `\`${key}\` is one text`);
      else if (key === "from") says.from = checkWord(child, knownFrom, "from", scene) ?? child.text;
      else if (key === "date") says.date = checkDate(child, scene);
      else if (key === "with") says.with = child.text;
      else says.note = child.text;
    }
  }
  const value = map.entries.get("value");
  const found = value && checkKeys({ ...value, ...keyOf(map) }, at, name, scene);
  return found && known(found, says);
}

function known(node: Node, says: { from?: string; date?: string; with?: string; note?: string }): Node {
  if (node.is === "leaf") return { ...node, ...says };
  if (node.is === "list") return { ...node, items: node.items.map((n) => known(n, says)) };
  return { ...node, entries: new Map([...node.entries].map(([k, n]) => [k, known(n, says)])) };
}

const dateText = /^(\d{4})-(\d{2})-(\d{2})(?:[T ]([01]\d|2[0-3]):([0-5]\d)(?::[0-5]\d)?Z?)?$/;

/** A day of the calendar, with a time if there is one. */
export function checkDate(leaf: Leaf, scene: Scene): string {
  const [, year, month, day] = (dateText.exec(leaf.text) ?? []).map(Number);
  const there =
    year !== undefined &&
    month !== undefined &&
    day !== undefined &&
    new Date(Date.UTC(year, month - 1, day)).getUTCMonth() === month - 1 &&
    day > 0;
  if (!there)
    scene.drafts.push({
      code: "date-bad",
      says: `"${short(leaf.text)}": dates are written year-month-day, 2026-02-14`,
      place: leaf.place,
      expected: "2026-02-14",
    });
  return leaf.text;
}

function checkWord(leaf: Leaf, words: readonly string[], name: string, scene: Scene): string | undefined {
  if (words.includes(leaf.text)) return leaf.text;
  const yes = leaf.text === "true" ? "yes" : leaf.text === "false" ? "no" : undefined;
  if (yes !== undefined && words.includes(yes)) return yes;
  const near = nearest(leaf.text, words);
  scene.drafts.push({
    code: "unknown-word",
    says: `\`${short(leaf.text)}\`: \`${name}\` is one of ${words.join(", ")}${words === knownFrom ? "" : " (or unknown)"}.${near ? ` Nearest: \`${near}\`` : ""}`,
    place: leaf.place,
    expected: words.join(", "),
    ...(near ? { nearest: near } : {}),
  });
  return undefined;
}

function checkValue(leaf: Leaf, input: Input<unknown>, name: string, scene: Scene): Leaf | undefined {
  if (leaf.text === "unknown") return leaf;
  if (leaf.text === "none") {
    if (input.none || input.words?.includes("none") || input.form === "text") return leaf;
    return report(scene, leaf, "unknown-word", `\`${name}\` cannot be absent: write its value, or \`unknown\``, input);
  }
  if (leaf.text === "" && input.form !== "text")
    return report(scene, leaf, "not-a-value", `nothing stands after \`${name}:\`; write a value${wants(input)}, or \`unknown\``, input);
  if (input.words) {
    const word = checkWord(leaf, input.words, name, scene);
    return word === undefined ? undefined : { ...leaf, text: word };
  }
  if (input.kind === null) return leaf;
  const options = { key: name, ...(scene.currency === undefined ? {} : { currency: scene.currency }) };
  const reading = input.form === "pair" ? readPair(leaf.text, input.kind, options) : readQuantity(leaf.text, input.kind, options);
  if (!reading.ok) {
    for (const issue of reading.issues) scene.drafts.push(draftOf(issue, leaf));
    return undefined;
  }
  for (const value of "values" in reading ? reading.values : [reading])
    for (const note of value.notes) scene.drafts.push(draftOf(note, leaf));
  return leaf;
}

/** An issue of a quantity stands at the value; the caret marks the letters it is about. */
function draftOf(issue: Issue, leaf: Leaf): Draft {
  const { place, text } = leaf;
  const quotes = (place.endColumn - place.column - text.length) / 2;
  const exact = place.line === place.endLine && (quotes === 0 || quotes === 1);
  const wanted = issue.rewrite ?? issue.expected;
  return {
    code: issue.code,
    says: issue.says,
    place,
    ...(wanted === undefined ? {} : { expected: wanted }),
    ...(issue.nearest === undefined ? {} : { nearest: issue.nearest }),
    ...(exact ? { mark: { at: issue.at + quotes, length: issue.length } } : {}),
  };
}

/** Keys of rooms to come: names, numbers and units are looked at, since nobody can say yet what they mean. */
function checkLax(node: Node, scene: Scene): Node {
  if (node.is === "list") return { ...node, items: node.items.map((n) => checkLax(n, scene)) };
  if (node.is === "map") {
    const entries = new Map<string, Node>();
    for (const [key, child] of node.entries) {
      if (nameInLax.test(key)) entries.set(key, checkLax(child, scene));
      else badName(key, child.key ?? child.place, scene);
    }
    return { ...node, entries };
  }
  const draft = laxSlip(node);
  if (draft) scene.drafts.push(draft);
  return node;
}

const looksLikeQuantity = /^[-+]?([\d.,'OlI]*\d[\d.,'OlI]*)(?: +([^\s\d]\S*))?$/;
const slipsOfNumbers: ReadonlySet<string> = new Set(["decimal-comma", "thousands-sign", "letter-in-number"]);

function laxSlip(leaf: Leaf): Draft | undefined {
  const [, number, unit] = looksLikeQuantity.exec(leaf.text) ?? [];
  if (number === undefined) return undefined;
  const reading = readNumber(leaf.text, true);
  if (!reading.ok) {
    if (!slipsOfNumbers.has(reading.code)) return undefined;
    const better = reading.meant === undefined ? undefined : reading.meant + (unit === undefined ? "" : ` ${unit}`);
    return { code: reading.code, says: reading.says, place: leaf.place, ...(better === undefined ? {} : { expected: better }) };
  }
  const trouble = unit === undefined ? undefined : readUnit(unit);
  if (!trouble || trouble.ok || trouble.nearest === undefined || !/^[a-zA-Z%*/^0-9()]+$/.test(unit ?? "")) return undefined;
  return {
    code: "unit-unknown",
    says: `\`${unit ?? ""}\` is no unit. Nearest: \`${trouble.nearest}\``,
    place: leaf.place,
    nearest: trouble.nearest,
  };
}

function wants(input: Input<unknown> | undefined): string {
  const example = exampleOf(input);
  return example === undefined ? "" : ` such as \`${example}\``;
}

const short = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text);
