// What things are called on the page.
import type { Answer } from "../../../kernel/answer.ts";

/** `turret-lathe` as the first word of a line: `Turret lathe`. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** A machine by the name of its folder: `lathe` is `Lathe`. */
export function machineName(root: string): string {
  return capital(root.replaceAll("-", " "));
}

/** The crumb over a page of a machine: `Lathe · as found`. */
export function variantWords(options: readonly string[]): string {
  return options.length === 0 ? "as found" : `with ${options.map((o) => o.split("/").at(-1) ?? o).join(" and ")}`;
}

/** `Six-station turret bar lathe, 1983`. */
export function machineLine(answer: Answer, root: string): string {
  const machine = answer.machines.find((m) => m.root === root);
  if (!machine) return "";
  const title = machine.title === root ? "" : machine.title.charAt(0).toLowerCase() + machine.title.slice(1);
  return [machineName(root), [title, machine.year].filter((word) => word !== "").join(", ")].filter((word) => word !== "").join(" · ");
}
