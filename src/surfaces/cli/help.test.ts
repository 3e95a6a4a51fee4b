import { spawnSync } from "node:child_process";
import { expect, test } from "vitest";
import { commands, flagsOf, shells } from "./commands.ts";
import { completion, helpPage } from "./help.ts";
import { readArguments } from "./arguments.ts";
import { widthOf } from "./text.ts";

test.each(commands.map((c) => [c.name, c] as const))("help of %s fits 80 columns and names every flag", (_, c) => {
  const { lines } = helpPage(80, c);
  expect(Math.max(...lines.map(widthOf))).toBeLessThanOrEqual(80);
  for (const f of flagsOf(c)) expect(lines.join("\n")).toContain(`--${f.name}`);
});

test("the list of commands names each", () => {
  const text = helpPage(80).lines.join("\n");
  for (const c of commands) expect(text).toContain(`waywright ${c.name}`);
});

test.each(shells)("completion for %s knows every command and every flag", (shell) => {
  const script = completion(shell);
  for (const c of commands) {
    expect(script).toContain(c.name);
    for (const f of flagsOf(c)) expect(script).toContain(f.name);
  }
});

test("bash can read its script, and completes a flag of a command", () => {
  const script = `${completion("bash")}\nCOMP_WORDS=(waywright check --qu); COMP_CWORD=2; _waywright; echo "\${COMPREPLY[@]}"`;
  const bash = spawnSync("bash", ["--norc", "-c", script], { encoding: "utf8" });
  expect([bash.status, bash.stdout.trim(), bash.stderr]).toEqual([0, "--quick", ""]);
});

test("every example in the help is understood", () => {
  for (const example of commands.flatMap((c) => c.examples)) {
    const words = [...example.matchAll(/(?:[^\s"]|"[^"]*")+/g)].map((m) => m[0].replaceAll('"', ""));
    expect(readArguments(words.slice(1)).command.name).toBe(words[1]);
  }
});
