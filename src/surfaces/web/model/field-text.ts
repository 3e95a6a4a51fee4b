// What a field shows and what its text means as a value of the file: pure, between answer and edit.
import type { PatchValue } from "../../../kernel/model/plain.ts";
import type { Field } from "../worker/fields.ts";

type Written = Pick<Field, "form" | "written" | "text" | "origin" | "state">;

/** What the file says, as it stands in the field; empty where nothing is written, or nothing but that it is not known. */
export function textInField(field: Written, edit: PatchValue | undefined): string {
  if (edit !== undefined) return edit === null ? "" : typeof edit === "string" ? (edit === "unknown" ? "" : edit) : edit.join(", ");
  if (field.state === "none") return "none";
  if (field.written === "unknown") return "";
  return field.origin.by === "typical" || field.origin.by === "estimate" ? "" : field.text;
}

/** Whether it is said that nobody knows. */
export function isUnknown(field: Pick<Field, "written">, edit: PatchValue | undefined): boolean {
  return edit === undefined ? field.written === "unknown" : edit === "unknown";
}

/** Somebody stronger than the line has the word: a record, or an option laid over. The line cannot be seen through it. */
export function isOverruled(field: Pick<Field, "origin">): boolean {
  return field.origin.by === "record" || (field.origin.by === "option" && field.origin.name !== "tried");
}

/** The value a text stands for: a list in its parts, nothing at all as a key taken away. `same`: the file says so already. */
export function valueOf(field: Pick<Field, "form" | "written">, text: string): { readonly value: PatchValue } | "same" {
  const said = text.trim();
  if (said === (field.written ?? "")) return "same";
  if (said === "") return { value: null };
  if (field.form === "list" || field.form === "lists") {
    if (said === "none" || said === "unknown") return { value: said };
    return {
      value: said
        .split(/[,;]/)
        .map((part) => part.trim())
        .filter((part) => part !== ""),
    };
  }
  return { value: said };
}
