// The words of the command line: which command, what it is given, which flags; every slip with the nearest word.
import { parseArgs } from "node:util";
import { nearest } from "../../kernel/nearest.ts";
import { type Command, commands, flagsOf } from "./commands.ts";
import { Misuse } from "./misuse.ts";
import { broadest, narrowest } from "./terminal.ts";

export interface Given {
  readonly command: Command;
  readonly words: readonly string[];
  /** Value of a flag that takes one. */
  readonly value: (flag: string) => string | undefined;
  readonly values: (flag: string) => readonly string[];
  readonly has: (flag: string) => boolean;
  readonly width: number | null;
}

/** Reads the words behind the program's name. */
export function readArguments(words: readonly string[]): Given {
  const [first, ...rest] = words;
  if (first === undefined) return given(named("help"), [], new Map());
  if (first === "--version" || first === "-V") return given(versionCommand, [], new Map([["json", rest.includes("--json")]]));
  if (first === "--help" || first === "-h") return readArguments(["help", ...rest]);
  const command = commands.find((c) => c.name === first);
  if (!command) throw unknownCommand(first);
  const flags = flagsOf(command);
  const { tokens } = parseArgs({
    args: rest,
    strict: false,
    allowPositionals: true,
    tokens: true,
    options: {
      ...Object.fromEntries(flags.map((f) => [f.name, { type: f.takes === undefined ? ("boolean" as const) : ("string" as const) }])),
      help: { type: "boolean", short: "h" },
    },
  });
  const positional: string[] = [];
  const found = new Map<string, boolean | string[]>();
  for (const token of tokens) {
    if (token.kind === "positional") positional.push(token.value);
    if (token.kind !== "option") continue;
    const flag = flags.find((f) => f.name === token.name);
    if (!flag) {
      const near = nearest(
        token.name,
        flags.map((f) => f.name),
      );
      const hint = near === undefined ? `; see waywright help ${command.name}` : ` (nearest: --${near})`;
      throw new Misuse("option-unknown", `${command.name} takes no ${token.rawName}${hint}`, near === undefined ? [] : [`--${near}`]);
    }
    if (flag.takes === undefined) {
      if (token.value !== undefined) throw new Misuse("argument-bad", `--${flag.name} takes no value`);
      found.set(flag.name, true);
      continue;
    }
    const value = token.value;
    if (value === undefined || value === "" || (!token.inlineValue && value.startsWith("--")))
      throw new Misuse("argument-missing", `--${flag.name} wants ${flag.takes} behind it`);
    if (flag.words && !flag.words.includes(value))
      throw new Misuse("argument-bad", `--${flag.name} is ${flag.words.join(" or ")}, not "${value}"`, flag.words);
    const had = found.get(flag.name);
    if (Array.isArray(had) && !flag.many) throw new Misuse("argument-extra", `--${flag.name} is given twice`);
    found.set(flag.name, [...(Array.isArray(had) ? had : []), value]);
  }
  return given(command, positional, found);
}

function given(command: Command, words: readonly string[], found: ReadonlyMap<string, boolean | string[]>): Given {
  const values = (flag: string): readonly string[] => {
    const v = found.get(flag);
    return Array.isArray(v) ? v : [];
  };
  const width = values("width")[0];
  return {
    command,
    words,
    values,
    value: (flag) => values(flag)[0],
    has: (flag) => found.has(flag) && found.get(flag) !== false,
    width: width === undefined ? null : wholeNumber("--width", width, narrowest, broadest),
  };
}

export function wholeNumber(what: string, text: string, low: number, high: number): number {
  const n = Number(text);
  if (!/^\d+$/.test(text) || n < low || n > high)
    throw new Misuse("argument-bad", `${what} is a whole number from ${low} to ${high}, not "${text}"`);
  return n;
}

function named(name: string): Command {
  const command = commands.find((c) => c.name === name);
  if (!command) throw unknownCommand(name);
  return command;
}
export { named as commandNamed };

function unknownCommand(word: string): Misuse {
  const names = commands.map((c) => c.name);
  const near = nearest(word, names);
  return new Misuse(
    "command-unknown",
    `there is no command ${word}; ${near === undefined ? `there are ${names.join(", ")}` : `nearest: ${near}`}`,
    near === undefined ? names : [near],
  );
}

/** `--version` is a command without a place in the list. */
export const versionCommand: Command = {
  name: "--version",
  takes: "",
  says: "the version",
  more: [],
  flags: [],
  examples: [],
  shop: false,
};
