// Things of the shop by the names a machinist would give them, told from their addresses.
import { partsOf } from "../worker/view.ts";
import { machineName } from "./names.ts";

/** Keys that hold things and say nothing themselves. */
const silent = new Set(["axes", "fluids", "devices", "work", "operations", "air", "catalogue", "production", "tools"]);
/** Keys that hold things by name: one of them is named by its kind first. */
const kinds: Readonly<Record<string, string>> = {
  belts: "belt",
  bearings: "bearing",
  compressors: "compressor",
  receivers: "receiver",
  inserts: "insert",
  materials: "material",
  loads: "load",
  motors: "motor",
  drives: "drive",
};

/** `lathe/work/drag-knob.operations.rough` is `drag-knob rough`; `lathe/axes.x.drive` is `x drive`; a machine is nothing here. */
export function thingName(item: string): string {
  const { path } = partsOf(item);
  return path
    .split(/[./]/)
    .filter((key) => key !== "" && !silent.has(key))
    .map((key) => kinds[key] ?? key)
    .join(" ");
}

/** The same with the machine or shop it belongs to in front, for lists over several. */
export function thingOf(item: string): string {
  const { root } = partsOf(item);
  const name = thingName(item);
  return root === "shop" ? (name === "" ? "the shop" : name) : [machineName(root), name].filter((word) => word !== "").join(", ");
}
