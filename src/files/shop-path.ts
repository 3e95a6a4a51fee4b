// Which paths are files of a shop: nothing else is read, written or watched.

/** Folders of a machine that hold one file a thing. */
const machineFolders = ["options", "records", "sequences", "work"] as const;

const plainName = /^[a-z0-9]+(-[a-z0-9]+)*$/;
/** Catalogue files may be named freely, as long as every file system can store the name. */
const freeName = /^[\p{L}\p{N}][\p{L}\p{M}\p{N} ._-]*\.yaml$/u;

/** Whether a path from the shop folder, parted by "/", names a file that belongs to a shop. */
export function isShopPath(path: string): boolean {
  const [first = "", second = "", third, ...rest] = path.split("/");
  if (path === "shop.yaml") return true;
  if (first === "catalogue") return third === undefined && freeName.test(second);
  if (!plainName.test(first) || rest.length > 0) return false;
  if (third === undefined) return second === "machine.yaml";
  if (!isMachineFolder(second)) return false;
  const [, name = "", ending] = /^(.*)\.(yaml|csv)$/.exec(third) ?? [];
  return plainName.test(name) && (ending === "yaml" || second === "records");
}

/** Whether a folder, by its path from the shop folder, can hold files of a shop; the shop folder itself is "". */
export function isShopFolder(path: string): boolean {
  const [first = "", second, ...rest] = path.split("/");
  if (path === "" || path === "catalogue") return true;
  return plainName.test(first) && first !== "catalogue" && rest.length === 0 && (second === undefined || isMachineFolder(second));
}

/** Whether a path names a record or its readings: such a file may grow, what stands in it stays. */
export function isRecordPath(path: string): boolean {
  return isShopPath(path) && path.split("/")[1] === "records";
}

/** Whether a path looks as if its owner meant it for the shop, though it is spelt otherwise. */
export function isMeantForShop(path: string): boolean {
  const [first = "", second = "", third, ...rest] = path.split("/");
  const isYaml = /^[^.].*\.ya?ml$/i.test(third ?? second);
  if (rest.length > 0 || isShopPath(path)) return false;
  if (first === "catalogue") return third === undefined && isYaml;
  if (third === undefined) return /^machine\.ya?ml$/i.test(second);
  return isMachineFolder(second) && (isYaml || (second === "records" && /^[^.].*\.csv$/i.test(third)));
}

function isMachineFolder(name: string): boolean {
  return (machineFolders as readonly string[]).includes(name); // widened: includes() of a list of literals takes only its own words
}
