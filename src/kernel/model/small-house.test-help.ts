// A small house for the tests of the loader: a dozen keys of every form, and ways to read single files and small folders with them.
import type { Finding } from "../finding.ts";
import { input, link, listInput, listsInput, pairInput, textInput, wordInput } from "../figure.ts";
import { machine, scope, shop } from "../item.ts";
import { room } from "../room.ts";
import { type Keys, keysOf } from "./keys.ts";
import { asFound, type Leaf, type Model, nodeAt, type Variant } from "./node.ts";
import { parseShop, resolve } from "./resolve.ts";

const measure = "look at it";
const axis = scope({ name: "axis", says: "an axis", mounts: ["axes.*"] });
const screw = scope({ name: "screw", says: "a screw", mounts: ["axes.*.screw"], like: "screws" });
const motor = scope({ name: "motor", says: "a motor", mounts: ["spindle.motor", "axes.*.motor"], like: "motors" });
const drive = scope({ name: "drive", says: "a drive", mounts: [{ at: "spindle.drive", implied: true }], like: "drives" });
const brake = scope({ name: "brake", says: "a brake", mounts: ["axes.*.motor.brake", "shop/catalogue/motors.*.brake"], like: "brakes" });
const spindle = scope({ name: "spindle", says: "a spindle", mounts: ["spindle"] });
const device = scope({ name: "device", says: "a device", mounts: ["devices.*"] });
const valve = scope({ name: "valve", says: "a valve", mounts: ["devices.*.valve"], like: "valves" });
const compressor = scope({ name: "compressor", says: "a compressor", mounts: ["shop/air.compressors.*"] });
const part = scope({ name: "part", says: "a part", mounts: ["work/*"] });
const feature = scope({ name: "feature", says: "a feature", mounts: ["work/*.features.*"] });
const operation = scope({ name: "operation", says: "an operation", mounts: ["work/*.operations.*"], nameKey: "operation" });
const tool = scope({ name: "tool", says: "a tool", mounts: ["tools.*"] });

const declarations = {
  scopes: [axis, screw, motor, drive, brake, spindle, device, valve, compressor, part, feature, operation, tool],
  rapid: input({ per: axis, key: "rapid", says: "rapid", unit: "m/s", measure }),
  mass: input({ per: axis, key: "mass", says: "mass", unit: "kg", measure }),
  size: input({ per: axis, key: "size", says: "wire", unit: "m2", kind: "wire-size", measure }),
  bore: input({ per: axis, key: "bore", says: "bore", unit: "m", measure }),
  note: textInput({ per: axis, key: "remark", says: "remark", measure }),
  ways: wordInput({ per: axis, key: "ways.kind", says: "ways", words: ["box", "lined-box", "dovetail", "linear-guide"], measure }),
  jerk: input({ per: axis, key: "jerk", says: "jerk", unit: "m/s3", none: true, measure }),
  lead: input({ per: screw, key: "lead", says: "lead", unit: "m", was: ["pitch"], measure }),
  starts: input({ per: screw, key: "starts", says: "starts", unit: "1", kind: "count", measure }),
  root: input({ per: screw, key: "root", says: "root diameter", unit: "m", measure }),
  inertia: input({ per: motor, key: "inertia", says: "inertia", unit: "kg*m2", measure }),
  torque: input({ per: motor, key: "torque", says: "torque", unit: "N*m", measure }),
  leads: input({ per: motor, key: "leads", says: "leads", unit: "1", kind: "count", measure }),
  resistance: input({ per: motor, key: "resistance", says: "resistance", unit: "ohm", measure }),
  volts: pairInput({ per: motor, key: "plate.voltage", says: "voltage", unit: "V", measure }),
  links: listsInput({ per: motor, key: "links", says: "links", measure }),
  connected: wordInput({ per: motor, key: "connected", says: "connection", words: ["series", "parallel"], measure }),
  rated: input({ per: drive, key: "rated-current", says: "rated current", unit: "A", required: true, measure }),
  choke: input({ per: drive, key: "choke", says: "choke", unit: "1", kind: "share", none: true, measure }),
  hold: input({ per: brake, key: "torque", says: "torque", unit: "N*m", measure }),
  delay: input({ per: brake, key: "delay", says: "delay", unit: "s", measure }),
  spindleBore: input({ per: spindle, key: "bore", says: "bore", unit: "m", measure }),
  kind: wordInput({ per: device, key: "kind", says: "kind", words: ["cylinder", "guard"], measure }),
  checkValve: wordInput({ per: device, key: "check-valve", says: "check valve", words: ["yes", "no"], measure }),
  valveKind: wordInput({ per: valve, key: "kind", says: "valve", words: ["spring", "detent"], required: true, head: true, measure }),
  valveDelay: input({ per: valve, key: "delay", says: "delay", unit: "s", measure }),
  leaks: input({ per: machine, key: "air.leaks.*", says: "leak", unit: "m3/(s*Pa)", measure }),
  ampacity: input({ per: machine, key: "supply.run.ampacity", says: "ampacity", unit: "A", required: true, measure }),
  cutIn: input({ per: compressor, key: "switch.cut-in", says: "cut-in", unit: "Pa", kind: "gauge-pressure", measure }),
  cutOut: input({ per: compressor, key: "switch.cut-out", says: "cut-out", unit: "Pa", kind: "gauge-pressure", measure }),
  delivery: input({ per: compressor, key: "delivery", says: "delivery", unit: "m3/s", kind: "free-air-flow", measure }),
  altitude: input({ per: shop, key: "environment.altitude", says: "altitude", unit: "m", kind: "distance", measure }),
  unbalance: listInput({ per: shop, key: "supply.unbalance", says: "line voltages", unit: "V", measure }),
  batch: input({ per: part, key: "batch", says: "batch", unit: "1", kind: "count", measure }),
  limits: input({ per: feature, key: "limits", says: "limits", unit: "m", measure }),
  speed: input({ per: operation, key: "speed", says: "speed", unit: "rad/s", measure }),
  feed: input({ per: operation, key: "feed", says: "feed", unit: "m", measure }),
  diameter: input({ per: tool, key: "diameter", says: "diameter", unit: "m", measure }),
  toolOf: link({ per: operation, key: "tool", to: tool, says: "tool" }),
};

export const smallKeys: Keys = keysOf([room({ name: "small", title: "Small", answers: "", brings: [declarations] })], {
  shop: ["people"],
  machine: ["year"],
  catalogue: ["oils"],
});

const shopFile = "waywright: 1\nshop: Small shop\n";
/** Nothing required is missing in it. */
export const machineFile = "machine: Lathe\nsupply: { run: { ampacity: 40 A } }\n";

/** A folder of files; shop.yaml and the lathe are there when not given. */
export function folder(files: Readonly<Record<string, string>>): Map<string, { text: string }> {
  const all = { "shop.yaml": shopFile, "lathe/machine.yaml": machineFile, ...files };
  return new Map(Object.entries(all).map(([file, text]) => [file, { text }]));
}

/** Loads a folder with options of the lathe laid on. */
export function load(
  files: Readonly<Record<string, string>>,
  options: readonly string[] = [],
  tries: Variant["tries"] = [],
  keys = smallKeys,
): Model {
  const variant = options.length + tries.length === 0 ? asFound : { options: options.map((name) => ({ machine: "lathe", name })), tries };
  return resolve(parseShop(folder(files), keys), keys, variant);
}

/** `lathe/machine.yaml:41:3 twice`, as a terminal would begin the line. */
export function told(findings: readonly Finding[]): string[] {
  return findings.map(({ place, code }) => `${place.file}:${place.line}:${place.column} ${code}`);
}

/** The place and code of every finding in a text at line 41 of a file, comment lines before it; `above` are the keys it stands under. */
export function at41(file: string, above: string, typed: string): string[] {
  const height = (text: string): number => text.split("\n").length - 1;
  const comments = "#\n".repeat(41 - height(above) - height(typed));
  return told(load({ [file]: `${comments}${above}${typed}` }).findings);
}

/** The value at a path. */
export function leafAt(model: Model, root: string, ...path: string[]): Leaf | undefined {
  const node = nodeAt(model.roots.get(root), path);
  return node?.is === "leaf" ? node : undefined;
}
