// What a file of the shop folder is for, told from its path alone; and which keys it may hold.
import type { KeyNode, Keys } from "./keys.ts";
import { optionKeys, recordKeys } from "./tops.ts";

export type Role =
  | { readonly is: "shop" }
  | { readonly is: "catalogue" }
  | { readonly is: "machine"; readonly machine: string }
  | { readonly is: "work" | "sequences" | "option" | "record"; readonly machine: string; readonly name: string };

const folderRoles: Readonly<Record<string, "work" | "sequences" | "option" | "record">> = {
  work: "work",
  sequences: "sequences",
  options: "option",
  records: "record",
};

/** The role of a file, or null for one that the model does not read. */
export function roleOf(file: string): Role | null {
  const parts = file.split("/");
  const [top = "", folder = "", last = ""] = parts;
  if (parts.some((p) => p.startsWith("."))) return null;
  if (file === "shop.yaml") return { is: "shop" };
  if (parts.length === 2 && top === "catalogue" && folder.endsWith(".yaml")) return { is: "catalogue" };
  if (parts.length === 2 && folder === "machine.yaml") return { is: "machine", machine: top };
  const is = Object.hasOwn(folderRoles, folder) ? folderRoles[folder] : undefined;
  if (parts.length !== 3 || is === undefined || !last.endsWith(".yaml")) return null;
  return { is, machine: top, name: last.slice(0, -".yaml".length) };
}

/** Folders of a machine: maps below its root in the model, but no keys of machine.yaml. */
const folders = ["work", "sequences"];
const ofMachineFile = new WeakMap<KeyNode, KeyNode>();

/** Keys that a file may hold, as its own top. */
export function keysOfFile(role: Role, keys: Keys): KeyNode {
  switch (role.is) {
    case "shop":
      return keys.shop;
    case "catalogue":
      return keys.catalogue;
    case "option":
      return optionKeys;
    case "record":
      return recordKeys;
    case "work":
    case "sequences":
      return keys.machine.keys.get(role.is)?.any ?? { keys: new Map() };
    case "machine": {
      let top = ofMachineFile.get(keys.machine);
      if (!top) {
        top = { ...keys.machine, keys: new Map([...keys.machine.keys].filter(([key]) => !folders.includes(key))) };
        ofMachineFile.set(keys.machine, top);
      }
      return top;
    }
  }
}
