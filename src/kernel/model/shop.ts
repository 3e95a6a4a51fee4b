// The files of a shop folder, each read and checked once; a file whose text did not change is not read again.
import { checkKeys, isName, type Scene } from "./check-keys.ts";
import { optionDoc, type OptionDoc, recordDoc, type RecordDoc } from "./change.ts";
import { shelved } from "../kept.ts";
import type { Keys } from "./keys.ts";
import { type MapNode, type Node, nodeAt } from "./node.ts";
import { emptyMap, parseFile, type ParsedFile } from "./parse.ts";
import { type Draft, startOf } from "./report.ts";
import { keysOfFile, type Role, roleOf } from "./role.ts";
import { fileVersion } from "./tops.ts";

/** One file, read and checked. */
export interface LoadedFile {
  readonly parsed: ParsedFile;
  readonly role: Role;
  /** The tree with short and long forms made one, as the model wants it. */
  readonly tree: MapNode;
  readonly option: OptionDoc | null;
  readonly record: RecordDoc | null;
  readonly drafts: readonly Draft[];
}

export interface ParsedShop {
  readonly files: ReadonlyMap<string, LoadedFile>;
  /** Folders that hold a machine.yaml. */
  readonly machines: ReadonlySet<string>;
  readonly keys: Keys;
  readonly currency: string | undefined;
  readonly drafts: readonly Draft[];
}

/** Names that a machine's folder cannot have. */
const takenNames: ReadonlySet<string> = new Set(["shop", "catalogue", "work", "sequences", "options", "records"]);
/** All files of one folder together; beyond this the rest is not read, so that the time stays bounded. */
const largestShop = 1_500_000;

/** Reads the files of a shop, paths relative to its folder. With `previous`, only files whose text changed are read again. */
export function parseShop(files: ReadonlyMap<string, { readonly text: string }>, keys: Keys, previous?: ParsedShop): ParsedShop {
  const drafts: Draft[] = [];
  const parsed = new Map<string, { parsed: ParsedFile; role: Role }>();
  const machines = new Set<string>();
  let letters = 0;
  for (const file of [...files.keys()].toSorted()) {
    const role = roleOf(file);
    const text = files.get(file)?.text;
    if (!role || text === undefined) continue;
    letters += text.length;
    if (letters > largestShop) {
      drafts.push({
        code: "too-large",
        says: "the files before this one are large enough for a shop; it is not read",
        place: startOf(file),
      });
      continue;
    }
    if (role.is === "machine" && takenNames.has(role.machine)) {
      drafts.push({ code: "bad-name", says: `a machine cannot be called \`${role.machine}\``, place: startOf(file) });
      continue;
    }
    if (role.is === "machine") machines.add(role.machine);
    const before = previous?.files.get(file);
    parsed.set(file, {
      parsed: before?.parsed.text === text ? before.parsed : shelved(`file ${file}\n${text}`, () => parseFile(file, text)),
      role,
    });
  }
  if (!files.has("shop.yaml"))
    drafts.push({ code: "file-missing", says: "shop.yaml is not there; it makes a folder a shop", place: startOf("shop.yaml") });
  const currency = textAt(parsed.get("shop.yaml")?.parsed.root, ["show", "currency"]);
  const same = previous?.keys === keys && previous.currency === currency && sameNames(previous.machines, machines);
  const loaded = new Map<string, LoadedFile>();
  for (const [file, { parsed: p, role }] of parsed) {
    if ("machine" in role && !machines.has(role.machine)) continue;
    const before = previous?.files.get(file);
    loaded.set(file, same && before?.parsed === p ? before : load(p, role, keys, machines, currency));
  }
  return { files: loaded, machines, keys, currency, drafts };
}

function sameNames(a: ReadonlySet<string>, b: ReadonlySet<string>): boolean {
  return a.size === b.size && [...a].every((n) => b.has(n));
}

function textAt(root: Node | undefined, path: readonly string[]): string | undefined {
  const node = nodeAt(root, path);
  return node?.is === "leaf" && node.text !== "unknown" && node.text !== "none" ? node.text : undefined;
}

function load(parsed: ParsedFile, role: Role, keys: Keys, machines: ReadonlySet<string>, currency: string | undefined): LoadedFile {
  const scene: Scene = { drafts: [], currency };
  const top = keysOfFile(role, keys);
  const { file, root } = parsed;
  // The values of an option are checked against the keys at their paths, not against the keys of an option.
  const changing = role.is === "option" ? ["set", "replace"] : role.is === "record" ? ["sets", "holds-while"] : [];
  const frame: MapNode = { ...root, entries: new Map([...root.entries].filter(([key]) => !changing.includes(key))) };
  const checked = checkKeys(frame, top, "the file", scene);
  const tree = checked?.is === "map" ? checked : emptyMap(file);
  checkNames(role, file, scene);
  if (role.is === "shop") checkVersion(root, scene);
  const around =
    role.is === "option" || role.is === "record" ? { file, machine: role.machine, name: role.name, machines, keys, scene } : null;
  const option = around && role.is === "option" ? optionDoc(root, tree, around) : null;
  const record = around && role.is === "record" ? recordDoc(root, tree, around) : null;
  return { parsed, role, tree, option, record, drafts: [...parsed.drafts, ...scene.drafts.filter((d) => isClear(d, parsed))] };
}

/** Whether a finding stands where the file could be read as written. */
export function isClear(draft: Draft, parsed: ParsedFile): boolean {
  return draft.place.line < parsed.brokenFrom && !parsed.spoilt.has(draft.place.line);
}

function checkNames(role: Role, file: string, scene: Scene): void {
  if (!("machine" in role)) return;
  const says = (what: string): void => {
    scene.drafts.push({ code: "bad-name", says: `${what}: names are lower case letters, digits and hyphens`, place: startOf(file) });
  };
  if (role.is === "machine") {
    if (!isName(role.machine)) says(`folder \`${role.machine}\``);
  } else if (!isName(role.name)) says(`file \`${role.name}\``);
}

function checkVersion(root: MapNode, scene: Scene): void {
  const version = root.entries.get("waywright");
  if (!version) {
    scene.drafts.push({
      code: "required",
      says: `\`waywright: ${fileVersion}\` is missing: the version of the file language`,
      place: root.place,
      expected: `waywright: ${fileVersion}`,
    });
  } else if (version.is === "leaf" && version.text !== fileVersion) {
    scene.drafts.push({
      code: "version-unknown",
      says: `version ${version.text} of the file language; this program reads ${fileVersion}`,
      place: version.place,
      expected: fileVersion,
    });
  }
}
