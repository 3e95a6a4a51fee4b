// Kinds of things that more than one room reads, and where they may stand in the files.
import { link, textInput, wordInput } from "../../kernel/figure.ts";
import { machine, scope } from "../../kernel/item.ts";

export const spindle = scope({ name: "spindle", says: "a spindle", mounts: ["spindle"] });
export const axis = scope({ name: "axis", says: "an axis", mounts: ["axes.*"] });
export const pump = scope({ name: "pump", says: "a pump", mounts: ["fluids.coolant.pump", "fluids.hydraulics.pump"] });
export const compressor = scope({ name: "compressor", says: "a compressor", mounts: ["shop/air.compressors.*"] });
export const motor = scope({
  name: "motor",
  says: "a motor",
  like: "motors",
  mounts: ["spindle.motor", "axes.*.motor", "fluids.coolant.pump.motor", "fluids.hydraulics.pump.motor", "shop/air.compressors.*.motor"],
});
export const drive = scope({
  name: "drive",
  says: "a drive",
  like: "drives",
  mounts: [{ at: "spindle.drive", implied: true }, "axes.*.drive", "fluids.coolant.pump.drive"],
});
export const belt = scope({ name: "belt", says: "a belt ratio", mounts: ["spindle.belts.*"] });
export const bearing = scope({ name: "bearing", says: "a bearing", mounts: ["spindle.bearings.*"] });
export const tool = scope({ name: "tool", says: "a tool", mounts: ["tools.*"] });
export const insert = scope({ name: "insert", says: "an insert", mounts: ["shop/catalogue/inserts.*"] });
export const material = scope({ name: "material", says: "a material", mounts: ["shop/catalogue/materials.*"] });
export const part = scope({ name: "part", says: "a part", mounts: ["work/*"] });
export const operation = scope({ name: "operation", says: "an operation", mounts: ["work/*.operations.*"], nameKey: "operation" });

/** An operation names its tool, a tool its insert, a part its material. */
export const toolOfOperation = link({ per: operation, key: "tool", to: tool, says: "tool" });
export const insertOfTool = link({ per: tool, key: "insert", to: insert, says: "insert" });
export const materialOfPart = link({ per: part, key: "stock.material", to: material, says: "material" });

export const machineTitle = textInput({ key: "machine", per: machine, says: "what the machine is", measure: "A few words of your own." });
export const machineKind = wordInput({
  key: "kind",
  per: machine,
  says: "kind of machine",
  words: ["turret-lathe", "bar-lathe", "sliding-head-lathe", "bed-mill", "knee-mill"],
  required: true,
  measure: "Lathe or mill, and how the tool or the table moves.",
});
