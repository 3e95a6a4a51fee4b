// The key tree as JSON Schema (draft 2020-12), for editors that know nothing of us.
import type { Input } from "../figure.ts";
import { kindInfo } from "../unit.ts";
import { knownFrom } from "./check-keys.ts";
import type { KeyNode, Keys } from "./keys.ts";
import { keysOfFile, type Role } from "./role.ts";

export type Schema = { readonly [key: string]: SchemaValue };
type SchemaValue = string | boolean | number | readonly SchemaValue[] | Schema;

const dialect = "https://json-schema.org/draft/2020-12/schema";
const name = "^[a-z0-9](?:[a-z0-9-]*[a-z0-9])?$";

const files: Readonly<Record<string, { role: Role; title: string }>> = {
  "shop.schema.json": { role: { is: "shop" }, title: "shop.yaml" },
  "machine.schema.json": { role: { is: "machine", machine: "" }, title: "NAME/machine.yaml" },
  "work.schema.json": { role: { is: "work", machine: "", name: "" }, title: "NAME/work/PART.yaml" },
  "catalogue.schema.json": { role: { is: "catalogue" }, title: "catalogue/*.yaml" },
  "option.schema.json": { role: { is: "option", machine: "", name: "" }, title: "NAME/options/OPTION.yaml" },
  "record.schema.json": { role: { is: "record", machine: "", name: "" }, title: "NAME/records/RECORD.yaml" },
};

/** A schema for each kind of file, by file name. Keys stand in alphabetical order, so that a schema changes only where the keys do. */
export function schemas(keys: Keys): ReadonlyMap<string, Schema> {
  return new Map(
    Object.entries(files).map(([file, { role, title }]) => {
      const body = { ...mapOf(keysOfFile(role, keys)), ...changing(role) };
      return [file, { $schema: dialect, title, ...body, $defs: { source } }];
    }),
  );
}

/** Values of options and records stand at paths, which a schema cannot follow. */
function changing(role: Role): Schema {
  const paths = { type: "object", description: "path: value" };
  if (role.is === "option") return { properties: { ...optionLists, set: paths, replace: paths }, additionalProperties: true };
  if (role.is === "record") return { additionalProperties: true };
  return {};
}
const optionLists = { needs: { type: "array" }, remove: { type: "array" } };

/** How a value in long form is known. */
const source: Schema = {
  from: { enum: knownFrom, description: "how the value is known" },
  date: { type: "string", description: "2026-02-14" },
  with: { type: "string", description: "instrument of the shop" },
  note: { type: "string" },
};

function schemaOf(node: KeyNode): Schema {
  const forms: Schema[] = [];
  if (node.input) forms.push(valueOf(node.input), longForm(valueOf(node.input)));
  if (node.link) forms.push({ type: ["string", "number"], description: `name of a ${node.link.says}` });
  if (node.item) forms.push({ type: "array", items: schemaOf(node.item) }, blank);
  const isMap = node.keys.size > 0 || node.any !== undefined || node.like !== undefined || node.says !== undefined;
  if (isMap) {
    const head = node.head === undefined ? undefined : node.keys.get(node.head);
    forms.push(mapOf(node), ...(head?.input ? [valueOf(head.input)] : [blank]));
  }
  if (node.lax && !isMap) return {};
  const [only, ...more] = forms;
  if (!only) return { type: ["string", "number"] };
  return more.length === 0 ? only : { anyOf: forms, ...describe(node) };
}

const blank: Schema = { enum: ["unknown", "none"] };

function mapOf(node: KeyNode): Schema {
  const properties = Object.fromEntries([...node.keys].toSorted(byKey).map(([key, child]) => [key, schemaOf(child)]));
  const like = node.like === undefined ? {} : { like: { type: "string", description: `an entry of ${node.like} in catalogue/` } };
  const required = [...node.keys].filter(([, child]) => child.input?.required).map(([key]) => key);
  return {
    type: ["object", "null"],
    ...(node.says === undefined ? {} : { description: node.says }),
    properties: { ...properties, ...like },
    ...(node.any ? { patternProperties: { [name]: schemaOf(node.any) } } : {}),
    additionalProperties: node.lax === true,
    // A missing one leaves checks open and is no error, so it is named and not demanded.
    ...(required.length === 0 ? {} : { "x-required": required.toSorted() }),
  };
}

const byKey = ([a]: [string, unknown], [b]: [string, unknown]): number => (a < b ? -1 : Number(a > b));

function describe(node: KeyNode): Schema {
  return node.input ? { description: describeInput(node.input) } : node.says === undefined ? {} : { description: node.says };
}

/** What an editor shows beside a key. */
export function describeInput(input: Input<unknown>): string {
  const info = input.kind === null ? undefined : kindInfo(input.kind);
  const kind = info ? `${info.says}, such as ${info.examples.join(" or ")}` : input.words ? `one of ${input.words.join(", ")}` : "";
  return [input.says + (kind === "" ? "" : `: ${kind}`), input.required ? "Never assumed" : "", input.measure]
    .filter((t) => t !== "")
    .join(". ");
}

function valueOf(input: Input<unknown>): Schema {
  const description = describeInput(input);
  const words = ["unknown", ...(input.none ? ["none"] : [])];
  if (input.words) {
    const yesNo = input.words.includes("yes") ? [true, false] : [];
    return { enum: [...input.words, ...words.filter((w) => !input.words?.includes(w)), ...yesNo], description };
  }
  const one: Schema = {
    type: ["string", "number"],
    ...(input.kind === null ? {} : { "x-quantity": input.kind, examples: [...kindInfo(input.kind).examples] }),
  };
  if (input.form === "list") return { anyOf: [{ type: "array", items: one }, { enum: words }], description };
  if (input.form === "lists")
    return { anyOf: [{ type: "array", items: { type: ["string", "number", "array"] } }, { enum: words }], description };
  return input.form === "text" ? { type: ["string", "number", "boolean"], description } : { ...one, description };
}

function longForm(value: Schema): Schema {
  const properties = Object.fromEntries(Object.keys(source).map((key) => [key, { $ref: `#/$defs/source/${key}` }]));
  return { type: "object", properties: { value, ...properties }, required: ["value"], additionalProperties: false };
}
