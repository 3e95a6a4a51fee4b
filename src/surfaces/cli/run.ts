// One start of the program: words in, texts out, exit status.
import { version } from "../../../package.json";
import { commandNamed, type Given, readArguments, versionCommand } from "./arguments.ts";
import { shells } from "./commands.ts";
import { completion, helpPage } from "./help.ts";
import { json } from "./json.ts";
import { Misuse } from "./misuse.ts";
import { inAscii, pageFor, print, type Terminal } from "./terminal.ts";
import type { Status } from "./checked.ts";

/** Runs the words. A mistake of the user is told and is status 2; a mistake of the program is thrown. */
export async function run(words: readonly string[], terminal: Terminal, cwd: string): Promise<Status> {
  let t = terminal.unicode
    ? terminal
    : { ...terminal, out: (s: string) => terminal.out(inAscii(s)), err: (s: string) => terminal.err(inAscii(s)) };
  try {
    const given = readArguments(words);
    if (given.width !== null) t = { ...t, width: given.width };
    // JSON is for programs, which read UTF-8 whatever the terminal shows.
    if (given.has("json")) t = { ...t, out: terminal.out };
    return await obey(given, t, cwd);
  } catch (error) {
    if (!(error instanceof Misuse)) throw error;
    const near = error.among.length > 0 ? { among: error.among } : {};
    if (words.includes("--json")) terminal.out(json({ error: { code: error.code, message: error.message, ...near } }));
    else {
      const page = pageFor(t);
      page.say(`${error.code}: ${error.message}.`.replace(/([.?!])\.$/, "$1"), "", "  ");
      t.err(`${page.lines.join("\n")}\n`);
    }
    return 2;
  }
}

/** Each command is loaded when it is called, so that none waits for another. */
async function obey(given: Given, t: Terminal, cwd: string): Promise<Status> {
  if (given.command === versionCommand) {
    t.out(given.has("json") ? json({ version }) : `${version}\n`);
    return 0;
  }
  if (given.has("help")) return help(given, t, given.command.name);
  switch (given.command.name) {
    case "check":
      return (await import("./check.ts")).check(given, t, cwd);
    case "explain":
      return (await import("./explain.ts")).explain(given, t, cwd);
    case "work":
      return (await import("./work.ts")).work(given, t, cwd);
    case "compare":
      return (await import("./compare.ts")).compare(given, t, cwd);
    case "sweep":
      return (await import("./sweep.ts")).sweep(given, t, cwd);
    case "new":
      return (await import("./new.ts")).newShop(given, t, cwd);
    case "open":
      return (await import("./open.ts")).open(given, t, cwd);
    case "completion":
      return complete(given, t);
    default:
      return help(given, t, given.words[0]);
  }
}

function help(given: Given, t: Terminal, name: string | undefined): Status {
  const command = name === undefined ? undefined : commandNamed(name);
  if (given.has("json")) t.out(json(command ?? { version }));
  else print(t, helpPage(t.width, command));
  return 0;
}

function complete(given: Given, t: Terminal): Status {
  const [word] = given.words;
  const shell = shells.find((s) => s === word);
  if (!shell) throw new Misuse(word === undefined ? "argument-missing" : "argument-bad", `completion is for ${shells.join(", ")}`, shells);
  t.out(completion(shell));
  return 0;
}
