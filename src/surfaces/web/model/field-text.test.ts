// What stands in a field is what the file says, and what is typed becomes what the file will say.
import { expect, test } from "vitest";
import type { Field } from "../worker/fields.ts";
import { isOverruled, isUnknown, textInField, valueOf } from "./field-text.ts";

const field = (of: Partial<Field>): Field =>
  ({
    form: "quantity",
    written: "7.5 hp",
    text: "7.5 hp",
    state: "there",
    origin: { by: "line", says: "lathe/machine.yaml:19" },
    ...of,
  }) as Field; // the rest plays no part

test("a value from the file stands as typed there, also where the catalogue says it", () => {
  expect(textInField(field({}), undefined)).toBe("7.5 hp");
  expect(
    textInField(field({ written: "11 A", text: "11 A", origin: { by: "catalogue", says: "catalogue spindle-drive-11" } }), undefined),
  ).toBe("11 A");
});

test("a typical band is no text of the field: whoever types starts with an empty one", () => {
  expect(textInField(field({ written: null, text: "3 to 10 %", origin: { by: "typical", says: "typical: practice" } }), undefined)).toBe(
    "",
  );
  expect(textInField(field({ written: "unknown", text: "3 to 10 %", origin: { by: "typical", says: "typical" } }), undefined)).toBe("");
});

test("known to be absent stands as the word for it", () => {
  expect(textInField(field({ written: "none", text: "none", state: "none" }), undefined)).toBe("none");
});

test("an edit stands before everything, a list in one line, and not knowing as an empty field with its mark", () => {
  expect(textInField(field({}), "10 hp")).toBe("10 hp");
  expect(textInField(field({}), ["4-7", "5-8"])).toBe("4-7, 5-8");
  expect(textInField(field({}), null)).toBe("");
  expect([textInField(field({}), "unknown"), isUnknown(field({}), "unknown")]).toEqual(["", true]);
  expect(isUnknown(field({ written: "unknown" }), "10 hp")).toBe(false);
});

test("what the file says already is no edit, an emptied field takes the key away", () => {
  expect(valueOf(field({}), " 7.5 hp ")).toBe("same");
  expect(valueOf(field({ written: null }), "")).toBe("same");
  expect(valueOf(field({}), "")).toEqual({ value: null });
  expect(valueOf(field({}), "10 hp")).toEqual({ value: "10 hp" });
});

test("a list is written in its parts, and not knowing it is still a word", () => {
  expect(valueOf(field({ form: "lists", written: "4-7, 5-8, 6-9" }), "4-5-6")).toEqual({ value: ["4-5-6"] });
  expect(valueOf(field({ form: "list" }), "238 V, 240 V; 241 V,")).toEqual({ value: ["238 V", "240 V", "241 V"] });
  expect(valueOf(field({ form: "list" }), "unknown")).toEqual({ value: "unknown" });
});

test("a record and a laid option overrule the line, a value just typed does not", () => {
  expect(isOverruled(field({ origin: { by: "record", says: "record 2026-02-14" } }))).toBe(true);
  expect(isOverruled(field({ origin: { by: "option", says: "option more-air", name: "more-air" } }))).toBe(true);
  expect(isOverruled(field({ origin: { by: "option", says: "tried", name: "tried" } }))).toBe(false);
});
