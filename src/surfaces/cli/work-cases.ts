// Many cases of `work` at once: JSON in, JSON out, an error of one case is data of that case.
import type { House } from "../../kernel/house.ts";
import { isFailure, workedOut, type WorkFailure } from "./work-answer.ts";
import { Misuse } from "./misuse.ts";

const isRecord = (v: unknown): v is Record<string, unknown> => typeof v === "object" && v !== null && !Array.isArray(v);

/** Answers to the cases in their order. Numbers are shown in metric units. */
export function answerCases(house: House, text: string, file: string): unknown[] {
  let cases: unknown;
  try {
    cases = JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch (error) {
    throw new Misuse("file-bad", `${file} is no JSON: ${error instanceof Error ? error.message : String(error)}`);
  }
  if (!Array.isArray(cases)) throw new Misuse("file-bad", `${file} must hold a list of cases: [{ "id": …, "figure": …, "with": { … } }]`);
  return cases.map((c: unknown) => answerCase(house, c));
}

function answerCase(house: House, c: unknown): unknown {
  if (!isRecord(c)) return { id: null, figure: null, error: failure("a case is a map with id, figure and with") };
  const head = { id: c["id"] ?? null, figure: c["figure"] ?? null };
  const { figure, in: unit } = c;
  if (typeof figure !== "string") return { ...head, error: failure("figure is the id of a figure, as text") };
  if (unit !== undefined && typeof unit !== "string") return { ...head, error: failure("in is a unit, as text") };
  const given = textsOf(c["with"] ?? {});
  if (isFailure(given)) return { ...head, error: given };
  const answer = workedOut(house, figure, given.texts, { units: "metric" }, unit);
  return isFailure(answer) ? { ...head, error: answer } : { ...head, ...answer.text };
}

const failure = (message: string): WorkFailure => ({ code: "case-bad", message });

/** Values as they would be written on the line. */
function textsOf(given: unknown): { readonly texts: Record<string, string> } | WorkFailure {
  if (!isRecord(given)) return failure("with is a map from name to value");
  // Without a prototype, so that a name such as __proto__ is a name.
  const texts: Record<string, string> = Object.create(null) as Record<string, string>;
  for (const [name, value] of Object.entries(given)) {
    const items = Array.isArray(value) ? value : [value];
    const parts: string[] = [];
    for (const item of items) {
      const text = typeof item === "boolean" ? (item ? "yes" : "no") : typeof item === "number" ? String(item) : item;
      if (typeof text !== "string") return failure(`${name} must be a text such as "5.08 mm", a pure number, or a list of them`);
      // The line parts a list by these signs: inside one value they would quietly make two.
      if (Array.isArray(value) && /[,;\n]/.test(text))
        return {
          code: "number-bad",
          message: `${name}: "${text}" is not one value; a decimal has a point, and each value of a list stands alone`,
        };
      parts.push(text);
    }
    texts[name] = parts.join(", ");
  }
  return { texts };
}
