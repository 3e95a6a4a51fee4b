// A file for options/: values that were tried out, under a name, to be looked at again.
import type { Tried } from "../worker/view.ts";

interface NewOption {
  readonly machine: string;
  readonly name: string;
  readonly title: string;
  readonly cost: string;
  readonly hours: string;
  /** Options it lies on. */
  readonly needs: readonly string[];
  readonly values: readonly Tried[];
}

const nameForm = /^[a-z0-9](?:[a-z0-9-]*[a-z0-9])?$/;

/** Why a name cannot be taken; null where it can. */
export function refusedName(name: string, machine: string, files: ReadonlySet<string>): string | null {
  if (!nameForm.test(name)) return "Names are lower-case letters, digits and hyphens, such as longer-run.";
  return files.has(optionFile(machine, name)) ? `There is an option ${name} already.` : null;
}

export function optionFile(machine: string, name: string): string {
  return `${machine}/options/${name}.yaml`;
}

/** The text of the file. */
export function optionText({ machine, name, title, cost, hours, needs, values }: NewOption): string {
  const line = (key: string, value: string): string[] => (value.trim() === "" ? [] : [`${key}: ${written(value.trim())}`]);
  return [
    `option: ${name}`,
    ...line("title", title),
    ...line("cost", cost),
    ...line("hours", hours),
    ...(needs.length === 0 ? [] : [`needs: [ ${needs.join(", ")} ]`]),
    "set:",
    ...values.map(({ root, path, text }) => `  ${root === machine ? path : `${root}/${path}`}: ${written(text)}`),
    "",
  ].join("\n");
}

/** Plain where YAML reads it as it stands, else in quotes. A list in brackets stays a list. */
function written(text: string): string {
  return /^(?:[\w.+/(][\w .+/%()*^,-]*|\[[\w .+/%()*^,-]*\])$/.test(text) ? text : JSON.stringify(text);
}
