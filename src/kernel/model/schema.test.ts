import { expect, test } from "vitest";
import { keysOf } from "./keys.ts";
import { type Schema, schemas } from "./schema.ts";
import { smallKeys } from "./small-house.test-help.ts";

const all = schemas(smallKeys);

function at(file: string, ...path: string[]): Schema {
  let node: unknown = all.get(file);
  for (const key of path) node = (node as Record<string, unknown> | undefined)?.[key];
  return node as Schema;
}

test("there is a schema for each kind of file, of the draft that editors read", () => {
  expect([...all.keys()]).toEqual([
    "shop.schema.json",
    "machine.schema.json",
    "work.schema.json",
    "catalogue.schema.json",
    "option.schema.json",
    "record.schema.json",
  ]);
  for (const schema of all.values()) expect(schema["$schema"]).toBe("https://json-schema.org/draft/2020-12/schema");
});

test("a quantity names its kind and shows how it is written", () => {
  const rapid = at(
    "machine.schema.json",
    "properties",
    "axes",
    "anyOf",
    "0",
    "patternProperties",
    "^[a-z0-9](?:[a-z0-9-]*[a-z0-9])?$",
    "anyOf",
    "0",
    "properties",
    "rapid",
    "anyOf",
    "0",
  );
  expect(rapid).toMatchObject({ "x-quantity": "speed", examples: ["5 m/min", "200 in/min"] });
  expect(rapid["description"]).toContain("rapid");
});

test("a word lists what may be written, unknown always, none where that is an answer", () => {
  const pressure = at("shop.schema.json", "properties", "show", "anyOf", "0", "properties", "pressure", "anyOf", "0");
  expect(pressure["enum"]).toEqual(["bar", "psi", "kPa", "unknown"]);
  const also = at("shop.schema.json", "properties", "show", "anyOf", "0", "properties", "also", "anyOf", "0");
  expect(also["enum"]).toEqual(["metric", "inch", "unknown", "none"]);
});

test("keys nobody declared are refused, but where rooms are still to come", () => {
  expect(at("machine.schema.json")["additionalProperties"]).toBe(false);
  expect(at("machine.schema.json", "properties", "year")).toEqual({});
  expect(Object.keys(at("machine.schema.json", "properties"))).not.toContain("work");
});

test("the same keys give the same schema, letter by letter", () => {
  const again = schemas({ ...smallKeys, machine: { ...smallKeys.machine, keys: new Map([...smallKeys.machine.keys].toReversed()) } });
  expect(JSON.stringify([...again])).toBe(JSON.stringify([...all]));
  expect(JSON.stringify([...schemas(keysOf([], { shop: [], machine: [], catalogue: [] }))])).not.toBe(JSON.stringify([...all]));
});
